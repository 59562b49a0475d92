package doughtide.report.chart;

import doughtide.core.Internal;
import doughtide.core.quantity.Hours;
import doughtide.core.quantity.Temperature;
import doughtide.report.words.ShapeWords;
import doughtide.report.words.TimeSpan;
import doughtide.report.words.Words;
import java.time.ZonedDateTime;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Stream;

/**
 * The chart of a rise forecast: how far the dough rises, when it is right, and what twenty doughs
 * would do.
 *
 * <pre>{@code
 * PrintedChart chart = RiseChart.of(data, Words.in(Language.ENGLISH));
 * byte[] pdf = ChartOutput.bytes(chart, ChartFormat.PDF, ChartSize.A5_LANDSCAPE,
 *     RiseChart.caption(data, words));
 * }</pre>
 */
@Internal
public final class RiseChart {

  private static final int POINTS = 161;
  private static final double HIGHEST_PERCENT = 400;
  private static final double LEAST_APART = 0.08; // of the height; closer marks lie on each other
  private static final double MARK_PERCENT = 50;

  private final RiseChartData data;
  private final Words words;
  private final RiseChartHours hours;

  private RiseChart(RiseChartData data, Words words) {
    this.data = data;
    this.words = words;
    this.hours = new RiseChartHours(data);
  }

  /** The chart, ready to be written or put on a page. */
  public static PrintedChart of(RiseChartData data, Words words) {
    RiseChart chart = new RiseChart(data, words);
    return chart
        .body()
        .title(data.title())
        .answer(chart.answer())
        .subtitle(chart.subtitle())
        .notes(chart.notes())
        .chart();
  }

  /**
   * The same chart without title and without warnings, for a page that says both in its own text,
   * where they may part onto the next side.
   */
  public static PrintedChart withoutHead(RiseChartData data, Words words) {
    RiseChart chart = new RiseChart(data, words);
    return chart.body().notes(List.of(chart.keyLine())).chart();
  }

  /** What the chart answers, for a page that leads with it; empty where no hour is known. */
  public static Optional<String> answer(RiseChartData data, Words words) {
    List<String> said = new RiseChart(data, words).answer();
    return said.isEmpty() ? Optional.empty() : Optional.of(String.join(" ", said));
  }

  /** Title and what the chart answers, in sentences. */
  public static ChartCaption caption(RiseChartData data, Words words) {
    RiseChart chart = new RiseChart(data, words);
    List<String> said = new ArrayList<>(chart.answer());
    said.addAll(chart.others());
    said.addAll(chart.moments().map(each -> words.capitalized(each.label()) + ".").toList());
    for (PassingPoint point : data.passing()) {
      said.add(words.capitalized(chart.label(point)) + ".");
    }
    said.addAll(chart.key());
    return new ChartCaption(data.title(), String.join(" ", said), words.language());
  }

  private ChartPicture.Builder body() {
    double[] x = Series.evenly(hours.bulkEnd(), POINTS);
    double[] early = Series.at(data.hours(), data.earlyPercent(), x);
    double[] likely = Series.at(data.hours(), data.likelyPercent(), x);
    double[] late = Series.at(data.hours(), data.latePercent(), x);
    double top = top(early, likely, late);
    double step = ChartAxis.step(top, 8, 25, 50, 100);
    ChartAxis up = ChartAxis.every(step, 0, top, words.say("chart.rise"), v -> words.percent(v, 0));
    TimeAxes axes = axes();
    ChartAxis elapsed = axes.hours(words.say("chart.hoursAfterMixing"));
    ChartPicture.Builder picture =
        ChartPicture.on(data.mixedAt().map(axes::clock).orElse(elapsed), up);
    data.mixedAt().ifPresent(zero -> picture.under(elapsed).uprights(midnights(axes, zero)));
    return picture
        .right(
            ChartAxis.every(
                step / 100,
                1,
                1 + top / 100,
                words.say("chart.height"),
                v -> "×" + words.number(v, step < 50 ? 2 : 1)))
        .bands(bands(x, early, late))
        .curves(curves(x, likely))
        .spans(spans(top))
        .zones(cold())
        .uprights(moments().toList())
        .marks(shapeMark())
        .ribbon(ribbon())
        .twenty(twenty())
        .strip(data.temperature().map(this::strip))
        .dots(
            data.readings().stream()
                .map(reading -> new ChartPicture.Dot(reading.hours(), reading.percent()))
                .toList());
  }

