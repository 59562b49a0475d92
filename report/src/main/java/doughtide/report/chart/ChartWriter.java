package doughtide.report.chart;

import org.knowm.xchart.internal.chartpart.Chart;

/** Turns a chart into the bytes of one file format. Implementations hold no state. */
public interface ChartWriter {

  /** Same chart, size and caption give the same bytes. */
  byte[] write(Chart<?, ?> chart, ChartSize size, ChartCaption caption);
}
