package doughtide.report.chart;

import doughtide.report.type.Fonts;
import doughtide.report.type.TextWrap;
import java.awt.Color;
import java.awt.Font;
import java.awt.Graphics2D;
import java.awt.Shape;
import java.awt.geom.Ellipse2D;
import java.awt.geom.Line2D;
import java.awt.geom.Path2D;
import java.awt.geom.Rectangle2D;
import java.util.Arrays;
import java.util.List;
import java.util.stream.DoubleStream;
import java.util.stream.Stream;

/** One painting of a chart onto one surface: where everything goes, and in which order. */
final class ChartDrawing extends ChartPainter {

  /** The least height of the plot in sizes of the text: less, and its curves cannot be read. */
  static final double LEAST_PLOT_LINES = 8;

  private static final double ROOMY_PLOT_LINES = 12;
  private static final double STRIP_LINES = 3.2;

  /** On a page the margins are the page's. */
  static final double PAGE_EDGE_PT = 1;

  private final int titleLines;
  private final Font titleFont;
  private boolean titlesBesideLanes;
  private boolean keyed;
  private boolean hasStrip;
  private HeadLabels head = new HeadLabels(0, 0, 0, 0);
  private double ribbonTall;
  private double twentyTall;
  private double keyTop;
  private LabelPainter labels = new LabelPainter(this);

  ChartDrawing(
      ChartPicture picture,
      Graphics2D g,
      double width,
      double height,
      double size,
      boolean isOnPage,
      int titleLines) {
    super(picture, g, width, height, size, isOnPage);
    this.titleLines = titleLines;
    this.titleFont = PrintedChart.titleFont(size);
  }

  void draw() {
    double edge = edge();
    double top = layOut();
    labels = new LabelPainter(this);
    g.setColor(Color.WHITE);
    g.fill(new Rectangle2D.Double(0, 0, width, height));
    g.setColor(Color.BLACK);
    header(edge, true);
    notes(edge, true);
    if (keyed) {
      labels.key(edge, keyTop, true);
    }
    if (hasStrip) {
      strip(picture.strip().orElseThrow(), edge, top, STRIP_LINES * lineHeight);
    }
    picture.zones().forEach(this::zone);
    AxisPainter axes =
        new AxisPainter(
            this,
            ribbonTall,
            twentyFoot(),
            plot.getY() - size * 0.65 - (titlesBesideLanes ? 0 : laneRows() * lineHeight));
    FootPainter foot = new FootPainter(this);
    axes.grid();
    picture.bands().forEach(this::band);
    uprights();
    new CurvePainter(picture).paint(g, plot);
    picture.curves().forEach(this::dashedCurve);
    g.setColor(Color.BLACK);
    axes.frame();
    picture.bench().forEach(this::bench);
    axes.axes(edge);
    picture.ribbon().ifPresent(ribbon -> foot.ribbon(ribbon, edge));
    picture.under().ifPresent(axis -> axes.underAxis(axis, edge));
    picture.x().squeeze().ifPresent(axes::breaks);
    picture.twenty().ifPresent(twenty -> foot.twenty(twenty, edge, twentyFoot()));
    lanes();
    picture.spans().forEach(this::span);
    picture.dots().forEach(this::dot);
    picture.marks().forEach(mark -> marker(diamond(px(mark.x()), py(mark.y()), size * 0.42)));
    head.draw(g, plot.getY() - size * 0.65, lineHeight);
    labels.labels(keyed);
  }

  /** Height of what must stand around the plot, in points: all but the strip, which may go. */
  double aroundPlotPt() {
    layOut();
    return height - plot.getHeight() - (hasStrip ? STRIP_LINES * lineHeight : 0);
  }

  /** Finds the place of everything and gives back where the strip begins. */
  private double layOut() {
    double edge = edge();
    double top = header(edge, false);
    double bottom = height - edge - notes(edge, false);
    hasStrip = picture.strip().isPresent();
    double stripTop = place(edge, top, bottom);
    if (hasStrip && plot.getHeight() < ROOMY_PLOT_LINES * size) {
      hasStrip = false;
      stripTop = place(edge, top, bottom);
    }
    return stripTop;
  }

  private double place(double edge, double top, double bottom) {
    double stripTall = hasStrip ? STRIP_LINES * lineHeight : 0;
    keyed = false;
    layOut(edge, top + stripTall, bottom);
    if (new LabelPainter(this).namesFitBesideLines()) {
      return top;
    }
    keyed = true;
    keyTop = top;
    double tall = new LabelPainter(this).key(edge, top, false);
    layOut(edge, top + stripTall + tall, bottom);
    return top + tall;
  }

