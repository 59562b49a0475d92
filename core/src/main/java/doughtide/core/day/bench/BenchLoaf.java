package doughtide.core.day.bench;

import doughtide.core.Internal;
import java.io.Serializable;

/**
 * One loaf of a dough on its way over the bench; hours are on the plan's axis.
 *
 * @param number in the order of shaping, from 1
 * @param mixBatch which batch of the mixer it comes from, from 1
 * @param mixedHour when that batch was mixed
 * @param shapedHour when it is in its basket
 * @param ovenBatch which batch of the oven it is baked in, from 1
 * @param ovenHour when that goes into the oven
 */
@Internal
public record BenchLoaf(
    int number, int mixBatch, double mixedHour, double shapedHour, int ovenBatch, double ovenHour)
    implements Serializable {

  /** Age when shaped, hours from mixing. */
  public double ageShapedHours() {
    return shapedHour - mixedHour;
  }

  /** Age at the oven, hours from mixing. */
  public double ageBakedHours() {
    return ovenHour - mixedHour;
  }

  /** From the basket to the oven, hours. */
  public double proofHours() {
    return ovenHour - shapedHour;
  }
}
