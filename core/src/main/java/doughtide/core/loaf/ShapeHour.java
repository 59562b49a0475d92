package doughtide.core.loaf;

import doughtide.core.Internal;
import doughtide.core.rise.RiseCurve;
import java.util.OptionalDouble;
import java.util.function.DoubleUnaryOperator;

/**
 * Finds the hour in the basket with which a loaf has a rise at the oven: a secant from the bulk's
 * own slope, kept inside a bracket (regula falsi, Illinois).
 */
@Internal
public final class ShapeHour {
  private static final double RISE_ACCURACY = 0.005;
  private static final int MOST_STEPS = 12;

  private ShapeHour() {}

  /**
   * Looks for the hour.
   *
   * @param rise rise at the oven of a loaf that is in its basket after so many hours, rising
   * @param bulk the dough, for a first slope
   * @param wanted rise wanted
   * @param low earliest hour
   * @param high latest hour
   * @param guess a first guess
   * @return the hour; {@code low} if the loaf is too far even then; empty if it never gets there
   */
  public static OptionalDouble find(
      DoubleUnaryOperator rise,
      RiseCurve bulk,
      double wanted,
      double low,
      double high,
      double guess) {
    if (!(high > low)) {
      return OptionalDouble.empty();
    }
    double x = Math.min(Math.max(guess, low), high);
    double f = rise.applyAsDouble(x) - wanted;
    if (Math.abs(f) < RISE_ACCURACY) {
      return OptionalDouble.of(x);
    }
    if (x == (f > 0 ? low : high)) {
      return f > 0 ? OptionalDouble.of(low) : OptionalDouble.empty();
    }
    double next = Math.min(Math.max(x - 1.15 * f / slope(bulk, x), low), high);
    double g = rise.applyAsDouble(next) - wanted;
    if (f * g > 0) {
      next = f > 0 ? low : high;
      g = rise.applyAsDouble(next) - wanted;
      if (f * g > 0) {
        return f > 0 ? OptionalDouble.of(low) : OptionalDouble.empty();
      }
    }
    return falsi(rise, wanted, x, f, next, g);
  }

  private static OptionalDouble falsi(
      DoubleUnaryOperator rise, double wanted, double a, double fa, double b, double fb) {
    double x0 = a;
    double f0 = fa;
    double x1 = b;
    double f1 = fb;
    for (int i = 0; i < MOST_STEPS && Math.abs(f1) >= RISE_ACCURACY; i++) {
      double x = x1 - f1 * (x1 - x0) / (f1 - f0);
      double f = rise.applyAsDouble(x) - wanted;
      if (f * f1 < 0) {
        x0 = x1;
        f0 = f1;
      } else {
        f0 /= 2;
      }
      x1 = x;
      f1 = f;
    }
    return OptionalDouble.of(x1);
  }

  private static double slope(RiseCurve bulk, double x) {
    double left = Math.max(x - 0.2, bulk.startHours());
    double right = Math.min(x + 0.2, bulk.endHours());
    double gained = bulk.riseAt(right).fraction() - bulk.riseAt(left).fraction();
    return Math.max(gained / (right - left), 0.03);
  }
}