  /** Where the plot lay when it was drawn. */
  ChartFrame frameOfPlot() {
    ChartAxis x = picture.x();
    DoubleStream bends =
        x.squeeze().stream().flatMapToDouble(each -> DoubleStream.of(each.from(), each.to()));
    List<ChartFrame.Place> xs =
        DoubleStream.concat(DoubleStream.of(x.min(), x.max()), bends)
            .sorted()
            .mapToObj(each -> new ChartFrame.Place(each, px(each)))
            .toList();
    return new ChartFrame(plot.getY(), plot.getMaxY(), picture.y().min(), picture.y().max(), xs);
  }

  /** Finds the plot's place between what stands above and below it. */
  private void layOut(double edge, double top, double bottom) {
    double left = Math.ceil(edge + leftMargin());
    double right = Math.floor(width - edge - rightMargin());
    plot = new Rectangle2D.Double(left, 0, right - left, 1);
    titlesBesideLanes = lanesLeaveRoomForTitles(edge);
    double laneTall = laneRows() - (titlesBesideLanes ? 1.15 : 0);
    head = headLabels(edge);
    double plotTop = Math.ceil(top + lineHeight * (1.45 + laneTall + Math.max(0, head.rows() - 1)));
    FootPainter foot = new FootPainter(this);
    ribbonTall = picture.ribbon().map(foot::ribbonTall).orElse(0.0);
    twentyTall = picture.twenty().map(foot::twentyTall).orElse(0.0);
    double plotBottom =
        Math.floor(bottom - ribbonTall - axisTall() - twentyTall - underTall() - size * 0.5);
    plot = new Rectangle2D.Double(left, plotTop, right - left, plotBottom - plotTop);
  }

  private double axisTall() {
    return rows() * lineHeight + (picture.x().title().isEmpty() ? 0 : lineHeight);
  }

  private double underTall() {
    return picture.under().isPresent() ? lineHeight : 0;
  }

  /** Names of lines over the whole height, on the line of the titles of the axes. */
  private HeadLabels headLabels(double edge) {
    double from = edge + Fonts.width(picture.y().title(), plain) + size;
    double to =
        width
            - edge
            - picture.right().map(axis -> Fonts.width(axis.title(), plain) + size).orElse(0.0);
    HeadLabels labels = new HeadLabels(from, to, edge, width - edge);
    picture.marks().forEach(mark -> labels.add(mark.label(), px(mark.x()), bold, size));
    picture.uprights().stream()
        .filter(upright -> !upright.label().isEmpty())
        .forEach(upright -> labels.add(upright.label(), px(upright.x()), plain, size));
    return labels;
  }

  private double header(double edge, boolean draw) {
    double y = edge;
    if (!picture.title().isEmpty()) {
      y = lines(List.of(picture.title()), titleFont, size * PrintedChart.TITLE_LINE, y, draw);
      y = Math.max(y, edge + titleLines * size * PrintedChart.TITLE_LINE);
    }
    y = lines(picture.answer(), bold, lineHeight, y, draw);
    return lines(picture.subtitle(), plain, lineHeight, y, draw);
  }

  private double lines(
      List<String> paragraphs, Font font, double apart, double from, boolean draw) {
    double y = from;
    for (String paragraph : paragraphs) {
      for (String line : TextWrap.lines(paragraph, width - 2 * edge(), font)) {
        y += apart;
        if (draw) {
          text(line, edge(), y - size * 0.3, font);
        }
      }
    }
    return y;
  }

  /** The lines under the chart; gives back the height they take. */
  private double notes(double edge, boolean draw) {
    double tall = lines(picture.notes(), plain, lineHeight, 0, false);
    if (draw) {
      lines(picture.notes(), plain, lineHeight, height - edge - tall, true);
    }
    return tall + (tall > 0 ? size * 0.4 : 0);
  }

  private double leftMargin() {
    double labels = widest(picture.y()) + size * 0.6;
    double names = rowNames().mapToDouble(n -> Fonts.width(n, plain)).max().orElse(0);
    double firstTick =
        picture.x().ticks().stream()
            .filter(tick -> picture.x().fraction(tick.at()) < 0.06)
            .flatMap(tick -> tick.rows().stream())
            .mapToDouble(row -> Fonts.width(row, plain) / 2)
            .max()
            .orElse(0);
    return Math.max(labels, names + firstTick + size * 0.6);
  }

  private Stream<String> rowNames() {
    return Stream.of(
            picture.x().rowNames().stream(),
            picture.under().stream().flatMap(axis -> axis.rowNames().stream()),
            picture.ribbon().stream().map(ChartPicture.Ribbon::name),
            picture.twenty().stream().map(ChartPicture.TwentyDots::name))
        .flatMap(each -> each);
  }

