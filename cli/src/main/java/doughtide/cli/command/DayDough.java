package doughtide.cli.command;

import doughtide.cli.args.Arguments;
import doughtide.cli.args.OptionSpec;
import doughtide.cli.file.FlourFile;
import doughtide.cli.options.BenchOptions;
import doughtide.cli.options.ColdOptions;
import doughtide.cli.options.FormulaOptions;
import doughtide.cli.options.ProofOptions;
import doughtide.cli.options.StageOptions;
import doughtide.cli.options.StarterOptions;
import doughtide.cli.options.TemperatureOptions;
import doughtide.cli.session.Environment;
import doughtide.core.day.BakeDay;
import doughtide.core.day.Oven;
import doughtide.core.dough.DoughFormula;
import doughtide.core.dough.FlourClass;
import doughtide.core.dough.Starter;
import doughtide.core.feeding.BuildTimes;
import doughtide.core.feeding.FeedingPlanner;
import doughtide.core.forecast.RiseForecaster;
import doughtide.core.loaf.PieceForm;
import doughtide.core.quantity.InputException;
import doughtide.core.quantity.Mass;
import doughtide.core.quantity.Quantities;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/**
 * One dough of a day, and with it the oven, the cold and the hours that all its doughs share, as
 * read from the command line or from a line of a file.
 */
final class DayDough {

  private static final String COLD = "cold";
  private static final String LOAVES = "loaves";
  private static final String PIECE = "piece";
  private static final String FORM = "form";
  private static final String FLOUR = "flour";
  private static final String HYDRATION = "hydration";
  private static final String SALT = "salt";
  private static final String STARTER_HYDRATION = "starter-hydration";
  private static final String STARTER_CONDITION = "starter-condition";
  private static final String STARTER_FLOUR = "starter-flour";
  private static final String STARTER = "starter";
  private static final String STARTER_IN_COLD = "starter-in-cold";
  private static final String DOUGH_TEMP = "dough-temp";
  private static final String PROOFER = "proofer";
  private static final String TARGET = "target";
  private static final String ALTITUDE = "altitude";
  private static final String OVEN_CAPACITY = "oven-capacity";
  private static final String PREHEAT = "preheat";
  private static final String BAKE = "bake";
  private static final String COOL = "cool";
  static final String PLANS = "plans";

  private DayDough() {}

  static List<OptionSpec> specs() {
    List<OptionSpec> all = new ArrayList<>(own());
    all.addAll(ProofOptions.coldAndShaping());
    all.addAll(ColdOptions.specs());
    all.addAll(StageOptions.specs());
    all.addAll(FormulaOptions.specs());
    all.addAll(BenchOptions.specs());
    return all;
  }

