package doughtide.core.flourtrial;

import doughtide.core.Internal;
import doughtide.core.quantity.Checks;
import doughtide.core.quantity.InputException;
import java.io.Serializable;

/**
 * A kitchen scale, by the smallest step it shows.
 *
 * @param resolutionGrams 0.01…10 g
 */
@Internal
public record Scale(double resolutionGrams) implements Serializable {
  /** Shows whole grams. */
  public static final Scale ONE_GRAM = new Scale(1);

  /** Shows tenths of a gram. */
  public static final Scale TENTH_GRAM = new Scale(0.1);

  private static final double HALF_WAY_SLACK = 1e-9;

  /**
   * @throws InputException outside 0.01…10 g or not a number
   */
  public Scale {
    Checks.inRange("scale resolution", resolutionGrams, 0.01, 10, "g");
  }

  /** The nearest amount the scale can show; half a step goes up. */
  double nearestGrams(double grams) {
    double steps = Math.floor(grams / resolutionGrams + 0.5 + HALF_WAY_SLACK);
    return Math.round(steps * resolutionGrams * 1e6) / 1e6;
  }
}
