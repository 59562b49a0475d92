package doughtide.report.words;

import doughtide.core.Internal;
import java.util.Map;

/**
 * The sentences that a chart or a page leads with: when to shape.
 *
 * @param words the language
 */
@Internal
public record ShapeWords(Words words) {

  /**
   * When to shape, and what the jar shows then.
   *
   * @param time as it is said
   * @param risePercent of the jar, rounded here to whole per cent
   */
  public String answer(String time, double risePercent) {
    return words.say(
        "sheet.answer", Map.of("time", time, "rise", words.percent(Math.rint(risePercent), 0)));
  }

  /**
   * When a lively and a sluggish starter would be there.
   *
   * @param early as it is said
   * @param late as it is said
   */
  public String others(String early, String late) {
    return words.say("sheet.others", Map.of("early", early, "late", late));
  }
}
