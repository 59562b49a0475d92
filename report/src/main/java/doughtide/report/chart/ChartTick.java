package doughtide.report.chart;

import java.util.List;

/**
 * A mark on an axis.
 *
 * @param at position in the unit of the axis
 * @param rows its labels, one row under the other; an empty string leaves a row blank
 */
record ChartTick(double at, List<String> rows) {
  public ChartTick {
    rows = List.copyOf(rows);
  }

  ChartTick(double at, String label) {
    this(at, List.of(label));
  }
}
