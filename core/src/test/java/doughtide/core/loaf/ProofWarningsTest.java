package doughtide.core.loaf;

import static org.assertj.core.api.Assertions.assertThat;

import doughtide.core.dough.DoughFormula;
import doughtide.core.dough.FlourClass;
import doughtide.core.forecast.RiseForecast;
import doughtide.core.forecast.RiseForecaster;
import doughtide.core.forecast.Warning;
import doughtide.core.quantity.Rise;
import doughtide.core.quantity.Temperature;
import doughtide.core.rise.DoughTemperature;
import java.util.List;
import org.junit.jupiter.api.Test;

/** What is said about where a loaf of a dough of 24 °C waits. */
class ProofWarningsTest {
  private static final RiseForecast BULK =
      RiseForecaster.standard()
          .withMembers(8)
          .forecast(
              DoughFormula.builder().build(),
              DoughTemperature.steady(Temperature.ofCelsius(24)),
              6);
  private static final Proof ROOM = Proof.inRoom(Temperature.ofCelsius(24), 2);
  private static final Proof COLD = cold(4);

  private static Proof cold(double celsius) {
    return Proof.inCold(Temperature.ofCelsius(celsius), 12);
  }

  private static List<Warning.Kind> said(Proof proof) {
    return ProofWarnings.of(BULK, proof).stream().map(Warning::kind).toList();
  }

  @Test
  void aColdThatFreezesOrHardlyCools() {
    assertThat(said(COLD)).isEmpty();
    assertThat(said(cold(0))).hasSize(1);
    assertThat(said(cold(0.5))).isEmpty();
    assertThat(said(cold(10))).isEmpty();
    assertThat(said(cold(11))).containsExactly(Warning.Kind.BARELY_COOLING);
    assertThat(said(cold(23.5))).containsExactly(Warning.Kind.BARELY_COOLING);
    assertThat(said(cold(24))).containsExactly(Warning.Kind.NOT_COOLING);
    assertThat(ProofWarnings.warmestDough(BULK)).isEqualTo(24);
  }

  @Test
  void aRoomTooWarmForGrowth() {
    assertThat(said(ROOM)).isEmpty();
    assertThat(said(Proof.inRoom(Temperature.ofCelsius(35.9), 2))).isEmpty();
    assertThat(said(Proof.inRoom(Temperature.ofCelsius(36), 2))).hasSize(1);
  }

  @Test
  void whyThereIsNoShapePoint() {
    Rise target = Rise.ofPercent(85);
    assertThat(ProofWarnings.noShapePoint(ShapeSearch.Missing.PAST_BEST, target, COLD).kind())
        .isEqualTo(Warning.Kind.PAST_BEST_BEFORE_OVEN);
    assertThat(ProofWarnings.noShapePoint(ShapeSearch.Missing.PAST_TARGET, target, COLD).kind())
        .isEqualTo(Warning.Kind.PAST_TARGET_IN_COLD);
    assertThat(ProofWarnings.noShapePoint(ShapeSearch.Missing.PAST_TARGET, target, ROOM).kind())
        .isEqualTo(Warning.Kind.PAST_TARGET_IN_ROOM);
    assertThat(ProofWarnings.noShapePoint(ShapeSearch.Missing.OUT_OF_REACH, target, ROOM).kind())
        .isEqualTo(Warning.Kind.NOT_REACHED);
  }

  /** Rye has no gluten to keep gas, and a tin holds the loaf: both are pressed firmly. */
  @Test
  void formsAndHandling() {
    assertThat(Shaping.usual(FlourClass.WHITE.flour(), PieceForm.ROUND)).isEqualTo(Shaping.GENTLE);
    assertThat(Shaping.usual(FlourClass.WHITE.flour(), PieceForm.TIN)).isEqualTo(Shaping.FIRM);
    assertThat(Shaping.usual(FlourClass.RYE.flour(), PieceForm.ROUND)).isEqualTo(Shaping.FIRM);
    assertThat(Shaping.KNOCKED_BACK.key()).isEqualTo("knocked-back");
    assertThat(PieceForm.standard())
        .extracting(PieceForm::key)
        .containsExactly("round", "oval", "tin", "baguette", "tub");
  }
}
