package doughtide.cli.args;

import doughtide.core.quantity.InputException;
import doughtide.core.quantity.Quantities;
import java.time.DateTimeException;
import java.time.Duration;
import java.time.Instant;
import java.time.LocalDate;
import java.time.LocalDateTime;
import java.time.LocalTime;
import java.time.ZoneId;
import java.time.ZonedDateTime;
import java.time.temporal.ChronoUnit;
import java.time.zone.ZoneOffsetTransition;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * Hours since mixing as clock times of a place. Elapsed hours are real hours: when the clocks
 * change in the night, the clock time shown jumps and the dough does not.
 */
public final class ClockTimes {

  private static final Pattern CLOCK =
      Pattern.compile("([0-9]{1,2}):([0-9]{2})(?::[0-9]{2})? ?(am|pm|a\\.m\\.|p\\.m\\.)?");
  private static final Pattern DATE_TIME =
      Pattern.compile("([0-9]{4})-([0-9]{2})-([0-9]{2})[T ]([0-9]{2}):([0-9]{2})(?::([0-9]{2}))?");
  private static final String[] DAYS = {"Mon", "Tue", "Wed", "Thu", "Fri", "Sat", "Sun"};
  private static final String[] MONTHS = {
    "Jan", "Feb", "Mar", "Apr", "May", "Jun", "Jul", "Aug", "Sep", "Oct", "Nov", "Dec"
  };

  private final ZonedDateTime start;

  private ClockTimes(ZonedDateTime start) {
    this.start = start;
  }

  /** Clock times counted from this moment. */
  public static ClockTimes from(ZonedDateTime start) {
    return new ClockTimes(start.truncatedTo(ChronoUnit.SECONDS));
  }

  /**
   * Reads a clock time of today or a full date and time.
   *
   * @param name the option, for messages
   * @param text {@code 09:30} or {@code 2027-03-06T12:00}
   * @param zone the place
   * @param now decides which day today is
   * @throws InputException if it is neither, or the clocks skip that time
   */
  public static ClockTimes parse(String name, String text, ZoneId zone, Instant now) {
    LocalDateTime local = localDateTime(name, text, now.atZone(zone).toLocalDate());
    if (local.getYear() < 1900 || local.getYear() > 2200) {
      throw new InputException(
          Quantities.shown(name, text) + " is outside the years 1900…2200: check the date");
    }
    ZoneOffsetTransition change = zone.getRules().getTransition(local);
    if (change != null && change.isGap()) {
      throw skipped(name, text, change, zone, local);
    }
    return from(local.atZone(zone));
  }

  private static InputException skipped(
      String name, String text, ZoneOffsetTransition change, ZoneId zone, LocalDateTime local) {
    LocalDateTime right = local.plus(change.getDuration());
    return new InputException(
        Quantities.shown(name, text)
            + " does not exist on "
            + date(local.toLocalDate())
            + " in "
            + zone.getId()
            + ": the clocks go from "
            + time(change.getDateTimeBefore().toLocalTime())
            + " to "
            + time(change.getDateTimeAfter().toLocalTime())
            + ", write "
            + time(right.toLocalTime())
            + " if that is meant");
  }

  private static LocalDateTime localDateTime(String name, String text, LocalDate today) {
    String clean = Quantities.clean(text);
    try {
      Matcher full = DATE_TIME.matcher(clean);
      if (full.matches()) {
        return fullDateTime(full);
      }
      Matcher clock = CLOCK.matcher(clean.toLowerCase(Locale.ROOT));
      if (clock.matches()) {
        return today.atTime(clockTime(name, text, clock));
      }
    } catch (DateTimeException e) {
      throw new InputException(
          Quantities.shown(name, text)
              + " is no time on any clock or calendar: write for example 09:30 or"
              + " 2027-03-06T12:00");
    }
    throw new InputException(
        Quantities.shown(name, text)
            + " is not a time: write "
            + name
            + " 09:30 for today or "
            + name
            + " 2027-03-06T12:00, and the place with --zone");
  }

  private static LocalDateTime fullDateTime(Matcher parts) {
    String seconds = parts.group(6);
    return LocalDateTime.of(
        Integer.parseInt(parts.group(1)),
        Integer.parseInt(parts.group(2)),
        Integer.parseInt(parts.group(3)),
        Integer.parseInt(parts.group(4)),
        Integer.parseInt(parts.group(5)),
        seconds == null ? 0 : Integer.parseInt(seconds));
  }

  private static LocalTime clockTime(String name, String text, Matcher parts) {
    int hour = Integer.parseInt(parts.group(1));
    LocalTime time = LocalTime.of(hour, Integer.parseInt(parts.group(2)));
    String half = parts.group(3);
    if (half == null) {
      return time;
    }
    LocalTime meant = time.withHour(hour % 12 + (half.startsWith("p") ? 12 : 0));
    throw new InputException(
        Quantities.shown(name, text)
            + ": times are read on the 24-hour clock: write "
            + time(meant));
  }

  /**
   * Hours from mixing to a clock time: for a time of day its next three occurrences more than an
   * hour after mixing, for a full date and time that moment.
   *
   * @param name the option, for messages
   * @param text {@code 07:00} or {@code 2027-03-07T07:00}
   */
  public List<Double> hoursUntil(String name, String text) {
    return hoursUntil(name, text, 1);
  }

