package doughtide.cli.command;

import doughtide.cli.args.ClockTimes;
import doughtide.cli.file.OutputFile;
import doughtide.cli.options.OutputOptions;
import doughtide.core.forecast.LikelyLine;
import doughtide.core.forecast.RiseForecast;
import doughtide.core.learning.Bake;
import doughtide.core.learning.Reading;
import doughtide.core.learning.TodayUpdate;
import doughtide.core.quantity.Rise;
import doughtide.report.chart.RiseChartData;
import doughtide.report.handout.FormulaWords;
import doughtide.report.words.Words;
import java.time.Duration;
import java.time.Instant;
import java.util.List;
import java.util.Optional;
import java.util.SortedSet;

/** The dough in hand as a chart in a file: as forecast, as read, and as it looks now. */
public final class TodayChart {

  private static final Rise HALF = Rise.ofPercent(50);

  private final Bake bake;
  private final TodayUpdate update;
  private final Optional<ClockTimes> clock;
  private final RiseForecast forecast;
  private final Instant now;

  private TodayChart(DoughInHand dough, Instant now) {
    this.bake = dough.file().bake();
    this.update = dough.update();
    this.clock = dough.file().clock();
    this.forecast = update.forecaster().forecast(bake.formula(), bake.temperature());
    this.now = now;
  }

  /**
   * The chart of a dough in hand.
   *
   * @param now the moment of looking
   */
  public static TodayChart of(DoughInHand dough, Instant now) {
    return new TodayChart(dough, now);
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
    RiseChartData dough =
        RiseChartData.of(forecast, rises.stream().mapToDouble(Rise::percent).toArray())
            .title(title.orElseGet(() -> words.say("chart.title.today")))
            .subtitle(List.of(new FormulaWords(words).formula(bake.formula())))
            .mixedAt(clock.map(ClockTimes::start))
            .readings(readings())
            .today(today(rises))
            .build();
    RiseChartFile.write(dough, words, file, paper);
  }

  private RiseChartData.Today today(SortedSet<Rise> rises) {
    LikelyLine expected =
        LikelyLine.of(update.expected().forecast(bake.formula(), bake.temperature()));
    double[] hours = expected.hours();
    double[] percent = new double[hours.length];
    for (int i = 0; i < hours.length; i++) {
      percent[i] = expected.percentAt(hours[i]);
    }
    TodayUpdate.Outlook outlook = update.outlook(asked(rises));
    return new RiseChartData.Today(
        hours, percent, nowHours(), outlook.nextLookHours(), outlook.aheadHours());
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
    double since =
        clock
            .map(times -> Duration.between(times.start().toInstant(), now).toSeconds() / 3600.0)
            .orElse(last);
    return since >= last && since <= forecast.hours() ? since : last;
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
