package doughtide.cli.batch;

import doughtide.core.document.CsvCells;
import doughtide.core.quantity.InputException;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/** Reads lines of CSV (RFC 4180) with comma, semicolon or tab between cells. */
final class BatchCsvLine implements BatchLineReader {

  private static final String SEPARATORS = ",;\t";

  private final char separator;
  private final List<String> options;

  /**
   * For a header.
   *
   * @param header the first line; its first comma, semicolon or tab separates the cells
   * @throws InputException if a column is not known or stands there twice
   */
  public BatchCsvLine(String header, BatchColumns columns) {
    this.separator =
        (char) header.chars().filter(c -> SEPARATORS.indexOf(c) >= 0).findFirst().orElse(',');
    this.options = columns.options(cells(header));
  }

  @Override
  public Map<String, List<String>> values(String line) {
    List<String> cells = cells(line);
    if (cells.size() != options.size()) {
      throw new InputException(
          "the row has "
              + cells.size()
              + " cells and the header "
              + options.size()
              + ": put cells that hold a '"
              + separator
              + "' in quotes, and give every column a cell");
    }
    Map<String, List<String>> values = new LinkedHashMap<>();
    for (int i = 0; i < cells.size(); i++) {
      if (!cells.get(i).isBlank()) {
        values.put(options.get(i), List.of(cells.get(i)));
      }
    }
    return values;
  }

  private List<String> cells(String line) {
    return CsvCells.of(line, separator);
  }
}
