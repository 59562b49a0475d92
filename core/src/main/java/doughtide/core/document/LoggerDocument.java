package doughtide.core.document;

import doughtide.core.Internal;
import doughtide.core.document.DocumentReader.Line;
import doughtide.core.document.DocumentReader.Use;
import doughtide.core.forecast.Warning;
import doughtide.core.quantity.Checks;
import doughtide.core.quantity.InputException;
import doughtide.core.quantity.Quantities;
import doughtide.core.rise.DoughTemperature;
import doughtide.core.thermal.LoggedReadings;
import java.time.ZonedDateTime;
import java.util.ArrayList;
import java.util.Iterator;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;

/**
 * A logger's table of the dough's own temperature: a column of times or hours and one of
 * temperatures, separated by comma, semicolon or tab, decimal point or comma. One pass, memory does
 * not grow with the text.
 *
 * <pre>{@code
 * String text = "hours,temperature C\n0,25\n2,23";
 * LoggerDocument logger =
 *     LoggerDocument.read(text.lines().iterator(), Optional.empty());
 * DoughTemperature measured = DoughTemperature.following(logger.readings().trace());
 * }</pre>
 *
 * @param readings hours since mixing and temperatures
 * @param warnings gaps, by line number
 */
public record LoggerDocument(LoggedReadings readings, List<Warning> warnings) {

  /**
   * Copies the list.
   *
   * @param readings hours since mixing and temperatures
   * @param warnings gaps, by line number
   */
  public LoggerDocument {
    warnings = List.copyOf(warnings);
  }

  /**
   * Reads a table whose columns are named in English: {@code time}, {@code hours}, {@code
   * temperature} and the like.
   *
   * @param lines the text, without line endings
   * @param mixed when the dough was mixed; without it the first reading is taken at mixing where
   *     the table has times instead of hours
   * @return the readings and warnings
   * @throws InputException with the number of the line if a line cannot be used, or if there are
   *     fewer than two readings
   */
  public static LoggerDocument read(Iterator<String> lines, Optional<ZonedDateTime> mixed) {
    return read(lines, mixed, Vocabulary.KEYS_ONLY);
  }

  /**
   * Reads the table with words of a language for its columns.
   *
   * @param lines the text, without line endings
   * @param mixed when the dough was mixed; without it the first reading is taken at mixing where
   *     the table has times instead of hours
   * @param vocabulary words for the columns
   * @return the readings and warnings
   * @throws InputException with the number of the line if a line cannot be used, or if there are
   *     fewer than two readings
   * @hidden
   */
  @Internal
  public static LoggerDocument read(
      Iterator<String> lines, Optional<ZonedDateTime> mixed, Vocabulary vocabulary) {
    return new TextReader(lines, mixed, vocabulary).read();
  }

  /** Reads one text. */
  private static final class TextReader {
    private static final double LONGEST_GAP_HOURS = 3;
    private static final int MOST_GAPS = 3;

    private final DocumentReader lines;
    private final Optional<ZonedDateTime> mixed;
    private final Vocabulary vocabulary;
    private final LoggedReadings readings = new LoggedReadings();
    private final List<Warning> gaps = new ArrayList<>();
    private int moreGaps;
    private long lastLine;

    TextReader(Iterator<String> lines, Optional<ZonedDateTime> mixed, Vocabulary vocabulary) {
      this.lines = new DocumentReader(lines, Map.of("note", Use.REMARK), vocabulary);
      this.mixed = mixed;
      this.vocabulary = vocabulary;
    }

    LoggerDocument read() {
      Line first =
          lines
              .headWhileKnown()
              .orElseThrow(
                  () ->
                      new InputException(
                          "log.empty",
                          "there is no reading: give a line of names and two readings"));
      Columns columns =
          DocumentReader.at(first.number(), () -> Columns.of(first.text(), vocabulary));
      LogTimes times = new LogTimes(columns.timeKind(), mixed);
      for (Optional<Line> line = lines.next(); line.isPresent(); line = lines.next()) {
        add(columns, times, line.get());
      }
      if (readings.count() < 2) {
        throw new InputException(
            "log.too-few",
            "it has "
                + readings.count()
                + (readings.count() == 1 ? " reading" : " readings")
                + ": a temperature over time needs at least two");
      }
      if (moreGaps > 0) {
        gaps.add(Warning.Kind.LOGGER_GAPS.with(moreGaps));
      }
      return new LoggerDocument(readings, gaps);
    }

