package doughtide.core.flourtrial;

import doughtide.core.Internal;
import doughtide.core.quantity.Checks;
import doughtide.core.quantity.InputException;
import java.io.Serializable;

/**
 * A range of hydration, per cent of flour.
 *
 * @param fromPercent 0…500
 * @param toPercent not below {@code fromPercent}, at most 500
 */
@Internal
public record HydrationRange(double fromPercent, double toPercent) implements Serializable {
  /**
   * @throws InputException if a value is out of range or they are not in order
   */
  public HydrationRange {
    Checks.inRange("start of the hydration range", fromPercent, 0, 500, "%");
    Checks.inRange("end of the hydration range", toPercent, fromPercent, 500, "%");
  }
}
