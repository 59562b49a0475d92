package doughtide.core.day;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import doughtide.core.dough.DoughFormula;
import doughtide.core.dough.FlourClass;
import doughtide.core.dough.Ingredients;
import doughtide.core.dough.OverallFormula;
import doughtide.core.dough.Starter;
import doughtide.core.dough.StarterCondition;
import doughtide.core.feeding.BuildStage;
import doughtide.core.feeding.BuildTimes;
import doughtide.core.feeding.FeedAmounts;
import doughtide.core.feeding.FeedRatio;
import doughtide.core.feeding.FeedingPlanner;
import doughtide.core.feeding.StagedBuild;
import doughtide.core.feeding.StagedForecast;
import doughtide.core.forecast.RiseForecaster;
import doughtide.core.loaf.PieceForm;
import doughtide.core.quantity.Altitude;
import doughtide.core.quantity.Mass;
import doughtide.core.quantity.Share;
import doughtide.core.quantity.Temperature;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import org.junit.jupiter.api.Test;

/** Several doughs of a day whose starters are built in stages. */
class StagedDaysTest {
  private static final StagedBuild BUILD =
      new StagedBuild(
          Starter.ripe(),
          List.of(
              stage("young", 26, OptionalDouble.of(5)),
              stage("levain", 28, OptionalDouble.empty())),
          Altitude.SEA_LEVEL);

  private static BuildStage stage(String name, double celsius, OptionalDouble hours) {
    return new BuildStage(
        Optional.of(name),
        new FeedRatio(1, 4, 4),
        OptionalDouble.empty(),
        FlourClass.WHITE.flour(),
        Temperature.ofCelsius(celsius),
        hours);
  }

  private static BakeDay dough(int loaves) {
    return BakeDay.builder()
        .readyAt(28)
        .bench(
            new BenchHours(
                List.of(
                    new BenchInterval(-9, -5.5),
                    new BenchInterval(-4, 15),
                    new BenchInterval(22, 30))))
        .cold(Temperature.ofCelsius(4))
        .dough(DoughFormula.builder().starter(BUILD.ripened()).build())
        .stages(BuildTimes.of(FeedingPlanner.with(RiseForecaster.standard()).build(BUILD)))
        .starterPercents(List.of(20.0))
        .doughCelsius(List.of(24.0))
        .oven(Oven.usual().withLoaves(4))
        .loaves(loaves, Mass.ofGrams(850), PieceForm.ROUND)
        .plans(1)
        .build();
  }

  @Test
  void everyStageIsAStepTheStarterIsRipeAtMixingAndNoGramIsLost() {
    List<BakeDay> doughs = List.of(dough(1), dough(2));
    DayPlan plan = DayPlanner.plan(doughs, 1, SearchControl.none()).days().get(0);

    DayPlannerTest.checkHands(plan, doughs.get(0).bench(), 1);
    DayPlannerTest.checkOven(plan);
    RandomDaysPropertyTest.checkGrams(plan);
    for (int i = 0; i < doughs.size(); i++) {
      DayPlannerTest.checkReplay("dough " + i, plan.plans().get(i), false);
      checkStages(plan, i);
    }
  }

  /** Built again as the steps have it, stage by stage through the model. */
  private static void checkStages(DayPlan plan, int number) {
    BakePlan dough = plan.plans().get(number);
    List<DayStep> feeds =
        plan.steps().stream()
            .filter(each -> each.step().kind() == BakeStep.Kind.FEED)
            .filter(each -> each.doughs().contains(number))
            .toList();
    assertThat(feeds).hasSize(2);
    double between = feeds.get(1).step().fromHour() - feeds.get(0).step().fromHour();
    List<BuildStage> stages = new ArrayList<>();
    stages.add(stage("young", 26, OptionalDouble.of(between)));
    stages.add(stage("levain", 28, OptionalDouble.empty()));
    StagedForecast again =
        FeedingPlanner.with(RiseForecaster.standard())
            .build(new StagedBuild(Starter.ripe(), stages, Altitude.SEA_LEVEL));
    StagedForecast.Step last = again.steps().get(1);
    double age = dough.mixHour() - feeds.get(1).step().fromHour();
    // One build for several doughs is used up to an hour off its likely ripe time.
    double off = feeds.get(1).doughs().size() > 1 ? 1 : 0;
    assertThat(age)
        .isBetween(
            last.forecast().ripe().likely().orElseThrow() - off - 1e-6,
            last.forecast().falling().likely().orElseThrow() + off + 1e-6);

    double use =
        feeds.get(1).doughs().stream()
            .mapToDouble(each -> plan.plans().get(each).ingredients().starterGrams())
            .sum();
    FeedAmounts made = plan.feedAmounts(feeds.get(1));
    assertThat(made.totalGrams()).isCloseTo(use, within(1e-6));
    assertThat(plan.feedAmounts(feeds.get(0)).totalGrams())
        .isCloseTo(made.starterGrams(), within(1e-6));
    Ingredients weighed = dough.ingredients();
    assertThat(BUILD.with(weighed).total().grams())
        .isCloseTo(dough.day().allDough().grams(), within(1e-6));
  }

