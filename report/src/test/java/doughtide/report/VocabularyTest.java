package doughtide.report;

import static org.assertj.core.api.Assertions.assertThat;

import doughtide.report.type.Fonts;
import doughtide.report.words.Language;
import doughtide.report.words.Words;
import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.util.List;
import org.junit.jupiter.api.Test;

class VocabularyTest {

  private static List<String[]> rows() throws IOException {
    try (InputStream in = Words.class.getResourceAsStream("/doughtide/report/vocabulary.csv")) {
      return new String(in.readAllBytes(), StandardCharsets.UTF_8)
          .lines()
          .map(line -> line.split(",", -1))
          .toList();
    }
  }

  @Test
  void everyTermHasAWordInEveryLanguage() throws IOException {
    List<String[]> rows = rows();
    assertThat(rows.get(0)).containsExactly("term", "en", "de", "fr", "es", "pt", "note");
    for (String[] row : rows) {
      assertThat(row).as(String.join(",", row)).hasSize(7);
      for (int i = 0; i < 6; i++) {
        assertThat(row[i]).as(String.join(",", row)).isNotBlank();
        assertThat(Fonts.printable(row[i])).isEqualTo(row[i]);
      }
    }
    assertThat(rows.stream().map(row -> row[0])).doesNotHaveDuplicates().hasSizeGreaterThan(40);
  }

  @Test
  void pagesUseTheTradesWords() throws IOException {
    String word =
        rows().stream()
            .filter(row -> row[0].equals("dough_temperature"))
            .findFirst()
            .orElseThrow()[2];
    assertThat(Words.in(Language.GERMAN).say("chart.doughTemperature")).isEqualTo(word);
  }
}
