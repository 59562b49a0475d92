package doughtide.report.phone;

import doughtide.core.feeding.FeedAmounts;
import doughtide.core.feeding.FeedRatio;
import doughtide.report.words.Words;
import java.util.Optional;

/**
 * A feed in a line.
 *
 * @param words of the language
 */
record FeedWords(Words words) {

  /** The ratio, and what to weigh where that is known: starter, flour and water. */
  String line(FeedRatio ratio, Optional<FeedAmounts> amounts) {
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
    return words.number(grams, 0) + "\u00a0g";
  }
}
