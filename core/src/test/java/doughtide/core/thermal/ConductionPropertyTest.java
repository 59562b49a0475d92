package doughtide.core.thermal;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import doughtide.core.quantity.Temperature;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class ConductionPropertyTest {
  @ParameterizedTest
  @ValueSource(longs = {1, 2, 3, 4, 5, 6, 7, 8, 9, 10, 11, 12, 13, 14, 15})
  void heatLostThroughTheSurfaceIsTheChangeInContent(long seed) {
    Random random = new Random(seed);
    Conduction body = body(random);
    double[] start = shells(random, body);
    double source = -1 + 3 * random.nextDouble();
    CoolingPiece piece = CoolingPiece.start(body, start, room(random), HeatSource.steady(source));
    double capacity = body.heat().heatCapacityJPerKgK();
    for (double hours : new double[] {0.01, 0.5, 2, 3.3, 7, 20, 100}) {
      double fall = (piece.meanCelsius(0) - piece.meanCelsius(hours)) * capacity;
      double made = source * 3600 * hours;
      double scale = 20 * capacity + Math.abs(made);
      assertThat((piece.heatLostJPerKg(hours) - fall - made) / scale)
          .as("seed %d, hour %s", seed, hours)
          .isCloseTo(0, within(1e-9));
    }
  }

  @ParameterizedTest
  @ValueSource(longs = {21, 22, 23, 24, 25, 26, 27, 28})
  void warmerRoomNeverMakesAColderPiece(long seed) {
    Random random = new Random(seed);
    Conduction body = body(random);
    double[] start = shells(random, body);
    double air = 2 + 20 * random.nextDouble();
    CoolingPiece cool = in(air, body, start);
    CoolingPiece warm = in(air + 3, body, start);
    for (double hours = 0; hours < 20; hours += 0.37) {
      for (int shell = 0; shell < body.shells(); shell++) {
        assertThat(warm.shellCelsius(shell, hours))
            .as("seed %d, hour %s, shell %d", seed, hours, shell)
            .isGreaterThanOrEqualTo(cool.shellCelsius(shell, hours) - 1e-11);
      }
    }
  }

  @ParameterizedTest
  @ValueSource(longs = {31, 32, 33, 34, 35, 36, 37, 38})
  void staysBetweenStartAndRoomAndIsMonotoneInTimeAndRadius(long seed) {
    Random random = new Random(seed);
    Conduction body = body(random);
    CoolingPiece piece =
        CoolingPiece.start(
            body, Temperature.ofCelsius(26), TemperatureTrace.steady(Temperature.ofCelsius(3)));
    double[] before = piece.shellCelsius(0);
    for (double hours = 0.05; hours < 30; hours *= 1.4) {
      double[] now = piece.shellCelsius(hours);
      for (int shell = 0; shell < now.length; shell++) {
        String message = "seed " + seed + ", hour " + hours + ", shell " + shell;
        assertThat(now[shell]).as(message).isBetween(3 - 1e-9, before[shell] + 1e-9);
        if (shell > 0) {
          assertThat(now[shell]).as(message).isLessThanOrEqualTo(now[shell - 1] + 1e-9);
        }
      }
      before = now;
    }
  }

  @ParameterizedTest
  @ValueSource(longs = {41, 42, 43, 44, 45, 46})
  void coreHasTheTemperatureAtTheHourGiven(long seed) {
    Random random = new Random(seed);
    CoolingPiece piece =
        CoolingPiece.start(
            body(random),
            Temperature.ofCelsius(25),
            TemperatureTrace.steady(Temperature.ofCelsius(3)));
    double last = 0;
    for (double celsius : new double[] {20, 10, 7, 5}) {
      double hours = piece.hoursUntilCoreReaches(Temperature.ofCelsius(celsius)).orElseThrow();
      assertThat(piece.coreCelsius(hours)).as("seed %d", seed).isCloseTo(celsius, within(1e-7));
      assertThat(hours).as("seed %d", seed).isGreaterThan(last);
      last = hours;
    }
    assertThat(piece.hoursUntilCoreReaches(Temperature.ofCelsius(3))).isEmpty();
    assertThat(piece.hoursUntilCoreReaches(Temperature.ofCelsius(30))).isEmpty();
  }

  private static CoolingPiece in(double air, Conduction body, double[] start) {
    return CoolingPiece.start(
        body, start, TemperatureTrace.steady(Temperature.ofCelsius(air)), HeatSource.none());
  }

  private static Conduction body(Random random) {
    BodyForm form = BodyForm.values()[random.nextInt(3)];
    DoughHeat heat =
        new DoughHeat(
            500 + 600 * random.nextDouble(),
            2600 + 500 * random.nextDouble(),
            0.15 + 0.3 * random.nextDouble());
    double length = 0.02 + 0.06 * random.nextDouble();
    return Conduction.of(form, length, heat, 4 + 12 * random.nextDouble(), 8 + random.nextInt(20));
  }

  private static double[] shells(Random random, Conduction body) {
    double[] start = new double[body.shells()];
    Arrays.setAll(start, shell -> 5 + 25 * random.nextDouble());
    return start;
  }

  private static TemperatureTrace room(Random random) {
    List<TemperatureTrace.Step> steps = new ArrayList<>();
    for (int i = 0; i < 4; i++) {
      Temperature celsius = Temperature.ofCelsius(3 + 24 * random.nextDouble());
      steps.add(new TemperatureTrace.Step(2.2 * i, celsius));
    }
    return TemperatureTrace.steps(steps);
  }
}
