package doughtide.report.chart;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import doughtide.core.feeding.FeedRatio;
import doughtide.core.feeding.Feeding;
import doughtide.core.feeding.FeedingForecast;
import doughtide.core.feeding.FeedingPlanner;
import doughtide.core.forecast.RiseForecaster;
import doughtide.core.quantity.Hours;
import doughtide.core.quantity.InputException;
import doughtide.core.quantity.Temperature;
import doughtide.core.rise.DoughTemperature;
import doughtide.report.words.Language;
import doughtide.report.words.Words;
import java.nio.charset.StandardCharsets;
import java.time.ZonedDateTime;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;

class FeedChartTest {

  private static final Optional<ZonedDateTime> EVENING =
      Optional.of(ZonedDateTime.parse("2027-03-06T21:30:00Z[Europe/London]"));

  private static FeedingForecast forecast(double celsius) {
    return FeedingPlanner.with(RiseForecaster.standard().withMembers(32))
        .forecast(
            Feeding.of(new FeedRatio(1, 5, 5)),
            DoughTemperature.steady(Temperature.ofCelsius(celsius)));
  }

  private static String svg(FeedingForecast forecast, Words words) {
    byte[] bytes =
        ChartOutput.bytes(
            FeedChart.of("Starter 1:5:5", List.of("22 °C"), forecast, EVENING, words),
            ChartFormat.SVG,
            ChartSize.A5_LANDSCAPE,
            FeedChart.caption("Starter 1:5:5", forecast, EVENING, words));
    return new String(bytes, StandardCharsets.UTF_8);
  }

  @ParameterizedTest
  @EnumSource
  void saysInEveryLanguageWhenItIsRipe(Language language) {
    Words words = Words.in(language);

    assertThat(svg(forecast(22), words))
        .contains("Starter 1:5:5")
        .contains(words.say("chart.ripe"))
        .contains(words.say("chart.falls"))
        .contains(words.say("chart.hoursAfterFeeding"));
  }

  @Test
  void leadsWithTheHourToPlanFor() {
    FeedingForecast forecast = forecast(22);
    Words words = Words.in(Language.ENGLISH);
    ZonedDateTime ready = Hours.after(EVENING.orElseThrow(), forecast.readyHours().orElseThrow());

    assertThat(svg(forecast, words))
        .contains(">Plan to use it about " + words.dayAndClock(ready) + ": likely ripe from ");
  }

  @ParameterizedTest
  @EnumSource
  void leadsWithTheHoursWhereNobodyKnowsTheClock(Language language) {
    FeedingForecast forecast = forecast(22);
    Words words = Words.in(language);
    String ready = words.hours(forecast.readyHours().orElseThrow());

    assertThat(FeedChart.of("x", List.of(), forecast, Optional.empty(), words).picture().answer())
        .singleElement()
        .asString()
        .contains(ready)
        .contains(words.hours(forecast.ripe().likely().orElseThrow()))
        .contains(words.hours(forecast.falling().likely().orElseThrow()))
        .satisfies(
            said ->
                assertThat(FeedChart.caption("x", forecast, Optional.empty(), words).description())
                    .startsWith(said));
  }

  @Test
  void sameForecastGivesTheSameBytes() {
    Words words = Words.in(Language.ENGLISH);

    assertThat(svg(forecast(22), words)).isEqualTo(svg(forecast(22), words));
  }

  @Test
  void withoutHoursThereIsNothingToDraw() {
    FeedingForecast none = forecast(41);
    Words words = Words.in(Language.ENGLISH);

    assertThatThrownBy(() -> FeedChart.of("x", List.of(), none, EVENING, words))
        .isInstanceOf(InputException.class)
        .hasMessageStartingWith("there is nothing to draw: at 41 °C");
  }
}
