package doughtide.core.loaf;

import java.util.OptionalDouble;
import java.util.function.DoubleUnaryOperator;

/** Looks for the smallest change with which one loaf in ten more is too far at the oven. */
final class SpoilSearch {
  private static final double ONE_IN_TEN = 0.1;

  private SpoilSearch() {}

  /**
   * @param tooFarShare share of loaves too far after a change of some size, rising
   * @param step the change in its smallest steps
   * @param most how many steps at most
   * @return the change; empty if even the largest does not
   */
  static OptionalDouble smallest(DoubleUnaryOperator tooFarShare, double step, int most) {
    double limit = tooFarShare.applyAsDouble(0) + ONE_IN_TEN - 1e-9;
    int fine = 0;
    int spoiled = most + 1;
    while (spoiled - fine > 1) {
      int middle = (fine + spoiled) / 2;
      if (tooFarShare.applyAsDouble(middle * step) >= limit) {
        spoiled = middle;
      } else {
        fine = middle;
      }
    }
    return spoiled > most ? OptionalDouble.empty() : OptionalDouble.of(spoiled * step);
  }
}