  private TimeAxes axes() {
    return new TimeAxes(0, hours.end(), hours.squeeze(), words);
  }

  /** The key of a chart, with the line where a day begins if there is one. */
  static List<String> withMidnight(String key, List<ChartPicture.Upright> midnights, Words words) {
    return List.of(midnights.isEmpty() ? key : key + " " + words.say("chart.keyMidnight"));
  }

  /** A line where a day begins. */
  static List<ChartPicture.Upright> midnights(TimeAxes axes, ZonedDateTime zero) {
    return axes.midnights(zero).stream()
        .map(at -> new ChartPicture.Upright(at, "", ChartPicture.Upright.Kind.MIDNIGHT))
        .toList();
  }

  private List<ChartPicture.Band> bands(double[] x, double[] early, double[] late) {
    List<ChartPicture.Band> bands = new ArrayList<>();
    bands.add(new ChartPicture.Band(words.say("chart.band"), x, late, early));
    data.loaf()
        .ifPresent(
            loaf ->
                bands.add(
                    new ChartPicture.Band(
                        words.say("chart.loaf") + " " + words.say("chart.band"),
                        loaf.hours(),
                        loaf.latePercent(),
                        loaf.earlyPercent())));
    return bands;
  }

  private List<ChartPicture.Curve> curves(double[] x, double[] likely) {
    List<ChartPicture.Curve> curves = new ArrayList<>();
    curves.add(
        new ChartPicture.Curve(words.say("chart.likely"), x, likely, ChartPicture.Pen.BOLD, false));
    data.loaf()
        .ifPresent(
            loaf -> {
              curves.add(
                  named("chart.loaf", loaf.hours(), loaf.likelyPercent(), ChartPicture.Pen.DASHED));
              curves.add(target(loaf));
            });
    data.today()
        .ifPresent(
            today ->
                curves.add(
                    named(
                        "chart.expected",
                        x,
                        Series.at(today.hours(), today.expectedPercent(), x),
                        data.loaf().isPresent()
                            ? ChartPicture.Pen.DASH_DOT
                            : ChartPicture.Pen.DASHED)));
    return curves;
  }

  private ChartPicture.Curve named(String key, double[] x, double[] y, ChartPicture.Pen pen) {
    return new ChartPicture.Curve(words.say(key), x, y, pen, true);
  }

  private ChartPicture.Curve target(RiseChartData.LoafSeries loaf) {
    double[] x = {loaf.hours()[0], loaf.ovenHours()};
    double[] y = {loaf.targetPercent(), loaf.targetPercent()};
    String name =
        words.say(
            "chart.target", Map.of("rise", words.percent(Math.rint(loaf.targetPercent()), 0)));
    return new ChartPicture.Curve(name, x, y, ChartPicture.Pen.DOTTED, true);
  }

  private List<ChartPicture.Zone> cold() {
    return data.cold().stream()
        .map(c -> new ChartPicture.Zone(c.fromHours(), c.toHours(), words.say("chart.cold")))
        .toList();
  }

  private List<ChartPicture.Mark> shapeMark() {
    return data.shape().stream()
        .map(
            s ->
                new ChartPicture.Mark(
                    s.likelyHours(),
                    Series.at(data.hours(), data.likelyPercent(), s.likelyHours()),
                    words.say(
                        "chart.shapeAt",
                        Map.of(
                            "time", clockOrHours(s.likelyHours()),
                            "rise", words.percent(Math.rint(s.risePercent()), 0)))))
        .toList();
  }

