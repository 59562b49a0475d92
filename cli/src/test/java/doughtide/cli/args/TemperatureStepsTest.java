package doughtide.cli.args;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class TemperatureStepsTest {

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "25C | 25 °C (77 °F)",
        "25C,3h:22C | 25 °C (77 °F), 22 °C (72 °F) from hour 3",
        "25 °C, 3h: 22 °C | 25 °C (77 °F), 22 °C (72 °F) from hour 3",
        "24,5C,1,5h:22,5C | 24.5 °C (76 °F), 22.5 °C (73 °F) from hour 1.5",
        "77F;90min:20C;12h:4C | 25 °C (77 °F), 20 °C (68 °F) from hour 1.5, 4 °C (39 °F) from hour"
            + " 12",
      })
  void areReadWithPointOrComma(String text, String words) {
    assertThat(TemperatureSteps.parse("--dough-temp", text).words()).isEqualTo(words);
  }

  @Test
  void becomeTheDoughsOwnTemperature() {
    TemperatureSteps steps = TemperatureSteps.parse("--dough-temp", "25C,3h:22C");
    assertThat(steps.trace().celsius(2.9)).isEqualTo(25);
    assertThat(steps.trace().celsius(3)).isEqualTo(22);
    assertThat(steps.dough("--dough-temp").startCelsius()).isEqualTo(25);
    assertThat(steps.dough("--dough-temp").lowestCelsius(10)).isEqualTo(22);
    assertThat(TemperatureSteps.isSeveral("25C,3h:22C")).isTrue();
    assertThat(TemperatureSteps.isSeveral("24,5C")).isFalse();
  }
}
