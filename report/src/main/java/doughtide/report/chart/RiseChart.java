package doughtide.report.chart;

import doughtide.core.quantity.Hours;
import doughtide.core.quantity.Temperature;
import doughtide.report.words.TimeSpan;
import doughtide.report.words.Words;
import java.time.ZonedDateTime;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/**
 * The chart of a rise forecast.
 *
 * <pre>{@code
 * PrintedChart chart = RiseChart.of(data, Words.in(Language.ENGLISH));
 * byte[] pdf = ChartOutput.bytes(chart, ChartFormat.PDF, ChartSize.A5_LANDSCAPE,
 *     RiseChart.caption(data, words));
 * }</pre>
 */
public final class RiseChart {

  private static final int POINTS = 161;
  private static final double HIGHEST_PERCENT = 400;

  private RiseChart() {}

  /** The chart, ready to be written or put on a page. */
  public static PrintedChart of(RiseChartData data, Words words) {
    double end = end(data);
    double[] x = Series.evenly(bulkEnd(data, end), POINTS);
    double[] whole = Series.evenly(end, POINTS);
    double[] early = Series.at(data.hours(), data.earlyPercent(), x);
    double[] likely = Series.at(data.hours(), data.likelyPercent(), x);
    double[] late = Series.at(data.hours(), data.latePercent(), x);
    double top = top(data, early, likely, late);
    double step = ChartAxis.step(top, 8, 25, 50, 100);
    ChartPicture picture =
        new ChartPicture(
            data.title(),
            data.subtitle(),
            hourAxis(end, data.mixedAt(), words),
            ChartAxis.every(step, 0, top, words.say("chart.rise"), v -> words.percent(v, 0)),
            Optional.of(
                ChartAxis.every(
                    step / 100,
                    1,
                    1 + top / 100,
                    words.say("chart.height"),
                    v -> "×" + words.number(v, step < 50 ? 2 : 1))),
            List.of(new ChartPicture.Band(words.say("chart.band"), x, late, early)),
            curves(data, x, likely, words),
            spans(data, end, top, words),
            data.cold().stream()
                .map(
                    c -> new ChartPicture.Zone(c.fromHours(), c.toHours(), words.say("chart.cold")))
                .toList(),
            lanes(data, words),
            data.temperature()
                .map(
                    t ->
                        new ChartPicture.Strip(
                            words.say("chart.doughTemperature") + " " + degrees(t, words),
                            whole,
                            inDegrees(Series.at(t.hours(), t.celsius(), whole), words),
                            words.degrees() == Words.Degrees.CELSIUS ? "\u00a0°C" : "\u00a0°F")),
            notes(data, words),
            data.readings().stream()
                .map(reading -> new ChartPicture.Dot(reading.hours(), reading.percent()))
                .toList());
    return new PrintedChart(picture);
  }

  /** Where a loaf is shown, the bulk ends with the window for shaping. */
  private static double bulkEnd(RiseChartData data, double end) {
    return data.loaf().isEmpty()
        ? end
        : Math.min(end, data.shape().map(RiseChartData.ShapePoint::lateHours).orElse(end));
  }

  /** Whether a mark belongs to the bulk fermentation that is shown. */
  private static boolean isShown(PassingPoint point, RiseChartData data) {
    double last =
        data.loaf().isEmpty()
            ? Double.POSITIVE_INFINITY
            : data.shape()
                .map(RiseChartData.ShapePoint::likelyHours)
                .orElse(Double.POSITIVE_INFINITY);
    return point.likelyHours().orElse(0) <= last;
  }

  private static List<ChartPicture.Curve> curves(
      RiseChartData data, double[] x, double[] likely, Words words) {
    List<ChartPicture.Curve> curves = new ArrayList<>();
    curves.add(
        new ChartPicture.Curve(words.say("chart.likely"), x, likely, ChartPicture.Pen.BOLD, false));
    data.loaf()
        .ifPresent(
            loaf ->
                curves.add(
                    new ChartPicture.Curve(
                        words.say("chart.loaf"),
                        loaf.hours(),
                        loaf.percent(),
                        ChartPicture.Pen.DASHED,
                        true)));
    return curves;
  }

  /** Lowest to highest on both scales. */
  private static double[] inDegrees(double[] celsius, Words words) {
    return words.degrees() == Words.Degrees.CELSIUS
        ? celsius
        : Arrays.stream(celsius).map(each -> Temperature.ofCelsius(each).fahrenheit()).toArray();
  }

