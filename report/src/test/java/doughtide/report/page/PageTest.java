package doughtide.report.page;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import doughtide.core.quantity.InputException;
import doughtide.report.PageText;
import doughtide.report.Samples;
import doughtide.report.chart.LineSeries;
import doughtide.report.chart.LinesChart;
import doughtide.report.words.Language;
import doughtide.report.words.Words;
import java.awt.geom.Rectangle2D;
import java.io.IOException;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.cos.COSName;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.pdmodel.PDPage;
import org.apache.pdfbox.text.PDFTextStripper;
import org.junit.jupiter.api.Test;

public class PageTest {

  private static final Words WORDS = Words.in(Language.ENGLISH);

  private static void assertTextInsideAndApart(
      PDDocument document, int page, PageFormat format, String what) throws IOException {
    assertThat(PageText.of(document, page)).as(what).hasSizeGreaterThan(20);
    assertThat(faults(document, page, format)).as(what).isEmpty();
  }

  /** What lies off the paper, is too small or lies on something else. */
  public static List<String> faults(PDDocument document, int page, PageFormat format)
      throws IOException {
    PDPage sheet = document.getPage(page - 1);
    Rectangle2D paper =
        new Rectangle2D.Double(
            17, 17, sheet.getMediaBox().getWidth() - 34, sheet.getMediaBox().getHeight() - 34);
    List<PageText.Glyph> characters = PageText.of(document, page);
    List<String> faults = new ArrayList<>();
    for (int i = 0; i < characters.size(); i++) {
      PageText.Glyph one = characters.get(i);
      if (!paper.contains(one.area()) || one.sizePt() < format.text().sizePt() - 0.01) {
        faults.add(one + " off the paper or too small");
      }
      for (int j = 0; j < i; j++) {
        if (one.area().intersects(characters.get(j).area())) {
          faults.add(one + " on " + characters.get(j));
        }
      }
    }
    return faults;
  }

  @Test
  void pageIsTaggedTitledAndReproducible() throws IOException {
    List<Page> pages = Samples.bakeSheet(WORDS).pages(PageFormat.a4(), WORDS, Samples.DATE);
    byte[] bytes = Page.together(pages);
    assertThat(Page.together(pages)).isEqualTo(bytes);
    try (PDDocument document = Loader.loadPDF(bytes)) {
      assertThat(document.getDocumentCatalog().getLanguage()).isEqualTo("en");
      assertThat(document.getDocumentInformation().getTitle())
          .isEqualTo("Tidemill kitchen country dough");
      assertThat(document.getDocumentCatalog().getViewerPreferences().displayDocTitle()).isTrue();
      assertThat(document.getDocumentCatalog().getStructureTreeRoot().getKids()).isNotEmpty();
      for (COSName name : document.getPage(0).getResources().getFontNames()) {
        assertThat(document.getPage(0).getResources().getFont(name).isEmbedded()).isTrue();
      }
      assertThat(new PDFTextStripper().getText(document))
          .contains("score and bake", "Caution: Do not eat raw flour", "page 1 of 1");
    }
  }

  @Test
  void tooMuchIsRefusedWithAReason() {
    Page page = new Page(PageFormat.a4(), WORDS, "Long", Samples.DATE);
    page.ticks(Collections.nCopies(60, "a step that nobody will ever reach"));
    assertThatThrownBy(page::bytes)
        .isInstanceOf(PageLayoutException.class)
        .hasMessageContaining("does not fit on one side")
        .hasMessageContaining("list to tick off")
        .hasMessageNotContaining("\n");
  }

  @Test
  void tooManyLinesAndColumnsAreRefused() {
    List<LineSeries> lines =
        Collections.nCopies(20, new LineSeries("dough", new double[] {0, 1}, new double[] {0, 1}));
    assertThatThrownBy(() -> LinesChart.of("", "", lines, WORDS))
        .isInstanceOf(InputException.class)
        .hasMessageStartingWith("20 lines in one chart: use 1 to 6");
    Table wide =
        new Table(
            Collections.nCopies(20, new Table.Column("temperature", 1, Table.Kind.TEXT)),
            List.of());
    Page page = new Page(PageFormat.a4(), WORDS, "Wide", Samples.DATE).table(wide);
    assertThatThrownBy(page::bytes).hasMessageContaining("20 columns, too many");
  }

