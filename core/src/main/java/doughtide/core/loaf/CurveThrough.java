package doughtide.core.loaf;

import java.util.Arrays;

/**
 * A smooth curve through points that rises and falls only where they do: cubic pieces with the
 * slopes of Fritsch &amp; Butland 1984, SIAM J Sci Stat Comput 5:300 (from memory; a harmonic mean
 * of the slopes on both sides, the nearer of which counts for more, nothing at a peak). Constant
 * beyond the ends.
 */
final class CurveThrough {
  private final double[] x;
  private final double[] y;
  private final double[] slope;

  /**
   * Through points.
   *
   * @param x ascending, one or more
   * @param y as many
   */
  CurveThrough(double[] x, double[] y) {
    this.x = x.clone();
    this.y = y.clone();
    this.slope = new double[x.length];
    for (int i = 1; i < x.length - 1; i++) {
      slope[i] = slope(x[i] - x[i - 1], x[i + 1] - x[i], secant(i - 1), secant(i));
    }
    if (x.length > 1) {
      slope[0] = secant(0);
      slope[x.length - 1] = secant(x.length - 2);
    }
  }

  private double secant(int i) {
    return (y[i + 1] - y[i]) / (x[i + 1] - x[i]);
  }

  private static double slope(double before, double after, double left, double right) {
    if (left * right <= 0) {
      return 0;
    }
    double ofLeft = before + 2 * after; // the nearer side counts for more
    double ofRight = 2 * before + after;
    return (ofLeft + ofRight) / (ofLeft / left + ofRight / right);
  }

  double at(double where) {
    if (where <= x[0]) {
      return y[0];
    }
    if (where >= x[x.length - 1]) {
      return y[x.length - 1];
    }
    int found = Arrays.binarySearch(x, where);
    int i = found >= 0 ? found : -found - 2;
    double width = x[i + 1] - x[i];
    double t = (where - x[i]) / width;
    double u = 1 - t;
    return u * u * ((1 + 2 * t) * y[i] + t * width * slope[i])
        + t * t * ((3 - 2 * t) * y[i + 1] - u * width * slope[i + 1]);
  }
}
