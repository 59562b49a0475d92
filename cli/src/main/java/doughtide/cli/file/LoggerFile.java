package doughtide.cli.file;

import doughtide.cli.args.ClockTimes;
import doughtide.cli.session.Environment;
import doughtide.core.document.CsvCells;
import doughtide.core.forecast.Warning;
import doughtide.core.quantity.Checks;
import doughtide.core.quantity.InputException;
import doughtide.core.quantity.Quantities;
import doughtide.core.rise.DoughTemperature;
import doughtide.core.thermal.LoggedReadings;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;

/**
 * Reads a logger's CSV of the dough's own temperature: a column of times or hours and one of
 * temperatures, separated by comma, semicolon or tab, decimal point or comma. One pass, memory does
 * not grow with the file.
 */
public final class LoggerFile {

  private static final double LONGEST_GAP_HOURS = 3;
  private static final int MOST_GAPS = 3;

  private final InputLines lines;
  private final Optional<ClockTimes> clock;
  private final LoggedReadings readings = new LoggedReadings();
  private final List<Warning> gaps = new ArrayList<>();
  private int moreGaps;
  private long lastLine;

  private LoggerFile(InputLines lines, Optional<ClockTimes> clock) {
    this.lines = lines;
    this.clock = clock;
  }

  /**
   * What a file held.
   *
   * @param readings its readings, hours since mixing
   * @param warnings gaps, by line number
   */
  public record Content(LoggedReadings readings, List<Warning> warnings) {}

  /**
   * Reads a file.
   *
   * @param option the option that named it
   * @param name as typed
   * @param clock when the dough was mixed; without it the first reading is taken at mixing where
   *     the file has times instead of hours
   */
  public static Content read(
      String option, String name, Optional<ClockTimes> clock, Environment environment) {
    try (InputLines lines = InputLines.open(option, name, environment)) {
      return new LoggerFile(lines, clock).content(name);
    }
  }

  private Content content(String name) {
    Optional<InputLines.Line> first = nextLine();
    if (first.isEmpty()) {
      throw new InputException(
          FileProblem.quoted(name) + " holds no reading: give a line of names and two readings");
    }
    Columns columns = Columns.of(this, first.get());
    LogTimes times = new LogTimes(columns.timeKind(), clock);
    for (Optional<InputLines.Line> line = nextLine(); line.isPresent(); line = nextLine()) {
      add(columns, times, line.get());
    }
    if (readings.count() < 2) {
      throw new InputException(
          FileProblem.quoted(name)
              + " has "
              + readings.count()
              + (readings.count() == 1 ? " reading" : " readings")
              + ": a temperature over time needs at least two");
    }
    if (moreGaps > 0) {
      gaps.add(Warning.Kind.LOGGER_GAPS.with(moreGaps));
    }
    return new Content(readings, List.copyOf(gaps));
  }

  private Optional<InputLines.Line> nextLine() {
    Optional<InputLines.Line> line = lines.next();
    while (line.isPresent() && isNothing(line.get().text())) {
      line = lines.next();
    }
    return line;
  }

  private static boolean isNothing(String text) {
    return text.isBlank() || text.startsWith("#");
  }

  private void add(Columns columns, LogTimes times, InputLines.Line line) {
    List<String> cells = cells(line, columns.separator());
    if (cells.size() <= Math.max(columns.time(), columns.temperature())) {
      throw lines.problem(
          line, "only " + cells.size() + " columns: a time and a temperature are needed");
    }
    if (cells.size() > columns.width()) {
      throw lines.problem(
          line,
          cells.size()
              + " columns, but the first line names "
              + columns.width()
              + ": with a decimal comma, put semicolons between the columns");
    }
    try {
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
      throw lines.problem(line, String.valueOf(e.getMessage()));
    }
    lastLine = line.number();
  }

  private List<String> cells(InputLines.Line line, char separator) {
    try {
      return CsvCells.of(line.text(), separator);
    } catch (InputException e) {
      throw lines.problem(line, String.valueOf(e.getMessage()));
    }
  }

  private void checkOrder(double hours) {
    if (hours == readings.lastHours()) {
      throw new InputException("the same time as line " + lastLine + ": keep one of the two");
    }
    if (hours < readings.lastHours()) {
      throw new InputException(
          "this time lies before that of line " + lastLine + ": put the readings in order of time");
    }
  }

  private void gap(double hours, InputLines.Line line) {
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

  /** Where the columns are and how they are written. */
  private record Columns(
      char separator, int width, int time, LogTimes.Kind timeKind, int temperature, String unit) {

    static Columns of(LoggerFile file, InputLines.Line header) {
      char separator = separator(header.text());
      List<String> names =
          file.cells(header, separator).stream()
              .map(name -> Quantities.clean(name).toLowerCase(Locale.ROOT))
              .toList();
      int time = -1;
      int temperature = -1;
      for (int i = 0; i < names.size(); i++) {
        if (LogTimes.Kind.of(names.get(i)).isPresent()) {
          time = one(file, header, "time", time, i, names);
        } else if (isTemperature(names.get(i))) {
          temperature = one(file, header, "temperature", temperature, i, names);
        }
      }
      if (time < 0 || temperature < 0) {
        throw file.lines.problem(
            header,
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

    private static int one(
        LoggerFile file,
        InputLines.Line header,
        String what,
        int before,
        int now,
        List<String> names) {
      if (before >= 0) {
        throw file.lines.problem(
            header,
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

    private static boolean isTemperature(String name) {
      return name.matches("(dough[ _-]?)?temp.*|(degrees?[ _-]?)?(celsius|fahrenheit).*|°[cf]");
    }

    private static String unit(String name) {
      if (name.matches(".*(celsius|(^|[^a-z])c)[^a-z]*")) {
        return "C";
      }
      return name.matches(".*(fahrenheit|(^|[^a-z])f)[^a-z]*") ? "F" : "";
    }

    private static char separator(String header) {
      if (header.indexOf(';') >= 0) {
        return ';';
      }
      return header.indexOf('\t') >= 0 ? '\t' : ',';
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
