package doughtide.core.learning;

/**
 * How regularly a starter is fed and used. Of a scatter of about 0.29 in the logarithm of the hours
 * to 50 %, 0.12 is one baker's from bake to bake where the starter is fed on schedule and used at
 * its peak, 0.22 otherwise (starting values, after 17 feeds of one starter at irregular intervals
 * whose peak times scatter by 0.27; J. Lam 2021).
 */
public enum StarterRoutine {
  /** Fed on schedule, used at its peak. */
  KEPT("kept", 0.20, 0.20, 0.02),
  /** Fed when it suits. */
  IRREGULAR("irregular", 0.40, 0.40, 0.04),
  /** Nobody said; between the two. */
  UNKNOWN("unknown", 0.32, 0.32, 0.03);

  private final String key;
  private final double vigour;
  private final double lag;
  private final double retention;

  StarterRoutine(String key, double vigour, double lag, double retention) {
    this.key = key;
    this.vigour = vigour;
    this.lag = lag;
    this.retention = retention;
  }

  /** As written in files and on the command line. */
  public String key() {
    return key;
  }

  /** Standard deviations from bake to bake, in the coordinates of {@link LearningPrior}. */
  double[] bakeDeviation() {
    return new double[] {vigour, lag, 0.5, 0, retention, 0.12, 0.1, 0.015};
  }
}
