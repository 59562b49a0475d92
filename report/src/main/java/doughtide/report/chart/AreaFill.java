package doughtide.report.chart;

import java.awt.BasicStroke;
import java.awt.Color;
import java.awt.Graphics2D;
import java.awt.Shape;
import java.awt.geom.Line2D;
import java.awt.geom.Path2D;
import java.awt.geom.Rectangle2D;

/** Fills areas so that a copy in black and white keeps what they mean. */
final class AreaFill {
  private static final Color GREY = new Color(0xDC, 0xDC, 0xDC);
  private static final Color HATCH = new Color(0x50, 0x50, 0x50);
  private static final float HATCH_PT = 0.6f;
  private static final float DOT_PT = 0.9f;

  private final Graphics2D g;
  private final double size;

  /** With text of a size nearby. */
  AreaFill(Graphics2D g, double size) {
    this.g = g;
    this.size = size;
  }

  void fill(Shape area, ChartPicture.Fill fill) {
    g.setColor(
        switch (fill) {
          case WHITE, COLD -> Color.WHITE;
          case BLACK -> Color.BLACK;
          case GREY, DOTTED -> GREY;
        });
    g.fill(area);
    if (fill == ChartPicture.Fill.COLD) {
      slanted(area);
    }
    g.setColor(Color.BLACK);
    if (fill == ChartPicture.Fill.DOTTED) {
      dotted(area);
    }
  }

  /** Slanted lines, which always mean the cold. */
  void slanted(Shape area) {
    Shape before = g.getClip();
    g.clip(area);
    g.setColor(HATCH);
    g.setStroke(new BasicStroke(HATCH_PT));
    Rectangle2D box = area.getBounds2D();
    double gap = size * 0.8;
    for (double x = box.getX() - box.getHeight(); x < box.getMaxX(); x += gap) {
      g.draw(new Line2D.Double(x, box.getMaxY(), x + box.getHeight(), box.getY()));
    }
    g.setClip(before);
    g.setColor(Color.BLACK);
  }

  private void dotted(Shape area) {
    Rectangle2D box = area.getBounds2D();
    double gap = size * 0.5;
    Path2D dots = new Path2D.Double();
    int row = 0;
    for (double y = box.getY() + gap / 2; y < box.getMaxY(); y += gap) {
      for (double x = box.getX() + (row % 2 + 0.5) * gap; x < box.getMaxX(); x += 2 * gap) {
        if (area.contains(x, y)) {
          dots.moveTo(x, y);
          dots.lineTo(x + 0.01, y);
        }
      }
      row++;
    }
    g.setStroke(new BasicStroke(DOT_PT, BasicStroke.CAP_ROUND, BasicStroke.JOIN_ROUND));
    g.draw(dots);
  }
}
