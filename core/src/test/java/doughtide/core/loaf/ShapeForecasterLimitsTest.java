package doughtide.core.loaf;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import doughtide.core.dough.DoughFormula;
import doughtide.core.forecast.Distribution;
import doughtide.core.forecast.RiseForecast;
import doughtide.core.forecast.RiseForecaster;
import doughtide.core.forecast.Warning;
import doughtide.core.quantity.Rise;
import doughtide.core.quantity.Temperature;
import doughtide.core.rise.DoughTemperature;
import doughtide.core.rise.PieceCurve;
import doughtide.core.rise.RiseCurve;
import java.util.List;
import java.util.OptionalDouble;
import java.util.function.IntToDoubleFunction;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;

/** What a forecaster of shape points allows, and what it says of a night, with few loaves. */
class ShapeForecasterLimitsTest {
  private static final Temperature COLD = Temperature.ofCelsius(4);
  private static final Rise TARGET = Rise.ofPercent(80);
  private static final Proof NIGHT = Proof.inCold(COLD, 12).withTarget(TARGET);
  private static final double REST = Proof.USUAL_REST_HOURS;
  private static final double HOURS = 12;
  private static final RiseForecast BULK = bulk(24);
  private static final RiseCurve CURVE = BULK.curves().get(3);

  private static RiseForecast bulk(double celsius) {
    return RiseForecaster.standard()
        .withMembers(16)
        .keepingCurves()
        .forecast(
            DoughFormula.builder().build(),
            DoughTemperature.steady(Temperature.ofCelsius(celsius)),
            HOURS);
  }

  private static ShapeForecaster forecaster(Proof proof) {
    return ShapeForecaster.of(BULK, proof).with(LoafSettings.SEARCH);
  }

  @Test
  void hoursAreForbiddenWhereTheModelMeansNothing() {
    assertThat(forecaster(NIGHT).isForbidden()).isFalse();
    assertThat(forecaster(Proof.inCold(Temperature.ofCelsius(24), 12)).isForbidden()).isTrue();
    assertThat(forecaster(Proof.inCold(Temperature.ofCelsius(-5), 12)).isForbidden()).isTrue();
    assertThat(ShapeForecaster.of(bulk(42), NIGHT).isForbidden()).isTrue();
    assertThat(forecaster(NIGHT).isPossible()).isTrue();
    Proof high = Proof.inRoom(Temperature.ofCelsius(24), 1).withTarget(Rise.ofPercent(390));
    assertThat(forecaster(high).isPossible()).isFalse();
  }

  /** A loaf must rest before the dough is followed no more, or before the oven is full. */
  @Test
  void bulkEndsInTimeForTheRestAndTheOven() {
    assertThat(forecaster(NIGHT).lastBulkEnd(CURVE)).isCloseTo(HOURS - REST, within(1e-9));
    Proof soon = Proof.inColdUntil(COLD, 8).afterRoom(Temperature.ofCelsius(24), 1);
    assertThat(forecaster(soon).lastBulkEnd(CURVE)).isCloseTo(8 - 1 - REST, within(1e-9));
    Proof late = Proof.inColdUntil(COLD, 1).afterRoom(Temperature.ofCelsius(24), 2);
    assertThat(forecaster(late).lastBulkEnd(CURVE)).isZero();
    ShapeForecaster night = forecaster(NIGHT);
    ShapeForecast.Night last = night.nightIfShapedByClock(HOURS - REST).orElseThrow();
    assertThat(last.proofFromHours()).isCloseTo(HOURS, within(1e-9));
    assertThat(last.bulkEndHours()).isCloseTo(HOURS - REST, within(1e-9));
    assertThatThrownBy(() -> night.nightIfShapedByClock(HOURS - REST + 0.01))
        .hasMessageContaining("end of bulk fermentation");
  }