  private double twentyFoot() {
    return plot.getMaxY() + ribbonTall + axisTall() + twentyTall + size * 0.2;
  }

  private void uprights() {
    g.setColor(Color.BLACK);
    for (ChartPicture.Upright upright : picture.uprights()) {
      boolean isDay = upright.kind() == ChartPicture.Upright.Kind.MIDNIGHT;
      if (isDay) {
        stroke(0.8);
      } else {
        stroke(1, 3, 2.5f);
      }
      over(upright.x(), isDay ? 0 : size * 0.3);
    }
    stroke(1, 3, 2.5f);
    picture.marks().forEach(mark -> over(mark.x(), size * 0.3));
  }

  /** A line over the height of the plot and what stands directly under it. */
  private void over(double at, double above) {
    double x = inside(at);
    g.draw(new Line2D.Double(x, plot.getMaxY(), x, plot.getY() - above));
  }

  private void bench(ChartPicture.Bench bench) {
    double from = inside(bench.from());
    double to = inside(bench.to());
    stroke(size * 0.35);
    g.draw(new Line2D.Double(from, plot.getY(), to, plot.getY()));
  }

  private void band(ChartPicture.Band band) {
    int count = band.x().length;
    Path2D path =
        line(
            2 * count,
            i -> inside(band.x()[i < count ? i : 2 * count - 1 - i]),
            i -> py(i < count ? band.high()[i] : band.low()[2 * count - 1 - i]));
    path.closePath();
    Shape before = g.getClip();
    g.clip(new Rectangle2D.Double(plot.getX(), plot.getY(), plot.getWidth() + 1, plot.getHeight()));
    area(path, band.fill(), 0.9);
    g.setClip(before);
  }

  private void zone(ChartPicture.Zone zone) {
    double from = inside(zone.from());
    double to = inside(zone.to());
    Rectangle2D area = new Rectangle2D.Double(from, plot.getY(), to - from, plot.getHeight());
    new AreaFill(g, size).slanted(area);
    stroke(0.8, 2, 2);
    g.draw(new Line2D.Double(from, plot.getY(), from, plot.getMaxY()));
    g.draw(new Line2D.Double(to, plot.getY(), to, plot.getMaxY()));
  }

  private void dashedCurve(ChartPicture.Curve curve) {
    if (curve.pen().dashPt.length == 0) {
      return;
    }
    Path2D path = line(curve.x().length, i -> inside(curve.x()[i]), i -> py(curve.y()[i]));
    Shape before = g.getClip();
    g.clip(
        new Rectangle2D.Double(plot.getX(), plot.getY(), plot.getWidth(), plot.getHeight() + 1.5));
    stroke(curve.pen().widthPt, curve.pen().dashPt);
    g.draw(path);
    g.setClip(before);
  }

  private boolean lanesLeaveRoomForTitles(double edge) {
    double from = edge + Fonts.width(picture.y().title(), plain) + size;
    double to =
        width
            - edge
            - picture.right().map(axis -> Fonts.width(axis.title(), plain)).orElse(0.0)
            - size;
    return picture.lanes().size() == 1
        && rows(picture.lanes().get(0)) < 2
        && laneFrom(picture.lanes().get(0)) > from
        && laneTo(picture.lanes().get(0)) < to;
  }

  private boolean fitsRight(ChartPicture.Lane lane) {
    return inside(lane.late()) + size * 0.6 + labelWidth(lane) <= width - edge();
  }

  private boolean fitsLeft(ChartPicture.Lane lane) {
    return inside(lane.early()) - size * 0.6 - labelWidth(lane) >= edge();
  }

  private double labelWidth(ChartPicture.Lane lane) {
    return Fonts.width(lane.label(), bold);
  }

  /** Height of a lane, in rows: its name stands over it where it fits on neither side. */
  private double rows(ChartPicture.Lane lane) {
    return fitsRight(lane) || fitsLeft(lane) ? 1.15 : 2.15;
  }

  private double laneRows() {
    return picture.lanes().stream().mapToDouble(this::rows).sum();
  }

  private double laneFrom(ChartPicture.Lane lane) {
    double bar = inside(lane.early());
    return fitsRight(lane) ? bar : bar - size * 0.6 - labelWidth(lane);
  }

  private double laneTo(ChartPicture.Lane lane) {
    double bar = inside(lane.late());
    return fitsRight(lane) ? bar + size * 0.6 + labelWidth(lane) : bar;
  }

