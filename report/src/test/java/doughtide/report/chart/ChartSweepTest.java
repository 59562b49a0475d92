package doughtide.report.chart;

import static org.assertj.core.api.Assertions.assertThat;

import doughtide.core.day.DayPlan;
import doughtide.core.dough.FlourClass;
import doughtide.core.feeding.FeedRatio;
import doughtide.core.feeding.Feeding;
import doughtide.core.feeding.FeedingForecast;
import doughtide.core.feeding.FeedingPlanner;
import doughtide.core.flourtrial.AbsorptionFit;
import doughtide.core.flourtrial.AbsorptionPrior;
import doughtide.core.flourtrial.BowlTest;
import doughtide.core.flourtrial.Experience;
import doughtide.core.flourtrial.Grade;
import doughtide.core.flourtrial.GradedBowl;
import doughtide.core.forecast.RiseForecast;
import doughtide.core.forecast.RiseForecaster;
import doughtide.core.forecast.TimeWindow;
import doughtide.core.forecast.Warning;
import doughtide.core.loaf.LoafSettings;
import doughtide.core.loaf.Proof;
import doughtide.core.loaf.ShapeForecast;
import doughtide.core.loaf.ShapeForecaster;
import doughtide.core.quantity.Temperature;
import doughtide.core.rise.DoughTemperature;
import doughtide.report.PageText;
import doughtide.report.SampleDays;
import doughtide.report.SimulatedSight;
import doughtide.report.words.Advice;
import doughtide.report.words.Language;
import doughtide.report.words.Words;
import java.awt.geom.Rectangle2D;
import java.awt.image.BufferedImage;
import java.io.IOException;
import java.time.ZonedDateTime;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;
import org.junit.jupiter.params.provider.MethodSource;

/**
 * Draws every kind of chart of extreme doughs in every language on every sheet: nothing is dropped,
 * clipped or drawn on something else, and each says its answer.
 */
class ChartSweepTest {

  private static final Optional<ZonedDateTime> EVENING =
      Optional.of(ZonedDateTime.parse("2027-03-27T17:47+01:00[Europe/Berlin]"));

  private static final Words ENGLISH = Words.in(Language.ENGLISH);
  private static final double LEAST_PLOT = 4; // sizes of the text, with the longest of warnings

  enum Kind {
    RISE,
    RISE_WITHOUT_CLOCK,
    NIGHT,
    LONG_NIGHT,
    ROOM,
    TODAY,
    COMPARISON,
    FEED,
    FEED_WITHOUT_CLOCK,
    DAY,
    CLASS_DAY,
    TRIAL,
    JARS
  }

  record Case(int dough, Kind kind) {}

  record Sheet(Language language, ChartSize size, Words.ClockStyle clock, Words.Degrees degrees) {
    Words words() {
      return Words.in(language).with(clock).with(degrees);
    }
  }

  private static List<Sheet> sheets() {
    List<Sheet> all = new ArrayList<>();
    for (Language language : Language.values()) {
      for (ChartSize size : ChartSize.values()) {
        boolean is12 = (language.ordinal() + size.ordinal()) % 2 == 0;
        all.add(
            new Sheet(
                language,
                size,
                is12 ? Words.ClockStyle.HOURS_12 : Words.ClockStyle.HOURS_24,
                is12 ? Words.Degrees.FAHRENHEIT : Words.Degrees.CELSIUS));
      }
    }
    return all;
  }

  private static Stream<Case> cases() {
    return IntStream.range(0, ExtremeDoughs.COUNT)
        .boxed()
        .flatMap(dough -> Stream.of(Kind.values()).map(kind -> new Case(dough, kind)));
  }

  /** Each dough and each kind once; each sheet at least once. */
  private static Stream<Case> sample() {
    return IntStream.range(0, ExtremeDoughs.COUNT)
        .mapToObj(dough -> new Case(dough, Kind.values()[dough * 5 % Kind.values().length]));
  }

  @ParameterizedTest
  @MethodSource("sample")
  void aSampleOfAllIsWhole(Case one) throws IOException {
    List<Sheet> sheets = sheets();
    assertWhole(one, List.of(sheets.get(one.dough()), sheets.get(one.dough() * 7 % 20)));
  }

  /** Every kind once; the lines compared stand on a page, which leads with the answer for them. */
  @ParameterizedTest
  @EnumSource(names = "COMPARISON", mode = EnumSource.Mode.EXCLUDE)
  void everyChartLeadsWithItsAnswer(Kind kind) {
    assertThat(drawer(new Case(0, kind)).draw(ENGLISH).chart().picture().answer())
        .isNotEmpty()
        .allSatisfy(line -> assertThat(line).isNotBlank());
  }

