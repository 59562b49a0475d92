package doughtide.report.chart;

import doughtide.report.type.PdfFile;
import java.io.IOException;
import java.io.UncheckedIOException;

/** One page with the chart as a tagged figure. */
record PdfChartWriter() implements ChartWriter {

  @Override
  public byte[] write(PrintedChart chart, ChartSize size, ChartCaption caption) {
    try (PdfFile file = new PdfFile(caption.title(), caption.language())) {
      file.sheet(size.widthPt(), size.heightPt())
          .figure(chart, 0, 0, size.widthPt(), size.heightPt(), caption.description());
      return file.bytes();
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }
}
