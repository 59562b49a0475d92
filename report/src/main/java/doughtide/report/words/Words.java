package doughtide.report.words;

import doughtide.core.Internal;
import doughtide.core.quantity.Checks;
import java.io.IOException;
import java.io.InputStream;
import java.io.InputStreamReader;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.time.ZonedDateTime;
import java.time.format.DateTimeFormatter;
import java.time.format.FormatStyle;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Properties;
import java.util.SortedSet;
import java.util.TreeSet;
import java.util.concurrent.ConcurrentHashMap;
import java.util.function.DoubleFunction;

/**
 * The words of one language, with its number, clock and date formats. Immutable.
 *
 * <pre>{@code
 * Words words = Words.in(Language.GERMAN);
 * words.say("chart.hoursAfterMixing"); // Stunden nach dem Mischen
 * words.number(2.5, 1); // 2,5
 * }</pre>
 */
public final class Words {

  private static final String NO_BREAK_SPACE = "\u00a0";
  private static final Locale SHORT_DAYS = new Locale("pt", "BR");

  /** The texts of the languages that something was said in. */
  private static final Map<Language, Properties> READ = new ConcurrentHashMap<>();

  /** The scale of temperature that comes first; the other follows in brackets. */
  public enum Degrees {
    /** Degrees Celsius first. */
    CELSIUS,
    /** Degrees Fahrenheit first. */
    FAHRENHEIT
  }

  /** How clock times are written. */
  public enum ClockStyle {
    /** 13:05. */
    HOURS_24("HH:mm"),
    /** 1:05 pm. */
    HOURS_12("h:mm a");

    private final String pattern;

    ClockStyle(String pattern) {
      this.pattern = pattern;
    }
  }

  private final Language language;
  private final Degrees degrees;
  private final ClockStyle clock;

  private Words(Language language, Degrees degrees, ClockStyle clock) {
    this.language = language;
    this.degrees = degrees;
    this.clock = clock;
  }

  /**
   * The words of a language, read from its file once, when something is first said.
   *
   * @param language whose bundle is read
   * @return the words of a language
   */
  public static Words in(Language language) {
    return new Words(Checks.given("language", language), Degrees.CELSIUS, ClockStyle.HOURS_24);
  }

  /**
   * Reads the words of a language beside what else is done, so that they are there when something
   * is to be said.
   *
   * @hidden
   */
  @Internal
  public static void readAhead(Language language) {
    if (!READ.containsKey(language)) {
      Thread reading = new Thread(() -> in(language).texts(), "words");
      reading.setDaemon(true);
      reading.start();
    }
  }

  private Properties texts() {
    return READ.computeIfAbsent(language, Words::read);
  }

