package doughtide.core.loaf;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import doughtide.core.dough.DoughFormula;
import doughtide.core.quantity.Temperature;
import doughtide.core.rise.DoughTemperature;
import doughtide.core.rise.PieceCurve;
import doughtide.core.rise.RiseCurve;
import doughtide.core.rise.RiseModel;
import java.util.List;
import org.junit.jupiter.api.Test;

class ColdFitTest {
  private static final DoughFormula FORMULA = DoughFormula.builder().build();
  private static final Proof PROOF = Proof.inCold(Temperature.ofCelsius(4), 12);
  private static final Cold DIAL = PROOF.coldPlace().orElseThrow();
  private static final LoafModel LOAF = LoafModel.of(FORMULA, PROOF, LoafSettings.FULL);
  private static final RiseCurve BULK =
      RiseModel.of(FORMULA, DoughTemperature.steady(Temperature.ofCelsius(24))).run(8);

  private static Cold after(LoafScores truth) {
    PieceCurve piece = LOAF.run(BULK, 5, truth, 12);
    return ColdFit.of(
        LOAF,
        DIAL,
        BULK,
        5,
        0,
        List.of(
            new ColdFit.Reading(3, piece.coreCelsiusAt(8)),
            new ColdFit.Reading(10, piece.coreCelsiusAt(15))));
  }

  @Test
  void aProbeTellsAWarmRefrigeratorFromACoolOne() {
    Cold warm = after(new LoafScores(1, 0, 0.5));
    Cold cool = after(new LoafScores(-1, 0, 0.5));

    assertThat(warm.offsetCelsius()).isCloseTo(2.5, within(0.8));
    assertThat(cool.offsetCelsius()).isCloseTo(-2.5, within(0.8));
    assertThat(warm.deviationCelsius()).isBetween(0.05, DIAL.deviationCelsius() / 2);
  }

  @Test
  void aProbeTellsMovedAirFromStillAir() {
    Cold quick = after(new LoafScores(0, 1.5, 0.5));
    Cold slow = after(new LoafScores(0, -1.5, 0.5));

    assertThat(quick.filmLogFactor()).isGreaterThan(0.1);
    assertThat(slow.filmLogFactor()).isLessThan(-0.1);
    assertThat(quick.filmLogDeviation()).isBetween(0.01, DIAL.filmLogDeviation());
  }

  @Test
  void readingsAreNeededAndChecked() {
    assertThatThrownBy(() -> ColdFit.of(LOAF, DIAL, BULK, 5, 0, List.of()))
        .hasMessageContaining("a probe needs readings");
    assertThatThrownBy(() -> new ColdFit.Reading(3, 99)).hasMessageContaining("outside");
  }
}
