package doughtide.report;

import static org.assertj.core.api.Assertions.assertThat;

import doughtide.report.handout.Handout;
import doughtide.report.page.PageFormat;
import doughtide.report.page.PageTest;
import doughtide.report.page.PaperSize;
import doughtide.report.words.Language;
import doughtide.report.words.Words;
import java.io.IOException;
import java.util.Map;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;

/** Every kind of page in every language, on both sheets and in both sizes of print. */
@Tag("long")
class EveryPageLongTest {

  @ParameterizedTest
  @EnumSource
  void everyPageOnEverySheetKeepsItsTextInsideAndApart(Language language) throws IOException {
    Words words = Words.in(language);
    for (Map.Entry<String, Handout> entry : ComputedPages.handoutsByName(words).entrySet()) {
      for (PaperSize paper : PaperSize.values()) {
        for (PageFormat.TextSize size : PageFormat.TextSize.values()) {
          PageFormat format = new PageFormat(paper, PageFormat.Orientation.UPRIGHT, size);
          String what = entry.getKey() + " " + language + " " + format;
          byte[] pdf = entry.getValue().bytes(format, words, Samples.DATE);
          try (PDDocument document = Loader.loadPDF(pdf)) {
            assertThat(document.getNumberOfPages())
                .as(what)
                .isLessThanOrEqualTo(size == PageFormat.TextSize.LARGE ? 2 : 1);
            for (int page = 1; page <= document.getNumberOfPages(); page++) {
              assertThat(PageTest.faults(document, page, format)).as(what).isEmpty();
            }
          }
        }
      }
    }
  }
}
