package doughtide.core.document;

import doughtide.core.learning.Reading;
import doughtide.core.quantity.Checks;
import doughtide.core.quantity.InputException;
import doughtide.core.quantity.Measure;
import doughtide.core.quantity.Quantities;
import doughtide.core.quantity.Rise;
import doughtide.core.quantity.Shorten;
import doughtide.core.quantity.Temperature;
import java.util.ArrayList;
import java.util.EnumSet;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;

/** The columns of a table of readings, and what their cells mean. */
final class ReadingsColumns {

  static final String LAYOUT =
      "the table begins with a line such as 'time;rise %;dough temp C;pH;note'";

  /** The heading of a column for a probe in the middle of the loaf. */
  static final String CORE = "core temp C";

  /** What a column holds. */
  enum Kind {
    TIME,
    RISE,
    HEIGHT,
    TEMPERATURE,
    CORE,
    PH,
    NOTE
  }

  /**
   * One column.
   *
   * @param kind what it holds
   * @param unit the unit in its heading, empty if none
   */
  record Column(Kind kind, String unit) {}

  private final char separator;
  private final List<Column> columns;

  private ReadingsColumns(char separator, List<Column> columns) {
    this.separator = separator;
    this.columns = columns;
  }

  /** Whether a line is the heading of the table: its first cell says time. */
  static boolean isHeading(String line, Vocabulary vocabulary) {
    String cell = line.split("[;,\t]", 2)[0].replace("\"", "");
    return cell.indexOf(':') < 0
        && vocabulary.meant(Vocabulary.Kind.COLUMN, cell, List.of("time")).isPresent();
  }

  /** Whether a heading is that of a logger's table: times and temperatures, and nothing risen. */
  static boolean isOfLogger(String heading, Vocabulary vocabulary) {
    Set<Kind> kinds = EnumSet.noneOf(Kind.class);
    for (String cell : CsvCells.of(heading, CsvCells.separator(heading))) {
      Optional<Column> column = known(cell, vocabulary);
      if (column.isEmpty()) {
        return false;
      }
      kinds.add(column.get().kind());
    }
    kinds.remove(Kind.NOTE);
    return kinds.equals(EnumSet.of(Kind.TIME, Kind.TEMPERATURE));
  }

  /**
   * Reads the heading.
   *
   * @throws InputException if a column is not known or given twice, or there is nothing to learn
   *     from
   */
  static ReadingsColumns of(String heading, Vocabulary vocabulary) {
    char separator = CsvCells.separator(heading);
    List<Column> columns = new ArrayList<>();
    for (String cell : CsvCells.of(heading, separator)) {
      columns.add(column(cell, vocabulary));
    }
    for (Kind kind : EnumSet.complementOf(EnumSet.of(Kind.NOTE))) {
      if (columns.stream().filter(each -> each.kind() == kind).count() > 1) {
        throw new InputException(
            "readings.columns-twice", "the table has two columns for one thing: leave one out");
      }
    }
    boolean rise = columns.stream().anyMatch(each -> each.kind() == Kind.RISE);
    boolean height = columns.stream().anyMatch(each -> each.kind() == Kind.HEIGHT);
    boolean core = columns.stream().anyMatch(each -> each.kind() == Kind.CORE);
    if (rise == height && (rise || !core)) {
      throw new InputException(
          "readings.rise-or-height",
          rise
              ? "the table has both rise and height: leave one out"
              : "the table has no column 'rise' or 'height': " + LAYOUT);
    }
    return new ReadingsColumns(separator, List.copyOf(columns));
  }

  private static Column column(String cell, Vocabulary vocabulary) {
    return known(cell, vocabulary)
        .orElseThrow(
            () ->
                new InputException(
                    "readings.column-unknown",
                    "the column '" + Shorten.to(cell, 40) + "' is not known: " + LAYOUT));
  }

  private static Optional<Column> known(String cell, Vocabulary vocabulary) {
    String words = Quantities.clean(cell).toLowerCase(Locale.ROOT).replaceAll("[()\\[\\]_]", " ");
    String name = words.replaceAll(" in ", " ").replaceAll("\\s+", " ").strip();
    String unit = "";
    int space = name.lastIndexOf(' ');
    if (space > 0 && name.substring(space + 1).matches("%|mm|cm|°?c|°?f")) {
      unit = name.substring(space + 1).replace("°", "");
      name = name.substring(0, space).strip();
    }
    String bare = name;
    String with = unit;
    return kind(bare)
        .or(
            () ->
                vocabulary
                    .key(Vocabulary.Kind.COLUMN, Vocabulary.plain(bare))
                    .flatMap(ReadingsColumns::kind))
        .map(kind -> new Column(kind, with));
  }