  private static String degrees(RiseChartData.TemperatureSeries series, Words words) {
    double low = Math.round(Arrays.stream(series.celsius()).min().orElseThrow());
    double high = Math.round(Arrays.stream(series.celsius()).max().orElseThrow());
    return low == high
        ? words.temperature(low)
        : words.temperature(low) + " – " + words.temperature(high);
  }

  /** The same chart without title, for a page that has said it already. */
  public static PrintedChart withoutHead(RiseChartData data, Words words) {
    return of(
        new RiseChartData(
            "",
            List.of(),
            data.hours(),
            data.earlyPercent(),
            data.likelyPercent(),
            data.latePercent(),
            data.passing(),
            data.mixedAt(),
            data.temperature(),
            data.shape(),
            data.cold(),
            data.loaf(),
            data.warnings(),
            data.readings()),
        words);
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

  private static String clockAt(ZonedDateTime time, ZonedDateTime mixedAt, Words words) {
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

  /** Title and a description in a sentence. */
  public static ChartCaption caption(RiseChartData data, Words words) {
    StringBuilder description = new StringBuilder(words.say("chart.key"));
    for (PassingPoint point : data.passing()) {
      description.append(' ').append(label(point, Optional.empty(), words)).append('.');
    }
    return new ChartCaption(data.title(), description.toString(), words.language());
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
    double[] x = Series.evenly(Math.min(end, data.hours()[data.hours().length - 1]), POINTS);
    double[] likely = Series.at(data.hours(), data.likelyPercent(), x);
    List<ChartPicture.Span> spans =
        mark.stream()
            .map(
                m -> new ChartPicture.Span(m.earlyHours(), 2 * end, m.lateHours(), markPercent, ""))
            .toList();
    double step = ChartAxis.step(end, 4, 0.5, 1, 2, 3, 4, 6, 12, 24, 48);
    ChartPicture picture =
        new ChartPicture(
            title,
            List.of(),
            ChartAxis.every(step, 0, end, "", v -> words.number(v, step < 1 ? 1 : 0) + "\u00a0h"),
            up,
            Optional.empty(),
            List.of(
                new ChartPicture.Band(
                    words.say("chart.band"),
                    x,
                    Series.at(data.hours(), data.latePercent(), x),
                    Series.at(data.hours(), data.earlyPercent(), x))),
            List.of(
                new ChartPicture.Curve(
                    words.say("chart.likely"), x, likely, ChartPicture.Pen.BOLD, false)),
            spans,
            List.of(),
            List.of(),
            Optional.empty(),
            List.of());
    return new PrintedChart(picture);
  }

  /** Ends soon after the last thing worth showing. */
  private static double end(RiseChartData data) {
    double shown = 0;
    for (PassingPoint point : data.passing()) {
      if (!isShown(point, data)) {
        continue;
      }
      shown =
          Math.max(
              shown,
              point.lateHours().orElse(point.likelyHours().orElse(point.earlyHours().orElse(0))));
    }
    shown = Math.max(shown, data.shape().map(RiseChartData.ShapePoint::lateHours).orElse(0.0));
    shown = Math.max(shown, data.cold().map(RiseChartData.ColdStretch::toHours).orElse(0.0));
    shown =
        Math.max(
            shown,
            data.readings().stream().mapToDouble(RiseChartData.JarReading::hours).max().orElse(0));
    shown =
        Math.max(shown, data.loaf().map(loaf -> loaf.hours()[loaf.hours().length - 1]).orElse(0.0));
    double last = data.hours()[data.hours().length - 1];
    double wanted = shown > 0 ? shown * 1.06 : last;
    double step = hourStep(wanted);
    double quarter = step / 4;
    return Math.max(
        quarter * 4, Math.ceil(Math.min(wanted, Math.max(last, shown)) / quarter) * quarter);
  }

  private static double hourStep(double hours) {
    return ChartAxis.step(hours, 10, 0.5, 1, 2, 3, 4, 6, 12, 24, 48);
  }

  private static double top(RiseChartData data, double[] early, double[] likely, double[] late) {
    double highest = 0;
    for (double[] curve : List.of(early, likely, late)) {
      highest = Math.max(highest, Arrays.stream(curve).max().orElse(0));
    }
    highest =
        Math.max(
            highest,
            data.loaf().map(loaf -> Arrays.stream(loaf.percent()).max().orElse(0)).orElse(0.0));
    for (RiseChartData.JarReading reading : data.readings()) {
      highest = Math.max(highest, reading.percent());
    }
    for (PassingPoint point : data.passing()) {
      if (point.earlyHours().isPresent() && isShown(point, data)) {
        highest = Math.max(highest, point.percent());
      }
    }
    double wanted = Math.min(HIGHEST_PERCENT, Math.max(50, highest * 1.06));
    return Math.ceil(wanted / 12.5) * 12.5;
  }

  static ChartAxis hourAxis(double end, Optional<ZonedDateTime> mixedAt, Words words) {
    return hourAxis(end, mixedAt, words, "chart.hoursAfterMixing");
  }

  /** Hours, and clock times below them where the start is known. */
  static ChartAxis hourAxis(
      double end, Optional<ZonedDateTime> mixedAt, Words words, String titleKey) {
    double step = hourStep(end);
    List<ChartTick> ticks = new ArrayList<>();
    Optional<ZonedDateTime> before = Optional.empty();
    boolean severalDays =
        mixedAt.map(m -> !m.toLocalDate().equals(Hours.after(m, end).toLocalDate())).orElse(false);
    for (int i = 0; i * step <= end + 1e-9; i++) {
      double hour = i * step;
      List<String> rows = new ArrayList<>();
      rows.add(words.number(hour, step < 1 ? 1 : 0));
      Optional<ZonedDateTime> now = mixedAt.map(m -> Hours.after(m, hour));
      now.map(words::clock).ifPresent(rows::add);
      if (severalDays) {
        ZonedDateTime time = now.orElseThrow();
        boolean isNewDay =
            before.map(b -> !b.toLocalDate().equals(time.toLocalDate())).orElse(true);
        rows.add(isNewDay ? words.day(time) : "");
        before = now;
      }
      ticks.add(new ChartTick(hour, rows));
    }
    List<String> names =
        mixedAt.isPresent()
            ? List.of(words.say("chart.rowHours"), words.say("chart.rowClock"))
            : List.of(words.say("chart.rowHours"));
    return new ChartAxis(0, end, ticks, words.say(titleKey), names);
  }

  private static List<ChartPicture.Lane> lanes(RiseChartData data, Words words) {
    return data.shape().stream()
        .map(
            s ->
                new ChartPicture.Lane(
                    s.earlyHours(),
                    s.likelyHours(),
                    s.lateHours(),
                    words.say(
                            "chart.shapeAbout",
                            Map.of("time", clockOrHours(s.likelyHours(), data.mixedAt(), words)))
                        + riseToWatchFor(s, data, words)))
        .toList();
  }

  private static String riseToWatchFor(
      RiseChartData.ShapePoint shape, RiseChartData data, Words words) {
    return data.loaf().isEmpty()
        ? ""
        : ", " + words.say("chart.rise") + " " + words.percent(shape.risePercent(), 0);
  }

  private static List<ChartPicture.Span> spans(
      RiseChartData data, double end, double top, Words words) {
    List<ChartPicture.Span> spans = new ArrayList<>();
    for (PassingPoint point : data.passing()) {
      if (point.earlyHours().isPresent() && point.percent() <= top && isShown(point, data)) {
        double early = point.earlyHours().getAsDouble();
        double likely = point.likelyHours().orElse(2 * end);
        spans.add(
            new ChartPicture.Span(
                early,
                likely,
                point.lateHours().orElse(2 * end),
                point.percent(),
                label(point, data.mixedAt(), words)));
      }
    }
    return spans;
  }

  private static String label(PassingPoint point, Optional<ZonedDateTime> mixedAt, Words words) {
    String percent = words.percent(point.percent(), 0);
    if (point.earlyHours().isEmpty()) {
      return percent + ": " + words.say("chart.notReached");
    }
    double early = point.earlyHours().getAsDouble();
    if (point.lateHours().isEmpty()) {
      return percent
          + ": "
          + words.say("chart.notBefore", Map.of("time", clockOrHours(early, mixedAt, words)));
    }
    String range = when(early, point.lateHours().getAsDouble(), mixedAt, words);
    return percent
        + ": "
        + clockOrHours(point.likelyHours().orElseThrow(), mixedAt, words)
        + " ("
        + range
        + ")";
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

  private static String clockOrHours(double hours, Optional<ZonedDateTime> mixedAt, Words words) {
    return mixedAt.map(m -> words.clock(Hours.after(m, hours))).orElseGet(() -> words.hours(hours));
  }

  private static List<String> notes(RiseChartData data, Words words) {
    List<String> notes = new ArrayList<>();
    notes.add(
        words.say("chart.key")
            + (data.readings().isEmpty() ? "" : " " + words.say("chart.readings")));
    notes.addAll(data.warnings());
    return notes;
  }
}
