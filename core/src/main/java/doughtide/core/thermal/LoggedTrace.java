package doughtide.core.thermal;

import doughtide.core.quantity.Checks;
import doughtide.core.quantity.InputException;
import doughtide.core.quantity.Value;
import java.util.Arrays;
import java.util.List;

/**
 * Monotone piecewise cubic Hermite interpolation: conditions of Fritsch &amp; Carlson 1980, SIAM J
 * Numer Anal 17:238; inner slopes by the weighted harmonic mean of Fritsch &amp; Butland 1984, SIAM
 * J Sci Stat Comput 5:300. The line never leaves the range of the two readings it runs between.
 */
final class LoggedTrace extends Value implements TemperatureTrace {
  private static final long serialVersionUID = 1;

  private final double[] hours;
  private final double[] celsius;
  private final double[] slopes;

  LoggedTrace(double[] hours, double[] celsius) {
    if (hours.length != celsius.length) {
      throw new InputException(
          "logged-temperature.lengths",
          hours.length
              + " hours and "
              + celsius.length
              + " temperatures: give one of each per reading");
    }
    if (hours.length < 2) {
      throw new InputException(
          "logged-temperature.too-few",
          "a logged temperature needs at least two readings, given " + hours.length);
    }
    for (double each : celsius) {
      Checks.inRange("logged temperature", each, -60, 300, "°C");
    }
    this.hours = TraceHours.ascending(hours);
    this.celsius = celsius.clone();
    this.slopes = slopes(this.hours, this.celsius);
  }

  private static double[] slopes(double[] x, double[] y) {
    int n = x.length;
    double[] width = new double[n - 1];
    double[] secant = new double[n - 1];
    for (int i = 0; i < n - 1; i++) {
      width[i] = x[i + 1] - x[i];
      secant[i] = (y[i + 1] - y[i]) / width[i];
    }
    double[] slope = new double[n];
    for (int i = 1; i < n - 1; i++) {
      slope[i] = innerSlope(width[i - 1], width[i], secant[i - 1], secant[i]);
    }
    boolean single = n == 2;
    slope[0] = single ? secant[0] : endSlope(width[0], width[1], secant[0], secant[1]);
    slope[n - 1] =
        single ? secant[0] : endSlope(width[n - 2], width[n - 3], secant[n - 2], secant[n - 3]);
    return slope;
  }

  private static double innerSlope(double h0, double h1, double d0, double d1) {
    if (d0 * d1 <= 0) {
      return 0;
    }
    double w0 = 2 * h1 + h0;
    double w1 = h1 + 2 * h0;
    return (w0 + w1) / (w0 / d0 + w1 / d1);
  }

  /** Three-point end slope, held back so that the line stays monotone. */
  private static double endSlope(double h0, double h1, double d0, double d1) {
    double slope = ((2 * h0 + h1) * d0 - h0 * d1) / (h0 + h1);
    if (slope * d0 <= 0) {
      return 0;
    }
    boolean tooSteep = d0 * d1 <= 0 && Math.abs(slope) > 3 * Math.abs(d0);
    return tooSteep ? 3 * d0 : slope;
  }

  @Override
  public double celsius(double at) {
    int last = hours.length - 1;
    if (at <= hours[0]) {
      return celsius[0];
    }
    if (at >= hours[last]) {
      return celsius[last];
    }
    int found = Arrays.binarySearch(hours, at);
    return found >= 0 ? celsius[found] : between(-found - 2, at);
  }

  private double between(int i, double at) {
    double width = hours[i + 1] - hours[i];
    double s = (at - hours[i]) / width;
    double rest = 1 - s;
    double left = celsius[i] * (1 + 2 * s) + width * slopes[i] * s;
    double right = celsius[i + 1] * (1 + 2 * rest) - width * slopes[i + 1] * rest;
    return rest * rest * left + s * s * right;
  }

  @Override
  public TemperatureTrace ofDough() {
    return SmoothedTrace.isClose(hours) ? SmoothedTrace.of(hours, celsius) : this;
  }

  @Override
  public double[] breakpoints() {
    return new double[] {hours[0], hours[hours.length - 1]};
  }

  @Override
  protected List<?> parts() {
    return List.of(list(hours), list(celsius));
  }

  @Override
  public String toString() {
    return hours.length
        + " readings, "
        + StepTrace.degrees(celsius[0])
        + " at "
        + Checks.plain(hours[0])
        + " h to "
        + StepTrace.degrees(celsius[celsius.length - 1])
        + " at "
        + Checks.plain(hours[hours.length - 1])
        + " h";
  }
}
