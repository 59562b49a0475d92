package doughtide.report.chart;

import doughtide.core.quantity.InputException;
import java.util.Locale;

/** File formats of a chart. */
@SuppressWarnings("ImmutableEnumChecker") // the writers hold no state
public enum ChartFormat {
  /** Vector page with text as text and embedded fonts (ISO 32000). */
  PDF(new PdfChartWriter()),
  /** Vector picture with text as text (W3C SVG 1.1). */
  SVG(new SvgChartWriter()),
  /** Pixel picture (ISO 15948). */
  PNG(new PngChartWriter(300));

  private final ChartWriter writer;

  ChartFormat(ChartWriter writer) {
    this.writer = writer;
  }

  ChartWriter writer() {
    return writer;
  }

  /**
   * The format that the ending of a file name asks for.
   *
   * @param fileName with its ending, upper or lower case
   * @return the format of the ending
   * @throws InputException for any other ending
   */
  public static ChartFormat ofFileName(String fileName) {
    String name = fileName.toLowerCase(Locale.ROOT);
    for (ChartFormat format : values()) {
      if (name.endsWith("." + format.name().toLowerCase(Locale.ROOT))) {
        return format;
      }
    }
    throw new InputException(
        "chart file \"" + fileName + "\" has no known ending: use .pdf, .svg or .png");
  }
}
