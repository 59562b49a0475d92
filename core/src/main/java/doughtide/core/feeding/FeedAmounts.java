package doughtide.core.feeding;

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
public record FeedAmounts(
    double starterGrams, double flourGrams, double waterGrams, double saltGrams, double keepGrams)
    implements Serializable {
  /** The whole jar after feeding, grams. */
  public double totalGrams() {
    return starterGrams + flourGrams + waterGrams + saltGrams;
  }

  /** What is there to use when it is ripe, grams. */
  public double useGrams() {
    return totalGrams() - keepGrams;
  }
}
