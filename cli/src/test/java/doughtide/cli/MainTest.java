package doughtide.cli;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.api.Test;

class MainTest {

  @Test
  void versionLineNamesTheProgramAndSaysWhenItIsNotPackaged() {
    assertThat(Main.versionLine()).isEqualTo("doughtide (unpackaged)");
  }
}
