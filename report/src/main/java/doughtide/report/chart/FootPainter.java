package doughtide.report.chart;

import doughtide.report.type.Fonts;
import java.awt.Color;
import java.awt.Font;
import java.awt.Shape;
import java.awt.geom.Ellipse2D;
import java.awt.geom.Rectangle2D;
import java.util.ArrayList;
import java.util.List;

/** Paints what stands under the plot: the stages in a row, and the twenty dots. */
final class FootPainter extends ChartPainter {
  private static final int MOST_STACKED = 5;

  private double dotPt;

  FootPainter(ChartPainter whole) {
    super(whole);
  }

  double ribbonTall(ChartPicture.Ribbon ribbon) {
    return lineHeight * (1.2 + underRibbon(ribbon).rows());
  }

  /** The names of stages that are too narrow for them. */
  private HeadLabels underRibbon(ChartPicture.Ribbon ribbon) {
    HeadLabels under = new HeadLabels(edge(), width - edge(), edge(), width - edge());
    ribbon.stages().stream()
        .filter(stage -> !fits(stage))
        .forEach(
            stage ->
                under.add(
                    stage.label(), (px(stage.from()) + px(stage.to())) / 2, font(stage), size));
    return under;
  }

  private boolean fits(ChartPicture.Stage stage) {
    return px(stage.to()) - px(stage.from()) >= Fonts.width(stage.label(), font(stage)) + 4;
  }

  private Font font(ChartPicture.Stage stage) {
    return stage.fill() == ChartPicture.Fill.BLACK ? bold : plain;
  }

  /** Stages in a row, each with its name in it, or under it where it is too narrow. */
  void ribbon(ChartPicture.Ribbon ribbon, double edge) {
    double top = plot.getMaxY() + size * 0.15;
    double tall = lineHeight;
    text(ribbon.name(), edge, top + size, plain);
    for (ChartPicture.Stage stage : ribbon.stages()) {
      double from = px(stage.from());
      double to = px(stage.to());
      area(new Rectangle2D.Double(from, top, to - from, tall), stage.fill(), 0.8);
      if (fits(stage)) {
        g.setColor(stage.fill() == ChartPicture.Fill.BLACK ? Color.WHITE : Color.BLACK);
        double w = Fonts.width(stage.label(), font(stage));
        text(stage.label(), (from + to - w) / 2, top + size, font(stage));
        g.setColor(Color.BLACK);
      }
    }
    underRibbon(ribbon).draw(g, top + tall + size, -lineHeight);
  }

  double twentyTall(ChartPicture.TwentyDots twenty) {
    dotPt = size * 0.62;
    int highest = highest(twenty);
    if (highest > MOST_STACKED) {
      dotPt = Math.max(size * 0.35, dotPt * MOST_STACKED / highest);
      highest = highest(twenty);
    }
    return Math.max(lineHeight, (highest + 0.4) * dotPt);
  }

  private int highest(ChartPicture.TwentyDots twenty) {
    int stacked = stacks(twenty).stream().mapToInt(List::size).max().orElse(0);
    return Math.max(stacked, twenty.laterOrNever());
  }

  /** Dots that would lie on each other are put on each other, in the middle of their places. */
  private List<List<Double>> stacks(ChartPicture.TwentyDots twenty) {
    List<List<Double>> stacks = new ArrayList<>();
    double from = Double.NEGATIVE_INFINITY;
    for (double at : twenty.at()) {
      double x = px(at);
      if (x >= from + dotPt) {
        stacks.add(new ArrayList<>());
        from = x;
      }
      stacks.get(stacks.size() - 1).add(x);
    }
    return stacks;
  }

  void twenty(ChartPicture.TwentyDots twenty, double edge, double foot) {
    twentyTall(twenty);
    text(twenty.name(), edge, foot - size * 0.2, plain);
    double free = Double.NEGATIVE_INFINITY;
    for (List<Double> stack : stacks(twenty)) {
      double middle = stack.stream().mapToDouble(each -> each).average().orElseThrow();
      double x = Math.max(middle, free);
      free = x + dotPt;
      for (int i = 0; i < stack.size(); i++) {
        g.fill(ball(x, foot - (i + 0.6) * dotPt));
      }
    }
    stroke(0.8);
    for (int i = 0; i < twenty.laterOrNever(); i++) {
      g.draw(ball(plot.getMaxX() + dotPt * 0.9, foot - (i + 0.6) * dotPt));
    }
  }

  private Shape ball(double x, double y) {
    double d = dotPt * 0.88;
    return new Ellipse2D.Double(x - d / 2, y - d / 2, d, d);
  }
}
