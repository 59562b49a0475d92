package doughtide.core.forecast;

import doughtide.core.quantity.Rise;
import doughtide.core.rise.RiseCurve;
import java.io.Serializable;
import java.util.OptionalDouble;

/**
 * What is kept of one run of an ensemble: the hours at which something happens, and the heights at
 * the hours of a {@link SummaryGrid}, rounded to a float (1e-7 of the height). Hours of a rise read
 * from it agree with the run's own to 0.002 h, at the top and in the cold, where the curve is flat,
 * to 0.05 h. Positive infinity stands for never.
 *
 * @param peak hour of the greatest height
 * @param peakRise the greatest height as a rise, a fraction; the last one of the run if the
 *     greatest lies beyond it
 * @param over hour from which the dough is past its best
 * @param ripe hour from which a starter is ripe
 * @param fallen hour at which a starter has fallen
 * @param rises rise at each hour of the grid, a fraction
 */
@SuppressWarnings("ArrayRecordComponent") // written once, never handed out
record MemberSummary(
    double peak, double peakRise, double over, double ripe, double fallen, float[] rises)
    implements Serializable {
  private static final int HALVINGS = 20; // to a millionth of the time between two hours

  static MemberSummary of(RiseCurve curve, SummaryGrid grid) {
    OptionalDouble peak = curve.hoursToPeak();
    float[] rises = new float[grid.size()];
    for (int i = 0; i < rises.length; i++) {
      rises[i] = (float) curve.riseAt(grid.hours(i)).fraction();
    }
    return new MemberSummary(
        never(peak),
        curve.riseAt(peak.orElse(curve.endHours())).fraction(),
        never(curve.hoursToOver()),
        never(curve.hoursToRipe()),
        never(curve.hoursToFallen()),
        rises);
  }

  private static double never(OptionalDouble hours) {
    return hours.orElse(Double.POSITIVE_INFINITY);
  }

  /** Rise at a place of the grid, or the greatest height if that was passed. */
  double highestAt(int i, SummaryGrid grid) {
    return grid.hours(i) >= peak ? Math.max(peakRise, rises[i]) : rises[i];
  }

  /** The highest rise up to an hour. */
  double highestBy(double hours, SummaryGrid grid) {
    double highest = hours >= peak ? peakRise : grid.valueAt(hours, rises);
    for (int i = 0; i < rises.length && grid.hours(i) <= hours; i++) {
      highest = Math.max(highest, rises[i]);
    }
    return highest;
  }

  /** How long a starter stays ripe, hours. */
  double ripeFor() {
    return Double.isInfinite(peak) ? peak : peak - ripe;
  }

  /** First hour at which a rise is reached, positive infinity for never. */
  double hoursTo(Rise rise, SummaryGrid grid) {
    double level = rise.fraction();
    int first = 0;
    while (first < rises.length && !(rises[first] >= level)) {
      first++;
    }
    boolean hasPeak = peak < grid.hours(rises.length - 1);
    if (hasPeak && level <= peakRise && first >= grid.firstAfter(peak)) {
      return hoursBelowPeak(level, grid);
    }
    if (first == rises.length) {
      return Double.POSITIVE_INFINITY;
    }
    return first == 0 ? grid.hours(0) : crossing(level, first, grid);
  }

  /** The last bit up to the greatest height, which lies between two hours, is a parabola. */
  private double hoursBelowPeak(double level, SummaryGrid grid) {
    int before = grid.firstAfter(peak) - 1;
    double left = (peakRise - level) / Math.max(peakRise - rises[before], 1e-12);
    return peak - (peak - grid.hours(before)) * Math.sqrt(Math.min(left, 1));
  }

  private double crossing(double level, int after, SummaryGrid grid) {
    double low = grid.hours(after - 1);
    double high = grid.hours(after);
    for (int i = 0; i < HALVINGS; i++) {
      double middle = (low + high) / 2;
      if (grid.valueAt(middle, rises, after) >= level) {
        high = middle;
      } else {
        low = middle;
      }
    }
    return high;
  }
}
