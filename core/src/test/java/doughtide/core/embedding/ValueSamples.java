package doughtide.core.embedding;

import doughtide.core.day.Adjustment;
import doughtide.core.day.BakeDay;
import doughtide.core.day.BakeRoute;
import doughtide.core.day.BakeStep;
import doughtide.core.day.BenchHours;
import doughtide.core.day.BenchInterval;
import doughtide.core.day.DayAnswer;
import doughtide.core.day.DayStep;
import doughtide.core.day.Oven;
import doughtide.core.day.OvenLoad;
import doughtide.core.day.StepMargin;
import doughtide.core.day.bench.BenchLoaf;
import doughtide.core.day.question.BulkEnd;
import doughtide.core.day.question.InverseAnswer;
import doughtide.core.day.question.LeaveOption;
import doughtide.core.document.ColdDocument;
import doughtide.core.document.Kitchen;
import doughtide.core.document.RosterDocument;
import doughtide.core.document.RosterEntry;
import doughtide.core.dough.Additions;
import doughtide.core.dough.Composition;
import doughtide.core.dough.DoughFormula;
import doughtide.core.dough.Enrichment;
import doughtide.core.dough.Flour;
import doughtide.core.dough.FlourClass;
import doughtide.core.dough.Inclusion;
import doughtide.core.dough.Ingredients;
import doughtide.core.dough.OverallFormula;
import doughtide.core.dough.Starter;
import doughtide.core.dough.StarterCondition;
import doughtide.core.dough.StarterShare;
import doughtide.core.dough.WeighedDough;
import doughtide.core.feeding.BuildStage;
import doughtide.core.feeding.BuildTimes;
import doughtide.core.feeding.FeedAmounts;
import doughtide.core.feeding.FeedChoice;
import doughtide.core.feeding.FeedRatio;
import doughtide.core.feeding.Feeding;
import doughtide.core.feeding.FeedingPlanner;
import doughtide.core.feeding.StagedBuild;
import doughtide.core.flourtrial.AbsorptionFit;
import doughtide.core.flourtrial.AbsorptionPrior;
import doughtide.core.flourtrial.BowlPlan;
import doughtide.core.flourtrial.Experience;
import doughtide.core.flourtrial.FlourRecord;
import doughtide.core.flourtrial.Grade;
import doughtide.core.flourtrial.GradedBowl;
import doughtide.core.flourtrial.Scale;
import doughtide.core.forecast.Belief;
import doughtide.core.forecast.LikelyLine;
import doughtide.core.forecast.ReadingNoise;
import doughtide.core.forecast.RiseForecast;
import doughtide.core.forecast.RiseForecaster;
import doughtide.core.forecast.TimeWindow;
import doughtide.core.kinetics.AcidBuffer;
import doughtide.core.kinetics.RateCurve;
import doughtide.core.learning.Bake;
import doughtide.core.learning.FirstEvening;
import doughtide.core.learning.JarError;
import doughtide.core.learning.Learned;
import doughtide.core.learning.LearnedParameter;
import doughtide.core.learning.LearnedStarter;
import doughtide.core.learning.LearningPrior;
import doughtide.core.learning.LoafResult;
import doughtide.core.learning.Outlier;
import doughtide.core.learning.OutlierReason;
import doughtide.core.learning.Reading;
import doughtide.core.learning.TargetBelief;
import doughtide.core.loaf.Cold;
import doughtide.core.loaf.ColdFit;
import doughtide.core.loaf.Handling;
import doughtide.core.loaf.JarRule;
import doughtide.core.loaf.LoafCauses;
import doughtide.core.loaf.LoafLimits;
import doughtide.core.loaf.LoafScores;
import doughtide.core.loaf.LoafSettings;
import doughtide.core.loaf.PieceForm;
import doughtide.core.loaf.Proof;
import doughtide.core.loaf.SampleJar;
import doughtide.core.loaf.ShapeForecast;
import doughtide.core.loaf.ShapeForecaster;
import doughtide.core.loaf.ShapeStages;
import doughtide.core.loaf.StrengthPlan;
import doughtide.core.quantity.Altitude;
import doughtide.core.quantity.InputException;
import doughtide.core.quantity.Mass;
import doughtide.core.quantity.Measure;
import doughtide.core.quantity.Quantities;
import doughtide.core.quantity.Rise;
import doughtide.core.quantity.Share;
import doughtide.core.quantity.Temperature;
import doughtide.core.rise.AirBalance;
import doughtide.core.rise.DoughTemperature;
import doughtide.core.rise.GasLosses;
import doughtide.core.rise.RiseParameters;
import doughtide.core.rise.SeedState;
import doughtide.core.rise.Unknowns;
import doughtide.core.thermal.Air;
import doughtide.core.thermal.BaseTemperature;
import doughtide.core.thermal.Cover;
import doughtide.core.thermal.DoughHeat;
import doughtide.core.thermal.FactorRule;
import doughtide.core.thermal.HeatCapacities;
import doughtide.core.thermal.HeatSource;
import doughtide.core.thermal.LaterTrace;
import doughtide.core.thermal.Material;
import doughtide.core.thermal.PieceShape;
import doughtide.core.thermal.RoomCooling;
import doughtide.core.thermal.TemperatureTrace;
import doughtide.core.thermal.Vessel;
import doughtide.core.thermal.VesselForm;
import doughtide.core.thermal.Wall;
import doughtide.core.thermal.Warming;
import doughtide.core.thermal.WaterTemperature;
import java.time.ZonedDateTime;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;

