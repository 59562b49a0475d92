package doughtide.core.day.bench;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import doughtide.core.day.BakeDay;
import doughtide.core.day.BenchHours;
import doughtide.core.day.BenchInterval;
import doughtide.core.day.DayPlan;
import doughtide.core.day.DayPlanner;
import doughtide.core.day.Oven;
import doughtide.core.day.SearchControl;
import doughtide.core.loaf.PieceForm;
import doughtide.core.quantity.InputException;
import doughtide.core.quantity.Mass;
import doughtide.core.quantity.Temperature;
import java.util.List;
import java.util.Optional;
import java.util.Random;
import org.junit.jupiter.api.Test;

/** Many loaves over one bench: the order, the ages, and no gram lost in the mixer. */
class BenchBatchesPropertyTest {
  private static final int LOAVES = 20;
  private static final DayPlan DAY = plan();

  private static DayPlan plan() {
    BakeDay day =
        BakeDay.builder()
            .readyAt(36)
            .bench(
                new BenchHours(
                    List.of(
                        new BenchInterval(-19, -1),
                        new BenchInterval(5, 23),
                        new BenchInterval(29, 47))))
            .cold(Temperature.ofCelsius(4))
            .loaves(LOAVES, Mass.ofGrams(850), PieceForm.ROUND)
            .oven(new Oven(0.75, 0.75, 1.5, 6))
            .starterPercents(List.of(20.0))
            .doughCelsius(List.of(24.0, 26.0))
            .plans(1)
            .build();
    return DayPlanner.plan(List.of(day), 1, SearchControl.none()).days().get(0);
  }

  @Test
  void loavesAreShapedAndBakedInTheOrderOfMixing() {
    Random random = new Random(20261125);
    for (int i = 0; i < 20; i++) {
      Mass mixer = Mass.ofGrams(2000 + random.nextInt(20_000));
      BenchBatches bench = BenchBatches.of(DAY, 0, 4 * random.nextDouble(), Optional.of(mixer));
      List<BenchLoaf> loaves = bench.loaves();

      assertThat(loaves).hasSize(LOAVES);
      for (int n = 1; n < LOAVES; n++) {
        BenchLoaf before = loaves.get(n - 1);
        BenchLoaf now = loaves.get(n);
        assertThat(now.shapedHour()).isGreaterThanOrEqualTo(before.shapedHour());
        assertThat(now.ovenHour()).isGreaterThanOrEqualTo(before.ovenHour());
        assertThat(now.mixedHour()).isGreaterThanOrEqualTo(before.mixedHour());
      }
      double begun = DAY.plans().get(0).bulkEndHour();
      assertThat(loaves)
          .allSatisfy(loaf -> assertThat(loaf.shapedHour()).isGreaterThanOrEqualTo(begun - 1e-9));
      assertThat(bench.last().shapedHour())
          .isCloseTo(DAY.plans().get(0).basketHour(), within(1e-9));
    }
  }

  @Test
  void theMixerHoldsEveryBatchAndTogetherTheyAreTheDough() {
    Random random = new Random(3);
    double all = LOAVES * 850;
    for (int i = 0; i < 40; i++) {
      Mass mixer = Mass.ofGrams(1500 + random.nextInt(20_000));
      BenchBatches bench = BenchBatches.of(DAY, 0, 2, Optional.of(mixer));

      assertThat(bench.mixes().stream().mapToDouble(Mass::grams).sum())
          .isCloseTo(all, within(1e-9));
      assertThat(bench.mixes())
          .allSatisfy(mix -> assertThat(mix.grams()).isLessThanOrEqualTo(mixer.grams() + 1e-6));
      assertThat(bench.last().mixBatch()).isEqualTo(bench.mixes().size());
    }
  }

  @Test
  void sixLoavesGoIntoEachOvenAsThePlanHasIt() {
    BenchBatches bench = BenchBatches.of(DAY, 0, 2, Optional.empty());

    assertThat(bench.loaves().stream().filter(loaf -> loaf.ovenBatch() == 1)).hasSize(6);
    assertThat(bench.last().ovenBatch()).isEqualTo(4);
    assertThat(bench.first().ovenHour()).isCloseTo(DAY.plans().get(0).ovenHour(), within(1e-9));
  }

