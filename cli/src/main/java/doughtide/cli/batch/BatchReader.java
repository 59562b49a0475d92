package doughtide.cli.batch;

import doughtide.core.quantity.InputException;
import java.util.List;
import java.util.Map;

/**
 * Reads the rows of a batch, CSV with a header or JSON lines; which of them the first character of
 * the first line tells. Used by several threads at once.
 */
final class BatchReader {

  private final BatchFormat format;
  private final BatchLineReader reader;

  /**
   * For a batch.
   *
   * @param first its first line: the header of CSV, or a row of JSON
   * @throws InputException if a column of the header is not known or stands there twice
   */
  BatchReader(String first, BatchColumns columns) {
    format = first.strip().startsWith("{") ? BatchFormat.JSONL : BatchFormat.CSV;
    reader =
        format == BatchFormat.JSONL ? new BatchJsonLine(columns) : new BatchCsvLine(first, columns);
  }

  BatchFormat format() {
    return format;
  }

  /** The row on a line, which tells what is wrong with it if it cannot be read. */
  BatchRow row(BatchLine line) {
    if (!line.problem().isEmpty()) {
      return BatchRow.unreadable(line.number(), line.problem());
    }
    try {
      Map<String, List<String>> values = reader.values(line.text());
      List<String> id = values.getOrDefault(BatchColumns.ID, List.of(""));
      values.remove(BatchColumns.ID);
      return BatchRow.of(line.number(), id.get(0), values);
    } catch (InputException e) {
      return BatchRow.unreadable(line.number(), String.valueOf(e.getMessage()));
    }
  }
}
