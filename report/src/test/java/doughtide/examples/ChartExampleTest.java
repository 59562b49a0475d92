package doughtide.examples;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import doughtide.core.day.BakeDay;
import doughtide.core.day.BenchHours;
import doughtide.core.day.BenchInterval;
import doughtide.core.day.DayAnswer;
import doughtide.core.day.DayPlanner;
import doughtide.core.day.SearchControl;
import doughtide.core.dough.DoughFormula;
import doughtide.core.forecast.RiseForecast;
import doughtide.core.forecast.RiseForecaster;
import doughtide.core.loaf.Proof;
import doughtide.core.loaf.ShapeForecast;
import doughtide.core.loaf.ShapeForecaster;
import doughtide.core.quantity.Rise;
import doughtide.core.quantity.Share;
import doughtide.core.quantity.Temperature;
import doughtide.core.rise.DoughTemperature;
import doughtide.report.chart.ChartFormat;
import doughtide.report.chart.ChartSize;
import doughtide.report.chart.Charts;
import doughtide.report.handout.HandoutDough;
import doughtide.report.handout.Handouts;
import doughtide.report.page.PageFormat;
import doughtide.report.words.Advice;
import doughtide.report.words.Language;
import doughtide.report.words.Words;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.time.LocalDate;
import java.time.ZonedDateTime;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;

/** What an application that draws and prints writes: the lines of the guide in the Javadoc. */
class ChartExampleTest {

  private static RiseForecast forecast(double celsius, double hydration) {
    return RiseForecaster.standard()
        .withMembers(64)
        .forecast(
            DoughFormula.builder().hydration(Share.ofPercent(hydration)).build(),
            DoughTemperature.steady(Temperature.ofCelsius(celsius)));
  }

  @Test
  void aChartAsBytes() {
    RiseForecast forecast = forecast(25, 72);
    byte[] picture =
        Charts.in(Words.in(Language.ENGLISH))
            .rise("Saturday", forecast, Rise.ofPercent(50))
            .bytes(ChartFormat.PNG);

    assertThat(picture).startsWith(0x89, 'P', 'N', 'G');
  }

  @Test
  void aChartSaysItselfAndHasATitle() {
    Charts charts = Charts.in(Words.in(Language.ENGLISH));

    assertThat(charts.rise("Saturday", forecast(25, 72), Rise.ofPercent(50)).toString())
        .startsWith("Saturday: Risen 50");
    assertThatThrownBy(() -> charts.rise(null, forecast(25, 72)))
        .hasMessage("title is missing: give one");
  }

  @Test
  void warningsOfTheForecastStandUnderTheChart() throws IOException {
    RiseForecast wet = forecast(31, 100);
    assertThat(wet.warnings()).isNotEmpty();
    Words words = Words.in(Language.ENGLISH);

    String drawn = svg(words, wet).replaceAll("<[^>]*>", " ").replaceAll("\\s+", " ");

    String first = Advice.of(words, wet.warnings().get(0)).text();
    assertThat(drawn).contains(first.substring(0, 20));
  }

  private static String svg(Words words, RiseForecast forecast) throws IOException {
    ByteArrayOutputStream out = new ByteArrayOutputStream();
    Proof proof = Proof.inRoom(Temperature.ofCelsius(24), 2);
    ShapeForecast shape = ShapeForecaster.of(forecast, proof).forecast();
    Charts.in(words)
        .loaf("Wet", forecast, proof, shape)
        .write(ChartFormat.SVG, ChartSize.A4_LANDSCAPE, out);
    return out.toString(StandardCharsets.UTF_8);
  }

  @Test
  void aDayAsAChart() {
    BakeDay day =
        BakeDay.builder()
            .readyAt(36)
            .bench(new BenchHours(List.of(new BenchInterval(6.5, 22), new BenchInterval(30, 37))))
            .cold(Temperature.ofCelsius(4))
            .build();
    DayAnswer answer = DayPlanner.plan(List.of(day), 1, SearchControl.none());
    ZonedDateTime midnight = ZonedDateTime.parse("2027-03-06T00:00+01:00[Europe/Berlin]");
    Charts charts = Charts.in(Words.in(Language.ENGLISH));
    Optional<byte[]> drawn =
        answer.days().stream() // the best day comes first; none: answer.obstacle() says why
            .findFirst()
            .map(best -> charts.day("Sunday", best, List.of("white"), midnight))
            .map(chart -> chart.bytes(ChartFormat.SVG));

    String svg = new String(drawn.orElseThrow(), StandardCharsets.UTF_8);
    assertThat(svg).contains("Sunday").contains("white");
  }

  @Test
  void aPageIntoAStream() throws IOException {
    ByteArrayOutputStream out = new ByteArrayOutputStream();
    Words words = Words.in(Language.ENGLISH);
    HandoutDough dough =
        HandoutDough.steady(DoughFormula.builder().build(), Temperature.ofCelsius(25));
    Handouts.in(words)
        .bakeSheet(dough, Optional.empty(), Optional.empty())
        .write(PageFormat.a4(), words, LocalDate.of(2027, 3, 6), out); // stays open

    assertThat(out.toString(StandardCharsets.ISO_8859_1)).startsWith("%PDF-");
  }

  @Test
  void aPageAsBytes() {
    DoughFormula formula = DoughFormula.builder().build();
    Words words = Words.in(Language.GERMAN);
    byte[] pdf =
        Handouts.in(words)
            .bakeSheet(
                HandoutDough.steady(formula, Temperature.ofCelsius(25)),
                Optional.empty(),
                Optional.empty())
            .bytes(PageFormat.a4(), words, LocalDate.of(2027, 3, 6));

    assertThat(new String(pdf, 0, 5, StandardCharsets.ISO_8859_1)).isEqualTo("%PDF-");
  }
}
