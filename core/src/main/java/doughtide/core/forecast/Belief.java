package doughtide.core.forecast;

import doughtide.core.Internal;
import doughtide.core.quantity.Checks;
import doughtide.core.quantity.InputException;
import doughtide.core.quantity.Value;
import doughtide.core.rise.RiseParameters.RateCurves;
import doughtide.core.rise.Unknowns;
import java.util.Arrays;
import java.util.Collections;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Set;
import java.util.StringJoiner;
import java.util.TreeMap;
import org.apache.commons.math3.linear.Array2DRowRealMatrix;
import org.apache.commons.math3.linear.EigenDecomposition;
import org.apache.commons.math3.linear.RealMatrix;

/**
 * What is believed about the unknowns before a bake: a normal distribution over the coordinates of
 * {@link Unknown}, the rate curves as likely as their model says; or, after learning, one such
 * distribution for each pair of rate curves, by its key ({@link #byCurve}). {@link #standard()} is
 * what holds for a baker nobody knows; readings narrow it. Of rate curves that a belief does not
 * know, the standard one holds. Immutable.
 */
public final class Belief extends Value {
  private static final long serialVersionUID = 2;

  /** Number of unknowns with a normal distribution. */
  public static final int SIZE = Unknown.KIND.ordinal();

  private static final Belief STANDARD = independent();

  private final double[] mean;
  private final double[][] covariance;
  private final double[][] root;
  private final Map<String, Belief> parts;
  private final Map<String, Double> weights;

  private Belief(double[] mean, double[][] covariance) {
    this(mean, covariance, Map.of(), Map.of());
  }

  private Belief(
      double[] mean,
      double[][] covariance,
      Map<String, Belief> parts,
      Map<String, Double> weights) {
    this.mean = mean;
    this.covariance = covariance;
    this.root = squareRoot(covariance);
    this.parts = parts;
    this.weights = weights;
  }

  /**
   * {@return the belief about an unknown baker, with the standard deviations of {@link Unknown}}
   */
  public static Belief standard() {
    return STANDARD;
  }

  private static Belief independent() {
    double[][] covariance = new double[SIZE][SIZE];
    for (int i = 0; i < SIZE; i++) {
      double deviation = Unknown.values()[i].deviation();
      covariance[i][i] = deviation * deviation;
    }
    return new Belief(new double[SIZE], covariance);
  }

  /**
   * {@return a belief from a mean and a covariance, for example after learning}
   *
   * @param mean seven numbers in the order of {@link Unknown}
   * @param covariance seven by seven, symmetric, not negative
   * @throws InputException if the sizes are wrong, a number is not finite, or the matrix is not
   *     symmetric
   */
  public static Belief of(double[] mean, double[][] covariance) {
    if (mean.length != SIZE || covariance.length != SIZE) {
      throw new InputException(
          "belief.size", "a belief needs " + SIZE + " means and as many rows of covariance");
    }
    double[][] copy = new double[SIZE][];
    for (int i = 0; i < SIZE; i++) {
      Checks.inRange("belief.mean", "mean of the " + word(Unknown.values()[i]), mean[i], -3, 3, "");
      copy[i] = checkedRow(covariance, i);
    }
    for (double eigenvalue :
        new EigenDecomposition(new Array2DRowRealMatrix(copy)).getRealEigenvalues()) {
      if (eigenvalue < -1e-6) {
        throw new InputException(
            "belief.covariance", "a belief's covariance must not be negative in any direction");
      }
    }
    return new Belief(mean.clone(), copy);
  }

  /**
   * {@return a belief in which the rate curve matters to everything else: readings at 20 °C say
   * another rate at 25 °C under one curve than under another}
   *
   * @param parts by the key of the rate curves: what is believed if they are the right ones, each
   *     made by {@link #of}
   * @param weights by the same keys: how likely they are, not negative; scaled to a sum of 1
   * @throws InputException if there is no part, or the keys differ, or no weight is above 0
   */
  public static Belief byCurve(Map<String, Belief> parts, Map<String, Double> weights) {
    if (parts.isEmpty() || !parts.keySet().equals(weights.keySet())) {
      throw new InputException(
          "belief.curves", "a belief by curve needs one weight for each of its parts");
    }
    weights.forEach(
        (key, weight) -> Checks.inRange("weight of rate curve " + key, weight, 0, 1e300, ""));
    double sum = weights.values().stream().mapToDouble(weight -> weight).sum();
    Checks.inRange("sum of the weights of rate curves", sum, 1e-300, 1e300, "");
    Map<String, Double> scaled = new TreeMap<>();
    parts.keySet().forEach(key -> scaled.put(key, weights.getOrDefault(key, 0.0) / sum));
    double[] mean = new double[SIZE];
    double[][] covariance = new double[SIZE][SIZE];
    parts.forEach((key, part) -> addMean(mean, part, scaled.getOrDefault(key, 0.0)));
    parts.forEach((key, part) -> addSpread(covariance, part, mean, scaled.getOrDefault(key, 0.0)));
    return new Belief(
        mean,
        covariance,
        Collections.unmodifiableMap(new TreeMap<>(parts)),
        Collections.unmodifiableMap(scaled));
  }

