package doughtide.report.chart;

import doughtide.core.Internal;
import doughtide.core.quantity.InputException;
import doughtide.report.words.Words;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.function.DoubleFunction;

/** Several named lines over time, told apart by line style and by the name beside each. */
@Internal
public final class LinesChart {

  private static final int POINTS = 161;

  private static final List<ChartPicture.Pen> PENS =
      List.of(
          ChartPicture.Pen.SOLID,
          ChartPicture.Pen.DASHED,
          ChartPicture.Pen.DOTTED,
          ChartPicture.Pen.DASH_DOT,
          ChartPicture.Pen.LONG_DASH,
          ChartPicture.Pen.DASH_DOT_DOT);

  private LinesChart() {}

  /**
   * The chart of lines on one scale.
   *
   * @param unit title of the upright axis, with its unit
   * @param lines one to six
   * @throws InputException for more than six lines, which nobody can tell apart in black and white
   */
  public static PrintedChart of(String title, String unit, List<LineSeries> lines, Words words) {
    check(lines.size());
    double end = 0;
    double low = Double.POSITIVE_INFINITY;
    double high = Double.NEGATIVE_INFINITY;
    for (LineSeries line : lines) {
      end = Math.max(end, line.hours()[line.hours().length - 1]);
      low = Math.min(low, Arrays.stream(line.values()).min().orElse(0));
      high = Math.max(high, Arrays.stream(line.values()).max().orElse(0));
    }
    return of(title, unit, lines, scale(low, high, unit, words), end, words);
  }

  /**
   * Refuses more lines than can be told apart.
   *
   * @param count how many lines are wanted
   * @throws InputException for none or more than six
   */
  public static void check(int count) {
    if (count < 1 || count > PENS.size()) {
      throw new InputException(
          count
              + " lines in one chart: use 1 to "
              + PENS.size()
              + ", more cannot be told apart in black and white");
    }
  }

  public static PrintedChart of(
      String title, String unit, List<LineSeries> lines, ChartAxis up, double end, Words words) {
    List<ChartPicture.Curve> curves = new ArrayList<>();
    for (int i = 0; i < lines.size(); i++) {
      LineSeries line = lines.get(i);
      double[] x = Series.evenly(Math.min(end, line.hours()[line.hours().length - 1]), POINTS);
      curves.add(
          new ChartPicture.Curve(
              line.name(),
              x,
              Series.at(line.hours(), line.values(), x),
              PENS.get(i),
              lines.size() > 1));
    }
    return ChartPicture.on(
            new TimeAxes(0, end, Optional.empty(), words)
                .hours(words.say("chart.hoursAfterMixing")),
            up)
        .title(title)
        .curves(curves)
        .chart();
  }

  /** A scale with a handful of round marks that holds both values. */
  private static ChartAxis scale(double low, double high, String unit, Words words) {
    double from = low >= 0 && low < 0.6 * high ? 0 : low;
    double span = Math.max(high - from, 1e-9);
    double power = Math.pow(10, Math.floor(Math.log10(span / 5)));
    double step = ChartAxis.step(span, 6, power, 2 * power, 5 * power, 10 * power);
    int decimals = (int) Math.max(0, -Math.floor(Math.log10(step) + 1e-9));
    DoubleFunction<String> label = v -> words.number(v, decimals);
    return ChartAxis.every(
        step,
        Math.floor(from / step + 1e-9) * step,
        (Math.ceil(high / step - 1e-9) + 0.3) * step,
        unit,
        label);
  }
}
