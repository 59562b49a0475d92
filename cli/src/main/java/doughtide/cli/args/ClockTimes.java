package doughtide.cli.args;

import doughtide.core.quantity.ClockText;
import doughtide.core.quantity.Hours;
import doughtide.core.quantity.InputException;
import doughtide.core.quantity.Quantities;
import java.time.Duration;
import java.time.Instant;
import java.time.LocalDateTime;
import java.time.LocalTime;
import java.time.ZoneId;
import java.time.ZonedDateTime;
import java.time.temporal.ChronoUnit;
import java.time.zone.ZoneOffsetTransition;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/**
 * Hours since mixing as clock times of a place. Elapsed hours are real hours: when the clocks
 * change in the night, the clock time shown jumps and the dough does not.
 */
public final class ClockTimes {

  private final ZonedDateTime start;
  private final Speech speech;

  private ClockTimes(ZonedDateTime start, Speech speech) {
    this.start = start;
    this.speech = speech;
  }

  /** Clock times counted from this moment. */
  public static ClockTimes from(ZonedDateTime start) {
    return new ClockTimes(start.truncatedTo(ChronoUnit.SECONDS), Speech.ENGLISH);
  }

  /** The same, written in the language of the reader. */
  public ClockTimes in(Speech other) {
    return new ClockTimes(start, other);
  }

  /**
   * Reads a clock time of today or a full date and time, as {@link ClockText} does.
   *
   * @param name the option, for messages
   * @param text {@code 09:30}, {@code 7am} or {@code 2027-03-06T12:00}
   * @param zone the place
   * @param now decides which day today is
   * @throws InputException if it is neither, or the clocks skip that time
   */
  public static ClockTimes parse(String name, String text, ZoneId zone, Instant now) {
    ZonedDateTime moment = ClockText.moment(name, text, now.atZone(zone).toLocalDate(), zone);
    if (moment.getYear() < 1900 || moment.getYear() > 2200) {
      throw new InputException(
          Quantities.shown(name, text) + " is outside the years 1900…2200: check the date");
    }
    return from(moment);
  }

  /**
   * Hours from mixing to a clock time: for a time of day its next three occurrences more than an
   * hour after mixing, up to a night in which the clocks skip it; for a full date and time that
   * moment.
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
    if (ClockText.isDated(text)) {
      ZonedDateTime moment = ClockText.moment(name, text, start.toLocalDate(), start.getZone());
      return List.of(checkedAfterMixing(name, text, hoursTo(moment), least));
    }
    List<Double> hours = new ArrayList<>();
    LocalDateTime first = start.toLocalDate().atTime(ClockText.time(name, text));
    for (int day = 0; hours.size() < 3 && day < 6; day++) {
      LocalDateTime local = first.plusDays(day);
      double until = hoursTo(local.atZone(start.getZone()));
      if (until > least) {
        if (hours.isEmpty()) {
          ClockText.existing(name, text, local, start.getZone());
        } else if (start.getZone().getRules().getValidOffsets(local).isEmpty()) {
          return hours;
        }
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
    return Hours.between(start, moment);
  }

  /** The moment of mixing. */
  public ZonedDateTime start() {
    return start;
  }

  /** The moment so many hours later, to the second. */
  public ZonedDateTime after(double hours) {
    return Hours.after(start, hours);
  }

  /** So many hours later in words: {@code Sat 14:05}; on another day {@code Sun 7 Mar 02:10}. */
  public String at(double hours) {
    ZonedDateTime then = toMinute(after(hours));
    boolean sameDay = then.toLocalDate().equals(start.toLocalDate());
    return (sameDay ? speech.day(then.toLocalDate()) : speech.date(then.toLocalDate()))
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
    return speech.day(then.toLocalDate()) + " " + time(then.toLocalTime()) + letter(then);
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
    return speech.date(then.toLocalDate())
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
            + speech.date(before.toLocalDate())
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
  private String whichOfTwo(ZonedDateTime moment) {
    if (moment.getZone().getRules().getValidOffsets(moment.toLocalDateTime()).size() < 2) {
      return "";
    }
    boolean first = moment.withEarlierOffsetAtOverlap().equals(moment);
    return " (" + speech.say(first ? "text.firstOfTwo" : "text.secondOfTwo") + ")";
  }

  private static String time(LocalTime time) {
    return (time.getHour() < 10 ? "0" : "")
        + time.getHour()
        + (time.getMinute() < 10 ? ":0" : ":")
        + time.getMinute();
  }
}
