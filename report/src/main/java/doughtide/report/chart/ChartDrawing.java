package doughtide.report.chart;

import doughtide.report.type.Fonts;
import doughtide.report.type.TextWrap;
import java.awt.BasicStroke;
import java.awt.Color;
import java.awt.Font;
import java.awt.Graphics2D;
import java.awt.Shape;
import java.awt.geom.Ellipse2D;
import java.awt.geom.Line2D;
import java.awt.geom.Path2D;
import java.awt.geom.Rectangle2D;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.stream.DoubleStream;
import java.util.stream.Stream;

/** One painting of a chart onto one surface. */
final class ChartDrawing {

  private static final Color GRID = new Color(0xC8, 0xC8, 0xC8);

  private static final Color HATCH = new Color(0x70, 0x70, 0x70);

  /** The least height of the plot in sizes of the text: less, and its curves cannot be read. */
  static final double LEAST_PLOT_LINES = 8;

  private static final double ROOMY_PLOT_LINES = 12;

  private static final int MOST_STACKED = 5;
  private static final double STRIP_LINES = 3.2;

  /** On a page the margins are the page's. */
  static final double PAGE_EDGE_PT = 1;

  private final ChartPicture picture;
  private final boolean isOnPage;
  private final int titleLines;
  private final Graphics2D g;
  private final double width;
  private final double height;
  private final double size;
  private final double lineHeight;
  private final Font plain;
  private final Font bold;
  private final Font titleFont;
  private Rectangle2D plot = new Rectangle2D.Double();
  private boolean titlesBesideLanes;
  private boolean keyed;
  private boolean hasStrip;
  private HeadLabels head = new HeadLabels(0, 0, 0, 0);
  private double ribbonTall;
  private double twentyTall;
  private double keyTop;
  private double dotPt;
  private final List<String> dropped = new ArrayList<>();

  ChartDrawing(
      ChartPicture picture,
      Graphics2D g,
      double width,
      double height,
      double size,
      boolean isOnPage,
      int titleLines) {
    this.picture = picture;
    this.isOnPage = isOnPage;
    this.titleLines = titleLines;
    this.g = g;
    this.width = width;
    this.height = height;
    this.size = size;
    this.lineHeight = size * 1.3;
    this.plain = Fonts.plain(size);
    this.bold = Fonts.bold(size);
    this.titleFont = PrintedChart.titleFont(size);
  }

  void draw() {
    double edge = edge();
    double top = layOut();
    g.setColor(Color.WHITE);
    g.fill(new Rectangle2D.Double(0, 0, width, height));
    g.setColor(Color.BLACK);
    header(edge, true);
    notes(edge, true);
    if (keyed) {
      key(edge, keyTop, true);
    }
    if (hasStrip) {
      strip(picture.strip().orElseThrow(), edge, top, STRIP_LINES * lineHeight);
    }
    picture.zones().forEach(this::zone);
    grid();
    picture.bands().forEach(this::band);
    uprights();
    new CurvePainter(picture).paint(g, plot);
    picture.curves().forEach(this::dashedCurve);
    g.setColor(Color.BLACK);
    frame();
    picture.bench().forEach(this::bench);
    axes(edge);
    picture.ribbon().ifPresent(ribbon -> ribbon(ribbon, edge));
    picture.twenty().ifPresent(twenty -> twenty(twenty, edge));
    picture.under().ifPresent(axis -> underAxis(axis, edge));
    picture.x().squeeze().ifPresent(this::breaks);
    lanes();
    picture.spans().forEach(this::span);
    picture.dots().forEach(this::dot);
    picture.marks().forEach(mark -> marker(diamond(px(mark.x()), py(mark.y()), size * 0.42)));
    head.draw(g, plot.getY() - size * 0.65, lineHeight);
    labels();
  }

