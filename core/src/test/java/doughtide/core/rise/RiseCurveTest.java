package doughtide.core.rise;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import doughtide.core.dough.DoughFormula;
import doughtide.core.quantity.Rise;
import doughtide.core.quantity.Temperature;
import doughtide.core.thermal.TemperatureTrace;
import java.util.List;
import org.junit.jupiter.api.Test;

/** What one run tells, by what its figures must be to each other. */
class RiseCurveTest {
  private static final DoughFormula FORMULA = DoughFormula.builder().build();
  private final RiseCurve curve = run(25, 40);

  private static RiseCurve run(double celsius, double hours) {
    return RiseModel.of(FORMULA, DoughTemperature.steady(Temperature.ofCelsius(celsius)))
        .run(hours);
  }

  private static double height(RiseCurve curve, double hours) {
    return 1 + curve.riseAt(hours).fraction();
  }

  /** In a steady warmth water, flour and air of the start keep their volume: gas alone is added. */
  @Test
  void whatIsNotGasKeepsItsVolume() {
    double rest = 1 - curve.gasShareAt(0);
    for (double hours : new double[] {2, 5, 9, 20, 40}) {
      assertThat((1 - curve.gasShareAt(hours)) * height(curve, hours))
          .isCloseTo(rest, within(1e-9));
    }
    assertThat(curve.gasShareAt(0)).isBetween(Unknowns.USUAL_STARTING_AIR, 0.2);
    assertThat(curve.startHours()).isZero();
    assertThat(curve.endHours()).isEqualTo(40);
    assertThat(curve.riseAt(0).fraction()).isZero();
  }

  @Test
  void microbesGrowToARipePopulationAndSour() {
    double start = FORMULA.prefermentedFlour();
    assertThat(curve.yeastAt(0)).isCloseTo(start, within(1e-9));
    assertThat(curve.bacteriaAt(0)).isCloseTo(start, within(1e-9));
    assertThat(curve.yeastAt(40)).isBetween(0.9, 1.0);
    assertThat(curve.bacteriaAt(40)).isBetween(curve.bacteriaAt(10), 1.0);
    assertThat(curve.acidMolAt(20)).isGreaterThan(curve.acidMolAt(5));
    assertThat(curve.phAt(20)).isLessThan(curve.phAt(5));
    SeedState seed = curve.seedAt(8);
    assertThat(seed.yeast()).isEqualTo(curve.yeastAt(8));
    assertThat(seed.bacteria()).isEqualTo(curve.bacteriaAt(8));
    assertThat(seed.acidMol()).isEqualTo(curve.acidMolAt(8));
    assertThat(seed.gasMol()).isEqualTo(curve.gasAt(8).dissolvedMol());
  }

  /** Ripe and fallen are 5 % under the greatest height; weak is a strength of 0.4. */
  @Test
  void theHoursAreThoseAtWhichTheCurveSaysSo() {
    double peak = curve.hoursToPeak().orElseThrow();
    double ripe = curve.hoursToRipe().orElseThrow();
    double fallen = curve.hoursToFallen().orElseThrow();
    double weak = curve.hoursToWeak().orElseThrow();

    assertThat(height(curve, ripe)).isCloseTo(0.95 * height(curve, peak), within(1e-4));
    assertThat(height(curve, fallen)).isCloseTo(0.95 * height(curve, peak), within(1e-4));
    assertThat(ripe).isLessThan(peak);
    assertThat(fallen).isGreaterThan(peak);
    assertThat(curve.strengthAt(0)).isEqualTo(1);
    assertThat(curve.strengthAt(weak)).isCloseTo(0.4, within(1e-4));
    assertThat(curve.hoursToOver()).hasValue(Math.min(weak, fallen));
    assertThat(curve.riseAt(peak + 0.5).fraction()).isLessThan(curve.riseAt(peak).fraction());
    assertThat(curve.riseAt(peak - 0.5).fraction()).isLessThan(curve.riseAt(peak).fraction());
  }

  @Test
  void whatLiesBeyondTheRunIsNotTold() {
    RiseCurve morning = run(25, 4);

    assertThat(morning.hoursToPeak()).isEmpty();
    assertThat(morning.hoursToRipe()).isEmpty();
    assertThat(morning.hoursToFallen()).isEmpty();
    assertThat(morning.hoursToWeak()).isEmpty();
    assertThat(morning.hoursToOver()).isEmpty();
    assertThat(morning.hoursToRise(Rise.ofPercent(300))).isEmpty();
    assertThat(morning.hoursToRise(new Rise(0))).hasValue(0);
    double weak = curve.hoursToWeak().orElseThrow();
    RiseCurve some = run(25, weak + 0.01);
    assertThat(some.hoursToWeak().orElseThrow()).isCloseTo(weak, within(1e-3));
    assertThat(some.hoursToOver()).isPresent();
    assertThatThrownBy(() -> morning.riseAt(4.01)).hasMessageContaining("hour 4.01 h");
    assertThatThrownBy(() -> morning.yeastAt(-0.01)).hasMessageContaining("hour -0.01 h");
    assertThat(morning.toString()).matches("rise from 0 to 4 h, in the end [0-9.]+ %");
  }

  /** Put into the cold a dough shrinks, so that the height just before is reached there alone. */
  @Test
  void aHeightBeforeASuddenColdIsFound() {
    DoughTemperature sudden =
        DoughTemperature.following(
            TemperatureTrace.steps(
                List.of(
                    new TemperatureTrace.Step(0, Temperature.ofCelsius(30)),
                    new TemperatureTrace.Step(4, Temperature.ofCelsius(4)))));
    RiseCurve shrinks = RiseModel.of(FORMULA, sudden).run(8);
    double before = shrinks.riseAt(3.99999).fraction();

    assertThat(shrinks.riseAt(4.01).fraction()).isLessThan(before - 0.02);
    assertThat(shrinks.hoursToRise(new Rise(before - 0.001)).orElseThrow()).isBetween(3.9, 4.0);
  }

  @Test
  void gasIsDissolvedOrInTheCellsOrLost() {
    for (double hours : new double[] {0, 6, 12, 30}) {
      GasBalance gas = curve.gasAt(hours);
      assertThat(gas.dissolvedMol() + gas.inCellsMol() + gas.lostMol())
          .isCloseTo(gas.madeMol(), within(1e-12));
      assertThat(gas.dissolvedMol()).isGreaterThan(0);
    }
    assertThat(curve.gasAt(30).lostMol()).isGreaterThan(curve.gasAt(6).lostMol() + 0.1);
  }
}
