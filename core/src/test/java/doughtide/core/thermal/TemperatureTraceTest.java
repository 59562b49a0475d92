package doughtide.core.thermal;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import doughtide.core.quantity.InputException;
import doughtide.core.quantity.Temperature;
import doughtide.core.thermal.TemperatureTrace.Step;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class TemperatureTraceTest {
  private static TemperatureTrace steady(double celsius) {
    return TemperatureTrace.steady(Temperature.ofCelsius(celsius));
  }

  private static Step step(double hours, double celsius) {
    return new Step(hours, Temperature.ofCelsius(celsius));
  }

  @Test
  void steadyIsSteady() {
    assertThat(steady(24).celsius(-5)).isEqualTo(24);
    assertThat(steady(24).celsius(500)).isEqualTo(24);
    assertThat(steady(24).breakpoints()).isEmpty();
  }

  @Test
  void stepsJumpAtTheirHour() {
    TemperatureTrace trace = TemperatureTrace.steps(List.of(step(0, 26), step(3, 20), step(5, 4)));
    assertThat(trace.celsius(-1)).isEqualTo(26);
    assertThat(trace.celsius(2.999)).isEqualTo(26);
    assertThat(trace.celsius(3)).isEqualTo(20);
    assertThat(trace.celsius(99)).isEqualTo(4);
    assertThat(trace.breakpoints()).containsExactly(3, 5);
  }

  @Test
  void loggedMeetsItsReadingsAndHoldsItsEnds() {
    double[] hours = {0.5, 1, 2, 4};
    double[] celsius = {24, 25, 25, 22};
    TemperatureTrace trace = TemperatureTrace.logged(hours, celsius);
    for (int i = 0; i < hours.length; i++) {
      assertThat(trace.celsius(hours[i])).isEqualTo(celsius[i]);
    }
    assertThat(trace.celsius(0)).isEqualTo(24);
    assertThat(trace.celsius(9)).isEqualTo(22);
    assertThat(trace.celsius(1.5)).isEqualTo(25);
    assertThat(trace.breakpoints()).containsExactly(0.5, 4);
  }

  @Test
  void twoReadingsAreJoinedByAStraightLine() {
    TemperatureTrace trace = TemperatureTrace.logged(new double[] {0, 4}, new double[] {20, 24});
    assertThat(trace.celsius(1)).isCloseTo(21, within(1e-12));
  }

  @Test
  void keepsNoHoldOnTheArraysGiven() {
    double[] hours = {0, 1};
    double[] celsius = {20, 21};
    TemperatureTrace trace = TemperatureTrace.logged(hours, celsius);
    hours[1] = 0.1;
    celsius[1] = 99;
    assertThat(trace.celsius(1)).isEqualTo(21);
  }

  @ParameterizedTest
  @ValueSource(longs = {1, 2, 3, 4, 5, 6, 7, 8, 9, 10})
  void loggedNeverLeavesTheRangeOfTwoNeighbours(long seed) {
    Random random = new Random(seed);
    double[] hours = new double[12];
    double[] celsius = new double[12];
    for (int i = 0; i < hours.length; i++) {
      hours[i] = (i == 0 ? 0 : hours[i - 1]) + 0.05 + random.nextDouble();
      celsius[i] = 15 + 15 * random.nextDouble();
    }
    TemperatureTrace trace = TemperatureTrace.logged(hours, celsius);
    for (int i = 1; i < hours.length; i++) {
      double low = Math.min(celsius[i - 1], celsius[i]);
      double high = Math.max(celsius[i - 1], celsius[i]);
      for (double s = 0; s <= 1; s += 0.05) {
        double value = trace.celsius(hours[i - 1] + s * (hours[i] - hours[i - 1]));
        assertThat(value).as("seed %d", seed).isBetween(low - 1e-9, high + 1e-9);
      }
    }
  }

  @Test
  void sequenceStartsTheSecondAtItsOwnHourZero() {
    TemperatureTrace trace =
        steady(26).then(4, TemperatureTrace.steps(List.of(step(0, 20), step(1.5, 4))));
    assertThat(trace.celsius(3.9)).isEqualTo(26);
    assertThat(trace.celsius(4)).isEqualTo(20);
    assertThat(trace.celsius(6)).isEqualTo(4);
    assertThat(trace.breakpoints()).containsExactly(4, 5.5);
  }

  @Test
  void refusesWhatDoesNotAscendOrMatch() {
    assertThatThrownBy(() -> TemperatureTrace.steps(List.of(step(2, 20), step(1, 20))))
        .isInstanceOf(InputException.class)
        .hasMessage(
            "hours of the temperature trace must ascend: 1 h follows 2 h, sort them and give each hour once");
    assertThatThrownBy(() -> TemperatureTrace.steps(List.of())).isInstanceOf(InputException.class);
    assertThatThrownBy(() -> TemperatureTrace.logged(new double[] {0, 1}, new double[] {1}))
        .isInstanceOf(InputException.class)
        .hasMessage("2 hours and 1 temperatures: give one of each per reading");
    assertThatThrownBy(() -> TemperatureTrace.logged(new double[] {0}, new double[] {1}))
        .isInstanceOf(InputException.class);
    assertThatThrownBy(
            () -> TemperatureTrace.logged(new double[] {0, 1}, new double[] {1, Double.NaN}))
        .isInstanceOf(InputException.class);
    assertThatThrownBy(() -> step(Double.NaN, 20)).isInstanceOf(InputException.class);
    assertThatThrownBy(() -> steady(20).then(-1, steady(4))).isInstanceOf(InputException.class);
  }
}
