package doughtide.report.chart;

import doughtide.core.Internal;
import java.awt.image.BufferedImage;

/**
 * Writes a chart as a PDF, SVG or PNG. Same input gives the same bytes; in PDF and SVG text stays
 * text.
 */
@Internal
public final class ChartOutput {

  private ChartOutput() {}

  /** The bytes of the file. */
  public static byte[] bytes(
      PrintedChart chart, ChartFormat format, ChartSize size, ChartCaption caption) {
    return format.writer().write(chart, size, caption);
  }

  /**
   * The chart as a grey image.
   *
   * @param dotsPerInch 36 to 1200
   */
  public static BufferedImage image(PrintedChart chart, ChartSize size, int dotsPerInch) {
    return new PngChartWriter(checked(dotsPerInch)).image(chart, size);
  }

  private static int checked(int dotsPerInch) {
    if (dotsPerInch < 36 || dotsPerInch > 1200) {
      throw new doughtide.core.quantity.InputException(
          "resolution " + dotsPerInch + " dots per inch is outside 36…1200");
    }
    return dotsPerInch;
  }
}
