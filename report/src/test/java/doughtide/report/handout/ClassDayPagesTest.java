package doughtide.report.handout;

import static org.assertj.core.api.Assertions.assertThat;

import doughtide.report.SampleDays;
import doughtide.report.Samples;
import doughtide.report.page.PageFormat;
import doughtide.report.words.Language;
import doughtide.report.words.Words;
import java.io.IOException;
import java.util.List;
import java.util.Optional;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.text.PDFTextStripper;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;

class ClassDayPagesTest {

  private static String side(ClassDayPages pages, Words words, int number) throws IOException {
    byte[] pdf = pages.bytes(PageFormat.a4(), words, Samples.DATE);
    try (PDDocument document = Loader.loadPDF(pdf)) {
      PDFTextStripper text = new PDFTextStripper();
      text.setStartPage(number);
      text.setEndPage(number);
      return text.getText(document).replaceAll("[\\s\u00a0]+", " ");
    }
  }

  private static ClassDayPages pages(ClassDayPages.Student... students) {
    return new ClassDayPages(
        "day", SampleDays.two(), SampleDays.TWO_NAMES, SampleDays.ZERO, List.of(students));
  }

  private static ClassDayPages.Student student(String name, int dough) {
    return new ClassDayPages.Student(name, dough, 1, Optional.empty());
  }

  @ParameterizedTest
  @EnumSource
  void aStudentsPageWarnsOfTheJarAndOfTheCerealsOnItsOneSide(Language language) throws IOException {
    Words words = Words.in(language);
    ClassDayPages pages = pages(student("Eira", 0));

    String text = side(pages, words, 1);

    assertThat(text).contains("Eira").contains(plain(words.say("caution.jar")));
    assertThat(text).contains(words.named("cereal", "wheat"));
    assertThat(text).doesNotContain("{");
    assertThat(side(pages, words, 2)).doesNotContain(plain(words.say("caution.jar")));
  }

  private static String plain(String text) {
    return text.replaceAll("[\\s\u00a0]+", " ");
  }
}
