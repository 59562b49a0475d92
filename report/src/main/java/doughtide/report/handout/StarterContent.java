package doughtide.report.handout;

import doughtide.core.feeding.FeedRatio;
import doughtide.core.feeding.Feeding;
import doughtide.core.feeding.FeedingForecast;
import doughtide.core.feeding.FeedingPlanner;
import doughtide.core.forecast.RiseForecaster;
import doughtide.core.quantity.Temperature;
import doughtide.core.rise.DoughTemperature;
import doughtide.report.words.TimeSpan;
import doughtide.report.words.Words;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/** Computes the ripe windows of a starter. */
final class StarterContent {

  private final Words words;
  private final FeedingPlanner planner;

  StarterContent(Words words, RiseForecaster forecaster) {
    this.words = words;
    this.planner = FeedingPlanner.with(forecaster);
  }

  StarterPage page(
      Optional<String> title,
      Feeding feeding,
      List<Temperature> temperatures,
      List<FeedRatio> ratios) {
    HoursContent.check(temperatures.size(), ratios.size());
    List<List<StarterPage.Cell>> cells = new ArrayList<>();
    for (Temperature temperature : temperatures) {
      List<StarterPage.Cell> row = new ArrayList<>();
      for (FeedRatio ratio : ratios) {
        FeedingForecast forecast =
            planner.forecast(feeding.withRatio(ratio), DoughTemperature.steady(temperature));
        row.add(
            new StarterPage.Cell(TimeSpan.of(forecast.ripe()), TimeSpan.of(forecast.falling())));
      }
      cells.add(row);
    }
    FormulaWords say = new FormulaWords(words);
    return new StarterPage(
        title.orElseGet(() -> words.say("starter.title")),
        List.of(
            words.say(
                "starter.line",
                Map.of(
                    "kept", say.kept(feeding.starter()),
                    "keptFlour", say.flour(feeding.starter().flour()),
                    "flour", say.flour(feeding.flour()))),
            words.say("starter.explain")),
        ratios.stream().map(FeedRatio::text).toList(),
        temperatures.stream().map(t -> Math.rint(t.celsius() * 10) / 10).toList(),
        cells,
        List.of(words.say("caution.jar")));
  }
}
