package doughtide.report.chart;

import java.awt.geom.Rectangle2D;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/**
 * Puts labels where they cover neither each other nor what must stay visible, and stay inside a
 * frame. Each label tries its wished places in order; when all are taken, the free place nearest to
 * the first wish is used. Deterministic: earlier labels win.
 */
final class LabelLayout {

  private static final double STEP_PT = 3;

  private final Rectangle2D frame;
  private final List<Rectangle2D> taken = new ArrayList<>();

  LabelLayout(Rectangle2D frame) {
    this.frame = frame;
  }

  /** Keeps an area free of labels. */
  void avoid(Rectangle2D area) {
    taken.add(area);
  }

  /** Keeps the course of a polyline free of labels. */
  void avoidPath(double[] x, double[] y, double halfWidthPt) {
    for (int i = 1; i < x.length; i++) {
      double length = Math.hypot(x[i] - x[i - 1], y[i] - y[i - 1]);
      int pieces = (int) Math.max(1, Math.ceil(length / (2 * halfWidthPt)));
      for (int k = 0; k <= pieces; k++) {
        double f = (double) k / pieces;
        avoid(
            new Rectangle2D.Double(
                x[i - 1] + f * (x[i] - x[i - 1]) - halfWidthPt,
                y[i - 1] + f * (y[i] - y[i - 1]) - halfWidthPt,
                2 * halfWidthPt,
                2 * halfWidthPt));
      }
    }
  }

  /**
   * A place for a label, or nothing when all is taken near its first wish.
   *
   * @param wishes upper left corners to try first, best first; at least one
   * @param farthestPt how far from the first wish it may end up; a label farther off misleads
   */
  Optional<Rectangle2D> place(
      double widthPt, double tallPt, List<double[]> wishes, double farthestPt) {
    for (double[] wish : wishes) {
      Rectangle2D place = new Rectangle2D.Double(wish[0], wish[1], widthPt, tallPt);
      if (isFree(place, taken)) {
        taken.add(place);
        return Optional.of(place);
      }
    }
    return nearestFree(widthPt, tallPt, wishes.get(0), farthestPt);
  }

  /** Looks in steps of the whole frame, so that a place does not move with the wish. */
  private Optional<Rectangle2D> nearestFree(
      double widthPt, double tallPt, double[] wish, double farthestPt) {
    Rectangle2D best = null;
    double bestDistance = farthestPt;
    Rectangle2D reach =
        new Rectangle2D.Double(
            wish[0] - farthestPt,
            wish[1] - farthestPt,
            widthPt + 2 * farthestPt,
            tallPt + 2 * farthestPt);
    List<Rectangle2D> near = taken.stream().filter(reach::intersects).toList();
    double firstY = firstStep(frame.getMinY(), reach.getMinY());
    double firstX = firstStep(frame.getMinX(), reach.getMinX());
    double lastY = Math.min(frame.getMaxY(), reach.getMaxY()) - tallPt;
    double lastX = Math.min(frame.getMaxX(), reach.getMaxX()) - widthPt;
    for (double y = firstY; y <= lastY; y += STEP_PT) {
      for (double x = firstX; x <= lastX; x += STEP_PT) {
        double distance = Math.hypot(x - wish[0], y - wish[1]);
        if (distance < bestDistance) {
          Rectangle2D place = new Rectangle2D.Double(x, y, widthPt, tallPt);
          if (isFree(place, near)) {
            best = place;
            bestDistance = distance;
          }
        }
      }
    }
    if (best != null) {
      taken.add(best);
    }
    return Optional.ofNullable(best);
  }

  private static double firstStep(double frameFrom, double reachFrom) {
    return frameFrom + STEP_PT * Math.max(0, Math.ceil((reachFrom - frameFrom) / STEP_PT));
  }

  private boolean isFree(Rectangle2D place, List<Rectangle2D> among) {
    return frame.contains(place) && among.stream().noneMatch(place::intersects);
  }
}
