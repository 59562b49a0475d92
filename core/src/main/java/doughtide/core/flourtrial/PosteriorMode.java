package doughtide.core.flourtrial;

import org.apache.commons.math3.linear.Array2DRowRealMatrix;
import org.apache.commons.math3.linear.ArrayRealVector;
import org.apache.commons.math3.linear.EigenDecomposition;
import org.apache.commons.math3.linear.RealMatrix;
import org.apache.commons.math3.linear.RealVector;

/**
 * The most probable vector of an {@link OrderedLogit} by Newton's method with step halving, and the
 * covariance of Laplace's approximation there. Where the surface is not concave, curvatures are
 * taken by their size, so that every step goes uphill.
 */
final class PosteriorMode {
  private static final int MOST_STEPS = 200;
  private static final int MOST_HALVINGS = 40;
  private static final double LONGEST_STEP = 5;
  private static final double FLAT = 1e-9;
  private static final double SMALLEST_CURVATURE = 1e-6;
  private static final double ARMIJO = 1e-4;

  private final double[] theta;
  private final double value;
  private final RealMatrix covariance;

  private PosteriorMode(double[] theta, OrderedLogit.Derivatives derivatives) {
    this.theta = theta;
    this.value = derivatives.value;
    this.covariance = inverseCurvature(derivatives);
  }

  /** The highest of the modes reached from several starting limits. */
  static PosteriorMode of(OrderedLogit posterior, double[] startingLimits) {
    PosteriorMode best = climb(posterior, posterior.priorMean());
    for (double limit : startingLimits) {
      double[] start = posterior.priorMean();
      start[OrderedLogit.LIMIT] = limit;
      PosteriorMode mode = climb(posterior, start);
      best = mode.value > best.value + FLAT ? mode : best;
    }
    return best;
  }

  private static PosteriorMode climb(OrderedLogit posterior, double[] start) {
    double[] theta = start;
    OrderedLogit.Derivatives here = posterior.at(theta);
    for (int step = 0; step < MOST_STEPS; step++) {
      RealVector gradient = new ArrayRealVector(here.gradient, false);
      if (gradient.getLInfNorm() < FLAT) {
        break;
      }
      RealVector move = inverseCurvature(here).operate(gradient);
      double length = move.getNorm();
      double fraction = length > LONGEST_STEP ? LONGEST_STEP / length : 1;
      double gain = move.dotProduct(gradient);
      double[] next = theta;
      OrderedLogit.Derivatives there = here;
      for (int halving = 0; halving < MOST_HALVINGS; halving++) {
        next = new ArrayRealVector(theta).combine(1, fraction, move).toArray();
        there = posterior.at(next);
        if (there.value >= here.value + ARMIJO * fraction * gain) {
          break;
        }
        fraction /= 2;
      }
      if (!(there.value > here.value)) {
        break;
      }
      theta = next;
      here = there;
    }
    return new PosteriorMode(theta, here);
  }

  private static RealMatrix inverseCurvature(OrderedLogit.Derivatives derivatives) {
    RealMatrix hessian = new Array2DRowRealMatrix(derivatives.hessian, false);
    EigenDecomposition eigen = new EigenDecomposition(hessian);
    RealMatrix vectors = eigen.getV();
    RealMatrix scaled = vectors.copy();
    for (int column = 0; column < scaled.getColumnDimension(); column++) {
      double curvature = Math.max(SMALLEST_CURVATURE, Math.abs(eigen.getRealEigenvalue(column)));
      scaled.setColumnVector(column, vectors.getColumnVector(column).mapDivide(curvature));
    }
    return scaled.multiply(vectors.transpose());
  }

  double[] theta() {
    return theta.clone();
  }

  /** Variance of a weighted sum of the vector's entries. */
  double variance(double[] weights) {
    RealVector vector = new ArrayRealVector(weights, false);
    return vector.dotProduct(covariance.operate(vector));
  }
}
