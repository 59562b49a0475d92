package doughtide.core.day;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import doughtide.core.dough.DoughFormula;
import doughtide.core.dough.StarterCondition;
import doughtide.core.feeding.FeedRatio;
import doughtide.core.forecast.RiseForecaster;
import doughtide.core.loaf.PieceForm;
import doughtide.core.loaf.Proof;
import doughtide.core.loaf.Shaping;
import doughtide.core.loaf.StrengthPlan;
import doughtide.core.quantity.InputException;
import doughtide.core.quantity.Mass;
import doughtide.core.quantity.Rise;
import doughtide.core.quantity.Share;
import doughtide.core.quantity.Temperature;
import doughtide.core.thermal.Material;
import doughtide.core.thermal.TemperatureTrace;
import doughtide.core.thermal.Vessel;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.function.UnaryOperator;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

class BakeDayTest {
  private static final BenchHours BENCH = new BenchHours(List.of(new BenchInterval(0, 40)));
  private static final BakeDay DAY = BakeDay.builder().readyAt(36).bench(BENCH).build();
  private static final FeedRatio EQUAL = FeedRatio.oneTo(1, Share.ofPercent(100));
  private static final StrengthPlan FOLDS = new StrengthPlan(0, 1, 1, 0.5, OptionalDouble.empty());

  private static BakeDay with(UnaryOperator<BakeDay.Builder> change) {
    return change.apply(DAY.toBuilder()).build();
  }

  private static BakeDay loaves(int number) {
    return with(day -> day.loaves(number, Mass.ofGrams(850), PieceForm.ROUND));
  }

  @Test
  void whatIsGivenIsTold() {
    BakeDay day =
        with(
            each ->
                each.room(TemperatureTrace.steady(Temperature.ofCelsius(23)))
                    .shaped(Shaping.FIRM)
                    .target(Rise.ofPercent(90))
                    .strength(FOLDS)
                    .bulkPlace(BakeDay.BulkPlace.HELD)
                    .vessel(Vessel.bowl(Material.STEEL))
                    .starterInCold(48)
                    .fed(5, EQUAL)
                    .plans(7)
                    .doughCelsius(List.of(26.0, 22.0, 26.0))
                    .starterPercents(List.of(20.0, 5.0)));

    assertThat(day.room().celsius(3)).isEqualTo(23);
    assertThat(day.shaping()).contains(Shaping.FIRM);
    assertThat(day.target().percent()).isEqualTo(90);
    assertThat(day.strength()).isEqualTo(FOLDS);
    assertThat(day.bulkPlace()).isEqualTo(BakeDay.BulkPlace.HELD);
    assertThat(day.vessel()).isEqualTo(Vessel.bowl(Material.STEEL));
    assertThat(day.starterInColdHours()).hasValue(48);
    assertThat(day.fed()).contains(new BakeDay.Fed(5, EQUAL));
    assertThat(day.plans()).isEqualTo(7);
    assertThat(day.doughCelsius()).containsExactly(22.0, 26.0);
    assertThat(day.starterPercents()).containsExactly(5.0, 20.0);
    assertThat(DAY.strength()).isEqualTo(StrengthPlan.of(DAY.dough()));
    assertThat(DAY.starterInColdHours()).isEmpty();
    assertThat(DAY.cold()).isEmpty();
  }

