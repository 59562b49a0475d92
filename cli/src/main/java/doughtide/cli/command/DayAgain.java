package doughtide.cli.command;

import doughtide.cli.args.Arguments;
import doughtide.cli.args.CommandSpec;
import doughtide.cli.args.OptionSpec;
import doughtide.cli.command.again.AbsentStudents;
import doughtide.cli.command.again.AgainAnswer;
import doughtide.cli.command.again.DayCalendar;
import doughtide.cli.command.again.DayNames;
import doughtide.cli.command.again.Happened;
import doughtide.cli.command.again.OtherLoaves;
import doughtide.cli.command.again.PlanFile;
import doughtide.cli.command.again.TodayReadings;
import doughtide.cli.command.roster.Absent;
import doughtide.cli.file.FileProblem;
import doughtide.cli.file.ReadingsFile;
import doughtide.cli.options.OutputOptions;
import doughtide.cli.options.StarterOptions;
import doughtide.cli.session.Environment;
import doughtide.cli.session.Session;
import doughtide.core.day.BakeDay;
import doughtide.core.day.BakeStep;
import doughtide.core.day.DayAnswer;
import doughtide.core.day.DayPlan;
import doughtide.core.day.ProofKind;
import doughtide.core.day.again.RestPlanner;
import doughtide.core.day.again.Slipped;
import doughtide.core.day.again.StagesBegun;
import doughtide.core.quantity.ClockText;
import doughtide.core.quantity.InputException;
import doughtide.core.quantity.Quantities;
import doughtide.core.quantity.Shorten;
import java.time.ZoneId;
import java.time.ZonedDateTime;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.stream.IntStream;
import java.util.stream.Stream;

/** Plans the rest of a day again that has slipped. */
final class DayAgain {

  static final String AGAIN = "again";
  private static final String NOW = "now";
  private static final String DID = "did";
  private static final String NOT_DONE = "not-done";
  static final String LOAVES = "loaves";
  private static final String PIECE = "piece";
  private static final double LEAST_PIECE_GRAMS = 20;
  private static final int LONGEST_HOURS = 60;

  /** What may be otherwise than planned after mixing. */
  private static final List<String> CHANGEABLE =
      List.of(PlanClock.BENCH, PlanClock.ROOM, "cold", "oven-capacity", "preheat", "bake", "cool");

  private static final CommandSpec DAY =
      CommandSpec.named("bake-day", "a day").options(DayDough.specs()).build();

  static List<OptionSpec> specs() {
    return List.of(
        OptionSpec.value(
            AGAIN,
            "FILE",
            "plan.json",
            "Plans the rest of a day that slipped: the plan that --format json wrote. Beside it"
                + " --at-the-bench, --room, --cold, the oven and the loaves of one dough may be"
                + " changed. With --cold, loaves that stand shaped in the room may go there."),
        OptionSpec.value(
                DID,
                "STEP",
                "shape 14:40",
                "With --again: a step that was done, and when, of several doughs as \"rye shape"
                    + " 14:40\", for rye alone (one that is not named goes as planned); may be"
                    + " repeated.")
            .repeatable(),
        OptionSpec.value(
                NOT_DONE,
                "STEP",
                "feed",
                "With --again: a step meant for before now that was not done, of several doughs as"
                    + " \"rye feed\"; what comes before it was done as planned. A fold is done"
                    + " later or left out. Without this or --did feed, the starter was fed as"
                    + " planned.")
            .repeatable(),
        OptionSpec.value(NOW, "TIME", "15:30", "With --again: what the clock says now.")
            .withDefault("the time now"),
        OptionSpec.value(
                StarterOptions.READINGS,
                "FILE",
                "today.csv",
                "With --again: the readings of the dough so far, a file as for doughtide learn; of"
                    + " several doughs as \"rye rye.csv\", one for each.")
            .repeatable(),
        ReadingsFile.skipOption());
  }

