package doughtide.core.feeding;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import doughtide.core.dough.DoughFormula;
import doughtide.core.dough.Flour;
import doughtide.core.dough.FlourClass;
import doughtide.core.dough.Ingredients;
import doughtide.core.dough.OverallFormula;
import doughtide.core.dough.Starter;
import doughtide.core.dough.StarterShare;
import doughtide.core.forecast.RiseForecaster;
import doughtide.core.quantity.Altitude;
import doughtide.core.quantity.Mass;
import doughtide.core.quantity.Share;
import doughtide.core.quantity.Temperature;
import doughtide.core.rise.DoughTemperature;
import doughtide.core.rise.RiseCurve;
import doughtide.core.rise.RiseModel;
import doughtide.core.rise.SeedState;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Random;
import org.junit.jupiter.api.Test;

/** Random builds: no gram is lost on the way to the dough, and the state goes from hand to hand. */
class StagedBuildPropertyTest {
  private static final FeedingPlanner PLANNER =
      FeedingPlanner.with(RiseForecaster.standard().withMembers(32));

  private static StagedBuild build(Random random) {
    List<BuildStage> stages = new ArrayList<>();
    for (int i = 0; i <= random.nextInt(4); i++) {
      boolean byYield = random.nextBoolean();
      double flour = 1 + 5 * random.nextDouble();
      stages.add(
          new BuildStage(
              Optional.empty(),
              new FeedRatio(1, flour, flour * (0.7 + random.nextDouble() / 2)),
              byYield ? OptionalDouble.of(165 + random.nextInt(40)) : OptionalDouble.empty(),
              FlourClass.values()[random.nextInt(FlourClass.values().length)].flour(),
              Temperature.ofCelsius(20 + random.nextInt(9)),
              random.nextBoolean()
                  ? OptionalDouble.of(2 + random.nextInt(10))
                  : OptionalDouble.empty()));
    }
    Starter seed = Starter.ripe(Share.ofPercent(80 + random.nextInt(40)));
    return new StagedBuild(seed, stages, Altitude.SEA_LEVEL);
  }

  @Test
  void flourAndWaterOfAllStagesAreThoseOfTheDough() {
    Random random = new Random(20261125);
    for (int i = 0; i < 200; i++) {
      StagedBuild build = build(random);
      DoughFormula dough =
          DoughFormula.builder()
              .starter(build.ripened())
              .starterShare(
                  StarterShare.prefermented(Share.ofPercent(5 + 15 * random.nextDouble())))
              .hydration(Share.ofPercent(65 + 20 * random.nextDouble()))
              .build();
      Ingredients weigh = dough.forDough(Mass.ofGrams(500 + random.nextInt(20_000)));

      OverallFormula all = build.with(weigh);

      assertThat(all.total().grams()).isCloseTo(weigh.doughGrams(), within(1e-9));
      assertThat(all.hydration().fraction()).isCloseTo(dough.hydration().fraction(), within(1e-9));
      assertThat(all.salt().fraction()).isCloseTo(dough.salt().fraction(), within(1e-9));
      assertThat(all.prefermentedFlour().fraction())
          .isCloseTo(dough.prefermentedFlour(), within(1e-9));
    }
  }

  @Test
  void everyStageMakesWhatTheNextTakes() {
    Random random = new Random(5);
    for (int i = 0; i < 200; i++) {
      StagedBuild build = build(random);
      List<FeedAmounts> amounts = build.amounts(Mass.ofGrams(750));

      assertThat(amounts.get(amounts.size() - 1).totalGrams()).isCloseTo(750, within(1e-9));
      for (int stage = 1; stage < amounts.size(); stage++) {
        assertThat(amounts.get(stage).starterGrams())
            .isCloseTo(amounts.get(stage - 1).totalGrams(), within(1e-9));
      }
      for (int stage = 0; stage < amounts.size(); stage++) {
        OptionalDouble wanted = build.stages().get(stage).doughYield();
        double hydration = build.feedings().get(stage).hydration().percent();
        wanted.ifPresent(value -> assertThat(100 + hydration).isCloseTo(value, within(1e-9)));
      }
    }
  }