/** Values of every kind, made by themselves or taken from answers. */
final class ValueSamples {
  private final double more;
  private final List<Object> made = new ArrayList<>();

  private ValueSamples(double more) {
    this.more = more;
  }

  /**
   * All of them.
   *
   * @param more what each number has more than usual: other values from 1 on
   */
  static List<Object> made(double more) {
    ValueSamples samples = new ValueSamples(more);
    samples.quantities();
    samples.doughs();
    samples.additions();
    samples.stages();
    samples.heat();
    samples.traces();
    samples.trials();
    samples.feedings();
    samples.models();
    samples.learned();
    samples.loaves();
    samples.days();
    return samples.made;
  }

  private void additions() {
    Inclusion seeds = new Inclusion("seeds", 0.08 + more / 100, 0.05);
    Enrichment egg = new Enrichment(Enrichment.Kind.EGG, 0.1 + more / 100);
    add(new Additions(List.of(seeds), List.of(egg)));
    WeighedDough.Part rye = new WeighedDough.Part(Optional.of(FlourClass.RYE.flour()), 900 + more);
    add(
        new WeighedDough(
            List.of(rye),
            640,
            200,
            18 + more,
            List.of(new WeighedDough.Enriched(Enrichment.Kind.FAT, 20 + more)),
            List.of(new WeighedDough.Included("seeds", 80 + more, 40))));
    add(new Ingredients.Addition("seeds", 80 + more, 10));
  }

  private void stages() {
    BuildStage stage =
        new BuildStage(
            Optional.of("full sour"),
            new FeedRatio(1, 2 + more, 2),
            OptionalDouble.empty(),
            FlourClass.RYE.flour(),
            celsius(30),
            OptionalDouble.of(3));
    StagedBuild build = new StagedBuild(Starter.ripe(), List.of(stage), Altitude.SEA_LEVEL);
    BuildTimes.Stage made = new BuildTimes.Stage(0, window(), 3.9 + more / 10);
    add(build, made, new BuildTimes(build, List.of(made), 5, 6 + more));
    add(new BenchLoaf(1, 1, 7, 12 + more, 1, 30));
    add(new SeedState(0.9, 0.8, 5 + more, 0.1, 0.03));
  }

  private RosterEntry student(String name) {
    return new RosterEntry(
        name + more, "dough", Optional.of(FlourClass.RYE.flour()), 2, Optional.of("en"));
  }

  private void add(Object... values) {
    made.addAll(List.of(values));
  }

  private Temperature celsius(double celsius) {
    return Temperature.ofCelsius(celsius + more);
  }

  private Share percent(double percent) {
    return Share.ofPercent(percent + more);
  }

  private Mass grams(double grams) {
    return Mass.ofGrams(grams + more);
  }

  private DoughFormula dough() {
    return DoughFormula.builder()
        .flour(flour())
        .starterShare(StarterShare.ofAddedFlour(percent(20)))
        .hydration(percent(70))
        .altitude(Altitude.ofMetres(100 + more))
        .build();
  }

  private Flour flour() {
    return Flour.mix(
        List.of(
            new Flour.Part(FlourClass.WHITE.flour(), percent(80)),
            new Flour.Part(FlourClass.RYE.flour(), Share.ofPercent(20 - more))));
  }

  private void quantities() {
    add(celsius(24), percent(70), grams(850), Rise.ofPercent(50 + more));
    add(Altitude.ofMetres(1000 + more), new Measure("7" + more, 7 + more, "g"));
    add(new InputException.Limits(1, 2 + more, "h"));
    add(new Quantities.FeedRatio(1, 2 + more, 2));
  }

