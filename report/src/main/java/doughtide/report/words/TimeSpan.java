package doughtide.report.words;

import doughtide.core.Internal;
import doughtide.core.forecast.TimeWindow;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * From early to late, in hours, and the likely hour between them where there is one.
 *
 * @param earlyHours finite, not negative
 * @param likelyHours inside the span; empty for a stretch of time without one, and where half never
 *     get there
 * @param lateHours not before early; infinite where one dough in ten never gets there
 */
@Internal
public record TimeSpan(double earlyHours, OptionalDouble likelyHours, double lateHours) {
  /** Checks the order. */
  public TimeSpan {
    double likely = likelyHours.orElse(earlyHours);
    if (!(earlyHours >= 0)
        || !(likely >= earlyHours)
        || !(lateHours >= likely)
        || Double.isInfinite(likely)) {
      throw new IllegalArgumentException(
          "hours must be in order and begin at a finite hour, were "
              + earlyHours
              + ", "
              + likely
              + " and "
              + lateHours);
    }
  }

  /** A stretch of time of which no hour is likelier than another. */
  public TimeSpan(double earlyHours, double lateHours) {
    this(earlyHours, OptionalDouble.empty(), lateHours);
  }

  /** The span of a forecast; absent where not even one dough in ten gets there. */
  public static Optional<TimeSpan> of(TimeWindow window) {
    return window.early().isEmpty()
        ? Optional.empty()
        : Optional.of(
            new TimeSpan(
                window.early().getAsDouble(),
                window.likely(),
                window.late().orElse(Double.POSITIVE_INFINITY)));
  }

  /** A single hour. */
  public static TimeSpan at(double hours) {
    return new TimeSpan(hours, hours);
  }

  /** The same span so many hours later. */
  public TimeSpan later(double hours) {
    OptionalDouble likely =
        likelyHours.isPresent()
            ? OptionalDouble.of(likelyHours.getAsDouble() + hours)
            : likelyHours;
    return new TimeSpan(earlyHours + hours, likely, lateHours + hours);
  }

  /** Whether all but a tenth get there. */
  public boolean isClosed() {
    return Double.isFinite(lateHours);
  }
}
