package doughtide.report.chart;

import doughtide.core.Internal;
import doughtide.core.feeding.FeedingForecast;
import doughtide.core.forecast.LikelyLine;
import doughtide.core.forecast.RiseForecast.BandPoint;
import doughtide.core.forecast.TemperatureWarnings;
import doughtide.core.forecast.TimeWindow;
import doughtide.core.quantity.Hours;
import doughtide.core.quantity.InputException;
import doughtide.report.words.Words;
import java.time.ZonedDateTime;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.function.Function;
import java.util.function.ToDoubleFunction;

/**
 * The chart of a fed starter: its height over time, and when it is ripe and begins to fall.
 *
 * <pre>{@code
 * Words words = Words.in(Language.ENGLISH);
 * PrintedChart chart =
 *     FeedChart.of("Starter fed 1:5:5", List.of("22 °C"), forecast, Optional.empty(), words);
 * }</pre>
 */
@Internal
public final class FeedChart {
  private FeedChart() {}

  /**
   * The chart, ready to be written or put on a page.
   *
   * @param title what was fed
   * @param subtitle further lines under the title
   * @param forecast what is shown
   * @param fedAt when it was fed; adds a row of clock times
   * @param words the language
   * @throws InputException if the forecast gives no hours
   */
  public static PrintedChart of(
      String title,
      List<String> subtitle,
      FeedingForecast forecast,
      Optional<ZonedDateTime> fedAt,
      Words words) {
    return body(forecast, fedAt, words)
        .title(title)
        .answer(List.of(answer(forecast, fedAt, words)))
        .subtitle(subtitle)
        .chart();
  }

  /**
   * The same chart without title, for a page that has said it already.
   *
   * @throws InputException if the forecast gives no hours
   */
  public static PrintedChart withoutHead(
      FeedingForecast forecast, Optional<ZonedDateTime> fedAt, Words words) {
    return body(forecast, fedAt, words).chart();
  }

  private static ChartPicture.Builder body(
      FeedingForecast forecast, Optional<ZonedDateTime> fedAt, Words words) {
    if (!forecast.rise().isPossible()) {
      InputException why = TemperatureWarnings.refusal(forecast.warnings().get(0));
      throw why.inWords("there is nothing to draw: " + why.getMessage());
    }
    LikelyLine line = LikelyLine.of(forecast.rise());
    List<BandPoint> band = ForecastChart.band(forecast.rise(), line.endHours());
    double end = end(forecast);
    double[] x = band.stream().mapToDouble(BandPoint::hours).filter(h -> h <= end).toArray();
    double[] early = heights(band, x.length, BandPoint::riseEarlyPercent);
    double[] likely = Arrays.stream(x).map(at -> 1 + line.percentAt(at) / 100).toArray();
    double[] late = heights(band, x.length, BandPoint::riseLatePercent);
    double top = top(early);
    TimeAxes axes = new TimeAxes(0, x[x.length - 1], Optional.empty(), words);
    ChartAxis elapsed = axes.hours(words.say("chart.hoursAfterFeeding"));
    ChartAxis up =
        ChartAxis.every(
            ChartAxis.step(top - 1, 8, 0.25, 0.5, 1),
            1,
            top,
            words.say("chart.fedHeight"),
            v -> "×" + words.number(v, top - 1 > 2 ? 1 : 2));
    ChartPicture.Builder picture = ChartPicture.on(fedAt.map(axes::clock).orElse(elapsed), up);
    List<ChartPicture.Upright> midnights =
        fedAt.map(zero -> RiseChart.midnights(axes, zero)).orElse(List.of());
    fedAt.ifPresent(zero -> picture.under(elapsed).uprights(midnights));
    return picture
        .bands(List.of(new ChartPicture.Band(words.say("chart.band"), x, late, early)))
        .curves(
            List.of(
                new ChartPicture.Curve(
                    words.say("chart.likely"), x, likely, ChartPicture.Pen.BOLD, false)))
        .lanes(lanes(forecast, fedAt, words))
        .notes(RiseChart.withMidnight(words.say("chart.feedKey"), midnights, words));
  }

  /** For which time to plan, by the clock where it is known, else in hours after the feed. */
  private static String answer(
      FeedingForecast forecast, Optional<ZonedDateTime> fedAt, Words words) {
    if (forecast.ripe().likely().isEmpty()) {
      return words.say("phone.starter.never");
    }
    Function<OptionalDouble, String> time =
        hours -> clockOrHours(hours.orElseThrow(), fedAt, words);
    if (forecast.readyHours().isEmpty()) {
      String early = time.apply(forecast.ripe().early());
      return words.say("phone.starter.open", Map.of("early", early));
    }
    return words.say(
        fedAt.isPresent() ? "phone.ready" : "chart.feedReady",
        Map.of(
            "time", time.apply(forecast.readyHours()),
            "from", time.apply(forecast.ripe().likely()),
            "until", time.apply(forecast.falling().likely())));
  }

  private static String clockOrHours(double hours, Optional<ZonedDateTime> fedAt, Words words) {
    return fedAt
        .map(fed -> RiseChart.clockAt(Hours.after(fed, hours), fed, words))
        .orElseGet(() -> words.hours(hours));
  }

  /** Title and a description in sentences. */
  public static ChartCaption caption(
      String title, FeedingForecast forecast, Optional<ZonedDateTime> fedAt, Words words) {
    StringBuilder description = new StringBuilder(answer(forecast, fedAt, words));
    description.append(' ').append(words.say("chart.feedKey"));
    for (ChartPicture.Lane lane : lanes(forecast, fedAt, words)) {
      description.append(' ').append(words.capitalized(lane.label())).append('.');
    }
    return new ChartCaption(title, description.toString(), words.language());
  }

  /** Ends soon after it has fallen. */
  private static double end(FeedingForecast forecast) {
    double all = forecast.rise().hours();
    TimeWindow fallen = forecast.fallen();
    return Math.min(all, fallen.late().orElse(fallen.likely().orElse(all)) * 1.05);
  }

  private static double[] heights(
      List<BandPoint> band, int count, ToDoubleFunction<BandPoint> percent) {
    double[] heights = band.stream().mapToDouble(p -> 1 + percent.applyAsDouble(p) / 100).toArray();
    return Arrays.copyOf(Series.smooth(heights), count);
  }

  private static double top(double[] early) {
    double highest = 1.5;
    for (double height : early) {
      highest = Math.max(highest, height * 1.03);
    }
    return Math.ceil(highest * 8) / 8;
  }

  private static List<ChartPicture.Lane> lanes(
      FeedingForecast forecast, Optional<ZonedDateTime> fedAt, Words words) {
    List<ChartPicture.Lane> lanes = new ArrayList<>();
    lane(lanes, "chart.falls", forecast.falling(), fedAt, words);
    lane(lanes, "chart.ripe", forecast.ripe(), fedAt, words);
    return lanes;
  }

  /** Only what has all its three times: a lane without an end cannot be read. */
  private static void lane(
      List<ChartPicture.Lane> lanes,
      String key,
      TimeWindow window,
      Optional<ZonedDateTime> fedAt,
      Words words) {
    if (window.late().isEmpty()) {
      return;
    }
    double early = window.early().orElseThrow();
    double late = window.late().getAsDouble();
    String likely = RiseChart.at(window.likely().orElseThrow(), fedAt, words);
    String range = RiseChart.when(early, late, fedAt, words);
    String label = words.say(key) + " " + likely + " (" + range + ")";
    lanes.add(new ChartPicture.Lane(early, window.likely().orElseThrow(), late, label));
  }
}