  private static Optional<Kind> kind(String key) {
    return switch (key) {
      case "time" -> Optional.of(Kind.TIME);
      case "rise" -> Optional.of(Kind.RISE);
      case "height" -> Optional.of(Kind.HEIGHT);
      case "dough temp", "dough temperature", "temp", "temperature" ->
          Optional.of(Kind.TEMPERATURE);
      case "core temp", "core temperature", "core" -> Optional.of(Kind.CORE);
      case "ph" -> Optional.of(Kind.PH);
      case "note", "notes", "" -> Optional.of(Kind.NOTE);
      default -> Optional.empty();
    };
  }

  /**
   * What a line of the table tells.
   *
   * @param dough of the dough and its sample, if it tells something of them
   * @param core of a probe in the middle of the loaf, if it tells that
   */
  record Told(Optional<Reading> dough, Optional<Reading> core) {}

  /**
   * What a line of the table tells; nothing if it holds a note alone.
   *
   * @param clock reads its time, line after line
   * @param startMm height at the start, if it is known
   * @throws InputException if it cannot be used
   */
  Told reading(String line, ReadingsClock clock, OptionalDouble startMm) {
    List<String> cells = CsvCells.of(line, separator);
    for (int i = columns.size(); i < cells.size(); i++) {
      if (!cells.get(i).isBlank()) {
        throw new InputException(
            "readings.cells",
            "the line has more cells than the heading: with commas between the cells, write"
                + " decimals with a point");
      }
    }
    Optional<Rise> rise = rise(cells, startMm);
    OptionalDouble celsius = celsius(cells, Kind.TEMPERATURE, "dough temp");
    OptionalDouble core = celsius(cells, Kind.CORE, "core temp");
    OptionalDouble ph = ph(cells);
    boolean tellsNothing = rise.isEmpty() && celsius.isEmpty() && ph.isEmpty();
    if (tellsNothing && core.isEmpty() && cell(cells, Kind.NOTE).isEmpty()) {
      throw new InputException(
          "readings.nothing-told", "the line tells neither rise nor temperature nor pH");
    }
    Reading dough = new Reading(0, rise, celsius, ph);
    Reading middle = new Reading(0, Optional.empty(), core, OptionalDouble.empty());
    double hours = clock.hours(cell(cells, Kind.TIME));
    return new Told(
        Optional.of(dough.at(hours)).filter(told -> !tellsNothing),
        Optional.of(middle.at(hours)).filter(told -> told.celsius().isPresent()));
  }

  /** The heading with a column for a probe, if it has none. */
  String withCore(String heading) {
    boolean has = columns.stream().anyMatch(each -> each.kind() == Kind.CORE);
    return has ? heading : heading + separator + CORE;
  }

  /**
   * A line of the table that {@link #reading} reads back.
   *
   * @param line what it is to tell
   * @param startMm height at the start, if it is known
   * @throws InputException if the table has no column for something
   */
  String line(DoughNotes.Line line, OptionalDouble startMm) {
    boolean rises = columns.stream().anyMatch(each -> each.kind() == Kind.RISE);
    needs(line.ph().isPresent(), Kind.PH, "pH");
    needs(line.celsius().isPresent(), Kind.TEMPERATURE, "dough temp C");
    needs(line.core().isPresent(), Kind.CORE, CORE);
    needs(!line.remark().isEmpty(), Kind.NOTE, "note");
    if (line.rise().isPresent() && !rises) {
      start(startMm);
    }
    Set<Kind> told = EnumSet.noneOf(Kind.class);
    List<String> cells = new ArrayList<>();
    for (Column column : columns) {
      cells.add(told.add(column.kind()) ? quoted(cell(column, line, startMm)) : "");
    }
    return String.join(String.valueOf(separator), cells);
  }

  private void needs(boolean told, Kind kind, String example) {
    if (told && columns.stream().noneMatch(each -> each.kind() == kind)) {
      throw new InputException(
          "readings.no-column",
          "the table has no column for this: add '" + example + "' at the end of its heading");
    }
  }

  private static String cell(Column column, DoughNotes.Line line, OptionalDouble startMm) {
    return switch (column.kind()) {
      case TIME -> line.time();
      case RISE -> line.rise().map(rise -> rise(rise, column.unit(), startMm)).orElse("");
      case HEIGHT ->
          line.rise().map(rise -> height(start(startMm) * rise.heightTimes(), column)).orElse("");
      case TEMPERATURE -> temperature(line.celsius(), column.unit());
      case CORE -> temperature(line.core(), column.unit());
      case PH -> line.ph().isPresent() ? Checks.plain(line.ph().getAsDouble()) : "";
      case NOTE -> line.remark();
    };
  }

  private static String rise(Rise rise, String unit, OptionalDouble startMm) {
    boolean length = unit.equals("mm") || unit.equals("cm");
    return length
        ? height(start(startMm) * rise.fraction(), new Column(Kind.RISE, unit))
        : tenths(rise.percent()) + (unit.isEmpty() ? "%" : "");
  }

