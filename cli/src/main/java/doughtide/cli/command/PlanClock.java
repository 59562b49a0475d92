package doughtide.cli.command;

import doughtide.cli.args.Arguments;
import doughtide.cli.args.ClockTimes;
import doughtide.cli.args.Words;
import doughtide.cli.session.Environment;
import doughtide.core.day.BenchHours;
import doughtide.core.day.BenchInterval;
import doughtide.core.quantity.ClockText;
import doughtide.core.quantity.Hours;
import doughtide.core.quantity.InputException;
import doughtide.core.quantity.Quantities;
import doughtide.core.quantity.ShellWord;
import doughtide.core.quantity.Shorten;
import doughtide.core.quantity.Temperature;
import doughtide.core.thermal.TemperatureTrace;
import java.time.Duration;
import java.time.LocalDate;
import java.time.LocalTime;
import java.time.ZoneId;
import java.time.ZonedDateTime;
import java.util.ArrayList;
import java.util.List;
import java.util.TreeMap;
import java.util.function.Consumer;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * The clock of a plan: real hours counted from midnight three days before the bread, so that a
 * change of the clocks moves the clock times and not the dough.
 *
 * @param times counted from that midnight
 * @param readyAt when the bread is wanted
 * @param now the time now
 * @param lastDay until which hours that are typed day by day come again
 */
record PlanClock(ClockTimes times, ZonedDateTime readyAt, ZonedDateTime now, LocalDate lastDay) {

  public static final String READY_AT = "ready-at";
  public static final String BENCH = "at-the-bench";
  public static final String ROOM = "room";
  public static final String ZONE = "zone";
  static final String USUAL_ROOM = "21C";
  private static final int DAYS_BEFORE = 3;

  /** The times that a baker plans with; further would be guessing. */
  private static final Duration FARTHEST = Duration.ofDays(366);

  private static final Pattern DAILY = Pattern.compile("([^/-]+?) ?- ?([^/-]+)");
  private static final Pattern DATED = Pattern.compile("([^/]+)/([^/]+)");
  private static final Pattern PART_OF_DAY =
      Pattern.compile("([^/-]+?) ?- ?([^/-]+?) ?: ?([^:]*[A-Za-z]) ?");

  public static PlanClock read(Arguments arguments, Environment environment) {
    ZoneId zone =
        arguments
            .text(ZONE)
            .map(name -> Quantities.zone("--" + ZONE, name))
            .orElseGet(environment::zone);
    ZonedDateTime now = environment.now().atZone(zone);
    String text = arguments.text(READY_AT).orElseThrow(() -> arguments.missing(READY_AT));
    ZonedDateTime ready = ClockTimes.parse("--" + READY_AT, text, zone, environment.now()).start();
    if (!ready.isAfter(now)) {
      throw new InputException(
          Quantities.shown("--" + READY_AT, text)
              + " has passed already: give the date too, for example --ready-at "
              + now.toLocalDate().plusDays(2)
              + "T12:00");
    }
    if (ready.isAfter(now.plus(FARTHEST))) {
      throw new InputException(
          Quantities.shown("--" + READY_AT, text) + " is more than a year ahead: check the date");
    }
    return counted(ready, now, ready.toLocalDate());
  }

  /**
   * The clock of a plan for bread that may be late already, and baked tomorrow.
   *
   * @param ready when it is wanted, or was
   */
  static PlanClock late(ZonedDateTime ready, ZonedDateTime now) {
    LocalDate tomorrow = now.toLocalDate().plusDays(1);
    return counted(
        ready, now, tomorrow.isAfter(ready.toLocalDate()) ? tomorrow : ready.toLocalDate());
  }

  private static PlanClock counted(ZonedDateTime ready, ZonedDateTime now, LocalDate lastDay) {
    ZonedDateTime zero = ready.toLocalDate().minusDays(DAYS_BEFORE).atStartOfDay(ready.getZone());
    return new PlanClock(ClockTimes.from(zero), ready, now, lastDay);
  }

  public double hour(ZonedDateTime moment) {
    return Hours.between(times.start(), moment);
  }

  public double readyHour() {
    return hour(readyAt);
  }

  /**
   * What is left from now on of the hours typed, day by day or dated.
   *
   * @param notes takes a sentence for hours that do not exist in the night the clocks go forward
   */
  public BenchHours bench(String text, Consumer<String> notes) {
    List<BenchInterval> all = new ArrayList<>();
    for (String piece : Quantities.clean(text).split(" ?[,;] ?", -1)) {
      Matcher daily = DAILY.matcher(piece);
      Matcher dated = DATED.matcher(piece);
      if (daily.matches()) {
        addDaily(all, text, daily.group(1), daily.group(2), notes);
      } else if (dated.matches()) {
        addSpan(all, text, moment(dated.group(1)), moment(dated.group(2)));
      } else {
        throw new InputException(
            Quantities.shown("--" + BENCH, text)
                + " is not understood at "
                + ShellWord.of(Shorten.to(piece, 40))
                + ": write for example --at-the-bench 06:30-08:30,17:00-22:30 or"
                + " 2027-03-05T17:00/2027-03-05T22:30");
      }
    }
    if (all.isEmpty()) {
      throw new InputException(
          Quantities.shown("--" + BENCH, text)
              + " leaves no hour between now and the bread: give more hours or a later --ready-at");
    }
    return new BenchHours(all);
  }

  private ZonedDateTime moment(String text) {
    return ClockTimes.parse("--" + BENCH, text, readyAt.getZone(), now.toInstant()).start();
  }

