package doughtide.cli.command.again;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import doughtide.core.quantity.InputException;
import doughtide.report.handout.ClassDayPages.Student;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class OtherLoavesTest {
  private static Map<Integer, Integer> read(String text, String... names) {
    return OtherLoaves.read("--loaves", text, new DayNames(List.of(names), 1));
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "rye 3, dough 1 2",
        "Rye: 3; dough 1: 2",
        "3 rye, 2 dough 1",
        "rye × 3,dough 1=2",
        "dough 1 2, RYE 3",
      })
  void eachDoughHasItsLoaves(String text) {
    assertThat(read(text, "rye", "dough 1")).isEqualTo(Map.of(0, 3, 1, 2));
  }

  @Test
  void doughsThatAreNotNamedKeepTheirs() {
    assertThat(read("rye, dark 3", "wheat", "rye, dark", "rye")).isEqualTo(Map.of(1, 3));
  }

  @Test
  void whatCanBeReadInTwoWaysIsRefusedWithBoth() {
    assertThatThrownBy(() -> read("3 rye 4", "3 rye", "rye 4"))
        .isInstanceOf(InputException.class)
        .hasMessageContaining("4 of '3 rye' or as 3 of 'rye 4'");
  }

  @ParameterizedTest
  @ValueSource(
      strings = {"3", "rye", "spelt 3", "rye 3 wheat 2", "rye 3, rye 2", "rye -1", "rye 3,5"})
  void whatIsNoNumberOfLoavesOfADoughIsRefused(String text) {
    assertThatThrownBy(() -> read(text, "rye", "wheat"))
        .isInstanceOf(InputException.class)
        .hasMessageContaining("--loaves \"rye 3, wheat 2\"; the doughs are rye, wheat");
  }

  @Test
  void aDoughHasFrom1To500Loaves() {
    assertThatThrownBy(() -> read("rye 501", "rye", "wheat"))
        .hasMessage("--loaves of 'rye' 501 is outside 1…500");
    assertThatThrownBy(() -> read("rye 0", "rye", "wheat")).hasMessageContaining("1…500");
  }

  @Test
  void loavesOfOneStudentAreHersAndThoseOfSeveralAreNotParted() {
    Student first = new Student("Ann", 0, 2, Optional.empty());
    Student second = new Student("Björn", 1, 1, Optional.empty());

    assertThat(OtherLoaves.students(List.of(first, second), 0, "rye", 4))
        .containsExactly(new Student("Ann", 0, 4, Optional.empty()), second);
    assertThatThrownBy(() -> OtherLoaves.students(List.of(first, first), 0, "rye", 4))
        .isInstanceOf(InputException.class)
        .hasMessageContaining("'rye' is shared by students");
  }
}
