package doughtide.core.forecast;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import doughtide.core.dough.DoughFormula;
import doughtide.core.quantity.InnerFault;
import doughtide.core.quantity.Rise;
import doughtide.core.quantity.Temperature;
import doughtide.core.rise.DoughTemperature;
import java.util.OptionalDouble;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class LikelyLineTest {
  private static RiseForecast at(double celsius, double hours) {
    return RiseForecaster.standard()
        .withMembers(128)
        .forecast(
            DoughFormula.builder().build(),
            DoughTemperature.steady(Temperature.ofCelsius(celsius)),
            hours);
  }

  @ParameterizedTest
  @ValueSource(doubles = {16, 21, 25, 29})
  void everyMarkLiesOnIt(double celsius) {
    RiseForecast forecast = at(celsius, 60);
    LikelyLine line = LikelyLine.of(forecast);
    double top = forecast.greatestPercent().quantile(0.5).orElseThrow();
    int marks = 0;
    for (double percent = 5; percent < top - 4; percent += 5) {
      OptionalDouble likely = forecast.hoursToRise(Rise.ofPercent(percent)).likely();
      if (likely.isPresent()) {
        assertThat(line.percentAt(likely.getAsDouble()))
            .as("%s %% at %s °C", percent, celsius)
            .isCloseTo(percent, within(0.005 * (100 + percent)));
        marks++;
      }
    }
    assertThat(marks).isGreaterThan(10);
  }

  @ParameterizedTest
  @ValueSource(doubles = {16, 21, 25, 29})
  void risesToTheTopAndFallsAfterIt(double celsius) {
    RiseForecast forecast = at(celsius, 60);
    LikelyLine line = LikelyLine.of(forecast);
    double falls = forecast.beginsToFall().quantile(0.5).orElseThrow();
    double top = forecast.greatestPercent().quantile(0.5).orElseThrow();
    double before = line.percentAt(0);
    double highest = before;
    boolean fallen = false;
    for (double hour : line.hours()) {
      double now = line.percentAt(hour);
      fallen |= now < highest - 1e-6;
      assertThat(fallen && now > before + 1e-6).as("up again at %s h", hour).isFalse();
      assertThat(fallen && hour < falls).as("falls at %s h", hour).isFalse();
      highest = Math.max(highest, now);
      before = now;
    }
    assertThat(highest).isCloseTo(top, within(0.01 * (100 + top)));
    assertThat(line.percentAt(line.endHours())).isLessThan(top - 5);
  }

  /** Near the top no stretch is steeper than the rise before it. */
  @ParameterizedTest
  @ValueSource(doubles = {16, 21, 25, 29})
  void hasNoStepAtTheTop(double celsius) {
    LikelyLine line = LikelyLine.of(at(celsius, 60));
    double[] hours = line.hours();
    double steepest = 0;
    double last = 0;
    for (int i = 1; i < hours.length; i++) {
      double climb = line.percentAt(hours[i]) - line.percentAt(hours[i - 1]);
      steepest = Math.max(steepest, climb / (hours[i] - hours[i - 1]));
      last = climb > 0 ? climb / (hours[i] - hours[i - 1]) : last;
    }
    assertThat(last).isLessThan(0.5 * steepest);
  }

  @Test
  void neverGoesBeyondWhatWasComputed() {
    LikelyLine young = LikelyLine.of(at(25, 5));
    assertThat(young.endHours()).isEqualTo(5);
    assertThat(young.percentAt(5)).isCloseTo(at(25, 5).bandAt(5).riseLikelyPercent(), within(0.5));
    LikelyLine whole = LikelyLine.of(at(25, 24));
    assertThat(whole.endHours()).isLessThanOrEqualTo(24);
    assertThatThrownBy(() -> whole.percentAt(25)).isInstanceOf(InnerFault.class);
  }
}