  /** For several doughs; one has its number of loaves among its own options. */
  static OptionSpec loaves() {
    return OptionSpec.value(
        LOAVES,
        "LOAVES",
        "rye 3, wheat 2",
        "With --again: how many loaves doughs become instead, of the same dough.");
  }

  /** An option that must be given, but for the plan that knows it. */
  static OptionSpec unlessAgain(OptionSpec option) {
    return option.use() == OptionSpec.Use.REQUIRED
        ? option.optional().withDefault("none, it is needed; with --again as planned")
        : option;
  }

  /** Refuses what says nothing without a plan. */
  static void refuseAlone(Arguments arguments) {
    List.of(DID, NOT_DONE, NOW, StarterOptions.READINGS)
        .forEach(option -> arguments.needs(option, AGAIN, "plan.json"));
  }

  static void run(String command, Arguments arguments, Session session) {
    DayReport.Written written = DayReport.Written.read(command, arguments, session);
    PlanFile file =
        PlanFile.read("--" + AGAIN, arguments.text(AGAIN).orElseThrow(), session.environment());
    arguments.operands().stream()
        .findFirst()
        .ifPresent(
            operand -> {
              throw new InputException(
                  FileProblem.quoted(operand)
                      + " says nothing to --"
                      + AGAIN
                      + ", whose plan knows its doughs: leave it out");
            });
    AgainAnswer again = new DayAgain(command, file, arguments, session).answer();
    DayReport.Shown shown =
        new DayReport.Shown(
            again.dayPlan(),
            file.names().names(),
            again.times().start(),
            again.times().after(again.rest().plans().get(0).day().readyHour()),
            again.file().students());
    written.write(
        shown,
        new DayCalendar(file.planId(), file.replanned() + 1, again.times()),
        again.entries(),
        again.answer(written.words()));
  }

  private final String command;
  private final PlanFile file;
  private final Arguments arguments;
  private final Environment environment;
  private final Map<Integer, TodayReadings> readings;
  private final Map<String, String> options;
  private final PlanClock clock;
  private final Happened happened;
  private final List<String> absent;

  private DayAgain(String command, PlanFile file, Arguments arguments, Session session) {
    this.command = command;
    this.arguments = arguments;
    this.environment = session.environment();
    this.readings = TodayReadings.read(arguments, file.names(), session);
    this.options = new LinkedHashMap<>(file.options());
    CHANGEABLE.stream()
        .filter(option -> arguments.offers(option) && arguments.given(option))
        .forEach(option -> options.put(option, String.join("; ", arguments.all(option))));
    this.clock = clock(given(file.options()), arguments, environment);
    this.absent = absent(file);
    PlanFile changed = otherLoaves(file);
    List<String> did = did(file.names());
    List<String> notDone = arguments.all(NOT_DONE);
    arguments.has(OutputOptions.OVERWRITE);
    arguments.refuseUnasked("--" + AGAIN);
    this.happened = Happened.of(file, did, notDone, clock.times(), clock.hour(clock.now()));
    this.file = AbsentStudents.without(absent, changed, happened);
  }

  private List<String> absent(PlanFile planned) {
    return arguments.offers(Absent.OPTION)
        ? arguments
            .text(Absent.OPTION)
            .map(text -> AbsentStudents.names(text, planned))
            .orElse(List.of())
        : List.of();
  }

  /** What is said, and that a dough is mixed whose readings say so. */
  private List<String> did(DayNames names) {
    List<String> did = new ArrayList<>(arguments.all(DID));
    readings.forEach(
        (dough, today) -> {
          String mix = names.before(dough) + "mix";
          if (did.stream().noneMatch(each -> each.startsWith(mix))) {
            today.mixed().ifPresent(when -> did.add(names.before(dough) + when));
          }
        });
    return did;
  }

  private Arguments given(Map<String, String> typed) {
    Map<String, List<String>> values = new LinkedHashMap<>();
    typed.forEach((option, text) -> values.put(option, List.of(text)));
    return new Arguments(DAY, values, List.of(), environment.catalogue());
  }

