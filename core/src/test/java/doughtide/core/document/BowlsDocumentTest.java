package doughtide.core.document;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import doughtide.core.flourtrial.Grade;
import doughtide.core.flourtrial.GradedBowl;
import doughtide.core.quantity.InputException;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class BowlsDocumentTest {
  private static final GradedBowl WANTED = new GradedBowl("first", "Ann", 72.5, Grade.THIN_WINDOW);

  private static List<GradedBowl> read(List<String> lines) {
    return BowlsDocument.read(lines.iterator(), Vocabulary.KEYS_ONLY);
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "first,Ann,72.5,thin window",
        "first, Ann, 72.5 %, Thin Window\r",
        "first;Ann;72,5;thin window",
        "first\tAnn\t72,5\tthin-window",
        "first,Ann,72,5,thin window",
        "first,Ann,\"72,5\",thin window",
        "\uFEFFfirst,Ann,72.5,window",
      })
  void readsOneGradeHoweverItIsWritten(String line) {
    assertThat(read(List.of(line))).containsExactly(WANTED);
  }

  @Test
  void passesOverHeadingBlanksAndRemarks() {
    List<String> lines =
        List.of(
            "\uFEFFtrial;person;hydration %;grade\r", "", "# invented", "first;Ann;72,5;window");
    assertThat(read(lines)).containsExactly(WANTED);
  }

  @Test
  void everyWordOfTheListIsRead() {
    for (Grade grade : Grade.values()) {
      assertThat(read(List.of("a;b;70;" + grade.key())).get(0).grade()).isEqualTo(grade);
    }
  }

  @Test
  void namesTheLineThatCannotBeUsed() {
    refuses("first;Ann;wet;window", "line 2: hydration 'wet' is not a number");
    refuses("first;Ann;720;window", "line 2: hydration of the bowl 720 % is outside 30…150 %");
    refuses("first;Ann;72;nice", "line 2: grade 'nice' is not known: use one of too stiff, firm");
    refuses("first;Ann;72", "line 2: 3 columns, there must be 4");
    refuses("first;;72;window", "line 2: the name of the person has 0 characters");
    refuses("first;Ann;NaN;window", "line 2: hydration 'NaN' is not a number");
  }

  private static void refuses(String second, String message) {
    assertThatThrownBy(() -> read(List.of("first;Ann;72;window", second)))
        .isInstanceOf(InputException.class)
        .hasMessageStartingWith(message)
        .hasMessageNotContaining("\n");
  }

  @Test
  void refusesATextWithoutGrades() {
    assertThatThrownBy(() -> read(List.of("trial,person,hydration,grade")))
        .isInstanceOf(InputException.class)
        .hasMessageStartingWith("no grade found");
  }

  @Test
  void columnsThatAreNamedMayComeInAnyOrder() {
    assertThat(
            read(
                List.of("note: invented", "grade;hydration;trial;person", "window;72,5;first;Ann")))
        .containsExactly(WANTED);
  }

  @Test
  void whatIsWrittenIsReadBack() {
    List<GradedBowl> bowls =
        List.of(WANTED, new GradedBowl("the \"first\"; March", "#2", 76, Grade.TORN));
    assertThat(
            BowlsDocument.read(BowlsDocument.text(bowls).lines().iterator(), Vocabulary.KEYS_ONLY))
        .isEqualTo(bowls);
  }
}
