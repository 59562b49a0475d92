package doughtide.report.chart;

import doughtide.report.type.Fonts;
import java.awt.Color;
import java.awt.geom.Line2D;
import java.awt.geom.Path2D;
import java.util.ArrayList;
import java.util.List;

/** Paints grid, frame and axes. */
final class AxisPainter extends ChartPainter {
  private final double ribbonTall;
  private final double twentyFoot;
  private final double titleY;

  /**
   * @param ribbonTall height of what stands between the plot and its axis
   * @param twentyFoot where the second axis lies
   * @param titleY line of the titles of the upright axes
   */
  AxisPainter(ChartPainter whole, double ribbonTall, double twentyFoot, double titleY) {
    super(whole);
    this.ribbonTall = ribbonTall;
    this.twentyFoot = twentyFoot;
    this.titleY = titleY;
  }

  void grid() {
    g.setColor(GRID);
    stroke(0.5);
    for (ChartTick tick : labelled(picture.x(), plot.getMaxX() + rightMargin())) {
      g.draw(new Line2D.Double(px(tick.at()), plot.getY(), px(tick.at()), plot.getMaxY()));
    }
    for (ChartTick tick : legible(picture.y())) {
      g.draw(new Line2D.Double(plot.getX(), py(tick.at()), plot.getMaxX(), py(tick.at())));
    }
    g.setColor(Color.BLACK);
  }

  void frame() {
    stroke(1);
    g.draw(new Line2D.Double(plot.getX(), plot.getMaxY(), plot.getMaxX(), plot.getMaxY()));
    g.draw(new Line2D.Double(plot.getX(), plot.getY(), plot.getX(), plot.getMaxY()));
  }

  void axes(double edge) {
    text(picture.y().title(), edge, titleY, plain);
    for (ChartTick tick : legible(picture.y())) {
      String label = tick.rows().get(0);
      text(
          label,
          plot.getX() - size * 0.4 - Fonts.width(label, plain),
          py(tick.at()) + size * 0.35,
          plain);
    }
    picture.right().ifPresent(axis -> rightAxis(axis, edge));
    xAxis(edge);
  }

  private void rightAxis(ChartAxis axis, double edge) {
    text(axis.title(), width - edge - Fonts.width(axis.title(), plain), titleY, plain);
    for (ChartTick tick : legible(axis)) {
      text(
          tick.rows().get(0),
          plot.getMaxX() + size * 0.4,
          plot.getMaxY() - plot.getHeight() * axis.fraction(tick.at()) + size * 0.35,
          plain);
    }
  }

  private void xAxis(double edge) {
    double foot = plot.getMaxY() + ribbonTall;
    double firstRow = foot + size * 1.3;
    ticks(picture.x(), foot, width);
    for (ChartTick tick : labelled(picture.x(), plot.getMaxX() + rightMargin())) {
      centred(tick.rows().get(0), px(tick.at()), firstRow);
    }
    days(firstRow + lineHeight);
    List<String> names = picture.x().rowNames();
    for (int row = 0; row < names.size(); row++) {
      text(names.get(row), edge, firstRow + row * lineHeight, plain);
    }
    String title = picture.x().title();
    text(title, plot.getMaxX() - Fonts.width(title, plain), firstRow + rows() * lineHeight, plain);
  }

  private void ticks(ChartAxis axis, double y, double end) {
    stroke(1);
    axis.ticks().stream()
        .mapToDouble(tick -> px(tick.at()))
        .filter(x -> x <= end)
        .forEach(x -> g.draw(new Line2D.Double(x, y, x, y + size * 0.3)));
  }

  /** The second row of the labels: where a day begins, unless it lies on the day before. */
  private void days(double y) {
    double free = Double.NEGATIVE_INFINITY;
    for (ChartTick tick : picture.x().ticks()) {
      String day = tick.rows().size() > 1 ? tick.rows().get(1) : "";
      double half = Fonts.width(day, plain) / 2;
      if (!day.isEmpty() && px(tick.at()) - half >= free) {
        centred(day, px(tick.at()), y);
        free = px(tick.at()) + half + size * 0.5;
      }
    }
  }

  /** The marks whose labels stay apart from each other and left of an end. */
  private List<ChartTick> labelled(ChartAxis axis, double end) {
    List<ChartTick> shown = new ArrayList<>();
    double free = Double.NEGATIVE_INFINITY;
    for (ChartTick tick : axis.ticks()) {
      double half = Fonts.width(tick.rows().get(0), plain) / 2;
      if (px(tick.at()) - half >= free && px(tick.at()) + half <= end) {
        shown.add(tick);
        free = px(tick.at()) + half + size * 0.5;
      }
    }
    return shown;
  }

  /** The marks of an upright axis that have room for their labels. */
  private List<ChartTick> legible(ChartAxis axis) {
    List<ChartTick> ticks = axis.ticks();
    if (ticks.size() < 2) {
      return ticks;
    }
    double apart =
        plot.getHeight() * (axis.fraction(ticks.get(1).at()) - axis.fraction(ticks.get(0).at()));
    int every = Math.max(1, (int) Math.ceil(size * 1.15 / Math.max(0.1, apart)));
    List<ChartTick> shown = new ArrayList<>();
    for (int i = 0; i < ticks.size(); i += every) {
      shown.add(ticks.get(i));
    }
    return shown;
  }

  /** The second axis: hours under the clock, its title on the same line. */
  void underAxis(ChartAxis axis, double edge) {
    double foot = twentyFoot;
    double row = foot + size * 1.15;
    double titleFrom = titleFrom(axis);
    g.draw(new Line2D.Double(plot.getX(), foot, plot.getMaxX(), foot));
    ticks(axis, foot, titleFrom - size * 0.3);
    labelled(axis, titleFrom - size * 0.6)
        .forEach(tick -> centred(tick.rows().get(0), px(tick.at()), row));
    text(axis.title(), titleFrom, row, plain);
    axis.rowNames().forEach(name -> text(name, edge, row, plain));
  }

  private double titleFrom(ChartAxis axis) {
    return plot.getMaxX() - Fonts.width(axis.title(), plain);
  }

  /** Strokes where a narrower stretch begins and ends, clear of the title of the second axis. */
  void breaks(Squeeze squeeze) {
    for (double at : new double[] {squeeze.from(), squeeze.to()}) {
      breakAt(px(at), plot.getMaxY());
      if (picture.under().stream().anyMatch(axis -> px(at) + size * 0.6 < titleFrom(axis))) {
        breakAt(px(at), twentyFoot);
      }
    }
  }

  private void breakAt(double x, double y) {
    double r = size * 0.32;
    double gap = size * 0.16;
    Path2D between = new Path2D.Double();
    between.moveTo(x - gap - r / 2, y + r);
    between.lineTo(x - gap + r / 2, y - r);
    between.lineTo(x + gap + r / 2, y - r);
    between.lineTo(x + gap - r / 2, y + r);
    between.closePath();
    g.setColor(Color.WHITE);
    g.fill(between);
    g.setColor(Color.BLACK);
    stroke(1.2);
    for (double side : new double[] {-gap, gap}) {
      g.draw(new Line2D.Double(x + side - r / 2, y + r, x + side + r / 2, y - r));
    }
  }
}
