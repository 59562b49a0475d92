package doughtide.core.learning;

import doughtide.core.forecast.RadicalInverse;
import doughtide.core.quantity.Checks;
import java.io.Serializable;
import org.apache.commons.math3.distribution.NormalDistribution;

/**
 * How a baker's sample jar misreads: ln of the height read over the true height. A dome read at its
 * top, a meniscus or a jar that widens read high or low on every bake.
 *
 * @param mean −1…1
 * @param deviation standard deviation, 0…1
 */
public record JarError(double mean, double deviation) implements Serializable {
  private static final int BASE = 11; // 3, 5 and 7 are those of the loaf's unknowns

  /**
   * Checks every range.
   *
   * @param mean −1…1
   * @param deviation standard deviation, 0…1
   */
  public JarError {
    Checks.inRange("misreading of the jar", mean, -1, 1, "");
    Checks.inRange("uncertainty of the jar", deviation, 0, 1, "");
  }

  /**
   * {@return the error of a jar that nobody knows: 3 % over all bakes and 1.5 % from bake to bake
   * (starting values)}
   */
  public static JarError standard() {
    return LearningPrior.standard().nextJar();
  }

  /**
   * {@return read over true height for each member of an ensemble, spread by a radical inverse
   * beside the ensemble's own draws}
   *
   * @param members how many, 1 or more
   */
  public double[] factorsOfMembers(int members) {
    NormalDistribution normal = new NormalDistribution(null, 0, 1);
    double[] factors = new double[members];
    for (int i = 0; i < members; i++) {
      double score = normal.inverseCumulativeProbability(RadicalInverse.of(i + 1, BASE));
      factors[i] = Math.exp(mean + deviation * score);
    }
    return factors;
  }
}