  private void doughs() {
    add(dough(), StarterShare.prefermented(percent(9)));
    add(new Flour.Part(FlourClass.RYE.flour(), percent(40)));
    add(new Starter(percent(80), flour(), StarterCondition.values()[(int) more]));
    add(Composition.ofParts(0.12 + more / 100, 0.015, 0.03, 0.006, 0.14));
    add(dough().forFlour(grams(1000)));
    add(
        new OverallFormula(
            List.of(
                new OverallFormula.Stage(
                    "dough",
                    List.of(new OverallFormula.Item(OverallFormula.Kind.FLOUR, grams(500)))))));
  }

  private void heat() {
    Wall wall = new Wall(Material.STEEL, 1 + more);
    Vessel tub = new Vessel(PieceShape.tub(200 + more), wall, Cover.COVERED);
    DoughHeat heat = new DoughHeat(800 + more, 2850, 0.3);
    WaterTemperature balance =
        WaterTemperature.of(grams(1000), celsius(20), grams(700))
            .starter(grams(200), percent(100), celsius(25))
            .mixing(Warming.ofCelsiusDegrees(1 + more));
    FactorRule rule =
        FactorRule.of(celsius(20), celsius(21)).starter(celsius(25)).friction(new Warming(2));
    add(tub, heat, balance, rule, balance.compare(rule, celsius(25)));
    add(balance.waterFor(celsius(26)), balance.waterFor(celsius(12), celsius(20)));
    add(RoomCooling.of(dough(), grams(1700), tub, Air.STILL_COLD), new BaseTemperature(60 + more));
    add(new HeatCapacities(1700 + more, 4190, 900), new VesselForm("pot" + more, PieceShape.jar()));
    add(PieceShape.round(0.5 + more / 10), PieceShape.oval(2 + more), PieceShape.bowl());
    add(PieceShape.tin(2 + more, 1), PieceShape.jar(80 + more).geometry(grams(300), 900));
    add(HeatSource.steps(new double[] {0, 2}, new double[] {1, 2 + more}), HeatSource.none());
  }

  private void traces() {
    TemperatureTrace logged =
        TemperatureTrace.logged(new double[] {0, 1, 3}, new double[] {26, 25 + more, 21});
    TemperatureTrace steps =
        TemperatureTrace.steps(
            List.of(
                new TemperatureTrace.Step(0, celsius(25)),
                new TemperatureTrace.Step(3, celsius(22))));
    add(new TemperatureTrace.Step(3, celsius(22)));
    add(logged, steps, steps.then(4 + more, logged), new LaterTrace(steps, 1 + more));
    double[] close = {0, 0.1, 0.2, 0.3, 0.4, 0.5 + more / 100};
    add(TemperatureTrace.logged(close, new double[] {25, 24, 24, 24, 24, 24}).ofDough());
    add(DoughTemperature.following(logged), DoughTemperature.steady(celsius(24)));
    add(DoughTemperature.inRoom(celsius(26), steps, 2, 4000).then(6, logged));
  }

  private void trials() {
    List<GradedBowl> bowls =
        List.of(
            new GradedBowl("6 March", "Ann", 66 + more, Grade.named("thin window")),
            new GradedBowl("6 March", "Bo", 72 + more, Grade.named("tears")));
    AbsorptionFit fit = AbsorptionFit.of(bowls, new AbsorptionPrior(70 + more, 5));
    add(bowls, fit.limit(), fit.comfortable(), fit.notes(), fit.prior());
    add(BowlPlan.of(grams(50), percent(60), percent(80), Share.ofPercent(4), new Scale(0.1)));
    add(new Scale(1 + more), fit.workingHydration(Experience.BEGINNER));
    add(
        new FlourRecord(
            "Harrow" + more,
            Optional.of("A12"),
            Optional.empty(),
            flour(),
            OptionalDouble.of(12),
            OptionalDouble.empty(),
            OptionalDouble.empty(),
            bowls,
            OptionalDouble.of(70)));
  }

  private void feedings() {
    FeedRatio ratio = new FeedRatio(1, 2 + more, 2);
    Feeding feeding = new Feeding(Starter.ripe(), ratio, flour(), percent(0), Altitude.SEA_LEVEL);
    FeedingPlanner planner = FeedingPlanner.with(RiseForecaster.standard().withMembers(8));
    add(feeding, new FeedChoice(1, 9, ratio, 8 + more, 12), new FeedAmounts(1, 2, 3, 4, 5 + more));
    add(planner.forecast(feeding, DoughTemperature.steady(celsius(24))).heights());
  }

