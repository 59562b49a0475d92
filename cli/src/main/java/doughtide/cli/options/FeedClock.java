package doughtide.cli.options;

import doughtide.cli.args.Arguments;
import doughtide.cli.args.ClockTimes;
import doughtide.cli.args.OptionSpec;
import doughtide.cli.session.Environment;
import doughtide.core.quantity.ClockText;
import doughtide.core.quantity.Hours;
import doughtide.core.quantity.InputException;
import doughtide.core.quantity.Quantities;
import java.time.Duration;
import java.time.Instant;
import java.time.ZoneId;
import java.time.ZonedDateTime;
import java.time.temporal.ChronoUnit;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * When the starter is fed and when it is wanted, as far as that was said. A clock time without a
 * date is today's for feeding, or the next one where the feed itself is asked for; and the next one
 * after that for ready.
 *
 * @param fedAt first feeding
 * @param readyAt when it is wanted
 * @param said what is not as it may have been meant, in sentences
 */
public record FeedClock(
    Optional<ZonedDateTime> fedAt, Optional<ZonedDateTime> readyAt, List<String> said) {

  public static final String FED_AT = "fed-at";
  public static final String READY_AT = "ready-at";
  private static final String ZONE = "zone";

  /** So long ago is as good as now. */
  private static final Duration JUST_NOW = Duration.ofHours(1);

  public static List<OptionSpec> specs() {
    return List.of(
        OptionSpec.value(
            READY_AT,
            "TIME",
            "07:00",
            "When it is wanted ripe: the next time the clock shows this, or a full date such as"
                + " 2027-03-07T07:00. With --fed-at gives the ratio, with --ratio the hour to"
                + " feed."),
        OptionSpec.value(
            FED_AT,
            "TIME",
            "21:30",
            "When it is first fed: a time of today, without --ratio the next such time, or a full"
                + " date; hours are then shown as clock times too. With --ready-at alone it is fed"
                + " now."),
        OptionSpec.value(
                ZONE, "ZONE", "Europe/Berlin", "The place whose clock is meant by these times.")
            .withDefault("the zone of this computer"));
  }

  public static FeedClock read(Arguments arguments, Environment environment) {
    boolean clock = arguments.has(FED_AT) || arguments.has(READY_AT);
    if (arguments.has(ZONE) && !clock) {
      throw new InputException(
          "--zone says nothing without --fed-at or --ready-at: add for example --fed-at 21:30");
    }
    ZoneId zone =
        arguments
            .text(ZONE)
            .map(name -> Quantities.zone("--" + ZONE, name))
            .orElseGet(environment::zone);
    Instant now = environment.now();
    List<String> said = new ArrayList<>();
    Optional<ZonedDateTime> fed =
        arguments.text(FED_AT).map(text -> fed(text, zone, now, asksRatio(arguments), said));
    if (fed.isEmpty() && asksRatio(arguments)) {
      fed = Optional.of(now.atZone(zone).truncatedTo(ChronoUnit.MINUTES));
      said.add(
          "No --fed-at was given: this is for a feeding now, "
              + ClockTimes.from(fed.get()).startInWords()
              + ".");
    }
    Instant earliest = fed.map(ZonedDateTime::toInstant).orElse(now);
    Optional<ZonedDateTime> ready =
        arguments.text(READY_AT).map(text -> after(text, zone, earliest));
    if (ready.isPresent() && ready.get().toInstant().isBefore(now)) {
      said.add("The hour at which it is wanted has passed already.");
    }
    return new FeedClock(fed, ready, List.copyOf(said));
  }

  private static boolean asksRatio(Arguments arguments) {
    return arguments.has(READY_AT)
        && !arguments.has(FeedOptions.RATIO)
        && !arguments.has(StageOptions.STAGE)
        && !arguments.has(StageOptions.STAGES);
  }

  /** When it is fed: what is still to be planned is planned for the next such time. */
  private static ZonedDateTime fed(
      String text, ZoneId zone, Instant now, boolean planned, List<String> said) {
    ZonedDateTime fed = ClockTimes.parse("--" + FED_AT, text, zone, now).start();
    if (!planned || fed.toInstant().plus(JUST_NOW).isAfter(now)) {
      return fed;
    }
    if (ClockText.isDated(text)) {
      said.add("The hour of feeding has passed already.");
      return fed;
    }
    ClockTimes from = ClockTimes.from(now.atZone(zone));
    ZonedDateTime next = from.after(from.hoursUntil("--" + FED_AT, text, 0).get(0));
    said.add(
        Quantities.shown("--" + FED_AT, text)
            + " has passed for today: this is for "
            + ClockTimes.from(next).startInWords()
            + ".");
    return next;
  }

  private static ZonedDateTime after(String text, ZoneId zone, Instant earliest) {
    String name = "--" + READY_AT;
    ClockTimes from = ClockTimes.from(earliest.atZone(zone));
    if (!ClockText.isDated(text)) {
      return from.after(from.hoursUntil(name, text, 0).get(0));
    }
    ZonedDateTime ready = ClockTimes.parse(name, text, zone, earliest).start();
    if (!ready.toInstant().isAfter(earliest)) {
      throw new InputException(
          Quantities.shown(name, text)
              + " lies before "
              + from.startInWords()
              + ": give a later time");
    }
    return ready;
  }

  /** Real hours from feeding to ready, where both are known. */
  public OptionalDouble hours() {
    return fedAt.isEmpty() || readyAt.isEmpty()
        ? OptionalDouble.empty()
        : OptionalDouble.of(Hours.between(fedAt.get(), readyAt.get()));
  }

  /** The first feeding so many hours before it is wanted, to the minute. */
  public Optional<ZonedDateTime> feedingBefore(double hours) {
    return readyAt.map(ready -> ready.minusMinutes(Math.round(hours * 60)));
  }
}
