package doughtide.report;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.UncheckedIOException;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.knowm.xchart.internal.chartpart.Chart;

/** One page with the chart as a tagged figure. */
record PdfChartWriter() implements ChartWriter {

  @Override
  public byte[] write(Chart<?, ?> chart, ChartSize size, ChartCaption caption) {
    ByteArrayOutputStream bytes = new ByteArrayOutputStream();
    try (PDDocument document = new PDDocument()) {
      PdfSheet sheet =
          PdfSheet.in(
              document, size.widthPt(), size.heightPt(), caption.title(), caption.language());
      sheet.figure(chart, 0, 0, size.widthPt(), size.heightPt(), caption.description());
      sheet.close();
      document.save(bytes);
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
    return bytes.toByteArray();
  }
}
