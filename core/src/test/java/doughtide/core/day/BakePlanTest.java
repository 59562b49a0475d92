package doughtide.core.day;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import doughtide.core.dough.DoughFormula;
import doughtide.core.dough.FlourClass;
import doughtide.core.dough.Ingredients;
import doughtide.core.dough.Starter;
import doughtide.core.feeding.BuildStage;
import doughtide.core.feeding.BuildTimes;
import doughtide.core.feeding.FeedAmounts;
import doughtide.core.feeding.FeedChoice;
import doughtide.core.feeding.FeedRatio;
import doughtide.core.feeding.FeedingPlanner;
import doughtide.core.feeding.StagedBuild;
import doughtide.core.forecast.RiseForecaster;
import doughtide.core.forecast.TimeWindow;
import doughtide.core.loaf.PieceForm;
import doughtide.core.loaf.StrengthPlan;
import doughtide.core.quantity.Altitude;
import doughtide.core.quantity.Mass;
import doughtide.core.quantity.Rise;
import doughtide.core.quantity.Share;
import doughtide.core.quantity.Temperature;
import doughtide.core.thermal.Mixing;
import doughtide.core.thermal.TemperatureTrace;
import doughtide.core.thermal.WaterTemperature;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import org.junit.jupiter.api.Test;

/** What a plan says of one dough that is mixed at 10:00 in a room of 18 °C. */
class BakePlanTest {
  private static final RiseForecaster FEW = RiseForecaster.standard().withMembers(8);
  private static final double ROOM = 18;
  private static final BakeDay DAY = day().build();
  private static final TimeWindow SPREAD = TimeWindow.of(new double[] {12, 13, 14, 15, 16});

  private static BakeDay.Builder day() {
    return BakeDay.builder()
        .readyAt(30)
        .bench(new BenchHours(BenchHoursTest.intervals(8, 14, 18, 30)))
        .room(TemperatureTrace.steady(Temperature.ofCelsius(ROOM)))
        .loaves(2, Mass.ofGrams(850), PieceForm.ROUND)
        .forecaster(FEW);
  }

  private static Draft draft(double autolyse, double celsius) {
    return new Draft(
        BakeRoute.inRoom(20, celsius, 10),
        new FeedChoice(5, 10, FeedRatio.oneTo(2, Share.ofPercent(100)), 4, 6),
        new StrengthPlan(autolyse, 2, 2, 0.5, OptionalDouble.empty()),
        ProofKind.ROOM,
        5,
        17.25,
        0.5,
        0.1);
  }

  private static BakePlan plan(BakeDay day, Draft draft, TimeWindow shape) {
    return new BakePlan(
        day,
        draft,
        new BakePlan.Weighed(0.516, shape, List.of()),
        new DayModel(day).temperature(draft.route()));
  }

  private static BakePlan plan(BakeDay day, double autolyse, double celsius) {
    return plan(day, draft(autolyse, celsius), SPREAD);
  }

  @Test
  void aPlanIsToldInALine() {
    assertThat(plan(DAY, 0, 24.5))
        .hasToString(
            "mixed at hour 10 at 24.5 °C with 20 % starter, shaped at 14.5, in the oven at 17.25;"
                + " right 52 %");
  }

  /** When its jar is there lies in the hours at the bench, or not, or in a part of them. */
  @Test
  void howFarTheBakerIsThereForTheJar() {
    assertThat(share(9, 10, 11, 12, 13)).isEqualTo(1);
    assertThat(share(14.5, 15, 16, 16.5, 17)).isZero();
    double early = SPREAD.early().orElseThrow();
    double last = 14 - DAY.restHours();
    assertThat(plan(DAY, draft(0, 24), SPREAD).jarAtBenchShare())
        .isCloseTo((last - early) / (SPREAD.late().orElseThrow() - early), within(1e-9));
    assertThat(share(13.4)).isEqualTo(1);
    assertThat(share(13.6)).as("no time left to shape").isZero();
    assertThat(plan(DAY, draft(0, 24), SPREAD).isShaped()).isFalse();
    BakePlan shaped = plan(DAY, draft(0, 24), TimeWindow.of(new double[] {14.5}));
    assertThat(shaped.isShaped()).isTrue();
  }

  private static double share(double... hours) {
    return plan(DAY, draft(0, 24), TimeWindow.of(hours)).jarAtBenchShare();
  }

  /** It makes what the dough takes and what is kept, from no less than a scale shows. */
  @Test
  void noGramOfAFeedIsLost() {
    for (double use : new double[] {2, 40, 170}) {
      FeedAmounts amounts = plan(DAY, 0, 24).feedAmounts(use);
      assertThat(amounts.useGrams()).isCloseTo(use, within(1e-6));
      assertThat(amounts.starterGrams()).isGreaterThanOrEqualTo(4 - 1e-9);
      assertThat(amounts.flourGrams()).isCloseTo(2 * amounts.starterGrams(), within(1e-6));
      assertThat(amounts.keepGrams()).isPositive();
    }
    BakePlan plan = plan(DAY, 0, 24);
    assertThat(plan.feedAmounts()).isEqualTo(plan.feedAmounts(plan.ingredients().starterGrams()));
  }

