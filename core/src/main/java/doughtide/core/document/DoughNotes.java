package doughtide.core.document;

import doughtide.core.Internal;
import doughtide.core.learning.LoafResult;
import doughtide.core.quantity.InputException;
import doughtide.core.quantity.Rise;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * Writes readings into their text while a dough is in hand: every line that was there stays as it
 * was. What it makes, {@link ReadingsDocument} reads.
 *
 * <pre>{@code
 * String text = DoughNotes.started(Map.of("mixed-at", "2027-03-06T09:30", "dough-temp", "25C"), false);
 * String later = DoughNotes.with(text, new DoughNotes.Line("2027-03-06 13:30", Optional.of(
 *     Rise.ofPercent(44)), OptionalDouble.of(24), OptionalDouble.empty(),
 *     OptionalDouble.empty(), ""), setting);
 * }</pre>
 */
@Internal
public final class DoughNotes {
  private static final String BY_RISE = "time;rise %;dough temp C;pH;note";
  private static final String BY_HEIGHT = "time;height mm;dough temp C;pH;note";

  private DoughNotes() {}

  /**
   * What is noted at one moment.
   *
   * @param time as the table writes it
   * @param rise of the sample
   * @param celsius of the dough
   * @param core temperature in the middle of the loaf, °C
   * @param ph of the dough
   * @param remark in words, or empty
   */
  @Internal
  public record Line(
      String time,
      Optional<Rise> rise,
      OptionalDouble celsius,
      OptionalDouble core,
      OptionalDouble ph,
      String remark) {}

  /**
   * The text of a dough just mixed, without readings.
   *
   * @param head values by key
   * @param byHeight whether heights are noted, not rises
   */
  public static String started(Map<String, String> head, boolean byHeight) {
    DocumentText text = new DocumentText("dough");
    head.forEach((key, value) -> text.line(DocumentReader.words(key), value));
    return text + (byHeight ? BY_HEIGHT : BY_RISE) + "\n";
  }

  /** Whether a text is one of readings: it has the heading of such a table, not of a logger's. */
  public static boolean hasTable(String text, Vocabulary vocabulary) {
    List<String> lines = lines(text);
    int heading = heading(lines, vocabulary);
    return heading >= 0 && !ReadingsColumns.isOfLogger(lines.get(heading), vocabulary);
  }

  private static int heading(List<String> lines, Vocabulary vocabulary) {
    for (int i = 0; i < lines.size(); i++) {
      if (ReadingsColumns.isHeading(lines.get(i), vocabulary)) {
        return i;
      }
    }
    return -1;
  }

  /**
   * The text with one more line at its end.
   *
   * @param text of readings that can be read
   * @param line told after the last one
   * @param setting as for reading it
   * @throws InputException if the table has no place for it, or the line cannot be read back
   */
  public static String with(String text, Line line, ReadingsDocument.Setting setting) {
    ReadingsDocument before = read(text, setting);
    Vocabulary vocabulary = setting.catalogue().vocabulary();
    List<String> lines = lines(text);
    String plain = lines.get(heading(lines, vocabulary));
    String heading =
        line.core().isPresent() ? ReadingsColumns.of(plain, vocabulary).withCore(plain) : plain;
    String headed =
        text.replaceFirst("(?m)^" + Pattern.quote(plain) + "$", Matcher.quoteReplacement(heading));
    String end = ending(text);
    String whole = headed.endsWith("\n") || headed.endsWith("\r") ? headed : headed + end;
    ReadingsColumns columns = ReadingsColumns.of(heading, vocabulary);
    String noted = whole + columns.line(line, before.head().startMm()) + end;
    ReadingsDocument.Refused refused = read(noted, setting).refused();
    if (refused.count() > before.refused().count()) {
      LineException last = refused.first().get(refused.first().size() - 1);
      throw last.inWords(last.what());
    }
    return noted;
  }

  /** The same for the moment at which the loaf is shaped, which then stands in the head, too. */
  public static String shaped(String text, Line line, ReadingsDocument.Setting setting) {
    Map<String, String> head = Map.of(ReadingsDocument.SHAPED, line.time());
    return with(with(text, line, setting), head, setting);
  }

  /**
   * The same for the moment at which the loaf goes into the cold, which then stands in the head,
   * too.
   */
  public static String intoCold(String text, Line line, ReadingsDocument.Setting setting) {
    Map<String, String> head = Map.of(ReadingsDocument.INTO_COLD, line.time());
    return with(with(text, line, setting), head, setting);
  }

  /**
   * The text with lines about the loaf in its head; one that is there already takes the new value.
   *
   * @param text of readings that can be read
   * @param result how the loaf came out
   * @param words on crumb and crust, by {@code crumb} and {@code crust}
   * @param setting as for reading it
   */
  public static String with(
      String text, LoafResult result, Map<String, String> words, ReadingsDocument.Setting setting) {
    Map<String, String> all = new LinkedHashMap<>();
    all.put("result", Vocabulary.plain(result.name()));
    all.putAll(words);
    return with(text, all, setting);
  }

  private static String with(
      String text, Map<String, String> values, ReadingsDocument.Setting setting) {
    read(text, setting);
    String end = ending(text);
    Vocabulary vocabulary = setting.catalogue().vocabulary();
    List<String> lines = new ArrayList<>(lines(text));
    values.forEach((key, value) -> put(lines, key, value, vocabulary));
    String noted = String.join(end, lines) + end;
    read(noted, setting);
    return noted;
  }

  private static void put(List<String> lines, String key, String value, Vocabulary vocabulary) {
    int heading = heading(lines, vocabulary);
    String line = DocumentText.line(DocumentReader.words(key), value, "");
    for (int i = 0; i < heading; i++) {
      if (DocumentReader.keyOf(lines.get(i), vocabulary, ReadingsDocument.keys().keySet())
          .equals(key)) {
        lines.set(i, line);
        return;
      }
    }
    lines.add(heading, line);
  }

  private static ReadingsDocument read(String text, ReadingsDocument.Setting setting) {
    return ReadingsDocument.read(text.lines().iterator(), setting);
  }

  private static List<String> lines(String text) {
    return text.lines().toList();
  }

  private static String ending(String text) {
    return text.contains("\r\n") ? "\r\n" : "\n";
  }
}
