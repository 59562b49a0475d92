package doughtide.cli.command;

import doughtide.cli.args.Arguments;
import doughtide.cli.args.ClockTimes;
import doughtide.cli.args.CommandSpec;
import doughtide.cli.args.OptionSpec;
import doughtide.cli.batch.BatchColumns;
import doughtide.cli.batch.BatchInput;
import doughtide.cli.batch.BatchRow;
import doughtide.cli.file.FileProblem;
import doughtide.cli.options.FormulaOptions;
import doughtide.cli.options.StarterOptions;
import doughtide.cli.session.Environment;
import doughtide.cli.text.OneLine;
import doughtide.core.day.BakeDay;
import doughtide.core.quantity.InputException;
import doughtide.core.quantity.Quantities;
import doughtide.core.quantity.Shorten;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/**
 * What a day of one dough or several is planned from.
 *
 * @param names of the doughs
 * @param doughs as the planner takes them
 * @param hands how many persons work
 * @param clock the hours as clock times
 * @param kitchen the kitchen as typed
 */
record DayOptions(
    List<String> names, List<BakeDay> doughs, int hands, PlanClock clock, String kitchen) {

  private static final String NAME = "name";
  private static final String HANDS = "hands";
  private static final int MOST_DOUGHS = 16;
  private static final int LONGEST_NAME = 24;

  /** What all doughs have in common. */
  private static final List<String> COMMON =
      List.of(
          PlanClock.READY_AT,
          PlanClock.BENCH,
          PlanClock.ZONE,
          PlanClock.ROOM,
          "cold",
          "oven-capacity",
          "preheat",
          "bake",
          "cool",
          "altitude",
          StarterOptions.STARTER_FILE);

  /** What each dough has of its own. */
  private static final List<String> OWN =
      List.of(
          "loaves",
          "piece",
          "form",
          "flour",
          "flour-file",
          "hydration",
          "salt",
          "starter",
          "starter-hydration",
          "dough-temp",
          "vessel",
          "vessel-material",
          "target",
          FormulaOptions.GRAMS,
          FormulaOptions.INCLUSIONS,
          PlanClock.READY_AT);

  DayOptions {
    names = List.copyOf(names);
    doughs = List.copyOf(doughs);
  }

  /** The options of a day whose doughs stand in a file. */
  static List<OptionSpec> specsBesideFile() {
    List<OptionSpec> specs = new ArrayList<>(named(COMMON));
    specs.add(
        OptionSpec.value(HANDS, "COUNT", "2", "How many persons work, 1 to 20.").withDefault("1"));
    return specs;
  }

  private static List<OptionSpec> named(List<String> names) {
    return DayDough.specs().stream().filter(spec -> names.contains(spec.name())).toList();
  }

  /** The columns of the file, for help. */
  static String columns() {
    return NAME + ", " + String.join(", ", OWN).replace('-', '_');
  }

  /** One dough, all of it on the command line. */
  static DayOptions ofOne(Arguments arguments, Environment environment) {
    PlanClock clock = PlanClock.read(arguments, environment);
    BakeDay dough = DayDough.read(arguments, clock, environment);
    return new DayOptions(
        List.of("dough"), List.of(dough), 1, clock, PlanClock.kitchenText(arguments));
  }

  /** The doughs of a file. */
  static DayOptions ofFile(Arguments arguments, Environment environment) {
    PlanClock clock = PlanClock.read(arguments, environment);
    int hands = arguments.count(HANDS, 1, 20).orElse(1);
    Reader reader = new Reader(arguments, environment, clock);
    reader.read(arguments.operands().get(0));
    return new DayOptions(
        reader.names, reader.days, hands, clock, PlanClock.kitchenText(arguments));
  }

  /** When the bread is ready. */
  String title() {
    return "Bread ready by " + clock.times().at(clock.readyHour());
  }

  /** Reads the lines of the file one by one. */
  private static final class Reader {
    private static final CommandSpec ROW =
        CommandSpec.named("class-day", "a dough")
            .options(OptionSpec.value(NAME, "TEXT", "rye", "What it is called."))
            .options(named(OWN))
            .build();
    private static final CommandSpec DAY =
        CommandSpec.named("class-day", "a dough").options(DayDough.specs()).build();

    private final BatchColumns columns = new BatchColumns(ROW);
    private final Arguments common;
    private final Environment environment;
    private final PlanClock clock;
    private final List<String> names = new ArrayList<>();
    private final List<BakeDay> days = new ArrayList<>();

    Reader(Arguments common, Environment environment, PlanClock clock) {
      this.common = common;
      this.environment = environment;
      this.clock = clock;
    }

    void read(String file) {
      try (BatchInput input = BatchInput.open(file, columns, environment)) {
        for (Optional<BatchRow> row = input.next(); row.isPresent(); row = input.next()) {
          add(file, row.get());
        }
      }
      if (days.isEmpty()) {
        throw new InputException(
            FileProblem.quoted(file) + " has no doughs: write a line for each under the header");
      }
    }

    private void add(String file, BatchRow row) {
      try {
        if (!row.problem().isEmpty()) {
          throw new InputException(row.problem());
        }
        if (days.size() == MOST_DOUGHS) {
          throw new InputException(
              "there are more than " + MOST_DOUGHS + " doughs: leave some out");
        }
        BakeDay day = day(row);
        names.add(name(row));
        days.add(day);
      } catch (InputException e) {
        throw new InputException(
            FileProblem.quoted(file)
                + " line "
                + row.line()
                + ": "
                + columns.inColumns(String.valueOf(e.getMessage())));
      }
    }

    private String name(BatchRow row) {
      String given =
          row.values().containsKey(NAME)
              ? row.values().get(NAME).get(0)
              : "dough " + (days.size() + 1);
      String name = Shorten.to(OneLine.of(given.strip()), LONGEST_NAME);
      if (names.contains(name)) {
        throw new InputException(
            "the name '" + name + "' stands there twice: give each dough its own");
      }
      return name;
    }

    private BakeDay day(BatchRow row) {
      Map<String, List<String>> values = new LinkedHashMap<>();
      for (String option : COMMON) {
        common.text(option).ifPresent(text -> values.put(option, List.of(text)));
      }
      row.values().forEach((option, text) -> putOwn(values, option, text));
      Arguments all = new Arguments(DAY, values, List.of(), environment.catalogue());
      BakeDay read = DayDough.read(all, clock, environment);
      all.notes().forEach(common::note);
      return read.toBuilder().readyAt(ready(row)).plans(1).build();
    }

    private static void putOwn(Map<String, List<String>> values, String option, List<String> text) {
      if (!option.equals(NAME) && !option.equals(PlanClock.READY_AT)) {
        values.put(option, text);
      }
    }

    /** Its own hour, on the day of the bread unless a date is given. */
    private double ready(BatchRow row) {
      if (!row.values().containsKey(PlanClock.READY_AT)) {
        return clock.readyHour();
      }
      String text = row.values().get(PlanClock.READY_AT).get(0);
      ClockTimes at =
          ClockTimes.parse(
              "--" + PlanClock.READY_AT,
              text,
              clock.readyAt().getZone(),
              clock.readyAt().toInstant());
      double hour = clock.hour(at.start());
      if (Math.abs(hour - clock.readyHour()) > 24) {
        throw new InputException(
            Quantities.shown("--" + PlanClock.READY_AT, text)
                + " lies more than a day from the hour of the others: plan it by itself");
      }
      return hour;
    }
  }
}
