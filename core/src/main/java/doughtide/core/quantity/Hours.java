package doughtide.core.quantity;

import java.time.Duration;
import java.time.ZonedDateTime;

/**
 * Between the hours of this library, which are numbers, and the clocks and durations of {@code
 * java.time}. Hours are elapsed time, so that a night in which the clocks change comes out right.
 *
 * <pre>{@code
 * ZonedDateTime mixedAt = ZonedDateTime.parse("2027-03-06T09:30+01:00[Europe/Berlin]");
 * ZonedDateTime shapeAt = Hours.after(mixedAt, 5.25);
 * }</pre>
 */
public final class Hours {
  private static final double MOST = 10_000 * 365.0 * 24;
  private static final double MILLIS = 3_600_000;

  private Hours() {}

  /**
   * {@return a duration in hours, to the millisecond}
   *
   * @param duration any length, negative as well
   */
  public static double of(Duration duration) {
    return duration.toMillis() / MILLIS;
  }

  /**
   * From one moment to another, hours; negative where the second is the earlier one.
   *
   * @param from the moment to count from
   * @param to the moment to count to
   * @return hours from one moment to another; negative where the second is the earlier one
   */
  public static double between(ZonedDateTime from, ZonedDateTime to) {
    return of(Duration.between(from, to));
  }

  /**
   * {@return hours as a duration, to the second}
   *
   * @param hours finite, at most ten thousand years
   * @throws InputException if they are not
   */
  public static Duration duration(double hours) {
    Checks.inRange("hours", hours, -MOST, MOST, "h");
    return Duration.ofSeconds(Math.round(hours * 3600));
  }

  /**
   * {@return a moment so many hours later, to the second}
   *
   * @param start the moment to count from
   * @param hours finite, at most ten thousand years
   * @throws InputException if they are not
   */
  public static ZonedDateTime after(ZonedDateTime start, double hours) {
    return start.plus(duration(hours));
  }
}
