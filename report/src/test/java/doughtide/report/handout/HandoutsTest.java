package doughtide.report.handout;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import doughtide.core.dough.DoughFormula;
import doughtide.core.dough.Flour;
import doughtide.core.dough.FlourClass;
import doughtide.core.dough.Starter;
import doughtide.core.loaf.Proof;
import doughtide.core.loaf.ShapeForecast;
import doughtide.core.loaf.ShapeForecaster;
import doughtide.core.quantity.InputException;
import doughtide.core.quantity.Rise;
import doughtide.core.quantity.Share;
import doughtide.core.quantity.Temperature;
import doughtide.report.ComputedPages;
import doughtide.report.PageText;
import doughtide.report.Samples;
import doughtide.report.chart.ChartFormat;
import doughtide.report.chart.ChartOutput;
import doughtide.report.chart.ChartSize;
import doughtide.report.page.PageFormat;
import doughtide.report.page.PageTest;
import doughtide.report.page.PaperSize;
import doughtide.report.page.PlotBlock;
import doughtide.report.page.StripBlock;
import doughtide.report.words.Language;
import doughtide.report.words.TimeSpan;
import doughtide.report.words.Words;
import java.awt.image.BufferedImage;
import java.io.IOException;
import java.time.ZonedDateTime;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Optional;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.rendering.ImageType;
import org.apache.pdfbox.rendering.PDFRenderer;
import org.apache.pdfbox.text.PDFTextStripper;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;

class HandoutsTest {

  private static final Words WORDS = Words.in(Language.ENGLISH);
  private static final Optional<ZonedDateTime> EVENING =
      Optional.of(ZonedDateTime.parse("2026-05-01T19:00+02:00[Europe/Berlin]"));

  private static String text(Handout handout) throws IOException {
    byte[] pdf = handout.bytes(PageFormat.a4(), WORDS, Samples.DATE);
    try (PDDocument document = Loader.loadPDF(pdf)) {
      return new PDFTextStripper().getText(document).replaceAll("[\\s\u00a0]+", " ");
    }
  }

  @Test
  void warmDoughIsFasterAndThePageSaysHowMuch() throws IOException {
    ComparisonPage page = ComputedPages.comparison(WORDS, 20, 26);
    TimeSpan cool = page.cases().get(0).mark().orElseThrow();
    TimeSpan warm = page.cases().get(1).mark().orElseThrow();
    assertThat(warm.lateHours()).isLessThan(cool.lateHours());
    assertThat(warm.earlyHours()).isLessThan(cool.earlyHours());
    assertThat(page.idea())
        .contains(WORDS.hoursSpan(cool), WORDS.hoursSpan(warm))
        .containsPattern("\\d\\.\\d–\\d\\.\\d times");
    assertThat(text(page)).contains("20 °C (68 °F)", "8 of 10", "Do not eat raw flour");
  }

  @Test
  void studentsDoNotSeeTheAnswersAndTheTeacherDoes() throws IOException {
    ComparisonPage page = ComputedPages.comparison(WORDS, 20, 23, 26);
    String students = text(page.exercise(ComparisonPage.Edition.STUDENT));
    String teacher = text(page.exercise(ComparisonPage.Edition.TEACHER));
    assertThat(page.questions()).hasSize(3);
    for (ComparisonPage.Question question : page.questions()) {
      assertThat(students).contains(question.text()).doesNotContain(question.answer());
      assertThat(teacher).contains(question.text());
    }
    String hours = WORDS.hoursSpan(page.cases().get(0).mark().orElseThrow());
    assertThat(students).doesNotContain(hours.replace('\u00a0', ' '));
    assertThat(teacher).contains(hours.replace('\u00a0', ' '), "Answers:");
  }