  @Test
  void aMembersLoafIsThatOfTheModel() {
    LoafModel loaf = LoafModel.of(BULK.formula(), NIGHT, LoafSettings.SEARCH);
    double run = loaf.riseAtEnd(CURVE, 4 + REST, LoafScores.of(3), 12).percent();

    assertThat(forecaster(NIGHT).ovenPercent(3, CURVE, 4)).isCloseTo(run, within(1e-9));
    Proof past = Proof.inColdUntil(COLD, 3).withTarget(TARGET);
    double atOnce = forecaster(past).ovenPercent(3, CURVE, 4);
    assertThat(atOnce)
        .as("baked as soon as it is shaped")
        .isCloseTo(loaf.riseAtEnd(CURVE, 4 + REST, LoafScores.of(3), 0.05).percent(), within(0.5));
  }

  /** How many loaves are higher than 120 % of the target or weak when the oven is hot. */
  private static int tooFar(ShapeForecast shape, double kelvin, double later) {
    LoafModel loaf = LoafModel.of(BULK.formula(), NIGHT, LoafSettings.SEARCH);
    LoafModel tried = kelvin > 0 ? loaf.warmer(kelvin) : loaf;
    Rise jar = Rise.ofPercent(shape.rise().likely().orElseThrow());
    int count = 0;
    for (int i = 0; i < 16; i++) {
      RiseCurve curve = BULK.curves().get(i);
      double from = Math.min(curve.hoursToRise(jar).orElse(HOURS) + REST + later, HOURS);
      PieceCurve piece = tried.run(curve, from, LoafScores.of(i), 12);
      boolean high = piece.hoursToRise(new Rise(1.2 * TARGET.fraction())).isPresent();
      count += high || piece.hoursToOver().isPresent() ? 1 : 0;
    }
    return count;
  }

  /**
   * The smallest change in its steps with which one loaf in ten more is too far: two of sixteen.
   */
  @Test
  void aLoafIsSpoiledByTheSmallestChangeThatSpoilsTwoMore() {
    ShapeForecast shape = forecaster(NIGHT).forecast();
    int before = tooFar(shape, 0, 0);
    double later = shape.spoils().laterHours().orElseThrow();
    double warmer = shape.spoils().warmerCelsius().orElseThrow();

    assertThat(tooFar(shape, 0, later)).isGreaterThanOrEqualTo(before + 2);
    assertThat(tooFar(shape, 0, later - 1.0 / 6)).isLessThan(before + 2);
    assertThat(tooFar(shape, warmer, 0)).isGreaterThanOrEqualTo(before + 2);
    assertThat(tooFar(shape, warmer - 0.5, 0)).isLessThan(before + 2);
    Proof room = Proof.inRoom(Temperature.ofCelsius(24), 2).withTarget(TARGET);
    assertThat(forecaster(room).forecast().spoils().warmerCelsius()).isEmpty();
  }

  private static double percentAtOven(int member, double from) {
    return LoafModel.of(BULK.formula(), NIGHT, LoafSettings.SEARCH)
        .riseAtEnd(BULK.curves().get(member), from, LoafScores.of(member), 12)
        .percent();
  }

  private static double median(IntToDoubleFunction value) {
    return Distribution.of(IntStream.range(0, 16).mapToDouble(value).toArray())
        .quantile(0.5)
        .orElseThrow();
  }

