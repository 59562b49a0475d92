package doughtide.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.regex.Pattern;
import org.junit.jupiter.api.Test;

class ReadmeCommandsTest {
  private static final Pattern ROW = Pattern.compile("(?m)^\\| `([a-z-]+)` \\|");

  @Test
  void tableOfTheReadmeListsTheCommandsOfTheProgram() throws IOException {
    Path root = Path.of(System.getProperty("doughtide.testdata")).getParent();
    String readme = Files.readString(root.resolve("README.md"));

    assertThat(ROW.matcher(readme).results().map(row -> row.group(1)))
        .containsExactlyInAnyOrderElementsOf(Commands.NAMES);
  }
}
