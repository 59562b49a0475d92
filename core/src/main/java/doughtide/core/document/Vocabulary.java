package doughtide.core.document;

import doughtide.core.Internal;
import doughtide.core.quantity.Quantities;
import java.util.Collection;
import java.util.Locale;
import java.util.Optional;

/**
 * What words mean, so that a document may be written in more than one language: a word is turned
 * into a key, which is the same in every language. The keys themselves are always understood.
 *
 * <pre>{@code
 * Vocabulary german = (kind, word) ->
 *     kind == Vocabulary.Kind.KEY && word.equals("raum") ? Optional.of("room") : Optional.empty();
 * Kitchen kitchen = Kitchen.read("Raum: 19C".lines().iterator(), Catalogue.standard().in(german));
 * }</pre>
 */
@Internal
@FunctionalInterface
public interface Vocabulary {

  /** What a word is the name of. */
  @Internal
  enum Kind {
    /** The key of a line. */
    KEY,
    /** A column of a table. */
    COLUMN,
    /** A class of flour. */
    FLOUR,
    /** The condition of a starter. */
    CONDITION,
    /** The form of a piece. */
    FORM,
    /** A vessel. */
    VESSEL,
    /** The grade of a bowl. */
    GRADE,
    /** An ingredient of a dough, such as water or sugar. */
    INGREDIENT,
    /** Any other word that is a value. */
    VALUE
  }

  /** Knows the keys alone. */
  Vocabulary KEYS_ONLY = (kind, word) -> Optional.empty();

  /**
   * The key that a word means.
   *
   * @param kind what the word is the name of
   * @param word in small letters, its parts separated by single spaces
   * @return the key, or nothing if the word is not known; for a flour between two classes, a mix of
   *     their keys such as {@code white:50%,wholemeal wheat:50%}
   */
  Optional<String> key(Kind kind, String word);

  /**
   * The key that is meant by what was typed: a key itself, or a word for it. Capital letters do not
   * matter; a space, a dash and an underscore are the same.
   *
   * @param kind what is named
   * @param typed as typed
   * @param keys the keys that are possible here
   */
  default Optional<String> meant(Kind kind, String typed, Collection<String> keys) {
    String word = plain(typed);
    return keys.stream()
        .filter(key -> plain(key).equals(word))
        .findFirst()
        .or(() -> key(kind, word).filter(keys::contains));
  }

  /**
   * A word in the form in which words are compared: small letters, single spaces.
   *
   * @param typed as typed
   */
  static String plain(String typed) {
    return Quantities.clean(typed).toLowerCase(Locale.ROOT).replaceAll("[\\s_-]+", " ").strip();
  }
}
