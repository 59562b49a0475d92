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

  /** A warning, with its numbers in the form of the language. */
  public static Advice of(Words words, Warning warning) {
    Map<String, String> values = new TreeMap<>();
    warning.numbers().forEach((name, value) -> values.put(name, number(words, name, value)));
    return parted(words.say("warning." + warning.kind().name(), values));
  }

  /** What makes a window wide, and what would narrow it. */
  public static Advice of(Words words, Unknown unknown) {
    return parted(words.say("unknown." + unknown.name()));
  }

  /** Why a bake may not fit the others. */
  public static Advice of(Words words, OutlierReason reason) {
    return parted(words.say("outlier." + reason.name()));
  }

  /** Why a reading can hardly be of a dough. */
  public static Advice of(Words words, ReadingDoubt doubt) {
    return parted(words.say("doubt." + doubt.name()));
  }

  /**
   * What may have made a loaf come out as it did, in a sentence.
   *
   * @param over whether it had risen too far, not too little
   * @hidden
   */
  @Internal
  public static String of(Words words, LoafCauses.Cause cause, boolean over) {
    return words.say("cause." + (over ? "over." : "under.") + cause.name());
  }

  /** A warning for an English terminal. */
  public static Advice english(Warning warning) {
    return of(Words.in(Language.ENGLISH), warning).withPlainSpaces();
  }

  /** An unknown for an English terminal. */
  public static Advice english(Unknown unknown) {
    return of(Words.in(Language.ENGLISH), unknown).withPlainSpaces();
  }

  /** A reason for an English terminal. */
  public static Advice english(OutlierReason reason) {
    return of(Words.in(Language.ENGLISH), reason).withPlainSpaces();
  }

  /** A doubt for an English terminal. */
  public static Advice english(ReadingDoubt doubt) {
    return of(Words.in(Language.ENGLISH), doubt).withPlainSpaces();
  }

  /** Both sentences one after the other. */
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
