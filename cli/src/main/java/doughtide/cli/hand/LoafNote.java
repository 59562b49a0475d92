package doughtide.cli.hand;

import doughtide.cli.args.Speech;
import doughtide.core.document.Vocabulary;
import doughtide.core.learning.LoafResult;
import doughtide.core.quantity.InputException;
import doughtide.core.quantity.Quantities;
import doughtide.core.quantity.Shorten;
import doughtide.report.words.TradeVocabulary;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;

/**
 * How a loaf came out, as typed.
 *
 * @param result under, right or over
 * @param words on {@code crumb} and {@code crust}
 */
public record LoafNote(LoafResult result, Map<String, String> words) {

  private static final List<String> PARTS = List.of("crumb", "crust");
  private static final int LONGEST_TEXT = 200;

  /**
   * Reads the words after {@code result}, such as {@code under crumb tight crust pale}.
   *
   * @throws InputException if they are not understood
   */
  public static LoafNote of(List<String> typed) {
    String first = typed.isEmpty() ? "" : plain(typed.get(0));
    List<LoafResult> results = List.of(LoafResult.values());
    LoafResult result =
        meant(first, results.stream().map(each -> plain(each.name())).toList())
            .map(key -> LoafResult.valueOf(key.toUpperCase(Locale.ROOT)))
            .orElseThrow(() -> unknown(first));
    return new LoafNote(result, words(typed.subList(1, typed.size())));
  }

  private static InputException unknown(String first) {
    return new InputException(
        "result '"
            + Shorten.to(first, 40)
            + "' is not known: use under, right or over, for example result under crumb tight");
  }

  private static Optional<String> meant(String word, List<String> keys) {
    return TradeVocabulary.ofAllLanguages().meant(Vocabulary.Kind.VALUE, word, keys);
  }

  private static String plain(String word) {
    return Quantities.clean(word).toLowerCase(Locale.ROOT);
  }

  private static Map<String, String> words(List<String> typed) {
    Map<String, String> words = new LinkedHashMap<>();
    String part = "";
    for (String word : typed) {
      String clean = Quantities.clean(word);
      Optional<String> next = meant(word, PARTS);
      if (next.isPresent()) {
        part = next.get();
      } else if (part.isEmpty()) {
        throw new InputException(
            "'"
                + Shorten.to(clean, 40)
                + "' is not understood: after the result come words on the crumb or the crust, for"
                + " example crumb tight crust pale");
      } else {
        words.merge(part, clean, (before, more) -> before + " " + more);
      }
    }
    words.values().forEach(LoafNote::check);
    return words;
  }

  private static void check(String text) {
    if (text.length() > LONGEST_TEXT) {
      throw new InputException(
          "words on crumb or crust have at most "
              + LONGEST_TEXT
              + " characters, these have "
              + text.length());
    }
  }

  /** In words. */
  public String said(Speech speech) {
    List<String> said = new ArrayList<>(List.of(speech.say("note." + result.name())));
    words.forEach((part, text) -> said.add(speech.say("note." + part) + " " + text));
    return speech.joined(said);
  }
}
