package doughtide.core.document;

import doughtide.core.quantity.Checks;
import doughtide.core.quantity.ClockText;
import doughtide.core.quantity.Hours;
import doughtide.core.quantity.InputException;
import doughtide.core.quantity.Quantities;
import doughtide.core.quantity.Shorten;
import java.time.LocalDate;
import java.time.LocalTime;
import java.time.ZoneId;
import java.time.ZoneOffset;
import java.time.ZonedDateTime;
import java.util.Locale;
import java.util.Optional;
import java.util.regex.Pattern;
import org.jspecify.annotations.Nullable;

/**
 * Turns the times of one file into hours since mixing: ISO 8601 with or without offset, a clock
 * time as {@link ClockText} reads it (one earlier than the one before it is of the next day), or a
 * duration such as 90min. What is written as 1h30 follows the times before it, else it is refused
 * where both can be.
 */
final class ReadingsClock {

  private static final Pattern CLOCK = Pattern.compile("[0-9]{1,2}:[0-9]{2}(:[0-9]{2})?");
  private static final Pattern DURATION = Pattern.compile("[0-9.,]+ ?[hmsd][a-z]*");
  private static final Pattern HOURS_MINUTES = Pattern.compile("([0-9]{1,2}) ?h ?([0-9]{2})");
  private static final Pattern BARE = Pattern.compile("[0-9]{1,2}");
  private static final LocalDate SOME_DAY = LocalDate.of(2000, 1, 1);
  private static final double LONGEST_GAP_HOURS = 16;

  private final ZoneId zone;
  private final @Nullable LocalTime mixedClock;
  private @Nullable ZonedDateTime mixed;
  private double lastHours = -1;
  private boolean durations;
  private boolean clocks;

  private ReadingsClock(
      ZoneId zone, @Nullable LocalTime mixedClock, @Nullable ZonedDateTime mixed) {
    this.zone = zone;
    this.mixedClock = mixedClock;
    this.mixed = mixed;
  }

  /** The clock of a dough whose hour of mixing nobody has told. */
  static ReadingsClock unknownStart(ZoneId zone) {
    return new ReadingsClock(zone, null, null);
  }

  /**
   * The clock of a dough.
   *
   * @param name what the moment of mixing is called in messages
   * @param text the moment of mixing as typed, with or without its date
   */
  static ReadingsClock mixedAt(String name, String text, ZoneId zone) {
    String clean = Quantities.clean(text);
    return ClockText.isDated(clean)
        ? new ReadingsClock(zone, null, dated(name, clean, zone))
        : new ReadingsClock(zone, ClockText.time(name, clean), null);
  }

  /**
   * The same, in which a clock time of mixing without a date is the last such time before a moment.
   */
  ReadingsClock before(ZonedDateTime moment) {
    LocalTime clock = mixedClock;
    if (clock == null) {
      return this;
    }
    ZonedDateTime here = moment.withZoneSameInstant(zone);
    ZonedDateTime sameDay = here.with(clock);
    return new ReadingsClock(zone, null, sameDay.isAfter(here) ? sameDay.minusDays(1) : sameDay);
  }

  /** Hours since mixing of the last line that told a time; negative if there was none. */
  double lastHours() {
    return lastHours;
  }

  /**
   * Hours since mixing.
   *
   * @param text a time as typed
   * @throws InputException if it is no time, lies before mixing or not after the one before
   */
  public double hours(String text) {
    String clean = text.strip();
    double hours = CLOCK.matcher(clean).matches() ? ofClock(clean) : ofOther(clean);
    if (hours < 0) {
      throw new InputException(
          "readings.before-mixing",
          "time " + clean + " lies before mixing: correct it or 'mixed at:'");
    }
    if (hours <= lastHours) {
      throw new InputException(
          "readings.order",
          "time " + clean + " is not later than the reading before it: put the lines in order");
    }
    Checks.inRange("time since mixing", hours, 0, 240, "h");
    lastHours = hours;
    return hours;
  }