  /** What is done when, with its likely time. */
  private Stream<ChartPicture.Upright> moments() {
    Stream<ChartPicture.Upright> cold =
        data.cold().stream().map(c -> moment("chart.intoCold", c.fromHours()));
    Stream<ChartPicture.Upright> oven =
        data.loaf().stream().map(loaf -> moment("chart.oven", loaf.ovenHours()));
    Stream<ChartPicture.Upright> now =
        data.today().stream().map(today -> moment("chart.now", today.now()));
    Stream<ChartPicture.Upright> look =
        data.today().stream()
            .flatMap(today -> today.nextLook().stream().boxed())
            .map(at -> moment("chart.look", at));
    return Stream.of(cold, oven, now, look).flatMap(each -> each);
  }

  private ChartPicture.Upright moment(String key, double at) {
    return new ChartPicture.Upright(
        at, words.say(key, Map.of("time", clockOrHours(at))), ChartPicture.Upright.Kind.MOMENT);
  }

  private Optional<ChartPicture.Ribbon> ribbon() {
    return data.stages()
        .map(
            stages ->
                new ChartPicture.Ribbon(
                    stages.forShaping() ? words.say("chart.rowShape") : "",
                    stages.forShaping() ? toShape(stages) : toRise(stages)));
  }

  private List<ChartPicture.Stage> toShape(RiseChartData.Stages stages) {
    List<ChartPicture.Stage> found = new ArrayList<>();
    double end = hours.ribbonEnd();
    double past = stages.pastBest().orElse(end);
    double until = stages.rightUntil().orElse(past);
    stage(found, 0, stages.rightFrom(), "chart.tooEarly", ChartPicture.Fill.WHITE);
    stage(found, stages.rightFrom(), until, "chart.right", ChartPicture.Fill.BLACK);
    stage(found, until, past, "chart.late", ChartPicture.Fill.GREY);
    stage(found, past, end, "chart.pastBest", ChartPicture.Fill.WHITE);
    return found;
  }

  private List<ChartPicture.Stage> toRise(RiseChartData.Stages stages) {
    List<ChartPicture.Stage> found = new ArrayList<>();
    double end = hours.ribbonEnd();
    double past = stages.pastBest().orElse(end);
    Map<String, String> rise = Map.of("rise", words.percent(stages.markPercent(), 0));
    add(found, 0, stages.rightFrom(), words.say("chart.below", rise), ChartPicture.Fill.WHITE);
    add(found, stages.rightFrom(), past, words.say("chart.from", rise), ChartPicture.Fill.GREY);
    stage(found, past, end, "chart.pastBest", ChartPicture.Fill.WHITE);
    return found;
  }

  private void stage(
      List<ChartPicture.Stage> to, double from, double until, String key, ChartPicture.Fill fill) {
    add(to, from, until, words.say(key), fill);
  }

  /** Nothing for a stage that has no time. */
  private void add(
      List<ChartPicture.Stage> to,
      double from,
      double until,
      String label,
      ChartPicture.Fill fill) {
    double last = Math.min(until, hours.end());
    if (last > from) {
      to.add(new ChartPicture.Stage(from, last, label, fill));
    }
  }

  private Optional<ChartPicture.TwentyDots> twenty() {
    return data.twenty()
        .map(
            twenty -> {
              double[] shown =
                  Arrays.stream(twenty.hours()).filter(at -> at <= hours.end()).toArray();
              return new ChartPicture.TwentyDots(
                  words.say("chart.rowTwenty"), shown, RiseChartData.Twenty.DOTS - shown.length);
            });
  }

  private ChartPicture.Strip strip(RiseChartData.TemperatureSeries t) {
    double[] whole = Series.evenly(hours.end(), POINTS);
    return new ChartPicture.Strip(
        words.say("chart.doughTemperature") + " " + degrees(t),
        whole,
        inDegrees(Series.at(t.hours(), t.celsius(), whole)),
        words.degrees() == Words.Degrees.CELSIUS ? "\u00a0°C" : "\u00a0°F");
  }