  /** Two sides are each filled to the foot by a chart; none holds a table alone. */
  @ParameterizedTest
  @EnumSource
  void sixDoughsFillBothSidesOfTheirComparison(PageFormat.TextSize size) throws IOException {
    ComparisonPage page = ComputedPages.comparison(WORDS, 20, 22, 24, 26, 28, 30);
    PageFormat format = new PageFormat(PaperSize.A4, PageFormat.Orientation.UPRIGHT, size);
    try (PDDocument document = Loader.loadPDF(page.bytes(format, WORDS, Samples.DATE))) {
      assertThat(document.getNumberOfPages()).isEqualTo(2);
      for (int side = 1; side <= 2; side++) {
        assertThat(lowestText(document, side)).isGreaterThan(0.85);
      }
    }
  }

  /** How far down the lowest line over the foot stands, as a part of the paper. */
  private static double lowestText(PDDocument document, int side) throws IOException {
    double paper = document.getPage(side - 1).getMediaBox().getHeight();
    return PageText.of(document, side).stream()
        .mapToDouble(glyph -> glyph.area().getMaxY() / paper)
        .filter(down -> down < 0.93)
        .max()
        .orElseThrow();
  }

  @ParameterizedTest
  @EnumSource
  void aFirstEveningTakesOneSideInEveryLanguage(Language language) {
    Words words = Words.in(language);
    for (Optional<ZonedDateTime> fedAt : List.of(Optional.<ZonedDateTime>empty(), EVENING)) {
      assertThat(
              ComputedPages.handouts(words)
                  .firstEvening(
                      Starter.ripe(), FlourClass.WHITE.flour(), Temperature.ofCelsius(24), fedAt)
                  .pages(PageFormat.a4(), words, Samples.DATE))
          .hasSize(1);
    }
  }

  @Test
  void aSheetThatIsReadByTheJarWarnsOfItsPressureAndNamesTheCereals() throws IOException {
    Handout sheet =
        ComputedPages.handouts(WORDS)
            .bakeSheet(ComputedPages.dough(), Optional.empty(), Optional.empty());
    assertThat(text(sheet)).contains(WORDS.say("caution.jar"), "Contains gluten: rye, wheat");
    Handout evening =
        ComputedPages.handouts(WORDS)
            .firstEvening(
                Starter.ripe(), FlourClass.RYE.flour(), Temperature.ofCelsius(24), EVENING);
    assertThat(text(evening)).contains(WORDS.say("caution.jar"), "raw flour");
  }

  /** With flours whose names take lines the table may go over, and the caution goes with it. */
  @ParameterizedTest
  @EnumSource
  void theCautionOfAFirstEveningNeverStandsAloneOnASide(Language language) throws IOException {
    Words words = Words.in(language);
    Flour two =
        Flour.mix(
            List.of(
                new Flour.Part(FlourClass.WHITE.flour(), Share.ofPercent(80)),
                new Flour.Part(FlourClass.WHOLEMEAL_WHEAT.flour(), Share.ofPercent(20))));
    Handout evening =
        ComputedPages.handouts(words)
            .firstEvening(Starter.ripe(), two, Temperature.ofCelsius(24), Optional.empty());
    for (PageFormat format :
        List.of(
            PageFormat.a4(),
            new PageFormat(
                PaperSize.LETTER, PageFormat.Orientation.UPRIGHT, PageFormat.TextSize.STANDARD))) {
      try (PDDocument document = Loader.loadPDF(evening.bytes(format, words, Samples.DATE))) {
        PDFTextStripper last = new PDFTextStripper();
        last.setStartPage(document.getNumberOfPages());
        assertThat(last.getText(document).replaceAll("[\\s\u00a0]+", " "))
            .contains(words.say("evening.jar") + " 2 " + words.say("evening.jar") + " 3");
      }
    }
  }

  @Test
  void twentyLinesAreRefusedBeforeAnythingIsComputed() {
    List<Temperature> many = Collections.nCopies(20, Temperature.ofCelsius(24));
    assertThatThrownBy(() -> Comparison.ofTemperatures(ComputedPages.dough(), many))
        .isInstanceOf(InputException.class)
        .hasMessageContaining("20 lines in one chart: use 1 to 6");
  }

