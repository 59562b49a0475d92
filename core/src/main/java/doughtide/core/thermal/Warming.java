package doughtide.core.thermal;

import doughtide.core.Internal;
import doughtide.core.quantity.Checks;
import java.io.Serializable;

/**
 * A difference of temperature: by how much mixing warms a dough.
 *
 * @param kelvin −30…60 K
 */
@Internal
public record Warming(double kelvin) implements Serializable {
  /** None. */
  public static final Warming NONE = new Warming(0);

  /**
   * Checks the range.
   *
   * @throws doughtide.core.quantity.InputException outside −30…60 K or not a number
   */
  public Warming {
    Checks.inRange("warming by mixing", kelvin, -30, 60, "K");
  }

  /**
   * From Celsius degrees.
   *
   * @param degrees −30…60
   */
  public static Warming ofCelsiusDegrees(double degrees) {
    return new Warming(degrees);
  }

  /**
   * From Fahrenheit degrees.
   *
   * @param degrees −54…108
   */
  public static Warming ofFahrenheitDegrees(double degrees) {
    return new Warming(degrees / 1.8);
  }
}