  private static BuildStage stage(String name, double parts) {
    return new BuildStage(
        Optional.of(name),
        new FeedRatio(1, parts, parts),
        OptionalDouble.empty(),
        FlourClass.WHITE.flour(),
        Temperature.ofCelsius(26),
        OptionalDouble.of(5));
  }

  /** Each stage has its own flour, and hands on what the next begins with. */
  @Test
  void everyStageHasItsOwnGrams() {
    StagedBuild build =
        new StagedBuild(
            Starter.ripe(), List.of(stage("young", 4), stage("full", 2)), Altitude.SEA_LEVEL);
    BakeDay day =
        day()
            .dough(DoughFormula.builder().starter(build.ripened()).build())
            .stages(BuildTimes.of(FeedingPlanner.with(FEW).build(build)))
            .build();
    BakePlan plan = plan(day, 0, 24);
    BakeStep first = new BakeStep(BakeStep.Kind.FEED, 1, 1.1, 1);
    BakeStep second = new BakeStep(BakeStep.Kind.FEED, 5, 5.1, 2);

    assertThat(plan.stage(first).orElseThrow().name()).contains("young");
    assertThat(plan.stage(second).orElseThrow().name()).contains("full");
    assertThat(plan.feedRatio(first).flourPerStarter()).isEqualTo(4);
    assertThat(plan.feedRatio(second).flourPerStarter()).isEqualTo(2);
    FeedAmounts young = plan.feedAmounts(first, 170);
    FeedAmounts full = plan.feedAmounts(second, 170);
    assertThat(full.useGrams()).isGreaterThanOrEqualTo(170 - 1e-6);
    assertThat(young.totalGrams()).isGreaterThanOrEqualTo(full.starterGrams() - 1e-6);
    assertThat(full.flourGrams() / full.starterGrams()).isCloseTo(2, within(0.05));
    assertThat(young.flourGrams() / young.starterGrams()).isCloseTo(4, within(0.05));
    BakePlan single = plan(DAY, 0, 24);
    assertThat(single.stage(first)).isEmpty();
    assertThat(single.feedRatio(first).flourPerStarter()).isEqualTo(2);
    BakeStep only = new BakeStep(BakeStep.Kind.FEED, 1, 1.1, 0);
    assertThat(single.feedAmounts(only, 170)).isEqualTo(single.feedAmounts(170));
  }

  /** Flour and water that stand first lose some of their warmth to the room: begin warmer. */
  @Test
  void theWaterIsWarmerWhereItStandsWithTheFlour() {
    BakePlan atOnce = plan(DAY, 0, 26);
    BakePlan stands = plan(DAY, 0.75, 26);
    double first = stands.water(Mixing.BY_HAND).waterCelsius();
    double usual = atOnce.water(Mixing.BY_HAND).waterCelsius();

    assertThat(atOnce.hasAutolyse()).isFalse();
    assertThat(stands.hasAutolyse()).isTrue();
    assertThat(first).isGreaterThan(usual + 0.5);
    double kept = new DayModel(DAY).keptInRoom(0.75);
    double left = ROOM + (pasteCelsius(stands, first) - ROOM) * kept;
    assertThat(left).isCloseTo(pasteCelsius(stands, usual), within(0.01));
    BakeDay held = day().bulkPlace(BakeDay.BulkPlace.HELD).build();
    assertThat(plan(held, 0.75, 26).water(Mixing.BY_HAND).waterCelsius())
        .isCloseTo(usual, within(1e-9));
  }

  /** Of flour and water alone. */
  private static double pasteCelsius(BakePlan plan, double water) {
    Ingredients weigh = plan.ingredients();
    return WaterTemperature.of(
            Mass.ofGrams(weigh.flourGrams()),
            Temperature.ofCelsius(ROOM),
            Mass.ofGrams(weigh.waterGrams()))
        .moisture(Share.ofFraction(plan.dough().flour().composition().moisture()))
        .doughCelsius(Temperature.ofCelsius(water));
  }

  /** In the heat a cold dough begins with ice, whether it stands or not. */
  @Test
  void iceIsNotMadeWarmer() {
    BakeDay hot = day().room(TemperatureTrace.steady(Temperature.ofCelsius(34))).build();
    double ice = plan(hot, 0, 12).water(Mixing.BY_HAND).waterCelsius();

    assertThat(ice).isNegative();
    assertThat(plan(hot, 0.75, 12).water(Mixing.BY_HAND).waterCelsius()).isEqualTo(ice);
  }

  @Test
  void anOverdueDoughTellsWhatItsJarShows() {
    BakePlan.Begun begun =
        new BakePlan.Begun(
            BakeRoute.inRoom(20, 24, 10),
            draft(0, 24).feed(),
            draft(0, 24).strength(),
            ProofKind.ROOM,
            15,
            17,
            new Rise(0.5),
            Optional.of(new Rise(0.7)));
    BakePlan plan = BakePlan.of(DAY, begun, new BakePlan.Weighed(0.5, SPREAD, List.of()));

    assertThat(plan.overdueJar()).contains(new Rise(0.7));
    assertThat(plan.basketHour()).isEqualTo(15);
    assertThat(plan.ovenHour()).isEqualTo(17);
    assertThat(plan(DAY, 0, 24).overdueJar()).isEmpty();
  }
}
