package doughtide.report.chart;

import doughtide.core.Internal;

/**
 * A named line over time.
 *
 * @param name written beside the line
 * @param hours ascending
 * @param values in the unit of the chart
 */
@Internal
@SuppressWarnings("ArrayRecordComponent") // copied on the way in
public record LineSeries(String name, double[] hours, double[] values) {
  /** Checks lengths and that every number is finite. */
  public LineSeries {
    hours = Series.ascending("hours", hours);
    values = Series.finite("values", values, hours.length);
  }
}