  private static final StagedBuild RYE =
      new StagedBuild(
          new Starter(Share.ofPercent(100), FlourClass.RYE.flour(), StarterCondition.RIPE),
          List.of(
              rye("fresh sour", 26, 6, OptionalDouble.of(5)),
              rye("full sour", 28, 3, OptionalDouble.empty())),
          Altitude.SEA_LEVEL);

  private static BuildStage rye(String name, double celsius, double parts, OptionalDouble hours) {
    return new BuildStage(
        Optional.of(name),
        new FeedRatio(1, parts, parts),
        OptionalDouble.empty(),
        FlourClass.RYE.flour(),
        Temperature.ofCelsius(celsius),
        hours);
  }

  /** At the bench from 6 to 22 on three days; the bread at 17 of the last. */
  private static BakeDay ryeDough(double starterPercent, int loaves, BuildTimes times) {
    return BakeDay.builder()
        .readyAt(65)
        .bench(
            new BenchHours(
                List.of(
                    new BenchInterval(6, 22),
                    new BenchInterval(30, 46),
                    new BenchInterval(54, 70))))
        .cold(Temperature.ofCelsius(4))
        .dough(
            DoughFormula.builder()
                .flour(FlourClass.RYE.flour())
                .hydration(Share.ofPercent(76))
                .starter(RYE.ripened())
                .build())
        .stages(times)
        .starterPercents(List.of(starterPercent))
        .doughCelsius(List.of(28.0))
        .oven(Oven.usual().withLoaves(6))
        .loaves(loaves, Mass.ofGrams(850), PieceForm.TIN)
        .plans(1)
        .build();
  }

  /** Each dough alone would choose its own hours; together they take from one build. */
  @Test
  void threeDoughsOfTheSameStagesTakeTheirStarterFromOneBuildAndNoGramIsLost() {
    BuildTimes times = BuildTimes.of(FeedingPlanner.with(RiseForecaster.standard()).build(RYE));
    List<BakeDay> doughs =
        List.of(ryeDough(40, 2, times), ryeDough(35, 1, times), ryeDough(30, 2, times));
    DayPlan plan = DayPlanner.plan(doughs, 1, SearchControl.none()).days().get(0);
    List<DayStep> feeds =
        plan.steps().stream().filter(each -> each.step().kind() == BakeStep.Kind.FEED).toList();

    assertThat(feeds).extracting(each -> each.step().number()).containsExactly(1, 2);
    assertThat(feeds).allSatisfy(each -> assertThat(each.doughs()).containsExactly(0, 1, 2));
    DayPlannerTest.checkHands(plan, doughs.get(0).bench(), 1);
    RandomDaysPropertyTest.checkGrams(plan);
    checkSums(plan, feeds.stream().map(plan::feedAmounts).toList());
    for (BakePlan each : plan.plans()) {
      double age = each.mixHour() - feeds.get(0).step().fromHour();
      assertThat(age).isBetween(times.ripeHours() - 1, times.fallingHours() + 1);
    }
  }

  /** Flour and water of the seed, of the stages and of the doughs are those of all doughs. */
  private static void checkSums(DayPlan plan, List<FeedAmounts> stages) {
    double seed = stages.get(0).starterGrams();
    double hydration = RYE.seed().hydration().fraction();
    double flour = seed / (1 + hydration);
    double water = seed - flour;
    for (FeedAmounts each : stages) {
      flour += each.flourGrams();
      water += each.waterGrams();
    }
    double ofAll = 0;
    double waterOfAll = 0;
    double salt = 0;
    for (BakePlan each : plan.plans()) {
      Ingredients weighed = each.ingredients();
      flour += weighed.flourGrams();
      water += weighed.waterGrams();
      salt += weighed.saltGrams();
      OverallFormula whole = RYE.with(weighed);
      ofAll += whole.flour().grams();
      waterOfAll += whole.flour().grams() * whole.hydration().fraction();
    }
    assertThat(flour).isCloseTo(ofAll, within(1e-6));
    assertThat(water).isCloseTo(waterOfAll, within(1e-6));
    assertThat(flour + water + salt)
        .isCloseTo(
            plan.plans().stream().mapToDouble(each -> each.day().allDough().grams()).sum(),
            within(1e-6));
  }
}
