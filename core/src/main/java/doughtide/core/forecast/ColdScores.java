package doughtide.core.forecast;

import org.apache.commons.math3.distribution.NormalDistribution;

/** Normal scores for the error of the cold, evenly spread and independent of the other unknowns. */
final class ColdScores {
  private static final NormalDistribution NORMAL = new NormalDistribution(null, 0, 1);
  private static final int BASE = 3;

  private ColdScores() {}

  /**
   * Score of a member: radical inverse of its number in base 3 (van der Corput), as a normal
   * quantile.
   */
  static double score(int member) {
    double inverse = 0;
    double place = 1.0 / BASE;
    for (int rest = member + 1; rest > 0; rest /= BASE) {
      inverse += (rest % BASE) * place;
      place /= BASE;
    }
    return NORMAL.inverseCumulativeProbability(inverse);
  }
}