  /** Shaped later from a dough that went on rising, and baked later: the last loaf is higher. */
  @Test
  void theLastLoafIsOlderAndHigherAndASlowerHandMakesTheDifferenceGreater() {
    BenchBatches quick = BenchBatches.of(DAY, 0, 0, Optional.empty());
    BenchBatches slow = BenchBatches.of(DAY, 0, 2, Optional.empty());

    assertThat(slow.last().ageBakedHours()).isGreaterThan(slow.first().ageBakedHours());
    assertThat(difference(slow)).isGreaterThan(1);
    assertThat(difference(slow)).isGreaterThan(difference(quick));
  }

  @Test
  void aLaterBatchOfTheMixerIsYoungerAndLower() {
    BenchBatches one = BenchBatches.of(DAY, 0, 2, Optional.empty());
    BenchBatches three = BenchBatches.of(DAY, 0, 2, Optional.of(Mass.ofGrams(6000)));

    assertThat(three.mixes()).hasSize(3);
    assertThat(one.last().ageShapedHours() - three.last().ageShapedHours())
        .isCloseTo(0.5, within(1e-9));
    assertThat(three.riseAtOven(three.last()).percent())
        .isLessThan(one.riseAtOven(one.last()).percent());
    assertThat(difference(three)).isLessThan(difference(one));
  }

  private static double difference(BenchBatches bench) {
    return bench.riseAtOven(bench.last()).percent() - bench.riseAtOven(bench.first()).percent();
  }

  /** Two minutes a loaf, at most the time there is for shaping; the last is done as planned. */
  @Test
  void handsTakeTheirTimeForEachLoaf() {
    double basket = DAY.plans().get(0).basketHour();
    List<BenchLoaf> usual = BenchBatches.of(DAY, 0, 2, Optional.empty()).loaves();
    List<BenchLoaf> slow = BenchBatches.of(DAY, 0, 30, Optional.empty()).loaves();

    assertThat(usual.get(18).shapedHour()).isCloseTo(basket - 2 / 60.0, within(1e-9));
    assertThat(usual.get(0).shapedHour()).isCloseTo(basket - 38 / 60.0, within(1e-9));
    assertThat(slow.get(0).shapedHour()).isCloseTo(DAY.plans().get(0).bulkEndHour(), within(1e-9));
    assertThat(new BenchLoaf(1, 1, 10, 15, 1, 18).ageShapedHours()).isEqualTo(5);
    assertThat(new BenchLoaf(1, 1, 10, 15, 1, 18).ageBakedHours()).isEqualTo(8);
    assertThat(new BenchLoaf(1, 1, 10, 15, 1, 18).proofHours()).isEqualTo(3);
  }

  /** A quarter of an hour for each batch, from the hour of mixing on. */
  @Test
  void batchesAreMixedOneAfterAnotherWhileTheBakerIsThere() {
    BenchBatches three = BenchBatches.of(DAY, 0, 2, Optional.of(Mass.ofGrams(6000)));
    double mix = DAY.plans().get(0).mixHour();
    double left =
        DAY.plans().get(0).day().bench().intervals().stream()
            .filter(at -> at.fromHour() <= mix && mix < at.toHour())
            .mapToDouble(at -> at.toHour() - mix)
            .findFirst()
            .orElseThrow();

    assertThat(three.mixHour(1)).isEqualTo(mix);
    assertThat(three.mixHour(3)).isCloseTo(mix + 0.5, within(1e-9));
    assertThat(three.mixedInTime()).isEqualTo(left >= 0.75);
    BenchBatches twelve = BenchBatches.of(DAY, 0, 2, Optional.of(Mass.ofGrams(1500)));
    assertThat(twelve.mixedInTime()).isEqualTo(left >= 3);
  }

  @Test
  void refusesWhatCannotBe() {
    assertThatThrownBy(() -> BenchBatches.of(DAY, 0, 31, Optional.empty()))
        .isInstanceOf(InputException.class)
        .hasMessageContaining("minutes a loaf");
    assertThatThrownBy(() -> BenchBatches.of(DAY, 0, 2, Optional.of(Mass.ofGrams(200))))
        .isInstanceOf(InputException.class)
        .hasMessageContaining("batches in the mixer");
  }
}