  private static void addMean(double[] total, Belief part, double weight) {
    for (int i = 0; i < SIZE; i++) {
      total[i] += weight * part.mean[i];
    }
  }

  private static void addSpread(double[][] total, Belief part, double[] mean, double weight) {
    for (int i = 0; i < SIZE; i++) {
      for (int j = 0; j < SIZE; j++) {
        double off = (part.mean[i] - mean[i]) * (part.mean[j] - mean[j]);
        total[i][j] += weight * (part.covariance[i][j] + off);
      }
    }
  }

  /**
   * {@return what is believed if a pair of rate curves is the right one}
   *
   * @param key of the rate curves
   */
  public Belief under(String key) {
    return parts.isEmpty() ? this : parts.getOrDefault(key, STANDARD);
  }

  /**
   * How likely each of a model's pairs of rate curves is. Those that this belief does not know keep
   * the weight that the model gives them; the others share what is left as this belief says.
   *
   * @param curves of the model
   * @return as many shares with the sum 1
   */
  public double[] curveWeights(List<RateCurves> curves) {
    double known = 0;
    double prior = 0;
    double all = 0;
    for (RateCurves each : curves) {
      known += weights.getOrDefault(each.key(), 0.0);
      prior += weights.containsKey(each.key()) ? each.weight() : 0;
      all += each.weight();
    }
    double scale = known > 0 ? prior / known : 0;
    double[] shares = new double[curves.size()];
    for (int k = 0; k < shares.length; k++) {
      Double own = scale > 0 ? weights.get(curves.get(k).key()) : null;
      shares[k] = (own == null ? curves.get(k).weight() : own * scale) / all;
    }
    return shares;
  }

  /**
   * {@return how likely a pair of rate curves is among those that this belief tells apart, 0…1}
   *
   * @param key of the rate curves
   */
  public double weight(String key) {
    return weights.getOrDefault(key, 0.0);
  }

  /** {@return the keys of the rate curves that this belief tells apart; none if it does not} */
  public Set<String> curves() {
    return parts.keySet();
  }

  private static double[] checkedRow(double[][] covariance, int i) {
    if (covariance[i].length != SIZE) {
      throw new InputException(
          "belief.covariance", "a belief's covariance needs " + SIZE + " columns in each row");
    }
    for (int j = 0; j < SIZE; j++) {
      Checks.inRange("covariance", covariance[i][j], -100, 100, "");
      if (Math.abs(covariance[i][j] - covariance[j][i]) > 1e-9) {
        throw new InputException("belief.covariance", "a belief's covariance must be symmetric");
      }
    }
    return covariance[i].clone();
  }

  private static double[][] squareRoot(double[][] covariance) {
    return isDiagonal(covariance) ? diagonalRoot(covariance) : symmetricRoot(covariance);
  }

  private static boolean isDiagonal(double[][] covariance) {
    for (int i = 0; i < SIZE; i++) {
      for (int j = 0; j < SIZE; j++) {
        if (i != j && covariance[i][j] != 0) {
          return false;
        }
      }
    }
    return true;
  }

  /** Spares a program that only forecasts the loading of linear algebra, 30 ms of a cold start. */
  private static double[][] diagonalRoot(double[][] covariance) {
    double[][] root = new double[SIZE][SIZE];
    for (int i = 0; i < SIZE; i++) {
      root[i][i] = Math.sqrt(Math.max(covariance[i][i], 0));
    }
    return root;
  }

  private static double[][] symmetricRoot(double[][] covariance) {
    EigenDecomposition eigen = new EigenDecomposition(new Array2DRowRealMatrix(covariance));
    RealMatrix vectors = eigen.getV();
    RealMatrix scaled = vectors.copy();
    for (int j = 0; j < SIZE; j++) {
      double factor = Math.sqrt(Math.max(eigen.getRealEigenvalue(j), 0));
      for (int i = 0; i < SIZE; i++) {
        scaled.setEntry(i, j, vectors.getEntry(i, j) * factor);
      }
    }
    return scaled.multiply(vectors.transpose()).getData();
  }

  /** {@return mean of each unknown, a copy} */
  public double[] mean() {
    return mean.clone();
  }

