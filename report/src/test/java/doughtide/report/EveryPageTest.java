package doughtide.report;

import static org.assertj.core.api.Assertions.assertThat;

import doughtide.core.quantity.InputException;
import doughtide.report.handout.Handout;
import doughtide.report.handout.HandoutDough;
import doughtide.report.page.Page;
import doughtide.report.page.PageFormat;
import doughtide.report.page.PageKey;
import doughtide.report.page.PageLayoutException;
import doughtide.report.page.PageTest;
import doughtide.report.page.PaperSize;
import doughtide.report.words.Language;
import doughtide.report.words.Words;
import java.io.IOException;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.text.PDFTextStripper;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;
import org.junit.jupiter.params.provider.MethodSource;

/** Pages of doughs at the ends of what there is: nothing off the paper, nothing on each other. */
class EveryPageTest {

  private static final List<PageKinds.Kind> KINDS = PageKinds.all();
  private static final List<HandoutDough> DOUGHS = PageKinds.extremeDoughs();
  private static final int SLOWEST = 7;
  private static final int LARGE = PageFormat.TextSize.LARGE.ordinal();
  private static final int SIDES = 4;
  private static final int SIDES_OF_A_CLASS = 12; // two students and two persons in large print

  /** Every kind twice, every dough and language in turn, on both papers and in both sizes. */
  @Test
  void aSampleInWhichEveryKindMeetsTwoDoughs() throws IOException {
    int drawn = 0;
    int count = 2 * KINDS.size();
    for (int i = 0; i < count; i++) {
      Language language = Language.values()[(i + i / KINDS.size()) % Language.values().length];
      int dough = i % DOUGHS.size();
      PageKinds.Kind kind = KINDS.get(i % KINDS.size());
      Words words = Words.in(language);
      Optional<Handout> handout = made(kind, words, dough);
      if (handout.isPresent()) {
        check(handout.get(), kind, words, dough, format(i / 2 % 2, i / 3 % 2));
        drawn++;
      }
    }
    assertThat(drawn).isGreaterThan(count * 3 / 4);
  }

  /** Every kind once: no mark, line or sign stands on a page that the page does not tell of. */
  @ParameterizedTest
  @MethodSource("kinds")
  void everyMarkIsInTheKey(PageKinds.Kind kind) {
    Words words = Words.in(Language.ENGLISH);
    List<Page> pages = kind.of(words, DOUGHS.get(0)).pages(PageFormat.a4(), words, Samples.DATE);
    assertThat(PageKey.missing(pages)).isEmpty();
  }

  private static List<PageKinds.Kind> kinds() {
    return KINDS;
  }

  /** A dough so slow that it has more to say than any other, each sentence several lines long. */
  @ParameterizedTest
  @EnumSource
  void largePrintOfTheDoughWithTheMostWarningsIsNeverRefused(Language language) throws IOException {
    Words words = Words.in(language);
    PageKinds.Kind sheet = KINDS.get(0);
    Handout handout = sheet.of(words, DOUGHS.get(SLOWEST));
    for (int paper = 0; paper < PaperSize.values().length; paper++) {
      check(handout, sheet, words, SLOWEST, format(paper, LARGE));
    }
  }

  @Tag("long")
  @ParameterizedTest
  @EnumSource
  void everyKindOfEveryDoughOnEveryPaper(Language language) throws IOException {
    Words words = Words.in(language);
    List<String> faults = new ArrayList<>();
    int drawn = 0;
    for (PageKinds.Kind kind : KINDS) {
      for (int dough = 0; dough < DOUGHS.size(); dough++) {
        Optional<Handout> handout = made(kind, words, dough);
        drawn += handout.isPresent() ? 1 : 0;
        for (int i = 0; i < 4 && handout.isPresent(); i++) {
          try {
            check(handout.get(), kind, words, dough, format(i / 2, i % 2));
          } catch (AssertionError e) {
            faults.add(e.getMessage()); // so that one run finds them all
          }
        }
      }
    }
    assertThat(faults).isEmpty();
    assertThat(drawn).isGreaterThan(KINDS.size() * DOUGHS.size() * 3 / 4);
  }

  private static PageFormat format(int paper, int size) {
    return new PageFormat(
        PaperSize.values()[paper],
        PageFormat.Orientation.UPRIGHT,
        PageFormat.TextSize.values()[size]);
  }

  /** Nothing where the dough has no such hour, which is then said in words. */
  private static Optional<Handout> made(PageKinds.Kind kind, Words words, int dough) {
    try {
      return Optional.of(kind.of(words, DOUGHS.get(dough)));
    } catch (PageLayoutException e) {
      throw e;
    } catch (InputException e) {
      assertThat(e.getMessage()).isNotBlank();
      return Optional.empty();
    }
  }

  private static void check(
      Handout handout, PageKinds.Kind kind, Words words, int dough, PageFormat format)
      throws IOException {
    String what = kind.name() + ", dough " + dough + ", " + words.language() + ", " + format;
    try (PDDocument document = Loader.loadPDF(handout.bytes(format, words, Samples.DATE))) {
      assertThat(document.getNumberOfPages())
          .as(what)
          .isLessThanOrEqualTo(kind.name().equals("class-day") ? SIDES_OF_A_CLASS : SIDES);
      for (int page = 1; page <= document.getNumberOfPages(); page++) {
        assertThat(PageTest.faults(document, page, format)).as(what).isEmpty();
      }
      assertThat(new PDFTextStripper().getText(document))
          .as(what)
          .hasSizeGreaterThan(100)
          .doesNotContain("{", "}", "NaN", "Infinity", "\u221e", "\u25a1");
    } catch (InputException e) {
      throw new AssertionError(what + ": " + e.getMessage(), e);
    }
  }
}
