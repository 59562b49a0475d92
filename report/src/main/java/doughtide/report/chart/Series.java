package doughtide.report.chart;

import doughtide.core.Internal;

/** Checks of number series; each check returns a copy. */
@Internal
public final class Series {

  private Series() {}

  static double[] ascending(String name, double[] values) {
    double[] copy = finite(name, values, values.length);
    if (copy.length < 2) {
      throw new IllegalArgumentException(name + " needs at least two values");
    }
    for (int i = 1; i < copy.length; i++) {
      if (!(copy[i] > copy[i - 1])) {
        throw new IllegalArgumentException(name + " must ascend, at " + i + ": " + copy[i]);
      }
    }
    return copy;
  }

  static double[] finite(String name, double[] values, int length) {
    if (values.length != length) {
      throw new IllegalArgumentException(
          name + " has " + values.length + " values instead of " + length);
    }
    for (double value : values) {
      if (!Double.isFinite(value)) {
        throw new IllegalArgumentException(name + " contains " + value);
      }
    }
    return values.clone();
  }

  /**
   * The values with the unevenness of a sample taken out: weighted means over up to four points on
   * either side, fewer near the ends, which stay as they are.
   */
  static double[] smooth(double[] values) {
    double[] smooth = new double[values.length];
    for (int i = 0; i < values.length; i++) {
      int half = Math.min(4, Math.min(i, values.length - 1 - i));
      double sum = 0;
      double weights = 0;
      for (int k = -half; k <= half; k++) {
        double weight = 1 + half - Math.abs(k);
        sum += weight * values[i + k];
        weights += weight;
      }
      smooth[i] = sum / weights;
    }
    return smooth;
  }

  /** The value at a place, straight between neighbours; {@code x} ascends. */
  static double at(double[] x, double[] y, double place) {
    if (place <= x[0]) {
      return y[0];
    }
    for (int i = 1; i < x.length; i++) {
      if (place <= x[i]) {
        return y[i - 1] + (y[i] - y[i - 1]) * (place - x[i - 1]) / (x[i] - x[i - 1]);
      }
    }
    return y[y.length - 1];
  }

  /** The given number of places, evenly from 0 to an end. */
  public static double[] evenly(double end, int count) {
    double[] places = new double[count];
    for (int i = 0; i < count; i++) {
      places[i] = Math.min(end, end * i / (count - 1)); // rounding may step over the end
    }
    return places;
  }

  public static double[] at(double[] x, double[] y, double[] places) {
    double[] values = new double[places.length];
    for (int i = 0; i < places.length; i++) {
      values[i] = at(x, y, places[i]);
    }
    return values;
  }
}
