package doughtide.core.learning;

import doughtide.core.Internal;
import doughtide.core.forecast.Belief;
import doughtide.core.forecast.ReadingNoise;
import doughtide.core.quantity.Checks;
import doughtide.core.rise.RiseParameters;
import doughtide.core.rise.RiseParameters.RateCurves;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/**
 * Learns from a baker's bakes: the most probable values under a two-level normal prior and
 * Student's t for the readings, found by Levenberg–Marquardt (commons-math3), with the covariance
 * of Laplace's method; once for each rate curve form, weighted by how well each explains the
 * readings. Immutable and thread-safe; the same input gives the same output.
 *
 * <pre>{@code
 * Learned learned = Learner.standard().learn(bakes);
 * RiseForecaster mine = RiseForecaster.standard().with(learned.belief());
 * }</pre>
 */
public final class Learner {
  private final RiseParameters parameters;
  private final LearningPrior prior;
  private final ReadingNoise noise;

  private Learner(RiseParameters parameters, LearningPrior prior, ReadingNoise noise) {
    this.parameters = parameters;
    this.prior = prior;
    this.noise = noise;
  }

  /** {@return a learner, with the starting values} */
  public static Learner standard() {
    return new Learner(
        RiseParameters.standard(), LearningPrior.standard(), ReadingNoise.standard());
  }

  /**
   * {@return the same with another model}
   *
   * @param newParameters of the model
   */
  public Learner with(RiseParameters newParameters) {
    return new Learner(Checks.given("parameters", newParameters), prior, noise);
  }

  /**
   * {@return the same with another prior}
   *
   * @param newPrior what is believed before any reading
   * @hidden
   */
  @Internal
  public Learner with(LearningPrior newPrior) {
    return new Learner(parameters, newPrior, noise);
  }

  /**
   * {@return what the bakes teach}
   *
   * @param bakes the baker's bakes in any order; without any, the prior comes back
   */
  public Learned learn(List<Bake> bakes) {
    List<RateCurves> curves = parameters.curves();
    OutlierSearch search =
        OutlierSearch.of(responses(bakes, curves.get(0)), names(bakes), prior, noise);
    Map<String, Belief> parts = new LinkedHashMap<>();
    List<JarError> jars = new ArrayList<>();
    double[] logEvidence = new double[curves.size()];
    PosteriorFit fit = search.fit();
    for (int form = 0; form < curves.size(); form++) {
      if (form > 0) {
        fit = PosteriorFit.of(search.problem(responses(bakes, curves.get(form))), fit.scores());
      }
      parts.put(curves.get(form).key(), nextBake(fit));
      jars.add(nextJar(fit));
      logEvidence[form] = fit.logEvidence();
    }
    double[] weights = Evidence.weights(logEvidence, prior.nextBake().curveWeights(curves));
    return new Learned(
        prior,
        Belief.byCurve(parts, Evidence.byKey(curves, weights)),
        Evidence.mixed(jars, weights),
        search.outliers(),
        bakes.size(),
        bakes.stream().mapToInt(bake -> bake.readings().size()).sum(),
        ReadingsDigest.sha256(bakes));
  }

  private static List<String> names(List<Bake> bakes) {
    return bakes.stream().map(Bake::name).toList();
  }

  private List<BakeResponse> responses(List<Bake> bakes, RateCurves curves) {
    RiseParameters oneForm = parameters.with(curves);
    return bakes.stream().map(bake -> new BakeResponse(bake, oneForm, noise)).toList();
  }

  /** The next bake: the baker's mean, uncertain, and the spread from bake to bake. */
  private Belief nextBake(PosteriorFit fit) {
    double[] mean = new double[Belief.SIZE];
    double[][] covariance = new double[Belief.SIZE][Belief.SIZE];
    double[] baker = prior.bakerDeviation();
    double[] bake = prior.bakeDeviation();
    for (int i = 0; i < Belief.SIZE; i++) {
      mean[i] = prior.mean()[i] + baker[i] * fit.scores()[i];
      for (int j = 0; j < Belief.SIZE; j++) {
        covariance[i][j] = baker[i] * baker[j] * symmetric(fit.covariance(), i, j);
      }
      covariance[i][i] += bake[i] * bake[i];
    }
    return Belief.of(mean, covariance);
  }

  private static double symmetric(double[][] matrix, int i, int j) {
    return (matrix[i][j] + matrix[j][i]) / 2;
  }

  private JarError nextJar(PosteriorFit fit) {
    int jar = LearningPrior.JAR;
    double baker = prior.bakerDeviation()[jar];
    double variance = baker * baker * fit.covariance()[jar][jar];
    return new JarError(
        prior.mean()[jar] + baker * fit.scores()[jar],
        Math.hypot(Math.sqrt(variance), prior.bakeDeviation()[jar]));
  }
}
