package doughtide.cli.command;

import doughtide.cli.answer.Answer;
import doughtide.cli.args.Arguments;
import doughtide.cli.args.CommandSpec;
import doughtide.cli.args.OptionSpec;
import doughtide.cli.command.again.AgainAnswer;
import doughtide.cli.command.again.DayCalendar;
import doughtide.cli.command.again.Happened;
import doughtide.cli.command.again.PlanFile;
import doughtide.cli.command.again.TodayReadings;
import doughtide.cli.file.OutputFile;
import doughtide.cli.file.ReadingsFile;
import doughtide.cli.options.OutputOptions;
import doughtide.cli.options.PageOptions;
import doughtide.cli.options.StarterOptions;
import doughtide.cli.options.WordsOptions;
import doughtide.cli.session.Environment;
import doughtide.cli.session.Session;
import doughtide.core.day.BakeDay;
import doughtide.core.day.BakePlan;
import doughtide.core.day.BakeStep;
import doughtide.core.day.DayAnswer;
import doughtide.core.day.DayPlanner;
import doughtide.core.day.SearchControl;
import doughtide.core.day.again.RestOfDay;
import doughtide.core.day.again.RestPlanner;
import doughtide.core.day.again.Slipped;
import doughtide.core.quantity.ClockText;
import doughtide.core.quantity.InputException;
import doughtide.core.quantity.Quantities;
import doughtide.report.words.Words;
import java.time.ZoneId;
import java.time.ZonedDateTime;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;

/** Plans the rest of a day again that has slipped. */
final class DayAgain {

  static final String AGAIN = "again";
  private static final String NOW = "now";
  private static final String DID = "did";
  private static final String LOAVES = "loaves";
  private static final String PIECE = "piece";

  /** What may be otherwise than planned after mixing. */
  private static final List<String> CHANGEABLE =
      List.of(
          LOAVES,
          PlanClock.BENCH,
          PlanClock.ROOM,
          "cold",
          "oven-capacity",
          "preheat",
          "bake",
          "cool");

  private static final CommandSpec DAY =
      CommandSpec.named("bake-day", "a day").options(DayDough.specs()).build();

  private DayAgain() {}

  static List<OptionSpec> specs() {
    return List.of(
        OptionSpec.value(
            AGAIN,
            "FILE",
            "plan.json",
            "Plans the rest of a day that slipped: the plan that --format json wrote."
                + " Beside it --loaves, --at-the-bench, --room, --cold and the oven may be"
                + " changed."),
        OptionSpec.value(
                DID,
                "STEP",
                "shape 14:40",
                "With --again: a step that was done, and when; may be repeated.")
            .repeatable(),
        OptionSpec.value(NOW, "TIME", "15:30", "With --again: what the clock says now.")
            .withDefault("the time now"),
        OptionSpec.value(
            StarterOptions.READINGS,
            "FILE",
            "today.csv",
            "With --again: the readings of the dough so far, a file as for doughtide learn."),
        ReadingsFile.skipOption());
  }

  /** An option that must be given, but for the plan that knows it. */
  static OptionSpec unlessAgain(OptionSpec option) {
    return option.use() == OptionSpec.Use.REQUIRED
        ? option.optional().withDefault("none, it is needed; with --again as planned")
        : option;
  }

  /** Refuses what says nothing without a plan. */
  static void refuseAlone(Arguments arguments) {
    List.of(DID, NOW, StarterOptions.READINGS)
        .forEach(option -> arguments.needs(option, AGAIN, "plan.json"));
  }

  static void run(Arguments arguments, Session session) {
    Environment environment = session.environment();
    OutputOptions.Format format = OutputOptions.format(arguments);
    OutputOptions.Paper paper = OutputOptions.paper(arguments);
    Optional<OutputFile> chart = OutputOptions.chart(arguments, environment);
    Words words = WordsOptions.ofChart(arguments);
    Optional<OutputFile> calendar = DayReport.calendar(arguments, environment);
    Optional<PageOptions> page = PageOptions.read(arguments, environment);
    PlanFile file = PlanFile.read("--" + AGAIN, arguments.text(AGAIN).orElseThrow(), environment);
    AgainAnswer again = again(file, arguments, session);
    calendar.ifPresent(
        to ->
            new DayCalendar(file.planId(), file.replanned() + 1, again.times())
                .write(again.entries(), "bake-day", to, environment.now()));
    DayReport.Shown shown = shown(again);
    chart.ifPresent(to -> DayReport.draw(shown, words, to, paper));
    page.ifPresent(to -> to.write(with -> DayReport.page(shown, with)));
    Answer answer = again.answer();
    switch (format) {
      case TEXT -> answer.text(session.out());
      case JSON -> answer.json(session.out());
      case CSV -> answer.csv(session.out());
    }
    page.ifPresent(to -> to.say(format, session.out()));
  }

