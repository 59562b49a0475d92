package doughtide.report.chart;

import doughtide.report.type.Fonts;
import java.awt.Color;
import java.awt.Font;
import java.awt.Graphics2D;
import java.awt.geom.Rectangle2D;
import java.util.ArrayList;
import java.util.List;

/**
 * Names of upright lines in rows over them: each as near to its line as the others leave room, the
 * first row between the titles of the axes, every further row as wide as the chart. None is lost.
 */
final class HeadLabels {

  /** A label in its place. */
  private record Placed(String text, Font font, int row, double from, double to) {}

  private final double firstFrom;
  private final double firstTo;
  private final double from;
  private final double to;
  private final List<Placed> placed = new ArrayList<>();

  /** Between two ends of the first row, and of the further ones. */
  HeadLabels(double firstFrom, double firstTo, double from, double to) {
    this.firstFrom = firstFrom;
    this.firstTo = firstTo;
    this.from = from;
    this.to = to;
  }

  /** Finds a place over a line. */
  void add(String text, double x, Font font, double sizePt) {
    double wide = Fonts.width(text, font);
    double[] wishes = {
      x - wide / 2, x + sizePt * 0.3, x - wide - sizePt * 0.3, x - wide * 0.25, x - wide * 0.75
    };
    for (int row = 0; ; row++) {
      for (double wish : wishes) {
        Placed place = at(text, font, row, wish, wide);
        if (isFree(place, sizePt * 0.6)) {
          placed.add(place);
          return;
        }
      }
    }
  }

  private Placed at(String text, Font font, int row, double wish, double wide) {
    double low = row == 0 ? firstFrom : from;
    double high = row == 0 ? firstTo : to;
    double left = Math.max(low, Math.min(high - wide, wish));
    return new Placed(text, font, row, left, left + wide);
  }

  private boolean isFree(Placed place, double apart) {
    return (place.row() > 0 || place.to() <= firstTo)
        && placed.stream()
            .noneMatch(
                other ->
                    other.row() == place.row()
                        && place.from() < other.to() + apart
                        && place.to() + apart > other.from());
  }

  /** How many rows there are. */
  int rows() {
    return placed.stream().mapToInt(each -> each.row() + 1).max().orElse(0);
  }

  /** Draws the first row at a base line, the others over it. */
  void draw(Graphics2D g, double base, double lineHeight) {
    placed.forEach(each -> text(g, each, base - each.row() * lineHeight));
  }

  private static void text(Graphics2D g, Placed label, double base) {
    double tall = label.font().getSize2D();
    g.setColor(Color.WHITE);
    g.fill(
        new Rectangle2D.Double(
            label.from() - 2, base - tall * 0.85, label.to() - label.from() + 4, tall * 1.1));
    g.setColor(Color.BLACK);
    g.setFont(label.font());
    g.drawString(Fonts.printable(label.text()), (float) label.from(), (float) base);
  }
}
