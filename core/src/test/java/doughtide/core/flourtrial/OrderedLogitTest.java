package doughtide.core.flourtrial;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import doughtide.core.flourtrial.OrderedLogit.Derivatives;
import doughtide.core.flourtrial.OrderedLogit.Observation;
import java.util.Random;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class OrderedLogitTest {
  private static final int PEOPLE = 2;
  private static final int DIMENSION = OrderedLogit.FIRST_OFFSET + PEOPLE + 1;

  private static OrderedLogit example(Random random) {
    Observation[] observations = new Observation[12];
    for (int i = 0; i < observations.length; i++) {
      observations[i] =
          new Observation(
              i % 5,
              60 + 25 * random.nextDouble(),
              OrderedLogit.FIRST_OFFSET + i % PEOPLE,
              DIMENSION - 1);
    }
    double[] mean = {74, 1.6, 1.6, 1.6, 0.2, 0, 0, 0};
    double[] sd = {5, 0.5, 0.5, 0.5, 0.5, 1.5, 1.5, 1};
    return new OrderedLogit(observations, mean, sd);
  }

  private static double[] anywhere(Random random) {
    double[] theta = {74, 1.6, 1.6, 1.6, 0.2, 0, 0, 0};
    for (int i = 0; i < theta.length; i++) {
      theta[i] += 0.6 * random.nextGaussian();
    }
    return theta;
  }

  @ParameterizedTest
  @ValueSource(longs = {1, 2, 3, 4, 5, 6, 7, 8})
  void derivativesAgreeWithDifferences(long seed) {
    Random random = new Random(seed);
    OrderedLogit posterior = example(random);
    double[] theta = anywhere(random);
    Derivatives here = posterior.at(theta);
    double step = 1e-5;
    for (int i = 0; i < theta.length; i++) {
      double[] up = theta.clone();
      double[] down = theta.clone();
      up[i] += step;
      down[i] -= step;
      Derivatives above = posterior.at(up);
      Derivatives below = posterior.at(down);
      double slope = (above.value - below.value) / (2 * step);
      assertThat(here.gradient[i])
          .as("gradient %d, seed %d", i, seed)
          .isCloseTo(slope, within(1e-5 * (1 + Math.abs(slope))));
      for (int j = 0; j < theta.length; j++) {
        double curvature = (above.gradient[j] - below.gradient[j]) / (2 * step);
        assertThat(here.hessian[i][j])
            .as("hessian %d %d, seed %d", i, j, seed)
            .isCloseTo(curvature, within(1e-5 * (1 + Math.abs(curvature))));
      }
    }
  }

  @ParameterizedTest
  @ValueSource(longs = {11, 12, 13, 14, 15, 16, 17, 18})
  void theModeIsFlat(long seed) {
    OrderedLogit posterior = example(new Random(seed));
    double[] mode = PosteriorMode.of(posterior, new double[] {60, 70, 80}).theta();
    for (double slope : posterior.at(mode).gradient) {
      assertThat(slope).as("seed %d", seed).isCloseTo(0, within(1e-6));
    }
  }

  @ParameterizedTest
  @ValueSource(doubles = {30, 74, 150})
  void staysFiniteFarFromTheCutPoints(double hydrationPercent) {
    for (int grade = 0; grade < 5; grade++) {
      Observation only = new Observation(grade, hydrationPercent, 5, 6);
      OrderedLogit posterior =
          new OrderedLogit(
              new Observation[] {only},
              new double[] {74, 1.6, 1.6, 1.6, -2, 0, 0},
              new double[] {5, 0.5, 0.5, 0.5, 0.5, 1.5, 1});
      Derivatives here = posterior.at(posterior.priorMean());
      assertThat(here.value).as("grade %d", grade).isFinite();
      for (double slope : here.gradient) {
        assertThat(slope).as("grade %d", grade).isFinite();
      }
    }
  }
}
