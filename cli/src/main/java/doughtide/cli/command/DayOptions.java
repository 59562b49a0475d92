package doughtide.cli.command;

import doughtide.cli.args.Arguments;
import doughtide.cli.args.ClockTimes;
import doughtide.cli.args.CommandSpec;
import doughtide.cli.args.DayOfClock;
import doughtide.cli.args.OptionSpec;
import doughtide.cli.batch.BatchColumns;
import doughtide.cli.batch.BatchInput;
import doughtide.cli.batch.BatchRow;
import doughtide.cli.command.again.DayCalendar;
import doughtide.cli.command.roster.Absent;
import doughtide.cli.command.roster.RosterGroup;
import doughtide.cli.file.FileProblem;
import doughtide.cli.file.RosterFile;
import doughtide.cli.options.BenchOptions;
import doughtide.cli.options.FormulaOptions;
import doughtide.cli.options.KitchenOptions;
import doughtide.cli.options.StageOptions;
import doughtide.cli.options.StarterOptions;
import doughtide.cli.session.Environment;
import doughtide.cli.text.OneLine;
import doughtide.core.day.BakeDay;
import doughtide.core.document.RosterDocument;
import doughtide.core.document.RosterEntry;
import doughtide.core.quantity.InputException;
import doughtide.core.quantity.Quantities;
import doughtide.core.quantity.Shorten;
import java.time.ZonedDateTime;
import java.util.ArrayList;
import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;

/**
 * What a day of one dough or several is planned from.
 *
 * @param names of the doughs
 * @param doughs as the planner takes them
 * @param hands how many persons work
 * @param clock the hours as clock times
 * @param room the room as typed
 * @param handling what loaves and dough are handled with at the bench
 * @param groups the students of each dough; empty without a roster
 * @param absent students who are not there and not among them
 * @param typed the options that all doughs share, as typed, with the full date of the bread
 * @param own the options that each dough has of its own, as typed; empty where there is only one
 */
