package doughtide.core.thermal;

import static doughtide.core.thermal.ReferenceTable.number;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import doughtide.core.quantity.Mass;
import doughtide.core.quantity.Share;
import doughtide.core.quantity.Temperature;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/**
 * Printed examples of the factor rule, and sums of the heat balance; the source stands in each row
 * of the files.
 */
class WaterTemperaturePublishedTest {
  /** Printed as whole degrees whose arithmetic is exact. */
  private static final double EXACT = 1e-9;

  static List<Map<String, String>> rules() {
    return ReferenceTable.rows("water-temperature.csv");
  }

  static List<Map<String, String>> balances() {
    return ReferenceTable.rows("water-balance.csv");
  }

  @Test
  void readsEveryRowAndEveryRowHasASource() {
    assertThat(rules()).hasSize(12).allSatisfy(row -> assertThat(row.get("source")).isNotBlank());
    assertThat(balances()).hasSize(3);
  }

  @ParameterizedTest
  @MethodSource("rules")
  void givesThePrintedAnswer(Map<String, String> row) {
    double answer = row.get("direction").equals("dough") ? dough(row) : water(row);
    String printed = row.get("direction").equals("dough") ? "wanted_or_base" : "water";
    assertThat(answer).as(row.toString()).isCloseTo(number(row, printed), within(EXACT));
  }

  private static double water(Map<String, String> row) {
    if (row.get("rule").equals("base")) {
      return BaseTemperature.ofCelsius(number(row, "wanted_or_base"))
          .waterCelsius(temperature(row, "room"), temperature(row, "flour"));
    }
    Temperature wanted = temperature(row, "wanted_or_base");
    return fahrenheit(row) ? rule(row).waterFahrenheit(wanted) : rule(row).waterCelsius(wanted);
  }

  private static double dough(Map<String, String> row) {
    double celsius = rule(row).doughCelsius(temperature(row, "water"));
    return fahrenheit(row) ? celsius * 1.8 + 32 : celsius;
  }

  private static FactorRule rule(Map<String, String> row) {
    FactorRule rule = FactorRule.of(temperature(row, "flour"), temperature(row, "room"));
    if (!row.get("starter").isEmpty()) {
      rule = rule.starter(temperature(row, "starter"));
    }
    double degrees = number(row, "mixing");
    Warming warming =
        fahrenheit(row) ? Warming.ofFahrenheitDegrees(degrees) : Warming.ofCelsiusDegrees(degrees);
    return row.get("rule").equals("friction-once")
        ? rule.friction(warming)
        : rule.warmingFirst(warming);
  }

  private static Temperature temperature(Map<String, String> row, String column) {
    double value = number(row, column);
    return fahrenheit(row) ? Temperature.ofFahrenheit(value) : Temperature.ofCelsius(value);
  }

  private static boolean fahrenheit(Map<String, String> row) {
    return row.get("unit").equals("F");
  }

  @ParameterizedTest
  @MethodSource("balances")
  void givesTheSumsOfTheHeatBalance(Map<String, String> row) {
    WaterTemperature balance = balance(row);
    Temperature wanted = Temperature.ofCelsius(number(row, "wanted_C"));
    double water = balance.waterFor(wanted).waterCelsius();
    // Printed to three decimals, so half a thousandth either way.
    assertThat(water).as(row.toString()).isCloseTo(number(row, "water_C"), within(0.0005));
    assertThat(balance.doughCelsius(Temperature.ofCelsius(water)))
        .isCloseTo(wanted.celsius(), within(1e-9));
  }

  private static WaterTemperature balance(Map<String, String> row) {
    WaterTemperature balance =
        WaterTemperature.of(
                Mass.ofGrams(number(row, "flour_g")),
                Temperature.ofCelsius(number(row, "flour_C")),
                Mass.ofGrams(number(row, "water_g")))
            .heatOfWetting(number(row, "wetting_kJ_kg") * 1000)
            .mixing(Warming.ofCelsiusDegrees(number(row, "mixing_K")));
    if (row.get("starter_g").isEmpty()) {
      return balance;
    }
    return balance.starter(
        Mass.ofGrams(number(row, "starter_g")),
        Share.ofPercent(100),
        Temperature.ofCelsius(number(row, "starter_C")));
  }

  /**
   * Source: Gisslen, Professional Baking (from memory): 16 lb of water from 65 to 58 °F take 0.63
   * lb of ice.
   */
  @Test
  void iceForSixteenPoundsOfWater() {
    double tap = Temperature.ofFahrenheit(65).celsius();
    double wanted = Temperature.ofFahrenheit(58).celsius();
    assertThat(16 * Ice.share(tap, wanted, 4180)).isCloseTo(0.63, within(0.005));
  }

  /**
   * Sources: 105 kJ/kg dry, Winkler &amp; Geddes 1931, Cereal Chem 8:455, and Daniels et al. 1920,
   * J Ind Eng Chem 12:760 (both from memory); 15.1 kJ/kg at 11–12 %, a trade dictionary; about 10
   * at 14 % by the exponential between.
   */
  @Test
  void heatOfWettingFallsWithTheMoistureOfTheFlour() {
    assertThat(WaterTemperature.heatOfWettingJPerKg(Share.ofPercent(0)))
        .isCloseTo(105_000, within(1.0));
    assertThat(WaterTemperature.heatOfWettingJPerKg(Share.ofPercent(11.5)))
        .isCloseTo(15_100, within(1.0));
    assertThat(WaterTemperature.heatOfWettingJPerKg(Share.ofPercent(14)))
        .isCloseTo(10_000, within(300.0));
  }
}
