package doughtide.cli.command;

import doughtide.cli.args.ClockTimes;
import doughtide.cli.file.OutputFile;
import doughtide.cli.options.OutputOptions;
import doughtide.core.forecast.RiseForecast;
import doughtide.core.learning.Bake;
import doughtide.core.learning.Reading;
import doughtide.core.quantity.Rise;
import doughtide.report.chart.RiseChartData;
import java.util.List;
import java.util.Optional;
import java.util.SortedSet;

/** The dough in hand as a chart in a file, with its readings as crosses. */
public final class TodayChart {

  private final Bake bake;
  private final Optional<ClockTimes> clock;
  private final RiseForecast forecast;

  private TodayChart(Bake bake, Optional<ClockTimes> clock, RiseForecast forecast) {
    this.bake = bake;
    this.clock = clock;
    this.forecast = forecast;
  }

  /** The chart of a dough in hand. */
  public static TodayChart of(DoughInHand dough) {
    Bake bake = dough.file().bake();
    RiseForecast forecast =
        dough.update().forecaster().forecast(bake.formula(), bake.temperature());
    return new TodayChart(bake, dough.file().clock(), forecast);
  }

  /** Whether there are hours to draw. */
  public boolean isPossible() {
    return forecast.isPossible();
  }

  /** Writes the file. */
  public void write(
      String title, SortedSet<Rise> rises, OutputFile file, OutputOptions.Paper paper) {
    RiseChartData dough =
        RiseChartData.of(forecast, rises.stream().mapToDouble(Rise::percent).toArray())
            .titled(title, List.of(RiseChartFile.dough(bake.formula())))
            .withReadings(readings());
    RiseChartFile.write(
        clock.map(times -> dough.mixedAt(times.start())).orElse(dough), file, paper);
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
