package doughtide.core.quantity;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class QuantityTest {
  @Test
  void temperatureConvertsAtTheFixedPoints() {
    assertThat(Temperature.ofFahrenheit(32).celsius()).isZero();
    assertThat(Temperature.ofFahrenheit(212).celsius()).isCloseTo(100, within(1e-12));
    assertThat(Temperature.ofFahrenheit(76).celsius()).isCloseTo(24.444444, within(1e-6));
    assertThat(Temperature.ofCelsius(24).fahrenheit()).isCloseTo(75.2, within(1e-12));
    assertThat(Temperature.ofCelsius(25).kelvin()).isEqualTo(298.15);
  }

  @Test
  void bothEndsOfARangeAreAllowed() {
    assertThat(Temperature.ofFahrenheit(-76).celsius()).isCloseTo(-60, within(1e-12));
    assertThat(Temperature.ofFahrenheit(572).celsius()).isCloseTo(300, within(1e-12));
    assertThat(Share.ofPercent(0).fraction()).isZero();
    assertThat(Share.ofPercent(500).percent()).isEqualTo(500);
    assertThat(Rise.ofPercent(-50).heightTimes()).isEqualTo(0.5);
    assertThat(Rise.ofPercent(2000).fraction()).isEqualTo(20);
    assertThat(Mass.ofKilograms(10_000).grams()).isEqualTo(1e7);
    assertThat(Altitude.ofMetres(-430).pressurePa()).isGreaterThan(101_325);
    assertThat(Altitude.ofMetres(5500).metres()).isEqualTo(5500);
  }

  @Test
  void messagesSayWhatWasGivenAndWhatIsAllowed() {
    assertThatThrownBy(() -> Temperature.ofCelsius(301))
        .isInstanceOf(InputException.class)
        .hasMessage("temperature 301 °C is outside -60…300 °C (did you mean 30.1 °C?)");
    assertThatThrownBy(() -> Temperature.ofFahrenheit(-77))
        .hasMessage("temperature -77 °F is outside -76…572 °F");
    assertThatThrownBy(() -> Share.ofPercent(-1)).hasMessage("share -1 % is outside 0…500 %");
    assertThatThrownBy(() -> Altitude.ofMetres(9000))
        .hasMessage("altitude 9000 m is outside -430…5500 m");
    assertThatThrownBy(() -> Rise.ofPercent(-51)).hasMessage("rise -51 % is outside -50…2000 %");
  }

  @ParameterizedTest
  @ValueSource(doubles = {Double.NaN, Double.POSITIVE_INFINITY, Double.NEGATIVE_INFINITY})
  void nothingThatIsNotANumberGetsIn(double value) {
    assertThatThrownBy(() -> Temperature.ofCelsius(value)).isInstanceOf(InputException.class);
    assertThatThrownBy(() -> Temperature.ofFahrenheit(value)).isInstanceOf(InputException.class);
    assertThatThrownBy(() -> Share.ofFraction(value)).isInstanceOf(InputException.class);
    assertThatThrownBy(() -> Rise.ofPercent(value)).isInstanceOf(InputException.class);
    assertThatThrownBy(() -> Mass.ofGrams(value)).isInstanceOf(InputException.class);
    assertThatThrownBy(() -> Altitude.ofMetres(value)).isInstanceOf(InputException.class);
  }

  @Test
  void aMassIsMoreThanNothing() {
    assertThatThrownBy(() -> Mass.ofGrams(0)).isInstanceOf(InputException.class);
    assertThatThrownBy(() -> Mass.ofGrams(-5)).isInstanceOf(InputException.class);
  }

  /** ISO 2533:1975, tables: 1500 m 845.6 hPa, 3000 m 701.2 hPa (from memory). */
  @Test
  void pressureFallsAsInTheStandardAtmosphere() {
    assertThat(Altitude.SEA_LEVEL.pressurePa()).isEqualTo(101_325);
    assertThat(Altitude.ofMetres(1500).pressurePa()).isCloseTo(84_560, within(20.0));
    assertThat(Altitude.ofMetres(3000).pressurePa()).isCloseTo(70_120, within(20.0));
  }

  @Test
  void quantitiesAreOrdered() {
    assertThat(Temperature.ofCelsius(20)).isLessThan(Temperature.ofCelsius(20.1));
    assertThat(Mass.ofGrams(1)).isLessThan(Mass.ofKilograms(1));
    assertThat(Share.ofPercent(2)).isLessThan(Share.ofPercent(3));
    assertThat(Rise.ofPercent(25)).isLessThan(Rise.ofPercent(50));
  }
}