  private void models() {
    RiseForecast forecast = forecast();
    RiseParameters parameters = RiseParameters.standard();
    add(
        forecast.warnings(),
        cold().warnings(),
        forecast.hoursToRise(Rise.ofPercent(50)),
        forecast.bandAt(3));
    add(forecast.passes(Rise.ofPercent(50)), forecast.curves().get(0).gasAt(2));
    add(Belief.standard(), Belief.of(all(Belief.SIZE, more / 10), small()));
    add(new Unknowns(1 + more, 1, 0, 1, 0, 0.1, 1, "mean"), RiseParameters.standard());
    add(new RiseParameters.Growth(0.4 + more / 10, 0.6, 10, 0.04, 0.3, 0.3, 8));
    add(new RiseParameters.Gas(0.11 + more / 10, 0.036, -4, 0.03, 0.55));
    add(new RiseParameters.Retention(0.035 + more / 10, 0.5, 1.5, 0.05, 0.05));
    add(LikelyLine.of(forecast), parameters.with(new RiseParameters.Acid(0.1 + more / 10, 0.004)));
    add(parameters.with(new RiseParameters.Strength(0.1 + more / 10, 50, 1, 1)));
    add(AcidBuffer.of(0.02 + more / 100));
    add(
        RateCurve.schoolfield(50 + more, 300, 36, 5, 40),
        RateCurve.cardinal(0, 30 + more, 40, 5, 40));
    add(RateCurve.squareRoot(0, 40 + more, 0.3, 5, 40));
    add(RateCurve.powerExponential(2 + more, 0.3, 40, 5, 40));
  }

  private RiseForecast cold() {
    return RiseForecaster.standard()
        .withMembers(8)
        .forecast(dough(), DoughTemperature.steady(celsius(3)), 24);
  }

  private RiseForecast forecast() {
    return RiseForecaster.standard()
        .withMembers(8)
        .forecast(dough(), DoughTemperature.steady(celsius(12)), 24);
  }

  private static double[] all(int size, double value) {
    double[] numbers = new double[size];
    Arrays.fill(numbers, value);
    return numbers;
  }

  private double[][] small() {
    double[][] covariance = new double[Belief.SIZE][Belief.SIZE];
    for (int i = 0; i < Belief.SIZE; i++) {
      covariance[i][i] = 0.1 + more / 10;
    }
    return covariance;
  }

  private void learned() {
    double[] ones = all(Belief.SIZE + 1, 0.1 + more / 10);
    LearningPrior prior = LearningPrior.of(all(ones.length, 0), ones, ones);
    Bake bake =
        new Bake(
            "6 March" + more,
            dough(),
            DoughTemperature.steady(celsius(24)),
            List.of(
                new Reading(
                    3 + more,
                    Optional.of(Rise.ofPercent(30)),
                    OptionalDouble.empty(),
                    OptionalDouble.of(5))),
            "evening");
    JarError jar = new JarError(0.01, 0.02 + more / 100);
    String digest = "0".repeat(63) + (int) more;
    add(prior, bake, jar, new ReadingNoise(0.04 + more / 100, 0.02, 0.25, 4));
    add(new Learned(prior, Belief.standard(), jar, List.of(outlier()), 2, 9 + (int) more, digest));
    add(new FirstEvening(Starter.ripe(), flour(), celsius(24), 5, 9 + more, OptionalDouble.of(4)));
    add(new Learned.Narrowing(window(), window().plus(more)));
    add(
        new LearnedStarter(
            "1", digest, 2, 9, prior, Belief.standard(), jar, Map.of("spiral", 4 + more)));
    LearnedParameter.Range range = new LearnedParameter.Range(1, 2, 3 + more);
    add(new LearnedParameter(LearnedParameter.Kind.values()[0], range, range, more, true));
  }

  private TimeWindow window() {
    return TimeWindow.of(new double[] {3 + more, 4, 5});
  }

  private Outlier outlier() {
    return new Outlier("6 March", OutlierReason.values()[0], 2 + more, List.of(), 3);
  }

