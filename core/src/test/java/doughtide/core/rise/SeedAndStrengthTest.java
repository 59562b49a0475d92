package doughtide.core.rise;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import doughtide.core.dough.DoughFormula;
import doughtide.core.dough.DoughProperties;
import doughtide.core.dough.FlourClass;
import doughtide.core.dough.Starter;
import doughtide.core.dough.StarterCondition;
import doughtide.core.dough.StarterShare;
import doughtide.core.gas.CarbonDioxide;
import doughtide.core.gas.GasCells;
import doughtide.core.quantity.Altitude;
import doughtide.core.quantity.InputException;
import doughtide.core.quantity.Share;
import doughtide.core.quantity.Temperature;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** The gas that a seed brings, what the place does to it, and how strength is lost. */
class SeedAndStrengthTest {
  private static final double SEA_LEVEL_PA = 101_325;

  private static DoughFormula formula(double prefermentedPercent, StarterCondition condition) {
    return DoughFormula.builder()
        .starter(Starter.ripe().in(condition))
        .starterShare(StarterShare.prefermented(Share.ofPercent(prefermentedPercent)))
        .hydration(Share.ofPercent(100))
        .build();
  }

  private static RiseCurve run(DoughFormula formula, double celsius, double hours) {
    return RiseModel.of(formula, DoughTemperature.steady(Temperature.ofCelsius(celsius)))
        .run(hours);
  }

  /** p · (hydration 1 + moisture 0.14) litres of water, saturated at the dry pressure. */
  @ParameterizedTest
  @CsvSource({
    "RIPE, 25, 25, 1",
    "PAST_BEST, 30, 30, 1",
    "YOUNG, 25, 25, 0.5",
    "FROM_COLD, 24, 5, 1"
  })
  void theSeedBringsItsGas(
      StarterCondition condition, double dough, double seed, double saturation) {
    RiseCurve curve = run(formula(30, condition), dough, 1);
    double dryPa = SEA_LEVEL_PA - CarbonDioxide.waterVapourPa(seed);
    double mol = 0.3 * 1.14 / 1000 * CarbonDioxide.henryMolPerM3Pa(seed) * dryPa;

    assertThat(curve.gasAt(0).madeMol()).isCloseTo(saturation * mol, within(1e-6));
    assertThat(curve.riseAt(0).fraction()).isCloseTo(0, within(1e-12));
    assertThat(curve.gasAt(0).inCellsMol()).isPositive();
    assertThat(curve.gasAt(0).lostMol()).isZero();
  }

  /** Thinner air holds less gas in the water: K = H · water · (P − vapour), K·x is dissolved. */
  @ParameterizedTest
  @ValueSource(doubles = {0, 1600, 3000})
  void waterHoldsGasByThePressureOfThePlace(double metres) {
    Altitude place = Altitude.ofMetres(metres);
    DoughFormula dough =
        formula(20, StarterCondition.RIPE).toBuilder()
            .altitude(place)
            .salt(Share.ofPercent(0))
            .build();
    double litresPerMol = GasCells.litresPerMol(25, place.pressurePa());
    double airLitres = DoughProperties.of(dough).litresPerKgFlour(25) * 0.06 / 0.94;
    double airMol = airLitres / litresPerMol;
    double dryPa = place.pressurePa() - CarbonDioxide.waterVapourPa(25);
    double capacity = CarbonDioxide.henryMolPerM3Pa(25) * 1.14 / 1000 * dryPa;
    RiseCurve curve = run(dough, 25, 4);
    for (double hours : new double[] {0, 2, 4}) {
      GasBalance gas = curve.gasAt(hours);
      double share = gas.inCellsMol() / (gas.inCellsMol() + airMol);
      assertThat(gas.dissolvedMol()).isCloseTo(capacity * share, within(1e-5));
    }
  }

  /** 0.045 per h far from acid; at pH 3.6 two and a half times as much: 1.5 / (1 + e^−3) more. */
  @Test
  void strengthIsLostFasterInAcid() {
    RiseCurve curve = run(formula(0.2, StarterCondition.RIPE), 25, 96);
    double early = Math.log(curve.strengthAt(0) / curve.strengthAt(0.1)) / 0.1;
    double late = Math.log(curve.strengthAt(95) / curve.strengthAt(96));

    assertThat(curve.phAt(0)).isGreaterThan(5.9);
    assertThat(early).isCloseTo(0.045, within(1e-4));
    double ph = curve.phAt(95.5);
    assertThat(ph).isLessThan(3.8);
    assertThat(late / early)
        .isCloseTo(1 + 1.5 / (1 + Math.exp((ph - 4.2) * 5)), within(5e-3))
        .isGreaterThan(2.2);
  }

  /** 60 kJ/mol from 25 to 35 °C, and wholemeal's ash of 1.6 %. */
  @Test
  void strengthIsLostFasterInTheWarmAndWithAsh() {
    DoughFormula white = formula(1, StarterCondition.RIPE);
    DoughFormula whole = white.toBuilder().flour(FlourClass.WHOLEMEAL_WHEAT.flour()).build();
    double usual = Math.log(run(white, 25, 1).strengthAt(0.01));
    double warm = Math.log(run(white, 35, 1).strengthAt(0.01));
    double brown = Math.log(run(whole, 25, 1).strengthAt(0.01));

    assertThat(warm / usual)
        .isCloseTo(Math.exp(60 / 8.314462618e-3 * (1 / 298.15 - 1 / 308.15)), within(0.02));
    assertThat(brown / usual).isCloseTo(1 + 60 * 0.011, within(0.03));
  }

  @Test
  void ratesAreFoundByTheirKey() {
    RiseModel model =
        RiseModel.of(
            DoughFormula.builder().build(), DoughTemperature.steady(Temperature.ofCelsius(33)));
    double slow = model.run(12).riseAt(4).fraction();
    Unknowns fast = Unknowns.typical().withCurves("cerevisiae/square-root");

    assertThat(model.with(fast).run(12).riseAt(4).fraction()).isGreaterThan(1.2 * slow);
    assertThatThrownBy(() -> model.with(Unknowns.typical().withCurves("mine")).run(1))
        .isInstanceOf(InputException.class)
        .hasMessageStartingWith("this model has no rate curves 'mine'");
  }
}