  private void addDaily(
      List<BenchInterval> all, String text, String from, String to, Consumer<String> notes) {
    LocalTime begin = time("--" + BENCH, text, from);
    LocalTime end = time("--" + BENCH, text, to);
    if (isHalf(to) && !isHalf(from)) {
      throw new InputException(
          Quantities.shown("--" + BENCH, text)
              + " can be read two ways: write "
              + from
              + "am-"
              + to
              + " or "
              + from
              + "pm-"
              + to);
    }
    if (begin.equals(end)) {
      throw new InputException(
          Quantities.shown("--" + BENCH, text) + ": " + from + "-" + to + " has no length");
    }
    for (LocalDate day : days()) {
      LocalDate last = end.isAfter(begin) ? day : day.plusDays(1);
      ZonedDateTime starts = at(day, begin);
      ZonedDateTime ends = at(last, end);
      if (ends.isAfter(starts)) {
        addSpan(all, text, starts, ends);
      } else {
        notes.accept(
            "the hours "
                + from
                + "-"
                + to
                + " of --"
                + BENCH
                + " do not exist on "
                + day
                + ", when the clocks go forward: they are left out");
      }
    }
  }

  private static boolean isHalf(String clock) {
    return clock.strip().matches("(?i).*[ap]\\.?m\\.?");
  }

  private List<LocalDate> days() {
    LocalDate first = times.start().toLocalDate().minusDays(1);
    return first.datesUntil(lastDay.plusDays(1)).toList();
  }

  /** Of a time that the clocks skip, the moment at which they do. */
  private ZonedDateTime at(LocalDate day, LocalTime time) {
    ZonedDateTime at = day.atTime(time).atZone(readyAt.getZone());
    return at.toLocalTime().equals(time)
        ? at
        : readyAt
            .getZone()
            .getRules()
            .getTransition(day.atTime(time))
            .getInstant()
            .atZone(at.getZone());
  }

  private void addSpan(List<BenchInterval> all, String text, ZonedDateTime from, ZonedDateTime to) {
    if (!to.isAfter(from)) {
      throw new InputException(
          Quantities.shown("--" + BENCH, text) + " ends before it begins: put the earlier first");
    }
    ZonedDateTime begin = from.isBefore(now) ? nextFiveMinutes() : from;
    if (to.isAfter(begin) && begin.isBefore(readyAt.plusDays(1))) {
      all.add(new BenchInterval(hour(begin), hour(to)));
    }
  }

  private ZonedDateTime nextFiveMinutes() {
    long five = 300;
    long seconds = now.toEpochSecond();
    return now.withNano(0).plusSeconds(Math.floorMod(five - seconds % five, five));
  }

  private static LocalTime time(String name, String text, String clock) {
    return Quantities.named(name, text, () -> ClockText.time("hour", clock));
  }

  /** The room as typed. */
  static String roomText(Arguments arguments) {
    return arguments.text(ROOM).orElse(USUAL_ROOM);
  }

  /** A room such as {@code 21C,22:00-06:00:18C}: one temperature, and others by the clock. */
  public TemperatureTrace room(String text) {
    String name = "--" + ROOM;
    String[] pieces = roomPieces(text);
    Temperature usual = roomTemperature(name, pieces[0]);
    if (pieces.length == 1) {
      return TemperatureTrace.steady(usual);
    }
    TreeMap<Double, Temperature> steps = new TreeMap<>();
    steps.put(-48.0, usual);
    for (int i = 1; i < pieces.length; i++) {
      Matcher part = PART_OF_DAY.matcher(pieces[i]);
      if (!part.matches()) {
        throw new InputException(
            Quantities.shown(name, text)
                + " is not understood at "
                + ShellWord.of(Shorten.to(pieces[i], 40))
                + ": write for example --room 21C,22:00-06:00:18C");
      }
      addDaily(steps, usual, text, part);
    }
    List<TemperatureTrace.Step> all = new ArrayList<>();
    steps.forEach((hour, at) -> all.add(new TemperatureTrace.Step(hour, at)));
    return TemperatureTrace.steps(all);
  }

  private static String[] roomPieces(String text) {
    return Quantities.clean(text).split("(?<=[A-Za-z]) ?[,;] ?", -1);
  }

  /** A room that {@link #room} has understood, in words. */
  public static String roomInWords(String text) {
    List<String> words = new ArrayList<>();
    for (String piece : roomPieces(text)) {
      Matcher part = PART_OF_DAY.matcher(piece);
      words.add(
          part.matches()
              ? part.group(1) + "–" + part.group(2) + " " + inWords(part.group(3))
              : inWords(piece));
    }
    return String.join(", ", words);
  }

  private static String inWords(String temperature) {
    return Words.temperature(roomTemperature("--" + ROOM, temperature));
  }

  private void addDaily(
      TreeMap<Double, Temperature> steps, Temperature usual, String text, Matcher part) {
    Temperature other = roomTemperature("--" + ROOM, part.group(3));
    LocalTime begin = time("--" + ROOM, text, part.group(1));
    LocalTime end = time("--" + ROOM, text, part.group(2));
    for (LocalDate day : days()) {
      LocalDate last = end.isAfter(begin) ? day : day.plusDays(1);
      steps.put(hour(at(day, begin)), other);
      steps.putIfAbsent(hour(at(last, end)), usual);
    }
  }

  private static Temperature roomTemperature(String name, String text) {
    Temperature temperature = Quantities.temperature(name, text);
    if (temperature.celsius() < 5 || temperature.celsius() > 38) {
      throw new InputException(
          Quantities.shown(name, text) + " is outside 5…38 °C: no dough is planned there");
    }
    return temperature;
  }
}
