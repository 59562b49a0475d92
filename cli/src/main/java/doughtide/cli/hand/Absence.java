package doughtide.cli.hand;

import doughtide.cli.args.Arguments;
import doughtide.cli.args.ClockTimes;
import doughtide.cli.args.OptionSpec;
import doughtide.core.quantity.InputException;
import doughtide.core.quantity.Quantities;
import java.util.List;
import java.util.Optional;

/**
 * When the baker is away from a dough, in hours since mixing.
 *
 * @param leaveHours when she must leave
 * @param backHours when she is back
 */
public record Absence(double leaveHours, double backHours) {

  /** The option that tells when she must leave. */
  public static final String LEAVE_AT = "leave-at";

  private static final String BACK_AT = "back-at";
  private static final double LATEST_HOURS = 48;

  /** The options that tell it. */
  public static List<OptionSpec> specs() {
    return List.of(
        OptionSpec.value(LEAVE_AT, "TIME", "15:00", "When you must leave: a time after mixing."),
        OptionSpec.value(BACK_AT, "TIME", "19:00", "When you are back: a time after --leave-at."));
  }

  /**
   * The absence, if one was given.
   *
   * @param after hours since mixing
   */
  public static Optional<Absence> read(Arguments arguments, ClockTimes clock, double after) {
    if (!arguments.has(LEAVE_AT) && !arguments.has(BACK_AT)) {
      return Optional.empty();
    }
    double leave = hour(arguments, LEAVE_AT, clock, after);
    return Optional.of(new Absence(leave, hour(arguments, BACK_AT, clock, leave)));
  }

  /** The refusal where it is not known what becomes of the loaves. */
  public static InputException withoutLoaves() {
    return new InputException(
        "how the loaves wait is missing: add --cold 4C --bake-at 07:30, or --proof-temp 24C");
  }

  /**
   * An hour that was given: the first such time after the one before it.
   *
   * @param option that gives it
   * @param after hours since mixing
   */
  public static double hour(Arguments arguments, String option, ClockTimes clock, double after) {
    String text = arguments.text(option).orElseThrow(() -> arguments.missing(option));
    return clock.hoursUntil("--" + option, text, 0).stream()
        .filter(hours -> hours > after)
        .filter(hours -> hours <= LATEST_HOURS)
        .findFirst()
        .orElseThrow(
            () ->
                new InputException(
                    Quantities.shown("--" + option, text)
                        + " must come later, and within two days after mixing: check the times"));
  }
}
