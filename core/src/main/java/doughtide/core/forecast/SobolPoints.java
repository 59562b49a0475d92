package doughtide.core.forecast;

/**
 * The Sobol sequence in nine dimensions, with the direction numbers of Joe &amp; Kuo (2008, SIAM J
 * Sci Comput 30:2635–2654), as commons-math3 has it for a thousand: there a file is read and parsed
 * first, which takes a cold start longer than all the draws. A test holds one against the other.
 */
final class SobolPoints {
  /** Most dimensions there are direction numbers for. */
  static final int DIMENSIONS = 9;

  /** Binary digits of a coordinate. */
  static final int BITS = 52;

  // coefficients of the primitive polynomial, then the first direction numbers; from dimension 2 on
  private static final int[][] JOE_KUO = {
    {0, 1},
    {1, 1, 3},
    {1, 1, 3, 1},
    {2, 1, 1, 1},
    {1, 1, 1, 3, 3},
    {4, 1, 3, 5, 13},
    {2, 1, 1, 5, 5, 17},
    {4, 1, 1, 5, 5, 5}
  };

  private final long[][] directions = new long[DIMENSIONS][];
  private final long[] point = new long[DIMENSIONS];
  private long drawn;

  SobolPoints() {
    directions[0] = new long[BITS];
    for (int i = 0; i < BITS; i++) {
      directions[0][i] = 1L << (BITS - 1 - i);
    }
    for (int d = 1; d < DIMENSIONS; d++) {
      directions[d] = directions(JOE_KUO[d - 1]);
    }
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
   * The next point, each coordinate times 2^52; the first is the origin. Overwritten by the next.
   */
  long[] next() {
    if (drawn > 0) {
      int changed = Long.numberOfTrailingZeros(drawn); // the order of Gray's code
      for (int d = 0; d < DIMENSIONS; d++) {
        point[d] ^= directions[d][changed];
      }
    }
    drawn++;
    return point;
  }
}
