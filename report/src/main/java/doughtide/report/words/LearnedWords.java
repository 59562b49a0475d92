package doughtide.report.words;

import doughtide.core.Internal;
import doughtide.core.learning.LearnedParameter;
import java.util.List;
import java.util.Map;

/**
 * One thing learned, in the words of a language. The line of the bundle holds the name, the unit,
 * and what to say of more than usual, of less, and of the usual, with {@code |} between them.
 *
 * @param name for example {@code vigour}
 * @param unit for example {@code × typical}
 * @param meaning one sentence, without a full stop
 */
@Internal
public record LearnedWords(String name, String unit, String meaning) {

  /** The words for an English terminal. */
  public static LearnedWords english(LearnedParameter learned) {
    return of(Words.in(Language.ENGLISH), learned);
  }

  /** The words for a thing learned. */
  public static LearnedWords of(Words words, LearnedParameter learned) {
    int decimals = learned.kind() == LearnedParameter.Kind.TEMPERATURE ? 1 : 0;
    double change = Math.abs(learned.change());
    String said =
        learned.kind() == LearnedParameter.Kind.RETENTION
            ? words.plain(change)
            : words.number(change, decimals);
    List<String> parts =
        Words.parts(words.say("learned." + learned.kind().name(), Map.of("change", said)));
    int meaning = learned.isUsual() ? 4 : learned.change() >= 0 ? 2 : 3;
    return new LearnedWords(parts.get(0), parts.get(1), parts.get(meaning));
  }
}
