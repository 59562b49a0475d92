package doughtide.report.chart;

import doughtide.report.type.Fonts;
import java.awt.Color;
import java.awt.Font;
import java.awt.geom.Line2D;
import java.awt.geom.Rectangle2D;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;

/** Finds places for the names of lines, levels and zones, and writes them there. */
final class LabelPainter extends ChartPainter {
  private final List<String> dropped = new ArrayList<>();

  LabelPainter(ChartPainter whole) {
    super(whole);
  }

  List<ChartPicture.Curve> named() {
    return picture.curves().stream().filter(ChartPicture.Curve::named).toList();
  }

  boolean namesFitBesideLines() {
    LabelLayout layout = clearOfDrawing();
    return named().stream().allMatch(curve -> besideLine(curve, layout).isPresent());
  }

  /**
   * All names with samples of their lines, in rows above the plot.
   *
   * @return the height they take
   */
  double key(double edge, double top, boolean draw) {
    double sample = 3.2 * size;
    double widest = named().stream().mapToDouble(c -> Fonts.width(c.name(), plain)).max().orElse(0);
    double cell = sample + widest + 6 + size;
    int across = (int) Math.max(1, Math.floor((width - 2 * edge) / cell));
    for (int i = 0; draw && i < named().size(); i++) {
      withSample(
          named().get(i),
          new Rectangle2D.Double(
              edge + i % across * cell,
              top + i / across * lineHeight + size * 0.2,
              cell - size,
              lineHeight),
          sample);
    }
    return Math.ceil((double) named().size() / across) * lineHeight;
  }

  /** First those that were found to fit when the key was left out. */
  void labels(boolean keyed) {
    LabelLayout layout = clearOfDrawing();
    if (!keyed) {
      named().forEach(curve -> put(curve.name(), plain, besideLine(curve, layout)));
    }
    picture.spans().stream()
        .filter(span -> !span.label().isEmpty())
        .forEach(span -> spanLabel(span, layout));
    picture.zones().forEach(zone -> zoneLabel(zone, layout));
  }

  /** Places for labels that cover neither lines nor marks. */
  private LabelLayout clearOfDrawing() {
    LabelLayout layout =
        new LabelLayout(
            new Rectangle2D.Double(
                plot.getX() + 2, plot.getY(), plot.getWidth() - 2, plot.getHeight() - 2));
    for (ChartPicture.Curve curve : picture.curves()) {
      avoid(layout, curve.x(), curve.y());
    }
    for (ChartPicture.Band band : picture.bands()) {
      avoid(layout, band.x(), band.low());
      avoid(layout, band.x(), band.high());
    }
    for (ChartPicture.Span span : picture.spans()) {
      double from = inside(span.early()) - 1;
      double to = inside(span.late()) + 1;
      layout.avoid(new Rectangle2D.Double(from, py(span.y()) - size * 0.35, to - from, size * 0.7));
    }
    for (ChartPicture.Dot dot : picture.dots()) {
      double x = inside(dot.x());
      double y = py(picture.y().clamp(dot.y()));
      layout.avoid(new Rectangle2D.Double(x - size * 0.5, y - size * 0.5, size, size));
    }
    return layout;
  }

  private void avoid(LabelLayout layout, double[] x, double[] y) {
    double[] sx = new double[x.length];
    double[] sy = new double[x.length];
    for (int i = 0; i < x.length; i++) {
      sx[i] = inside(x[i]);
      sy[i] = py(picture.y().clamp(y[i]));
    }
    layout.avoidPath(sx, sy, 1.5);
  }

  private void zoneLabel(ChartPicture.Zone zone, LabelLayout layout) {
    double from = inside(zone.from());
    double to = inside(zone.to());
    double w = Fonts.width(zone.label(), bold) + 6;
    List<double[]> wishes = new ArrayList<>();
    double x = (from + to - w) / 2;
    for (double f : new double[] {0.02, 0.9, 0.5, 0.3, 0.7}) {
      wishes.add(new double[] {x, plot.getY() + f * (plot.getHeight() - lineHeight)});
    }
    layout
        .place(w, lineHeight, wishes, 4 * lineHeight)
        .ifPresent(place -> put(zone.label(), bold, Optional.of(place))); // the key says it too
  }

  /** The whole label near its level, else shorter, else shorter wherever there is room. */
  private void spanLabel(ChartPicture.Span span, LabelLayout layout) {
    String label = span.label();
    String brief = before(" (", label);
    String level = before(":", brief);
    boolean placed =
        isPut(span, label, layout, 4 * lineHeight)
            || isPut(span, brief, layout, 4 * lineHeight)
            || isPut(span, brief, layout, plot.getWidth())
            || isPut(span, level, layout, plot.getWidth());
    if (!placed) {
      dropped.add(label);
    }
  }

  private static String before(String mark, String label) {
    int end = label.indexOf(mark);
    return end < 0 ? label : label.substring(0, end);
  }