    private void add(Columns columns, LogTimes times, Line line) {
      try {
        List<String> cells = columns.cells(line.text());
        double hours = times.hours(cells.get(columns.time()), readings.lastHours());
        double celsius = columns.celsius(cells.get(columns.temperature()));
        Checks.inRange(
            "dough temperature",
            celsius,
            DoughTemperature.LOWEST_CELSIUS,
            DoughTemperature.HIGHEST_CELSIUS,
            "°C");
        checkOrder(hours);
        gap(hours, line);
        readings.add(hours, celsius);
      } catch (InputException e) {
        throw new LineException(line.number(), e);
      }
      lastLine = line.number();
    }

    private void checkOrder(double hours) {
      if (hours == readings.lastHours()) {
        throw new InputException(
            "log.time-twice", "the same time as line " + lastLine + ": keep one of the two");
      }
      if (hours < readings.lastHours()) {
        throw new InputException(
            "log.order",
            "this time lies before that of line "
                + lastLine
                + ": put the readings in order of time");
      }
    }

    private void gap(double hours, Line line) {
      double wide = hours - readings.lastHours();
      if (readings.count() == 0 || wide <= LONGEST_GAP_HOURS) {
        return;
      }
      if (gaps.size() == MOST_GAPS) {
        moreGaps++;
        return;
      }
      gaps.add(Warning.Kind.LOGGER_GAP.with(wide, lastLine, line.number()));
    }
  }

  /** Where the columns are and how they are written. */
  private record Columns(
      char separator, int width, int time, LogTimes.Kind timeKind, int temperature, String unit) {

    static Columns of(String heading, Vocabulary vocabulary) {
      char separator = CsvCells.separator(heading);
      List<String> names =
          CsvCells.of(heading, separator).stream().map(name -> english(name, vocabulary)).toList();
      int time = -1;
      int temperature = -1;
      for (int i = 0; i < names.size(); i++) {
        if (LogTimes.Kind.of(names.get(i)).isPresent()) {
          time = one("time", time, i, names);
        } else if (isTemperature(names.get(i))) {
          temperature = one("temperature", temperature, i, names);
        }
      }
      if (time < 0 || temperature < 0) {
        throw new InputException(
            "log.heading",
            "the first line must name a column time or hours and a column temperature with its"
                + " unit: write for example time,temperature C");
      }
      return new Columns(
          separator,
          names.size(),
          time,
          LogTimes.Kind.of(names.get(time)).orElseThrow(),
          temperature,
          unit(names.get(temperature)));
    }

    /** The name in small letters, its leading words by their key where they are a word for it. */
    private static String english(String name, Vocabulary vocabulary) {
      String clean = Quantities.clean(name).toLowerCase(Locale.ROOT);
      String words = clean.replaceAll("[\\s_]*[(\\[]?°?[cf][)\\]]?$", "");
      if (LogTimes.Kind.of(clean).isPresent() || isTemperature(clean)) {
        return clean;
      }
      return vocabulary
          .key(Vocabulary.Kind.COLUMN, Vocabulary.plain(words))
          .map(key -> key + clean.substring(words.length()))
          .orElse(clean);
    }

    private static int one(String what, int before, int now, List<String> names) {
      if (before >= 0) {
        throw new InputException(
            "log.columns-twice",
            "two columns for the "
                + what
                + ", '"
                + names.get(before)
                + "' and '"
                + names.get(now)
                + "': keep one");
      }
      return now;
    }

    List<String> cells(String line) {
      List<String> cells = CsvCells.of(line, separator);
      if (cells.size() <= Math.max(time, temperature)) {
        throw new InputException(
            "log.columns-few",
            "only "
                + cells.size()
                + (cells.size() == 1 ? " column" : " columns")
                + ": a time and a temperature are needed");
      }
      if (cells.size() > width) {
        throw new InputException(
            "log.columns-many",
            cells.size()
                + " columns, but the first line names "
                + width
                + ": with a decimal comma, put semicolons between the columns");
      }
      return cells;
    }

    private static boolean isTemperature(String name) {
      return name.matches("(dough[ _-]?)?temp.*|(degrees?[ _-]?)?(celsius|fahrenheit).*|°[cf]");
    }

    private static String unit(String name) {
      if (name.matches(".*(celsius|(^|[^a-z])c)[^a-z]*")) {
        return "C";
      }
      return name.matches(".*(fahrenheit|(^|[^a-z])f)[^a-z]*") ? "F" : "";
    }

    double celsius(String cell) {
      String text = cell.strip();
      if (!unit.isEmpty() && !text.isEmpty() && Character.isDigit(text.charAt(text.length() - 1))) {
        return plain(text);
      }
      return Quantities.temperature("temperature", cell).celsius();
    }

    /** A bare number, the quick way where it is written plainly. */
    private double plain(String text) {
      if (unit.equals("C") && text.length() < 8 && text.matches("[0-9]+(\\.[0-9]+)?")) {
        return Double.parseDouble(text);
      }
      return Quantities.temperature("temperature", text + unit).celsius();
    }
  }
}
