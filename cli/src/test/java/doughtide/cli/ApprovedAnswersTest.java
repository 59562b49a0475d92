package doughtide.cli;

import static org.assertj.core.api.Assertions.assertThat;
import static org.junit.jupiter.params.provider.Arguments.arguments;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.Arguments;
import org.junit.jupiter.params.provider.MethodSource;

/**
 * The answers that other programs read, byte for byte as they were approved. With the system
 * property {@code doughtide.approve} set to {@code true} the files are written anew; look at what
 * changed before you keep them.
 */
class ApprovedAnswersTest {

  private static final Path DATA = Path.of(System.getProperty("doughtide.testdata"));
  private static final Path APPROVED = DATA.resolve("approved/json");

  @ParameterizedTest(name = "{0}")
  @MethodSource("calls")
  void anAnswerIsWhatWasApproved(String name, String words) throws IOException {
    CliRun run = CliRun.in(TestEnvironment.in(DATA).usual(), words(words));
    assertThat(run.err()).isEmpty();
    Path file = APPROVED.resolve(name + ".json");
    if (Boolean.getBoolean("doughtide.approve")) {
      Files.writeString(file, run.out());
    }
    assertThat(run.out()).as(words).isEqualTo(Files.readString(file));
  }

  static Stream<Arguments> calls() throws IOException {
    return Files.readAllLines(APPROVED.resolve("calls.txt")).stream()
        .filter(line -> !line.startsWith("#"))
        .map(line -> line.split(" ", 2))
        .map(parts -> arguments(parts[0], parts[1]));
  }

  /** Splits at spaces outside quotes. */
  private static String[] words(String line) {
    List<String> words =
        new ArrayList<>(
            Arrays.stream(line.split(" (?=(?:[^\"]*\"[^\"]*\")*[^\"]*$)"))
                .map(word -> word.replace("\"", ""))
                .toList());
    if (!line.contains("--format")) {
      words.addAll(List.of("--format", "json"));
    }
    return words.toArray(String[]::new);
  }
}
