package doughtide.core.quantity;

import java.io.Serializable;

/**
 * A mass.
 *
 * @param grams 0.001…10 000 000 g (a milligram to ten tonnes)
 */
public record Mass(double grams) implements Comparable<Mass>, Serializable {
  /** The least mass, g. */
  public static final double LEAST_GRAMS = 0.001;

  /**
   * @param grams 0.001…10 000 000 g (a milligram to ten tonnes)
   * @throws InputException outside 0.001 g…10 t or not a number
   */
  public Mass {
    Checks.inRange("mass", grams, LEAST_GRAMS, 1e7, "g");
  }

  /**
   * @param grams 0.001 or more, at most 10 000 000
   * @return the mass
   */
  public static Mass ofGrams(double grams) {
    return new Mass(grams);
  }

  /**
   * @param kilograms more than 0, at most 10 000
   * @return the mass
   */
  public static Mass ofKilograms(double kilograms) {
    return new Mass(kilograms * 1000);
  }

  /** {@return kilograms} */
  public double kilograms() {
    return grams / 1000;
  }

  @Override
  public int compareTo(Mass other) {
    return Double.compare(grams, other.grams);
  }
}