  /** First the lines down to the axis, then what stands on them, on white. */
  private void lanes() {
    double y = plot.getY() - size * 0.75;
    for (ChartPicture.Lane lane : picture.lanes()) {
      double x = inside(lane.likely());
      stroke(1, 3, 2.5f);
      g.draw(new Line2D.Double(x, plot.getMaxY(), x, y));
      y -= lineHeight * rows(lane);
    }
    y = plot.getY() - size * 0.75;
    for (ChartPicture.Lane lane : picture.lanes()) {
      lane(lane, y);
      y -= lineHeight * rows(lane);
    }
  }

  private void lane(ChartPicture.Lane lane, double y) {
    double from = inside(lane.early());
    double to = inside(lane.late());
    double x = inside(lane.likely());
    double wide = labelWidth(lane);
    double left = fitsRight(lane) ? to + size * 0.6 : laneFrom(lane);
    double row = y;
    if (!fitsRight(lane) && !fitsLeft(lane)) {
      left = Math.max(edge(), Math.min(width - edge() - wide, x - wide / 2));
      row = y - lineHeight;
    }
    g.setColor(Color.WHITE);
    g.fill(new Rectangle2D.Double(left - 2, row - size * 0.55, wide + 4, size * 1.1));
    g.setColor(Color.BLACK);
    stroke(2);
    bar(from, to, y);
    marker(diamond(x, y, size * 0.38));
    text(lane.label(), left, row + size * 0.35, bold);
  }

  private void bar(double from, double to, double y) {
    double tall = size * 0.25;
    g.draw(new Line2D.Double(from, y, to, y));
    g.draw(new Line2D.Double(from, y - tall, from, y + tall));
    if (to < plot.getMaxX()) {
      g.draw(new Line2D.Double(to, y - tall, to, y + tall));
    }
  }

  private void marker(Shape marker) {
    g.setColor(Color.WHITE);
    g.fill(marker);
    g.setColor(Color.BLACK);
    stroke(1.5);
    g.draw(marker);
  }

  private void span(ChartPicture.Span span) {
    double y = py(span.y());
    double from = inside(span.early());
    double to = inside(span.late());
    stroke(1.1);
    bar(from, to, y);
    if (span.likely() <= picture.x().max()) {
      double r = size * 0.32;
      double x = px(span.likely());
      marker(new Ellipse2D.Double(x - r, y - r, 2 * r, 2 * r));
    }
  }

  /** A cross on white, so that it shows on the band and on the line. */
  private void dot(ChartPicture.Dot dot) {
    double x = inside(dot.x());
    double y = py(picture.y().clamp(dot.y()));
    double r = size * 0.3;
    Path2D cross = new Path2D.Double();
    cross.moveTo(x - r, y - r);
    cross.lineTo(x + r, y + r);
    cross.moveTo(x - r, y + r);
    cross.lineTo(x + r, y - r);
    g.setColor(Color.WHITE);
    stroke(4.5);
    g.draw(cross);
    g.setColor(Color.BLACK);
    stroke(2);
    g.draw(cross);
  }

  private Shape diamond(double x, double y, double r) {
    Path2D path = new Path2D.Double();
    path.moveTo(x - 1.3 * r, y);
    path.lineTo(x, y - 1.3 * r);
    path.lineTo(x + 1.3 * r, y);
    path.lineTo(x, y + 1.3 * r);
    path.closePath();
    return path;
  }

  private void strip(ChartPicture.Strip strip, double edge, double top, double tall) {
    double low = Arrays.stream(strip.y()).min().orElseThrow();
    double high = Arrays.stream(strip.y()).max().orElseThrow();
    double pad = Math.max(1, 0.15 * (high - low));
    double upper = top + lineHeight * 1.5;
    double lower = top + tall - size * 0.2;
    text(strip.title(), edge, top + lineHeight * 1.05, plain);
    double scale = (lower - upper) / (high - low + 2 * pad);
    Path2D path =
        line(
            strip.x().length,
            i -> inside(strip.x()[i]),
            i -> lower - (strip.y()[i] - low + pad) * scale);
    stroke(0.5);
    g.setColor(GRID);
    g.draw(new Rectangle2D.Double(plot.getX(), upper, plot.getWidth(), lower - upper));
    g.setColor(Color.BLACK);
    stroke(1.3);
    g.draw(path);
    stripScale(high, upper + pad * scale, strip.unit());
    if (high - low > 1) {
      stripScale(low, lower - pad * scale, strip.unit());
    }
  }

  private void stripScale(double value, double y, String unit) {
    String label = Math.round(value) + unit;
    text(label, plot.getX() - size * 0.4 - Fonts.width(label, plain), y + size * 0.35, plain);
  }

  /** What found no place when it was drawn; must be nothing. */
  List<String> dropped() {
    return labels.dropped();
  }
}
