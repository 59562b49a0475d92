package doughtide.core.forecast;

import doughtide.core.quantity.Checks;
import doughtide.core.quantity.InputException;
import doughtide.core.rise.Unknowns;
import java.io.Serializable;
import java.util.Arrays;
import java.util.Collections;
import java.util.List;
import java.util.Locale;
import org.apache.commons.math3.linear.Array2DRowRealMatrix;
import org.apache.commons.math3.linear.EigenDecomposition;
import org.apache.commons.math3.linear.RealMatrix;

/**
 * What is believed about the unknowns before a bake: a normal distribution over the first six of
 * {@link Unknown}, and every rate curve form alike; or, after learning, one such distribution for
 * each rate curve form ({@link #byCurve}). {@link #standard()} is what holds for a baker nobody
 * knows; readings narrow it. Immutable.
 */
public final class Belief implements Serializable {
  private static final long serialVersionUID = 1;

  /** Number of unknowns with a normal distribution. */
  public static final int SIZE = Unknown.CURVE.ordinal();

  private final double[] mean;
  private final double[][] covariance;
  private final double[][] root;
  private final List<Belief> parts;
  private final double[] weights;

  private Belief(double[] mean, double[][] covariance) {
    this(mean, covariance, List.of(), new double[0]);
  }

  private Belief(double[] mean, double[][] covariance, List<Belief> parts, double[] weights) {
    this.mean = mean;
    this.covariance = covariance;
    this.root = squareRoot(covariance);
    this.parts = parts;
    this.weights = weights;
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
   * A belief in which the rate curve form matters to everything else: readings at 20 °C say another
   * rate at 25 °C under one curve than under another.
   *
   * @param parts what is believed if the first, second … form is the right one, each made by {@link
   *     #of}
   * @param weights how likely each form is, not negative, as many as parts; scaled to a sum of 1
   * @throws InputException if there is no part, or the numbers differ, or no weight is above 0
   */
  public static Belief byCurve(List<Belief> parts, double[] weights) {
    if (parts.isEmpty() || parts.size() != weights.length) {
      throw new InputException(
          "belief.curves", "a belief by curve needs one weight for each of its parts");
    }
    for (double weight : weights) {
      Checks.inRange("weight of a rate curve", weight, 0, 1e300, "");
    }
    double sum = Arrays.stream(weights).sum();
    Checks.inRange("sum of the weights of rate curves", sum, 1e-300, 1e300, "");
    double[] scaled = Arrays.stream(weights).map(weight -> weight / sum).toArray();
    double[] mean = new double[SIZE];
    double[][] covariance = new double[SIZE][SIZE];
    for (int k = 0; k < scaled.length; k++) {
      for (int i = 0; i < SIZE; i++) {
        mean[i] += scaled[k] * parts.get(k).mean[i];
      }
    }
    for (int k = 0; k < scaled.length; k++) {
      addSpread(covariance, parts.get(k), mean, scaled[k]);
    }
    return new Belief(mean, covariance, List.copyOf(parts), scaled);
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
   * What is believed under each rate curve form.
   *
   * @param forms number of forms of the model
   * @return as many beliefs
   * @throws InputException if this belief was made for another number of forms
   */
  public List<Belief> underEachCurve(int forms) {
    if (parts.isEmpty()) {
      return Collections.nCopies(forms, this);
    }
    if (parts.size() != forms) {
      throw new InputException(
          "belief.curves",
          "this belief knows " + parts.size() + " rate curves, the model has " + forms);
    }
    return parts;
  }

  /**
   * How likely each rate curve form is.
   *
   * @param forms number of forms of the model
   * @return as many shares with the sum 1
   */
  public double[] curveWeights(int forms) {
    underEachCurve(forms);
    if (parts.isEmpty()) {
      double[] alike = new double[forms];
      Arrays.fill(alike, 1.0 / forms);
      return alike;
    }
    return weights.clone();
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
    if (unknown == Unknown.CURVE) {
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
    List<Belief> changedParts =
        parts.stream().map(part -> part.withStandardDeviation(unknown, deviation)).toList();
    return parts.isEmpty() ? new Belief(mean.clone(), changed) : byCurve(changedParts, weights);
  }

  /**
   * Turns standard normal scores into unknowns.
   *
   * @param normal {@link #SIZE} independent standard normal scores
   * @param curveRank 0…1
   */
  public Unknowns unknowns(double[] normal, double curveRank) {
    if (!parts.isEmpty()) {
      int part = partAt(curveRank);
      return parts.get(part).unknowns(normal, middleRank(part));
    }
    double[] x = mean.clone();
    for (int i = 0; i < SIZE; i++) {
      for (int j = 0; j < SIZE; j++) {
        x[i] += root[i][j] * normal[j];
      }
    }
    return unknownsAt(x, curveRank);
  }

  private int partAt(double curveRank) {
    double left = curveRank;
    int part = 0;
    while (part < weights.length - 1 && left >= weights[part]) {
      left -= weights[part];
      part++;
    }
    return part;
  }

  private double middleRank(int part) {
    return (part + 0.5) / parts.size();
  }

  /**
   * The middle of the belief: with the default rate curves, or with the likeliest if the belief
   * tells them apart.
   */
  public Unknowns middle() {
    if (parts.isEmpty()) {
      return unknownsAt(mean, 0);
    }
    int likeliest = 0;
    for (int k = 1; k < weights.length; k++) {
      likeliest = weights[k] > weights[likeliest] ? k : likeliest;
    }
    return unknownsAt(parts.get(likeliest).mean, middleRank(likeliest));
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

  private static String word(Unknown unknown) {
    return unknown.name().toLowerCase(Locale.ROOT);
  }
}
