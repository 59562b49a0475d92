package doughtide.report.words;

import doughtide.core.Internal;
import doughtide.core.thermal.WaterAnswer;
import doughtide.core.thermal.WaterTerm;
import java.util.List;
import java.util.Map;

/** What there is to say about water, in the words of a language. */
@Internal
public final class WaterWords {

  private final Words words;

  public WaterWords(Words words) {
    this.words = words;
  }

  /** The words for an English terminal. */
  public static WaterWords english() {
    return new WaterWords(Words.in(Language.ENGLISH));
  }

  /** What to look out for, one sentence each without a full stop. */
  public List<String> cautions(WaterAnswer answer) {
    String celsius = words.number(answer.waterCelsius(), 0);
    return answer.cautions().stream()
        .map(each -> words.say("water." + each.name(), Map.of("celsius", celsius)))
        .toList();
  }

  /** Why the rule and the balance of heat differ in a term. */
  public String why(WaterTerm.Kind term) {
    return words.say("waterTerm." + term.name());
  }
}
