package doughtide.core.loaf;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import doughtide.core.dough.DoughFormula;
import doughtide.core.dough.StarterShare;
import doughtide.core.quantity.Rise;
import doughtide.core.quantity.Share;
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
    return new ShapeSearch(BULK, proof, loaf(percent), LoafScores.MIDDLE);
  }

  private static double percentAtOven(double target, double from, double hours) {
    return loaf(target).run(BULK, from, LoafScores.MIDDLE, hours).riseAtEnd().percent();
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
    double warmer =
        new ShapeSearch(BULK, proof, loaf(85).warmer(3), LoafScores.MIDDLE).find(4).orElseThrow();

    assertThat(warmer).isLessThan(believed - 0.2);
    assertThat(loaf(85).warmer(3).run(BULK, warmer, LoafScores.MIDDLE, 12).riseAtEnd().percent())
        .isCloseTo(85, within(0.3));
  }

  @Test
  void tooLateIsToldFromNever() {
    Proof long96 = Proof.inCold(COLD, 60).withRest(4);
    ShapeSearch late = search(long96, 12);
    ShapeSearch never = search(Proof.inCold(COLD, 1), 390);

    assertThat(late.find(4)).isEmpty();
    assertThat(late.missing()).isEqualTo(ShapeSearch.Missing.PAST_TARGET);
    assertThat(late.missingHours()).isZero();
    assertThat(never.find(4)).isEmpty();
    assertThat(never.missing()).isEqualTo(ShapeSearch.Missing.OUT_OF_REACH);
    assertThat(never.missingHours()).isEqualTo(Double.POSITIVE_INFINITY);
  }

  @Test
  void aLoafThatPeaksAndFallsWhileItRestsIsTooLate() {
    DoughFormula lively =
        DoughFormula.builder().starterShare(StarterShare.prefermented(Share.ofPercent(35))).build();
    RiseCurve bulk =
        RiseModel.of(lively, DoughTemperature.steady(Temperature.ofCelsius(29))).run(20);
    Proof night = Proof.inCold(COLD, 8).withRest(12);
    Proof room = Proof.inRoom(Temperature.ofCelsius(24), 40).withTarget(Rise.ofPercent(390));
    ShapeSearch rests =
        new ShapeSearch(
            bulk, night, LoafModel.of(lively, night, LoafSettings.FULL), LoafScores.MIDDLE);
    ShapeSearch proofs =
        new ShapeSearch(
            BULK, room, LoafModel.of(FORMULA, room, LoafSettings.FULL), LoafScores.MIDDLE);

    assertThat(rests.find(4)).isEmpty();
    assertThat(rests.missing()).isEqualTo(ShapeSearch.Missing.PAST_BEST);
    assertThat(proofs.find(4)).isEmpty();
    assertThat(proofs.missing()).isEqualTo(ShapeSearch.Missing.PAST_BEST);
  }

  @Test
  void ovenBeforeTheBenchRestIsOverIsTooLate() {
    ShapeSearch search = search(Proof.inColdUntil(COLD, 2).withRest(3), 85);

    assertThat(search.find(1)).isEmpty();
    assertThat(search.missing()).isEqualTo(ShapeSearch.Missing.PAST_TARGET);
  }

  @Test
  void rightIsBetweenPartsOfTheTargetAndUsableUpToPartOfTheGreatestHeight() {
    PieceCurve piece = loaf(85).run(BULK, 4, LoafScores.MIDDLE, 80);
    LoafLimits right = LoafLimits.right(Rise.ofPercent(50));
    double from = right.from(piece).orElseThrow();
    double until = right.until(piece).orElseThrow();

    assertThat(piece.riseAt(from).percent()).isCloseTo(42.5, within(0.1));
    assertThat(piece.riseAt(until).percent()).isCloseTo(60, within(0.1));
    assertThat(right.isGood(piece, (from + until) / 2)).isTrue();
    assertThat(right.isGood(piece, until + 0.1)).isFalse();
    assertThat(LoafLimits.usable(Rise.ofPercent(50)).from(piece)).hasValue(from);
    assertThat(LoafLimits.usable(Rise.ofPercent(50)).until(piece).orElse(99)).isGreaterThan(until);
    assertThat(LoafLimits.right(Rise.ofPercent(390)).from(piece)).isEmpty();
  }

  @Test
  void firmerHandsAskForAHigherJar() {
    double gentle = jarFor(Shaping.GENTLE);
    double firm = jarFor(Shaping.FIRM);
    double knocked = jarFor(Shaping.KNOCKED_BACK);

    assertThat(firm).isGreaterThan(gentle + 1);
    assertThat(knocked).isGreaterThan(firm + 1);
  }

  private static double jarFor(Shaping shaping) {
    Proof proof =
        Proof.inRoom(Temperature.ofCelsius(24), 3).withTarget(Rise.ofPercent(60)).shaped(shaping);
    LoafModel loaf = LoafModel.of(FORMULA, proof, LoafSettings.FULL);
    double from = new ShapeSearch(BULK, proof, loaf, LoafScores.MIDDLE).find(4).orElseThrow();
    return BULK.riseAt(from - proof.restHours()).percent();
  }
}
