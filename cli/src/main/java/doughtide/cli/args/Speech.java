package doughtide.cli.args;

import doughtide.core.quantity.Temperature;
import doughtide.report.words.Language;
import java.time.DayOfWeek;
import java.time.LocalDate;
import java.time.format.DateTimeFormatter;
import java.util.List;
import java.util.Locale;
import java.util.Map;

/**
 * How an answer is written: its sentences, numbers and dates in the language of its reader. Numbers
 * have the units and spaces of {@link Words} in every language, and a decimal comma in every one
 * but English.
 *
 * @param language of the reader
 */
public record Speech(Language language) {

  /** As every command writes that takes no language, and as all data are written. */
  public static final Speech ENGLISH = new Speech(Language.ENGLISH);

  private static final String[] DAYS = {"Mon", "Tue", "Wed", "Thu", "Fri", "Sat", "Sun"};
  private static final String[] MONTHS = {
    "Jan", "Feb", "Mar", "Apr", "May", "Jun", "Jul", "Aug", "Sep", "Oct", "Nov", "Dec"
  };

  /** The words of the pages in this language. */
  public doughtide.report.words.Words words() {
    return doughtide.report.words.Words.in(language);
  }

  /** The text of a key; spaces at which a line must not break are in it. */
  public String say(String key) {
    return words().say(key);
  }

  /** The text of a key whose placeholders are filled in. */
  public String say(String key, Map<String, String> values) {
    return words().say(key, values);
  }

  /** The text of a key for one thing, or for another number of them, in {@code count}. */
  public String counted(String key, long count) {
    return say(key + (count == 1 ? ".one" : ".many"), Map.of("count", Long.toString(count)));
  }

  /** Parts that stand beside each other, with semicolons between them. */
  public String joined(List<String> parts) {
    return String.join(language == Language.FRENCH ? "\u00a0; " : "; ", parts);
  }

  /** A text with plain spaces, as a terminal and data take them. */
  public static String plain(String text) {
    return text.replace('\u00a0', ' ');
  }

  /** An English number with its unit, such as {@link Words} writes, with this language's mark. */
  public String marked(String number) {
    return language == Language.ENGLISH ? number : number.replace('.', ',');
  }

  /** A number with at most this many decimals. */
  public String rounded(double value, int decimals) {
    return marked(Words.rounded(value, decimals));
  }

  /** To a tenth of a per cent. */
  public String percent(double percent) {
    return marked(Words.percent(percent));
  }

  /** Both scales. */
  public String temperature(Temperature temperature) {
    return marked(Words.temperature(temperature));
  }

  /** A day of the week, short: {@code Sat}. */
  String day(LocalDate date) {
    return language == Language.ENGLISH
        ? DAYS[date.getDayOfWeek().getValue() - DayOfWeek.MONDAY.getValue()]
        : formatted("EEE", date);
  }

  /** A day with its date, short: {@code Sat 6 Mar}. */
  String date(LocalDate date) {
    return language == Language.ENGLISH
        ? day(date) + " " + date.getDayOfMonth() + " " + MONTHS[date.getMonthValue() - 1]
        : formatted(language == Language.GERMAN ? "EEE d. MMM" : "EEE d MMM", date);
  }

  /** Portugal writes its days and months out where a short form is asked for, Brazil does not. */
  private String formatted(String pattern, LocalDate date) {
    Locale locale = language == Language.PORTUGUESE ? new Locale("pt", "BR") : language.locale();
    return DateTimeFormatter.ofPattern(pattern, locale).format(date);
  }
}
