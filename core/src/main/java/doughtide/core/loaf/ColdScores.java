package doughtide.core.loaf;

import org.apache.commons.math3.distribution.NormalDistribution;

/**
 * How much warmer a refrigerator is than stated, for each member of an ensemble: normal scores,
 * evenly spread and independent of the other unknowns.
 */
public final class ColdScores {
  private static final double DEVIATION_CELSIUS = 1.0; // starting value
  private static final NormalDistribution NORMAL = new NormalDistribution(null, 0, 1);
  private static final int BASE = 3;

  private ColdScores() {}

  /**
   * Error of the cold for a member, K; positive if it is warmer than stated.
   *
   * @param member its place in the ensemble, from 0
   */
  public static double celsius(int member) {
    return DEVIATION_CELSIUS * score(member);
  }

  /**
   * Score of a member: radical inverse of its number in base 3 (van der Corput), as a normal
   * quantile.
   */
  public static double score(int member) {
    double inverse = 0;
    double place = 1.0 / BASE;
    for (int rest = member + 1; rest > 0; rest /= BASE) {
      inverse += (rest % BASE) * place;
      place /= BASE;
    }
    return NORMAL.inverseCumulativeProbability(inverse);
  }
}
