package doughtide.core.gas;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.Random;
import org.apache.commons.math3.analysis.UnivariateFunction;
import org.apache.commons.math3.analysis.interpolation.SplineInterpolator;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class GasTest {
  @ParameterizedTest
  @CsvSource({"0, 7.430e-4", "5, 6.240e-4", "20, 3.904e-4", "25, 3.400e-4", "40, 2.375e-4"})
  void solubilityPassesThroughItsTable(double celsius, double henry) {
    assertThat(CarbonDioxide.henryMolPerM3Pa(celsius)).isCloseTo(henry, within(1e-12));
  }

  /** Ours is made without commons-math3, but to the same numbers. */
  @Test
  void solubilityIsTheNaturalSplineOfCommonsMath() {
    double[] celsius = {0, 5, 10, 15, 20, 25, 30, 35, 40};
    double[] logarithm = new double[celsius.length];
    for (int i = 0; i < celsius.length; i++) {
      logarithm[i] = Math.log(CarbonDioxide.henryMolPerM3Pa(celsius[i]));
    }
    UnivariateFunction theirs = new SplineInterpolator().interpolate(celsius, logarithm);
    for (double at = 0; at <= 40; at += 0.1) {
      double expected = Math.exp(theirs.value(at));
      assertThat(CarbonDioxide.henryMolPerM3Pa(at)).isCloseTo(expected, within(1e-14));
    }
  }

  @Test
  void coldWaterTakesMoreAndTheCurveIsSmooth() {
    double before = CarbonDioxide.henryMolPerM3Pa(-2);
    for (double celsius = -1.5; celsius <= 45; celsius += 0.5) {
      double now = CarbonDioxide.henryMolPerM3Pa(celsius);
      assertThat(now).isLessThan(before).isGreaterThan(0.97 * before);
      before = now;
    }
  }

  @Test
  void vapourPressureOfWater() {
    // 2339 Pa at 20 °C and 611.2 Pa at 0 °C: steam tables, from memory
    assertThat(CarbonDioxide.waterVapourPa(20)).isCloseTo(2339, within(10.0));
    assertThat(CarbonDioxide.waterVapourPa(0)).isCloseTo(611.2, within(2.5));
  }

  @Test
  void saltLowersSolubility() {
    assertThat(CarbonDioxide.saltFactor(0)).isEqualTo(1);
    assertThat(CarbonDioxide.saltFactor(0.02 / 0.84)).isCloseTo(0.911, within(0.001));
  }

  @ParameterizedTest
  @CsvSource({"1", "2", "3", "4"})
  void sharedGasObeysBothLaws(long seed) {
    Random random = new Random(seed);
    for (int i = 0; i < 1000; i++) {
      double free = Math.pow(10, -8 + 8 * random.nextDouble());
      double air = Math.pow(10, -4 + 3 * random.nextDouble());
      double capacity = 0.01 + 0.1 * random.nextDouble();
      double cells = GasCells.inCellsMol(free, air, capacity);
      double dissolved = capacity * cells / (cells + air);

      assertThat(cells).as("seed %d", seed).isBetween(0.0, free);
      assertThat(cells + dissolved).as("seed %d", seed).isCloseTo(free, within(1e-12));
    }
  }

  @Test
  void noGasMeansNoneInTheCells() {
    assertThat(GasCells.inCellsMol(0, 0.003, 0.03)).isZero();
  }

  @Test
  void moistGasTakesMoreRoomWarmAndHigh() {
    double atSea = GasCells.litresPerMol(25, 101_325);

    assertThat(atSea).isCloseTo(24.465 * 101_325 / (101_325 - 3169), within(0.01));
    assertThat(GasCells.litresPerMol(30, 101_325)).isGreaterThan(atSea);
    assertThat(GasCells.litresPerMol(25, 85_000)).isGreaterThan(atSea);
  }
}
