package doughtide.core.loaf;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import doughtide.core.dough.DoughFormula;
import doughtide.core.quantity.Rise;
import doughtide.core.quantity.Temperature;
import doughtide.core.rise.DoughTemperature;
import doughtide.core.rise.PieceCurve;
import doughtide.core.rise.RiseCurve;
import doughtide.core.rise.RiseModel;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class ShapeSearchTest {
  private static final Temperature COLD = Temperature.ofCelsius(4);
  private static final DoughFormula FORMULA = DoughFormula.builder().build();
  private static final RiseCurve BULK =
      RiseModel.of(FORMULA, DoughTemperature.steady(Temperature.ofCelsius(24))).run(20);

  private static LoafModel loaf(double percent) {
    Proof proof = Proof.inCold(COLD, 12).withTarget(Rise.ofPercent(percent));
    return LoafModel.of(FORMULA, proof, LoafSettings.FULL);
  }

  private static ShapeSearch search(Proof proof, double percent) {
    return new ShapeSearch(BULK, proof, loaf(percent), 0);
  }

  private static double percentAtOven(double target, double from, double hours) {
    return loaf(target).run(BULK, from, 0, hours).riseAtEnd().percent();
  }

  @ParameterizedTest
  @ValueSource(doubles = {-5, 0.6, 3, 5, 8, 50})
  void meetsTheTargetFromAnyGuess(double guess) {
    double from = search(Proof.inCold(COLD, 12), 85).find(guess).orElseThrow();

    assertThat(percentAtOven(85, from, 12)).isCloseTo(85, within(0.3));
  }

  @ParameterizedTest
  @ValueSource(doubles = {30, 60, 100, 120})
  void higherTargetsAreMetToo(double percent) {
    double from = search(Proof.inCold(COLD, 6), percent).find(4).orElseThrow();

    assertThat(percentAtOven(percent, from, 6)).isCloseTo(percent, within(0.3));
  }

  @Test
  void fixedOvenHourShortensTheNightOfALateShape() {
    double from = search(Proof.inColdUntil(COLD, 15), 85).find(4).orElseThrow();

    assertThat(from).isLessThan(15);
    assertThat(percentAtOven(85, from, 15 - from)).isCloseTo(85, within(0.3));
  }

  @Test
  void warmerColdAsksForAnEarlierShape() {
    Proof proof = Proof.inCold(COLD, 12);
    double believed = search(proof, 85).find(4).orElseThrow();
    double warmer = new ShapeSearch(BULK, proof, loaf(85), 3).find(4).orElseThrow();

    assertThat(warmer).isLessThan(believed - 0.2);
    assertThat(loaf(85).run(BULK, warmer, 3, 12).riseAtEnd().percent()).isCloseTo(85, within(0.3));
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
    PieceCurve piece = loaf(85).run(BULK, 4, 0, 80);
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
