package doughtide.core.document;

import doughtide.core.quantity.InputException;
import doughtide.core.quantity.Nearest;
import doughtide.core.quantity.Shorten;
import java.util.ArrayList;
import java.util.Iterator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.function.Function;
import java.util.function.Predicate;
import java.util.function.Supplier;
import java.util.regex.Pattern;

/**
 * Reads a document line by line: first its head of lines {@code key: value}, then, in some kinds, a
 * table of cells. Empty lines, lines of empty cells and lines that begin with # are passed over. A
 * value may stand in quotation marks, and so may a whole line, as a spreadsheet writes it. Memory
 * does not grow with the table.
 */
final class DocumentReader {
  private static final Pattern ENDS = Pattern.compile("^[;,\\s]+|[;,\\s]+$");

  private static final int LONGEST_LINE = 65_536;
  private static final int MOST_HEAD_LINES = 6000;
  private static final int SHOWN = 40;
  private static final int MOST_PROBLEMS = 50;

  /** How often a key may stand in a head. */
  enum Use {
    ONCE,
    REPEATED,
    /** Any number of times, with a value or without: a person's own words, which are not read. */
    REMARK
  }

  /** One line. */
  record Line(long number, String text) {}

  /** A value of the head and the line where it stands. */
  record Entry(long line, String value) {

    /** Reads the value; what is wrong with it is told with the number of its line. */
    <T> T read(Function<String, T> reader) {
      return at(line, () -> reader.apply(value));
    }
  }

  private final Iterator<String> lines;
  private final Map<String, Use> keys;
  private final Vocabulary vocabulary;
  private final Map<String, List<Entry>> head = new LinkedHashMap<>();
  private final List<LineException> problems = new ArrayList<>();
  private boolean collects;
  private long number;

  /**
   * @param lines the text, without line endings
   * @param keys those of this kind of document, in the order in which messages name them
   */
  DocumentReader(Iterator<String> lines, Map<String, Use> keys, Vocabulary vocabulary) {
    this.lines = lines;
    this.keys = keys;
    this.vocabulary = vocabulary;
  }

  /** Reads on past a line of the head that cannot be used; {@link #problems} tells of it. */
  DocumentReader collecting() {
    collects = true;
    return this;
  }

  /** Lines of the head that could not be used. */
  List<LineException> problems() {
    return List.copyOf(problems);
  }

  /** Reads a document that has no table. */
  DocumentReader whole() {
    head(line -> false);
    return this;
  }

  /**
   * Reads the head.
   *
   * @param heading whether a line begins the table
   * @return the line that does, or nothing if there is no table
   */
  Optional<Line> head(Predicate<String> heading) {
    for (Optional<Line> line = next(); line.isPresent(); line = next()) {
      if (heading.test(line.get().text())) {
        return line;
      }
      tryTaking(line.get());
    }
    return Optional.empty();
  }

  private void tryTaking(Line line) {
    try {
      take(line);
    } catch (LineException e) {
      if (!collects || problems.size() >= MOST_PROBLEMS) {
        throw e;
      }
      problems.add(e);
    }
  }

  /**
   * Reads a head that a table without a certain heading follows: every line that begins with a key
   * belongs to it.
   *
   * @return the first line that does not, or nothing if there is none
   */
  Optional<Line> headWhileKnown() {
    return head(line -> !beginsWithKey(line));
  }

  private boolean beginsWithKey(String line) {
    return !keyOf(line, vocabulary, keys.keySet()).isEmpty();
  }

  /** The key with which a line begins; empty if it begins with none. */
  static String keyOf(String line, Vocabulary vocabulary, Set<String> keys) {
    int colon = line.indexOf(':');
    return colon <= 0
        ? ""
        : vocabulary.meant(Vocabulary.Kind.KEY, line.substring(0, colon), keys).orElse("");
  }

  /** The next line that says something. */
  Optional<Line> next() {
    while (lines.hasNext()) {
      String text = lines.next();
      number++;
      text = number == 1 && text.startsWith("\uFEFF") ? text.substring(1) : text;
      if (text.length() > LONGEST_LINE) {
        throw new LineException(
            number, "the line is longer than " + LONGEST_LINE + " characters: is it this file?");
      }
      if (!saysNothing(text)) {
        return Optional.of(new Line(number, text));
      }
    }
    return Optional.empty();
  }