  private double edge() {
    return isOnPage ? PAGE_EDGE_PT : size * 0.8;
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
    if (namesFitBesideLines()) {
      return top;
    }
    keyed = true;
    keyTop = top;
    double tall = key(edge, top, false);
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
    ribbonTall = picture.ribbon().map(this::ribbonTall).orElse(0.0);
    twentyTall = picture.twenty().map(this::twentyTall).orElse(0.0);
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

  private List<ChartPicture.Curve> named() {
    return picture.curves().stream().filter(ChartPicture.Curve::named).toList();
  }

  private boolean namesFitBesideLines() {
    LabelLayout layout = clearOfDrawing();
    return named().stream().allMatch(curve -> besideLine(curve, layout).isPresent());
  }

  /**
   * All names with samples of their lines, in rows above the plot.
   *
   * @return the height they take
   */
  private double key(double edge, double top, boolean draw) {
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

  private int rows() {
    return picture.x().ticks().stream().mapToInt(t -> t.rows().size()).max().orElse(0);
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

  private double rightMargin() {
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

  private double widest(ChartAxis axis) {
    return axis.ticks().stream()
        .flatMap(t -> t.rows().stream())
        .mapToDouble(r -> Fonts.width(r, plain))
        .max()
        .orElse(0);
  }

  private double px(double x) {
    return plot.getX() + plot.getWidth() * picture.x().fraction(x);
  }

  private double py(double y) {
    return plot.getMaxY() - plot.getHeight() * picture.y().fraction(y);
  }

  private void text(String text, double x, double y, Font font) {
    g.setFont(font);
    g.drawString(Fonts.printable(text), (float) x, (float) y);
  }

  private void stroke(double widthPt, float... dash) {
    g.setStroke(
        dash.length == 0
            ? new BasicStroke((float) widthPt, BasicStroke.CAP_BUTT, BasicStroke.JOIN_ROUND)
            : new BasicStroke(
                (float) widthPt, BasicStroke.CAP_BUTT, BasicStroke.JOIN_ROUND, 1, dash, 0));
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

  private void grid() {
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

  private void frame() {
    stroke(1);
    g.draw(new Line2D.Double(plot.getX(), plot.getMaxY(), plot.getMaxX(), plot.getMaxY()));
    g.draw(new Line2D.Double(plot.getX(), plot.getY(), plot.getX(), plot.getMaxY()));
  }

  private void axes(double edge) {
    double titleY = plot.getY() - size * 0.65 - (titlesBesideLanes ? 0 : laneRows() * lineHeight);
    text(picture.y().title(), edge, titleY, plain);
    for (ChartTick tick : legible(picture.y())) {
      String label = tick.rows().get(0);
      text(
          label,
          plot.getX() - size * 0.4 - Fonts.width(label, plain),
          py(tick.at()) + size * 0.35,
          plain);
    }
    picture.right().ifPresent(axis -> rightAxis(axis, edge, titleY));
    xAxis(edge);
  }

  private void rightAxis(ChartAxis axis, double edge, double titleY) {
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
    ticks(picture.x(), foot);
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

  private void ticks(ChartAxis axis, double y) {
    stroke(1);
    for (ChartTick tick : axis.ticks()) {
      g.draw(new Line2D.Double(px(tick.at()), y, px(tick.at()), y + size * 0.3));
    }
  }

  private void centred(String label, double x, double y) {
    text(label, x - Fonts.width(label, plain) / 2, y, plain);
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

  private double twentyFoot() {
    return plot.getMaxY() + ribbonTall + axisTall() + twentyTall + size * 0.2;
  }

  /** The second axis: hours under the clock, its title on the same line. */
  private void underAxis(ChartAxis axis, double edge) {
    double foot = twentyFoot();
    double row = foot + size * 1.15;
    double titleFrom = plot.getMaxX() - Fonts.width(axis.title(), plain);
    g.draw(new Line2D.Double(plot.getX(), foot, plot.getMaxX(), foot));
    ticks(axis, foot);
    labelled(axis, titleFrom - size * 0.6)
        .forEach(tick -> centred(tick.rows().get(0), px(tick.at()), row));
    text(axis.title(), titleFrom, row, plain);
    axis.rowNames().forEach(name -> text(name, edge, row, plain));
  }

  /** Strokes where a narrower stretch begins and ends. */
  private void breaks(Squeeze squeeze) {
    for (double at : new double[] {squeeze.from(), squeeze.to()}) {
      breakAt(px(at), plot.getMaxY());
      if (picture.under().isPresent()) {
        breakAt(px(at), twentyFoot());
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

  private double ribbonTall(ChartPicture.Ribbon ribbon) {
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
  private void ribbon(ChartPicture.Ribbon ribbon, double edge) {
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

  private double twentyTall(ChartPicture.TwentyDots twenty) {
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

  private void twenty(ChartPicture.TwentyDots twenty, double edge) {
    double foot = twentyFoot();
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
    double x = px(picture.x().clamp(at));
    g.draw(new Line2D.Double(x, plot.getMaxY(), x, plot.getY() - above));
  }

  private void bench(ChartPicture.Bench bench) {
    double from = px(picture.x().clamp(bench.from()));
    double to = px(picture.x().clamp(bench.to()));
    stroke(size * 0.35);
    g.draw(new Line2D.Double(from, plot.getY(), to, plot.getY()));
  }

  private void band(ChartPicture.Band band) {
    Path2D path = new Path2D.Double();
    for (int i = 0; i < 2 * band.x().length; i++) {
      int at = i < band.x().length ? i : 2 * band.x().length - 1 - i;
      double x = px(picture.x().clamp(band.x()[at]));
      double y = py(i < band.x().length ? band.high()[at] : band.low()[at]);
      if (i == 0) {
        path.moveTo(x, y);
      } else {
        path.lineTo(x, y);
      }
    }
    path.closePath();
    Shape before = g.getClip();
    g.clip(new Rectangle2D.Double(plot.getX(), plot.getY(), plot.getWidth() + 1, plot.getHeight()));
    area(path, band.fill(), 0.9);
    g.setClip(before);
  }

  private void area(Shape area, ChartPicture.Fill fill, double edgePt) {
    new AreaFill(g, size).fill(area, fill);
    stroke(edgePt);
    g.draw(area);
  }

  private void zone(ChartPicture.Zone zone) {
    double from = px(picture.x().clamp(zone.from()));
    double to = px(picture.x().clamp(zone.to()));
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
    Path2D path = new Path2D.Double();
    for (int i = 0; i < curve.x().length; i++) {
      double x = px(picture.x().clamp(curve.x()[i]));
      double y = py(curve.y()[i]);
      if (i == 0) {
        path.moveTo(x, y);
      } else {
        path.lineTo(x, y);
      }
    }
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
    return px(picture.x().clamp(lane.late())) + size * 0.6 + labelWidth(lane) <= width - edge();
  }

  private boolean fitsLeft(ChartPicture.Lane lane) {
    return px(picture.x().clamp(lane.early())) - size * 0.6 - labelWidth(lane) >= edge();
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
    double bar = px(picture.x().clamp(lane.early()));
    return fitsRight(lane) ? bar : bar - size * 0.6 - labelWidth(lane);
  }

  private double laneTo(ChartPicture.Lane lane) {
    double bar = px(picture.x().clamp(lane.late()));
    return fitsRight(lane) ? bar + size * 0.6 + labelWidth(lane) : bar;
  }

  /** First the lines down to the axis, then what stands on them, on white. */
  private void lanes() {
    double y = plot.getY() - size * 0.75;
    for (ChartPicture.Lane lane : picture.lanes()) {
      double x = px(picture.x().clamp(lane.likely()));
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
    double from = px(picture.x().clamp(lane.early()));
    double to = px(picture.x().clamp(lane.late()));
    double x = px(picture.x().clamp(lane.likely()));
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
    double from = px(picture.x().clamp(span.early()));
    double to = px(picture.x().clamp(span.late()));
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
    double x = px(picture.x().clamp(dot.x()));
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

  /** First those that were found to fit when the key was left out. */
  private void labels() {
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
      double from = px(picture.x().clamp(span.early())) - 1;
      double to = px(picture.x().clamp(span.late())) + 1;
      layout.avoid(new Rectangle2D.Double(from, py(span.y()) - size * 0.35, to - from, size * 0.7));
    }
    for (ChartPicture.Dot dot : picture.dots()) {
      double x = px(picture.x().clamp(dot.x()));
      double y = py(picture.y().clamp(dot.y()));
      layout.avoid(new Rectangle2D.Double(x - size * 0.5, y - size * 0.5, size, size));
    }
    return layout;
  }

  private void avoid(LabelLayout layout, double[] x, double[] y) {
    double[] sx = new double[x.length];
    double[] sy = new double[x.length];
    for (int i = 0; i < x.length; i++) {
      sx[i] = px(picture.x().clamp(x[i]));
      sy[i] = py(picture.y().clamp(y[i]));
    }
    layout.avoidPath(sx, sy, 1.5);
  }

  private void zoneLabel(ChartPicture.Zone zone, LabelLayout layout) {
    double from = px(picture.x().clamp(zone.from()));
    double to = px(picture.x().clamp(zone.to()));
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

  /** The whole label near its level, else without its span, else wherever there is room. */
  private void spanLabel(ChartPicture.Span span, LabelLayout layout) {
    int bracket = span.label().indexOf(" (");
    String brief = bracket < 0 ? span.label() : span.label().substring(0, bracket);
    Optional<Rectangle2D> whole = besideSpan(span, span.label(), layout, 4 * lineHeight);
    Optional<Rectangle2D> place =
        whole
            .or(() -> besideSpan(span, brief, layout, 4 * lineHeight))
            .or(() -> besideSpan(span, brief, layout, plot.getWidth()));
    place.ifPresent(p -> leader(span, p));
    put(whole.isPresent() ? span.label() : brief, plain, place);
  }

  private Optional<Rectangle2D> besideSpan(
      ChartPicture.Span span, String label, LabelLayout layout, double farthestPt) {
    double w = Fonts.width(label, plain) + 6;
    double y = py(span.y()) - lineHeight / 2;
    double right = px(picture.x().clamp(span.late())) + size * 0.5;
    double left = px(picture.x().clamp(span.early())) - size * 0.5 - w;
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
    boolean isRight = place.getCenterX() > px(picture.x().clamp(span.likely()));
    double end = px(picture.x().clamp(isRight ? span.late() : span.early()));
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

  private void strip(ChartPicture.Strip strip, double edge, double top, double tall) {
    double low = min(strip.y());
    double high = max(strip.y());
    double pad = Math.max(1, 0.15 * (high - low));
    double upper = top + lineHeight * 1.5;
    double lower = top + tall - size * 0.2;
    text(strip.title(), edge, top + lineHeight * 1.05, plain);
    Path2D path = new Path2D.Double();
    for (int i = 0; i < strip.x().length; i++) {
      double x = px(picture.x().clamp(strip.x()[i]));
      double f = (strip.y()[i] - low + pad) / (high - low + 2 * pad);
      double y = lower - f * (lower - upper);
      if (i == 0) {
        path.moveTo(x, y);
      } else {
        path.lineTo(x, y);
      }
    }
    stroke(0.5);
    g.setColor(GRID);
    g.draw(new Rectangle2D.Double(plot.getX(), upper, plot.getWidth(), lower - upper));
    g.setColor(Color.BLACK);
    stroke(1.3);
    g.draw(path);
    stripScale(high, upper + pad / (high - low + 2 * pad) * (lower - upper), strip.unit());
    if (high - low > 1) {
      stripScale(low, lower - pad / (high - low + 2 * pad) * (lower - upper), strip.unit());
    }
  }

  private void stripScale(double value, double y, String unit) {
    String label = Math.round(value) + unit;
    text(label, plot.getX() - size * 0.4 - Fonts.width(label, plain), y + size * 0.35, plain);
  }

  private double min(double[] values) {
    return java.util.Arrays.stream(values).min().orElseThrow();
  }

  private double max(double[] values) {
    return java.util.Arrays.stream(values).max().orElseThrow();
  }
}
