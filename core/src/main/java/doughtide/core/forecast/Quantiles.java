package doughtide.core.forecast;

import java.util.OptionalDouble;

/**
 * Quantiles of a sorted sample, linear between order statistics (type 7 of Hyndman &amp; Fan 1996).
 */
final class Quantiles {
  private Quantiles() {}

  static double of(double[] sorted, double level) {
    double place = level * (sorted.length - 1);
    int low = (int) place;
    int high = Math.min(low + 1, sorted.length - 1);
    double part = place - low;
    if (part == 0) {
      return sorted[low];
    }
    return sorted[low] + part * (sorted[high] - sorted[low]);
  }

  /** The quantile, or empty if it is infinite. */
  public static OptionalDouble finite(double[] sorted, double level) {
    double value = of(sorted, level);
    return Double.isFinite(value) ? OptionalDouble.of(value) : OptionalDouble.empty();
  }
}