  /** The moment of mixing, if a date is known. */
  Optional<ZonedDateTime> mixed() {
    ZonedDateTime start = mixed;
    return start == null || start.toLocalDate().equals(SOME_DAY)
        ? Optional.empty()
        : Optional.of(start);
  }

  private double ofOther(String text) {
    if (ClockText.isDated(text)) {
      ZonedDateTime when = dated("time", text, zone);
      ZonedDateTime start = start(when);
      double hours = Hours.between(start, when);
      return hours > lastHours ? hours : Hours.between(start, when.withLaterOffsetAtOverlap());
    }
    String clean = Quantities.clean(text).toLowerCase(Locale.ROOT);
    if (HOURS_MINUTES.matcher(clean).matches()) {
      return ofHoursMinutes(clean);
    }
    if (DURATION.matcher(clean).matches()) {
      durations = true;
      return Quantities.hours("time", text);
    }
    if (BARE.matcher(clean).matches() && !clocks) {
      throw twoWays(clean, clean + ":00 or, since mixing, " + clean + "h");
    }
    if (ClockText.isClock(clean)) {
      return ofClock(clean);
    }
    throw new InputException(
        "readings.time",
        "time '"
            + Shorten.to(text, 40)
            + "' is no time: write 10:30, 2027-03-06T10:30 or, since mixing, 90min");
  }

  /** A clock time or a duration, whichever the lines before were; or the only one that can be. */
  private double ofHoursMinutes(String text) {
    double since = Quantities.hours("time", text);
    if (durations || !ClockText.isClock(text) || !hasStart()) {
      durations = true;
      return since;
    }
    if (clocks || since <= lastHours) {
      return ofClock(text);
    }
    String clock = text.replaceAll(" ?h ?", ":");
    throw twoWays(text, clock + " or, since mixing, " + Math.round(since * 60) + "min");
  }

  private boolean hasStart() {
    return mixed != null || mixedClock != null;
  }

  private static InputException twoWays(String text, String readings) {
    return new InputException(
        "readings.time-two-ways", "time " + text + " can be read two ways: write " + readings);
  }

  private double ofClock(String text) {
    LocalTime time = ClockText.time("time", text);
    clocks = true;
    ZonedDateTime start = mixed;
    if (start == null) {
      LocalTime clock = mixedClock;
      if (clock == null) {
        throw noStart();
      }
      start = SOME_DAY.atTime(clock).atZone(ZoneOffset.UTC);
      mixed = start;
    }
    ZonedDateTime before = Hours.after(start, Math.max(lastHours, 0));
    ZonedDateTime when = before.with(time);
    LocalDate day = before.toLocalDate();
    if (when.isBefore(before)) {
      when = before.plusDays(1).with(time);
      day = day.plusDays(1);
    }
    ClockText.existing("time", text, day.atTime(time), start.getZone());
    if (Hours.between(before, when) > LONGEST_GAP_HOURS) {
      throw new InputException(
          "readings.earlier",
          "time "
              + text
              + " is earlier than the reading before it: put the lines in order, or write date and"
              + " time for a reading of the next day");
    }
    return Hours.between(start, when);
  }

  private ZonedDateTime start(ZonedDateTime firstReading) {
    ZonedDateTime start = mixed;
    if (start != null) {
      return start;
    }
    LocalTime clock = mixedClock;
    if (clock == null) {
      throw noStart();
    }
    ZonedDateTime sameDay = firstReading.with(clock);
    ZonedDateTime found = sameDay.isAfter(firstReading) ? sameDay.minusDays(1) : sameDay;
    mixed = found;
    return found;
  }

  private static InputException noStart() {
    return new InputException(
        "readings.no-mixing",
        "the file does not say when the dough was mixed: add a line such as 'mixed at: 09:30' at"
            + " the top");
  }

  private static ZonedDateTime dated(String name, String text, ZoneId zone) {
    return ClockText.moment(name, text, SOME_DAY, zone);
  }
}
