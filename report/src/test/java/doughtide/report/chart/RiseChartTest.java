package doughtide.report.chart;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import doughtide.report.Samples;
import doughtide.report.words.Language;
import doughtide.report.words.TimeSpan;
import doughtide.report.words.Words;
import java.awt.image.BufferedImage;
import java.time.ZonedDateTime;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class RiseChartTest {

  private static final Words WORDS = Words.in(Language.ENGLISH);

  @Test
  void clockTicksFollowElapsedTimeThroughTheSpringChange() {
    ChartAxis axis =
        RiseChart.hourAxis(
            8, Optional.of(ZonedDateTime.parse("2026-03-28T20:30+01:00[Europe/Berlin]")), WORDS);
    assertThat(axis.ticks())
        .extracting(t -> t.rows().get(1))
        .containsExactly(
            "20:30", "21:30", "22:30", "23:30", "00:30", "01:30", "03:30", "04:30", "05:30");
    assertThat(axis.ticks().get(4).rows().get(2)).isEqualTo("Sun");
  }

  @ParameterizedTest
  @ValueSource(doubles = {1, 2.5, 6, 12, 24, 36, 48, 72, 200})
  void hourAxisHasAHandfulOfTicks(double hours) {
    assertThat(RiseChart.hourAxis(hours, Optional.empty(), WORDS).ticks().size()).isBetween(3, 11);
  }

  /** XChart draws the curves, this program all else: both must mean the same place. */
  @Test
  void curveAndGridAgree() {
    double[] x = {0, 10};
    double[] y = {50, 50};
    ChartAxis across = ChartAxis.every(5, 0, 10, "", v -> "");
    ChartAxis up = ChartAxis.every(50, 0, 100, "", v -> "");
    PrintedChart with = chart(across, up, List.of(curve(x, y, ChartPicture.Pen.BOLD)));
    PrintedChart dashed = chart(across, up, List.of(curve(x, y, ChartPicture.Pen.LONG_DASH)));
    assertThat(darkRow(with)).isCloseTo(darkRow(dashed), within(1.5));
  }

  private static PrintedChart chart(
      ChartAxis across, ChartAxis up, List<ChartPicture.Curve> curves) {
    return new PrintedChart(
        new ChartPicture(
            "",
            List.of(),
            across,
            up,
            Optional.empty(),
            List.of(),
            curves,
            List.of(),
            List.of(),
            List.of(),
            Optional.empty(),
            List.of()));
  }

  private static ChartPicture.Curve curve(double[] x, double[] y, ChartPicture.Pen pen) {
    return new ChartPicture.Curve("line", x, y, pen, false);
  }

  /** Mean row of the dark pixels in the middle of the picture, in points. */
  private static double darkRow(PrintedChart chart) {
    BufferedImage image = ChartOutput.image(chart, ChartSize.A5_LANDSCAPE, 144);
    double sum = 0;
    int count = 0;
    for (int row = image.getHeight() / 4; row < image.getHeight() * 3 / 4; row++) {
      for (int x = image.getWidth() / 3; x < image.getWidth() * 2 / 5; x++) {
        if ((image.getRGB(x, row) & 0xFF) < 80) {
          sum += row;
          count++;
        }
      }
    }
    assertThat(count).isPositive();
    return sum / count / 2;
  }

  @Test
  void neverReachedMarksAreSaidInTheDescription() {
    RiseChartData plain = Samples.plain();
    RiseChartData data =
        new RiseChartData(
            "slow dough",
            List.of(),
            plain.hours(),
            plain.earlyPercent(),
            plain.likelyPercent(),
            plain.latePercent(),
            List.of(
                new PassingPoint(
                    100, OptionalDouble.of(9), OptionalDouble.empty(), OptionalDouble.empty()),
                new PassingPoint(
                    150, OptionalDouble.empty(), OptionalDouble.empty(), OptionalDouble.empty())),
            Optional.empty(),
            Optional.empty(),
            Optional.empty(),
            Optional.empty(),
            List.of("A warning that has to fit under the chart"));
    assertThat(RiseChart.caption(data, WORDS).description())
        .contains("100%: not before 9\u00a0h.", "150%: not reached.");
    assertThat(ChartOutput.image(RiseChart.of(data, WORDS), ChartSize.A5_PORTRAIT, 72)).isNotNull();
  }

  @Test
  void clockTimesNameTheDayWhenTheyCouldMeanTwo() {
    ZonedDateTime friday = ZonedDateTime.parse("2026-05-01T20:00+02:00[Europe/Berlin]");
    assertThat(RiseChart.clockSpan(new TimeSpan(1, 3), friday, WORDS)).isEqualTo("21:00–23:00");
    assertThat(RiseChart.clockSpan(new TimeSpan(3, 5), friday, WORDS)).isEqualTo("23:00–01:00");
    assertThat(RiseChart.clockSpan(new TimeSpan(6, 6), friday, WORDS)).isEqualTo("Sat 02:00");
    assertThat(RiseChart.clockSpan(new TimeSpan(20, 40), friday, WORDS))
        .isEqualTo("Sat 16:00–Sun 12:00");
    assertThat(RiseChart.clockSpan(new TimeSpan(0, 24), friday, WORDS))
        .isEqualTo("20:00–Sat 20:00");
  }

  @Test
  void badSeriesAreRefused() {
    RiseChartData plain = Samples.plain();
    assertThatThrownBy(() -> PassingPoint.of(50, 5, 4, 6)).hasMessageContaining("in order");
    assertThatThrownBy(() -> PassingPoint.of(50, 4, 5, Double.NaN)).hasMessageContaining("order");
    assertThatThrownBy(
            () -> new RiseChartData.TemperatureSeries(plain.hours(), new double[] {1, 2}))
        .hasMessageContaining("2 values instead of 200");
    assertThatThrownBy(
            () ->
                new RiseChartData.TemperatureSeries(
                    new double[] {0, 0}, new double[] {1, Double.POSITIVE_INFINITY}))
        .hasMessageContaining("ascend");
  }

  @Test
  void theLoafTakesOverWhereTheBulkEnds() {
    RiseChartData night = Samples.cold();
    RiseChartData withLoaf =
        new RiseChartData(
            night.title(),
            night.subtitle(),
            night.hours(),
            night.earlyPercent(),
            night.likelyPercent(),
            night.latePercent(),
            night.passing(),
            night.mixedAt(),
            night.temperature(),
            night.shape(),
            night.cold(),
            Optional.of(
                new RiseChartData.LoafSeries(
                    new double[] {7.6, 12, 26}, new double[] {24, 70, 85})),
            night.warnings(),
            night.readings());
    String plain = svgOf(night);
    String loaf = svgOf(withLoaf);
    assertThat(plain).doesNotContain("the loaf");
    assertThat(loaf).contains("the loaf", "rise 24%");
    assertThat(plain.split("100%:", -1)).as("in the description and as a label").hasSize(3);
    assertThat(loaf.split("100%:", -1)).as("in the description only").hasSize(2);
  }

  private static String svgOf(RiseChartData data) {
    Words words = Words.in(Language.ENGLISH);
    return new String(
        ChartOutput.bytes(
            RiseChart.of(data, words),
            ChartFormat.SVG,
            ChartSize.A4_LANDSCAPE,
            RiseChart.caption(data, words)),
        java.nio.charset.StandardCharsets.UTF_8);
  }

  @Test
  void readingsAreDrawnAndNamed() {
    RiseChartData plain = Samples.cold();
    RiseChartData read = plain.withReadings(List.of(new RiseChartData.JarReading(2, 12)));
    assertThat(svgOf(plain)).doesNotContain("Crosses");
    assertThat(svgOf(read)).contains("Crosses: your readings.");
    assertThatThrownBy(() -> new RiseChartData.JarReading(-1, 12))
        .isInstanceOf(IllegalArgumentException.class);
  }

  @Test
  void smoothingKeepsStraightLinesAndEnds() {
    double[] line = {1, 2, 3, 4, 5, 6, 7};
    assertThat(Series.smooth(line)).containsExactly(line);
    double[] uneven = {0, 0, 0, 9, 0, 0, 1};
    assertThat(Series.smooth(uneven)).startsWith(0).endsWith(1).doesNotContain(9);
  }
}