  private AgainAnswer answer() {
    List<RestPlanner.Dough> doughs = new ArrayList<>();
    for (int dough = 0; dough < file.doughs().size(); dough++) {
      doughs.add(dough(dough));
    }
    DayPlan rest = rest(doughs);
    return new AgainAnswer(
        command,
        file,
        options,
        happened,
        rest,
        readings.values().stream().map(TodayReadings::count).toList(),
        absent,
        clock.times());
  }

  private DayPlan rest(List<RestPlanner.Dough> doughs) {
    try {
      return RestPlanner.plan(doughs, file.hands(), happened.nowHour(), this::obstacle);
    } catch (InputException e) {
      throw e.key().equals(RestPlanner.NO_TIME)
          ? new InputException(
              e.key(), e.getMessage() + " with --" + PlanClock.BENCH + benchOfPlan())
          : e;
    }
  }

  private InputException obstacle(DayAnswer found) {
    List<String> unmixed =
        IntStream.range(0, file.doughs().size())
            .filter(dough -> !happened.isMixed(dough))
            .mapToObj(file.names().names()::get)
            .toList();
    String name = unmixed.get(found.obstacle().orElseThrow().dough());
    String why =
        DayText.obstacle(found, file.names().isOne() ? "" : "'" + name + "': ", clock.times());
    return DayReport.noPlan(
        Stream.of(AGAIN, PlanClock.BENCH).filter(arguments::given).toList(),
        why + benchOfPlan(),
        arguments);
  }

  /** Says whose hours at the bench were used where none are given beside the plan. */
  private String benchOfPlan() {
    return arguments.given(PlanClock.BENCH)
        ? ""
        : "; the hours at the bench are those of the plan, "
            + Shorten.to(options.getOrDefault(PlanClock.BENCH, ""), LONGEST_HOURS);
  }

  /** The plan with other numbers of loaves: more of the same dough are smaller. */
  private PlanFile otherLoaves(PlanFile planned) {
    if (!arguments.offers(LOAVES) || !arguments.given(LOAVES)) {
      return planned;
    }
    Map<Integer, Integer> loaves =
        planned.names().isOne()
            ? Map.of(0, arguments.count(LOAVES, 1, 500).orElseThrow())
            : OtherLoaves.read(
                "--" + LOAVES, arguments.text(LOAVES).orElseThrow(), planned.names());
    PlanFile changed = planned;
    for (Map.Entry<Integer, Integer> each : loaves.entrySet()) {
      changed = otherLoaves(changed, each.getKey(), each.getValue());
    }
    return changed;
  }

  private PlanFile otherLoaves(PlanFile planned, int dough, int loaves) {
    PlanFile.Dough before = planned.doughs().get(dough);
    Map<String, String> all = new LinkedHashMap<>(planned.options());
    // The hours that were meant may have passed.
    all.put(PlanClock.BENCH, options.getOrDefault(PlanClock.BENCH, ""));
    all.putAll(before.options());
    double grams = DayDough.read(given(all), clock, environment).allDough().grams();
    double piece = Math.rint(10 * grams / loaves) / 10;
    if (piece < LEAST_PIECE_GRAMS) {
      throw new InputException(
          "--loaves: "
              + loaves
              + " loaves of "
              + Math.round(grams)
              + " g of dough are lighter than 20 g each: give fewer");
    }
    Map<String, String> other = Map.of(LOAVES, "" + loaves, PIECE, piece + "g");
    if (planned.names().isOne() && before.options().isEmpty()) {
      options.putAll(other);
      return planned;
    }
    Map<String, String> own = new LinkedHashMap<>(before.options());
    own.putAll(other);
    return planned.with(
        dough, own, OtherLoaves.students(planned.students(), dough, before.name(), loaves));
  }

