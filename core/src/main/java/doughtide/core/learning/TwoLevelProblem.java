package doughtide.core.learning;

import doughtide.core.forecast.ReadingNoise;
import java.util.ArrayList;
import java.util.List;
import org.apache.commons.math3.fitting.leastsquares.ValueAndJacobianFunction;
import org.apache.commons.math3.linear.Array2DRowRealMatrix;
import org.apache.commons.math3.linear.ArrayRealVector;
import org.apache.commons.math3.linear.RealMatrix;
import org.apache.commons.math3.linear.RealVector;
import org.apache.commons.math3.util.Pair;

/**
 * Residuals of all bakes and of the prior, over standard normal scores: first the baker's, then
 * those of each occasion, a bake or the doughs of one evening. A bake's coordinates are mean + root
 * · baker's scores + its own deviations times its occasion's scores. The priors are rows whose
 * residual is the score itself.
 */
final class TwoLevelProblem implements ValueAndJacobianFunction {
  private static final int SIZE = LearningPrior.SIZE;

  private final List<BakeResponse> bakes;
  private final double[] mean;
  private final double[][] root;
  private final double[][] bakeDeviation;
  private final int[] varying;
  private final ReadingNoise noise;
  private final int[] occasion;
  private final int occasions;

  /**
   * @param bakes one response a bake
   * @param mean of the baker's coordinates
   * @param root a square root of their covariance
   * @param bakeDeviation for each bake the deviation of each coordinate from the baker's
   * @param varying the coordinates that vary from bake to bake
   * @param noise of the readings
   */
  TwoLevelProblem(
      List<BakeResponse> bakes,
      double[] mean,
      double[][] root,
      double[][] bakeDeviation,
      int[] varying,
      ReadingNoise noise) {
    this.bakes = bakes;
    this.mean = mean;
    this.root = root;
    this.bakeDeviation = bakeDeviation;
    this.varying = varying;
    this.noise = noise;
    List<String> known = new ArrayList<>();
    this.occasion = new int[bakes.size()];
    for (int b = 0; b < occasion.length; b++) {
      String name = bakes.get(b).occasion();
      if (name.isEmpty() || !known.contains(name)) {
        known.add(name);
      }
      occasion[b] = name.isEmpty() ? known.size() - 1 : known.indexOf(name);
    }
    this.occasions = known.size();
  }

  int parameters() {
    return SIZE + occasions * varying.length;
  }

  int rows() {
    return bakes.stream().mapToInt(BakeResponse::rows).sum() + parameters();
  }

  /** Place of the first score of a bake's occasion. */
  int offset(int bake) {
    return SIZE + occasion[bake] * varying.length;
  }

  /** Coordinates of one bake. */
  double[] coordinates(double[] scores, int bake) {
    double[] x = mean.clone();
    for (int i = 0; i < SIZE; i++) {
      for (int j = 0; j < SIZE; j++) {
        x[i] += root[i][j] * scores[j];
      }
    }
    for (int v = 0; v < varying.length; v++) {
      x[varying[v]] += bakeDeviation[bake][varying[v]] * scores[offset(bake) + v];
    }
    return x;
  }

  @Override
  public Pair<RealVector, RealMatrix> value(RealVector point) {
    double[] scores = point.toArray();
    return new Pair<>(computeValue(scores), computeJacobian(scores));
  }

  @Override
  public RealVector computeValue(double[] scores) {
    double[] value = new double[rows()];
    int row = 0;
    for (int b = 0; b < bakes.size(); b++) {
      for (double residual : bakes.get(b).residuals(coordinates(scores, b))) {
        value[row++] = noise.robust(residual);
      }
    }
    System.arraycopy(scores, 0, value, row, scores.length);
    return new ArrayRealVector(value, false);
  }

  @Override
  public RealMatrix computeJacobian(double[] scores) {
    double[][] jacobian = new double[rows()][parameters()];
    int row = 0;
    for (int b = 0; b < bakes.size(); b++) {
      double[] x = coordinates(scores, b);
      double[] residual = bakes.get(b).residuals(x);
      double[][] slope = bakes.get(b).slopes(x);
      for (int r = 0; r < residual.length; r++) {
        fill(jacobian[row++], slope[r], noise.robustSlope(residual[r]), b);
      }
    }
    for (int p = 0; p < parameters(); p++) {
      jacobian[row + p][p] = 1;
    }
    return new Array2DRowRealMatrix(jacobian, false);
  }

  private void fill(double[] target, double[] slope, double factor, int bake) {
    for (int i = 0; i < SIZE; i++) {
      for (int j = 0; j < SIZE; j++) {
        target[j] += factor * slope[i] * root[i][j];
      }
    }
    for (int v = 0; v < varying.length; v++) {
      int i = varying[v];
      target[offset(bake) + v] = factor * slope[i] * bakeDeviation[bake][i];
    }
  }
}
