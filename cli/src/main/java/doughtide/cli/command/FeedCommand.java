package doughtide.cli.command;

import doughtide.cli.answer.Answer;
import doughtide.cli.args.Arguments;
import doughtide.cli.args.ClockTimes;
import doughtide.cli.args.CommandSpec;
import doughtide.cli.command.stage.StageSections;
import doughtide.cli.file.OutputFile;
import doughtide.cli.options.FeedClock;
import doughtide.cli.options.FeedOptions;
import doughtide.cli.options.OutputOptions;
import doughtide.cli.options.PageOptions;
import doughtide.cli.options.StageOptions;
import doughtide.cli.options.StarterOptions;
import doughtide.cli.options.WordsOptions;
import doughtide.cli.session.Environment;
import doughtide.cli.session.Session;
import doughtide.core.feeding.FeedAmounts;
import doughtide.core.feeding.FeedingPlanner;
import doughtide.core.feeding.RatioAnswer;
import doughtide.core.feeding.RefreshmentPlan;
import doughtide.core.feeding.StagedBuild;
import doughtide.core.feeding.StagedForecast;
import doughtide.core.learning.JarError;
import doughtide.core.quantity.InputException;
import doughtide.core.quantity.Mass;
import doughtide.core.thermal.TemperatureTrace;
import doughtide.report.phone.PhonePage;
import doughtide.report.phone.PhoneStarter;
import doughtide.report.words.Words;
import java.time.ZonedDateTime;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;

/** When a fed starter is ripe, and the ratio or the hour for a wanted time. */
public final class FeedCommand implements Command {

  @Override
  public CommandSpec spec() {
    CommandSpec.Builder spec =
        CommandSpec.named("feed", "when a fed starter is ripe, or what to feed for a wanted hour")
            .everyday(
                "ratio",
                "fed-at",
                "ready-at",
                "starter-temp",
                "amount",
                "flour",
                "starter-condition",
                "refreshments",
                "format",
                "chart",
                "page")
            .options(FeedOptions.specs())
            .options(StageOptions.specs())
            .options(StarterOptions.file())
            .options(FeedClock.specs())
            .options(WordsOptions.specs())
            .options(
                OutputOptions.format(), OutputOptions.chart("feed.pdf"), OutputOptions.overwrite())
            .options(PageOptions.spec("starter.html"))
            .example("When is it ripe", "--ratio", "1:5:5", "--starter-temp", "22C")
            .example(
                "What to feed tonight for the morning",
                "--ready-at",
                "07:00",
                "--fed-at",
                "21:30",
                "--starter-temp",
                "20C",
                "--amount",
                "120g")
            .example(
                "When to feed",
                "--ratio",
                "1:2:1",
                "--starter-hydration",
                "50%",
                "--ready-at",
                "2027-03-07T06:00",
                "--zone",
                "Europe/Berlin",
                "--starter-temp",
                "72F")
            .example(
                "From the cold, two feeds",
                "--ratio",
                "1:2:2",
                "--starter-condition",
                "from cold",
                "--refreshments",
                "2",
                "--starter-temp",
                "24C",
                "--flour",
                "rye",
                "--amount",
                "100g")
            .example(
                "A rye sour in three stages",
                "--starter-flour",
                "rye",
                "--flour",
                "rye",
                "--stage",
                "fresh sour, 1:5, dough yield 200, 26C, 6h",
                "--stage",
                "basic sour, 1:4, dough yield 165, 25C, 8h",
                "--stage",
                "full sour, 1:1, dough yield 185, 30C, 3h",
                "--amount",
                "1kg")
            .example(
                "A page for the telephone",
                "--ratio",
                "1:5:5",
                "--starter-temp",
                "22C",
                "--fed-at",
                "21:30",
                "--page",
                "starter.html")
            .note(
                "Ripe: within 5 % of its greatest height and not yet falling. Ready is planned for"
                    + " the middle of the likely ripe time.");
    FeedResult.CAUTIONS.forEach(spec::note);
    return spec.build();
  }

  @Override
  public void run(Arguments arguments, Session session) {
    Environment environment = session.environment();
    OutputOptions.Format format = OutputOptions.format(arguments);
    Optional<StagedBuild> build = StageOptions.read(arguments, environment);
    if (build.isPresent()) {
      print(staged(build.get(), arguments, environment), format, session);
      return;
    }
    Optional<OutputFile> chart = OutputOptions.chart(arguments, environment);
    Words words = WordsOptions.ofChart(arguments);
    FeedOptions options = FeedOptions.read(arguments, environment);
    Optional<PageOptions> page = PageOptions.read(arguments, environment);
    FeedClock clock = FeedClock.read(arguments, environment);
    FeedResult result = result(options, clock, arguments, environment);
    chart.ifPresent(file -> FeedPicture.write(result, words, file));
    JarError jar = StarterOptions.jar(arguments, environment);
    page.ifPresent(
        each -> each.write(with -> PhonePage.of(forPhone(result, jar, with), with).html()));
    switch (format) {
      case TEXT -> {
        FeedSections.of(result).text(session.out());
        OutputOptions.sayChart(chart, session.out());
      }
      case JSON -> FeedSections.of(result).fromKitchen(arguments.fromKitchen()).json(session.out());
      case CSV -> FeedSections.of(result).csv(session.out());
    }
    page.ifPresent(each -> each.say(format, session.out()));
  }

