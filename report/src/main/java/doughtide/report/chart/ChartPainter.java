package doughtide.report.chart;

import doughtide.report.type.Fonts;
import java.awt.BasicStroke;
import java.awt.Color;
import java.awt.Font;
import java.awt.Graphics2D;
import java.awt.Shape;
import java.awt.geom.Path2D;
import java.awt.geom.Rectangle2D;
import java.util.function.IntToDoubleFunction;

/**
 * What the parts of a painting share: the surface, the sizes of its text, and the place of the
 * plot.
 */
abstract class ChartPainter {
  static final Color GRID = new Color(0xC8, 0xC8, 0xC8);

  final ChartPicture picture;
  final Graphics2D g;
  final double width;
  final double height;
  final double size;
  final double lineHeight;
  final boolean isOnPage;
  final Font plain;
  final Font bold;
  Rectangle2D plot = new Rectangle2D.Double();

  /** On a surface. */
  ChartPainter(
      ChartPicture picture,
      Graphics2D g,
      double width,
      double height,
      double size,
      boolean isOnPage) {
    this.picture = picture;
    this.g = g;
    this.width = width;
    this.height = height;
    this.size = size;
    this.lineHeight = size * 1.3;
    this.isOnPage = isOnPage;
    this.plain = Fonts.plain(size);
    this.bold = Fonts.bold(size);
  }

  /** On the same surface with the plot in the same place. */
  ChartPainter(ChartPainter whole) {
    this(whole.picture, whole.g, whole.width, whole.height, whole.size, whole.isOnPage);
    this.plot = whole.plot;
  }

  double edge() {
    return isOnPage ? ChartDrawing.PAGE_EDGE_PT : size * 0.8;
  }

  double px(double x) {
    return plot.getX() + plot.getWidth() * picture.x().fraction(x);
  }

  /** Where a place lies, or the end of the axis that is nearer. */
  double inside(double x) {
    return px(picture.x().clamp(x));
  }

  /** A line through so many points. */
  static Path2D line(int points, IntToDoubleFunction x, IntToDoubleFunction y) {
    Path2D path = new Path2D.Double();
    for (int i = 0; i < points; i++) {
      if (i == 0) {
        path.moveTo(x.applyAsDouble(i), y.applyAsDouble(i));
      } else {
        path.lineTo(x.applyAsDouble(i), y.applyAsDouble(i));
      }
    }
    return path;
  }

  double py(double y) {
    return plot.getMaxY() - plot.getHeight() * picture.y().fraction(y);
  }

  void text(String text, double x, double y, Font font) {
    g.setFont(font);
    g.drawString(Fonts.printable(text), (float) x, (float) y);
  }

  void stroke(double widthPt, float... dash) {
    g.setStroke(
        dash.length == 0
            ? new BasicStroke((float) widthPt, BasicStroke.CAP_BUTT, BasicStroke.JOIN_ROUND)
            : new BasicStroke(
                (float) widthPt, BasicStroke.CAP_BUTT, BasicStroke.JOIN_ROUND, 1, dash, 0));
  }

  void centred(String label, double x, double y) {
    text(label, x - Fonts.width(label, plain) / 2, y, plain);
  }

  int rows() {
    return picture.x().ticks().stream().mapToInt(t -> t.rows().size()).max().orElse(0);
  }

  double rightMargin() {
    double half =
        picture.x().ticks().stream()
            .filter(t -> picture.x().fraction(t.at()) > 0.93)
            .flatMap(t -> t.rows().stream())
            .mapToDouble(r -> Fonts.width(r, plain) / 2)
            .max()
            .orElse(0);
    return Math.max(
        half, picture.right().map(axis -> widest(axis) + size * 0.6).orElse(size * 0.5));
  }

  double widest(ChartAxis axis) {
    return axis.ticks().stream()
        .flatMap(t -> t.rows().stream())
        .mapToDouble(r -> Fonts.width(r, plain))
        .max()
        .orElse(0);
  }

  void area(Shape area, ChartPicture.Fill fill, double edgePt) {
    new AreaFill(g, size).fill(area, fill);
    stroke(edgePt);
    g.draw(area);
  }
}
