package doughtide.core.forecast;

import static org.assertj.core.api.Assertions.assertThat;

import doughtide.core.dough.DoughFormula;
import doughtide.core.dough.Starter;
import doughtide.core.dough.StarterCondition;
import doughtide.core.dough.StarterShare;
import doughtide.core.quantity.Share;
import doughtide.core.quantity.Temperature;
import doughtide.core.rise.DoughTemperature;
import doughtide.core.thermal.TemperatureTrace;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

class WarningsTest {
  private static List<Warning> at(double celsius) {
    return TemperatureWarnings.of(DoughTemperature.steady(Temperature.ofCelsius(celsius)), 10);
  }

  private static List<Warning> with(double prefermentedPercent, double saltPercent) {
    return DoughWarnings.of(
        DoughFormula.builder()
            .starterShare(StarterShare.prefermented(Share.ofPercent(prefermentedPercent)))
            .salt(Share.ofPercent(saltPercent))
            .build());
  }

  @ParameterizedTest
  @CsvSource({
    "35, OUTSIDE_GROWTH, outside the growth of sourdough yeast",
    "40.04, OUTSIDE_GROWTH, At 40 °C",
    "0, FREEZING, At 0 °C the dough freezes",
    "-1.5, FREEZING, At -1.5 °C",
    "1.9, THIN_DATA, At 1.9 °C the window is wide: few measurements of rates exist below 2 °C.",
    "2, THIN_DATA, below 12 °C",
    "11.9, THIN_DATA, below 12 °C",
    "30.1, THIN_DATA, above 30 °C",
    "34.9, THIN_DATA, At 34.9 °C"
  })
  void temperaturesWithoutDataAreNamed(double celsius, Warning.Kind kind, String part) {
    assertThat(at(celsius))
        .singleElement()
        .satisfies(
            warning -> {
              assertThat(warning.kind()).isEqualTo(kind);
              assertThat(warning.text()).contains(part);
              assertThat(TemperatureWarnings.forbidsHours(warning))
                  .isEqualTo(kind != Warning.Kind.THIN_DATA);
            });
  }

  @ParameterizedTest
  @ValueSource(doubles = {12, 21, 30})
  void ordinaryTemperaturesAreNot(double celsius) {
    assertThat(at(celsius)).isEmpty();
  }

  @Test
  void doughThatGoesFromColdToWarmIsToldBoth() {
    DoughTemperature path =
        DoughTemperature.steady(Temperature.ofCelsius(8))
            .then(3, TemperatureTrace.steady(Temperature.ofCelsius(32)));

    assertThat(TemperatureWarnings.of(path, 10))
        .extracting(Warning::text)
        .satisfiesExactly(
            low -> assertThat(low).startsWith("At 8 °C").contains("below 12 °C"),
            high -> assertThat(high).startsWith("At 32 °C").contains("above 30 °C"));
  }

  @Test
  void unusualAmountsAreNamedWithTheirNumbers() {
    assertThat(with(36, 2))
        .extracting(Warning::text)
        .containsExactly(
            "36 % prefermented flour lies outside the usual 1 to 35 %; the hours are less certain.");
    assertThat(with(0.9, 2)).extracting(Warning::text).first().asString().startsWith("0.9 %");
    assertThat(with(10, 3.1))
        .extracting(Warning::text)
        .containsExactly("3.1 % salt lies outside the usual 0 to 3 %; the hours are less certain.");
    assertThat(with(36, 3.1)).extracting(Warning::kind).containsOnly(Warning.Kind.UNUSUAL);
    assertThat(with(1.1, 3)).isEmpty();
    assertThat(with(34.9, 0)).isEmpty();
  }

  @Test
  void starterThatIsNotRipeIsNamed() {
    for (StarterCondition condition : StarterCondition.values()) {
      DoughFormula formula = DoughFormula.builder().starter(Starter.ripe().in(condition)).build();
      assertThat(DoughWarnings.of(formula))
          .as(condition.name())
          .hasSize(condition == StarterCondition.RIPE ? 0 : 1)
          .allSatisfy(w -> assertThat(w.kind()).isEqualTo(Warning.Kind.STARTER));
    }
  }
}
