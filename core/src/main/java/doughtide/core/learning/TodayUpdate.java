package doughtide.core.learning;

import doughtide.core.Internal;
import doughtide.core.forecast.Belief;
import doughtide.core.forecast.ReadingNoise;
import doughtide.core.forecast.RiseForecaster;
import doughtide.core.rise.RiseParameters;
import doughtide.core.rise.RiseParameters.RateCurves;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.apache.commons.math3.linear.Array2DRowRealMatrix;
import org.apache.commons.math3.linear.EigenDecomposition;
import org.apache.commons.math3.linear.RealMatrix;

/**
 * The bake in hand: its readings so far on top of what was believed before. Laplace's method for
 * each rate curve form, then an ensemble drawn from the result. The alternative, weighting the
 * members of the first ensemble by their likelihood, leaves only a handful of them alive after a
 * few readings; it serves as the check in the tests, with many members.
 *
 * <pre>{@code
 * TodayUpdate update = TodayUpdate.of(RiseForecaster.standard(), JarError.standard(), bake);
 * RiseForecast now = update.forecaster().forecast(bake.formula(), bake.temperature());
 * }</pre>
 */
@Internal
public final class TodayUpdate {
  private static final int SIZE = LearningPrior.SIZE;

  private final RiseForecaster after;

  private TodayUpdate(RiseForecaster after) {
    this.after = after;
  }

  /**
   * Updates with the standard error of readings.
   *
   * @param before model and belief before today's readings
   * @param jar how the jar misreads
   * @param bake today's dough and readings
   */
  public static TodayUpdate of(RiseForecaster before, JarError jar, Bake bake) {
    return of(before, jar, bake, ReadingNoise.standard());
  }

  /**
   * Updates.
   *
   * @param before model and belief before today's readings
   * @param jar how the jar misreads
   * @param bake today's dough and readings
   * @param noise error of the readings
   */
  public static TodayUpdate of(RiseForecaster before, JarError jar, Bake bake, ReadingNoise noise) {
    List<RateCurves> curves = before.parameters().curves();
    Map<String, Belief> parts = new LinkedHashMap<>();
    double[] logEvidence = new double[curves.size()];
    double[] start = new double[SIZE];
    for (int form = 0; form < curves.size(); form++) {
      String key = curves.get(form).key();
      RiseParameters one = before.parameters().with(curves.get(form));
      Posterior posterior =
          Posterior.of(
              new BakeResponse(bake, one, noise), before.belief().under(key), jar, noise, start);
      parts.put(key, posterior.belief());
      logEvidence[form] = posterior.fit().logEvidence();
      start = posterior.fit().scores();
    }
    double[] weights = Evidence.weights(logEvidence, before.belief().curveWeights(curves));
    return new TodayUpdate(before.with(Belief.byCurve(parts, Evidence.byKey(curves, weights))));
  }

  /** The result under one rate curve form, jar last. */
  private record Posterior(PosteriorFit fit, double[] mean, double[][] covariance) {
    static Posterior of(
        BakeResponse response, Belief prior, JarError jar, ReadingNoise noise, double[] start) {
      double[] middle = Arrays.copyOf(prior.mean(), SIZE);
      middle[LearningPrior.JAR] = jar.mean();
      double[][] root = root(prior, jar);
      TwoLevelProblem problem =
          new TwoLevelProblem(
              List.of(response), middle, root, new double[1][SIZE], new int[0], noise);
      PosteriorFit fit = PosteriorFit.of(problem, start);
      RealMatrix transform = new Array2DRowRealMatrix(root);
      RealMatrix spread =
          transform
              .multiply(new Array2DRowRealMatrix(fit.covariance()))
              .multiply(transform.transpose());
      RealMatrix even = spread.add(spread.transpose()).scalarMultiply(0.5);
      return new Posterior(fit, problem.coordinates(fit.scores(), 0), even.getData());
    }

    private static double[][] root(Belief prior, JarError jar) {
      EigenDecomposition eigen =
          new EigenDecomposition(new Array2DRowRealMatrix(prior.covariance()));
      double[][] root = new double[SIZE][SIZE];
      for (int j = 0; j < Belief.SIZE; j++) {
        double length = Math.sqrt(Math.max(eigen.getRealEigenvalue(j), 0));
        for (int i = 0; i < Belief.SIZE; i++) {
          root[i][j] = eigen.getV().getEntry(i, j) * length;
        }
      }
      root[LearningPrior.JAR][LearningPrior.JAR] = jar.deviation();
      return root;
    }

    Belief belief() {
      double[][] own = new double[Belief.SIZE][];
      for (int i = 0; i < Belief.SIZE; i++) {
        own[i] = Arrays.copyOf(covariance[i], Belief.SIZE);
      }
      return Belief.of(Arrays.copyOf(mean, Belief.SIZE), own);
    }
  }

  /** What is believed of today's dough. */
  public Belief belief() {
    return after.belief();
  }

  /** Makes forecasts of today's dough. */
  public RiseForecaster forecaster() {
    return after;
  }
}