  /** Every kind once: what is heard of it, and what stands over it, is made of whole sentences. */
  @ParameterizedTest
  @EnumSource
  void everySentenceBeginsWithACapital(Kind kind) {
    DrawnChart drawn = drawer(new Case(0, kind)).draw(ENGLISH);
    assertThat(drawn.caption().description()).doesNotContainPattern("\\. \\p{Ll}");
    assertThat(drawn.chart().picture().subtitle())
        .allSatisfy(line -> assertThat(line).matches("\\P{Ll}.*"));
  }

  /** Every kind once: no mark stands in a picture that its key does not tell of. */
  @ParameterizedTest
  @EnumSource
  void everyMarkIsInTheKey(Kind kind) {
    assertThat(PictureKey.missing(drawer(new Case(0, kind)).draw(ENGLISH).chart())).isEmpty();
  }

  @Tag("long")
  @ParameterizedTest
  @MethodSource("cases")
  void everyChartIsWhole(Case one) throws IOException {
    assertWhole(one, sheets());
  }

  private static void assertWhole(Case one, List<Sheet> sheets) throws IOException {
    Drawer drawer = drawer(one);
    assertThat(PictureKey.missing(drawer.draw(ENGLISH).chart())).as(one.toString()).isEmpty();
    for (Sheet sheet : sheets) {
      assertWhole(drawer.draw(sheet.words()), sheet, one + " " + sheet);
    }
  }

  private static void assertWhole(DrawnChart drawn, Sheet sheet, String what) throws IOException {
    ChartSize size = sheet.size();
    BufferedImage paper =
        new BufferedImage(size.widthPt(), size.heightPt(), BufferedImage.TYPE_INT_RGB);
    ChartDrawing drawing =
        drawn.chart().drawing(paper.createGraphics(), size.widthPt(), size.heightPt());
    drawing.draw();
    assertThat(drawing.dropped()).as(what).isEmpty();
    assertThat(SimulatedSight.changing(paper)).as(what).isEmpty();
    assertThat(size.heightPt() - drawing.aroundPlotPt()).as(what).isGreaterThan(LEAST_PLOT * 9);
    assertThat(drawn.caption().description()).as(what).isNotBlank().doesNotContain("{");
    try (PDDocument document = Loader.loadPDF(drawn.bytes(ChartFormat.PDF, size))) {
      assertThat(faults(PageText.of(document, 1), size)).as(what).isEmpty();
    }
  }

  private static List<String> faults(List<PageText.Glyph> glyphs, ChartSize size) {
    Rectangle2D paper = new Rectangle2D.Double(3, 3, size.widthPt() - 6, size.heightPt() - 6);
    List<String> faults = new ArrayList<>();
    for (int i = 0; i < glyphs.size(); i++) {
      PageText.Glyph one = glyphs.get(i);
      if (!paper.contains(one.area())) {
        faults.add(one + " clipped");
      }
      for (int j = 0; j < i; j++) {
        if (one.area().intersects(glyphs.get(j).area())) {
          faults.add(one + " on " + glyphs.get(j));
        }
      }
    }
    return faults;
  }

  /** Draws what was computed once in the words of a language. */
  private interface Drawer {
    DrawnChart draw(Words words);
  }

  private static Drawer drawer(Case one) {
    RiseForecast dough = ExtremeDoughs.dough(one.dough());
    return switch (one.kind()) {
      case RISE -> words -> rise(chart(dough, words).mixedAt(EVENING), words);
      case RISE_WITHOUT_CLOCK -> words -> rise(chart(dough, words), words);
      case NIGHT -> loaf(dough, Proof.inCold(Temperature.ofCelsius(4), 12));
      case LONG_NIGHT -> loaf(dough, Proof.inCold(Temperature.ofCelsius(2), 60));
      case ROOM -> loaf(dough, Proof.inRoom(Temperature.ofCelsius(22), 2));
      case TODAY -> words -> today(dough, words);
      case COMPARISON -> words -> comparison(dough, words);
      case FEED -> feed(18 + one.dough() * 1.2, EVENING);
      case FEED_WITHOUT_CLOCK -> feed(18 + one.dough() * 1.2, Optional.empty());
      case DAY -> words -> day(SampleDays.one(), SampleDays.ONE_NAME, words);
      case CLASS_DAY -> words -> day(SampleDays.two(), SampleDays.TWO_NAMES, words);
      case TRIAL -> words -> trial(BowlTest.values()[one.dough() % 2], words);
      case JARS -> words -> jars(1 + 2 * one.dough(), words);
    };
  }

  private static RiseChartData.Builder chart(RiseForecast dough, Words words) {
    return RiseChartData.of(dough, 25, 30, 50, 75, 100)
        .title(words.say("chart.title.rise"))
        .warnings(lines(dough.warnings(), words));
  }

  private static List<String> lines(List<Warning> warnings, Words words) {
    return warnings.stream().map(each -> Advice.of(words, each).sentences()).toList();
  }

