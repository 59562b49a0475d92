package doughtide.core.loaf;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import doughtide.core.dough.DoughFormula;
import doughtide.core.dough.DoughProperties;
import doughtide.core.quantity.Rise;
import doughtide.core.quantity.Share;
import doughtide.core.quantity.Temperature;
import doughtide.core.rise.DoughTemperature;
import doughtide.core.rise.PieceCurve;
import doughtide.core.rise.PieceTemperature;
import doughtide.core.rise.RiseCurve;
import doughtide.core.rise.RiseModel;
import doughtide.core.thermal.Air;
import doughtide.core.thermal.Conduction;
import doughtide.core.thermal.Cover;
import doughtide.core.thermal.DoughHeat;
import doughtide.core.thermal.HeatSource;
import doughtide.core.thermal.PieceGeometry;
import doughtide.core.thermal.TemperatureTrace;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class ShapeSearchTest {
  private static final double STEP = 0.25;
  private static final Temperature COLD = Temperature.ofCelsius(4);
  private static final DoughFormula FORMULA = DoughFormula.builder().build();
  private static final RiseCurve BULK =
      RiseModel.of(FORMULA, DoughTemperature.steady(Temperature.ofCelsius(24))).run(20);
  private static final PieceTemperature COOLING = cooling();

  private static PieceTemperature cooling() {
    DoughHeat heat =
        DoughHeat.of(DoughProperties.of(FORMULA), Temperature.ofCelsius(14), Share.ofPercent(35));
    Proof proof = Proof.inCold(COLD, 12);
    PieceGeometry piece = proof.form().shape().geometry(proof.mass(), heat.densityKgPerM3());
    double coefficient = piece.surfaceWPerM2K(Air.REFRIGERATOR, proof.form().wall(), Cover.COVERED);
    Conduction body = Conduction.of(piece.form(), piece.lengthMetres(), heat, coefficient, 8);
    return PieceTemperature.of(body, TemperatureTrace.steady(COLD), 0, HeatSource.none(), 90);
  }

  private static ShapeSearch search(Proof proof, double percent) {
    return new ShapeSearch(BULK, proof, COOLING, Rise.ofPercent(percent), 0, STEP);
  }

  private static double percentAtOven(double from, double hours) {
    return PieceCurve.of(BULK, from, COOLING, 0, hours, STEP).riseAtEnd().percent();
  }

  @ParameterizedTest
  @ValueSource(doubles = {-5, 0.6, 3, 5, 8, 50})
  void meetsTheTargetFromAnyGuess(double guess) {
    double from = search(Proof.inCold(COLD, 12), 85).find(guess).orElseThrow();

    assertThat(percentAtOven(from, 12)).isCloseTo(85, within(0.3));
  }

  @ParameterizedTest
  @ValueSource(doubles = {30, 60, 100, 120})
  void higherTargetsAreMetToo(double percent) {
    double from = search(Proof.inCold(COLD, 6), percent).find(4).orElseThrow();

    assertThat(percentAtOven(from, 6)).isCloseTo(percent, within(0.3));
  }

  @Test
  void fixedOvenHourShortensTheNightOfALateShape() {
    double from = search(Proof.inColdUntil(COLD, 15), 85).find(4).orElseThrow();

    assertThat(from).isLessThan(15);
    assertThat(percentAtOven(from, 15 - from)).isCloseTo(85, within(0.3));
  }

  @Test
  void warmerColdAsksForAnEarlierShape() {
    Proof proof = Proof.inCold(COLD, 12);
    double believed = search(proof, 85).find(4).orElseThrow();
    double warmer =
        new ShapeSearch(BULK, proof, COOLING, Rise.ofPercent(85), 3, STEP).find(4).orElseThrow();

    assertThat(warmer).isLessThan(believed - 0.2);
    assertThat(PieceCurve.of(BULK, warmer, COOLING, 3, 12, STEP).riseAtEnd().percent())
        .isCloseTo(85, within(0.3));
  }

  @Test
  void tooLateIsToldFromNever() {
    Proof long96 = Proof.inCold(COLD, 60).withRest(4);
    ShapeSearch late = search(long96, 12);
    ShapeSearch never = search(Proof.inCold(COLD, 1), 390);

    assertThat(late.find(4)).isEmpty();
    assertThat(late.isTooLate()).isTrue();
    assertThat(late.missing()).isZero();
    assertThat(never.find(4)).isEmpty();
    assertThat(never.isTooLate()).isFalse();
    assertThat(never.missing()).isEqualTo(Double.POSITIVE_INFINITY);
  }

  @Test
  void ovenBeforeTheBenchRestIsOverIsTooLate() {
    ShapeSearch search = search(Proof.inColdUntil(COLD, 2).withRest(3), 85);

    assertThat(search.find(1)).isEmpty();
    assertThat(search.isTooLate()).isTrue();
  }

  @Test
  void usableRiseIsPartOfTheTargetUpToPartOfTheGreatestHeight() {
    double peak = BULK.riseAt(BULK.hoursToPeak().orElseThrow()).percent();
    UsableRise usable = UsableRise.of(Rise.ofPercent(80), BULK);

    assertThat(usable.from().percent()).isCloseTo(68, within(1e-9));
    assertThat(usable.until().percent()).isCloseTo(0.9 * (100 + peak) - 100, within(1e-9));
    assertThat(UsableRise.of(Rise.ofPercent(390), BULK).until().percent())
        .isCloseTo(390, within(1e-9));
  }

  @Test
  void usableHoursAreThoseOfTheRises() {
    PieceCurve piece = PieceCurve.of(BULK, 4, COOLING, 0, 80, STEP);
    double begin = piece.riseAt(4).percent();
    double end = piece.riseAtEnd().percent();
    double a = begin + 0.3 * (end - begin);
    double b = begin + 0.6 * (end - begin);
    UsableRise usable = new UsableRise(Rise.ofPercent(a), Rise.ofPercent(b));

    assertThat(piece.riseAt(usable.from(piece).orElseThrow()).percent()).isCloseTo(a, within(0.1));
    assertThat(piece.riseAt(usable.until(piece).orElseThrow()).percent()).isCloseTo(b, within(0.1));
    UsableRise far = new UsableRise(Rise.ofPercent(390), Rise.ofPercent(399));
    assertThat(far.from(piece)).isEmpty();
    assertThat(far.until(piece)).isEqualTo(piece.hoursToOver());
  }
}
