package doughtide.cli.batch;

import java.util.List;
import java.util.Map;

/**
 * One row of a batch, as read.
 *
 * @param line its line in the input, from 1
 * @param id what identifies it in the output; its line if it has none
 * @param values option values by option name
 * @param problem what is wrong with the line, empty if it could be read
 */
public record BatchRow(long line, String id, Map<String, List<String>> values, String problem) {

  public static BatchRow of(long line, String id, Map<String, List<String>> values) {
    return new BatchRow(line, id.isBlank() ? Long.toString(line) : id.strip(), values, "");
  }

  public static BatchRow unreadable(long line, String problem) {
    return new BatchRow(line, Long.toString(line), Map.of(), problem);
  }
}
