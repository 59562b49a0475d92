package doughtide.cli.text;

import de.siegmar.fastcsv.reader.CsvParseException;
import de.siegmar.fastcsv.reader.CsvReader;
import de.siegmar.fastcsv.reader.CsvRecord;
import doughtide.core.quantity.InputException;
import java.io.IOException;
import java.util.ArrayList;
import java.util.List;

/** The cells of one line of CSV (RFC 4180), whatever separates them. */
public final class CsvCells {

  private CsvCells() {}

  /**
   * The cells of a line.
   *
   * @throws InputException if its quotation marks do not pair
   */
  public static List<String> of(String line, char separator) {
    if (line.indexOf('"') < 0) {
      return split(line, separator);
    }
    if (line.chars().filter(c -> c == '"').count() % 2 != 0) {
      throw new InputException(
          "a quotation mark is not closed: close it on the same line or leave it out");
    }
    try (CsvReader<CsvRecord> csv =
        CsvReader.builder().fieldSeparator(separator).skipEmptyLines(false).ofCsvRecord(line)) {
      return csv.stream().findFirst().map(CsvRecord::getFields).orElse(List.of(""));
    } catch (CsvParseException | IOException e) {
      throw new InputException(
          "text stands after a closing quotation mark: put the whole cell into marks, and write each mark inside it twice");
    }
  }

  private static List<String> split(String line, char separator) {
    List<String> cells = new ArrayList<>();
    int from = 0;
    for (int to = line.indexOf(separator); to >= 0; to = line.indexOf(separator, from)) {
      cells.add(line.substring(from, to));
      from = to + 1;
    }
    cells.add(line.substring(from));
    return cells;
  }
}
