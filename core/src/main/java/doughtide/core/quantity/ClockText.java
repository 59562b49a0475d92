package doughtide.core.quantity;

import doughtide.core.Internal;
import java.time.DateTimeException;
import java.time.LocalDate;
import java.time.LocalDateTime;
import java.time.LocalTime;
import java.time.ZoneId;
import java.time.ZoneOffset;
import java.time.ZonedDateTime;
import java.time.format.DateTimeFormatter;
import java.time.zone.ZoneOffsetTransition;
import java.util.Locale;
import java.util.Set;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * Reads clock times and dates as people write them: {@code 09:30}, {@code 9.30}, {@code 21h30},
 * {@code 7am}, {@code 1:30 pm}, {@code 0930}, {@code 12}, {@code noon}, {@code midnight}, and with
 * a date before it as ISO 8601 has it, such as {@code 2027-03-06T12:00} or {@code
 * 2027-03-06T11:00Z}. What can be read in two ways is refused with both readings ({@code midnight}
 * of a date, which {@code 24:00} is not), and so is a time that the clocks of its place skip.
 */
@Internal
public final class ClockText {

  private static final Pattern CLOCK =
      Pattern.compile(
          "([0-9]{1,2})(?:(?:[:.]| ?h ?| uhr )([0-9]{2})(?::([0-9]{2})(?:[.,][0-9]+)?)?)?"
              + " ?(?:(a\\.?m\\.?|p\\.?m\\.?)|uhr|h|o'clock)?");
  private static final Pattern DIGITS = Pattern.compile("([0-9]{1,2})([0-9]{2})");
  private static final Pattern ONE_DIGIT = Pattern.compile("([0-9]{1,2})[.:,h]([0-9])");
  private static final Pattern DATED =
      Pattern.compile(
          "([0-9]{4}-[0-9]{2}-[0-9]{2})(?:[Tt]|,? )(.+?)([Zz]|[+-][0-9]{2}:?[0-9]{2})?");
  private static final Pattern DAY_FIRST =
      Pattern.compile("([0-9]{1,2})[./-]([0-9]{1,2})[./-]([0-9]{4})\\b.*");
  private static final int NOON = 12;
  private static final int END_OF_DAY = 24;
  private static final Set<String> NOONS =
      Set.of("noon", "midday", "mittag", "mittags", "midi", "mediodía", "mediodia", "meio-dia");
  private static final Set<String> MIDNIGHTS =
      Set.of("midnight", "mitternacht", "minuit", "medianoche", "meia-noite");

  private ClockText() {}

  /** Whether it is written as a clock time without a date. */
  public static boolean isClock(String text) {
    String clean = plain(text);
    return CLOCK.matcher(clean).matches() || DIGITS.matcher(clean).matches();
  }

  /** Whether it is written as a date with a clock time. */
  public static boolean isDated(String text) {
    return DATED.matcher(Quantities.clean(text)).matches();
  }

  /**
   * Reads a clock time without a date.
   *
   * @param name what it is given for, for messages
   * @param text as typed
   * @throws InputException if it is none, or can be read in two ways
   */
  public static LocalTime time(String name, String text) {
    String clean = plain(text);
    Matcher clock = CLOCK.matcher(clean);
    if (clock.matches()) {
      return time(name, text, clock);
    }
    Matcher digits = DIGITS.matcher(clean);
    if (digits.matches()) {
      return checked(name, text, digits.group(1), digits.group(2), "0");
    }
    throw noClock(name, text, clean);
  }

  private static LocalTime time(String name, String text, Matcher clock) {
    String half = clock.group(4);
    String minutes = clock.group(2) == null ? "0" : clock.group(2);
    String seconds = clock.group(3) == null ? "0" : clock.group(3);
    if (half == null) {
      return checked(name, text, clock.group(1), minutes, seconds);
    }
    int hour = Integer.parseInt(clock.group(1));
    if (hour < 1 || hour > NOON) {
      throw noTime(name, text);
    }
    int meant = hour % NOON + (half.startsWith("p") ? NOON : 0);
    return checked(name, text, Integer.toString(meant), minutes, seconds);
  }

  private static LocalTime checked(
      String name, String text, String hour, String minutes, String seconds) {
    if (isEndOfDay(text)) {
      return LocalTime.MIDNIGHT;
    }
    try {
      return LocalTime.of(
          Integer.parseInt(hour), Integer.parseInt(minutes), Integer.parseInt(seconds));
    } catch (DateTimeException e) {
      throw noTime(name, text);
    }
  }

