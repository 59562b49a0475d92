package doughtide.report.words;

import doughtide.core.Internal;
import doughtide.core.feeding.FeedAmounts;
import doughtide.core.feeding.FeedRatio;
import java.util.Optional;

/**
 * A feed in a line.
 *
 * @param words of the language
 */
@Internal
public record FeedWords(Words words) {

  /** The ratio, and what to weigh where that is known: starter, flour and water. */
  public String line(FeedRatio ratio, Optional<FeedAmounts> amounts) {
    return ratio.text() + amounts.map(each -> ": " + weighed(each)).orElse("");
  }

  private String weighed(FeedAmounts amounts) {
    return grams(amounts.starterGrams())
        + " + "
        + grams(amounts.flourGrams())
        + " + "
        + grams(amounts.waterGrams());
  }

  private String grams(double grams) {
    return words.number(grams, grams < 10 ? 1 : 0) + "\u00a0g";
  }
}
