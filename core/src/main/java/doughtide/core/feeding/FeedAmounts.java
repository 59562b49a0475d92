package doughtide.core.feeding;

import doughtide.core.Internal;
import java.io.Serializable;

/**
 * What to weigh for a feed, grams.
 *
 * @param starterGrams starter to take
 * @param flourGrams flour to give
 * @param waterGrams water to give
 * @param saltGrams salt to give, 0 for the usual unsalted starter
 * @param keepGrams what to keep back of the ripe starter for the next feed
 */
@Internal
public record FeedAmounts(
    double starterGrams, double flourGrams, double waterGrams, double saltGrams, double keepGrams)
    implements Serializable {
  /** What is over a step by less than this is on it. */
  private static final double NEARLY = 0.05;

  /** The whole jar after feeding, grams. */
  public double totalGrams() {
    return starterGrams + flourGrams + waterGrams + saltGrams;
  }

  /** What is there to use when it is ripe, grams. */
  public double useGrams() {
    return totalGrams() - keepGrams;
  }

  /**
   * The same on a scale with steps: starter to the nearest step, what is given up to the next one,
   * so that there is enough; what is more is kept back. Salt is so little that it stays as it is.
   *
   * @param stepGrams smallest step that the scale shows, more than 0
   */
  public FeedAmounts onScale(double stepGrams) {
    double kept = stepGrams * Math.max(1, Math.rint(starterGrams / stepGrams));
    double flour = up(flourGrams, stepGrams);
    double water = up(waterGrams, stepGrams);
    double total = kept + flour + water + saltGrams;
    return new FeedAmounts(kept, flour, water, saltGrams, total - useGrams());
  }

  private static double up(double grams, double step) {
    return step * Math.ceil(grams / step - NEARLY);
  }
}
