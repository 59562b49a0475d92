package doughtide.report.words;

import doughtide.core.Internal;
import doughtide.core.flourtrial.GradedBowl;
import doughtide.core.flourtrial.TrialNote;
import java.util.Map;
import java.util.TreeMap;

/** The notes on a flour trial in the words of a language. */
@Internal
public final class TrialWords {

  private TrialWords() {}

  /** One sentence for an English terminal, without a full stop. */
  public static String english(TrialNote note) {
    return of(Words.in(Language.ENGLISH), note);
  }

  /** One sentence, without a full stop. */
  public static String of(Words words, TrialNote note) {
    Map<String, String> values = new TreeMap<>();
    note.numbers().forEach((name, value) -> values.put(name, words.plain(value)));
    values.put("person", note.person());
    if (!note.bowls().isEmpty()) {
      values.put("trial", note.bowls().get(0).trial());
      values.put("drier", bowl(words, note.bowls().get(0)));
      values.put("wetter", bowl(words, note.bowls().get(1)));
    }
    return words.say("trialNote." + note.kind().name(), values);
  }

  private static String bowl(Words words, GradedBowl bowl) {
    return words.plain(bowl.hydrationPercent()) + " % " + words.say("grade." + bowl.grade().name());
  }
}