  /**
   * The same for what may come sooner.
   *
   * @param least hours from mixing on
   */
  public List<Double> hoursUntil(String name, String text, double least) {
    List<Double> hours = new ArrayList<>();
    boolean isDate = DATE_TIME.matcher(Quantities.clean(text)).matches();
    LocalDateTime first = localDateTime(name, text, start.toLocalDate());
    for (int day = 0; hours.size() < 3 && day < 6; day++) {
      double until = hoursTo(first.plusDays(day).atZone(start.getZone()));
      if (isDate) {
        return List.of(checkedAfterMixing(name, text, until, least));
      }
      if (until > least) {
        hours.add(until);
      }
    }
    return hours;
  }

  private static double checkedAfterMixing(String name, String text, double hours, double least) {
    if (hours < least || hours > 168) {
      throw new InputException(
          Quantities.shown(name, text)
              + " is not within "
              + (least > 0 ? "an hour to " : "")
              + "a week after mixing: check the date");
    }
    return hours;
  }

  private double hoursTo(ZonedDateTime moment) {
    return Duration.between(start, moment).toSeconds() / 3600.0;
  }

  /** The moment of mixing. */
  public ZonedDateTime start() {
    return start;
  }

  /** The moment so many hours later, to the second. */
  public ZonedDateTime after(double hours) {
    return start.plus(Duration.ofSeconds(Math.round(hours * 3600)));
  }

  /** So many hours later in words: {@code Sat 14:05}; on another day {@code Sun 7 Mar 02:10}. */
  public String at(double hours) {
    ZonedDateTime then = toMinute(after(hours));
    boolean sameDay = then.toLocalDate().equals(start.toLocalDate());
    return (sameDay ? day(then.toLocalDate()) : date(then.toLocalDate()))
        + " "
        + time(then.toLocalTime())
        + whichOfTwo(then);
  }

  /**
   * So many hours later to five minutes, for a column: {@code Sun 02:10}. In the hour that comes
   * twice, A marks the first and B the second.
   */
  public String about(double hours) {
    ZonedDateTime exact = after(hours);
    ZonedDateTime hour = exact.truncatedTo(ChronoUnit.HOURS);
    double minutes = Duration.between(hour, exact).toSeconds() / 60.0;
    ZonedDateTime then = hour.plusMinutes(5 * Math.round(minutes / 5));
    return day(then.toLocalDate()) + " " + time(then.toLocalTime()) + letter(then);
  }

  private static String letter(ZonedDateTime moment) {
    if (moment.getZone().getRules().getValidOffsets(moment.toLocalDateTime()).size() < 2) {
      return "";
    }
    return moment.withEarlierOffsetAtOverlap().equals(moment) ? "A" : "B";
  }

  /** The moment of mixing in words, always with the date. */
  public String startInWords() {
    ZonedDateTime then = toMinute(start);
    return date(then.toLocalDate())
        + " "
        + then.getYear()
        + " "
        + time(then.toLocalTime())
        + whichOfTwo(then)
        + ", "
        + start.getZone().getId();
  }

  /** So many hours later for data files: ISO 8601 with offset, to the minute. */
  public String iso(double hours) {
    return toMinute(after(hours)).toOffsetDateTime().toString();
  }

  /**
   * What the clocks do before so many hours are over, in words, if they do anything.
   *
   * @param hours hours since mixing
   */
  public Optional<String> clockChange(double hours) {
    ZoneOffsetTransition next = start.getZone().getRules().nextTransition(start.toInstant());
    if (next == null || next.getInstant().isAfter(after(hours).toInstant())) {
      return Optional.empty();
    }
    LocalDateTime before = next.getDateTimeBefore();
    return Optional.of(
        "the clocks go "
            + (next.isGap() ? "forward" : "back")
            + " on "
            + date(before.toLocalDate())
            + " from "
            + time(before.toLocalTime())
            + " to "
            + time(next.getDateTimeAfter().toLocalTime())
            + "; the hours given are hours that really pass");
  }

  private static ZonedDateTime toMinute(ZonedDateTime moment) {
    return moment.plusSeconds(30).truncatedTo(ChronoUnit.MINUTES);
  }

  /** When the clocks go back, an hour comes twice. */
  private static String whichOfTwo(ZonedDateTime moment) {
    if (moment.getZone().getRules().getValidOffsets(moment.toLocalDateTime()).size() < 2) {
      return "";
    }
    boolean first = moment.withEarlierOffsetAtOverlap().equals(moment);
    return first ? " (before the clocks go back)" : " (after the clocks went back)";
  }

  private static String day(LocalDate date) {
    return DAYS[date.getDayOfWeek().getValue() - 1];
  }

  private static String date(LocalDate date) {
    return day(date) + " " + date.getDayOfMonth() + " " + MONTHS[date.getMonthValue() - 1];
  }

  private static String time(LocalTime time) {
    return (time.getHour() < 10 ? "0" : "")
        + time.getHour()
        + (time.getMinute() < 10 ? ":0" : ":")
        + time.getMinute();
  }
}
