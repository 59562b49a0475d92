package doughtide.core.flourtrial;

import doughtide.core.Internal;
import doughtide.core.quantity.Checks;
import doughtide.core.quantity.InputException;
import java.io.Serializable;

/**
 * A hydration with its 80 % interval, per cent of flour.
 *
 * @param lowPercent one time in ten the true value lies below
 * @param likelyPercent the most probable value
 * @param highPercent one time in ten the true value lies above
 */
@Internal
public record HydrationEstimate(double lowPercent, double likelyPercent, double highPercent)
    implements Serializable {
  /**
   * @throws InputException if a value is not finite or they are not in order
   */
  public HydrationEstimate {
    Checks.inRange("hydration", likelyPercent, 0, 500, "%");
    Checks.inRange("lower end of the hydration", lowPercent, -500, likelyPercent, "%");
    Checks.inRange("upper end of the hydration", highPercent, likelyPercent, 1000, "%");
  }

  /** Width of the 80 % interval, points. */
  public double widthPoints() {
    return highPercent - lowPercent;
  }

  /** Whether a hydration lies in the interval, both ends included. */
  public boolean contains(double percent) {
    return percent >= lowPercent && percent <= highPercent;
  }
}
