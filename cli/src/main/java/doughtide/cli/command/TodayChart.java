package doughtide.cli.command;

import doughtide.cli.args.ClockTimes;
import doughtide.cli.file.OutputFile;
import doughtide.cli.hand.DoughInHand;
import doughtide.cli.options.OutputOptions;
import doughtide.core.forecast.LikelyLine;
import doughtide.core.forecast.RiseForecast;
import doughtide.core.learning.Bake;
import doughtide.core.quantity.Rise;
import doughtide.report.chart.RiseChartData;
import doughtide.report.handout.FormulaWords;
import doughtide.report.words.Words;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.SortedSet;

/** The dough in hand as a chart in a file: as forecast, as read, and as it looks now. */
final class TodayChart {

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
    RiseChartData.Builder data =
        RiseChartData.of(forecast, rises.stream().mapToDouble(Rise::percent).toArray())
            .title(title.orElseGet(() -> words.say("chart.title.today")))
            .subtitle(List.of(new FormulaWords(words).formula(bake.formula())))
            .mixedAt(clock.map(ClockTimes::start))
            .readings(readings())
            .today(today(rises));
    dough.loaf().ifPresent(loaf -> data.shape(forecast, loaf.proof(), loaf.shape()));
    RiseChartFile.write(data.build(), words, file, paper);
  }

  private RiseChartData.Today today(SortedSet<Rise> rises) {
    LikelyLine expected = LikelyLine.of(dough.first());
    double[] hours = expected.hours();
    double[] percent = new double[hours.length];
    for (int i = 0; i < hours.length; i++) {
      percent[i] = expected.percentAt(hours[i]);
    }
    OptionalDouble first = dough.expected(rises);
    OptionalDouble likely = dough.likely(rises);
    return new RiseChartData.Today(
        hours,
        percent,
        nowHours(),
        dough.nextLookHours(dough.awaited(rises)),
        first.isPresent() && likely.isPresent()
            ? OptionalDouble.of(first.getAsDouble() - likely.getAsDouble())
            : OptionalDouble.empty());
  }

  /** Now, as long as the dough may still rise; else the hour of the last reading. */
  private double nowHours() {
    double last = readings().stream().mapToDouble(RiseChartData.JarReading::hours).max().orElse(0);
    return dough.nowHours() <= forecast.hours() ? dough.nowHours() : last;
  }

  private List<RiseChartData.JarReading> readings() {
    return bake.readings().stream()
        .filter(reading -> reading.rise().isPresent())
        .map(RiseChartData.JarReading::of)
        .toList();
  }
}
