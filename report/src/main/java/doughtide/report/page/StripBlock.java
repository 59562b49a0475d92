package doughtide.report.page;

import doughtide.core.Internal;
import doughtide.report.type.PdfSheet;
import java.io.IOException;
import java.util.ArrayList;
import java.util.List;
import org.apache.pdfbox.pdmodel.font.PDFont;

/**
 * A strip to cut out and tape to a jar, with marks in true millimetres above its lower edge, and a
 * ruler beside it that shows whether the paper was printed to scale.
 *
 * @param marks from the lowest up; the first at 0 mm
 * @param rulerMm length of the ruler
 * @param rulerText what the ruler is for
 * @param description what the strip answers, for those who do not see it
 */
@Internal
public record StripBlock(List<Mark> marks, double rulerMm, String rulerText, String description)
    implements PageBlock {

  private static final double PT_PER_MM = 72 / 25.4;
  private static final double ABOVE_MM = 8;
  private static final double TICK_PT = 30;
  private static final double LEADER_PT = 16;

  /** Copies the marks. */
  public StripBlock {
    marks = List.copyOf(marks);
  }

  /**
   * A height of the dough.
   *
   * @param mm above the lower edge of the strip
   * @param text what to do there
   * @param isStrong whether it is the mark that matters most
   */
  @Internal
  public record Mark(double mm, String text, boolean isStrong) {}

  @Override
  public String name() {
    return "strip";
  }

  @Override
  public double heightPt(PageType type, double widthPt) {
    return Math.max(tallPt(), labelsPt(type, widthPt)) + 4.5 * type.lineHeightPt();
  }

  private double tallPt() {
    double top = marks.stream().mapToDouble(Mark::mm).max().orElse(0);
    return (top + ABOVE_MM) * PT_PER_MM;
  }

  private double labelsPt(PageType type, double widthPt) {
    return marks.stream().mapToDouble(mark -> labelPt(mark, type, widthPt)).sum();
  }

  private double labelPt(Mark mark, PageType type, double widthPt) {
    return lines(mark, type, widthPt).size() * type.lineHeightPt() + 2;
  }

  private List<String> lines(Mark mark, PageType type, double widthPt) {
    return type.lines(mark.text(), stripPt(widthPt) - TICK_PT - LEADER_PT - 6, font(mark, type));
  }

  private static double stripPt(double widthPt) {
    return widthPt * 0.62;
  }

  private static PDFont font(Mark mark, PageType type) {
    return mark.isStrong() ? type.fonts().bold() : type.fonts().plain();
  }

  @Override
  public void draw(PdfSheet sheet, PageType type, double x, double top, double width, double tall)
      throws IOException {
    double height = Math.max(tallPt(), labelsPt(type, width));
    double bottom = top + height;
    sheet.beginFigure(description);
    sheet.box(x, top, stripPt(width), height, 0.8);
    double[] tops = labelTops(type, width, top, bottom);
    for (int i = 0; i < marks.size(); i++) {
      Mark mark = marks.get(i);
      double y = bottom - mark.mm() * PT_PER_MM;
      double middle = tops[i] + labelPt(mark, type, width) / 2;
      double thickness = mark.isStrong() ? 2.2 : 1;
      sheet.line(x, y, x + TICK_PT, y, thickness);
      sheet.line(x + TICK_PT, y, x + TICK_PT + LEADER_PT, middle, 0.5);
      sheet.begin("P");
      PageBlocks.drawLines(
          sheet,
          type,
          lines(mark, type, width),
          x + TICK_PT + LEADER_PT + 3,
          tops[i],
          font(mark, type));
      sheet.end();
    }
    sheet.end();
    ruler(sheet, type, x, bottom + 1.2 * type.lineHeightPt(), width);
  }

  /** Each label beside its mark, pushed apart where two would meet, and kept on the strip. */
  private double[] labelTops(PageType type, double width, double top, double bottom) {
    List<double[]> groups = new ArrayList<>(); // from the lowest: wanted bottom, tall, count
    for (Mark mark : marks) {
      double tall = labelPt(mark, type, width);
      double wanted = bottom - mark.mm() * PT_PER_MM + tall / 2;
      groups.add(new double[] {Math.min(bottom, wanted), tall, 1});
      merge(groups, bottom);
    }
    double[] tops = new double[marks.size()];
    int i = 0;
    for (double[] group : groups) {
      double y = Math.max(group[0], top + group[1]);
      for (int k = 0; k < group[2]; k++, i++) {
        y -= labelPt(marks.get(i), type, width);
        tops[i] = y;
      }
    }
    return tops;
  }

  private static void merge(List<double[]> groups, double bottom) {
    while (groups.size() > 1) {
      double[] upper = groups.get(groups.size() - 1);
      double[] lower = groups.get(groups.size() - 2);
      if (upper[0] <= lower[0] - lower[1]) {
        return;
      }
      double upperMiddle = upper[0] - upper[1] / 2;
      double lowerMiddle = lower[0] - lower[1] / 2;
      double middle = (upperMiddle * upper[2] + lowerMiddle * lower[2]) / (upper[2] + lower[2]);
      double tall = upper[1] + lower[1];
      groups.remove(groups.size() - 1);
      groups.set(
          groups.size() - 1,
          new double[] {Math.min(bottom, middle + tall / 2), tall, upper[2] + lower[2]});
    }
  }

  private void ruler(PdfSheet sheet, PageType type, double x, double y, double width)
      throws IOException {
    double end = x + rulerMm * PT_PER_MM;
    sheet.line(x, y, end, y, 1);
    for (int mm = 0; mm <= rulerMm; mm += 10) {
      double at = x + mm * PT_PER_MM;
      double half = mm == 0 || mm + 10 > rulerMm ? 6 : 3;
      sheet.line(at, y - half, at, y + half, 1);
    }
    sheet.begin("P");
    PDFont font = type.fonts().plain();
    PageBlocks.drawLines(
        sheet, type, type.lines(rulerText, width, font), x, y + type.sizePt() * 0.7, font);
    sheet.end();
  }
}