  private RestPlanner.Dough dough(int dough) {
    PlanFile.Dough planned = file.doughs().get(dough);
    Map<String, String> all = new LinkedHashMap<>(options);
    all.putAll(planned.options());
    Arguments values = given(all);
    BakeDay day = ready(planned, DayDough.read(values, clock, environment));
    String name = file.names().isOne() ? "" : planned.name();
    if (!happened.isMixed(dough)) {
      return new RestPlanner.Dough(name, unmixed(dough, day), Optional.empty(), begun(dough, day));
    }
    checkCold(planned, day);
    Slipped slipped = happened.slipped(dough, planned);
    TodayReadings today = readings.get(dough);
    BakeDay believed =
        today == null
            ? day
            : today.in(
                day, slipped.route(), StarterOptions.jar(values, environment), clock.times());
    return new RestPlanner.Dough(name, believed, Optional.of(slipped), Optional.empty());
  }

  /** Only a plan that somebody has changed has no cold for loaves that wait in it. */
  private void checkCold(PlanFile.Dough planned, BakeDay day) {
    if (planned.proof() == ProofKind.COLD && day.cold().isEmpty()) {
      throw new InputException(
          FileProblem.quoted(arguments.text(AGAIN).orElseThrow())
              + ": the loaves of '"
              + planned.name()
              + "' wait in the cold, and the plan has none: give --cold 4C, or plan the day anew");
    }
  }

  /** Its own hour, where it has one. */
  private BakeDay ready(PlanFile.Dough planned, BakeDay day) {
    String own = planned.options().get(PlanClock.READY_AT);
    return own == null
        ? day
        : day.toBuilder()
            .readyAt(
                clock.hour(
                    ClockText.moment(
                        "--" + PlanClock.READY_AT,
                        own,
                        clock.readyAt().toLocalDate(),
                        clock.readyAt().getZone())))
            .build();
  }

  /** The starter is what it was fed to be; all after it is planned anew from now on. */
  private BakeDay unmixed(int dough, BakeDay day) {
    if (readings.containsKey(dough)) {
      throw new InputException(
          "--readings are of a dough that is mixed: say when, for example --did \""
              + file.names().before(dough)
              + "mix 10:15\"");
    }
    PlanFile.Dough planned = file.doughs().get(dough);
    BakeDay.Builder from = day.toBuilder().plans(1);
    OptionalDouble fed = happened.hour(dough, BakeStep.Kind.FEED);
    if (fed.isPresent()) {
      planned.feed().ifPresent(ratio -> from.fed(fed.getAsDouble(), ratio));
      from.starterPercents(List.of(planned.starterPercent()));
    }
    return from.build();
  }

  /** The stages of its starter, if some are done. */
  private Optional<StagesBegun> begun(int dough, BakeDay day) {
    List<Double> done = happened.feedings(dough);
    return done.isEmpty()
        ? Optional.empty()
        : day.stages().map(times -> new StagesBegun(times.build(), done, happened.nowHour()));
  }

  private static PlanClock clock(Arguments before, Arguments arguments, Environment environment) {
    ZoneId zone =
        Quantities.zone("--zone", before.text(PlanClock.ZONE).orElse(environment.zone().getId()));
    ZonedDateTime here = environment.now().atZone(zone);
    ZonedDateTime now =
        arguments
            .text(NOW)
            .map(text -> ClockText.moment("--" + NOW, text, here.toLocalDate(), zone))
            .orElse(here);
    String ready =
        before.text(PlanClock.READY_AT).orElseThrow(() -> before.missing(PlanClock.READY_AT));
    PlanClock clock =
        PlanClock.late(
            ClockText.moment("--" + PlanClock.READY_AT, ready, now.toLocalDate(), zone), now);
    double hour = clock.hour(now);
    if (hour < 0 || hour > clock.readyHour() + 24) {
      throw new InputException(
          "now, "
              + now.toLocalDate()
              + ", is not in the day of the plan, whose bread is ready "
              + clock.times().at(clock.readyHour())
              + ": give its date, for example --now "
              + clock.readyAt().toLocalDate()
              + "T09:30");
    }
    return clock;
  }
}
