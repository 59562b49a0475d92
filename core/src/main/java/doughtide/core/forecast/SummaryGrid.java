package doughtide.core.forecast;

import doughtide.core.rise.DoughTemperature;
import java.io.Serializable;
import java.util.Arrays;
import java.util.stream.DoubleStream;

/**
 * The hours at which the heights of an ensemble's runs are kept: close together while a dough is
 * young, and on both sides of every jump of the temperature, where the volume may jump. Between
 * them the monotone cubic of Fritsch &amp; Butland 1984, SIAM J Sci Stat Comput 5:300. Immutable.
 */
final class SummaryGrid implements Serializable {
  private static final long serialVersionUID = 1;

  private static final double EVEN_UNTIL_HOURS = 12;
  private static final int MOST_JUMPS = 64;
  private static final double BEFORE_JUMP_HOURS = 1e-6;

  private final double[] hours;

  private SummaryGrid(double[] hours) {
    this.hours = hours;
  }

  /**
   * For a run.
   *
   * @param length of the run, hours
   * @param step between two hours, hours; from twelve hours on it grows with the hour
   */
  static SummaryGrid of(DoughTemperature temperature, double length, double step) {
    DoubleStream.Builder hours = DoubleStream.builder();
    for (double at = 0; at < length; at += step * Math.max(1, at / EVEN_UNTIL_HOURS)) {
      hours.add(at);
    }
    double[] jumps = temperature.jumps(length);
    for (int i = 0; i < Math.min(jumps.length, MOST_JUMPS); i++) {
      hours.add(jumps[i] - BEFORE_JUMP_HOURS).add(jumps[i]);
    }
    return new SummaryGrid(hours.add(length).build().sorted().distinct().toArray());
  }

  int size() {
    return hours.length;
  }

  double hours(int i) {
    return hours[i];
  }

  /** The first place after an hour, from 1 to the last place. */
  int firstAfter(double at) {
    int found = Arrays.binarySearch(hours, at);
    int after = found >= 0 ? found + 1 : -found - 1;
    return Math.min(Math.max(after, 1), hours.length - 1);
  }

  /** The value at an hour. */
  double valueAt(double at, float[] values) {
    return valueAt(at, values, firstAfter(at));
  }

  /** The value at an hour between a place and the one before it. */
  double valueAt(double at, float[] values, int after) {
    int before = after - 1;
    double width = hours[after] - hours[before];
    double s = (at - hours[before]) / width;
    double rest = 1 - s;
    double left = values[before] * (1 + 2 * s) + width * slope(before, values) * s;
    double right = values[after] * (1 + 2 * rest) - width * slope(after, values) * rest;
    return rest * rest * left + s * s * right;
  }

  /** Slope at a place; at the ends that of the line to the neighbour. */
  private double slope(int i, float[] values) {
    if (i == 0 || i == hours.length - 1) {
      return secant(Math.min(i, hours.length - 2), values);
    }
    double before = secant(i - 1, values);
    double after = secant(i, values);
    if (before * after <= 0) {
      return 0;
    }
    double wide = hours[i + 1] - hours[i];
    double wideBefore = hours[i] - hours[i - 1];
    double w0 = 2 * wide + wideBefore;
    double w1 = wide + 2 * wideBefore;
    return (w0 + w1) / (w0 / before + w1 / after);
  }

  private double secant(int i, float[] values) {
    return (values[i + 1] - values[i]) / (hours[i + 1] - hours[i]);
  }
}
