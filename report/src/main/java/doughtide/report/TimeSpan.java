package doughtide.report;

/**
 * From early to late, in hours.
 *
 * @param earlyHours finite, not negative
 * @param lateHours finite, not before early
 */
public record TimeSpan(double earlyHours, double lateHours) {
  /** Checks the order. */
  public TimeSpan {
    if (!(earlyHours >= 0) || !(lateHours >= earlyHours) || Double.isInfinite(lateHours)) {
      throw new IllegalArgumentException(
          "hours must be finite and in order, were " + earlyHours + " and " + lateHours);
    }
  }
}
