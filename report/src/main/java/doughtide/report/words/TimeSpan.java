package doughtide.report.words;

import doughtide.core.forecast.TimeWindow;
import java.util.Optional;

/**
 * From early to late, in hours.
 *
 * @param earlyHours finite, not negative
 * @param lateHours not before early; infinite where one dough in ten never gets there
 */
public record TimeSpan(double earlyHours, double lateHours) {
  /** Checks the order. */
  public TimeSpan {
    if (!(earlyHours >= 0) || !(lateHours >= earlyHours) || Double.isInfinite(earlyHours)) {
      throw new IllegalArgumentException(
          "hours must be in order and begin at a finite hour, were "
              + earlyHours
              + " and "
              + lateHours);
    }
  }

  /** The span of a forecast; absent where not even one dough in ten gets there. */
  public static Optional<TimeSpan> of(TimeWindow window) {
    return window.early().isEmpty()
        ? Optional.empty()
        : Optional.of(
            new TimeSpan(
                window.early().getAsDouble(), window.late().orElse(Double.POSITIVE_INFINITY)));
  }

  /** A single hour. */
  public static TimeSpan at(double hours) {
    return new TimeSpan(hours, hours);
  }

  /** Whether all but a tenth get there. */
  public boolean isClosed() {
    return Double.isFinite(lateHours);
  }
}
