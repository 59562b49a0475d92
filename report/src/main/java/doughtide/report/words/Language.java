package doughtide.report.words;

import doughtide.core.quantity.InputException;
import java.math.BigDecimal;
import java.math.RoundingMode;
import java.util.Locale;

/** A language in which pages and charts can be printed. */
public enum Language {
  /** English. */
  ENGLISH("en", Locale.UK, ".", ","),
  /** German. */
  GERMAN("de", Locale.GERMANY, ",", "."),
  /** French. */
  FRENCH("fr", Locale.FRANCE, ",", "\u202f"),
  /** Spanish. */
  SPANISH("es", new Locale("es", "ES"), ",", "."),
  /** Portuguese. */
  PORTUGUESE("pt", new Locale("pt", "PT"), ",", "\u00a0");

  private final String tag;
  private final Locale locale;
  private final String decimalMark;
  private final String groupMark;

  Language(String tag, Locale locale, String decimalMark, String groupMark) {
    this.tag = tag;
    this.locale = locale;
    this.decimalMark = decimalMark;
    this.groupMark = groupMark;
  }

  /** {@return two-letter code of ISO 639-1, for example {@code de}} */
  public String tag() {
    return tag;
  }

  /** {@return the locale that date formats follow} */
  public Locale locale() {
    return locale;
  }

  /**
   * A number, thousands apart. Written here because the formats of Java load a hundred classes: a
   * tenth of all that an answer needs.
   *
   * @param decimals digits after the decimal mark, all of them shown
   */
  String number(double value, int decimals) {
    if (!Double.isFinite(value)) {
      return Double.toString(value);
    }
    String plain = new BigDecimal(value).setScale(decimals, RoundingMode.HALF_UP).toPlainString();
    int start = plain.startsWith("-") ? 1 : 0;
    int end = decimals == 0 ? plain.length() : plain.length() - decimals - 1;
    StringBuilder text = new StringBuilder(plain);
    if (decimals > 0) {
      text.replace(end, end + 1, decimalMark);
    }
    for (int at = end - 3; at > start; at -= 3) {
      text.insert(at, groupMark);
    }
    return text.toString();
  }

  /**
   * The language with the given code.
   *
   * @param tag two-letter code, in any case
   * @return the language
   * @throws InputException when no pages exist in that language
   */
  public static Language of(String tag) {
    for (Language language : values()) {
      if (language.tag.equals(tag.strip().toLowerCase(Locale.ROOT))) {
        return language;
      }
    }
    throw new InputException(
        "language", "language \"" + tag + "\" is not known: use en, de, fr, es or pt");
  }
}
