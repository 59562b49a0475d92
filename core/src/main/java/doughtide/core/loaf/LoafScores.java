package doughtide.core.loaf;

import doughtide.core.Internal;
import doughtide.core.forecast.RadicalInverse;
import java.io.Serializable;
import org.apache.commons.math3.distribution.NormalDistribution;

/**
 * What is not known of a loaf after its bulk fermentation, for each member of an ensemble: radical
 * inverses of its number (van der Corput) in bases of their own, evenly spread and independent of
 * the other unknowns.
 *
 * @param air of the cold, standard normal
 * @param film of the air around it, standard normal
 * @param hands rank from the lightest, 0, to the heaviest, 1
 */
@Internal
public record LoafScores(double air, double film, double hands) implements Serializable {
  /** The middle of everything. */
  public static final LoafScores MIDDLE = new LoafScores(0, 0, 0.5);

  private static final NormalDistribution NORMAL = new NormalDistribution(null, 0, 1);
  private static final int AIR_BASE = 3;
  private static final int FILM_BASE = 5;
  private static final int HANDS_BASE = 7;

  /**
   * Of a member.
   *
   * @param member its place in the ensemble, from 0
   */
  public static LoafScores of(int member) {
    return new LoafScores(
        NORMAL.inverseCumulativeProbability(rank(member, AIR_BASE)),
        NORMAL.inverseCumulativeProbability(rank(member, FILM_BASE)),
        rank(member, HANDS_BASE));
  }

  private static double rank(int member, int base) {
    return RadicalInverse.of(member + 1, base);
  }
}
