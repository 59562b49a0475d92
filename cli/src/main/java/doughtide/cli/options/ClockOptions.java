package doughtide.cli.options;

import doughtide.cli.args.Arguments;
import doughtide.cli.args.ClockTimes;
import doughtide.cli.args.OptionSpec;
import doughtide.cli.session.Environment;
import doughtide.core.quantity.Quantities;
import java.time.ZoneId;
import java.util.List;
import java.util.Optional;

/** The options that turn hours into clock times. */
public final class ClockOptions {

  private static final String MIXED_AT = "mixed-at";
  private static final String ZONE = "zone";

  private ClockOptions() {}

  public static List<OptionSpec> specs() {
    return List.of(
        OptionSpec.value(
            MIXED_AT,
            "TIME",
            "09:30",
            "When flour, water and starter came together: a time of today or a full date, such as"
                + " 2027-03-06T12:00; hours are then shown as clock times too."),
        OptionSpec.value(
                ZONE, "ZONE", "Europe/Berlin", "The place whose clock is meant, with --mixed-at.")
            .withDefault("the zone of this computer"));
  }

  /** Clock times, if the time of mixing was given. */
  public static Optional<ClockTimes> read(Arguments arguments, Environment environment) {
    Optional<String> mixedAt = arguments.text(MIXED_AT);
    arguments.needs(ZONE, MIXED_AT, "09:30");
    return mixedAt.map(
        text -> {
          ZoneId zone =
              arguments
                  .text(ZONE)
                  .map(name -> Quantities.zone("--" + ZONE, name))
                  .orElseGet(environment::zone);
          return ClockTimes.parse("--" + MIXED_AT, text, zone, environment.now());
        });
  }
}