  private static PhoneStarter forPhone(FeedResult result, JarError jar, Words words) {
    ClockTimes clock =
        result
            .clock()
            .orElseThrow(
                () ->
                    new InputException("--page shows clock times: add for example --fed-at 21:30"));
    return PhoneStarter.of(result.plan(), result.amounts(), clock.start(), jar, words);
  }

  private static Answer staged(StagedBuild build, Arguments arguments, Environment environment) {
    FeedClock clock = FeedClock.read(arguments, environment);
    Optional<Mass> amount = arguments.mass(FeedOptions.AMOUNT);
    arguments.refuseUnasked("a starter in stages");
    StagedForecast found =
        FeedingPlanner.with(StarterOptions.forecaster(arguments, environment)).build(build);
    Optional<ZonedDateTime> start =
        clock.fedAt().isPresent() || found.readyHours().isEmpty()
            ? clock.fedAt()
            : clock.feedingBefore(found.readyHours().getAsDouble());
    return StageSections.of(found, start.map(ClockTimes::from), amount, FeedResult.CAUTIONS)
        .fromKitchen(arguments.fromKitchen());
  }

  private static void print(Answer answer, OutputOptions.Format format, Session session) {
    switch (format) {
      case TEXT -> answer.text(session.out());
      case JSON -> answer.json(session.out());
      case CSV -> answer.csv(session.out());
    }
  }

  private static FeedResult result(
      FeedOptions options, FeedClock clock, Arguments arguments, Environment environment) {
    FeedingPlanner planner = FeedingPlanner.with(StarterOptions.forecaster(arguments, environment));
    if (options.ratioGiven().isEmpty() && clock.hours().isEmpty()) {
      throw ratioOrHours(arguments);
    }
    Optional<RatioAnswer> answer =
        options.ratioGiven().isPresent()
            ? Optional.empty()
            : Optional.of(ratioFor(clock.hours().orElseThrow(), options, planner));
    RefreshmentPlan plan =
        answer
            .map(RatioAnswer::plan)
            .orElseGet(
                () ->
                    planner.refresh(
                        options.feeding(), options.refreshments(), options.temperature().trace()));
    Optional<ZonedDateTime> start =
        clock.fedAt().isPresent() || plan.readyHours().isEmpty()
            ? clock.fedAt()
            : clock.feedingBefore(plan.readyHours().getAsDouble());
    Optional<ClockTimes> times = start.map(ClockTimes::from);
    return new FeedResult(
        options,
        plan,
        answer,
        answer.map(found -> nearestCelsius(found, options, planner)).orElse(OptionalInt.empty()),
        times,
        clock.readyAt(),
        amounts(options, plan),
        remarks(clock, times, plan, environment));
  }

  private static RatioAnswer ratioFor(double hours, FeedOptions options, FeedingPlanner planner) {
    TemperatureTrace temperature = options.temperature().trace();
    RatioAnswer exact =
        planner.ratioFor(hours, options.feeding(), options.refreshments(), temperature);
    return planner.inWholeParts(exact, options.feeding(), options.refreshments(), temperature);
  }

  /** How warm or cool it must be where no ratio makes it ready at the wanted hour. */
  private static OptionalInt nearestCelsius(
      RatioAnswer found, FeedOptions options, FeedingPlanner planner) {
    if (found.reach() == RatioAnswer.Reach.ON_TIME || options.temperature().steps().size() > 1) {
      return OptionalInt.empty();
    }
    return planner.celsiusFor(
        found.wantedHours(),
        options.feeding().withRatio(found.ratio()),
        options.refreshments(),
        options.temperature().first().celsius());
  }

  private static List<String> remarks(
      FeedClock clock, Optional<ClockTimes> times, RefreshmentPlan plan, Environment environment) {
    List<String> remarks = new ArrayList<>(clock.said());
    if (clock.fedAt().isEmpty()
        && times.isPresent()
        && times.get().start().toInstant().isBefore(environment.now())) {
      remarks.add(
          "The hour to feed has passed already. Use more starter, keep it warmer, or be ready"
              + " later.");
    }
    double until = plan.readyHours().orElse(0);
    times.flatMap(from -> from.clockChange(until)).ifPresent(said -> remarks.add(said + "."));
    return remarks;
  }

  private static InputException ratioOrHours(Arguments arguments) {
    return new InputException(
        arguments.missing(FeedOptions.RATIO).getMessage() + ", or give --ready-at to find it");
  }

  private static List<FeedAmounts> amounts(FeedOptions options, RefreshmentPlan plan) {
    return options
        .amount()
        .map(
            use ->
                options
                    .keep()
                    .map(keep -> plan.amounts(use, keep))
                    .orElseGet(() -> plan.amounts(use)))
        .map(amounts -> onScale(amounts, options.scale().grams()))
        .orElse(List.of());
  }

  private static List<FeedAmounts> onScale(List<FeedAmounts> amounts, double stepGrams) {
    return amounts.stream().map(each -> each.onScale(stepGrams)).toList();
  }
}