  private static List<OptionSpec> own() {
    return List.of(
        OptionSpec.value(
                PlanClock.READY_AT,
                "TIME",
                "2027-03-07T12:00",
                "When the bread must be cool enough to slice: tomorrow 12:00, a date and time, or a"
                    + " time of today.")
            .required(),
        OptionSpec.value(
                PlanClock.BENCH,
                "HOURS",
                "06:30-08:30,17:00-22:30",
                "When you can be at the bench: every day, or dated such as"
                    + " 2027-03-05T17:00/2027-03-05T22:30; several with commas.")
            .required(),
        OptionSpec.value(PlanClock.ZONE, "ZONE", "Europe/Berlin", "The place whose clock is meant.")
            .withDefault("the zone of this computer"),
        OptionSpec.value(
                PlanClock.ROOM,
                "TEMP",
                "21C,22:00-06:00:18C",
                "The room; other temperatures by the clock with commas.")
            .withDefault(PlanClock.USUAL_ROOM),
        OptionSpec.value(
            COLD, "TEMP", "4C", "The cold, a refrigerator; without it nothing is chilled."),
        OptionSpec.value(LOAVES, "COUNT", "2", "How many loaves, 1 to 500.").withDefault("1"),
        OptionSpec.value(PIECE, "MASS", "850g", "Dough of one loaf.").withDefault("850g"),
        OptionSpec.value(
                FORM, "WORD", "round", "What a loaf proofs as: round, oval, tin, baguette.")
            .withDefault("round"),
        OptionSpec.value(
                FLOUR,
                "FLOUR",
                "white:80%,wholemeal wheat:20%",
                "All flour: " + FlourClass.names() + ".")
            .withDefault("white"),
        FlourFile.option(),
        StarterOptions.file(),
        OptionSpec.value(HYDRATION, "SHARE", "72%", "All water in per cent of all flour.")
            .withDefault("70%"),
        OptionSpec.value(SALT, "SHARE", "2%", "Salt in per cent of all flour.").withDefault("2%"),
        OptionSpec.value(STARTER_HYDRATION, "SHARE", "100%", "Water over flour in the starter.")
            .withDefault("100%"),
        OptionSpec.value(
                STARTER_CONDITION,
                "WORD",
                "from cold",
                "How the starter is when it is fed for this dough: ripe, young, past best or from"
                    + " cold.")
            .withDefault("ripe"),
        OptionSpec.value(STARTER_FLOUR, "FLOUR", "rye", "The flour the starter is kept and fed on.")
            .withDefault("white"),
        OptionSpec.value(
            STARTER,
            "SHARE",
            "20%",
            "Plans with this starter share only, per cent of the flour added."),
        OptionSpec.value(
            STARTER_IN_COLD,
            "TIME",
            "24h",
            "A ripe starter waits in the cold for so long already, 1 to 168 h: none is fed."),
        OptionSpec.value(
            DOUGH_TEMP, "TEMP", "25C", "Plans with this dough temperature after mixing only."),
        OptionSpec.flag(
            PROOFER, "The dough is held at its temperature (a proofer), not at the room's."),
        OptionSpec.value(
                TemperatureOptions.VESSEL, "WORD", "bowl", "What it stands in: bowl, tub or jar.")
            .withDefault("tub"),
        OptionSpec.value(
                TemperatureOptions.VESSEL_MATERIAL,
                "WORD",
                "wood",
                "Of plastic, metal, wood, glass or stoneware.")
            .withDefault("plastic"),
        OptionSpec.value(TARGET, "RISE", "90%", "The rise wanted at the oven.")
            .withDefault("by flour"),
        OptionSpec.value(ALTITUDE, "HEIGHT", "1500m", "Height of the kitchen above the sea.")
            .withDefault("sea level"),
        OptionSpec.value(OVEN_CAPACITY, "COUNT", "2", "Loaves in the oven at once.")
            .withDefault("2"),
        OptionSpec.value(PREHEAT, "TIME", "45min", "From switching on to the first loaf.")
            .withDefault("45min"),
        OptionSpec.value(BAKE, "TIME", "45min", "One batch in the oven.").withDefault("45min"),
        OptionSpec.value(COOL, "TIME", "90min", "From the oven to the first slice.")
            .withDefault("90min"),
        OptionSpec.value(PLANS, "COUNT", "3", "How many plans to show, 1 to 20.").withDefault("3"));
  }

