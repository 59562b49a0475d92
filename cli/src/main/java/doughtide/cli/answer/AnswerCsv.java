package doughtide.cli.answer;

import java.io.OutputStreamWriter;
import java.io.PrintStream;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.OptionalDouble;
import java.util.Set;

/**
 * The rows of a list as CSV. The columns are the fields that JSON has, {@code hoursEarly} as {@code
 * hours_early}; a field that a row lacks is an empty cell.
 */
final class AnswerCsv implements Fields {

  /** A cell; text could be a formula, a number is none. */
  private record Cell(String text, boolean isNumber) {
    static final Cell EMPTY = new Cell("", false);
  }

  private final Map<String, Cell> cells = new LinkedHashMap<>();

  private AnswerCsv() {}

  static void write(Listing listing, PrintStream out) {
    CsvOutput csv = new CsvOutput(new OutputStreamWriter(out, StandardCharsets.UTF_8));
    List<Map<String, Cell>> rows = new ArrayList<>();
    Set<String> columns = new LinkedHashSet<>();
    for (Section row : listing.rows()) {
      Map<String, Cell> cells = cells(row);
      rows.add(cells);
      columns.addAll(cells.keySet());
    }
    listing.like().ifPresent(row -> columns.addAll(cells(row).keySet()));
    csv.header(columns.toArray(String[]::new));
    for (Map<String, Cell> row : rows) {
      columns.forEach(column -> write(row.getOrDefault(column, Cell.EMPTY), csv));
      csv.endRow();
    }
    csv.flush();
  }

  private static void write(Cell cell, CsvOutput csv) {
    if (cell.isNumber()) {
      csv.number(cell.text());
    } else {
      csv.text(cell.text());
    }
  }

  private static Map<String, Cell> cells(Section row) {
    AnswerCsv fields = new AnswerCsv();
    fields.add(row);
    return fields.cells;
  }

  private void add(Section row) {
    for (Item item : row.items()) {
      if (item instanceof Item.Quantity quantity && !quantity.key().isEmpty()) {
        quantity.value().fields(quantity.key(), this);
      } else if (item instanceof Section inner && inner.key().isEmpty()) {
        add(inner);
      } else if (item instanceof Item.Texts texts && !texts.key().isEmpty()) {
        text(texts.key(), String.join("; ", texts.texts()));
      }
    }
  }

  /** {@code risePercent} as {@code rise_percent}, {@code pH} as {@code ph}. */
  static String column(String name) {
    StringBuilder column = new StringBuilder();
    for (int i = 0; i < name.length(); i++) {
      char c = name.charAt(i);
      boolean word = i > 0 && i + 1 < name.length() && Character.isUpperCase(c);
      column.append(word ? "_" : "").append(Character.toLowerCase(c));
    }
    return column.toString();
  }

  @Override
  public void text(String name, String text) {
    cells.put(column(name), new Cell(text, false));
  }

  @Override
  public void number(String name, OptionalDouble number, int decimals) {
    boolean finite = number.isPresent() && Double.isFinite(number.getAsDouble());
    String text = finite ? JsonWriter.number(number.getAsDouble(), decimals) : "";
    cells.put(column(name), new Cell(text, true));
  }

  @Override
  public void flag(String name, boolean truth) {
    text(name, truth ? "yes" : "no");
  }

  @Override
  public void nothing(String name) {
    text(name, "");
  }
}