  private static String height(double mm, Column column) {
    return column.unit().equals("cm")
        ? Checks.plain(Math.round(mm * 10) / 100.0)
        : tenths(mm) + (column.unit().isEmpty() ? " mm" : "");
  }

  private static String temperature(OptionalDouble celsius, String unit) {
    if (celsius.isEmpty()) {
      return "";
    }
    double degrees = celsius.getAsDouble();
    return unit.equals("f")
        ? tenths(Temperature.ofCelsius(degrees).fahrenheit())
        : tenths(degrees) + (unit.isEmpty() ? "C" : "");
  }

  private static String tenths(double value) {
    return Checks.plain(Math.round(value * 10) / 10.0);
  }

  private String quoted(String cell) {
    boolean plain = cell.indexOf(separator) < 0 && cell.indexOf('"') < 0;
    return plain ? cell : '"' + cell.replace("\"", "\"\"") + '"';
  }

  /** The cell of a kind, empty if there is no such column or nothing in it. */
  private String cell(List<String> cells, Kind kind) {
    for (int i = 0; i < columns.size() && i < cells.size(); i++) {
      if (columns.get(i).kind() == kind) {
        return cells.get(i).strip();
      }
    }
    return "";
  }

  private String unit(Kind kind) {
    return columns.stream()
        .filter(each -> each.kind() == kind)
        .map(Column::unit)
        .findFirst()
        .orElse("");
  }

  /**
   * The rise a line tells.
   *
   * @param startMm height at the start, if it is known
   */
  private Optional<Rise> rise(List<String> cells, OptionalDouble startMm) {
    String rise = cell(cells, Kind.RISE);
    String height = cell(cells, Kind.HEIGHT);
    if (!height.isEmpty()) {
      double times = millimetres("height", height, unit(Kind.HEIGHT)) / start(startMm);
      return Optional.of(new Rise(times - 1));
    }
    if (rise.isEmpty()) {
      return Optional.empty();
    }
    return Optional.of(risen(rise, unit(Kind.RISE), startMm));
  }

  private static Rise risen(String cell, String unit, OptionalDouble startMm) {
    OptionalDouble plain = plainNumber(cell);
    boolean length = unit.equals("mm") || unit.equals("cm") || cell.endsWith("m");
    if (length) {
      return new Rise(millimetres("rise", cell, unit) / start(startMm));
    }
    if (plain.isPresent() && unit.equals("%")) {
      return Rise.ofPercent(plain.getAsDouble());
    }
    return Quantities.rise("rise", withUnit("rise", cell, unit));
  }

  private static double start(OptionalDouble startMm) {
    return startMm.orElseThrow(
        () ->
            new InputException(
                "readings.no-start-height",
                "heights need the starting height: add a line such as 'start height: 52 mm' at the"
                    + " top"));
  }

  private static double millimetres(String name, String cell, String unit) {
    OptionalDouble plain = plainNumber(cell);
    if (plain.isPresent() && unit.equals("mm")) {
      return plain.getAsDouble();
    }
    Measure given = Quantities.measure(name, withUnit(name, cell, unit), "a height", "78 mm");
    return switch (given.unit().toLowerCase(Locale.ROOT)) {
      case "mm" -> given.value();
      case "cm" -> given.value() * 10;
      default ->
          throw new InputException(
              "readings.height-unit",
              name + " " + cell + " needs a unit: write " + given.number() + " mm");
    };
  }

  /** A temperature a line tells, °C. */
  private OptionalDouble celsius(List<String> cells, Kind kind, String name) {
    String cell = cell(cells, kind);
    String unit = unit(kind);
    if (cell.isEmpty()) {
      return OptionalDouble.empty();
    }
    OptionalDouble plain = plainNumber(cell);
    if (plain.isPresent() && unit.equals("c")) {
      return plain;
    }
    Temperature given = Quantities.temperature(name, withUnit(name, cell, unit));
    return OptionalDouble.of(given.celsius());
  }

  /** The pH a line tells. */
  private OptionalDouble ph(List<String> cells) {
    String cell = cell(cells, Kind.PH);
    return cell.isEmpty()
        ? OptionalDouble.empty()
        : OptionalDouble.of(Quantities.number("pH", cell, 3, 7.5));
  }

  private static String withUnit(String name, String cell, String unit) {
    Measure given = Quantities.measure(name, cell, "a number", "45%");
    return given.unit().isEmpty() ? cell + unit : cell;
  }

  /** A number of plain digits with at most one point, read without the cost of the general way. */
  private static OptionalDouble plainNumber(String cell) {
    int points = 0;
    for (int i = 0; i < cell.length(); i++) {
      char c = cell.charAt(i);
      if (c == '.') {
        points++;
      } else if (c < '0' || c > '9') {
        return OptionalDouble.empty();
      }
    }
    boolean number = !cell.isEmpty() && cell.length() < 16 && points < 2 && cell.length() > points;
    return number ? OptionalDouble.of(Double.parseDouble(cell)) : OptionalDouble.empty();
  }
}
