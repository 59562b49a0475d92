package doughtide.report.words;

import java.util.Locale;

/** A language in which pages and charts can be printed. */
public enum Language {
  /** English. */
  ENGLISH("en", Locale.UK),
  /** German. */
  GERMAN("de", Locale.GERMANY),
  /** French. */
  FRENCH("fr", Locale.FRANCE),
  /** Spanish. */
  SPANISH("es", new Locale("es", "ES")),
  /** Portuguese. */
  PORTUGUESE("pt", new Locale("pt", "PT"));

  private final String tag;
  private final Locale locale;

  Language(String tag, Locale locale) {
    this.tag = tag;
    this.locale = locale;
  }

  /** Two-letter code of ISO 639-1, for example {@code de}. */
  public String tag() {
    return tag;
  }

  /** The locale that number and date formats follow. */
  public Locale locale() {
    return locale;
  }

  /**
   * The language with the given code.
   *
   * @param tag two-letter code, in any case
   * @throws doughtide.core.quantity.InputException when no pages exist in that language
   */
  public static Language of(String tag) {
    for (Language language : values()) {
      if (language.tag.equals(tag.strip().toLowerCase(Locale.ROOT))) {
        return language;
      }
    }
    throw new doughtide.core.quantity.InputException(
        "language \"" + tag + "\" is not known: use en, de, fr, es or pt");
  }
}
