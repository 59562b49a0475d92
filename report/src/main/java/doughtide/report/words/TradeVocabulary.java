package doughtide.report.words;

import doughtide.core.Internal;
import doughtide.core.document.Vocabulary;
import java.util.EnumMap;
import java.util.HashMap;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;

/**
 * What the words of all languages mean, in options and documents: the words that pages print and
 * those that the bundles list under {@code read.}. They are read when the first word is asked for
 * that is no key.
 */
@Internal
public final class TradeVocabulary implements Vocabulary {

  private static final Map<String, Kind> GROUPS =
      Map.ofEntries(
          Map.entry("flour", Kind.FLOUR),
          Map.entry("condition", Kind.CONDITION),
          Map.entry("form", Kind.FORM),
          Map.entry("grade", Kind.GRADE),
          Map.entry("gradePaste", Kind.GRADE),
          Map.entry("read.key", Kind.KEY),
          Map.entry("read.column", Kind.COLUMN),
          Map.entry("read.flour", Kind.FLOUR),
          Map.entry("read.mix", Kind.FLOUR),
          Map.entry("read.condition", Kind.CONDITION),
          Map.entry("read.form", Kind.FORM),
          Map.entry("read.vessel", Kind.VESSEL),
          Map.entry("read.ingredient", Kind.INGREDIENT),
          Map.entry("read.value", Kind.VALUE));

  /** Flours between two classes, as mixes of them. */
  private static final Map<String, String> MIXES =
      Map.of(
          "quarter", "white:75%,wholemeal wheat:25%",
          "half", "white:50%,wholemeal wheat:50%");

  private static final String NO_WORD = "-";

  private TradeVocabulary() {}

  /** The words of all languages. */
  public static Vocabulary ofAllLanguages() {
    return new TradeVocabulary();
  }

  @Override
  public Optional<String> key(Kind kind, String word) {
    return Optional.ofNullable(All.KEYS.getOrDefault(kind, Map.of()).get(word));
  }

  /** Made once, when first asked for. */
  private static final class All {
    static final Map<Kind, Map<String, String>> KEYS = keys();

    private static Map<Kind, Map<String, String>> keys() {
      Map<Kind, Map<String, String>> keys = new EnumMap<>(Kind.class);
      for (Language language : Language.values()) {
        Words words = Words.in(language);
        for (String name : words.keys()) {
          int dot = name.lastIndexOf('.');
          Kind kind = GROUPS.get(name.substring(0, dot));
          if (kind != null) {
            Map<String, String> known = keys.computeIfAbsent(kind, each -> new HashMap<>());
            String key = key(kind, name.substring(dot + 1));
            boolean list = name.startsWith("read.");
            for (String word : words.say(name).split(list ? "," : "$", -1)) {
              add(known, key, word);
            }
          }
        }
      }
      return keys;
    }

    /** Keys of documents are joined by dashes, those of things by spaces. */
    private static String key(Kind kind, String name) {
      String dashed = name.toLowerCase(Locale.ROOT).replace('_', '-');
      return kind == Kind.KEY ? dashed : MIXES.getOrDefault(dashed, dashed.replace('-', ' '));
    }

    private static void add(Map<String, String> known, String key, String word) {
      String plain = Vocabulary.plain(word);
      if (plain.equals(NO_WORD) || plain.isEmpty()) {
        return;
      }
      String before = known.put(plain, key);
      if (before != null && !before.equals(key)) {
        throw new IllegalStateException(
            "the word '" + plain + "' means both '" + before + "' and '" + key + "'");
      }
    }
  }
}