  private double[] inDegrees(double[] celsius) {
    return words.degrees() == Words.Degrees.CELSIUS
        ? celsius
        : Arrays.stream(celsius).map(each -> Temperature.ofCelsius(each).fahrenheit()).toArray();
  }

  /** Lowest to highest on both scales. */
  private String degrees(RiseChartData.TemperatureSeries series) {
    double low = Math.round(Arrays.stream(series.celsius()).min().orElseThrow());
    double high = Math.round(Arrays.stream(series.celsius()).max().orElseThrow());
    return low == high
        ? words.temperature(low)
        : words.temperature(low) + " – " + words.temperature(high);
  }

  private double top(double[] early, double[] likely, double[] late) {
    double highest = 0;
    for (double[] curve : List.of(early, likely, late)) {
      highest = Math.max(highest, Arrays.stream(curve).max().orElse(0));
    }
    highest =
        Math.max(
            highest,
            data.loaf()
                .map(loaf -> Arrays.stream(loaf.earlyPercent()).max().orElse(0))
                .orElse(0.0));
    for (RiseChartData.JarReading reading : data.readings()) {
      highest = Math.max(highest, reading.percent());
    }
    double wanted = Math.min(HIGHEST_PERCENT, Math.max(50, highest * 1.06));
    return Math.ceil(wanted / 12.5) * 12.5;
  }

  /**
   * Where a loaf is asked for, its shape point is the answer and the marks would hide it. Of marks
   * that lie on each other the one stays that the sentence, the ribbon and the dots tell of.
   */
  private List<ChartPicture.Span> spans(double top) {
    List<ChartPicture.Span> spans = new ArrayList<>();
    double before = Double.NEGATIVE_INFINITY;
    for (PassingPoint point : data.passing()) {
      boolean isApart =
          point.percent() - before >= LEAST_APART * top && !isOnAskedMark(point, LEAST_APART * top);
      if (data.shape().isEmpty()
          && isApart
          && point.percent() <= top
          && point.earlyHours().orElse(Double.POSITIVE_INFINITY) < hours.end()) {
        double early = point.earlyHours().orElseThrow();
        double open = 2 * hours.end();
        spans.add(
            new ChartPicture.Span(
                early,
                point.likelyHours().orElse(open),
                point.lateHours().orElse(open),
                point.percent(),
                label(point)));
        before = point.percent();
      }
    }
    return spans;
  }

  private boolean isOnAskedMark(PassingPoint point, double apart) {
    return point.percent() != MARK_PERCENT
        && Math.abs(point.percent() - MARK_PERCENT) < apart
        && data.passing().stream().anyMatch(each -> each.percent() == MARK_PERCENT);
  }

  private String label(PassingPoint point) {
    String percent = words.percent(point.percent(), 0) + ": ";
    if (point.earlyHours().isEmpty()) {
      return percent + words.say("chart.notReached");
    }
    double early = point.earlyHours().getAsDouble();
    if (isPassed(point)) {
      String at = clockOrHours(point.likelyHours().orElseThrow());
      return percent + words.say("chart.passed", Map.of("time", at));
    }
    if (point.lateHours().isEmpty()) {
      return percent + words.say("chart.notBefore", Map.of("time", clockOrHours(early)));
    }
    String range = when(early, point.lateHours().getAsDouble(), data.mixedAt(), words);
    return percent + clockOrHours(point.likelyHours().orElseThrow()) + " (" + range + ")";
  }

  /** Whether the dough in hand is there already. */
  private boolean isPassed(PassingPoint point) {
    return data.today().isPresent()
        && point.likelyHours().isPresent()
        && data.readings().stream().anyMatch(read -> read.percent() >= point.percent());
  }

  /** The answer before anything else. */
  private List<String> answer() {
    if (data.shape().isPresent()) {
      RiseChartData.ShapePoint shape = data.shape().get();
      return List.of(
          new ShapeWords(words).answer(moment(shape.likelyHours()), shape.risePercent()));
    }
    if (data.whyNoShape().isPresent()) {
      return List.of(data.whyNoShape().get());
    }
    List<String> said = new ArrayList<>();
    asked().map(this::risen).ifPresent(said::add);
    data.today().map(this::pace).ifPresent(said::add);
    return said;
  }

