package doughtide.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** The hours printed in the README are the hours its command gives. */
class ReadmeTableTest {
  private static final String CALL = "java -jar cli/target/doughtide.jar ";

  @Test
  void theTableIsTheAnswerOfTheCommandAboveIt(@TempDir Path folder) throws IOException {
    Path root = Path.of(System.getProperty("doughtide.testdata")).getParent();
    String readme = Files.readString(root.resolve("README.md"));
    String call = readme.substring(readme.indexOf(CALL) + CALL.length());
    String[] words = call.substring(0, call.indexOf('\n')).split(" ");
    List<String> table =
        readme
            .substring(readme.indexOf("After mixing"))
            .lines()
            .takeWhile(l -> !l.equals("```"))
            .toList();

    CliRun run = CliRun.in(TestEnvironment.in(folder).usual(), words);

    assertThat(table).hasSizeGreaterThan(3);
    assertThat(run.out().lines()).containsAll(table);
  }
}
