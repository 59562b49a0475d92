package doughtide.core.learning;

import doughtide.core.forecast.Belief;
import doughtide.core.quantity.Rise;
import doughtide.core.rise.RiseCurve;
import doughtide.core.rise.RiseModel;
import doughtide.core.rise.RiseParameters;
import java.util.OptionalDouble;
import org.apache.commons.math3.analysis.UnivariateFunction;
import org.apache.commons.math3.optim.MaxEval;
import org.apache.commons.math3.optim.nonlinear.scalar.GoalType;
import org.apache.commons.math3.optim.univariate.BrentOptimizer;
import org.apache.commons.math3.optim.univariate.SearchInterval;
import org.apache.commons.math3.optim.univariate.UnivariateObjectiveFunction;

/**
 * When one more reading is worth most. Everything is linear around the likeliest run: with g the
 * slope of the wanted time and h that of a reading, a reading with variance R takes (gᵀPh)² / (hᵀPh
 * + R) off the variance gᵀPg.
 */
final class NextLook {
  private static final int SIZE = LearningPrior.SIZE;
  private static final double[] STEPS = {0.01, 0.02, 0.02, 0.005, 0.001, 0.02};
  private static final double LEAST_WAIT_HOURS = 0.25;
  private static final double BEYOND = 1.5;

  private final Bake bake;
  private final RiseModel model;
  private final double[] middle;
  private final double[][] covariance;
  private final ReadingNoise noise;

  NextLook(
      Bake bake, RiseParameters form, double[] middle, double[][] covariance, ReadingNoise noise) {
    this.bake = bake;
    this.model = RiseModel.of(bake.formula(), bake.temperature()).with(form);
    this.middle = middle;
    this.covariance = covariance;
    this.noise = noise;
  }

  /**
   * @param target the rise whose time is wanted
   * @param early the hour before which the dough is hardly there: a look must come before it
   * @param likely the likely hour
   */
  OptionalDouble hours(Rise target, double early, double likely) {
    double first = bake.lastHours() + LEAST_WAIT_HOURS;
    if (!(early > first)) {
      return OptionalDouble.empty();
    }
    double length = Math.min(likely * BEYOND, RiseModel.LONGEST_HOURS);
    RiseCurve[] up = new RiseCurve[STEPS.length];
    RiseCurve[] down = new RiseCurve[STEPS.length];
    for (int i = 0; i < STEPS.length; i++) {
      up[i] = run(i, STEPS[i], length);
      down[i] = run(i, -STEPS[i], length);
    }
    RiseCurve centre = run(0, 0, length);
    double[] g = new double[SIZE];
    for (int i = 0; i < STEPS.length; i++) {
      OptionalDouble later = up[i].hoursToRise(target);
      OptionalDouble sooner = down[i].hoursToRise(target);
      if (later.isEmpty() || sooner.isEmpty()) {
        return OptionalDouble.empty();
      }
      g[i] = (later.getAsDouble() - sooner.getAsDouble()) / (2 * STEPS[i]);
    }
    return OptionalDouble.of(
        best(t -> gain(g, slope(up, down, centre, t), centre.riseAt(t)), first, early));
  }

  private RiseCurve run(int coordinate, double step, double hours) {
    double[] x = middle.clone();
    x[coordinate] += step;
    return model.with(Belief.unknownsAt(x, BakeResponse.ONLY_CURVES)).runFast(hours);
  }

  private double[] slope(RiseCurve[] up, RiseCurve[] down, RiseCurve centre, double hours) {
    double read = Math.exp(middle[LearningPrior.JAR]);
    double[] h = new double[SIZE];
    for (int i = 0; i < STEPS.length; i++) {
      double difference = up[i].riseAt(hours).fraction() - down[i].riseAt(hours).fraction();
      h[i] = read * difference / (2 * STEPS[i]);
    }
    h[LearningPrior.JAR] = read * centre.riseAt(hours).heightTimes();
    return h;
  }

  /** What a reading takes off the variance of the wanted time, h². */
  private double gain(double[] g, double[] h, Rise rise) {
    double across = product(g, h);
    double deviation = noise.riseDeviation(rise);
    return across * across / (product(h, h) + deviation * deviation);
  }

  private double product(double[] a, double[] b) {
    double sum = 0;
    for (int i = 0; i < SIZE; i++) {
      for (int j = 0; j < SIZE; j++) {
        sum += a[i] * covariance[i][j] * b[j];
      }
    }
    return sum;
  }

  private static double best(UnivariateFunction gain, double low, double high) {
    double inside =
        new BrentOptimizer(1e-6, 1e-3)
            .optimize(
                new UnivariateObjectiveFunction(gain),
                GoalType.MAXIMIZE,
                new SearchInterval(low, high),
                new MaxEval(200))
            .getPoint();
    double best = gain.value(high) >= gain.value(inside) ? high : inside;
    return gain.value(low) > gain.value(best) ? low : best;
  }
}