  private static DayReport.Shown shown(AgainAnswer again) {
    return new DayReport.Shown(
        again.dayPlan(),
        List.of("dough"),
        again.times().start(),
        again.times().after(again.day().readyHour()));
  }

  private static AgainAnswer again(PlanFile file, Arguments arguments, Session session) {
    Environment environment = session.environment();
    Map<String, List<String>> values = file.values();
    Arguments before = new Arguments(DAY, values, List.of(), environment.catalogue());
    PlanClock clock = clock(before, arguments, environment);
    Map<String, List<String>> changed = new LinkedHashMap<>(values);
    CHANGEABLE.stream()
        .filter(arguments::given)
        .forEach(option -> changed.put(option, arguments.all(option)));
    Optional<TodayReadings> readings = TodayReadings.read(arguments, session);
    List<String> did = new ArrayList<>(arguments.all(DID));
    if (did.stream().noneMatch(each -> each.startsWith("mix"))) {
      readings.flatMap(TodayReadings::mixed).ifPresent(did::add);
    }
    arguments.has(OutputOptions.OVERWRITE);
    arguments.refuseUnasked("--" + AGAIN);
    BakeDay planned = DayDough.read(withBench(before, changed), clock, environment);
    if (arguments.given(LOAVES)) {
      int loaves = arguments.count(LOAVES, 1, 500).orElseThrow();
      double grams = Math.rint(10 * planned.allDough().grams() / loaves) / 10;
      changed.put(PIECE, List.of(grams + "g"));
    }
    Arguments now = new Arguments(DAY, changed, List.of(), environment.catalogue());
    BakeDay day = DayDough.read(now, clock, environment);
    double nowHour = clock.hour(clock.now());
    Happened happened = Happened.of(file.steps(clock.times()), did, clock.times(), nowHour);
    RestOfDay rest =
        happened.isMixed()
            ? rest(readings, day, happened.slipped(file), now, clock, environment)
            : unmixed(readings, day, happened, file, clock);
    return new AgainAnswer(
        file,
        DayOptions.typed(now, clock),
        planned.loaves(),
        day,
        happened,
        rest,
        readings.map(TodayReadings::count).orElse(0L),
        clock.times());
  }

  private static RestOfDay rest(
      Optional<TodayReadings> readings,
      BakeDay day,
      Slipped slipped,
      Arguments now,
      PlanClock clock,
      Environment environment) {
    BakeDay believed =
        readings
            .map(
                each ->
                    each.in(
                        day, slipped.route(), StarterOptions.jar(now, environment), clock.times()))
            .orElse(day);
    return RestPlanner.plan(believed, slipped);
  }

  /** The starter is what it was fed to be; all after it is planned anew from now on. */
  private static RestOfDay unmixed(
      Optional<TodayReadings> readings,
      BakeDay day,
      Happened happened,
      PlanFile file,
      PlanClock clock) {
    if (readings.isPresent()) {
      throw new InputException(
          "--readings are of a dough that is mixed: say when, for example --did \"mix 10:15\"");
    }
    BakeDay.Builder from = day.toBuilder().plans(1);
    OptionalDouble fed = happened.hour(BakeStep.Kind.FEED);
    if (fed.isPresent() && file.feed().isPresent()) {
      from.fed(fed.getAsDouble(), file.feed().get());
      from.starterPercents(List.of(file.starterPercent()));
    }
    DayAnswer found = DayPlanner.plan(List.of(from.build()), 1, SearchControl.none());
    if (found.days().isEmpty()) {
      found = atOtherTemperatures(from);
    }
    if (found.days().isEmpty()) {
      throw new InputException("day.no-plan", DayText.obstacle(found, "", clock.times()));
    }
    BakePlan plan = found.days().get(0).plans().get(0);
    return new RestOfDay(plan, plan.steps());
  }

  /** The water can still be warmer or colder than was meant. */
  private static DayAnswer atOtherTemperatures(BakeDay.Builder from) {
    from.doughCelsius(List.of(20.0, 22.0, 24.0, 26.0, 28.0));
    return DayPlanner.plan(List.of(from.build()), 1, SearchControl.none());
  }

  /** The plan as it was, with the hours at the bench as they are now: the old may have passed. */
  private static Arguments withBench(Arguments before, Map<String, List<String>> changed) {
    Map<String, List<String>> values = new LinkedHashMap<>();
    for (OptionSpec spec : DayDough.specs()) {
      if (before.has(spec.name())) {
        values.put(spec.name(), before.all(spec.name()));
      }
    }
    Optional.ofNullable(changed.get(PlanClock.BENCH))
        .ifPresent(hours -> values.put(PlanClock.BENCH, hours));
    return new Arguments(DAY, values, List.of(), before.catalogue());
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
        PlanClock.counted(
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
