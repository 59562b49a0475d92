package doughtide.cli.file;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import doughtide.cli.CliRun;
import doughtide.cli.TestEnvironment;
import doughtide.core.document.LoggerDocument;
import doughtide.core.document.Vocabulary;
import doughtide.core.quantity.Checks;
import doughtide.core.quantity.InputException;
import java.io.IOException;
import java.io.PrintWriter;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class LoggerFileTest {

  @TempDir Path folder;

  @Test
  void whatCannotBeReadIsToldByFileAndLine() throws IOException {
    Files.writeString(folder.resolve("log of día 1.csv"), "hours,temperature C\n0,25\nx,24\n");
    assertThatThrownBy(() -> read("log of día 1.csv"))
        .isInstanceOf(InputException.class)
        .hasMessageContaining("'log of día 1.csv' line 3: hours x is not a number");
  }

  @Test
  void aLongFileIsThinned() throws IOException {
    Path file = folder.resolve("long.csv");
    try (PrintWriter out = new PrintWriter(file.toFile(), StandardCharsets.UTF_8)) {
      out.println("hours,temperature C");
      for (int i = 0; i < 100_000; i++) {
        out.println(Checks.plain(i / 5000.0) + "," + Checks.plain(25 - i / 50_000.0));
      }
    }
    LoggerDocument content = read("long.csv");
    assertThat(content.readings().count()).isEqualTo(100_000);
    assertThat(content.readings().trace().celsius(10)).isCloseTo(24, within(0.001));
    CliRun run =
        CliRun.in(TestEnvironment.in(folder), "rise", "--temps", "long.csv", "--members", "16");
    assertThat(run.err()).isEmpty();
    assertThat(run.out()).contains("100000 readings of long.csv", "it holds from then on");
  }

  private LoggerDocument read(String name) {
    return DocumentFile.read(
        "--temps",
        name,
        TestEnvironment.in(folder),
        lines -> LoggerDocument.read(lines, Optional.empty(), Vocabulary.KEYS_ONLY));
  }
}