  /** {@return covariance, a copy} */
  public double[][] covariance() {
    return Arrays.stream(covariance).map(double[]::clone).toArray(double[][]::new);
  }

  /**
   * {@return standard deviation of one unknown in its own coordinate}
   *
   * @param unknown which of the unknowns
   */
  public double standardDeviation(Unknown unknown) {
    int i = unknown.ordinal();
    return Math.sqrt(covariance[i][i]);
  }

  /**
   * {@return the same belief with another standard deviation for one unknown, for example a better
   * thermometer; its correlations stay}
   *
   * @param unknown which, one that {@link Unknown#isNormal}
   * @param deviation 0…3 in its own coordinate
   */
  public Belief withStandardDeviation(Unknown unknown, double deviation) {
    if (!unknown.isNormal()) {
      throw new InputException(
          "belief.no-deviation", "the " + word(unknown) + " has no standard deviation");
    }
    int i = unknown.ordinal();
    Checks.inRange(
        "belief.deviation", "standard deviation of the " + word(unknown), deviation, 0, 3, "");
    double old = standardDeviation(unknown);
    double[][] changed = covariance();
    for (int j = 0; j < SIZE; j++) {
      double scale = old > 0 ? deviation / old : 0;
      changed[i][j] *= scale;
      changed[j][i] *= scale;
    }
    changed[i][i] = deviation * deviation;
    if (parts.isEmpty()) {
      return new Belief(mean.clone(), changed);
    }
    Map<String, Belief> changedParts = new TreeMap<>();
    parts.forEach(
        (key, part) -> changedParts.put(key, part.withStandardDeviation(unknown, deviation)));
    return byCurve(changedParts, weights);
  }

  /**
   * {@return the unknowns at standard normal scores}
   *
   * @param normal {@link #SIZE} independent standard normal scores
   * @param curves key of the rate curves
   * @hidden
   */
  @Internal
  public Unknowns unknowns(double[] normal, String curves) {
    Belief part = under(curves);
    double[] x = part.mean.clone();
    for (int i = 0; i < SIZE; i++) {
      for (int j = 0; j < SIZE; j++) {
        x[i] += part.root[i][j] * normal[j];
      }
    }
    return unknownsAt(x, curves);
  }

  /**
   * {@return the middle of the belief under the likeliest of a model's rate curves, the first of
   * several alike: one run to look ahead with} It is no median where the kinds of yeast part ways.
   *
   * @param curves of the model
   * @hidden
   */
  @Internal
  public Unknowns middle(List<RateCurves> curves) {
    double[] shares = curveWeights(curves);
    int likeliest = 0;
    for (int k = 1; k < shares.length; k++) {
      likeliest = shares[k] > shares[likeliest] + 1e-12 ? k : likeliest;
    }
    String key = curves.get(likeliest).key();
    return unknownsAt(under(key).mean, key);
  }

  /**
   * {@return unknowns at a point of the belief's coordinates; extremes are held inside the model's
   * ranges}
   *
   * @param x {@link #SIZE} coordinates, or more, of which the first count
   * @param curves key of the rate curves
   * @hidden
   */
  @Internal
  public static Unknowns unknownsAt(double[] x, String curves) {
    return new Unknowns(
        at(Unknown.VIGOUR, x, 0.02, 20),
        at(Unknown.LAG, x, 0.02, 20),
        at(Unknown.TEMPERATURE, x, -8, 8),
        at(Unknown.RATE, x, 0.1, 10),
        at(Unknown.RETENTION, x, -0.3, 0.3),
        at(Unknown.AIR, x, 0.005, 0.25),
        at(Unknown.STRENGTH, x, 0.1, 10),
        curves);
  }

  private static double at(Unknown unknown, double[] x, double low, double high) {
    return Math.min(Math.max(unknown.value(x[unknown.ordinal()]), low), high);
  }

  private static String word(Unknown unknown) {
    return unknown.name().toLowerCase(Locale.ROOT);
  }

  @Override
  protected List<?> parts() {
    return List.of(list(mean), Arrays.stream(covariance).map(Value::list).toList(), parts, weights);
  }

  /** In a line, for logs: mean and standard deviation of each unknown. */
  @Override
  public String toString() {
    StringJoiner words = new StringJoiner(", ");
    for (int i = 0; i < SIZE; i++) {
      words.add(
          Unknown.values()[i]
              + " "
              + Checks.plain(mean[i])
              + " ± "
              + Checks.plain(Math.sqrt(covariance[i][i])));
    }
    return words + (parts.isEmpty() ? "" : ", by " + parts.size() + " rate curves");
  }
}
