package doughtide.report.words;

import doughtide.core.Internal;
import doughtide.core.feeding.FeedAmounts;
import doughtide.core.feeding.FeedRatio;
import doughtide.core.feeding.StarterPhase;
import java.util.Map;
import java.util.Optional;

/**
 * A feed in a line.
 *
 * @param words of the language
 */
@Internal
public record FeedWords(Words words) {

  /** The words for an English terminal. */
  public static FeedWords english() {
    return new FeedWords(Words.in(Language.ENGLISH));
  }

  /** Where a fed starter is, in a word or two. */
  public String phase(StarterPhase phase) {
    return words.say("starterPhase." + phase.name());
  }

  /** How it looks then (common practice, no source). */
  public String look(StarterPhase phase) {
    return words.say("starterPhaseLook." + phase.name());
  }

  /** The ratio, and what to weigh where that is known: starter, flour and water. */
  public String line(FeedRatio ratio, Optional<FeedAmounts> amounts) {
    return ratio.text() + amounts.map(each -> ": " + weighed(each)).orElse("");
  }

  /** The parts with their names, such as {@code 1 part starter, 5 parts flour, 5 parts water}. */
  public String parts(FeedRatio ratio) {
    String[] numbers = ratio.text().split(":", -1);
    return String.join(
        ", ", part(numbers[0], "STARTER"), part(numbers[1], "FLOUR"), part(numbers[2], "WATER"));
  }

  private String part(String number, String of) {
    int decimals = number.contains(".") ? number.length() - number.indexOf('.') - 1 : 0;
    return words.say(
        number.equals("1") ? "ratio.part" : "ratio.parts",
        Map.of(
            "number", words.number(Double.parseDouble(number), decimals),
            "of", words.say("ratio." + of)));
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
