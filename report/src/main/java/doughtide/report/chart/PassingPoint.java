package doughtide.report.chart;

import doughtide.core.Internal;
import java.util.OptionalDouble;

/**
 * When the rise passes a mark; a time that is never reached is absent.
 *
 * @param percent rise over the volume after mixing, in percent, above 0
 * @param earlyHours hours after mixing, not negative
 * @param likelyHours hours after mixing, not before early
 * @param lateHours hours after mixing, not before likely
 */
@Internal
public record PassingPoint(
    double percent,
    OptionalDouble earlyHours,
    OptionalDouble likelyHours,
    OptionalDouble lateHours) {

  /** Checks that the times are finite and in order. */
  public PassingPoint {
    if (!(percent > 0) || !Double.isFinite(percent)) {
      throw new IllegalArgumentException("percent must be above 0, was " + percent);
    }
    double early = earlyHours.orElse(0);
    double likely = likelyHours.orElse(early);
    if (!(early >= 0)
        || !(likely >= early)
        || !(lateHours.orElse(likely) >= likely)
        || Double.isInfinite(lateHours.orElse(likely))) {
      throw new IllegalArgumentException(
          "hours of " + percent + " % must be finite and in order early, likely, late");
    }
  }

  /** A mark that all of early, likely and late reach. */
  public static PassingPoint of(
      double percent, double earlyHours, double likelyHours, double lateHours) {
    return new PassingPoint(
        percent,
        OptionalDouble.of(earlyHours),
        OptionalDouble.of(likelyHours),
        OptionalDouble.of(lateHours));
  }
}
