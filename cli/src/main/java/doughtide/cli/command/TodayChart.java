package doughtide.cli.command;

import doughtide.cli.args.ClockTimes;
import doughtide.cli.file.OutputFile;
import doughtide.cli.hand.DoughInHand;
import doughtide.cli.options.OutputOptions;
import doughtide.core.forecast.LikelyLine;
import doughtide.core.forecast.RiseForecast;
import doughtide.core.learning.Bake;
import doughtide.core.learning.Reading;
import doughtide.core.quantity.Rise;
import doughtide.report.chart.RiseChartData;
import doughtide.report.handout.FormulaWords;
import doughtide.report.words.Words;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.SortedSet;

/** The dough in hand as a chart in a file: as forecast, as read, and as it looks now. */
public final class TodayChart {

  private static final Rise HALF = Rise.ofPercent(50);

  private final DoughInHand dough;
  private final Bake bake;
  private final Optional<ClockTimes> clock;
  private final RiseForecast forecast;

  private TodayChart(DoughInHand dough) {
    this.dough = dough;
    this.bake = dough.file().bake();
    this.clock = dough.clock();
    this.forecast = dough.forecast();
  }

  /** The chart of a dough in hand. */
  public static TodayChart of(DoughInHand dough) {
    return new TodayChart(dough);
  }

  /** Whether there are hours to draw. */
  public boolean isPossible() {
    return forecast.isPossible();
  }

  /** Writes the file. */
  public void write(
      Optional<String> title,
      SortedSet<Rise> rises,
      Words words,
      OutputFile file,
      OutputOptions.Paper paper) {
    RiseChartData data =
        RiseChartData.of(forecast, rises.stream().mapToDouble(Rise::percent).toArray())
            .title(title.orElseGet(() -> words.say("chart.title.today")))
            .subtitle(List.of(new FormulaWords(words).formula(bake.formula())))
            .mixedAt(clock.map(ClockTimes::start))
            .readings(readings())
            .today(today(rises))
            .build();
    RiseChartFile.write(data, words, file, paper);
  }

  private RiseChartData.Today today(SortedSet<Rise> rises) {
    LikelyLine expected = LikelyLine.of(dough.first());
    double[] hours = expected.hours();
    double[] percent = new double[hours.length];
    for (int i = 0; i < hours.length; i++) {
      percent[i] = expected.percentAt(hours[i]);
    }
    Rise asked = asked(rises);
    OptionalDouble first = dough.first().hoursToRise(asked).likely();
    OptionalDouble likely = forecast.hoursToRise(asked).likely();
    return new RiseChartData.Today(
        hours,
        percent,
        nowHours(),
        dough.live().nextLookHours(asked),
        first.isPresent() && likely.isPresent()
            ? OptionalDouble.of(first.getAsDouble() - likely.getAsDouble())
            : OptionalDouble.empty());
  }

  /** Half as much again, or the next rise above what has been read. */
  private Rise asked(SortedSet<Rise> rises) {
    double highest =
        readings().stream().mapToDouble(RiseChartData.JarReading::percent).max().orElse(0);
    return HALF.percent() > highest
        ? HALF
        : rises.stream().filter(each -> each.percent() > highest).findFirst().orElse(HALF);
  }

  /** Now, as long as the dough may still rise; else the hour of the last reading. */
  private double nowHours() {
    double last = readings().stream().mapToDouble(RiseChartData.JarReading::hours).max().orElse(0);
    return dough.nowHours() <= forecast.hours() ? dough.nowHours() : last;
  }

  private List<RiseChartData.JarReading> readings() {
    return bake.readings().stream().flatMap(reading -> read(reading).stream()).toList();
  }

  private static Optional<RiseChartData.JarReading> read(Reading reading) {
    return reading
        .rise()
        .map(rise -> new RiseChartData.JarReading(reading.hours(), rise.percent()));
  }
}
