package doughtide.report.words;

import doughtide.core.Internal;
import doughtide.core.flourtrial.BowlPlan;
import doughtide.core.flourtrial.BowlTest;
import doughtide.core.flourtrial.Grade;
import doughtide.core.flourtrial.GradedBowl;
import doughtide.core.flourtrial.TrialNote;
import java.util.Map;
import java.util.TreeMap;

/** The notes on a flour trial in the words of a language. */
@Internal
public final class TrialWords {

  private TrialWords() {}

  /** What a grade is called. */
  public static String grade(Words words, BowlTest test, Grade grade) {
    return words.say((test == BowlTest.PASTE ? "gradePaste." : "grade.") + grade.name());
  }

  /** What is seen and felt at a grade. */
  public static String look(Words words, BowlTest test, Grade grade) {
    return words.say((test == BowlTest.PASTE ? "gradePasteLook." : "gradeLook.") + grade.name());
  }

  /** How to go about a trial, some sentences. */
  public static String explain(Words words, BowlTest test, BowlPlan plan) {
    return words.say(
        test == BowlTest.PASTE ? "bowl.explainPaste" : "bowl.explain",
        Map.of("rest", words.number(Math.rint(plan.restMinutes()), 0)));
  }

  /** One sentence for an English terminal, without a full stop. */
  public static String english(BowlTest test, TrialNote note) {
    return of(Words.in(Language.ENGLISH), test, note);
  }

  /** One sentence, without a full stop. */
  public static String of(Words words, BowlTest test, TrialNote note) {
    Map<String, String> values = new TreeMap<>();
    note.numbers().forEach((name, value) -> values.put(name, number(words, name, value)));
    values.put("person", note.person());
    if (!note.bowls().isEmpty()) {
      values.put("trial", note.bowls().get(0).trial());
      values.put("drier", bowl(words, test, note.bowls().get(0)));
      values.put("wetter", bowl(words, test, note.bowls().get(1)));
    }
    return words.say("trialNote." + note.kind().name(), values);
  }

  private static String number(Words words, String name, double value) {
    String number = words.plain(value);
    return switch (name) {
      case "points", "sdPoints" ->
          words.say(number.equals("1") ? "count.point" : "count.points", Map.of("points", number));
      default -> number;
    };
  }

  private static String bowl(Words words, BowlTest test, GradedBowl bowl) {
    return words.plain(bowl.hydrationPercent()) + " % " + grade(words, test, bowl.grade());
  }
}