  @Test
  void aDoughWithoutHoursIsRefusedInPlainWords() {
    HandoutDough hot = ComputedPages.dough().at(Temperature.ofCelsius(41));
    assertThatThrownBy(
            () -> ComputedPages.handouts(WORDS).bakeSheet(hot, Optional.empty(), Optional.empty()))
        .isInstanceOf(InputException.class)
        .hasMessageContaining("41")
        .hasMessageContaining("cool the dough");
  }

  @ParameterizedTest
  @EnumSource
  void stiffColdRyeWithALongNameStillFits(Language language) throws IOException {
    Words words = Words.in(language);
    String name = "Fenside rye ".repeat(16) + "12345678";
    DoughFormula formula =
        DoughFormula.builder()
            .flour(FlourClass.RYE.flour().withName(name))
            .hydration(Share.ofPercent(45))
            .build();
    HandoutDough dough = HandoutDough.steady(formula, Temperature.ofCelsius(4));
    Handouts handouts = ComputedPages.handouts(words);
    for (Handout handout :
        List.of(
            handouts.bakeSheet(dough, Optional.empty(), Optional.empty()),
            handouts.comparison(
                Comparison.ofTemperatures(dough, ComputedPages.celsius(4, 6)), Rise.ofPercent(100)),
            handouts.whyItRises(dough, Rise.ofPercent(50)))) {
      try (PDDocument document =
          Loader.loadPDF(handout.bytes(PageFormat.a4(), words, Samples.DATE))) {
        boolean oneSide = handout instanceof ComparisonPage;
        assertThat(document.getNumberOfPages())
            .as(handout.getClass().getSimpleName())
            .isLessThanOrEqualTo(oneSide ? 1 : 2);
        for (int page = 1; page <= document.getNumberOfPages(); page++) {
          assertThat(PageTest.faults(document, page, PageFormat.a4())).isEmpty();
        }
      }
    }
  }

  @Test
  void temperatureAndFlourAreSaidInEveryLanguage() {
    FormulaWords german = new FormulaWords(Words.in(Language.GERMAN));
    assertThat(german.flour(ComputedPages.formula().flour()))
        .isEqualTo("80\u00a0% backstarkes Weizenmehl, 20\u00a0% Roggenvollkornmehl");
    assertThat(german.formula(DoughFormula.builder().build())).startsWith("Helles Weizenmehl; ");
    assertThat(german.starter(ComputedPages.formula())).contains("20\u00a0%", "9,1\u00a0%");
    assertThat(german.flour(FlourClass.RYE.flour().withName("Fenside rye")))
        .isEqualTo("Fenside rye");
  }

  @Test
  void chartsComeByThemselves() {
    List<Handout.NamedChart> charts = ComputedPages.comparison(WORDS, 20, 26).charts(WORDS);
    assertThat(charts).extracting(Handout.NamedChart::name).containsExactly("overlay", "1", "2");
    Handout.NamedChart overlay = charts.get(0);
    byte[] svg =
        ChartOutput.bytes(
            overlay.chart(), ChartFormat.SVG, ChartSize.A5_LANDSCAPE, overlay.caption());
    assertThat(new String(svg, java.nio.charset.StandardCharsets.UTF_8)).contains("<svg");
  }

  @Test
  void openSpansSayFrom() {
    TimeSpan open = new TimeSpan(5, Double.POSITIVE_INFINITY);
    assertThat(WORDS.hoursSpan(open)).isEqualTo("from 5\u00a0h");
    assertThat(WORDS.quarterHours(open)).isEqualTo("from 5\u00a0h");
    assertThat(Words.in(Language.FRENCH).hoursSpan(4.6, 6.25))
        .isEqualTo("4\u00a0h\u00a035\u00a0min–6\u00a0h\u00a015\u00a0min");
  }

