package doughtide.core.thermal;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import doughtide.core.dough.Additions;
import doughtide.core.dough.DoughFormula;
import doughtide.core.dough.FlourClass;
import doughtide.core.dough.Inclusion;
import doughtide.core.dough.Ingredients;
import doughtide.core.quantity.InputException;
import doughtide.core.quantity.Mass;
import doughtide.core.quantity.Share;
import doughtide.core.quantity.Temperature;
import java.util.List;
import org.junit.jupiter.api.Test;

class WaterTemperatureTest {
  private static Temperature celsius(double value) {
    return Temperature.ofCelsius(value);
  }

  private static WaterTemperature usual() {
    DoughFormula formula = DoughFormula.builder().build();
    return WaterTemperature.of(
            formula, formula.forFlour(Mass.ofGrams(1000)), celsius(21), celsius(24))
        .mixing(Warming.ofCelsiusDegrees(1.5));
  }

  @Test
  void theExampleOfTheClassWorks() {
    WaterTemperature balance =
        WaterTemperature.of(Mass.ofGrams(1000), celsius(20), Mass.ofGrams(700))
            .starter(Mass.ofGrams(200), Share.ofPercent(100), celsius(25))
            .mixing(Warming.ofCelsiusDegrees(1));
    assertThat(balance.waterFor(celsius(26)).waterCelsius()).isCloseTo(22.847, within(0.0005));
    FactorRule rule =
        FactorRule.of(Temperature.ofFahrenheit(65), Temperature.ofFahrenheit(65))
            .friction(Warming.ofFahrenheitDegrees(8));
    assertThat(rule.waterFahrenheit(Temperature.ofFahrenheit(75))).isCloseTo(87, within(1e-9));
  }

  @Test
  void iceAndTapHoldTheSameHeatAsTheWater() {
    WaterAnswer answer = usual().waterFor(celsius(20), celsius(18));
    Ice ice = answer.ice().orElseThrow();
    double water = ice.tapGrams() + ice.iceGrams();
    double heat = ice.tapGrams() * 4.18 * 18 - ice.iceGrams() * 334;
    assertThat(heat).isCloseTo(water * 4.18 * answer.waterCelsius(), within(1e-6));
    assertThat(answer.waterCelsius()).isLessThan(18);
    assertThat(ice.iceGrams()).isPositive();
  }

  @Test
  void saysWhatWaterBelowZeroMeans() {
    WaterAnswer answer = usual().mixing(Warming.ofCelsiusDegrees(20)).waterFor(celsius(20));
    assertThat(answer.waterCelsius()).isNegative();
    assertThat(answer.cautions()).containsExactly(WaterAnswer.Caution.BELOW_FREEZING);
  }

  @Test
  void noIceWhereTheTapIsColdEnough() {
    assertThat(usual().waterFor(celsius(26), celsius(10)).ice()).isEmpty();
  }

  @Test
  void evenIceHasItsLimit() {
    WaterTemperature hot =
        WaterTemperature.of(Mass.ofGrams(1000), celsius(40), Mass.ofGrams(300))
            .mixing(Warming.ofCelsiusDegrees(25));
    assertThatThrownBy(() -> hot.waterFor(celsius(5), celsius(20)))
        .isInstanceOf(InputException.class)
        .hasMessage(
            "a dough of 5 °C cannot be reached even if all water is ice: cool the flour or mix"
                + " less");
  }

  @Test
  void warnsAboveFortyFiveAndRefusesAboveBoiling() {
    WaterTemperature cold = WaterTemperature.of(Mass.ofGrams(1000), celsius(5), Mass.ofGrams(600));
    WaterAnswer answer = cold.waterFor(celsius(34));
    assertThat(answer.waterCelsius()).isGreaterThan(45);
    assertThat(answer.cautions()).containsExactly(WaterAnswer.Caution.HOT);
    assertThat(usual().waterFor(celsius(26)).cautions()).isEmpty();
    WaterTemperature frozen =
        WaterTemperature.of(Mass.ofGrams(1000), celsius(-18), Mass.ofGrams(300));
    assertThatThrownBy(() -> frozen.waterFor(celsius(45)))
        .isInstanceOf(InputException.class)
        .hasMessageContaining("at most 100 °C is possible");
  }

