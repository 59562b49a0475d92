package doughtide.cli.hand;

import static org.assertj.core.api.Assertions.assertThat;

import doughtide.core.quantity.InputException;
import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** What is typed at the bench is understood or refused in one line, in whatever order. */
class NoteWordsPropertyTest {
  private static final List<String> PARTS =
      List.of(
          "saturday",
          "13:30",
          "9.30",
          "21h30",
          "7am",
          "noon",
          "midnight",
          "24:00",
          "24",
          "44%",
          "44 %",
          "44",
          "78mm",
          "7,8 cm",
          "24C",
          "24",
          "C",
          "75F",
          "core",
          "12C",
          "pH",
          "4.2",
          "fold",
          "folded",
          "shaped",
          "cold",
          "into",
          "into-cold",
          "result",
          "under",
          "now",
          "",
          " ",
          "\u00a0",
          "-5%",
          "1e9%",
          "99999999999999999999%",
          "%",
          "\u0664\u0664%",
          "🍞",
          "=1+1");

  @ParameterizedTest(name = "seed {0}")
  @ValueSource(longs = {1, 2, 3, 4})
  void isUnderstoodOrRefused(long seed) {
    Random random = new Random(seed);
    for (int i = 0; i < 1500; i++) {
      List<String> words = new ArrayList<>();
      for (int w = random.nextInt(6); w >= 0; w--) {
        words.add(PARTS.get(random.nextInt(PARTS.size())));
      }
      assertThat(outcome(words)).as("%s", words).matches("understood|[^\n]{5,}");
    }
  }

  private static String outcome(List<String> words) {
    try {
      NoteWords note = NoteWords.of(words);
      note.celsius();
      note.core();
      note.ph();
      return "understood";
    } catch (InputException e) {
      return String.valueOf(e.getMessage());
    }
  }

  @ParameterizedTest
  @CsvSource({
    "shaped 15:40, 15:40",
    "15:40 shaped, 15:40",
    "into cold 16.30, 16.30",
    "cold 4pm, 4pm",
    "fold noon, noon"
  })
  void whatHappenedMayStandBeforeItsTime(String typed, String time) {
    assertThat(NoteWords.of(List.of(typed.split(" "))).time()).contains(time);
  }

  @Test
  void aReadingStillBeginsWithItsTime() {
    assertThat(outcome(List.of("44%", "13:30"))).contains("is a time: it stands first");
  }
}