  private static boolean saysNothing(String text) {
    for (int i = 0; i < text.length(); i++) {
      char c = text.charAt(i);
      if (c == '#') {
        return true;
      }
      if (c != ';' && c != ',' && !Character.isWhitespace(c)) {
        return false;
      }
    }
    return true;
  }

  private void take(Line line) {
    if (line.number() > MOST_HEAD_LINES) {
      throw new LineException(
          line.number(),
          "more than " + MOST_HEAD_LINES + " lines before a table: is it this file?");
    }
    String text = bare(line.text().strip());
    int colon = text.indexOf(':');
    if (colon <= 0 || !Character.isLetter(text.codePointAt(0))) {
      throw new LineException(
          line.number(),
          "'" + Shorten.to(line.text().strip(), SHOWN) + "' is no line 'key: value'" + expected());
    }
    String typed = text.substring(0, colon).strip();
    String key = at(line.number(), () -> key(typed));
    put(key, new Entry(line.number(), value(text.substring(colon + 1))));
  }

  /** A spreadsheet puts a line that holds a comma into quotation marks. */
  private static String bare(String text) {
    return text.startsWith("\"") ? text.replace("\"", "") : text;
  }

  /** A spreadsheet writes the empty cells of a line, too, and quotes a cell that holds a comma. */
  static String value(String text) {
    String value = ENDS.matcher(text).replaceAll("");
    boolean quoted = value.length() > 1 && value.startsWith("\"") && value.endsWith("\"");
    String inside = quoted ? value.substring(1, value.length() - 1) : value;
    boolean single = inside.replace("\"\"", "").indexOf('"') < 0;
    return quoted && single ? inside.replace("\"\"", "\"") : value;
  }

  private String key(String typed) {
    return vocabulary
        .meant(Vocabulary.Kind.KEY, typed, keys.keySet())
        .orElseThrow(
            () ->
                new InputException(
                    "document.key-unknown",
                    "'" + Shorten.to(typed, SHOWN) + ":' is not known here: " + hint(typed)));
  }

  private String hint(String typed) {
    List<String> words = keys.keySet().stream().map(DocumentReader::words).toList();
    return Nearest.to(Vocabulary.plain(typed), words)
        .map(near -> "did you mean '" + near + ":'?")
        .orElse("the keys are " + String.join(", ", words));
  }

  private String expected() {
    return keys.isEmpty() ? "" : ", such as '" + words(keys.keySet().iterator().next()) + ": …'";
  }

  private void put(String key, Entry entry) {
    Use use = keys.getOrDefault(key, Use.ONCE);
    if (use == Use.REMARK) {
      return;
    }
    if (entry.value().isEmpty()) {
      throw new LineException(
          entry.line(), "'" + words(key) + ":' has no value: give one or leave the line out");
    }
    List<Entry> entries = head.computeIfAbsent(key, each -> new ArrayList<>());
    if (use == Use.ONCE && !entries.isEmpty()) {
      throw new LineException(
          entry.line(), "'" + words(key) + ":' is given twice: keep one of the lines");
    }
    entries.add(entry);
  }

  /** A key as messages write it. */
  static String words(String key) {
    return key.replace('-', ' ');
  }

  /** The name of a key in front of its value in messages. */
  static String label(String key) {
    return words(key) + ":";
  }

  /** The keys that have a value, in the order in which they came. */
  List<String> given() {
    return List.copyOf(head.keySet());
  }

  /** The value of a key. */
  Optional<Entry> entry(String key) {
    return all(key).stream().findFirst();
  }

  /** All values of a key. */
  List<Entry> all(String key) {
    return head.getOrDefault(key, List.of());
  }

  /** The value of a key, read. */
  <T> Optional<T> value(String key, Function<String, T> reader) {
    return entry(key).map(entry -> entry.read(reader));
  }

  /** The value of a key that must be there. */
  <T> T required(String key, String example, Function<String, T> reader) {
    return value(key, reader)
        .orElseThrow(
            () ->
                new InputException(
                    "document.line-missing",
                    "there is no line '" + words(key) + ": …': add for example " + example));
  }

  /** Does what may fail, and tells a failure with the number of the line. */
  static <T> T at(long line, Supplier<T> work) {
    try {
      return work.get();
    } catch (LineException e) {
      throw e;
    } catch (InputException e) {
      throw new LineException(line, e);
    }
  }
}