  static BakeDay read(Arguments arguments, PlanClock clock, Environment environment) {
    String bench =
        arguments.text(PlanClock.BENCH).orElseThrow(() -> arguments.missing(PlanClock.BENCH));
    arguments.exclusive(FLOUR, FlourFile.OPTION);
    arguments.exclusive(STARTER_CONDITION, STARTER_IN_COLD);
    arguments.exclusive(StageOptions.STAGE, STARTER_IN_COLD);
    arguments.exclusive(StageOptions.STAGES, STARTER_IN_COLD);
    RiseForecaster forecaster = StarterOptions.forecaster(arguments, environment);
    Optional<BuildTimes> stages =
        StageOptions.read(arguments, environment)
            .map(build -> BuildTimes.of(FeedingPlanner.with(forecaster).build(build)));
    DoughFormula usual = FormulaOptions.formula(arguments, environment);
    DoughFormula dough =
        stages.map(times -> with(times.build().ripened(), arguments, environment)).orElse(usual);
    BakeDay.Builder day =
        BakeDay.builder()
            .readyAt(clock.readyHour())
            .bench(clock.bench(bench, arguments::note))
            .room(clock.room(PlanClock.roomText(arguments)))
            .dough(dough)
            .oven(oven(arguments))
            .forecaster(forecaster);
    loaves(arguments, dough, day);
    if (arguments.has(FormulaOptions.GRAMS)) {
      day.starterPercents(List.of(100 * dough.starterOfAddedFlour()));
    }
    ColdOptions.read(arguments, environment)
        .ifPresent(cold -> named(arguments, COLD, () -> day.cold(cold)));
    ProofOptions.shaping(arguments).ifPresent(day::shaped);
    arguments.rise(TARGET).ifPresent(rise -> named(arguments, TARGET, () -> day.target(rise)));
    arguments
        .hours(STARTER_IN_COLD)
        .ifPresent(hours -> named(arguments, STARTER_IN_COLD, () -> day.starterInCold(hours)));
    stages.ifPresent(day::stages);
    narrowed(arguments, dough, day);
    if (arguments.has(PROOFER)) {
      refuseInProofer(arguments, TemperatureOptions.VESSEL);
      refuseInProofer(arguments, TemperatureOptions.VESSEL_MATERIAL);
    } else {
      TemperatureOptions.vessel(arguments).ifPresent(day::vessel);
    }
    arguments.count(PLANS, 1, 20).ifPresent(day::plans);
    return BenchOptions.read(arguments).in(day.build());
  }

  private static void refuseInProofer(Arguments arguments, String option) {
    if (arguments.has(option)) {
      throw new InputException(
          "--" + option + " says nothing with --proofer: leave one of them out");
    }
  }

  /** What is said of the starter's share is said of the starter that the stages make. */
  private static DoughFormula with(Starter built, Arguments arguments, Environment environment) {
    Map<String, String> hydration = Map.of(STARTER_HYDRATION, built.hydration().percent() + "%");
    DoughFormula dough = FormulaOptions.formula(arguments.with(hydration, List.of()), environment);
    return dough.toBuilder().starter(built).build();
  }

  private static void named(Arguments arguments, String option, Runnable set) {
    String text = arguments.text(option).orElse("");
    Quantities.named(
        "--" + option,
        text,
        () -> {
          set.run();
          return text;
        });
  }

  private static Oven oven(Arguments arguments) {
    Oven usual = Oven.usual();
    return new Oven(
        arguments.hours(PREHEAT).orElse(usual.preheatHours()),
        arguments.hours(BAKE).orElse(usual.bakeHours()),
        arguments.hours(COOL).orElse(usual.coolHours()),
        arguments.count(OVEN_CAPACITY, 1, 500).orElse(usual.loaves()));
  }

  private static void loaves(Arguments arguments, DoughFormula dough, BakeDay.Builder day) {
    int loaves = arguments.count(LOAVES, 1, 500).orElse(1);
    Mass piece =
        arguments
            .mass(PIECE)
            .or(
                () ->
                    FormulaOptions.weighedMass(arguments, dough)
                        .map(all -> Mass.ofGrams(all.grams() / loaves)))
            .orElse(Mass.ofGrams(850));
    if (piece.grams() < 20 || piece.grams() > 5000) {
      throw new InputException(
          "--piece is the dough of one loaf, 20…5000 g: write for example --piece 850g");
    }
    PieceForm form = arguments.form(FORM).orElse(PieceForm.ROUND);
    day.loaves(loaves, piece, form);
  }

  private static void narrowed(Arguments arguments, DoughFormula dough, BakeDay.Builder day) {
    if (arguments.has(STARTER)) {
      double percent = 100 * dough.starterOfAddedFlour();
      named(arguments, STARTER, () -> day.starterPercents(List.of(percent)));
    }
    arguments
        .temperature(DOUGH_TEMP)
        .ifPresent(
            at -> named(arguments, DOUGH_TEMP, () -> day.doughCelsius(List.of(at.celsius()))));
    if (arguments.has(PROOFER)) {
      day.bulkPlace(BakeDay.BulkPlace.HELD);
    }
  }
}
