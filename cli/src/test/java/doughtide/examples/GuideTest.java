package doughtide.examples;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.regex.MatchResult;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;

/** The lines of the guide stand in the tests beside this one and in those of the other modules. */
class GuideTest {
  private static final Path ROOT = Path.of(System.getProperty("doughtide.testdata")).getParent();
  private static final Pattern BLOCK =
      Pattern.compile("<pre>\\{@code\\n(.*?)\\n}</pre>", Pattern.DOTALL);

  @Test
  void everyLineOfTheTenTasksIsCompiled() throws IOException {
    String guide = Files.readString(ROOT.resolve("core/src/main/javadoc/overview.html"));
    List<String> blocks = BLOCK.matcher(guide).results().map(GuideTest::code).toList();
    String examples = "";
    for (String module : List.of("core", "report", "cli")) {
      examples += sources(ROOT.resolve(module + "/src/test/java/doughtide/examples"));
    }

    assertThat(blocks).hasSize(13);
    assertThat(examples).contains(blocks);
  }

  private static String code(MatchResult block) {
    return plain(block.group(1));
  }

  private static String sources(Path folder) throws IOException {
    StringBuilder text = new StringBuilder();
    try (Stream<Path> files = Files.list(folder)) {
      for (Path file : files.toList()) {
        text.append(plain(Files.readString(file)));
      }
    }
    return text.toString();
  }

  private static String plain(String code) {
    return code.replaceAll("\\s+", " ").strip();
  }
}
