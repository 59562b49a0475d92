package doughtide.report.chart;

/** Turns a chart into the bytes of one file format. Implementations hold no state. */
interface ChartWriter {

  /** Same chart, size and caption give the same bytes. */
  byte[] write(PrintedChart chart, ChartSize size, ChartCaption caption);
}
