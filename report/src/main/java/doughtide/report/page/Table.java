package doughtide.report.page;

import doughtide.core.Internal;
import java.util.List;

/**
 * A table of words; cells wrap, text never shrinks.
 *
 * @param columns at least one
 * @param rows each with one text per column; the text of columns to tick in is ignored
 */
@Internal
public record Table(List<Column> columns, List<List<String>> rows) {

  /** Checks that every row has a text for every column. */
  public Table {
    columns = List.copyOf(columns);
    rows = rows.stream().map(List::copyOf).toList();
    if (columns.isEmpty()) {
      throw new IllegalArgumentException("a table needs a column");
    }
    for (List<String> row : rows) {
      if (row.size() != columns.size()) {
        throw new IllegalArgumentException(
            "a row has " + row.size() + " cells instead of " + columns.size());
      }
    }
  }

  /** Some of its rows under the same heads. */
  Table part(int from, int to) {
    return new Table(columns, rows.subList(from, to));
  }

  /** What a column is for. */
  @Internal
  public enum Kind {
    /** Printed text. */
    TEXT,
    /** Printed text that stands out. */
    STRONG,
    /** To write in: tall enough for handwriting where nothing is filled in already. */
    WRITE,
    /** A box to tick. */
    TICK
  }

  /**
   * A column.
   *
   * @param weight share of the width, above 0
   */
  @Internal
  public record Column(String head, double weight, Kind kind) {
    /** Checks the weight. */
    public Column {
      if (!(weight > 0) || Double.isInfinite(weight)) {
        throw new IllegalArgumentException("weight must be above 0, was " + weight);
      }
    }
  }
}