  static Stream<UnaryOperator<BakeDay.Builder>> changes() {
    return Stream.of(
        day -> day.readyAt(37),
        day -> day.bench(new BenchHours(List.of(new BenchInterval(0, 41)))),
        day -> day.room(TemperatureTrace.steady(Temperature.ofCelsius(23))),
        day -> day.cold(Temperature.ofCelsius(4)),
        day -> day.shaped(Shaping.FIRM),
        day -> day.oven(Oven.usual().withLoaves(3)),
        day -> day.dough(DoughFormula.builder().hydration(Share.ofPercent(80)).build()),
        day -> day.loaves(2, Mass.ofGrams(850), PieceForm.ROUND),
        day -> day.loaves(1, Mass.ofGrams(900), PieceForm.ROUND),
        day -> day.loaves(1, Mass.ofGrams(850), PieceForm.TIN),
        day -> day.target(Rise.ofPercent(90)),
        day -> day.forecaster(RiseForecaster.standard().withMembers(16)),
        day -> day.strength(FOLDS),
        day -> day.bulkPlace(BakeDay.BulkPlace.HELD),
        day -> day.vessel(Vessel.bowl(Material.STEEL)),
        day -> day.doughCelsius(List.of(24.0)),
        day -> day.starterPercents(List.of(20.0)),
        day -> day.plans(1),
        day -> day.restHours(1),
        day -> day.starterInCold(24),
        day -> day.fed(5, EQUAL),
        day -> day.mixer(Mass.ofGrams(500)));
  }

  /** Days are keys of what has been searched: one that differs must not be taken for another. */
  @ParameterizedTest
  @MethodSource("changes")
  void aDayThatDiffersIsAnotherAndACopyIsTheSame(UnaryOperator<BakeDay.Builder> change) {
    BakeDay other = with(change);

    assertThat(other).isNotEqualTo(DAY);
    assertThat(other.toBuilder().build()).isEqualTo(other).hasSameHashCodeAs(other);
  }

  static Stream<UnaryOperator<BakeDay.Builder>> outOfRange() {
    return Stream.of(
        day -> day.readyAt(8761),
        day -> day.cold(Temperature.ofCelsius(13)),
        day -> day.loaves(501, Mass.ofGrams(850), PieceForm.ROUND),
        day -> day.target(Rise.ofPercent(9)),
        day -> day.doughCelsius(List.of(33.0)),
        day -> day.doughCelsius(List.of()),
        day -> day.starterPercents(List.of(0.4)),
        day -> day.starterPercents(List.of()),
        day -> day.starterInCold(169),
        day -> day.fed(-8761, EQUAL),
        day -> day.mixer(Mass.ofGrams(99)),
        day -> day.plans(21),
        day -> day.restHours(0.05));
  }

  @ParameterizedTest
  @MethodSource("outOfRange")
  void whatCannotBeIsRefused(UnaryOperator<BakeDay.Builder> change) {
    assertThatThrownBy(() -> with(change)).isInstanceOf(InputException.class);
  }

  /** Half an hour for four loaves, two minutes more for each more, four hours at most. */
  @Test
  void shapingTakesLongerForMoreLoaves() {
    assertThat(loaves(1).restHours()).isEqualTo(0.5);
    assertThat(loaves(4).restHours()).isEqualTo(0.5);
    assertThat(loaves(7).restHours()).isCloseTo(0.6, within(1e-9));
    assertThat(loaves(40).restHours()).isCloseTo(1.7, within(1e-9));
    assertThat(loaves(200).restHours()).isEqualTo(4);
    assertThat(loaves(40).toBuilder().restHours(0.1).build().restHours()).isEqualTo(0.1);
  }

  /** Forty loaves of 850 g are 34 kg: seven batches in a mixer for five kilograms. */
  @Test
  void aSmallMixerMixesInBatches() {
    assertThat(DAY.mixHours()).isEqualTo(0.25);
    assertThat(mixed(40, 5000)).isEqualTo(7 * 0.25);
    assertThat(mixed(40, 34_000)).isEqualTo(0.25);
    assertThat(mixed(40, 17_000)).isEqualTo(0.5);
    assertThat(mixed(12, 850)).isEqualTo(3);
    assertThatThrownBy(() -> mixed(13, 850))
        .isInstanceOf(InputException.class)
        .hasMessageContaining("11050 g of dough are 13 batches");
    assertThat(BakeDay.mixBatches(Mass.ofGrams(900), Optional.empty())).isEqualTo(1);
  }

  private static double mixed(int loaves, double mixer) {
    return loaves(loaves).toBuilder().mixer(Mass.ofGrams(mixer)).build().mixHours();
  }