  @Test
  void aStageBeginsWithWhatTheOneBeforeLeft() {
    Random random = new Random(3);
    for (int i = 0; i < 8; i++) {
      StagedForecast forecast = PLANNER.build(build(random));
      for (int stage = 1; stage < forecast.steps().size(); stage++) {
        StagedForecast.Step before = forecast.steps().get(stage - 1);
        StagedForecast.Step now = forecast.steps().get(stage);
        double share = now.forecast().feeding().formula().prefermentedFlour();
        double at = before.hours().orElseThrow();
        for (int member = 0; member < 32; member++) {
          RiseCurve old = before.forecast().rise().curves().get(member);
          RiseCurve next = now.forecast().rise().curves().get(member);
          assertThat(next.acidMolAt(0)).isCloseTo(share * old.acidMolAt(at), within(1e-12));
          assertThat(next.gasAt(0).madeMol())
              .isCloseTo(share * old.gasAt(at).dissolvedMol(), within(1e-9));
          assertThat(next.yeastAt(0) / next.bacteriaAt(0))
              .isCloseTo(old.yeastAt(at) / old.bacteriaAt(at), within(1e-9));
        }
      }
    }
  }

  /** A ripe starter's own state gives what its condition assumes, but for the acid of ripeness. */
  @Test
  void aRipeSeedIsTheRipeStarterThatIsAssumed() {
    DoughFormula dough = DoughFormula.builder().build();
    DoughTemperature warm = DoughTemperature.steady(Temperature.ofCelsius(25));
    RiseModel assumed = RiseModel.of(dough, warm);
    RiseCurve curve = assumed.runFast(6);
    double acid = curve.acidMolAt(0) / dough.prefermentedFlour();
    double gas = curve.gasAt(0).madeMol() / dough.prefermentedFlour();

    RiseCurve handed = assumed.from(new SeedState(1, 1, 50, acid, gas)).runFast(6);

    for (double hours : new double[] {0, 2, 4, 6}) {
      assertThat(handed.riseAt(hours).fraction())
          .isCloseTo(curve.riseAt(hours).fraction(), within(1e-9));
    }
  }

  @Test
  void aStarvedSeedIsSlowerAndASourOneSourer() {
    DoughFormula dough = DoughFormula.builder().build();
    DoughTemperature warm = DoughTemperature.steady(Temperature.ofCelsius(25));
    RiseModel model = RiseModel.of(dough, warm);
    RiseCurve full = model.from(new SeedState(1, 1, 50, 0.1, 0.03)).runFast(6);
    RiseCurve starved = model.from(new SeedState(0.4, 1, 50, 0.1, 0.03)).runFast(6);
    RiseCurve sour = model.from(new SeedState(1, 1, 50, 0.3, 0.03)).runFast(6);

    assertThat(starved.riseAt(5).fraction()).isLessThan(full.riseAt(5).fraction());
    assertThat(sour.phAt(0)).isLessThan(full.phAt(0));
  }

  @Test
  void aRyeSourBecomesSourInEachOfItsStages() {
    StagedForecast sour = PLANNER.build(ryeSour());

    for (StagedForecast.Step step : sour.steps()) {
      assertThat(step.endPh().quantile(0.5).orElseThrow())
          .isLessThan(step.startPh().quantile(0.5).orElseThrow() - 0.5);
    }
    assertThat(sour.readyHours().orElseThrow()).isCloseTo(17, within(1e-9));
  }

  private static StagedBuild ryeSour() {
    Flour rye = FlourClass.RYE.flour();
    return new StagedBuild(
        new Starter(Share.ofPercent(100), rye, Starter.ripe().condition()),
        List.of(
            stage("fresh sour", 5, 200, 26, 6),
            stage("basic sour", 4, 165, 25, 8),
            stage("full sour", 1, 185, 30, 3)),
        Altitude.SEA_LEVEL);
  }

  private static BuildStage stage(
      String name, double flourParts, double doughYield, double celsius, double hours) {
    return new BuildStage(
        Optional.of(name),
        new FeedRatio(1, flourParts, 0),
        OptionalDouble.of(doughYield),
        FlourClass.RYE.flour(),
        Temperature.ofCelsius(celsius),
        OptionalDouble.of(hours));
  }

  /**
   * A full sour has a pH of about 3.5 to 4.0 (from memory, no source at hand). The model stays
   * above that in the three hours the trade gives it: a miss, which must be noticed if it goes.
   */
  @Test
  void theFullSourIsLessSourThanTheTradeSays() {
    StagedForecast sour = PLANNER.build(ryeSour());
    double likely = sour.steps().get(2).endPh().quantile(0.5).orElseThrow();

    assertThat(likely).isBetween(4.0, 4.6);
  }
}