  /** The first mark that is still to come, half as much again before the others. */
  private Optional<PassingPoint> asked() {
    List<PassingPoint> ahead =
        data.passing().stream()
            .filter(each -> each.likelyHours().isPresent() && !isPassed(each))
            .toList();
    return ahead.stream()
        .filter(each -> each.percent() == MARK_PERCENT)
        .findFirst()
        .or(() -> ahead.stream().findFirst());
  }

  private String risen(PassingPoint point) {
    String risen =
        words.say(
            "chart.risen",
            Map.of(
                "rise", words.percent(point.percent(), 0),
                "time", moment(point.likelyHours().orElseThrow())));
    return data.pastBest().flatMap(past -> past.likelyHours().stream().boxed().findFirst()).stream()
        .map(at -> risen + " " + words.say("chart.pastBestFrom", Map.of("time", moment(at))))
        .findFirst()
        .orElse(risen);
  }

  private String pace(RiseChartData.Today today) {
    if (today.aheadHours().isEmpty()) {
      return words.say("chart.paceUnknown");
    }
    double ahead = today.aheadHours().getAsDouble();
    String hours = words.hours(Math.abs(ahead));
    String key =
        Math.abs(ahead) < 0.05 ? "chart.onTime" : ahead > 0 ? "chart.ahead" : "chart.behind";
    return words.say(key, Map.of("hours", hours));
  }

  /** What other starters would do. */
  private List<String> others() {
    return data.shape().stream()
        .map(
            shape ->
                shape.lateHours().isPresent()
                    ? new ShapeWords(words)
                        .others(moment(shape.earlyHours()), moment(shape.lateHours().getAsDouble()))
                    : words.say("chart.othersOpen", Map.of("early", moment(shape.earlyHours()))))
        .toList();
  }

  private List<String> subtitle() {
    return Stream.concat(others().stream(), data.subtitle().stream()).toList();
  }

  /** A moment in a sentence: with its day where it is another one than that of mixing. */
  private String moment(double at) {
    return data.mixedAt()
        .map(mixed -> clockAt(Hours.after(mixed, at), mixed, words))
        .orElseGet(() -> words.say("sheet.afterMixing", Map.of("hours", words.hours(at))));
  }

  private String clockOrHours(double at) {
    return at(at, data.mixedAt(), words);
  }

  /** A clock time, or the hours where nobody knows the clock. */
  static String at(double hours, Optional<ZonedDateTime> zero, Words words) {
    return zero.map(z -> words.clock(Hours.after(z, hours))).orElseGet(() -> words.hours(hours));
  }

  private List<String> notes() {
    List<String> notes = new ArrayList<>();
    notes.add(keyLine());
    notes.addAll(data.warnings());
    return notes;
  }

  private String keyLine() {
    return String.join(" ", key());
  }

  /** Every symbol that stands in the picture and has no name beside it. */
  private List<String> key() {
    List<String> key = new ArrayList<>();
    key.add(words.say("chart.key"));
    if (data.shape().isPresent()) {
      key.add(words.say("chart.keyShape"));
    } else if (!data.passing().isEmpty()) {
      key.add(words.say("chart.keyMarks"));
    }
    data.cold().ifPresent(cold -> key.add(words.say("chart.keyCold")));
    data.twenty()
        .ifPresent(
            twenty ->
                key.add(
                    data.shape().isPresent()
                        ? words.say("chart.keyTwenty")
                        : words.say(
                            "chart.keyTwentyRisen",
                            Map.of("rise", words.percent(MARK_PERCENT, 0)))));
    twenty()
        .filter(each -> each.laterOrNever() > 0)
        .ifPresent(each -> key.add(words.say("chart.keyLater")));
    if (!data.readings().isEmpty()) {
      key.add(words.say("chart.readings"));
    }
    data.mixedAt()
        .filter(zero -> !axes().midnights(zero).isEmpty())
        .ifPresent(zero -> key.add(words.say("chart.keyMidnight")));
    hours
        .squeeze()
        .ifPresent(
            night ->
                key.add(
                    words.say(
                        "chart.squeezed",
                        Map.of(
                            "from", clockOrHours(night.from()), "to", clockOrHours(night.to())))));
    return key;
  }