  @Test
  void whatIsNotKnownOfMixingMovesTheWaterMoreThanTheDough() {
    WaterAnswer sure = usual().waterFor(celsius(26));
    WaterAnswer byHand = usual().mixing(Mixing.BY_HAND).waterFor(celsius(26));
    WaterAnswer measured =
        usual().mixing(Mixing.measured(Warming.ofCelsiusDegrees(1.5))).waterFor(celsius(26));

    assertThat(sure.plusMinusKelvin()).isBetween(0.3, 1.0);
    assertThat(measured.plusMinusKelvin()).isBetween(sure.plusMinusKelvin(), 1.3);
    assertThat(byHand.plusMinusKelvin()).isBetween(1.5, 2.2);
    assertThat(usual().mixing(Mixing.BY_HAND).doughPlusMinusKelvin()).isBetween(1.0, 1.3);
    assertThat(byHand.waterCelsius()).isGreaterThan(sure.waterCelsius());
  }

  @Test
  void drierFlourNeedsColderWater() {
    DoughFormula sold = DoughFormula.builder().build();
    DoughFormula dried =
        sold.toBuilder().flour(sold.flour().withMoisture(Share.ofPercent(10))).build();
    double[] water = new double[2];
    for (DoughFormula formula : List.of(sold, dried)) {
      water[formula == sold ? 0 : 1] =
          WaterTemperature.of(formula, sold.forFlour(Mass.ofGrams(1000)), celsius(21), celsius(21))
              .waterFor(celsius(26))
              .waterCelsius();
    }
    double joule =
        WaterTemperature.heatOfWettingJPerKg(Share.ofPercent(10))
            - WaterTemperature.heatOfWettingJPerKg(Share.ofPercent(14));
    Ingredients weighed = sold.forFlour(Mass.ofGrams(1000));
    assertThat(water[0] - water[1])
        .isCloseTo(joule * weighed.flourGrams() / weighed.waterGrams() / 4180, within(0.02));
  }

  @Test
  void waterAndDoughAreInverse() {
    for (double wanted = 20; wanted <= 30; wanted += 1) {
      double water = usual().waterFor(celsius(wanted)).waterCelsius();
      assertThat(usual().doughCelsius(celsius(water))).isCloseTo(wanted, within(1e-9));
    }
  }

  @Test
  void warmingFromAMeasuredDoughIsFoundAgain() {
    double dough = usual().doughCelsius(celsius(25));
    assertThat(usual().mixingFrom(celsius(25), celsius(dough)).kelvin())
        .isCloseTo(1.5, within(1e-9));
    for (FactorRule rule :
        List.of(
            FactorRule.of(celsius(21), celsius(22)).friction(Warming.ofCelsiusDegrees(7)),
            FactorRule.of(celsius(21), celsius(22))
                .starter(celsius(24))
                .warmingFirst(Warming.ofCelsiusDegrees(2)))) {
      double made = rule.doughCelsius(celsius(27));
      double expected = rule.mixingKelvin() / (rule.factors() == 4 ? 4 : 1);
      assertThat(rule.warmingFrom(celsius(27), celsius(made)).kelvin())
          .isCloseTo(expected, within(1e-9));
      assertThat(rule.waterCelsius(celsius(made))).isCloseTo(27, within(1e-9));
    }
  }

  @Test
  void warmerIngredientsNeedColderWater() {
    double last = Double.POSITIVE_INFINITY;
    for (double flour = 5; flour <= 35; flour += 2) {
      WaterTemperature balance =
          WaterTemperature.of(Mass.ofGrams(1000), celsius(flour), Mass.ofGrams(650))
              .salt(Mass.ofGrams(20), celsius(flour));
      double water = balance.waterFor(celsius(25)).waterCelsius();
      assertThat(water).isLessThan(last);
      last = water;
    }
  }

