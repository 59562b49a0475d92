package doughtide.report.page;

import doughtide.core.Internal;
import doughtide.report.type.PdfSheet;
import java.io.IOException;
import java.util.List;
import org.apache.pdfbox.pdmodel.font.PDFont;

/**
 * Squared paper to plot on by hand, with lines printed on it; it fills the room that is left.
 *
 * @param across from left to right
 * @param up from bottom to top
 * @param lines printed on the squares; what lies outside is left out
 * @param leastPt least height in points
 * @param description what the sheet answers, for those who do not see it
 */
@Internal
public record PlotBlock(Axis across, Axis up, List<Line> lines, double leastPt, String description)
    implements PageBlock {

  /** Copies the lines. */
  public PlotBlock {
    lines = List.copyOf(lines);
  }

  /**
   * One axis from 0 on.
   *
   * @param title what it shows
   * @param end its last value
   * @param step between fine lines
   * @param labels of the values 0, {@code every}, twice {@code every} and so on
   * @param every distance of the labels
   */
  @Internal
  public record Axis(String title, double end, double step, List<String> labels, double every) {
    /** Copies the labels. */
    public Axis {
      labels = List.copyOf(labels);
    }
  }

  /**
   * A line.
   *
   * @param x its values across
   * @param y its values up
   * @param thicknessPt in points
   * @param grey 0 for black to 1 for white
   */
  @Internal
  @SuppressWarnings("ArrayRecordComponent") // only read
  public record Line(double[] x, double[] y, double thicknessPt, double grey) {}

  @Override
  public String name() {
    return "squared paper";
  }

  @Override
  public boolean grows() {
    return true;
  }

  @Override
  public double heightPt(PageType type, double widthPt) {
    return leastPt;
  }

  @Override
  public void draw(PdfSheet sheet, PageType type, double x, double top, double width, double tall)
      throws IOException {
    PDFont font = type.fonts().plain();
    double left = x + widest(type) + type.sizePt() * 0.6;
    double right = x + width - type.sizePt();
    double upper = top + type.lineHeightPt() * 1.3;
    double lower = top + tall - type.lineHeightPt() * 2.6;
    sheet.beginFigure(description);
    text(sheet, type, up.title(), x, top);
    for (double value = 0; value <= up.end() + 1e-9; value += up.step()) {
      double y = lower - (lower - upper) * value / up.end();
      boolean isLabelled = isLabelled(value, up);
      sheet.line(left, y, right, y, isLabelled ? 0.6 : 0.3, isLabelled ? 0.3 : 0.6);
    }
    for (double value = 0; value <= across.end() + 1e-9; value += across.step()) {
      double at = left + (right - left) * value / across.end();
      boolean isLabelled = isLabelled(value, across);
      sheet.line(at, upper, at, lower, isLabelled ? 0.6 : 0.3, isLabelled ? 0.3 : 0.6);
    }
    for (int i = 0; i < up.labels().size(); i++) {
      double y = lower - (lower - upper) * i * up.every() / up.end();
      double w = type.width(up.labels().get(i), font);
      text(
          sheet,
          type,
          up.labels().get(i),
          left - w - type.sizePt() * 0.4,
          y - type.lineHeightPt() / 2);
    }
    for (int i = 0; i < across.labels().size(); i++) {
      double at = left + (right - left) * i * across.every() / across.end();
      double w = type.width(across.labels().get(i), font);
      text(
          sheet,
          type,
          across.labels().get(i),
          Math.min(at - w / 2, x + width - w),
          lower + type.sizePt() * 0.1);
    }
    text(
        sheet,
        type,
        across.title(),
        right - type.width(across.title(), font),
        lower + type.lineHeightPt());
    for (Line line : lines) {
      draw(sheet, line, left, right, upper, lower);
    }
    sheet.end();
  }

  private double widest(PageType type) {
    return up.labels().stream()
        .mapToDouble(label -> type.width(label, type.fonts().plain()))
        .max()
        .orElse(0);
  }

  private static boolean isLabelled(double value, Axis axis) {
    double part = value / axis.every();
    return Math.abs(part - Math.rint(part)) < 1e-6;
  }

  private static void text(PdfSheet sheet, PageType type, String text, double x, double top)
      throws IOException {
    sheet.begin("P");
    PageBlocks.drawLines(sheet, type, List.of(text), x, top, type.fonts().plain());
    sheet.end();
  }

  private void draw(
      PdfSheet sheet, Line line, double left, double right, double upper, double lower)
      throws IOException {
    for (int i = 1; i < line.x().length; i++) {
      if (isInside(line, i - 1) && isInside(line, i)) {
        sheet.line(
            left + (right - left) * line.x()[i - 1] / across.end(),
            lower - (lower - upper) * line.y()[i - 1] / up.end(),
            left + (right - left) * line.x()[i] / across.end(),
            lower - (lower - upper) * line.y()[i] / up.end(),
            line.thicknessPt(),
            line.grey());
      }
    }
  }

  private boolean isInside(Line line, int i) {
    return line.x()[i] >= 0
        && line.x()[i] <= across.end()
        && line.y()[i] >= 0
        && line.y()[i] <= up.end();
  }
}