  /** The likely clock time, then the span; the span alone where no hour is likelier. */
  public static String clockTimes(TimeSpan span, ZonedDateTime mixedAt, Words words) {
    String range = clockSpan(span, mixedAt, words);
    return span.likelyHours().isEmpty()
        ? range
        : clockAt(Hours.after(mixedAt, span.likelyHours().getAsDouble()), mixedAt, words)
            + " ("
            + range
            + ")";
  }

  /** A clock time, with its day where it is another one than that of hour 0. */
  static String clockAt(ZonedDateTime time, ZonedDateTime mixedAt, Words words) {
    return time.toLocalDate().equals(mixedAt.toLocalDate())
        ? words.clock(time)
        : words.dayAndClock(time);
  }

  /** Clock times of a span, with the day where it is not the day of mixing. */
  public static String clockSpan(TimeSpan span, ZonedDateTime mixedAt, Words words) {
    ZonedDateTime early = Hours.after(mixedAt, span.earlyHours());
    String from = clockAt(early, mixedAt, words);
    if (!span.isClosed()) {
      return words.say("hours.from", Map.of("hours", from));
    }
    ZonedDateTime late = Hours.after(mixedAt, span.lateHours());
    boolean isOneNight = span.lateHours() - span.earlyHours() < 12;
    String to = isOneNight ? words.clock(late) : words.dayAndClock(late);
    return words.clock(early).equals(words.clock(late)) && isOneNight ? from : from + "–" + to;
  }

  /** A chart for a row of them: likely line, band and one mark on given scales. */
  public static PrintedChart small(
      String title,
      RiseChartData data,
      Optional<TimeSpan> mark,
      double markPercent,
      double end,
      ChartAxis up,
      Words words) {
    double[] x = Series.evenly(Math.min(end, data.lastHour()), POINTS);
    double[] likely = Series.at(data.hours(), data.likelyPercent(), x);
    double step = ChartAxis.step(end, 4, 0.5, 1, 2, 3, 4, 6, 12, 24, 48);
    ChartAxis across =
        ChartAxis.every(step, 0, end, "", v -> words.number(v, step < 1 ? 1 : 0) + "\u00a0h");
    return ChartPicture.on(across, up)
        .title(title)
        .bands(
            List.of(
                new ChartPicture.Band(
                    words.say("chart.band"),
                    x,
                    Series.at(data.hours(), data.latePercent(), x),
                    Series.at(data.hours(), data.earlyPercent(), x))))
        .curves(
            List.of(
                new ChartPicture.Curve(
                    words.say("chart.likely"), x, likely, ChartPicture.Pen.BOLD, false)))
        .spans(
            mark.stream()
                .map(
                    m ->
                        new ChartPicture.Span(
                            m.earlyHours(),
                            m.likelyHours().orElse(2 * end),
                            m.lateHours(),
                            markPercent,
                            ""))
                .toList())
        .chart();
  }

  static String when(double early, double late, Optional<ZonedDateTime> mixedAt, Words words) {
    return mixedAt
        .map(m -> clockTimes(early, late, m, words))
        .orElseGet(() -> words.hoursSpan(early, late));
  }

  /** With days as soon as a clock time alone could mean two of them. */
  private static String clockTimes(double early, double late, ZonedDateTime mixedAt, Words words) {
    ZonedDateTime from = Hours.after(mixedAt, early);
    ZonedDateTime to = Hours.after(mixedAt, late);
    if (late < 24 && late - early < 12) {
      return words.clock(from) + "–" + words.clock(to);
    }
    boolean isOneDay = from.toLocalDate().equals(to.toLocalDate());
    return words.dayAndClock(from) + "–" + (isOneDay ? words.clock(to) : words.dayAndClock(to));
  }
}
