package doughtide.cli.command.roster;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import doughtide.core.quantity.InputException;
import java.util.List;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;

class AbsentTest {
  private static final List<String> NAMES = List.of("Ann", "Lee, Cy", "Lee", "björn", "Björn");

  @Test
  void namesStandAsTheRosterWritesThemWithCommasOrSemicolons() {
    assertThat(Absent.read("ann,  Lee", NAMES)).containsExactly("Ann", "Lee");
    assertThat(Absent.read("Ann; Lee, Cy", NAMES)).containsExactly("Ann", "Lee, Cy");
    assertThat(Absent.read("Ann, Ann", NAMES)).containsExactly("Ann");
  }

  @Test
  void capitalsDecideOnlyWhereTwoNamesDifferByThem() {
    assertThat(Absent.read("björn", NAMES)).containsExactly("björn");
    assertThat(Absent.read("Björn", NAMES)).containsExactly("Björn");
    assertThatThrownBy(() -> Absent.read("BJÖRN", NAMES))
        .isInstanceOf(InputException.class)
        .hasMessageContaining("is no student of the roster");
  }

  @Test
  void anUnknownNameListsTheStudentsAsFarAsTheyGoOnALine() {
    List<String> many = IntStream.range(0, 40).mapToObj(i -> "S" + i).toList();

    assertThatThrownBy(() -> Absent.read("S1, Zoe", many))
        .hasMessageContaining("--absent Zoe is no student")
        .hasMessageContaining("S0; S1; ")
        .hasMessageContaining("S29 and 10 more");
    assertThatThrownBy(() -> Absent.read(" ", NAMES)).isInstanceOf(InputException.class);
    assertThatThrownBy(() -> Absent.read("S", List.of("S"))).hasMessageContaining("all students");
  }
}
