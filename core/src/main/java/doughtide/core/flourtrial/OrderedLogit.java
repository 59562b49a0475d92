package doughtide.core.flourtrial;

/**
 * Log posterior of an ordered response (proportional odds: McCullagh 1980, J R Stat Soc B 42:109,
 * from memory) with its exact gradient and Hessian.
 *
 * <p>P(grade ≤ k) = F((κk + u + v − h)/s), F the logistic function, h the hydration, u the offset
 * of the person, v of the trial. The vector holds the last cut point κ, the logarithms of the three
 * gaps below it (which keeps the cut points in order), ln s, then all u and all v; every entry has
 * a Gaussian prior.
 */
final class OrderedLogit {
  static final int CUTS = Grade.values().length - 1;
  static final int LIMIT = 0;
  static final int FIRST_GAP = 1;
  static final int LOG_SCALE = CUTS;
  static final int FIRST_OFFSET = CUTS + 1;

  /**
   * One grade: its place in the order, the hydration, and where the two offsets sit in the vector.
   */
  record Observation(int grade, double hydrationPercent, int personAt, int trialAt) {}

  private final Observation[] observations;
  private final double[] priorMean;
  private final double[] priorSd;

  OrderedLogit(Observation[] observations, double[] priorMean, double[] priorSd) {
    this.observations = observations.clone();
    this.priorMean = priorMean.clone();
    this.priorSd = priorSd.clone();
  }

  int dimension() {
    return priorMean.length;
  }

  double[] priorMean() {
    return priorMean.clone();
  }

  double priorVariance(double[] weights) {
    double sum = 0;
    for (int i = 0; i < weights.length; i++) {
      sum += Math.pow(weights[i] * priorSd[i], 2);
    }
    return sum;
  }

  /** Value, gradient and Hessian of the log posterior, constants left out. */
  Derivatives at(double[] theta) {
    Derivatives sum = new Derivatives(dimension());
    for (Observation each : observations) {
      addObservation(sum, theta, each);
    }
    for (int i = 0; i < theta.length; i++) {
      double precision = 1 / (priorSd[i] * priorSd[i]);
      double away = theta[i] - priorMean[i];
      sum.value -= 0.5 * precision * away * away;
      sum.gradient[i] -= precision * away;
      sum.hessian[i][i] -= precision;
    }
    return sum;
  }

  private void addObservation(Derivatives sum, double[] theta, Observation each) {
    boolean lowest = each.grade() == 0;
    boolean highest = each.grade() == CUTS;
    double upper = highest ? Double.POSITIVE_INFINITY : predictor(theta, each, each.grade());
    double lower = lowest ? Double.NEGATIVE_INFINITY : predictor(theta, each, each.grade() - 1);
    double between = lowest || highest ? 0 : 1 / Math.expm1(upper - lower);
    sum.value += logProbability(upper, lower);
    double slopeUpper = highest ? 0 : between + logistic(-upper);
    double slopeLower = lowest ? 0 : -between - logistic(lower);
    double cross = between * (1 + between);
    if (!highest) {
      double[] direction = direction(theta, each, each.grade(), upper);
      sum.add(direction, slopeUpper, -cross - density(upper));
      addCurvature(sum, theta, each.grade(), direction, upper, slopeUpper);
    }
    if (!lowest) {
      double[] direction = direction(theta, each, each.grade() - 1, lower);
      sum.add(direction, slopeLower, -cross - density(lower));
      addCurvature(sum, theta, each.grade() - 1, direction, lower, slopeLower);
    }
    if (!lowest && !highest) {
      double[] up = direction(theta, each, each.grade(), upper);
      double[] down = direction(theta, each, each.grade() - 1, lower);
      sum.addCross(up, down, cross);
    }
  }

  /** ln(F(a) − F(b)) without cancellation. */
  private static double logProbability(double a, double b) {
    double gap = Double.isInfinite(a - b) ? 0 : Math.log(-Math.expm1(-(a - b)));
    return gap - softplus(-a) - softplus(b);
  }

  /** Cut point k for the middle person and trial. */
  static double cut(double[] theta, int k) {
    double cut = theta[LIMIT];
    for (int gap = k; gap < CUTS - 1; gap++) {
      cut -= Math.exp(theta[FIRST_GAP + gap]);
    }
    return cut;
  }

  private static double predictor(double[] theta, Observation each, int k) {
    double shift = theta[each.personAt()] + theta[each.trialAt()];
    return (cut(theta, k) + shift - each.hydrationPercent()) * Math.exp(-theta[LOG_SCALE]);
  }

  /** First derivatives of the predictor of cut point k. */
  private static double[] direction(double[] theta, Observation each, int k, double predictor) {
    double steepness = Math.exp(-theta[LOG_SCALE]);
    double[] direction = new double[theta.length];
    direction[LIMIT] = steepness;
    for (int gap = k; gap < CUTS - 1; gap++) {
      direction[FIRST_GAP + gap] = -Math.exp(theta[FIRST_GAP + gap]) * steepness;
    }
    direction[LOG_SCALE] = -predictor;
    direction[each.personAt()] = steepness;
    direction[each.trialAt()] = steepness;
    return direction;
  }

  /** Second derivatives of the predictor, weighted by the slope of the log likelihood along it. */
  private static void addCurvature(
      Derivatives sum, double[] theta, int k, double[] direction, double predictor, double slope) {
    for (int gap = k; gap < CUTS - 1; gap++) {
      int at = FIRST_GAP + gap;
      sum.hessian[at][at] += slope * direction[at];
    }
    sum.hessian[LOG_SCALE][LOG_SCALE] += slope * predictor;
    for (int i = 0; i < theta.length; i++) {
      if (i != LOG_SCALE) {
        sum.hessian[i][LOG_SCALE] -= slope * direction[i];
        sum.hessian[LOG_SCALE][i] -= slope * direction[i];
      }
    }
  }

  static double logistic(double x) {
    return x >= 0 ? 1 / (1 + Math.exp(-x)) : Math.exp(x) / (1 + Math.exp(x));
  }

  private static double density(double x) {
    return logistic(x) * logistic(-x);
  }

  private static double softplus(double x) {
    return Math.max(x, 0) + Math.log1p(Math.exp(-Math.abs(x)));
  }

  /** A value with its first and second derivatives, filled in while summing. */
  static final class Derivatives {
    double value;
    final double[] gradient;
    final double[][] hessian;

    private Derivatives(int dimension) {
      gradient = new double[dimension];
      hessian = new double[dimension][dimension];
    }

    private void add(double[] first, double slope, double curvature) {
      for (int i = 0; i < first.length; i++) {
        gradient[i] += slope * first[i];
      }
      addCross(first, first, curvature / 2);
    }

    /** Most entries are zero: an observation knows one person and one trial. */
    private void addCross(double[] first, double[] second, double curvature) {
      for (int i = 0; i < first.length; i++) {
        if (first[i] == 0 && second[i] == 0) {
          continue;
        }
        for (int j = 0; j < first.length; j++) {
          hessian[i][j] += curvature * (first[i] * second[j] + second[i] * first[j]);
        }
      }
    }
  }
}
