package doughtide.core.kinetics;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import doughtide.core.dough.FlourClass;
import doughtide.core.quantity.InputException;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;

class KineticsTest {
  @ParameterizedTest
  @EnumSource(RateForm.class)
  void everyCurveIsOneAt25AndNeverNegative(RateForm form) {
    for (RateCurve curve :
        List.of(form.yeast(YeastKind.HUMILIS), form.yeast(YeastKind.CEREVISIAE), form.bacteria())) {
      assertThat(curve.rate(25)).isCloseTo(1, within(1e-12));
      for (double celsius = -2; celsius <= 60; celsius += 0.25) {
        assertThat(curve.rate(celsius)).isNotNegative().isFinite();
      }
      assertThat(curve.lowestCelsius()).isLessThan(curve.highestCelsius());
    }
  }

  @Test
  void cardinalFormHasItsCardinalNumbers() {
    RateCurve curve = RateCurve.cardinal(5, 28, 36, 5, 36);

    assertThat(curve.rate(5)).isZero();
    assertThat(curve.rate(36)).isZero();
    assertThat(curve.rate(28)).isGreaterThan(curve.rate(27.9)).isGreaterThan(curve.rate(28.1));
  }

  @Test
  void squareRootFormIsASquareInTheCold() {
    RateCurve curve = RateCurve.squareRoot(4, 36, 2, 4, 36);

    assertThat(curve.rate(14) / curve.rate(9)).isCloseTo(4, within(1e-9));
    assertThat(curve.rate(3)).isZero();
    assertThat(curve.rate(37)).isZero();
  }

  @Test
  void schoolfieldIsHalfInactiveWhereItSays() {
    RateCurve active = RateCurve.schoolfield(80, 500, 60, 0, 60);
    RateCurve inactivated = RateCurve.schoolfield(80, 500, 31, 0, 60);
    double arrhenius = active.rate(31) / active.rate(10);
    double both = inactivated.rate(31) / inactivated.rate(10);

    assertThat(both / arrhenius).isCloseTo(0.5, within(1e-3));
  }

  @Test
  void powerExponentialHasItsOptimumAtPowerOverDecay() {
    RateCurve curve = RateCurve.powerExponential(3, 0.3, 37, 2, 35);

    assertThat(curve.rate(27)).isGreaterThan(curve.rate(26.9)).isGreaterThan(curve.rate(27.1));
    assertThat(curve.rate(37)).isZero();
  }

  @Test
  void constantsThatMakeNoSenseAreRefused() {
    assertThatThrownBy(() -> RateCurve.cardinal(5, 28, 20, 5, 36))
        .hasMessageStartingWith("maximum temperature 20 °C is outside 28…60 °C");
    assertThatThrownBy(() -> RateCurve.squareRoot(4, 20, 0.2, 4, 36))
        .isInstanceOf(InputException.class);
    assertThatThrownBy(() -> RateCurve.schoolfield(Double.NaN, 500, 31, 0, 60))
        .isInstanceOf(InputException.class);
    assertThatThrownBy(() -> RateCurve.powerExponential(0, 0.3, 37, 2, 35))
        .isInstanceOf(InputException.class);
  }

  @Test
  void lagDelaysAndTheCeilingHolds() {
    BaranyiRoberts growth = new BaranyiRoberts(0.05, 0.5, 1.0);

    assertThat(growth.populationAt(0)).isCloseTo(0.05, within(1e-12));
    assertThat(growth.populationAt(200)).isCloseTo(1, within(1e-9));
    assertThat(growth.populationAt(3))
        .isLessThan(new BaranyiRoberts(0.05, 0.5, 0.1).populationAt(3));
    assertThat(growth.startingReadiness()).isCloseTo(1 / (Math.E - 1), within(1e-12));
  }

  @Test
  void lagIsWorkOverRateAndThenGrowthIsExponential() {
    double start = 1e-12;
    BaranyiRoberts growth = new BaranyiRoberts(start, 0.5, 1.5);

    assertThat(Math.log(growth.populationAt(30) / start))
        .isCloseTo(0.5 * (30 - 1.5 / 0.5), within(1e-5));
  }

  @Test
  void acidAndPhAreInversesBetweenTheNodesOfTheTable() {
    for (double buffer : new double[] {0.005, 0.02, 0.2}) {
      AcidBuffer flour = AcidBuffer.of(buffer);
      for (double ph = 3.0007; ph < 6; ph += 0.0073) {
        assertThat(flour.phAt(flour.acidAt(ph))).isCloseTo(ph, within(1e-5));
      }
    }
  }

  @Test
  void moreAcidIsNeverLessSour() {
    AcidBuffer white = AcidBuffer.of(FlourClass.WHITE.flour());
    double before = white.phAt(0);
    for (double acid = 1e-5; acid < 0.8; acid *= 1.01) {
      double now = white.phAt(acid);
      assertThat(now).isLessThanOrEqualTo(before).isBetween(3.0, AcidBuffer.UNFERMENTED_PH);
      before = now;
    }
    assertThat(before).isEqualTo(3.0);
  }

  @Test
  void acidAndPhAreInverses() {
    AcidBuffer white = AcidBuffer.of(FlourClass.WHITE.flour());

    for (double ph = 3.05; ph < 6; ph += 0.05) {
      assertThat(white.phAt(white.acidAt(ph))).isCloseTo(ph, within(1e-5));
    }
    assertThat(white.phAt(0)).isEqualTo(AcidBuffer.UNFERMENTED_PH);
    assertThat(white.phAt(10)).isEqualTo(3.0);
    assertThat(AcidBuffer.of(FlourClass.WHOLEMEAL_WHEAT.flour()).bufferMolPerKgPh())
        .isGreaterThan(white.bufferMolPerKgPh());
    assertThatThrownBy(() -> AcidBuffer.of(0)).isInstanceOf(InputException.class);
  }

  @Test
  void aCurveWhoseDataBeginAboveTheirEndIsRefused() {
    assertThatThrownBy(() -> RateCurve.cardinal(0, 30, 40, 35, 5))
        .isInstanceOf(InputException.class)
        .hasMessage("highest temperature of the data 5 °C is outside 35…100 °C");
    assertThatThrownBy(() -> RateCurve.schoolfield(50, 300, 36, Double.NaN, 40))
        .isInstanceOf(InputException.class);
    assertThatThrownBy(() -> RateCurve.squareRoot(21, 20, 0.3, 5, 40))
        .isInstanceOf(InputException.class);
    assertThatThrownBy(() -> RateCurve.powerExponential(2, 0.3, 25, 5, 40))
        .isInstanceOf(InputException.class);
  }
}
