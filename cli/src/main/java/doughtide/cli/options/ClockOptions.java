package doughtide.cli.options;

import doughtide.cli.args.Arguments;
import doughtide.cli.args.ClockTimes;
import doughtide.cli.args.DayOfClock;
import doughtide.cli.args.OptionSpec;
import doughtide.cli.session.Environment;
import doughtide.core.quantity.Quantities;
import java.time.ZoneId;
import java.util.List;
import java.util.Optional;
import java.util.Set;

/** The options that turn hours into clock times. */
public final class ClockOptions {

  private static final String MIXED_AT = "mixed-at";
  private static final String ZONE = "zone";

  /** The options that are a moment, or several. */
  private static final Set<String> MOMENTS =
      Set.of(
          MIXED_AT,
          "bake-at",
          "ready-at",
          "fed-at",
          "shape-at",
          "leave-at",
          "back-at",
          "now",
          "did",
          "at-the-bench");

  private ClockOptions() {}

  /** The same with the dates of what was told as {@code tomorrow 7:00}. */
  public static Arguments dated(Arguments arguments, Environment environment) {
    return arguments.rewritten(
        MOMENTS,
        (option, text) ->
            DayOfClock.hasWord(text)
                ? days(arguments, environment).dated("--" + option, text)
                : text);
  }

  private static DayOfClock days(Arguments arguments, Environment environment) {
    ZoneId zone = zone(arguments, environment);
    return new DayOfClock(
        environment.now().atZone(zone).toLocalDate(), environment.catalogue().vocabulary());
  }

  private static ZoneId zone(Arguments arguments, Environment environment) {
    return Optional.of(ZONE)
        .filter(arguments::offers)
        .flatMap(arguments::text)
        .map(name -> Quantities.zone("--" + ZONE, name))
        .orElseGet(environment::zone);
  }

  public static List<OptionSpec> specs() {
    return List.of(
        OptionSpec.value(
            MIXED_AT,
            "TIME",
            "09:30",
            "When flour, water and starter came together: a time of today, yesterday 22:00 or a"
                + " full date, such as 2027-03-06T12:00; hours are then shown as clock times too."),
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
          ZoneId zone = zone(arguments, environment);
          return ClockTimes.parse("--" + MIXED_AT, text, zone, environment.now());
        });
  }
}