  /** The last moment of a day, which is the first one of the next; a bare 24 may be a warmth. */
  private static boolean isEndOfDay(String text) {
    String clean = plain(text);
    Matcher clock = CLOCK.matcher(clean);
    return clock.matches()
        && !clean.equals(clock.group(1))
        && Integer.parseInt(clock.group(1)) == END_OF_DAY
        && (clock.group(2) == null || Integer.parseInt(clock.group(2)) == 0)
        && (clock.group(3) == null || Integer.parseInt(clock.group(3)) == 0)
        && clock.group(4) == null;
  }

  private static InputException noTime(String name, String text) {
    return new InputException(
        "clock.none",
        Quantities.shown(name, text)
            + " is no time on any clock or calendar: write for example 09:30, 9.30, 7am or"
            + " 2027-03-06T12:00");
  }

  private static InputException noClock(String name, String text, String clean) {
    Matcher one = ONE_DIGIT.matcher(clean);
    if (one.matches()) {
      String hour = one.group(1);
      return twoWays(
          name, text, hour + ":0" + one.group(2) + " or " + hour + ":" + one.group(2) + "0");
    }
    Matcher day = DAY_FIRST.matcher(clean);
    if (day.matches()) {
      String first = two(day.group(1));
      String second = two(day.group(2));
      String year = day.group(3);
      return twoWays(
          name,
          text,
          year
              + "-"
              + second
              + "-"
              + first
              + " or "
              + year
              + "-"
              + first
              + "-"
              + second
              + ", and the clock time behind it");
    }
    return new InputException(
        "time.none",
        Quantities.shown(name, text)
            + " is not a time: write "
            + name
            + " 09:30 for today or "
            + name
            + " 2027-03-06T12:00");
  }

  private static String two(String digits) {
    return digits.length() < 2 ? "0" + digits : digits;
  }

  private static InputException twoWays(String name, String text, String readings) {
    return new InputException(
        "time.two-ways", Quantities.shown(name, text) + " can be read two ways: write " + readings);
  }

  /**
   * Reads a moment: a clock time of a day, or a date with its clock time.
   *
   * @param name what it is given for, for messages
   * @param text as typed
   * @param day the day that is meant where none is given
   * @param zone the place whose clock is meant; a moment given with its offset is told in it
   * @throws InputException if it is none, can be read in two ways, or the clocks skip it
   */
  public static ZonedDateTime moment(String name, String text, LocalDate day, ZoneId zone) {
    Matcher dated = DATED.matcher(Quantities.clean(text));
    if (!dated.matches()) {
      return existing(name, text, local(day, name, text), zone);
    }
    LocalDate date = date(name, text, dated.group(1));
    if (MIDNIGHTS.contains(dated.group(2).toLowerCase(Locale.ROOT))) {
      throw twoWays(name, text, date + "T00:00 or " + date + "T24:00");
    }
    LocalDateTime local = local(date, name, dated.group(2));
    String offset = dated.group(3);
    return offset == null
        ? existing(name, text, local, zone)
        : local.atOffset(offset(name, text, offset)).atZoneSameInstant(zone);
  }

  private static LocalDateTime local(LocalDate day, String name, String text) {
    LocalTime time = time(name, text);
    return (isEndOfDay(text) ? day.plusDays(1) : day).atTime(time);
  }

  private static LocalDate date(String name, String text, String date) {
    try {
      return LocalDate.parse(date);
    } catch (DateTimeException e) {
      throw noTime(name, text);
    }
  }

  private static ZoneOffset offset(String name, String text, String offset) {
    try {
      return ZoneOffset.of(offset.toUpperCase(Locale.ROOT));
    } catch (DateTimeException e) {
      throw noTime(name, text);
    }
  }

  /**
   * A local time at a place; of a time that comes twice the first.
   *
   * @param name what it was given for, for messages
   * @param text as typed
   * @throws InputException if the clocks skip it
   */
  public static ZonedDateTime existing(String name, String text, LocalDateTime local, ZoneId zone) {
    ZoneOffsetTransition change = zone.getRules().getTransition(local);
    if (change == null || !change.isGap()) {
      return local.atZone(zone);
    }
    DateTimeFormatter clock = DateTimeFormatter.ofPattern("HH:mm", Locale.ROOT);
    DateTimeFormatter day = DateTimeFormatter.ofPattern("EEE d MMM", Locale.ENGLISH);
    throw new InputException(
        "clock.skipped",
        Quantities.shown(name, text)
            + " does not exist on "
            + day.format(local)
            + " in "
            + zone.getId()
            + ": the clocks go from "
            + clock.format(change.getDateTimeBefore())
            + " to "
            + clock.format(change.getDateTimeAfter())
            + ", write "
            + clock.format(local.plus(change.getDuration()))
            + " if that is meant");
  }

  private static String plain(String text) {
    String clean = Quantities.clean(text).toLowerCase(Locale.ROOT);
    if (NOONS.contains(clean)) {
      return "12:00";
    }
    return MIDNIGHTS.contains(clean) ? "00:00" : clean;
  }
}
