package doughtide.core.dough;

import doughtide.core.quantity.Checks;
import doughtide.core.quantity.InputException;
import java.io.Serializable;

/**
 * What is kneaded into a dough and does not ferment: seeds, nuts, a soaker. It makes the dough more
 * and its rise less.
 *
 * @param name as typed, 1 to 40 characters
 * @param share dry mass over all flour, 0…2
 * @param waterShare water poured on it before, over all flour, 0…2; it is taken to stay there
 */
public record Inclusion(String name, double share, double waterShare) implements Serializable {

  /** Density of seeds, nuts and grains, kg/l (starting value; most sink in water, just). */
  static final double DRY_KG_PER_LITRE = 1.1;

  private static final int LONGEST = 40;

  /**
   * @param name as typed, 1 to 40 characters
   * @param share dry mass over all flour, 0…2
   * @param waterShare water poured on it before, over all flour, 0…2; it is taken to stay there
   * @throws InputException if the name is empty or too long, or a share is out of range
   */
  public Inclusion {
    if (name.isBlank() || name.length() > LONGEST) {
      throw new InputException(
          "inclusion.name",
          "the name of an inclusion must have 1 to " + LONGEST + " characters, for example seeds");
    }
    Checks.inRange("inclusions", "inclusion '" + name + "'", 100 * share, 0, 200, "%");
    Checks.inRange("inclusions", "water of '" + name + "'", 100 * waterShare, 0, 200, "%");
  }

  /** {@return its mass with its water, over all flour} */
  public double massPerFlour() {
    return share + waterShare;
  }

  /** Its volume with its water, litres per kg of all flour. */
  double litresPerKgFlour() {
    return share / DRY_KG_PER_LITRE + waterShare;
  }
}
