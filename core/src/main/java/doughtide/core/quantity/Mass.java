package doughtide.core.quantity;

import java.io.Serializable;

/**
 * A mass.
 *
 * @param grams more than 0, at most 10 000 000 g (ten tonnes)
 */
public record Mass(double grams) implements Comparable<Mass>, Serializable {
  /**
   * @throws InputException if zero, negative, larger than 10 t, or not a number
   */
  public Mass {
    Checks.inRange("mass", grams, Double.MIN_VALUE, 1e7, "g");
  }

  /**
   * @param grams more than 0, at most 10 000 000
   */
  public static Mass ofGrams(double grams) {
    return new Mass(grams);
  }

  /**
   * @param kilograms more than 0, at most 10 000
   */
  public static Mass ofKilograms(double kilograms) {
    return new Mass(kilograms * 1000);
  }

  /** Kilograms. */
  public double kilograms() {
    return grams / 1000;
  }

  @Override
  public int compareTo(Mass other) {
    return Double.compare(grams, other.grams);
  }
}
