package doughtide.report.chart;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import doughtide.core.forecast.Distribution;
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

  private static TimeAxes axes(double hours) {
    return new TimeAxes(0, hours, Optional.empty(), WORDS);
  }

  @Test
  void clockTicksFollowElapsedTimeThroughTheSpringChange() {
    ZonedDateTime mixed = ZonedDateTime.parse("2026-03-28T20:30+01:00[Europe/Berlin]");
    ChartAxis axis = axes(8).clock(mixed);
    assertThat(axis.ticks())
        .extracting(t -> t.rows().get(0))
        .containsExactly("21:00", "22:00", "23:00", "00:00", "01:00", "03:00", "04:00", "05:00");
    assertThat(axis.ticks().get(5).at()).isCloseTo(5.5, within(1e-9));
    assertThat(axis.ticks().get(3).rows().get(1)).isEqualTo("Sun");
    assertThat(axes(8).midnights(mixed)).containsExactly(3.5);
  }

  @ParameterizedTest
  @ValueSource(doubles = {1, 2.5, 6, 12, 24, 36, 48, 72, 200})
  void hourAxisHasAHandfulOfTicks(double hours) {
    assertThat(axes(hours).hours("").ticks().size()).isBetween(3, 13);
  }

  @Test
  void aNightIsDrawnNarrowerAndSaysSo() {
    RiseChartHours hours = new RiseChartHours(Samples.cold());
    Squeeze night = hours.squeeze().orElseThrow();
    ChartAxis axis = new TimeAxes(0, hours.end(), hours.squeeze(), WORDS).hours("");
    double narrow = axis.fraction(night.from() + 1) - axis.fraction(night.from());
    assertThat(narrow).isCloseTo(axis.fraction(1) * night.share(), within(1e-9));
    assertThat(axis.fraction(axis.max())).isEqualTo(1);
    assertThat(svgOf(Samples.cold())).contains("the hours are drawn narrower");
  }

  @Test
  void nothingIsDrawnBeyondWhatWasComputed() {
    RiseChartData plain = Samples.plain();
    RiseChartData open =
        RiseChartData.of(
                plain.hours(), plain.earlyPercent(), plain.likelyPercent(), plain.latePercent())
            .shape(new RiseChartData.ShapePoint(5, 8, OptionalDouble.empty(), 60))
            .loaf(
                Optional.of(
                    new RiseChartData.LoafSeries(
                        new double[] {8.5, 30},
                        new double[] {70, 120},
                        new double[] {60, 100},
                        new double[] {50, 80},
                        90)))
            .build();
    assertThat(new RiseChartHours(open).bulkEnd()).isLessThanOrEqualTo(12);
    assertThat(svgOf(open))
        .contains("Shape about 8\u00a0h after mixing, when the jar shows 60%.")
        .contains("one in ten is not there in the time looked at")
        .contains("shape 8\u00a0h, jar 60%");
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
    return ChartPicture.on(across, up).curves(curves).chart();
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
        RiseChartData.of(
                plain.hours(), plain.earlyPercent(), plain.likelyPercent(), plain.latePercent())
            .title("slow dough")
            .passing(
                List.of(
                    new PassingPoint(
                        100, OptionalDouble.of(9), OptionalDouble.empty(), OptionalDouble.empty()),
                    new PassingPoint(
                        150,
                        OptionalDouble.empty(),
                        OptionalDouble.empty(),
                        OptionalDouble.empty())))
            .warnings(List.of("A warning that has to fit under the chart"))
            .build();
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
    String plain = svgOf(Samples.plain());
    String loaf = svgOf(Samples.cold());
    assertThat(plain).doesNotContain("the loaf").doesNotContain("too early");
    assertThat(loaf)
        .contains("the loaf", "wanted 80%", "too early", "right", "late", "past its best")
        .contains("Shape about 17:05, when the jar shows 30%.")
        .contains("into the cold 18:30", "oven 11:30");
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
    RiseChartData read =
        RiseChartData.of(
                plain.hours(), plain.earlyPercent(), plain.likelyPercent(), plain.latePercent())
            .readings(List.of(new RiseChartData.JarReading(2, 12)))
            .build();
    assertThat(svgOf(plain)).doesNotContain("Crosses");
    assertThat(svgOf(read)).contains("Crosses: your readings.");
    assertThatThrownBy(() -> new RiseChartData.JarReading(-1, 12))
        .isInstanceOf(IllegalArgumentException.class);
  }

  @Test
  void todaySaysWhatIsPassedWhatIsAheadAndWhenToLook() {
    RiseChartData plain = Samples.plain();
    RiseChartData today =
        RiseChartData.of(
                plain.hours(), plain.earlyPercent(), plain.likelyPercent(), plain.latePercent())
            .passing(plain.passing())
            .readings(List.of(new RiseChartData.JarReading(4.5, 27)))
            .today(
                new RiseChartData.Today(
                    plain.hours(),
                    plain.latePercent(),
                    4.5,
                    OptionalDouble.of(5),
                    OptionalDouble.of(0.5)))
            .build();
    assertThat(svgOf(today))
        .contains("Today is 30\u00a0min ahead of the forecast.")
        .contains("25%: passed about 4\u00a0h\u00a020\u00a0min")
        .contains("now 4\u00a0h\u00a030\u00a0min", "look again 5\u00a0h", "as forecast");
  }

  @Test
  void twentyDotsAreTheMiddlesOfTwentyEqualParts() {
    double[] hours = new double[100];
    java.util.Arrays.setAll(hours, i -> i < 90 ? i : Double.POSITIVE_INFINITY);
    RiseChartData.Twenty twenty = RiseChartData.Twenty.of(Distribution.of(hours));
    assertThat(twenty.never()).isEqualTo(2);
    assertThat(twenty.hours()).hasSize(18);
    assertThat(twenty.hours()[0]).isCloseTo(0.025 * 99, within(1e-9));
  }

  @Test
  void smoothingKeepsStraightLinesAndEnds() {
    double[] line = {1, 2, 3, 4, 5, 6, 7};
    assertThat(Series.smooth(line)).containsExactly(line);
    double[] uneven = {0, 0, 0, 9, 0, 0, 1};
    assertThat(Series.smooth(uneven)).startsWith(0).endsWith(1).doesNotContain(9);
  }
}
