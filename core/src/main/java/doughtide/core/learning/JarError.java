package doughtide.core.learning;

import doughtide.core.quantity.Checks;
import java.io.Serializable;

/**
 * How a baker's sample jar misreads: ln of the height read over the true height. A dome read at its
 * top, a meniscus or a jar that widens read high or low on every bake.
 *
 * @param mean −1…1
 * @param deviation standard deviation, 0…1
 */
public record JarError(double mean, double deviation) implements Serializable {
  /** Checks every range. */
  public JarError {
    Checks.inRange("misreading of the jar", mean, -1, 1, "");
    Checks.inRange("uncertainty of the jar", deviation, 0, 1, "");
  }

  /** Nobody knows: 3 % over all bakes and 1.5 % from bake to bake (starting values). */
  public static JarError standard() {
    return LearningPrior.standard().nextJar();
  }
}