  @Test
  void aStarterFromTheColdIsWeaker() {
    BakeDay cold = with(day -> day.starterInCold(24));
    assertThat(cold.dough(20).starter().condition()).isEqualTo(StarterCondition.FROM_COLD);
    assertThat(DAY.dough(20).starter().condition()).isEqualTo(StarterCondition.RIPE);
    assertThat(cold.needsFeeding()).isFalse();
    assertThat(with(day -> day.fed(5, EQUAL)).needsFeeding()).isFalse();
    assertThat(DAY.needsFeeding()).isTrue();
    assertThat(DAY.stagesDone()).isZero();
  }

  @Test
  void loavesAreOfTheDay() {
    Proof proof =
        with(day -> day.shaped(Shaping.FIRM).target(Rise.ofPercent(90)).restHours(1))
            .ofItsLoaves(Proof.inRoom(Temperature.ofCelsius(22), 2));

    assertThat(proof.restHours()).isEqualTo(1);
    assertThat(proof.mass()).isEqualTo(Mass.ofGrams(850));
    assertThat(proof.shapingOf(DAY.dough().flour())).isEqualTo(Shaping.FIRM);
    assertThat(loaves(3).allDough().grams()).isEqualTo(2550);
    assertThat(loaves(3).bakingHours()).isCloseTo(100 / 60.0, within(1e-9));
  }

  /** In the baskets at 15:00; to bake at 14:40 would be while hands are shaping. */
  @Test
  void stepsThatOverlapAreNone() {
    assertThat(DAY.stepsAfterBulk(ProofKind.ROOM, 15, 17)).isPresent();
    BakeDay hotAtOnce = DAY.toBuilder().oven(new Oven(0, 0.75, 1.5, 2)).build();
    assertThat(hotAtOnce.stepsAfterBulk(ProofKind.ROOM, 15, 17))
        .as("hands first switch")
        .isPresent();
    assertThat(DAY.stepsAfterBulk(ProofKind.ROOM, 15, 14.67)).isEmpty();
    assertThat(DAY.stepsAfterBulk(ProofKind.COLD, 15, 15.85)).isPresent();
    assertThat(DAY.stepsAfterBulk(ProofKind.COLD, 15, 15.8)).isEmpty();
  }

  /** To be hot in time the oven is switched on before shaping begins, and is told before. */
  @Test
  void stepsComeByTheClock() {
    assertThat(DAY.stepsAfterBulk(ProofKind.ROOM, 15, 15.25).orElseThrow())
        .extracting(BakeStep::kind)
        .containsExactly(
            BakeStep.Kind.PREHEAT,
            BakeStep.Kind.SHAPE,
            BakeStep.Kind.BAKE,
            BakeStep.Kind.COOL,
            BakeStep.Kind.READY);
    assertThat(DAY).hasToString("1 × 850 g ready at hour 36, at the bench " + BENCH.intervals());
  }

  @Test
  void aDoughIsFollowedAsItIsMixed() {
    BakeRoute route = BakeRoute.inRoom(20, 24, 10);
    assertThat(DAY.bulk(route, 8, 6).hours()).isEqualTo(6);
    assertThat(DAY.bulk(route, 8, 6).curves()).hasSize(8);
    assertThat(DAY.bulk(route, 8, 6).formula()).isEqualTo(DAY.dough(20));
  }

  @Test
  void anAutolyseNeedsSoMuchWaterThatItIsADough() {
    BakeDay day =
        Weeks.dayWorker()
            .dough(DoughFormula.builder().hydration(Share.ofPercent(60)).build())
            .build();

    assertThat(day.strength(BakeRoute.inRoom(20, 24, 0)).autolyseHours())
        .isEqualTo(day.strength().autolyseHours())
        .isPositive();
    // 50 g of water in the starter leave 40 g of 90 g on 100 g of flour.
    assertThat(day.strength(BakeRoute.inRoom(100, 24, 0)).autolyseHours()).isZero();
  }
}