  @Test
  void longWordsAreBrokenInsideTheirColumn() throws IOException {
    String word = "Vollkorndinkelsauerteigroggenmischbrotteigtemperaturmessprotokoll";
    Table table =
        new Table(
            List.of(
                new Table.Column(word, 1, Table.Kind.TEXT),
                new Table.Column(word, 1, Table.Kind.STRONG),
                new Table.Column("note", 1, Table.Kind.WRITE)),
            List.of(List.of(word, word, "")));
    Page page =
        new Page(PageFormat.a4().largePrint(), WORDS, word, Samples.DATE)
            .heading(word)
            .paragraph(word)
            .table(table)
            .ticks(List.of(word));
    try (PDDocument document = Loader.loadPDF(page.bytes())) {
      assertTextInsideAndApart(document, 1, PageFormat.a4().largePrint(), "long words");
    }
  }

  @Test
  void hoursNeverShrinkWhenRoundedToQuarters() {
    assertThat(WORDS.quarterHours(4.6, 6.2)).isEqualTo("4½–6¼\u00a0h");
    assertThat(WORDS.quarterHours(0.3, 0.5)).isEqualTo("¼–½\u00a0h");
    assertThat(WORDS.quarterHours(11.2, 14.1)).isEqualTo("11–15\u00a0h");
    assertThat(WORDS.quarterHours(5, 5)).isEqualTo("5\u00a0h");
  }

  private static Table rows(int count) {
    List<List<String>> rows = new ArrayList<>();
    for (int i = 0; i < count; i++) {
      rows.add(List.of("line " + i));
    }
    return new Table(List.of(new Table.Column("head", 1, Table.Kind.TEXT)), rows);
  }

  /** A table that fits a side of its own, but not under the text before it. */
  @Test
  void aTableBeginsUnderAShortTextAndGoesOnOnTheNextSide() throws IOException {
    Page page =
        new Page(PageFormat.a4(), WORDS, "Title", Samples.DATE)
            .paragraph("A short text. ".repeat(20))
            .table(rows(32));
    List<Page> sides = page.sides();
    assertThat(sides).hasSize(2);
    try (PDDocument document = Loader.loadPDF(Page.together(sides))) {
      PDFTextStripper first = new PDFTextStripper();
      first.setEndPage(1);
      assertThat(first.getText(document)).contains("A short text", "head", "line 20");
      String all = new PDFTextStripper().getText(document);
      assertThat(all.lines().filter("head"::equals)).hasSize(2);
      assertThat(all.lines().filter(line -> line.startsWith("line "))).hasSize(32);
    }
  }

  @Test
  void aTableUnderALongTextStaysWhole() {
    Page page =
        new Page(PageFormat.a4(), WORDS, "Title", Samples.DATE)
            .paragraph("A long text. ".repeat(210))
            .table(rows(20));
    assertThat(page.sides()).hasSize(2);
    Page alone = new Page(PageFormat.a4(), WORDS, "Title", Samples.DATE).table(rows(20));
    assertThat(Page.together(List.of(page.sides().get(1)))).isEqualTo(alone.bytes());
  }

  /** What is left over of one page shares a side with the beginning of the next. */
  @Test
  void pagesInOrderLeaveNoSideToALineThatFitsOnTheNext() {
    Page first =
        new Page(PageFormat.a4(), WORDS, "Title", Samples.DATE)
            .table(rows(34))
            .paragraph("A line too many. ".repeat(6));
    Page second = new Page(PageFormat.a4(), WORDS, "Title", Samples.DATE).writingRoom("Notes", 10);
    assertThat(first.sides()).hasSize(2);
    assertThat(Page.sidesOf(first, second)).hasSize(2);
  }
}
