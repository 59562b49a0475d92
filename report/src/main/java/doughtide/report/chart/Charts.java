package doughtide.report.chart;

import doughtide.core.Internal;
import doughtide.core.day.DayPlan;
import doughtide.core.feeding.FeedingForecast;
import doughtide.core.flourtrial.AbsorptionFit;
import doughtide.core.flourtrial.BowlTest;
import doughtide.core.flourtrial.Experience;
import doughtide.core.forecast.RiseForecast;
import doughtide.core.forecast.Warning;
import doughtide.core.loaf.Proof;
import doughtide.core.loaf.ShapeForecast;
import doughtide.core.quantity.Checks;
import doughtide.core.quantity.InputException;
import doughtide.core.quantity.Rise;
import doughtide.report.words.Advice;
import doughtide.report.words.Refusal;
import doughtide.report.words.Words;
import java.time.ZonedDateTime;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;

/**
 * Draws what was computed, each in one call. Immutable; the same answer gives the same chart.
 *
 * <pre>{@code
 * byte[] picture = Charts.in(Words.in(Language.ENGLISH))
 *     .rise("Saturday", forecast, Rise.ofPercent(50))
 *     .bytes(ChartFormat.PNG);
 * }</pre>
 */
public final class Charts {

  private final Words words;

  private Charts(Words words) {
    this.words = words;
  }

  /**
   * In the words of a language.
   *
   * @param words of one language
   * @return charts in the words of a language
   */
  public static Charts in(Words words) {
    return new Charts(Checks.given("words", words));
  }

  /**
   * The rise of a dough with its warnings at the foot.
   *
   * @param title over the chart
   * @param forecast of the dough
   * @param marks rises whose times are shown, ascending
   * @return the chart
   * @throws InputException if no hours can be given for the dough; it says why
   */
  public DrawnChart rise(String title, RiseForecast forecast, Rise... marks) {
    return rise(data(title, forecast, marks).warnings(lines(forecast.warnings().stream())).build());
  }

  /**
   * {@return the rise of a dough, when to shape it and the loaf to the oven, with the warnings of
   * both}
   *
   * @param title over the chart
   * @param forecast of the dough
   * @param proof what happens to its loaf
   * @param shape when to shape for it
   * @throws InputException if no hours can be given for the dough; it says why
   */
  public DrawnChart loaf(String title, RiseForecast forecast, Proof proof, ShapeForecast shape) {
    Stream<Warning> warnings =
        Stream.concat(forecast.warnings().stream(), shape.warnings().stream()).distinct();
    return rise(
        data(title, forecast).shape(forecast, proof, shape).warnings(lines(warnings)).build());
  }

  /**
   * A rise of which more is known: clock times, readings, lines of one's own.
   *
   * @param data what is to be drawn
   * @return the chart
   * @hidden
   */
  @Internal
  public DrawnChart rise(RiseChartData data) {
    return new DrawnChart(RiseChart.of(data, words), RiseChart.caption(data, words));
  }

  /**
   * {@return the height of a fed starter}
   *
   * @param title over the chart
   * @param forecast of the feeding
   * @param fedAt when it is fed; adds clock times
   * @hidden
   */
  @Internal
  public DrawnChart feeding(String title, FeedingForecast forecast, Optional<ZonedDateTime> fedAt) {
    return new DrawnChart(
        FeedChart.of(title, lines(forecast.warnings().stream()), forecast, fedAt, words),
        FeedChart.caption(title, forecast, fedAt, words));
  }

  /**
   * {@return a day in bars over the clock}
   *
   * @param title over the chart
   * @param day with one dough or many
   * @param names of the doughs, in their order
   * @param zero the moment that its hours are counted from
   */
  public DrawnChart day(String title, DayPlan day, List<String> names, ZonedDateTime zero) {
    return new DrawnChart(
        DayChart.of(Checks.given("title", title), day, names, zero, words),
        DayChart.caption(title, day, names, zero, words));
  }

  /**
   * {@return how much water a flour takes, after its bowls}
   *
   * @param title over the chart
   * @param fit what the bowls said
   * @param test by which they were graded, as {@link BowlTest#of} has it for the flour
   * @param baker how far below the limit to work
   * @hidden
   */
  @Internal
  public DrawnChart flour(String title, AbsorptionFit fit, BowlTest test, Experience baker) {
    return new DrawnChart(
        FlourTrialChart.of(title, fit, test, baker, words),
        FlourTrialChart.caption(title, fit, baker, words));
  }

  private RiseChartData.Builder data(String title, RiseForecast forecast, Rise... marks) {
    double[] percents = Arrays.stream(marks).mapToDouble(Rise::percent).toArray();
    return RiseChartData.of(Refusal.ifImpossible(forecast), percents)
        .title(Checks.given("title", title));
  }

  private List<String> lines(Stream<Warning> warnings) {
    return warnings.map(each -> Advice.of(words, each).text()).toList();
  }
}
