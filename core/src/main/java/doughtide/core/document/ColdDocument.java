package doughtide.core.document;

import doughtide.core.Internal;
import doughtide.core.document.DocumentReader.Use;
import doughtide.core.quantity.Checks;
import doughtide.core.quantity.InputException;
import doughtide.core.quantity.Quantities;
import java.io.Serializable;
import java.util.Iterator;
import java.util.LinkedHashMap;
import java.util.Map;

/**
 * What is known of the cold that a baker has: how its air differs from what is set or measured, and
 * how its air takes up heat, each as a normal distribution.
 *
 * <pre>{@code
 * ColdDocument cold = new ColdDocument(0.8, 0.5, 0.05, 0.12);
 * ColdDocument same = ColdDocument.read(cold.text().lines().iterator(), Vocabulary.KEYS_ONLY);
 * }</pre>
 *
 * @param airOffsetCelsius air minus what is stated, mean, −10…10 °C
 * @param airOffsetDeviationCelsius its standard deviation, 0…10 °C
 * @param filmLogFactor natural logarithm of the coefficient of the air's film over the usual one,
 *     mean, −2…2
 * @param filmLogDeviation its standard deviation, 0…2
 */
@Internal
public record ColdDocument(
    double airOffsetCelsius,
    double airOffsetDeviationCelsius,
    double filmLogFactor,
    double filmLogDeviation)
    implements Serializable {

  private static final double MOST_CELSIUS = 10;
  private static final double MOST_LOG = 2;
  private static final String AIR_OFFSET = "air-offset";
  private static final String AIR_DEVIATION = "air-offset-deviation";
  private static final String FILM_FACTOR = "film-log-factor";
  private static final String FILM_DEVIATION = "film-log-deviation";

  /**
   * @throws InputException if a number is outside its range
   */
  public ColdDocument {
    Checks.inRange("air offset", airOffsetCelsius, -MOST_CELSIUS, MOST_CELSIUS, "°C");
    Checks.inRange("deviation of the air", airOffsetDeviationCelsius, 0, MOST_CELSIUS, "°C");
    Checks.inRange("logarithm of the film's factor", filmLogFactor, -MOST_LOG, MOST_LOG, "");
    Checks.inRange("deviation of the film's factor", filmLogDeviation, 0, MOST_LOG, "");
  }

  /**
   * Reads a cold: one {@code key: value} a line, lines that begin with # are remarks.
   *
   * @param lines the text, without line endings
   * @param vocabulary words for the keys
   * @throws InputException if a line cannot be used or one is missing
   */
  public static ColdDocument read(Iterator<String> lines, Vocabulary vocabulary) {
    Map<String, Use> keys = new LinkedHashMap<>();
    keys.put(AIR_OFFSET, Use.ONCE);
    keys.put(AIR_DEVIATION, Use.ONCE);
    keys.put(FILM_FACTOR, Use.ONCE);
    keys.put(FILM_DEVIATION, Use.ONCE);
    keys.put("note", Use.REMARK);
    DocumentReader reader = new DocumentReader(lines, keys, vocabulary).whole();
    return new ColdDocument(
        celsius(reader, AIR_OFFSET, -MOST_CELSIUS),
        celsius(reader, AIR_DEVIATION, 0),
        number(reader, FILM_FACTOR, -MOST_LOG),
        number(reader, FILM_DEVIATION, 0));
  }

  private static double celsius(DocumentReader reader, String key, double least) {
    String name = DocumentReader.label(key);
    return reader.required(
        key,
        DocumentReader.words(key) + ": 0.5",
        text -> Quantities.number(name, text.replaceFirst(" ?°? ?C$", ""), least, MOST_CELSIUS));
  }

  private static double number(DocumentReader reader, String key, double least) {
    String name = DocumentReader.label(key);
    return reader.required(
        key,
        DocumentReader.words(key) + ": 0.1",
        text -> Quantities.number(name, text, least, MOST_LOG));
  }

  /** The cold as text, to four decimals, which {@link #read} reads back. */
  public String text() {
    return new DocumentText("cold")
        .line(AIR_OFFSET, Checks.plain(airOffsetCelsius) + " °C")
        .line(AIR_DEVIATION, Checks.plain(airOffsetDeviationCelsius) + " °C")
        .line(FILM_FACTOR, Checks.plain(filmLogFactor))
        .line(FILM_DEVIATION, Checks.plain(filmLogDeviation))
        .toString();
  }
}