  private static DrawnChart rise(RiseChartData.Builder chart, Words words) {
    return Charts.in(words).rise(chart.build());
  }

  private static Drawer loaf(RiseForecast dough, Proof proof) {
    ShapeForecast shape =
        ShapeForecaster.of(dough, proof).with(LoafSettings.SEARCH.withMembers(32)).forecast();
    return words -> {
      RiseChartData.Builder chart = chart(dough, words).mixedAt(EVENING);
      chart.shape(dough, proof, shape);
      List<String> why = lines(shape.warnings(), words);
      if (!shape.isPossible()) {
        chart.whyNoShape(why.get(why.size() - 1));
      }
      DrawnChart drawn = rise(chart, words);
      String first = drawn.caption().description();
      if (shape.isPossible()) {
        String answer = words.say("sheet.answer");
        assertThat(first).startsWith(answer.substring(0, answer.indexOf('{')));
      } else {
        assertThat(first).startsWith(why.get(why.size() - 1));
      }
      return drawn;
    };
  }

  private static DrawnChart today(RiseForecast dough, Words words) {
    RiseChartData plain = chart(dough, words).build();
    double last = Math.min(plain.lastHour(), 4);
    double read = Series.at(plain.hours(), plain.likelyPercent(), last);
    double[] expected = plain.earlyPercent();
    return rise(
        chart(dough, words)
            .mixedAt(EVENING)
            .readings(
                List.of(
                    new RiseChartData.JarReading(last / 2, read / 2),
                    new RiseChartData.JarReading(last, read)))
            .today(
                new RiseChartData.Today(
                    plain.hours(),
                    expected,
                    last,
                    OptionalDouble.of(last + 1),
                    OptionalDouble.of(-0.75))),
        words);
  }

  /** Six doughs with long names, all nearly alike. */
  private static DrawnChart comparison(RiseForecast dough, Words words) {
    RiseChartData data = RiseChartData.of(dough).build();
    List<LineSeries> lines = new ArrayList<>();
    for (int i = 0; i < 6; i++) {
      double part = 1 - 0.03 * i;
      lines.add(
          new LineSeries(
              words.say("flour.WHOLEMEAL_SPELT") + " " + words.temperature(20 + i),
              data.hours(),
              java.util.Arrays.stream(data.likelyPercent()).map(each -> part * each).toArray()));
    }
    PrintedChart chart = LinesChart.of("", words.say("chart.rise"), lines, words);
    return new DrawnChart(
        chart, new ChartCaption("lines", words.say("compare.overlay"), words.language()));
  }

  private static DrawnChart day(DayPlan day, List<String> names, Words words) {
    String title = words.say("chart.title.day", Map.of("time", "12:00"));
    return Charts.in(words).day(title, day, names, SampleDays.ZERO);
  }

  private static DrawnChart trial(BowlTest test, Words words) {
    FlourClass flour = test == BowlTest.PASTE ? FlourClass.RYE : FlourClass.WHITE;
    List<GradedBowl> bowls = new ArrayList<>();
    for (Grade grade : Grade.values()) {
      double percent = AbsorptionPrior.of(flour.flour()).limitPercent() - 14 + 4 * grade.ordinal();
      bowls.add(new GradedBowl("a", "Ann", percent, grade));
      bowls.add(new GradedBowl("a", "Ben", percent, grade));
    }
    AbsorptionFit fit = AbsorptionFit.of(bowls, AbsorptionPrior.of(flour.flour()));
    String name = words.say("flour." + flour.name());
    return Charts.in(words)
        .flour(
            words.say("chart.title.flour", Map.of("flour", name)), fit, test, Experience.BEGINNER);
  }

  private static DrawnChart jars(int count, Words words) {
    List<JarsChart.Jar> jars = new ArrayList<>();
    for (int i = 0; i < count; i++) {
      double early = 3 + 0.3 * i;
      TimeWindow when =
          i == 2
              ? new TimeWindow(
                  OptionalDouble.of(5), OptionalDouble.empty(), OptionalDouble.empty(), 0.4)
              : new TimeWindow(
                  OptionalDouble.of(early),
                  OptionalDouble.of(early * 1.4),
                  OptionalDouble.of(early * 2),
                  1);
      jars.add(new JarsChart.Jar("Wilhelmina " + i, 40 + 3 * i, 4 + 0.5 * i, when));
    }
    return JarsChart.of(jars, words);
  }

  private static Drawer feed(double celsius, Optional<ZonedDateTime> fedAt) {
    FeedingForecast forecast =
        FeedingPlanner.with(RiseForecaster.standard().withMembers(32))
            .forecast(
                Feeding.of(new FeedRatio(1, 5, 5)),
                DoughTemperature.steady(Temperature.ofCelsius(celsius)));
    return words ->
        Charts.in(words)
            .feeding(words.say("chart.title.feed", Map.of("ratio", "1:5:5")), forecast, fedAt);
  }
}
