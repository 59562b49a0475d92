package doughtide.report.chart;

import doughtide.core.Internal;
import doughtide.core.forecast.TimeWindow;
import doughtide.core.quantity.InputException;
import doughtide.report.words.TimeSpan;
import doughtide.report.words.Words;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.stream.Collectors;

/**
 * The jars of a class against their forecasts, over hours since mixing: a row a jar with its rise,
 * a bar and a ring for when that rise was forecast, a cross for when it was read.
 */
@Internal
public final class JarsChart {

  /** As many rows can be read on one sheet. */
  public static final int MOST_JARS = 30;

  private static final double ON_TIME_HOURS = 1.0 / 24;

  private final List<Jar> jars;
  private final Words words;

  private JarsChart(List<Jar> jars, Words words) {
    this.jars = jars;
    this.words = words;
  }

  /**
   * One jar.
   *
   * @param name as the file of its readings is called
   * @param risePercent its highest reading, per cent over its start
   * @param readHours when it was read, hours since mixing
   * @param forecast when that rise was forecast, hours since mixing
   */
  @Internal
  public record Jar(String name, double risePercent, double readHours, TimeWindow forecast) {

    /** How much sooner than likely it was there, hours; empty without a likely hour. */
    public OptionalDouble aheadHours() {
      return forecast.likely().isPresent()
          ? OptionalDouble.of(forecast.likely().getAsDouble() - readHours)
          : OptionalDouble.empty();
    }

    /** Whether it was read between early and late. */
    boolean isInside() {
      return readHours >= forecast.early().orElse(Double.POSITIVE_INFINITY)
          && readHours <= forecast.late().orElse(Double.POSITIVE_INFINITY);
    }

    double endHours() {
      return Math.max(readHours, forecast.late().orElse(forecast.early().orElse(0)));
    }
  }

  /**
   * The chart, the latest against their forecasts at the top.
   *
   * @param jars one to thirty
   * @throws InputException for more or none
   */
  public static DrawnChart of(List<Jar> jars, Words words) {
    if (jars.isEmpty() || jars.size() > MOST_JARS) {
      throw new InputException(
          jars.size()
              + " jars with a rise of 5 % or more: a chart shows 1 to "
              + MOST_JARS
              + ", put them into several folders and draw each");
    }
    List<Jar> sorted = new ArrayList<>(jars);
    sorted.sort(Comparator.comparingDouble(jar -> jar.aheadHours().orElse(99)));
    JarsChart chart = new JarsChart(sorted, words);
    return new DrawnChart(chart.picture(), chart.caption());
  }

  private PrintedChart picture() {
    double end = jars.stream().mapToDouble(Jar::endHours).max().orElseThrow() * 1.04;
    List<ChartTick> names = new ArrayList<>();
    List<ChartPicture.Span> windows = new ArrayList<>();
    List<ChartPicture.Dot> crosses = new ArrayList<>();
    for (int row = jars.size() - 1; row >= 0; row--) {
      Jar jar = jars.get(row);
      double y = -row;
      names.add(new ChartTick(y, jar.name() + " " + rise(jar)));
      TimeWindow at = jar.forecast();
      if (at.late().isPresent()) {
        windows.add(
            new ChartPicture.Span(
                at.early().orElseThrow(),
                at.likely().orElseThrow(),
                at.late().getAsDouble(),
                y,
                ""));
      }
      crosses.add(new ChartPicture.Dot(jar.readHours(), y));
    }
    return ChartPicture.on(
            new TimeAxes(0, end, Optional.empty(), words)
                .hours(words.say("chart.hoursAfterMixing")),
            new ChartAxis(0.2 - jars.size(), 0.8, names, "", List.of()))
        .title(words.say("jars.title"))
        .answer(List.of(answer()))
        .spans(windows)
        .dots(crosses)
        .notes(List.of(words.say("jars.key")))
        .chart();
  }

  private String rise(Jar jar) {
    return words.percent(Math.rint(jar.risePercent()), 0);
  }

  private String answer() {
    long inside = jars.stream().filter(Jar::isInside).count();
    String said =
        words.say(
            "jars.inside",
            Map.of("inside", words.number(inside, 0), "all", words.number(jars.size(), 0)));
    double[] ahead =
        jars.stream().flatMapToDouble(jar -> jar.aheadHours().stream()).sorted().toArray();
    if (ahead.length == 0) {
      return said;
    }
    double middle = (ahead[(ahead.length - 1) / 2] + ahead[ahead.length / 2]) / 2;
    String how = Math.abs(middle) < ON_TIME_HOURS ? "onTime" : middle > 0 ? "ahead" : "behind";
    String hours = words.hours(Math.abs(middle));
    return said + " " + words.say("jars." + how, Map.of("hours", hours));
  }

  private ChartCaption caption() {
    String rows = jars.stream().map(this::row).collect(Collectors.joining(" "));
    return new ChartCaption(words.say("jars.title"), answer() + " " + rows, words.language());
  }

  private String row(Jar jar) {
    String forecast =
        TimeSpan.of(jar.forecast()).map(words::hoursSpan).orElse(words.say("chart.notReached"));
    return words.say(
        "jars.row",
        Map.of(
            "name", jar.name(),
            "rise", rise(jar),
            "read", words.hours(jar.readHours()),
            "forecast", forecast));
  }
}
