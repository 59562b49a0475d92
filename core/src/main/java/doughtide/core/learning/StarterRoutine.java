package doughtide.core.learning;

import doughtide.core.Internal;
import doughtide.core.quantity.InputException;
import java.util.Arrays;

/**
 * How regularly a starter is fed and used. Of a scatter of about 0.29 in the logarithm of the hours
 * to 50 %, 0.12 is one baker's from bake to bake where the starter is fed on schedule and used at
 * its peak, 0.22 otherwise (starting values, after 17 feeds of one starter at irregular intervals
 * whose peak times scatter by 0.27; J. Lam 2021).
 */
@Internal
public enum StarterRoutine {
  /** Fed on schedule, used at its peak. */
  KEPT("kept", 0.26, 0.25, 0, 0.02),
  /** Fed when it suits. */
  IRREGULAR("irregular", 0.44, 0.48, 0.08, 0.04),
  /** Nobody said; between the two. */
  UNKNOWN("unknown", 0.37, 0.37, 0.05, 0.03);

  private final String key;
  private final double vigour;
  private final double lag;
  private final double rate;
  private final double retention;

  StarterRoutine(String key, double vigour, double lag, double rate, double retention) {
    this.key = key;
    this.vigour = vigour;
    this.lag = lag;
    this.rate = rate;
    this.retention = retention;
  }

  /**
   * Finds a routine by its key.
   *
   * @throws InputException if there is none; the message lists them
   */
  public static StarterRoutine named(String key) {
    for (StarterRoutine each : values()) {
      if (each.key.equalsIgnoreCase(key.strip())) {
        return each;
      }
    }
    throw InputException.unknown(
        "starter routine", key, Arrays.stream(values()).map(StarterRoutine::key).toList());
  }

  /** As written in files and on the command line. */
  public String key() {
    return key;
  }

  /** Standard deviations from bake to bake, in the coordinates of {@link LearningPrior}. */
  public double[] bakeDeviation() {
    return new double[] {vigour, lag, 0.5, rate, retention, 0.12, 0.1, 0.015};
  }
}