  private boolean isPut(
      ChartPicture.Span span, String label, LabelLayout layout, double farthestPt) {
    Optional<Rectangle2D> place = besideSpan(span, label, layout, farthestPt);
    place.ifPresent(
        found -> {
          leader(span, found);
          put(label, plain, place);
        });
    return place.isPresent();
  }

  private Optional<Rectangle2D> besideSpan(
      ChartPicture.Span span, String label, LabelLayout layout, double farthestPt) {
    double w = Fonts.width(label, plain) + 6;
    double y = py(span.y()) - lineHeight / 2;
    double right = inside(span.late()) + size * 0.5;
    double left = inside(span.early()) - size * 0.5 - w;
    List<double[]> wishes = new ArrayList<>();
    for (double away : new double[] {0, 0.4, 0.8, 1.2, 1.8}) {
      wishes.add(new double[] {right + away * size, y});
      wishes.add(new double[] {left - away * size, y});
    }
    for (double shift : new double[] {0.5, -0.5, 1, -1}) {
      wishes.add(new double[] {right + size, y + shift * lineHeight});
      wishes.add(new double[] {left - size, y + shift * lineHeight});
    }
    return layout.place(w, lineHeight, wishes, farthestPt);
  }

  /** A thin line from a level to its label where the label had to move away. */
  private void leader(ChartPicture.Span span, Rectangle2D place) {
    double y = py(span.y());
    if (Math.abs(place.getCenterY() - y) < size * 0.4) {
      return;
    }
    boolean isRight = place.getCenterX() > inside(span.likely());
    double end = inside(isRight ? span.late() : span.early());
    stroke(0.5);
    g.draw(
        new Line2D.Double(
            end, y, isRight ? place.getMinX() + 2 : place.getMaxX() - 2, place.getCenterY()));
  }

  /** Beside its own line, and of all such places the one farthest from the other lines. */
  private Optional<Rectangle2D> besideLine(ChartPicture.Curve curve, LabelLayout layout) {
    double w = Fonts.width(curve.name(), plain) + 6;
    List<double[]> wishes = new ArrayList<>();
    List<Double> distances = new ArrayList<>();
    for (int i = curve.x().length - 1; i >= 0; i -= Math.max(1, curve.x().length / 40)) {
      if (curve.y()[i] > picture.y().max() || curve.y()[i] < picture.y().min()) {
        continue;
      }
      double x = px(curve.x()[i]);
      double y = py(curve.y()[i]);
      for (double[] corner :
          new double[][] {
            {x - w - 3, y - lineHeight - 2}, {x + 3, y + 2}, {x - w / 2, y - lineHeight - 3},
            {x - w / 2, y + 3}, {x - w - 3, y - lineHeight / 2}, {x + 3, y - lineHeight / 2},
            {x - w - lineHeight, y - lineHeight / 2}, {x + lineHeight, y - lineHeight / 2}
          }) {
        wishes.add(corner);
        distances.add(distanceToOthers(curve, corner[0], corner[1], w));
      }
    }
    List<Integer> order = new ArrayList<>();
    for (int i = 0; i < wishes.size(); i++) {
      order.add(i);
    }
    order.sort(Comparator.comparing(i -> -distances.get(i)));
    List<double[]> best = order.stream().map(wishes::get).toList();
    return best.isEmpty() ? Optional.empty() : layout.place(w, lineHeight, best, 4 * lineHeight);
  }

  /** A name behind a piece of its line. */
  private void withSample(ChartPicture.Curve curve, Rectangle2D place, double sample) {
    g.setColor(Color.WHITE);
    g.fill(place);
    g.setColor(Color.BLACK);
    text(curve.name(), place.getX() + sample + 3, place.getMaxY() - size * 0.38, plain);
    stroke(curve.pen().widthPt, curve.pen().dashPt);
    g.draw(
        new Line2D.Double(
            place.getX() + 2, place.getCenterY(), place.getX() + sample - 2, place.getCenterY()));
  }

  /** Least distance of a label from the other lines, in points, up to what tells them apart. */
  private double distanceToOthers(ChartPicture.Curve own, double left, double top, double w) {
    double least = 3 * size;
    for (ChartPicture.Curve other : picture.curves()) {
      for (int i = 0; !other.name().equals(own.name()) && i < other.x().length; i += 2) {
        double x = px(other.x()[i]);
        double y = py(other.y()[i]);
        double dx = Math.max(0, Math.max(left - x, x - left - w));
        double dy = Math.max(0, Math.max(top - y, y - top - lineHeight));
        least = Math.min(least, Math.hypot(dx, dy));
      }
    }
    return least;
  }

  private void put(String label, Font font, Optional<Rectangle2D> place) {
    if (place.isEmpty() && !label.isEmpty()) {
      dropped.add(label);
    }
    place
        .filter(p -> !label.isEmpty())
        .ifPresent(
            p -> {
              g.setColor(Color.WHITE);
              g.fill(p);
              g.setColor(Color.BLACK);
              text(label, p.getX() + 3, p.getMaxY() - size * 0.38, font);
            });
  }

  /** What found no place when it was drawn; must be nothing. */
  List<String> dropped() {
    return List.copyOf(dropped);
  }
}