  private void loaves() {
    Proof proof =
        Proof.inColdUntil(celsius(4), 20 + more)
            .afterRoom(celsius(21), 1)
            .withTarget(Rise.ofPercent(80 + more));
    RiseForecast warm =
        RiseForecaster.standard()
            .withMembers(8)
            .forecast(dough(), DoughTemperature.steady(celsius(24)), 24);
    add(
        proof,
        Proof.inRoom(celsius(24), 2),
        new PieceForm("ring" + more, PieceShape.oval(), Wall.NONE));
    add(
        new LoafSettings(8 + (int) more, 0.25, 16, 16),
        StrengthPlan.of(dough()).withSpacing(0.5 + more / 10));
    add(StrengthPlan.of(dough()).withSpacing(0.5 + more / 10).steps());
    Cold cold = Cold.byDial(celsius(4)).known(more / 10, 0.5, 0.1, 0.2);
    add(cold, new Handling(0.1, 0.2 + more / 100), LoafScores.of((int) more));
    add(LoafLimits.right(Rise.ofPercent(80 + more)), LoafLimits.usable(Rise.ofPercent(80 + more)));
    add(new ColdFit.Reading(3, 12 + more), new GasLosses(List.of(0.5), 0.02, 0.2 + more / 100));
    add(
        new AirBalance(1, 0.5, 0.5 + more),
        new ShapeForecast.Spoils(OptionalDouble.of(more), OptionalDouble.empty()));
    JarRule.AtHour look = new JarRule.AtHour(4, List.of(new JarRule.Wait(40 + more, 0.5)));
    add(look, look.waits().get(0), new JarRule(List.of(look)));
    add(new TargetBelief(1 + more / 10, 3));
    add(new TargetBelief.Loaf(LoafResult.UNDER, 1 + more / 10));
    add(new LoafCauses.Likely(LoafCauses.Cause.values()[0], more / 10));
    add(new ShapeStages(3, OptionalDouble.of(4), OptionalDouble.of(5 + more)));
    add(new ShapeForecaster.Point(window(), ShapeForecast.RiseRange.NONE));
    add(new ShapeForecaster.Point(window().plus(1), ShapeForecast.RiseRange.NONE));
    add(ShapeForecaster.of(warm, Proof.inCold(celsius(4), 12)).forecast());
    add(SampleJar.when(warm, DoughTemperature.steady(celsius(22)), Rise.ofPercent(50)));
    add(new Kitchen(Map.of("room", "21C" + more)), new ColdDocument(0.5, 0.1, 0.2, 0.1 + more));
    add(new RosterDocument(Optional.of("class " + more), List.of(student("Ann"), student("Bo"))));
  }

  private void days() {
    BakeStep step = new BakeStep(BakeStep.Kind.FOLD, 3, 3.5 + more, 1);
    BenchInterval morning = new BenchInterval(6.5, 8.5 + more);
    add(window().after(ZonedDateTime.parse("2027-03-06T09:30+01:00[Europe/Berlin]")));
    ShapeForecast.RiseRange rise = ShapeForecast.RiseRange.NONE;
    add(step, new DayStep(step, List.of(0, 1), 1), new BenchHours(List.of(morning)));
    add(new Oven(1, 0.75 + more, 2, 4), new OvenLoad(1, 2 + more, portions()));
    BenchHours hours = new BenchHours(List.of(morning));
    add(BakeDay.builder().readyAt(12).bench(hours).cold(celsius(4)).build());
    add(new Adjustment(Adjustment.Kind.values()[0], 1 + more, 0, 0));
    add(new BakeDay.Fed(8 + more, new FeedRatio(1, 2, 2)));
    add(new DayAnswer.Choice(DayAnswer.Criterion.MARGIN, 1, more));
    add(new StepMargin(BakeStep.Kind.FOLD, more, StepMargin.Limit.values()[0]));
    add(new BakeRoute(20 + more, 24, 3, OptionalDouble.empty(), OptionalDouble.of(30)));
    add(new BulkEnd.Moment(window(), rise), BulkEnd.atRise(Rise.ofPercent(50 + more)));
    add(BulkEnd.before(Proof.inCold(celsius(4), 12)));
    add(new InverseAnswer.Choice(20 + more, InverseAnswer.Reach.values()[0], window()));
    add(
        new LeaveOption(
            LeaveOption.Kind.values()[0],
            OptionalDouble.empty(),
            5 + more,
            rise,
            20,
            rise,
            window(),
            window(),
            0.8));
    add(RiseForecaster.standard().withMembers(8 + (int) more));
  }

  private List<OvenLoad.Portion> portions() {
    return List.of(new OvenLoad.Portion(0, 1, 2 + (int) more));
  }
}