  @Test
  void theStripForTheJarIsTrueInMillimetresAndToTheModel() throws IOException {
    JarStrip strip = ComputedPages.jarStrip(WORDS);
    ShapeForecast shape =
        ShapeForecaster.of(ComputedPages.forecast(), Proof.inCold(Temperature.ofCelsius(4), 12))
            .forecast();
    double shapeMm = 62 * shape.rise().likely().orElseThrow() / 100;
    assertThat(strip.marks()).extracting(StripBlock.Mark::mm).isSorted().startsWith(0.0);
    assertThat(strip.marks())
        .filteredOn(StripBlock.Mark::isStrong)
        .singleElement()
        .satisfies(mark -> assertThat(mark.mm()).isCloseTo(shapeMm, within(1e-6)));
    assertThat(strip.marks().get(strip.marks().size() - 1).text()).contains("too late");
    byte[] pdf = strip.bytes(PageFormat.a4(), WORDS, Samples.DATE);
    try (PDDocument document = Loader.loadPDF(pdf)) {
      BufferedImage page = new PDFRenderer(document).renderImageWithDPI(0, 254, ImageType.GRAY);
      assertThat(longestRuns(page)).anyMatch(run -> Math.abs(run - 1000) <= 8); // 100 mm
    }
  }

  @Test
  void theSheetByHandHasTheExpectedRiseAndTheHeightToShapeAt() {
    HandSheet sheet =
        (HandSheet)
            ComputedPages.handouts(WORDS)
                .handSheet(
                    ComputedPages.dough(), Optional.empty(), Optional.empty(), Rise.ofPercent(50));
    PlotBlock.Line edges = sheet.plot().lines().get(0);
    PlotBlock.Line expected = sheet.plot().lines().get(1);
    PlotBlock.Line ahead = sheet.plot().lines().get(2);
    double likely = ComputedPages.forecast().hoursToRise(Rise.ofPercent(50)).likely().orElseThrow();
    assertThat(at(expected, likely)).isCloseTo(50, within(1.0));
    assertThat(at(ahead, likely - 1)).isCloseTo(50, within(1.0));
    assertThat(sheet.plot().lines().get(4).y()).containsOnly(50);
    assertThat(edges.y()).containsExactly(expected.y());
    assertThat(edges.grey()).as("a photocopy keeps the edges of what is grey").isZero();
    assertThat(edges.thicknessPt()).isGreaterThan(expected.thicknessPt() + 1);
    assertThat(sheet.answer()).contains(WORDS.hours(likely), "50%");
  }

  private static double at(PlotBlock.Line line, double x) {
    int i = 1;
    while (line.x()[i] < x) {
      i++;
    }
    double part = (x - line.x()[i - 1]) / (line.x()[i] - line.x()[i - 1]);
    return line.y()[i - 1] + part * (line.y()[i] - line.y()[i - 1]);
  }

  @Test
  void theWallAgreesWithTheSheetOfTheSameNight() {
    BakeSheet sheet = ComputedPages.bakeSheet(WORDS);
    NightTable.Cell cell = ComputedPages.nightTable(WORDS).cells().get(1).get(1).orElseThrow();
    BakeSheet.Step end =
        sheet.steps().stream()
            .filter(step -> step.name().equals(WORDS.say("step.bulkEnd")))
            .findFirst()
            .orElseThrow();
    assertThat(cell.hours()).isEqualTo(end.when());
    assertThat(end.forecast()).isEqualTo("rise " + Math.round(cell.jarPercent()) + "%");
    assertThat(sheet.answer().orElseThrow()).contains(Math.round(cell.jarPercent()) + "%");
  }

  /** The longest dark run of each row of a picture, in dots. */
  private static List<Integer> longestRuns(BufferedImage page) {
    List<Integer> runs = new ArrayList<>();
    for (int y = 0; y < page.getHeight(); y++) {
      int longest = 0;
      int run = 0;
      for (int x = 0; x < page.getWidth(); x++) {
        run = (page.getRGB(x, y) & 0xff) < 128 ? run + 1 : 0;
        longest = Math.max(longest, run);
      }
      runs.add(longest);
    }
    return runs;
  }
}
