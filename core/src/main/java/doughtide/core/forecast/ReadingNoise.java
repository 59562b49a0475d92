package doughtide.core.forecast;

import doughtide.core.Internal;
import doughtide.core.quantity.Checks;
import doughtide.core.quantity.Rise;
import java.io.Serializable;

/**
 * How far a reading lies from the truth.
 *
 * @param heightShare part of the standard deviation that grows with the height: how well a domed
 *     top is read, 0…0.5 of the height (starting value 0.04)
 * @param risePoints constant part of the standard deviation, 0.001…0.5 of the starting height
 *     (starting value 0.02: 1 mm on 50 mm)
 * @param ph standard deviation of a bake's pH against the model's, 0.02…2 (starting value 0.25: the
 *     model's own ±0.2 and the meter's 0.1); it is common to the bake, so many readings of pH count
 *     as one
 * @param degreesOfFreedom of Student's t, 1…100: how often a reading is simply wrong (starting
 *     value 4, usual in robust regression: Lange, Little &amp; Taylor 1989, J Am Stat Assoc 84:881,
 *     from memory)
 */
@Internal
public record ReadingNoise(
    double heightShare, double risePoints, double ph, double degreesOfFreedom)
    implements Serializable {
  /**
   * From this many readings of the rise in one bake on, more of them add nothing: what is left is
   * the model's own error, not the reader's (starting value).
   */
  public static final int MOST_INDEPENDENT = 24;

  /** Checks every range. */
  public ReadingNoise {
    Checks.inRange("reading error of the height", heightShare, 0, 0.5, "");
    Checks.inRange("reading error of the rise", risePoints, 0.001, 0.5, "");
    Checks.inRange("reading error of the pH", ph, 0.02, 2, "");
    Checks.inRange("degrees of freedom", degreesOfFreedom, 1, 100, "");
  }

  /** The starting values. */
  public static ReadingNoise standard() {
    return new ReadingNoise(0.04, 0.02, 0.25, 4);
  }

  /**
   * Standard deviation of one reading of a rise, as a fraction of the starting height.
   *
   * @param rise the rise
   */
  public double riseDeviation(Rise rise) {
    return risePoints + heightShare * Math.max(rise.heightTimes(), 0);
  }

  /**
   * Signed root of twice Student's negative log-likelihood, so that least squares minimise it.
   *
   * @param residual in standard deviations
   */
  public double robust(double residual) {
    double nu = degreesOfFreedom;
    return Math.signum(residual) * Math.sqrt((nu + 1) * Math.log1p(residual * residual / nu));
  }

  /**
   * Student's log-likelihood, but for what is the same for all.
   *
   * @param residual in standard deviations
   */
  public double logLikelihood(double residual) {
    double robust = robust(residual);
    return -robust * robust / 2;
  }

  /** Derivative of {@link #robust}. */
  public double robustSlope(double residual) {
    double nu = degreesOfFreedom;
    double root = Math.abs(robust(residual));
    if (root < 1e-9) {
      return Math.sqrt((nu + 1) / nu);
    }
    return (nu + 1) * Math.abs(residual) / (nu + residual * residual) / root;
  }
}
