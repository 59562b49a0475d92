package doughtide.core.forecast;

import doughtide.core.quantity.Checks;
import doughtide.core.quantity.InputException;
import doughtide.core.rise.Unknowns;
import java.util.Arrays;
import org.apache.commons.math3.linear.Array2DRowRealMatrix;
import org.apache.commons.math3.linear.EigenDecomposition;
import org.apache.commons.math3.linear.RealMatrix;

/**
 * What is believed about the unknowns before a bake: a normal distribution over the first six of
 * {@link Unknown}, and every rate curve form alike. {@link #standard()} is what holds for a baker
 * nobody knows; readings narrow it. Immutable.
 */
public final class Belief {
  /** Number of unknowns with a normal distribution. */
  public static final int SIZE = Unknown.CURVE.ordinal();

  private final double[] mean;
  private final double[][] covariance;
  private final double[][] root;

  private Belief(double[] mean, double[][] covariance) {
    this.mean = mean;
    this.covariance = covariance;
    this.root = squareRoot(covariance);
  }

  /**
   * The belief about an unknown baker. Standard deviations, all starting values: vigour 25 %, lag
   * 35 %, dough temperature 0.7 °C, rate 10 %, retention 0.025, starting air 25 %.
   */
  public static Belief standard() {
    double[] deviations = {0.25, 0.35, 0.7, 0.10, 0.025, 0.25};
    double[][] covariance = new double[SIZE][SIZE];
    for (int i = 0; i < SIZE; i++) {
      covariance[i][i] = deviations[i] * deviations[i];
    }
    return new Belief(new double[SIZE], covariance);
  }

  /**
   * A belief from a mean and a covariance, for example after learning.
   *
   * @param mean six numbers in the order of {@link Unknown}
   * @param covariance six by six, symmetric, not negative
   * @throws InputException if the sizes are wrong, a number is not finite, or the matrix is not
   *     symmetric
   */
  public static Belief of(double[] mean, double[][] covariance) {
    if (mean.length != SIZE || covariance.length != SIZE) {
      throw new InputException("a belief needs " + SIZE + " means and as many rows of covariance");
    }
    double[][] copy = new double[SIZE][];
    for (int i = 0; i < SIZE; i++) {
      Checks.inRange("mean of " + Unknown.values()[i].words(), mean[i], -3, 3, "");
      copy[i] = checkedRow(covariance, i);
    }
    return new Belief(mean.clone(), copy);
  }

  private static double[] checkedRow(double[][] covariance, int i) {
    if (covariance[i].length != SIZE) {
      throw new InputException("a belief's covariance needs " + SIZE + " columns in each row");
    }
    for (int j = 0; j < SIZE; j++) {
      Checks.inRange("covariance", covariance[i][j], -100, 100, "");
      if (Math.abs(covariance[i][j] - covariance[j][i]) > 1e-9) {
        throw new InputException("a belief's covariance must be symmetric");
      }
    }
    return covariance[i].clone();
  }

  private static double[][] squareRoot(double[][] covariance) {
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

  /** Mean of each unknown, a copy. */
  public double[] mean() {
    return mean.clone();
  }

  /** Covariance, a copy. */
  public double[][] covariance() {
    return Arrays.stream(covariance).map(double[]::clone).toArray(double[][]::new);
  }

  /** Standard deviation of one unknown in its own coordinate. */
  public double standardDeviation(Unknown unknown) {
    int i = unknown.ordinal();
    return Math.sqrt(covariance[i][i]);
  }

  /**
   * The same belief with another standard deviation for one unknown, for example a better
   * thermometer; its correlations stay.
   *
   * @param unknown which, not {@link Unknown#CURVE}
   * @param deviation 0…3 in its own coordinate
   */
  public Belief withStandardDeviation(Unknown unknown, double deviation) {
    int i = unknown.ordinal();
    Checks.inRange("standard deviation of " + unknown.words(), deviation, 0, 3, "");
    double old = standardDeviation(unknown);
    double[][] changed = covariance();
    for (int j = 0; j < SIZE; j++) {
      double scale = old > 0 ? deviation / old : 0;
      changed[i][j] *= scale;
      changed[j][i] *= scale;
    }
    changed[i][i] = deviation * deviation;
    return new Belief(mean.clone(), changed);
  }

  /**
   * Turns standard normal scores into unknowns.
   *
   * @param normal {@link #SIZE} independent standard normal scores
   * @param curveRank 0…1
   */
  public Unknowns unknowns(double[] normal, double curveRank) {
    double[] x = mean.clone();
    for (int i = 0; i < SIZE; i++) {
      for (int j = 0; j < SIZE; j++) {
        x[i] += root[i][j] * normal[j];
      }
    }
    return unknownsAt(x, curveRank);
  }

  /** The middle of the belief with the default rate curves. */
  public Unknowns middle() {
    return unknownsAt(mean, 0);
  }

  /**
   * Unknowns at a point of the belief's coordinates; extremes are held inside the model's ranges.
   *
   * @param x {@link #SIZE} coordinates
   * @param curveRank 0…1
   */
  public static Unknowns unknownsAt(double[] x, double curveRank) {
    return new Unknowns(
        clamp(Math.exp(x[Unknown.VIGOUR.ordinal()]), 0.02, 20),
        clamp(Math.exp(x[Unknown.LAG.ordinal()]), 0.02, 20),
        clamp(x[Unknown.TEMPERATURE.ordinal()], -8, 8),
        clamp(Math.exp(x[Unknown.RATE.ordinal()]), 0.1, 10),
        clamp(x[Unknown.RETENTION.ordinal()], -0.2, 0.2),
        clamp(Unknowns.USUAL_STARTING_AIR * Math.exp(x[Unknown.AIR.ordinal()]), 0.005, 0.25),
        curveRank);
  }

  private static double clamp(double value, double low, double high) {
    return Math.min(Math.max(value, low), high);
  }
}
