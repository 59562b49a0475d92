package doughtide.core.forecast;

import doughtide.core.quantity.Checks;
import doughtide.core.quantity.Hours;
import doughtide.core.quantity.InnerFault;
import doughtide.core.quantity.InputException;
import java.io.Serializable;
import java.time.ZonedDateTime;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * A time with its uncertainty, hours since mixing (or feeding). One dough in ten is there before
 * {@code early}, half before {@code likely}, nine in ten before {@code late}. A part is empty where
 * that many doughs never get there, or not within the time looked at.
 *
 * @param early 10 % quantile
 * @param likely median
 * @param late 90 % quantile
 * @param reachedShare of the doughs that get there within the time looked at, 0…1
 */
public record TimeWindow(
    OptionalDouble early, OptionalDouble likely, OptionalDouble late, double reachedShare)
    implements Serializable {
  /**
   * Refuses nothing where something is needed.
   *
   * @param early 10 % quantile
   * @param likely median
   * @param late 90 % quantile
   * @param reachedShare of the doughs that get there within the time looked at, 0…1
   */
  public TimeWindow {
    Checks.given("early", early);
    Checks.given("late", late);
    Checks.given("likely", likely);
  }

  /** A window that nothing reaches. */
  public static final TimeWindow NEVER =
      new TimeWindow(OptionalDouble.empty(), OptionalDouble.empty(), OptionalDouble.empty(), 0);

  /**
   * {@return window of the hours that the members of an ensemble give}
   *
   * @param hours one value a member, positive infinity for never; one or more
   * @throws InnerFault if there is none or one is not a number
   */
  public static TimeWindow of(double[] hours) {
    return Distribution.of(hours).window();
  }

  /**
   * {@return the window moved by some hours}
   *
   * @param hours to add, negative for earlier; finite, at most ten thousand years
   * @throws InputException if they are not
   */
  public TimeWindow plus(double hours) {
    Hours.duration(hours);
    return new TimeWindow(
        shifted(early, hours), shifted(likely, hours), shifted(late, hours), reachedShare);
  }

  /**
   * {@return the window on a clock}
   *
   * @param start the moment its hours are counted from, such as that of mixing
   */
  public ClockWindow after(ZonedDateTime start) {
    return new ClockWindow(
        moment(start, early), moment(start, likely), moment(start, late), reachedShare);
  }

  private static Optional<ZonedDateTime> moment(ZonedDateTime start, OptionalDouble hours) {
    return hours.isEmpty()
        ? Optional.empty()
        : Optional.of(Hours.after(start, hours.getAsDouble()));
  }

  private static OptionalDouble shifted(OptionalDouble value, double hours) {
    return value.isEmpty() ? value : OptionalDouble.of(value.getAsDouble() + hours);
  }

  /** {@return late minus early, hours; empty unless both are known} */
  public OptionalDouble widthHours() {
    return early.isEmpty() || late.isEmpty()
        ? OptionalDouble.empty()
        : OptionalDouble.of(late.getAsDouble() - early.getAsDouble());
  }

  /** An {@link OptionalDouble} is not serializable; an infinite hour stands for none. */
  private record Stored(double early, double likely, double late, double reachedShare)
      implements Serializable {
    private Object readResolve() {
      return new TimeWindow(known(early), known(likely), known(late), reachedShare);
    }

    private static OptionalDouble known(double hours) {
      return Double.isInfinite(hours) ? OptionalDouble.empty() : OptionalDouble.of(hours);
    }
  }

  private Object writeReplace() {
    double never = Double.POSITIVE_INFINITY;
    return new Stored(early.orElse(never), likely.orElse(never), late.orElse(never), reachedShare);
  }
}