record DayOptions(
    List<String> names,
    List<BakeDay> doughs,
    int hands,
    PlanClock clock,
    String room,
    BenchOptions handling,
    List<RosterGroup> groups,
    List<String> absent,
    Map<String, String> typed,
    List<Map<String, String>> own) {

  private static final String NAME = "name";
  private static final String HANDS = "hands";
  private static final String FLOUR = "flour";
  private static final String STARTER_IN_COLD = "starter-in-cold";
  private static final String LOAVES = "loaves";
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
          "cold-measured",
          "cold-air",
          "cold-file",
          "shaping",
          "oven-capacity",
          "preheat",
          "bake",
          "cool",
          "altitude",
          BenchOptions.SHAPING_TIME,
          BenchOptions.MIXER_CAPACITY,
          "starter-condition",
          StageOptions.STAGE,
          StageOptions.STAGES,
          StarterOptions.STARTER_FILE);

  /** What each dough has of its own. */
  private static final List<String> OWN =
      List.of(
          "loaves",
          "piece",
          "form",
          "shaping",
          "flour",
          "flour-file",
          "hydration",
          "salt",
          "starter",
          "starter-hydration",
          "starter-condition",
          "starter-flour",
          STARTER_IN_COLD,
          StageOptions.STAGE,
          StageOptions.STAGES,
          "dough-temp",
          "vessel",
          "vessel-material",
          "target",
          FormulaOptions.GRAMS,
          FormulaOptions.INCLUSIONS,
          PlanClock.READY_AT);

  /** How a starter is made ready for a dough: a dough's own way stands for that of all. */
  private static final List<String> STARTERS =
      List.of(STARTER_IN_COLD, StageOptions.STAGE, StageOptions.STAGES);

  DayOptions {
    names = List.copyOf(names);
    doughs = List.copyOf(doughs);
    groups = List.copyOf(groups);
    absent = List.copyOf(absent);
    typed = Collections.unmodifiableMap(new LinkedHashMap<>(typed));
    own = List.copyOf(own);
  }

  /** The options of a day whose doughs stand in a file. */
  static List<OptionSpec> specsBesideFile() {
    List<OptionSpec> specs = new ArrayList<>();
    named(COMMON).stream().map(OptionSpec::optional).forEach(specs::add);
    specs.add(
        OptionSpec.value(
            RosterFile.OPTION,
            "FILE",
            "roster.txt",
            "Who is in the class: a table name;dough;flour;loaves;language. The doughs of FILE get"
                + " as many loaves as their students want; without FILE all is usual."));
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
        List.of("dough"),
        List.of(dough),
        1,
        clock,
        PlanClock.roomText(arguments),
        BenchOptions.read(arguments),
        List.of(),
        List.of(),
        typed(arguments, clock),
        List.of());
  }

  /** The doughs of a file. */
  static DayOptions ofFile(Arguments arguments, Environment environment) {
    PlanClock clock = PlanClock.read(arguments, environment);
    if (!arguments.has(PlanClock.BENCH)) {
      throw arguments.missing(PlanClock.BENCH);
    }
    arguments.exclusive(StageOptions.STAGE, StageOptions.STAGES);
    int hands = arguments.count(HANDS, 1, 20).orElse(1);
    Reader reader = new Reader(arguments, environment, clock);
    arguments.needs(Absent.OPTION, RosterFile.OPTION, "roster.txt");
    Optional<RosterDocument> roster = roster(arguments, environment);
    List<String> absent = absent(arguments, roster);
    List<RosterGroup> groups =
        roster.map(all -> RosterGroup.of(without(all, absent))).orElse(List.of());
    reader.read(arguments.operands().stream().findFirst(), groups);
    reader.parts.forEach(arguments::part);
    return new DayOptions(
        reader.names,
        reader.days,
        hands,
        clock,
        PlanClock.roomText(arguments),
        BenchOptions.read(arguments),
        groups,
        absent,
        typed(arguments, clock),
        reader.own);
  }

  /** The options of a day as typed, with the full date of the bread and its zone. */
  static Map<String, String> typed(Arguments arguments, PlanClock clock) {
    Map<String, String> typed = new LinkedHashMap<>();
    for (OptionSpec spec : DayDough.specs()) {
      if (arguments.offers(spec.name())) {
        arguments
            .text(spec.name())
            .ifPresent(text -> typed.put(spec.name(), typed(arguments, spec)));
      }
    }
    typed.put(PlanClock.READY_AT, clock.readyAt().toLocalDateTime().toString());
    typed.put(PlanClock.ZONE, clock.readyAt().getZone().getId());
    return typed;
  }

  private static String typed(Arguments arguments, OptionSpec spec) {
    return spec.takesValue() ? String.join("; ", arguments.all(spec.name())) : "yes";
  }

  /** The same for the same question, whenever it is asked. */
  String planId() {
    return DayCalendar.id(names + " " + typed);
  }

  private static Optional<RosterDocument> roster(Arguments arguments, Environment environment) {
    return arguments.text(RosterFile.OPTION).map(name -> RosterFile.read(name, environment));
  }

  private static List<String> absent(Arguments arguments, Optional<RosterDocument> roster) {
    List<String> names =
        roster.stream().flatMap(each -> each.entries().stream()).map(RosterEntry::name).toList();
    return arguments.text(Absent.OPTION).map(text -> Absent.read(text, names)).orElse(List.of());
  }

  private static RosterDocument without(RosterDocument roster, List<String> absent) {
    return new RosterDocument(
        roster.className(),
        roster.entries().stream().filter(each -> !absent.contains(each.name())).toList());
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
        KitchenOptions.added(
            CommandSpec.named("class-day", "a dough").options(DayDough.specs()).build());

    private final BatchColumns columns = new BatchColumns(ROW);
    private final Arguments common;
    private final Environment environment;
    private final PlanClock clock;
    private final List<String> names = new ArrayList<>();
    private final List<BakeDay> days = new ArrayList<>();
    private final List<Arguments> parts = new ArrayList<>();
    private final List<Map<String, String>> own = new ArrayList<>();
    private final Map<String, BatchRow> rows = new LinkedHashMap<>();

    Reader(Arguments common, Environment environment, PlanClock clock) {
      this.common = common;
      this.environment = environment;
      this.clock = clock;
    }

    void read(Optional<String> file, List<RosterGroup> groups) {
      if (file.isEmpty() && groups.isEmpty()) {
        throw new InputException(
            "class-day needs a file of doughs or a roster: write for example class-day class.csv,"
                + " or --roster roster.txt");
      }
      file.ifPresent(this::read);
      if (!groups.isEmpty()) {
        plan(groups, file);
      }
    }

    private void read(String file) {
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

    /** The doughs that a roster asks for, each as its line of the file has it. */
    private void plan(List<RosterGroup> groups, Optional<String> file) {
      if (groups.size() > MOST_DOUGHS) {
        throw new InputException(
            "the roster asks for "
                + groups.size()
                + " doughs and flours, at most "
                + MOST_DOUGHS
                + " are planned: let some students share a dough");
      }
      names.clear();
      days.clear();
      parts.clear();
      own.clear();
      for (RosterGroup group : groups) {
        names.add(group.name());
        add(row(group, file));
      }
    }

    private BatchRow row(RosterGroup group, Optional<String> file) {
      if (file.isPresent() && !rows.containsKey(group.dough())) {
        throw new InputException(
            "the roster's dough '"
                + group.dough()
                + "' is not in "
                + FileProblem.quoted(file.get())
                + ": its doughs are "
                + String.join(", ", rows.keySet()));
      }
      Map<String, List<String>> values = new LinkedHashMap<>();
      Optional.ofNullable(rows.get(group.dough())).ifPresent(row -> values.putAll(row.values()));
      values.put(LOAVES, List.of(Integer.toString(group.loaves())));
      group
          .flourText()
          .ifPresent(
              flour -> {
                values.remove("flour-file");
                values.put(FLOUR, List.of(flour));
              });
      return new BatchRow(1, group.dough(), values, "");
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
        add(row);
        String name = name(row);
        names.add(name);
        rows.put(name, row);
      } catch (InputException e) {
        refuseShared(e);
        throw new InputException(
            FileProblem.quoted(file)
                + " line "
                + row.line()
                + ": "
                + columns.inColumns(String.valueOf(e.getMessage())));
      }
    }

    /** What the options alone are refused for, without a line, is no mistake in a line. */
    private void refuseShared(InputException found) {
      try {
        day(new BatchRow(1, "", Map.of(), ""));
      } catch (InputException shared) {
        if (Objects.equals(shared.getMessage(), found.getMessage())) {
          throw shared;
        }
      }
    }

    private void add(BatchRow row) {
      BakeDay day = day(row);
      days.add(day);
      Arguments all = parts.get(parts.size() - 1);
      Map<String, String> typed = new LinkedHashMap<>();
      named(OWN).stream()
          .filter(spec -> all.has(spec.name()))
          .forEach(spec -> typed.put(spec.name(), typed(all, spec)));
      if (row.values().containsKey(PlanClock.READY_AT)) {
        ZonedDateTime ready = clock.times().after(day.readyHour());
        typed.put(PlanClock.READY_AT, ready.toLocalDateTime().toString());
      } else {
        typed.remove(PlanClock.READY_AT);
      }
      own.add(typed);
    }

    private String name(BatchRow row) {
      String given =
          row.values().containsKey(NAME) ? row.values().get(NAME).get(0) : "dough " + days.size();
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
        if (common.has(option)) {
          values.put(option, common.all(option));
        }
      }
      values.putAll(KitchenOptions.choice(common));
      if (STARTERS.stream().anyMatch(row.values()::containsKey)) {
        values.keySet().removeAll(STARTERS);
      }
      row.values().forEach((option, text) -> putOwn(values, option, text));
      Arguments own = new Arguments(DAY, values, List.of(), environment.catalogue());
      Arguments all = KitchenOptions.beside(own, Map.of(), environment);
      BakeDay read = DayDough.read(all, clock, environment);
      parts.add(all);
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
      DayOfClock days =
          new DayOfClock(clock.now().toLocalDate(), environment.catalogue().vocabulary());
      String text =
          days.dated("--" + PlanClock.READY_AT, row.values().get(PlanClock.READY_AT).get(0));
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
