package doughtide.core.thermal;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import doughtide.core.quantity.InputException;
import org.junit.jupiter.api.Test;

class LoggedReadingsTest {

  @Test
  void fewReadingsAreKeptAsTheyAre() {
    LoggedReadings readings = new LoggedReadings();
    readings.add(0, 25.5);
    readings.add(0.5, 25);
    readings.add(2, 22);
    TemperatureTrace trace = readings.trace();
    assertThat(trace.celsius(0)).isEqualTo(25.5);
    assertThat(trace.celsius(0.5)).isEqualTo(25);
    assertThat(trace.celsius(9)).isEqualTo(22);
    assertThat(readings.count()).isEqualTo(3);
    assertThat(readings.lastHours()).isEqualTo(2);
    assertThat(readings.lowestCelsius()).isEqualTo(22);
    assertThat(readings.highestCelsius()).isEqualTo(25.5);
  }

  @Test
  void manyReadingsFollowTheSameLine() {
    LoggedReadings readings = new LoggedReadings();
    int many = 200_001;
    for (int i = 0; i < many; i++) {
      double hour = i / 5000.0;
      readings.add(hour, line(hour));
    }
    TemperatureTrace trace = readings.trace();
    for (double hour = 0.1; hour < 39.9; hour += 0.37) {
      assertThat(trace.celsius(hour)).as("hour %s", hour).isCloseTo(line(hour), within(0.01));
    }
    assertThat(readings.count()).isEqualTo(many);
  }

  private static double line(double hour) {
    return 22 + 3 * Math.exp(-hour / 6) + Math.sin(hour / 4);
  }

  @Test
  void disorderAndOneReadingAreRefused() {
    LoggedReadings readings = new LoggedReadings();
    readings.add(1, 25);
    assertThatThrownBy(() -> readings.add(1, 25))
        .isInstanceOf(InputException.class)
        .hasMessageContaining("does not come after hour 1");
    assertThatThrownBy(() -> readings.add(2, Double.NaN)).isInstanceOf(InputException.class);
    assertThatThrownBy(() -> readings.add(Double.NaN, 25)).isInstanceOf(InputException.class);
    assertThatThrownBy(readings::trace).hasMessageContaining("at least two readings");
  }
}