  private static Properties read(Language language) {
    String resource = "/doughtide/report/words/words_" + language.tag() + ".properties";
    Properties texts = new Properties();
    try (InputStream in = Words.class.getResourceAsStream(resource)) {
      if (in == null) {
        throw new IllegalStateException("the file " + resource + " is missing from the program");
      }
      texts.load(new InputStreamReader(in, StandardCharsets.UTF_8));
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
    if (language == Language.FRENCH) {
      texts.replaceAll((key, text) -> unbroken(String.valueOf(text)));
    }
    return texts;
  }

  /**
   * {@return the same words with a scale of temperature first}
   *
   * @param first which degrees come first
   */
  public Words with(Degrees first) {
    return new Words(language, first, clock);
  }

  /**
   * {@return the same words with another way to write clock times}
   *
   * @param style of 12 or 24 hours
   */
  public Words with(ClockStyle style) {
    return new Words(language, degrees, style);
  }

  /**
   * {@return the words of another language, with temperatures and clock times written as here, such
   * as for a student whose language is not that of the class}
   *
   * @param other whose bundle is read
   */
  public Words of(Language other) {
    return in(other).with(degrees).with(clock);
  }

  /** {@return the scale of temperature that comes first} */
  public Degrees degrees() {
    return degrees;
  }

  /** French sets a space before these marks, at which a line must not break. */
  private static String unbroken(String text) {
    return text.replaceAll(" ([:;?!»])", NO_BREAK_SPACE + "$1").replace("« ", "«" + NO_BREAK_SPACE);
  }

  /** {@return the language of these words} */
  public Language language() {
    return language;
  }

  /** All keys, sorted. */
  SortedSet<String> keys() {
    return new TreeSet<>(texts().stringPropertyNames());
  }

  /**
   * {@return the text of a key}
   *
   * @param key of the bundle
   * @throws IllegalArgumentException when the key does not exist
   */
  public String say(String key) {
    String text = texts().getProperty(key);
    if (text == null) {
      throw new IllegalArgumentException("no text \"" + key + "\" in language " + language.tag());
    }
    return text;
  }

  /**
   * {@return the word for a thing that is known by its key; the key itself where this language has
   * no word for it, as for a flour that a program has added}
   *
   * @param group what it is, for example {@code flour}
   * @param key for example {@code strong white}
   */
  public String named(String group, String key) {
    String constant = key.toUpperCase(Locale.ROOT).replace(' ', '_');
    String word = texts().getProperty(group + "." + constant);
    return word == null ? key : word;
  }

  /**
   * {@return the text of a key with its placeholders filled in} Values are put in as they are and
   * never read as markup or as further placeholders.
   *
   * @param key of the bundle
   * @param values by placeholder name; a text {@code at {temperature}} takes the value of {@code
   *     temperature}
   */
  public String say(String key, Map<String, String> values) {
    String text = say(key);
    StringBuilder filled = new StringBuilder();
    int at = 0;
    while (at < text.length()) {
      int open = text.indexOf('{', at);
      int close = open < 0 ? -1 : text.indexOf('}', open);
      if (close < 0) {
        break;
      }
      String name = text.substring(open + 1, close);
      String value = values.get(name);
      if (value == null) {
        throw new IllegalArgumentException("no value for {" + name + "} of text \"" + key + "\"");
      }
      filled.append(text, at, open).append(value);
      at = close + 1;
    }
    return filled.append(text.substring(at)).toString();
  }

  /**
   * {@return a text with a capital letter first, as a sentence begins}
   *
   * @param text with at least one letter
   * @hidden
   */
  @Internal
  public String capitalized(String text) {
    return text.substring(0, 1).toUpperCase(language.locale()) + text.substring(1);
  }

  /**
   * {@return a number in the form of the language}
   *
   * @param value any finite number
   * @param decimals digits after the decimal mark, all of them shown
   */
  public String number(double value, int decimals) {
    return language.number(value, decimals);
  }

  /**
   * {@return a number with one decimal, or none where it is whole; line numbers ungrouped}
   *
   * @param value any finite number
   */
  public String plain(double value) {
    double tenths = Math.rint(value * 10) / 10;
    return tenths == Math.rint(tenths) ? String.valueOf((long) tenths) : number(tenths, 1);
  }

  /** The parts of a line that holds several texts, parted by {@code |}. */
  static List<String> parts(String line) {
    return List.of(line.split(" \\| ", -1));
  }

  /**
   * {@return a share in percent, already times 100, with the spacing of the language}
   *
   * @param percent where 100 is the whole
   * @param decimals after the decimal sign, 0 or more
   */
  public String percent(double percent, int decimals) {
    String gap =
        language == Language.ENGLISH || language == Language.PORTUGUESE ? "" : NO_BREAK_SPACE;
    return number(percent, decimals) + gap + "%";
  }

  /**
   * {@return Celsius and Fahrenheit, for example {@code 24.5 °C (76 °F)}}
   *
   * @param celsius degrees Celsius
   */
  public String temperature(double celsius) {
    String inCelsius = NO_BREAK_SPACE + "°C";
    String inFahrenheit = number(celsius * 9 / 5 + 32, 0) + NO_BREAK_SPACE + "°F";
    return degrees == Degrees.FAHRENHEIT
        ? inFahrenheit + " (" + number(celsius, 0) + inCelsius + ")"
        : number(celsius, celsius == Math.rint(celsius) ? 0 : 1)
            + inCelsius
            + " ("
            + inFahrenheit
            + ")";
  }

  /**
   * {@return a duration to five minutes with its units, in every language as the standard for units
   * writes it, which nobody takes for a clock time: {@code 4 h 35 min}, {@code 4 h} or {@code 35
   * min}}
   *
   * @param hours a length of time
   */
  public String hours(double hours) {
    long minutes = roundToFive(hours * 60);
    String whole = minutes / 60 + NO_BREAK_SPACE + "h";
    String rest = minutes % 60 + NO_BREAK_SPACE + "min";
    if (minutes % 60 == 0 && minutes > 0) {
      return whole;
    }
    return minutes < 60 ? rest : whole + NO_BREAK_SPACE + rest;
  }

  /**
   * {@return a span of hours, the likely hour first where there is one, for example {@code 5 h 20
   * min (4 h 35 min–6 h 20 min)}; {@code from 4 h 35 min} where its end is open}
   *
   * @param span early, likely and late
   * @hidden
   */
  @Internal
  public String hoursSpan(TimeSpan span) {
    String range =
        span.isClosed()
            ? hoursSpan(span.earlyHours(), span.lateHours())
            : say("hours.from", Map.of("hours", hours(span.earlyHours())));
    return led(span, this::hours, range);
  }

  /**
   * {@return a span of hours in quarters, the likely hour first where there is one, for example
   * {@code 5¼ h (4½–6¼)}; {@code from 4½ h} where its end is open}
   *
   * @param span early, likely and late
   * @hidden
   */
  @Internal
  public String quarterHours(TimeSpan span) {
    if (span.isClosed()) {
      String range = quarterHours(span.earlyHours(), span.lateHours());
      String bare = range.substring(0, range.length() - (NO_BREAK_SPACE + "h").length());
      return span.likelyHours().isEmpty() ? range : led(span, this::nearestQuarter, bare);
    }
    double step = span.earlyHours() < 12 ? 0.25 : 1;
    double from = Math.floor(span.earlyHours() / step + 1e-6) * step;
    String open = say("hours.from", Map.of("hours", quarters(from) + NO_BREAK_SPACE + "h"));
    return led(span, this::nearestQuarter, open);
  }

  private String nearestQuarter(double hours) {
    double step = hours < 12 ? 0.25 : 1;
    return quarters(Math.round(hours / step) * step) + NO_BREAK_SPACE + "h";
  }

  /** The likely hour before its range; the range alone where there is none or nothing to tell. */
  private static String led(TimeSpan span, DoubleFunction<String> write, String range) {
    if (span.likelyHours().isEmpty() || span.earlyHours() == span.lateHours()) {
      return range;
    }
    return write.apply(span.likelyHours().getAsDouble()) + " (" + range + ")";
  }

  /**
   * {@return a span of time, for example {@code 4 h 35 min–6 h 20 min}}
   *
   * @param early hours, the smaller number
   * @param late hours, the larger number
   */
  public String hoursSpan(double early, double late) {
    String from = hours(early);
    String to = hours(late);
    return from.equals(to) ? from : from + "–" + to;
  }

  /**
   * {@return a span of hours in quarters, for example {@code 4½–6¼ h}; whole hours from 12 hours
   * on} The early end is rounded down, the late end up, so that the span never shrinks.
   *
   * @param early hours, the smaller number
   * @param late hours, the larger number
   */
  public String quarterHours(double early, double late) {
    double step = late < 12 ? 0.25 : 1;
    double from = Math.floor(early / step + 1e-6) * step;
    double to = Math.ceil(late / step - 1e-6) * step;
    String span = from == to ? quarters(from) : quarters(from) + "–" + quarters(to);
    return span + NO_BREAK_SPACE + "h";
  }

  private static String quarters(double hours) {
    long whole = (long) Math.floor(hours);
    String part = List.of("", "¼", "½", "¾").get((int) Math.round((hours - whole) * 4));
    return whole == 0 && !part.isEmpty() ? part : whole + part;
  }

  /**
   * {@return clock time, rounded to five minutes, for example {@code 13:05} or {@code 1:05 pm}}
   *
   * @param time with its time zone
   */
  public String clock(ZonedDateTime time) {
    return clockToTheMinute(rounded(time));
  }

  /**
   * {@return clock time as it was given, for example {@code 13:07} or {@code 1:07 pm}}
   *
   * @param time with its time zone
   */
  public String clockToTheMinute(ZonedDateTime time) {
    String written = DateTimeFormatter.ofPattern(clock.pattern, language.locale()).format(time);
    return clock == ClockStyle.HOURS_24
        ? written
        : written.toLowerCase(language.locale()).replace(' ', '\u00a0').replace('\u202f', '\u00a0');
  }

  /**
   * {@return short day of the week and clock time, for example {@code Sat 13:05}}
   *
   * @param time with its time zone
   */
  public String dayAndClock(ZonedDateTime time) {
    return day(rounded(time)) + " " + clock(time);
  }

  /**
   * {@return short day of the week}
   *
   * @param time with its time zone
   */
  public String day(ZonedDateTime time) {
    boolean isLong = language == Language.PORTUGUESE; // in Portugal, the short form is not short
    return DateTimeFormatter.ofPattern("EEE", isLong ? SHORT_DAYS : language.locale())
        .format(rounded(time));
  }

  /**
   * {@return the full date in the form of the language}
   *
   * @param date without a time
   */
  public String date(java.time.LocalDate date) {
    return DateTimeFormatter.ofLocalizedDate(FormatStyle.LONG)
        .withLocale(language.locale())
        .format(date);
  }

  /** {@return the time that people are told: the nearest five minutes} */
  public static ZonedDateTime rounded(ZonedDateTime time) {
    double minutes = time.getMinute() + time.getSecond() / 60.0;
    return time.truncatedTo(java.time.temporal.ChronoUnit.HOURS).plusMinutes(roundToFive(minutes));
  }

  private static long roundToFive(double minutes) {
    return Math.round(minutes / 5) * 5;
  }
}
