package doughtide.core.thermal;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import doughtide.core.quantity.Temperature;
import java.util.Arrays;
import org.junit.jupiter.api.Test;

class CoolingStepsTest {
  private static final Conduction BALL =
      Conduction.of(BodyForm.SPHERE, 0.06, new DoughHeat(700, 2880, 0.25), 5, 8);

  @Test
  void stepsOfAnyLengthMeetTheSolutionThatIsKnownBeforehand() {
    double[] hours = {0, 1, 3};
    double[] watts = {0.2, -0.1, 0.05};
    double[] shells = new double[BALL.shells()];
    Arrays.fill(shells, 25);
    TemperatureTrace air =
        TemperatureTrace.steady(Temperature.ofCelsius(20))
            .then(1, TemperatureTrace.steady(Temperature.ofCelsius(4)));
    CoolingPiece known = CoolingPiece.start(BALL, shells, air, HeatSource.steps(hours, watts));
    CoolingSteps steps = new CoolingSteps(BALL, 25, 20);
    double perWatt = 3600 / BALL.heat().heatCapacityJPerKgK();

    steps.step(0.4, 20, 0.2 * perWatt);
    steps.step(0.6, 20, 0.2 * perWatt);
    assertThat(steps.coreCelsius()).isCloseTo(known.coreCelsius(1), within(1e-9));
    steps.step(2, 4, -0.1 * perWatt);
    steps.step(2.5, 4, 0.05 * perWatt);
    double[] now = new double[BALL.shells()];
    steps.shellCelsius(now);

    assertThat(now).containsExactly(known.shellCelsius(5.5), within(1e-9));
    assertThat(steps.coreCelsius()).isCloseTo(known.coreCelsius(5.5), within(1e-9));
  }
}