  /** Each loaf is shaped when its jar shows the likely rise, or all of them at one hour. */
  @Test
  void aNightTellsWhatTheLoavesOfAllMembersAreAtTheOven() {
    Rise jar = Rise.ofPercent(BULK.likelyPercentAt(4));
    double byJar =
        median(i -> percentAtOven(i, BULK.curves().get(i).hoursToRise(jar).orElseThrow() + REST));
    double byClock = median(i -> percentAtOven(i, 4 + REST));
    ShapeForecast.Night shown = forecaster(NIGHT).nightIfShapedAt(4).orElseThrow();
    ShapeForecast.Night clock = forecaster(NIGHT).nightIfShapedByClock(4).orElseThrow();

    assertThat(shown.riseAtBake().likely().orElseThrow()).isCloseTo(byJar, within(0.5));
    assertThat(clock.riseAtBake().likely().orElseThrow()).isCloseTo(byClock, within(0.5));
    assertThat(shown.ovenHours()).isCloseTo(4 + REST + 12, within(1e-9));
    assertThat(shown.coldFromHours()).hasValue(4 + REST);
    int typical = 0;
    double least = Double.POSITIVE_INFINITY;
    for (int i = 0; i < 16; i++) {
      double off =
          Math.abs(BULK.curves().get(i).riseAt(4).percent() - jar.percent())
              + Math.abs(percentAtOven(i, 4 + REST) - byJar);
      typical = off < least ? i : typical;
      least = Math.min(off, least);
    }
    assertThat(shown.bulk())
        .as("the jar and the loaf that are likely")
        .isSameAs(BULK.curves().get(typical));
    assertThat(shown.scores()).isEqualTo(LoafScores.of(typical));
    LoafModel inWarmerCold = LoafModel.of(BULK.formula(), NIGHT, LoafSettings.SEARCH).warmer(2);
    double warm =
        median(
            i -> {
              RiseCurve curve = BULK.curves().get(i);
              double from = curve.hoursToRise(jar).orElseThrow() + REST;
              return inWarmerCold.riseAtEnd(curve, from, LoafScores.of(i), 12).percent();
            });
    assertThat(shown.warmer().orElseThrow().riseAtBakePercent())
        .as("of half of the loaves")
        .isCloseTo(warm, within(0.5));
    ShapeForecast shape = forecaster(NIGHT).forecast();
    assertThat(forecaster(NIGHT).stages(shape)).isPresent();
    assertThat(shape.loafRise().likely().orElseThrow())
        .as("hands take some of it")
        .isBetween(0.5 * shape.rise().likely().orElseThrow(), shape.rise().likely().orElseThrow());
  }

  private static List<Warning.Kind> said(Proof proof, double bulkEnd) {
    ShapeForecast.Night night = forecaster(proof).nightIfShapedByClock(bulkEnd).orElseThrow();
    return ProofWarnings.ofNight(night, TARGET, proof).stream().map(Warning::kind).toList();
  }

  /** Shaped far too late, some loaves are past it before the oven and the likely one over it. */
  @Test
  void aNightThatIsTooLateIsTold() {
    Proof room = Proof.inRoom(Temperature.ofCelsius(24), 3).withTarget(TARGET);

    assertThat(said(NIGHT, 2.5)).isEmpty();
    assertThat(said(NIGHT, 8))
        .containsExactly(Warning.Kind.SOME_TOO_FAR_IN_COLD, Warning.Kind.OVER_TARGET);
    assertThat(said(room, 8))
        .containsExactly(Warning.Kind.SOME_TOO_FAR_IN_ROOM, Warning.Kind.OVER_TARGET);
  }

  /** Only folds that are done before bulk fermentation ends take gas out. */
  @Test
  void foldsAfterTheEndOfBulkAreNotDone() {
    StrengthPlan one = new StrengthPlan(0, 1, 1, 1, OptionalDouble.empty());
    StrengthPlan two = new StrengthPlan(0, 2, 2, 1, OptionalDouble.empty());

    assertThat(shaped(two, 1.9 + REST)).isEqualTo(shaped(one, 1.9 + REST));
    assertThat(shaped(two, 2.1 + REST)).isLessThan(shaped(one, 2.1 + REST));
    assertThat(shaped(one, 0.9 + REST))
        .isEqualTo(shaped(new StrengthPlan(0, 0, 0, 1, OptionalDouble.empty()), 0.9 + REST));
  }

  private static double shaped(StrengthPlan folds, double from) {
    return LoafModel.of(BULK.formula(), NIGHT, LoafSettings.SEARCH)
        .folded(folds)
        .justShaped(CURVE, from, LoafScores.of(3))
        .percent();
  }
}
