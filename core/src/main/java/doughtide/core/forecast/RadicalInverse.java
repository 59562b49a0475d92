package doughtide.core.forecast;

import doughtide.core.Internal;

/**
 * Numbers in 0…1 that fill it evenly however many of them are taken: the digits of a whole number
 * mirrored at the point (van der Corput 1935). Different prime bases are independent of each other.
 */
@Internal
public final class RadicalInverse {

  private RadicalInverse() {}

  /**
   * The inverse of a number.
   *
   * @param number 0 or more; 0 gives 0
   * @param base 2 or more
   */
  public static double of(int number, int base) {
    double inverse = 0;
    double place = 1.0 / base;
    for (int rest = number; rest > 0; rest /= base) {
      inverse += (rest % base) * place;
      place /= base;
    }
    return inverse;
  }
}
