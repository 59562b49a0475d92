package doughtide.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.util.Arrays;
import java.util.List;
import java.util.regex.Pattern;
import org.junit.jupiter.api.Assertions;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/**
 * Whatever is typed and whatever stands in the files, a call ends soon, with an answer or with one
 * line that says what is wrong.
 */
class FuzzPropertyTest {

  private static final Duration LONGEST = Duration.ofSeconds(60);
  private static final Pattern NOT_A_NUMBER =
      Pattern.compile("(?<![A-Za-z])(NaN|-?Infinity)(?![A-Za-z])");

  @TempDir Path folder;

  @ParameterizedTest
  @ValueSource(longs = {1, 2})
  void aFewHundredCallsEndWell(long seed) throws IOException {
    run(seed, 150);
  }

  @ParameterizedTest
  @Tag("long")
  @ValueSource(longs = {11, 12, 13, 14, 15, 16, 17, 18, 19, 20})
  void aHundredThousandCallsEndWell(long seed) throws IOException {
    run(seed, 10_000);
  }

  private void run(long seed, int calls) throws IOException {
    makeSamples();
    Fuzz fuzz = new Fuzz(seed, folder);
    for (int i = 0; i < calls; i++) {
      String[] words = fuzz.call();
      String label = "seed " + seed + " call " + i + ": " + shown(words);
      CliRun run =
          Assertions.assertTimeoutPreemptively(
              LONGEST, () -> CliRun.in(TestEnvironment.in(folder), words), label);
      check(label, words, run);
    }
  }

  private static void check(String label, String[] words, CliRun run) {
    assertThat(run.code()).as("%s%n%s", label, run.err()).isIn(Main.OK, Main.BAD_INPUT);
    assertThat(run.err()).as(label).doesNotContain("Exception", "\tat ", "java.");
    assertThat(run.err().chars()).as(label).noneMatch(c -> c < ' ' && c != '\n');
    if (run.code() == Main.BAD_INPUT) {
      assertThat(run.err()).as(label).startsWith("doughtide: ").endsWith("\n");
      if (!Arrays.asList(words).contains("batch")) { // which names each bad row
        assertThat(run.err().lines()).as(label).hasSize(1);
      }
    }
    boolean echoed = Arrays.stream(words).anyMatch(w -> NOT_A_NUMBER.matcher(w).find());
    if (!echoed && !NOT_A_NUMBER.matcher(String.join(" ", words)).find()) {
      assertThat(run.out()).as(label).doesNotContainPattern(NOT_A_NUMBER);
    }
  }

  /** Files that the readers of the commands take, also under the names that examples use. */
  private void makeSamples() throws IOException {
    Files.writeString(
        folder.resolve("doughs.csv"), "id,dough_temp,salt\nA,25C,2%\nB,70F,\nC,4C,1.8%\n");
    Files.copy(folder.resolve("doughs.csv"), folder.resolve("sample-doughs.csv"));
    Files.writeString(
        folder.resolve("sample-doughs.jsonl"),
        "{\"id\":\"A\",\"dough_temp\":\"25C\"}\n{\"id\":\"B\",\"dough_temp\":\"18C\"}\n");
    Files.writeString(
        folder.resolve("sample-grades.csv"),
        "hydration,grade\n60%,stiff\n66%,just right\n72%,slack\n");
    Files.writeString(
        folder.resolve("sample-log.csv"),
        "time,temperature\n2027-03-06 08:00,25.1\n2027-03-06 08:10,24.9\n2027-03-06 08:20,24.8\n");
  }

  private static String shown(String[] words) {
    List<String> shortened =
        Arrays.stream(words).map(word -> "'" + Shorten.to(word, 80) + "'").toList();
    return String.join(" ", shortened);
  }
}
