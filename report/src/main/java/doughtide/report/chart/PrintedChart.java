package doughtide.report.chart;

import doughtide.core.Internal;
import doughtide.report.type.Drawn;
import doughtide.report.type.Fonts;
import doughtide.report.type.TextWrap;
import java.awt.Font;
import java.awt.Graphics2D;
import java.awt.image.BufferedImage;
import java.util.List;
import java.util.Map;
import java.util.OptionalDouble;
import java.util.concurrent.ConcurrentHashMap;

/**
 * A chart in the print style of this program: black on white, direct labels instead of a legend,
 * words beside the axes as real text. Immutable.
 */
@Internal
public final class PrintedChart implements Drawn {

  /** Height of a line of the title in parts of the size of the text. */
  public static final double TITLE_LINE = 1.55;

  private static final double SHEET_PT = 420;
  private static final double SHEET_FONT_PT = 12;
  private static final double SMALLEST_FONT_PT = 9;
  private static final double TALL_PT = 2000; // leaves room for everything

  private final ChartPicture picture;
  private final OptionalDouble fontPt;
  private final int titleLines;
  private final Map<List<Double>, Double> aroundPts; // a page asks for the same height many times

  PrintedChart(ChartPicture picture) {
    this(picture, OptionalDouble.empty(), 0, new ConcurrentHashMap<>());
  }

  private PrintedChart(
      ChartPicture picture,
      OptionalDouble fontPt,
      int titleLines,
      Map<List<Double>, Double> aroundPts) {
    this.picture = picture;
    this.fontPt = fontPt;
    this.titleLines = titleLines;
    this.aroundPts = aroundPts;
  }

  /** The same chart with text of a fixed size instead of one that follows the sheet. */
  public PrintedChart withFontPt(double sizePt) {
    return new PrintedChart(picture, OptionalDouble.of(sizePt), titleLines, aroundPts);
  }

  /** The same chart with room for so many lines of title, as many as its neighbour has. */
  public PrintedChart withTitleLines(int lines) {
    return new PrintedChart(picture, fontPt, lines, aroundPts);
  }

  /** How many lines the title takes in this width. */
  public int titleLines(double width, double sizePt) {
    return picture.title().isEmpty()
        ? 0
        : TextWrap.lines(picture.title(), width - 2 * ChartDrawing.PAGE_EDGE_PT, titleFont(sizePt))
            .size();
  }

  ChartPicture picture() {
    return picture;
  }

  static Font titleFont(double sizePt) {
    return Fonts.bold(sizePt * 1.25);
  }

  @Override
  public void paint(Graphics2D graphics, int widthPt, int tallPt) {
    drawing(graphics, widthPt, tallPt).draw();
  }

  /**
   * The least height at which its curves can be read, in points.
   *
   * @param widthPt its width
   */
  public double leastTallPt(double widthPt) {
    double sizePt = fontPt.orElse(SHEET_FONT_PT);
    double aroundPt =
        aroundPts.computeIfAbsent(
            List.of(widthPt, sizePt, (double) titleLines),
            key -> drawing(nowhere(), widthPt, TALL_PT, sizePt).aroundPlotPt());
    return aroundPt + ChartDrawing.LEAST_PLOT_LINES * sizePt;
  }

  private static Graphics2D nowhere() {
    return new BufferedImage(1, 1, BufferedImage.TYPE_BYTE_GRAY).createGraphics();
  }

  /**
   * Where the plot lies when the chart is painted in a size, for what is drawn over it later.
   *
   * @param widthPt of the painting, points
   * @param tallPt of the painting, points
   */
  public ChartFrame frame(int widthPt, int tallPt) {
    ChartDrawing drawing = drawing(nowhere(), widthPt, tallPt);
    drawing.draw();
    return drawing.frameOfPlot();
  }

  /** One painting of it, with text so small, if it must be, that the plot can be read. */
  ChartDrawing drawing(Graphics2D graphics, int widthPt, int tallPt) {
    double wantedPt = SHEET_FONT_PT * Math.min(1.35, Math.min(widthPt, tallPt) / SHEET_PT);
    double sizePt = fontPt.orElse(Math.max(SMALLEST_FONT_PT, wantedPt));
    while (fontPt.isEmpty() && sizePt > SMALLEST_FONT_PT) {
      double aroundPt = drawing(nowhere(), widthPt, tallPt, sizePt).aroundPlotPt();
      if (tallPt - aroundPt >= ChartDrawing.LEAST_PLOT_LINES * sizePt) {
        break;
      }
      sizePt = Math.max(SMALLEST_FONT_PT, sizePt - 0.5);
    }
    return drawing(graphics, widthPt, tallPt, sizePt);
  }

  private ChartDrawing drawing(Graphics2D graphics, double widthPt, double tallPt, double sizePt) {
    return new ChartDrawing(
        picture, graphics, widthPt, tallPt, sizePt, fontPt.isPresent(), titleLines);
  }
}