  @Test
  void aColdBowlNeedsWarmerWaterAndTheSameBowlNone() {
    double without = usual().waterFor(celsius(26)).waterCelsius();
    Mass bowl = Mass.ofKilograms(1.5);
    double cold =
        usual().vessel(bowl, Material.STONEWARE, celsius(10)).waterFor(celsius(26)).waterCelsius();
    double same =
        usual()
            .mixing(Warming.NONE)
            .vessel(bowl, Material.STONEWARE, celsius(26))
            .waterFor(celsius(26))
            .waterCelsius();
    assertThat(cold).isGreaterThan(without + 3);
    assertThat(same)
        .isCloseTo(usual().mixing(Warming.NONE).waterFor(celsius(26)).waterCelsius(), within(1e-9));
  }

  @Test
  void compositionGivesMoistFlourMoreHeat() {
    HeatCapacities moist = HeatCapacities.ofComposition(FlourClass.WHITE.flour(), celsius(20));
    assertThat(moist.flourJPerKgK()).isBetween(1900.0, 2100.0);
    double published = usual().waterFor(celsius(26)).waterCelsius();
    double byComposition = usual().heatCapacities(moist).waterFor(celsius(26)).waterCelsius();
    assertThat(Math.abs(byComposition - published)).isBetween(0.05, 1.5);
  }

  @Test
  void termsAddUpToBothAnswers() {
    FactorRule rule =
        FactorRule.of(celsius(21), celsius(23))
            .starter(celsius(24))
            .warmingFirst(Warming.ofCelsiusDegrees(1.5));
    Inclusion seeds = new Inclusion("seeds", 0.1, 0.05);
    DoughFormula formula =
        DoughFormula.builder().additions(new Additions(List.of(seeds), List.of())).build();
    WaterTemperature balance =
        WaterTemperature.of(formula, formula.forFlour(Mass.ofGrams(1000)), celsius(20), celsius(24))
            .mixing(Warming.ofCelsiusDegrees(1))
            .vessel(Mass.ofGrams(800), Material.STEEL, celsius(19));
    Temperature wanted = celsius(26);
    List<WaterTerm> terms = balance.compare(rule, wanted);
    double byBalance = terms.stream().mapToDouble(WaterTerm::balanceKelvin).sum();
    double byRule = terms.stream().mapToDouble(WaterTerm::ruleKelvin).sum();
    double difference = terms.stream().mapToDouble(WaterTerm::differenceKelvin).sum();
    assertThat(26 + byBalance).isCloseTo(balance.waterFor(wanted).waterCelsius(), within(1e-9));
    assertThat(26 + byRule).isCloseTo(rule.waterCelsius(wanted), within(1e-9));
    assertThat(difference).isCloseTo(byRule - byBalance, within(1e-9));
    assertThat(terms).extracting(WaterTerm::kind).containsExactly(WaterTerm.Kind.values());
  }

  @Test
  void baseTemperatureIsTheSameInBothUnits() {
    BaseTemperature base = BaseTemperature.of(celsius(21), celsius(20), celsius(24));
    double sumFahrenheit =
        celsius(21).fahrenheit() + celsius(20).fahrenheit() + celsius(24).fahrenheit();
    assertThat(base.sumCelsius()).isEqualTo(65);
    assertThat(BaseTemperature.ofFahrenheit(sumFahrenheit).sumCelsius())
        .isCloseTo(65, within(1e-9));
    assertThat(base.waterCelsius(celsius(25), celsius(25))).isEqualTo(15);
  }

  @Test
  void refusesWhatCannotBeUsed() {
    assertThatThrownBy(() -> Warming.ofCelsiusDegrees(Double.NaN))
        .isInstanceOf(InputException.class);
    assertThatThrownBy(() -> usual().waterFor(celsius(70))).isInstanceOf(InputException.class);
    assertThatThrownBy(() -> usual().heatOfWetting(-1)).isInstanceOf(InputException.class);
    assertThatThrownBy(() -> BaseTemperature.ofCelsius(400)).isInstanceOf(InputException.class);
    assertThatThrownBy(() -> new HeatCapacities(0, 4180, 864)).isInstanceOf(InputException.class);
  }
}
