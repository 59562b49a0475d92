package doughtide.core.learning;

import org.apache.commons.math3.fitting.leastsquares.LeastSquaresBuilder;
import org.apache.commons.math3.fitting.leastsquares.LeastSquaresOptimizer;
import org.apache.commons.math3.fitting.leastsquares.LevenbergMarquardtOptimizer;
import org.apache.commons.math3.linear.ArrayRealVector;
import org.apache.commons.math3.linear.CholeskyDecomposition;
import org.apache.commons.math3.linear.RealMatrix;

/**
 * The most probable scores and the covariance that Laplace's method gives around them.
 *
 * @param scores at the optimum
 * @param covariance inverse of JᵀJ there; the prior's rows keep it regular
 * @param logEvidence log of the probability of the readings under this model, up to a constant that
 *     is the same for the same readings
 */
record PosteriorFit(double[] scores, double[][] covariance, double logEvidence) {
  private static final int MOST_EVALUATIONS = 200;
  private static final double COST_TOLERANCE = 1e-5;
  private static final double STEP_TOLERANCE = 1e-4;

  static PosteriorFit of(TwoLevelProblem problem, double[] start) {
    LeastSquaresOptimizer.Optimum optimum =
        new LevenbergMarquardtOptimizer()
            .withCostRelativeTolerance(COST_TOLERANCE)
            .withParameterRelativeTolerance(STEP_TOLERANCE)
            .optimize(
                new LeastSquaresBuilder()
                    .start(start)
                    .model(problem)
                    .target(new double[problem.rows()])
                    .lazyEvaluation(true)
                    .maxEvaluations(MOST_EVALUATIONS)
                    .maxIterations(MOST_EVALUATIONS)
                    .build());
    double[] scores = optimum.getPoint().toArray();
    double[] residuals = problem.computeValue(scores).toArray();
    RealMatrix jacobian = problem.computeJacobian(scores);
    CholeskyDecomposition information =
        new CholeskyDecomposition(jacobian.transpose().multiply(jacobian), 1e-8, 1e-12);
    double square = new ArrayRealVector(residuals, false).getNorm();
    double logEvidence = -0.5 * square * square - halfLogDeterminant(information.getL());
    return new PosteriorFit(scores, information.getSolver().getInverse().getData(), logEvidence);
  }

  private static double halfLogDeterminant(RealMatrix lower) {
    double sum = 0;
    for (int i = 0; i < lower.getRowDimension(); i++) {
      sum += Math.log(lower.getEntry(i, i));
    }
    return sum;
  }
}
