package doughtide.core.learning;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import doughtide.core.forecast.Belief;
import doughtide.core.forecast.ReadingNoise;
import doughtide.core.forecast.Unknown;
import doughtide.core.rise.RiseCurve;
import doughtide.core.rise.RiseModel;
import doughtide.core.rise.RiseParameters;
import java.util.List;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/**
 * The slopes used for learning against an independent way: Richardson extrapolation of central
 * differences (Press et al., Numerical Recipes, 5.7) over the integrator of commons-math3 at a
 * relative error of 1e-10.
 */
class BakeResponseTest {
  private static final ReadingNoise NOISE = ReadingNoise.standard();

  @ParameterizedTest
  @ValueSource(longs = {1, 2, 3, 4, 5, 6})
  void slopesAgreeWithRichardsonExtrapolation(long seed) {
    SimulatedBaker baker = new SimulatedBaker(seed, SimulatedBaker.Setting.PLAIN);
    Bake bake = withPh(baker.bakes(1, 8).get(0).bake());
    RiseParameters all = RiseParameters.standard();
    RiseParameters form = all.with(all.curves().get((int) (seed % all.curves().size())));
    double[] x = baker.mean();
    double[][] slopes = new BakeResponse(bake, form, NOISE).slopes(x);
    for (int column = 0; column < LearningPrior.SIZE; column++) {
      double[] exact = richardson(bake, form, x, column);
      for (int row = 0; row < exact.length; row++) {
        assertThat(slopes[row][column])
            .as("seed %d row %d column %d", seed, row, column)
            .isCloseTo(exact[row], within(2e-3 + 2e-3 * Math.abs(exact[row])));
      }
    }
  }

  private static Bake withPh(Bake bake) {
    List<Reading> readings = bake.readings().stream().map(each -> each.withPh(4.8)).toList();
    return new Bake(bake.name(), bake.formula(), bake.temperature(), readings);
  }

  private static double[] richardson(Bake bake, RiseParameters form, double[] x, int column) {
    // Retention moves the leak over a gas share of a few hundredths, so it wants finer steps.
    double scale = column == Unknown.RETENTION.ordinal() ? 0.2 : 1;
    double[] wide = central(bake, form, x, column, 0.02 * scale);
    double[] middle = central(bake, form, x, column, 0.01 * scale);
    double[] narrow = central(bake, form, x, column, 0.005 * scale);
    double[] result = new double[wide.length];
    for (int i = 0; i < result.length; i++) {
      double first = (4 * middle[i] - wide[i]) / 3;
      double second = (4 * narrow[i] - middle[i]) / 3;
      result[i] = (16 * second - first) / 15;
    }
    return result;
  }

  private static double[] central(
      Bake bake, RiseParameters form, double[] x, int column, double step) {
    double[] up = residuals(bake, form, moved(x, column, step));
    double[] down = residuals(bake, form, moved(x, column, -step));
    double[] slope = new double[up.length];
    for (int i = 0; i < slope.length; i++) {
      slope[i] = (up[i] - down[i]) / (2 * step);
    }
    return slope;
  }

  private static double[] moved(double[] x, int column, double step) {
    double[] moved = x.clone();
    moved[column] += step;
    return moved;
  }

  private static double[] residuals(Bake bake, RiseParameters form, double[] x) {
    RiseCurve curve =
        RiseModel.of(bake.formula(), bake.temperature())
            .with(form)
            .with(Belief.unknownsAt(x, BakeResponse.ONLY_CURVES))
            .run(bake.lastHours());
    int n = bake.readings().size();
    double[] residuals = new double[2 * n];
    for (int i = 0; i < n; i++) {
      Reading reading = bake.readings().get(i);
      double height = curve.riseAt(reading.hours()).heightTimes() * Math.exp(x[LearningPrior.JAR]);
      double given = reading.rise().orElseThrow().heightTimes();
      residuals[i] = (height - given) / NOISE.riseDeviation(reading.rise().orElseThrow());
      residuals[n + i] = (curve.phAt(reading.hours()) - 4.8) / (NOISE.ph() * Math.sqrt(n));
    }
    return residuals;
  }

  @ParameterizedTest
  @ValueSource(doubles = {-9, -2, -0.3, 0.1, 1, 3, 12})
  void slopeOfTheRobustLoss(double residual) {
    double step = 1e-5;
    double difference =
        (NOISE.robust(residual + step) - NOISE.robust(residual - step)) / (2 * step);
    assertThat(NOISE.robustSlope(residual)).isCloseTo(difference, within(1e-7));
  }
}
