package doughtide.core.document;

import doughtide.core.quantity.ClockText;
import doughtide.core.quantity.Hours;
import doughtide.core.quantity.InputException;
import doughtide.core.quantity.Quantities;
import doughtide.core.quantity.Shorten;
import java.time.DateTimeException;
import java.time.LocalDateTime;
import java.time.OffsetDateTime;
import java.time.ZoneId;
import java.time.ZoneOffset;
import java.time.ZonedDateTime;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * The times of a logger as hours since mixing: hours, minutes, dates with clock times (ISO 8601,
 * with or without offset) or clock times alone.
 */
final class LogTimes {

  private static final Pattern CLOCK =
      Pattern.compile("([0-9]{1,2}):([0-9]{2})(?::([0-9]{2})(?:[.,][0-9]+)?)?");
  private static final Pattern DAY_FIRST = Pattern.compile("[0-9]{1,2}[./-][0-9]{1,2}[./-].*");
  private static final double HALF_A_DAY = 12;

  private final Kind kind;
  private final Optional<ZonedDateTime> clock;
  private final ZoneId zone;
  private Optional<ZonedDateTime> zero;
  private double clockShift;
  private Optional<Double> firstClock = Optional.empty();

  /**
   * @param kind what the column holds
   * @param clock the moment of mixing; without it the first time of the file is hour 0
   */
  public LogTimes(Kind kind, Optional<ZonedDateTime> clock) {
    this.kind = kind;
    this.clock = clock;
    this.zero = clock;
    this.zone = clock.map(ZonedDateTime::getZone).orElse(ZoneOffset.UTC);
  }

  /** What a column of times holds. */
  public enum Kind {
    TIME,
    HOURS,
    MINUTES;

    /** By the name of the column, in small letters. */
    static Optional<Kind> of(String name) {
      if (name.matches("(hours?|h|elapsed hours?)\\b.*")) {
        return Optional.of(HOURS);
      }
      if (name.matches("(minutes?|mins?|elapsed minutes?)\\b.*")) {
        return Optional.of(MINUTES);
      }
      return name.matches("(time|date|clock|timestamp|when)\\b.*")
          ? Optional.of(TIME)
          : Optional.empty();
    }
  }

  /**
   * Hours since mixing.
   *
   * @param cell as the logger wrote it
   * @param before hours of the reading before, negative infinity for the first
   * @throws InputException if it is no time
   */
  public double hours(String cell, double before) {
    String text = cell.strip();
    return switch (kind) {
      case HOURS -> elapsed("hours", text, 1);
      case MINUTES -> elapsed("minutes", text, 60);
      case TIME -> time(text, before);
    };
  }

  private static double elapsed(String name, String text, double perHour) {
    return Quantities.number(name, text, -100_000, 500_000) / perHour;
  }

  private double time(String text, double before) {
    Matcher clockOnly = CLOCK.matcher(text);
    if (clockOnly.matches()) {
      return clockHours(text, ofDay(clockOnly), before);
    }
    if (ClockText.isClock(text)) {
      return clockHours(text, ClockText.time("time", text).toSecondOfDay() / 3600.0, before);
    }
    if (DAY_FIRST.matcher(text).matches()) {
      throw new InputException(
          "log.time-two-ways",
          "'"
              + Shorten.to(text, 40)
              + "' can be read two ways: write the year first, such as 2027-03-06T12:00");
    }
    try {
      return since(moment(text.replace(' ', 'T'), before));
    } catch (DateTimeException e) {
      throw new InputException(
          "log.time",
          "'"
              + Shorten.to(text, 40)
              + "' is not a time: write 2027-03-06T12:00 or 12:00, or name the column hours");
    }
  }

  private ZonedDateTime moment(String iso, double before) {
    int afterDate = Math.min(iso.length(), 11);
    boolean hasOffset =
        iso.endsWith("Z") || iso.indexOf('+', afterDate) > 0 || iso.indexOf('-', afterDate) > 0;
    if (hasOffset) {
      return OffsetDateTime.parse(iso).atZoneSameInstant(zone);
    }
    ZonedDateTime moment = ClockText.existing("time", iso, LocalDateTime.parse(iso), zone);
    boolean again = zero.isPresent() && since(moment) <= before;
    return again ? moment.withLaterOffsetAtOverlap() : moment;
  }

  private double since(ZonedDateTime moment) {
    if (zero.isEmpty()) {
      zero = Optional.of(moment);
    }
    return Hours.between(zero.get(), moment);
  }

  private static double ofDay(Matcher parts) {
    String seconds = parts.group(3);
    return Integer.parseInt(parts.group(1))
        + Integer.parseInt(parts.group(2)) / 60.0
        + (seconds == null ? 0 : Integer.parseInt(seconds) / 3600.0);
  }

  /** A step back of more than half a day is midnight. */
  private double clockHours(String text, double ofDay, double before) {
    if (ofDay >= 24) {
      throw new InputException("log.time-none", "'" + text + "' is no time on any clock");
    }
    if (firstClock.isEmpty()) {
      firstClock = Optional.of(ofDay);
      clockShift = clock.map(mixing -> nearest(ofDay, mixing)).orElse(-ofDay);
    } else if (ofDay + clockShift < before - HALF_A_DAY) {
      clockShift += 24;
    }
    return ofDay + clockShift;
  }

  /** What turns the first time of day into hours since mixing, the nearest such time to mixing. */
  private static double nearest(double ofDay, ZonedDateTime mixing) {
    double mixed = mixing.toLocalTime().toSecondOfDay() / 3600.0;
    double off = ofDay - mixed;
    double days = off > HALF_A_DAY ? -24 : off < -HALF_A_DAY ? 24 : 0;
    return days - mixed;
  }
}
