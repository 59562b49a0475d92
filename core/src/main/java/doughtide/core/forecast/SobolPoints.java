package doughtide.core.forecast;

import doughtide.core.Internal;
import org.apache.commons.math3.special.Erf;

/**
 * The Sobol sequence in twelve dimensions, with the direction numbers of Joe &amp; Kuo (2008, SIAM
 * J Sci Comput 30:2635–2654), as commons-math3 has it for a thousand: there a file is read and
 * parsed first, which takes a cold start longer than all the draws. A test holds one against the
 * other.
 */
@Internal
public final class SobolPoints {
  /** Dimensions there are direction numbers for. */
  static final int DIMENSIONS = 12;

  /** Binary digits of a coordinate. */
  static final int BITS = 52;

  private static final double TWO_TO_BITS = 0x1p52;

  // coefficients of the primitive polynomial, then the first direction numbers; from dimension 2 on
  private static final int[][] JOE_KUO = {
    {0, 1},
    {1, 1, 3},
    {1, 1, 3, 1},
    {2, 1, 1, 1},
    {1, 1, 1, 3, 3},
    {4, 1, 3, 5, 13},
    {2, 1, 1, 5, 5, 17},
    {4, 1, 1, 5, 5, 5},
    {7, 1, 1, 7, 11, 19},
    {11, 1, 1, 5, 1, 1},
    {13, 1, 1, 1, 3, 11}
  };

  private static final long[][] DIRECTIONS = directions();

  private SobolPoints() {}

  private static long[][] directions() {
    long[][] made = new long[DIMENSIONS][];
    made[0] = new long[BITS];
    for (int i = 0; i < BITS; i++) {
      made[0][i] = 1L << (BITS - 1 - i);
    }
    for (int d = 1; d < DIMENSIONS; d++) {
      made[d] = directions(JOE_KUO[d - 1]);
    }
    return made;
  }

  private static long[] directions(int[] numbers) {
    int degree = numbers.length - 1;
    int coefficients = numbers[0];
    long[] made = new long[BITS];
    for (int i = 0; i < degree; i++) {
      made[i] = (long) numbers[i + 1] << (BITS - 1 - i);
    }
    for (int i = degree; i < BITS; i++) {
      made[i] = made[i - degree] ^ (made[i - degree] >> degree);
      for (int k = 1; k < degree; k++) {
        made[i] ^= ((coefficients >> (degree - 1 - k)) & 1) * made[i - k];
      }
    }
    return made;
  }

  /**
   * One coordinate of one point under a digital shift.
   *
   * @param number of the point in the order of Gray's code, from 0
   * @param dimension 0…11
   * @param shift 52 binary digits
   * @return inside 0…1
   */
  public static double rank(int number, int dimension, long shift) {
    long coordinate = 0;
    for (int left = number ^ (number >>> 1); left != 0; left &= left - 1) {
      coordinate ^= DIRECTIONS[dimension][Integer.numberOfTrailingZeros(left)];
    }
    return ((coordinate ^ shift) + 0.5) / TWO_TO_BITS;
  }

  /** Normal score of a rank, as commons-math3's normal distribution gives it. */
  public static double normalScore(double rank) {
    return Math.sqrt(2) * Erf.erfInv(2 * rank - 1);
  }
}
