package doughtide.report.words;

import doughtide.core.Internal;
import doughtide.core.forecast.Unknown;
import doughtide.core.forecast.Warning;
import doughtide.core.learning.OutlierReason;
import doughtide.core.learning.ReadingDoubt;
import doughtide.core.loaf.LoafCauses;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;

/**
 * What a person should know and what helps, in the words of a language. Both stand in one line of
 * the bundle, with {@code |} between them.
 *
 * @param text what it is
 * @param remedy what to do; empty if nothing helps
 */
public record Advice(String text, String remedy) {
  private static final char NO_BREAK_SPACE = '\u00a0';

  /**
   * {@return a warning, with its numbers in the form of the language}
   *
   * @param words of one language
   * @param warning from a forecast
   */
  public static Advice of(Words words, Warning warning) {
    Map<String, String> values = new TreeMap<>();
    warning.numbers().forEach((name, value) -> values.put(name, number(words, name, value)));
    return parted(words.say("warning." + warning.kind().name(), values));
  }

  /**
   * {@return what makes a window wide, and what would narrow it}
   *
   * @param words of one language
   * @param unknown of a belief
   */
  public static Advice of(Words words, Unknown unknown) {
    return parted(words.say("unknown." + unknown.name()));
  }

  /**
   * {@return why a bake may not fit the others}
   *
   * @param words of one language
   * @param reason from a learner
   */
  public static Advice of(Words words, OutlierReason reason) {
    return parted(words.say("outlier." + reason.name()));
  }

  /**
   * {@return why a reading can hardly be of a dough}
   *
   * @param words of one language
   * @param doubt of a dough in hand
   */
  public static Advice of(Words words, ReadingDoubt doubt) {
    return parted(words.say("doubt." + doubt.name()));
  }

  /**
   * {@return what may have made a loaf come out as it did, in a sentence}
   *
   * @param words of one language
   * @param cause why a loaf may have come out so
   * @param over whether it had risen too far, not too little
   * @hidden
   */
  @Internal
  public static String of(Words words, LoafCauses.Cause cause, boolean over) {
    return words.say("cause." + (over ? "over." : "under.") + cause.name());
  }

  /**
   * {@return a warning for an English terminal}
   *
   * @param warning from a forecast
   */
  public static Advice english(Warning warning) {
    return of(Words.in(Language.ENGLISH), warning).withPlainSpaces();
  }

  /**
   * {@return an unknown for an English terminal}
   *
   * @param unknown of a belief
   */
  public static Advice english(Unknown unknown) {
    return of(Words.in(Language.ENGLISH), unknown).withPlainSpaces();
  }

  /**
   * {@return a reason for an English terminal}
   *
   * @param reason from a learner
   */
  public static Advice english(OutlierReason reason) {
    return of(Words.in(Language.ENGLISH), reason).withPlainSpaces();
  }

  /**
   * {@return a doubt for an English terminal}
   *
   * @param doubt of a dough in hand
   */
  public static Advice english(ReadingDoubt doubt) {
    return of(Words.in(Language.ENGLISH), doubt).withPlainSpaces();
  }

  /** {@return both sentences one after the other} */
  public String sentences() {
    return remedy.isEmpty() ? text : text + " " + remedy;
  }

  private Advice withPlainSpaces() {
    return new Advice(text.replace(NO_BREAK_SPACE, ' '), remedy.replace(NO_BREAK_SPACE, ' '));
  }

  private static Advice parted(String line) {
    List<String> parts = Words.parts(line);
    return new Advice(parts.get(0), parts.size() > 1 ? parts.get(1) : "");
  }

  private static String number(Words words, String name, double value) {
    return name.equals("hours") ? words.hours(value) : words.plain(value);
  }
}
