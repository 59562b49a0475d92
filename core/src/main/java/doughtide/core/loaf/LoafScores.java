package doughtide.core.loaf;

import doughtide.core.Internal;
import doughtide.core.forecast.SobolPoints;
import java.io.Serializable;

/**
 * What is not known of a loaf after its bulk fermentation, for each member of an ensemble: the
 * three dimensions of the Sobol sequence that follow those of the dough, under a digital shift of
 * their own, so that a dough and its loaf together are spread evenly.
 *
 * @param air of the cold, standard normal
 * @param film of the air around it, standard normal
 * @param hands rank from the lightest, 0, to the heaviest, 1
 */
@Internal
public record LoafScores(double air, double film, double hands) implements Serializable {
  /** The middle of everything. */
  public static final LoafScores MIDDLE = new LoafScores(0, 0, 0.5);

  private static final int AIR = 9;
  private static final int FILM = 10;
  private static final int HANDS = 11;

  /**
   * Of 64 drawn from commons-math3's Well19937c with the seed 20261126 the one (the sixty-second)
   * whose shape points of 8 to 512 members lie nearest to those of 32,768, over six doughs in the
   * cold and the room. With 512 members its likely hours are off by 0.5 % (root mean square; four
   * doughs that were not asked: 0.9 %) and the rise to shape at by 0.5 points (1.2), with 16
   * members the hours by 5 %; radical inverses in bases 3, 5 and 7 were off by 3.3 %, 2.4 points
   * and 15 %.
   */
  private static final long[] SHIFT = {0x6a7ee53023887L, 0x3e7a6f3839d48L, 0xca78339a8abcaL};

  /**
   * Of a member.
   *
   * @param member its place in the ensemble, from 0
   */
  public static LoafScores of(int member) {
    return new LoafScores(score(member, AIR), score(member, FILM), rank(member, HANDS));
  }

  private static double score(int member, int dimension) {
    return SobolPoints.normalScore(rank(member, dimension));
  }

  private static double rank(int member, int dimension) {
    return SobolPoints.rank(member, dimension, SHIFT[dimension - AIR]);
  }
}
