package doughtide.cli.command.again;

import doughtide.cli.args.Arguments;
import doughtide.cli.args.ClockTimes;
import doughtide.cli.file.ReadingsFile;
import doughtide.cli.options.StarterOptions;
import doughtide.cli.session.Session;
import doughtide.core.day.BakeDay;
import doughtide.core.day.BakeRoute;
import doughtide.core.learning.Bake;
import doughtide.core.learning.JarError;
import doughtide.core.learning.Reading;
import doughtide.core.learning.TodayUpdate;
import doughtide.core.quantity.Hours;
import doughtide.core.quantity.InputException;
import doughtide.core.quantity.Quantities;
import doughtide.core.rise.DoughTemperature;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;

/**
 * Today's file of readings of a dough whose day is planned again.
 *
 * @param name of the file
 * @param file its content
 */
public record TodayReadings(String name, ReadingsFile file) {
  private static final int FEW_MEMBERS = 8;
  private static final double LONGEST_SHIFT_HOURS = 2;

  /**
   * Reads the files that are given, by the number of their dough.
   *
   * @param names of the doughs
   */
  public static Map<Integer, TodayReadings> read(
      Arguments arguments, DayNames names, Session session) {
    ReadingsFile.BadLines bad = ReadingsFile.badLines(arguments);
    Map<Integer, TodayReadings> all = new TreeMap<>();
    for (String text : arguments.all(StarterOptions.READINGS)) {
      int dough = dough(text, names);
      String file = text.strip().substring(names.before(dough).length()).strip();
      ReadingsFile read = ReadingsFile.inHand("--" + StarterOptions.READINGS, file, bad, session);
      if (all.put(dough, new TodayReadings(file, read)) != null) {
        throw new InputException(
            "--readings are given twice"
                + (names.isOne() ? "" : " for '" + names.names().get(dough) + "'")
                + ": give one file for each dough");
      }
    }
    return all;
  }

  private static int dough(String text, DayNames names) {
    return names.isOne()
        ? 0
        : names
            .begins(text.strip())
            .orElseThrow(
                () ->
                    new InputException(
                        Quantities.shown("--" + StarterOptions.READINGS, text)
                            + " does not say whose they are: write the dough before the file, for"
                            + " example --readings \""
                            + names.before(0)
                            + "today.csv\"; the doughs are "
                            + String.join(", ", names.names())));
  }

  /** When its dough was mixed as {@code --did} would say it, where the file says so. */
  public Optional<String> mixed() {
    return file.clock().map(clock -> "mix " + clock.start().toLocalDateTime());
  }

  /** How many there are. */
  public long count() {
    return file.bake().readings().size();
  }

  /**
   * The day with what they say of the dough.
   *
   * @param route as it was mixed
   * @param times the clock of the day
   */
  public BakeDay in(BakeDay day, BakeRoute route, JarError jar, ClockTimes times) {
    double start =
        file.clock()
            .map(clock -> Hours.between(times.start(), clock.start()))
            .orElse(route.mixHour());
    double shift = start - route.mixHour();
    if (Math.abs(shift) > LONGEST_SHIFT_HOURS) {
      throw new InputException(
          "the readings of '"
              + name
              + "' begin "
              + times.about(start)
              + ", the dough of the plan was mixed "
              + times.about(route.mixHour())
              + ": give the readings of this dough");
    }
    List<Reading> readings =
        file.bake().readings().stream().map(each -> later(each, shift)).toList();
    var planned = day.bulk(route, FEW_MEMBERS, 1);
    // A tub that goes into the cold later gets colder than it was when it was last read.
    DoughTemperature temperature =
        route.coldFrom().isPresent() ? planned.temperature() : file.bake().temperature();
    Bake bake = new Bake("today", planned.formula(), temperature, readings);
    return day.toBuilder()
        .forecaster(TodayUpdate.of(day.forecaster(), jar, bake).forecaster())
        .build();
  }

  private static Reading later(Reading reading, double hours) {
    return new Reading(
        Math.max(0, reading.hours() + hours), reading.rise(), reading.celsius(), reading.ph());
  }
}
