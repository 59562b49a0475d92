package doughtide.report.chart;

import doughtide.core.Internal;
import java.io.IOException;
import java.io.OutputStream;

/**
 * A chart with its caption, ready to be written.
 *
 * @param chart what is drawn
 * @param caption its title and a description in a sentence
 */
public record DrawnChart(@Internal PrintedChart chart, @Internal ChartCaption caption) {

  /** In a line, for logs: its title and its description. */
  @Override
  public String toString() {
    return caption.title() + ": " + caption.description();
  }

  /**
   * {@return the bytes of a file, on a sheet of A5 across}
   *
   * @param format PDF, SVG or PNG
   */
  public byte[] bytes(ChartFormat format) {
    return bytes(format, ChartSize.A5_LANDSCAPE);
  }

  /**
   * {@return the bytes of a file}
   *
   * @param format PDF, SVG or PNG
   * @param size of the sheet
   */
  public byte[] bytes(ChartFormat format, ChartSize size) {
    return ChartOutput.bytes(chart, format, size, caption);
  }

  /**
   * Writes the file into a stream, which stays open.
   *
   * @param format PDF, SVG or PNG
   * @param size of the sheet
   * @param out where the bytes go
   * @throws IOException when the stream fails
   */
  public void write(ChartFormat format, ChartSize size, OutputStream out) throws IOException {
    out.write(bytes(format, size));
  }
}
