package doughtide.core.quantity;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

class ChecksTest {

  @ParameterizedTest
  @CsvSource({
    "0,0",
    "-0.00001,0",
    "25,25",
    "1200,1200",
    "24.50,24.5",
    "-2.25,-2.25",
    "0.12345,0.1235",
    "0.1,0.1",
    "999999999,999999999",
    "1e12,1.00e+12",
    "NaN,NaN",
    "Infinity,Infinity"
  })
  void numbersAreWrittenAsPeopleWriteThem(double value, String text) {
    assertThat(Checks.plain(value)).isEqualTo(text);
  }

  @ParameterizedTest
  @ValueSource(doubles = {-2, 0, 45})
  void theEndsOfARangeBelongToIt(double value) {
    assertThat(Checks.inRange("dough temperature", value, -2, 45, "°C")).isEqualTo(value);
  }

  @Test
  void aLostDecimalPointIsGuessed() {
    assertThatThrownBy(() -> Checks.inRange("dough temperature", 240, -2, 45, "°C"))
        .isInstanceOf(InputException.class)
        .hasMessage("dough temperature 240 °C is outside -2…45 °C (did you mean 24 °C?)");
  }

  @ParameterizedTest
  @ValueSource(doubles = {Double.NaN, Double.POSITIVE_INFINITY, Double.NEGATIVE_INFINITY, 46, -3})
  void whatLiesOutsideIsRefused(double value) {
    assertThatThrownBy(() -> Checks.inRange("dough temperature", value, -2, 45, "°C"))
        .isInstanceOf(InputException.class)
        .hasMessageContaining("is outside -2…45 °C");
  }
}
