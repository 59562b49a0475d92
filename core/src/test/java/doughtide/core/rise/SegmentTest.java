package doughtide.core.rise;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import doughtide.core.quantity.InputException;
import doughtide.core.quantity.Temperature;
import doughtide.core.thermal.TemperatureTrace;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;

/** How a run is cut where its temperature changes. */
class SegmentTest {
  private static TemperatureTrace steps(double... hoursAndCelsius) {
    List<TemperatureTrace.Step> steps = new ArrayList<>();
    for (int i = 0; i < hoursAndCelsius.length; i += 2) {
      steps.add(
          new TemperatureTrace.Step(
              hoursAndCelsius[i], Temperature.ofCelsius(hoursAndCelsius[i + 1])));
    }
    return TemperatureTrace.steps(steps);
  }

  private static List<Segment> of(DoughTemperature temperature, double hours) {
    return Segment.of(temperature, hours);
  }

  /** A step of the second stage's own trace counts from where the stage begins. */
  @Test
  void aRunIsCutAtStagesAndAtBreakpointsOfTheirTraces() {
    DoughTemperature temperature =
        DoughTemperature.following(steps(0, 25, 2, 20, 9, 30)).then(5, steps(0, 18, 1.5, 4));
    List<Segment> segments = of(temperature, 10);

    assertThat(segments).extracting(Segment::fromHours).containsExactly(0.0, 2.0, 5.0, 6.5);
    assertThat(segments).extracting(Segment::toHours).containsExactly(2.0, 5.0, 6.5, 10.0);
    assertThat(segments.get(0).celsius(2)).as("the end belongs to it").isEqualTo(25);
    assertThat(segments.get(1).celsius(2)).isEqualTo(20);
    assertThat(segments.get(3).celsius(10)).isEqualTo(4);
    assertThat(segments).allMatch(Segment::keepsOneTemperature);
    assertThat(temperature.jumps(10)).containsExactly(2, 5, 6.5);
    assertThat(of(temperature, 2)).hasSize(1);
    assertThat(of(temperature, 4)).extracting(Segment::toHours).containsExactly(2.0, 4.0);
    assertThat(temperature.segments(10).stepwise()).isTrue();
  }

  @Test
  void aTemperatureThatDriftsIsLookedAtAllAlong() {
    TemperatureTrace logged =
        TemperatureTrace.logged(new double[] {0, 4, 8}, new double[] {20, 28, 16});
    DoughTemperature temperature = DoughTemperature.following(logged);
    List<Segment> segments = of(temperature, 8);
    Segment last = segments.get(segments.size() - 1);

    assertThat(temperature.lowestCelsius(8)).isCloseTo(16, within(1e-6));
    assertThat(temperature.highestCelsius(8)).isCloseTo(28, within(1e-6));
    assertThat(temperature.lowestCelsius(4)).isCloseTo(20, within(1e-6));
    assertThat(last.lowestCelsius()).isLessThan(last.highestCelsius());
    assertThat(segments).noneMatch(Segment::keepsOneTemperature);
    assertThat(temperature.segments(8).stepwise()).isFalse();
    assertThat(last.atPart(0.25))
        .isCloseTo(0.75 * last.fromHours() + 0.25 * last.toHours(), within(1e-12));
  }

  /** A steady room does not keep the dough at one temperature. */
  @Test
  void aDoughInARoomDrifts() {
    DoughTemperature room =
        DoughTemperature.inRoom(
            Temperature.ofCelsius(24), TemperatureTrace.steady(Temperature.ofCelsius(20)), 3, 5000);

    assertThat(of(room, 5)).hasSize(1).noneMatch(Segment::keepsOneTemperature);
    assertThat(room.highestSpikeCelsius()).isEqualTo(Double.NEGATIVE_INFINITY);
  }

  /**
   * A logger that lay on the oven for a minute: the dough's own stages tell it, a room's do not.
   */
  @Test
  void aSpikeOfALoggerIsKnown() {
    double[] hours = new double[40];
    double[] celsius = new double[40];
    for (int i = 0; i < 40; i++) {
      hours[i] = i / 10.0;
      celsius[i] = i == 12 ? 38 : 25;
    }
    TemperatureTrace logged = TemperatureTrace.logged(hours, celsius);

    assertThat(DoughTemperature.following(logged).highestSpikeCelsius()).isEqualTo(38);
    assertThat(
            DoughTemperature.inRoom(Temperature.ofCelsius(24), logged, 3, 5000)
                .highestSpikeCelsius())
        .isEqualTo(Double.NEGATIVE_INFINITY);
  }

  @Test
  void temperaturesWhereTheModelMeansNothingAreRefused() {
    DoughTemperature hot = DoughTemperature.following(steps(0, 25, 3, 46));
    DoughTemperature oven =
        DoughTemperature.inRoom(Temperature.ofCelsius(24), steps(0, 20, 1, 61), 3, 5000);

    assertThatThrownBy(() -> hot.segments(4))
        .isInstanceOf(InputException.class)
        .hasMessageContaining("dough temperature 46 °C is outside -2…45 °C");
    assertThat(hot.segments(3).segments()).hasSize(1);
    assertThatThrownBy(() -> oven.segments(4))
        .isInstanceOf(InputException.class)
        .hasMessageContaining("temperature around the dough 61 °C is outside -40…60 °C");
  }
}
