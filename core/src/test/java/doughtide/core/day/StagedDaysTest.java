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
import doughtide.core.feeding.FeedRatio;
import doughtide.core.feeding.FeedingPlanner;
import doughtide.core.feeding.StagedBuild;
import doughtide.core.feeding.StagedForecast;
import doughtide.core.forecast.RiseForecaster;
import doughtide.core.loaf.PieceForm;
import doughtide.core.quantity.Altitude;
import doughtide.core.quantity.Mass;
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
    assertThat(age)
        .isBetween(
            last.forecast().ripe().likely().orElseThrow() - 1e-6,
            last.forecast().falling().likely().orElseThrow() + 1e-6);

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
}
