package doughtide.core.quantity;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

class QuantitiesTest {

  @ParameterizedTest
  @ValueSource(
      strings = {
        "25C", "25c", "25°C", "25 °C", "25\u00a0°C", "25\u202f°C", "25.0C", "25,0C", "+25C", "77F",
        "77 °F", "25℃", "77℉", "２５C", "٢٥C", "\"25C\"", "“25 °C”", " 25C ", "25ºC",
            "25\uFFFD\uFFFDC",
        "25 degrees C", "25 Celsius", "\u200e25C"
      })
  void temperatures(String text) {
    assertThat(Quantities.temperature("--dough-temp", text).celsius()).isEqualTo(25, within(1e-9));
  }

  @Test
  void temperaturesBelowZeroMayHaveAnyMinus() {
    assertThat(Quantities.temperature("--cold", "−2,5 °C").celsius()).isEqualTo(-2.5);
    assertThat(Quantities.temperature("--cold", "-2.5C").celsius()).isEqualTo(-2.5);
  }

  @ParameterizedTest
  @CsvSource({"20%,20", "20 %,20", "20％,20", "9.1%,9.1", "'9,1%',9.1", ".5%,0.5", "0%,0"})
  void shares(String text, double percent) {
    assertThat(Quantities.share("--salt", text).percent()).isEqualTo(percent, within(1e-9));
  }

  @ParameterizedTest
  @CsvSource({"850g,850", "1.2kg,1200", "'1,2 kg',1200", "30oz,850.48569375", "2lb,907.18474"})
  void masses(String text, double grams) {
    assertThat(Quantities.mass("--piece", text).grams()).isEqualTo(grams, within(1e-9));
  }

  @ParameterizedTest
  @CsvSource({"1500m,1500", "5000ft,1524", "-200m,-200", "0m,0"})
  void altitudes(String text, double metres) {
    assertThat(Quantities.altitude("--altitude", text).metres()).isEqualTo(metres, within(1e-9));
  }

  @ParameterizedTest
  @CsvSource({
    "90min,1.5",
    "12h,12",
    "1h30,1.5",
    "1h30min,1.5",
    "1 h 30 min,1.5",
    "'1,5h',1.5",
    "2d,48",
    "0h,0",
    "1H30,1.5",
    "1:30,1.5",
    "720h,720"
  })
  void durations(String text, double hours) {
    assertThat(Quantities.hours("--hold", text)).isEqualTo(hours, within(1e-12));
  }

  @ParameterizedTest
  @ValueSource(strings = {"12", "-1h", "1:75", "1h75", "721h", "1h30s", "h", "1h-30", "12 parsecs"})
  void otherDurationsAreRefused(String text) {
    assertThatThrownBy(() -> Quantities.hours("--hold", text))
        .isInstanceOf(InputException.class)
        .hasMessageStartingWith("--hold " + ShellWord.of(text));
  }

  @Test
  void aMassWithoutUnitShowsTheLineThatIsRight() {
    assertThatThrownBy(() -> Quantities.mass("--piece", "850"))
        .hasMessage("--piece 850 has no unit: write --piece 850g");
    assertThatThrownBy(() -> Quantities.mass("--piece", "1.2"))
        .hasMessage("--piece 1.2 has no unit: write --piece 1.2kg");
    assertThatThrownBy(() -> Quantities.mass("--piece", "-5g"))
        .hasMessage("--piece -5g is no mass: give more than 0 g");
  }

  @Test
  void aFeedIsThreeNumbers() {
    assertThat(Quantities.feedRatio("--ratio", "1:5:5"))
        .isEqualTo(new Quantities.FeedRatio(1, 5, 5));
    assertThat(Quantities.feedRatio("--ratio", " 1 : 2,5 : 2.5 "))
        .isEqualTo(new Quantities.FeedRatio(1, 2.5, 2.5));
    assertThatThrownBy(() -> Quantities.feedRatio("--ratio", "1:5"))
        .hasMessageContaining("write three numbers starter:flour:water");
    assertThatThrownBy(() -> Quantities.feedRatio("--ratio", "0:5:5"))
        .hasMessageContaining("part 0 is outside");
  }

  @Test
  void wholeNumbersAreWhole() {
    assertThat(Quantities.count("--loaves", "8", 1, 40)).isEqualTo(8);
    assertThatThrownBy(() -> Quantities.count("--loaves", "8.5", 1, 40))
        .hasMessageContaining("is not a whole number: give one from 1 to 40");
    assertThatThrownBy(() -> Quantities.count("--loaves", "41", 1, 40))
        .hasMessageContaining("outside 1…40");
  }
}
