package doughtide.core.quantity;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import org.junit.jupiter.api.Test;

class NearestTest {

  private static final List<String> NAMES = List.of("hydration", "salt", "starter", "zone");

  @Test
  void slipsOfTheFingerAreFound() {
    assertThat(Nearest.to("hydratoin", NAMES)).contains("hydration");
    assertThat(Nearest.to("hyd", NAMES)).contains("hydration");
    assertThat(Nearest.to("SALT", NAMES)).contains("salt");
    assertThat(Nearest.to("slat", NAMES)).contains("salt");
    assertThat(Nearest.to("startr", NAMES)).contains("starter");
  }

  @Test
  void aWordMoreOrLessIsNear() {
    List<String> names = List.of("dough-temp", "room", "dough-mass");
    assertThat(Nearest.to("temp", names)).contains("dough-temp");
    assertThat(Nearest.to("room-temp", names)).contains("room");
    assertThat(Nearest.allTo("dough", names)).containsExactly("dough-temp", "dough-mass");
  }

  @Test
  void otherWordsAreNot() {
    assertThat(Nearest.to("oven", NAMES)).isEmpty();
    assertThat(Nearest.to("", NAMES)).isEmpty();
    assertThat(Nearest.to("s".repeat(100_000), NAMES)).isEmpty();
  }
}
