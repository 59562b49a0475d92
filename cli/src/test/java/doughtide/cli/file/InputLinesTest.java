package doughtide.cli.file;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import doughtide.cli.TestEnvironment;
import doughtide.core.quantity.InputException;
import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class InputLinesTest {

  @TempDir Path folder;

  @Test
  void anyLineEndingAndAByteOrderMarkAreRead() {
    assertThat(texts("\uFEFFtime;rise\r\n09:30;0\r10:30;4\n\n11:30;9 °"))
        .containsExactly("1 time;rise", "2 09:30;0", "3 10:30;4", "4 ", "5 11:30;9 °");
  }

  @Test
  void aMalformedByteIsToldWithItsLine() {
    byte[] latin1 = "ok\nBr\u00f6tchen\n".getBytes(StandardCharsets.ISO_8859_1);
    assertThatThrownBy(() -> read(latin1))
        .isInstanceOf(InputException.class)
        .hasMessage("'log.csv' line 2: this is no UTF-8 text: save the file as text in UTF-8");
    assertThatThrownBy(() -> read("ok\nx".getBytes(StandardCharsets.UTF_16)))
        .hasMessageContaining("'log.csv' line 1: this is no UTF-8 text");
  }

  @Test
  void anEndlessLineIsRefusedEarly() {
    byte[] bytes = ("ok\n" + "x".repeat(70_000)).getBytes(StandardCharsets.UTF_8);
    assertThatThrownBy(() -> read(bytes))
        .hasMessageContaining("'log.csv' line 2: the line is longer");
  }

  @Test
  void aLineOfExactlyTheGreatestLengthIsRead() {
    assertThat(texts("x".repeat(65_536))).hasSize(1);
  }

  @Test
  void filesThatCannotBeReadAreToldInOneLine() throws IOException {
    Files.createFile(folder.resolve("empty.csv"));
    Files.createDirectory(folder.resolve("sub"));
    assertThatThrownBy(() -> open("empty.csv"))
        .hasMessage("'empty.csv' is empty: there is nothing to read");
    assertThatThrownBy(() -> open("sub")).hasMessage("'sub' is a folder: give the name of a file");
    assertThatThrownBy(() -> open("none.csv")).hasMessageStartingWith("'none.csv' does not exist");
    assertThatThrownBy(() -> open("")).hasMessageContaining("'' is empty: give the name of a file");
  }

  @Test
  void aProblemNamesFileAndLine() throws IOException {
    Files.writeString(folder.resolve("a b.csv"), "x\ny\n");
    try (InputLines lines = open("a b.csv")) {
      assertThat(lines.next()).isPresent();
      InputLines.Line second = lines.next().orElseThrow();
      assertThat(lines.problem(second, "no rise")).hasMessage("'a b.csv' line 2: no rise");
      assertThat(lines.next()).isEmpty();
    }
  }

  private InputLines open(String name) {
    return InputLines.open("--temps", name, TestEnvironment.in(folder));
  }

  private static List<String> texts(String content) {
    return read(content.getBytes(StandardCharsets.UTF_8));
  }

  private static List<String> read(byte[] bytes) {
    List<String> texts = new ArrayList<>();
    try (InputLines lines = InputLines.of("log.csv", new ByteArrayInputStream(bytes))) {
      for (Optional<InputLines.Line> line = lines.next(); line.isPresent(); line = lines.next()) {
        texts.add(line.get().number() + " " + line.get().text());
      }
    }
    return texts;
  }
}
