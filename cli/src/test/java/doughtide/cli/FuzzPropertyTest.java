package doughtide.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Path;
import java.util.Map;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/**
 * Whatever is typed and whatever stands in the files, a call ends soon, with an answer or with one
 * line that says what is wrong. The long run may be made in parts: {@code -Dfuzz.from} and {@code
 * -Dfuzz.count} name the calls by number, and a finding names the call to be made again.
 */
class FuzzPropertyTest {

  @TempDir Path folder;

  @Test
  void everyQuickOptionAndEveryReader() throws IOException {
    FuzzRun.Report report = FuzzRun.of(0, Fuzz.quickRound(), folder, System.out);

    assertThat(report.findings()).isEmpty();
    assertThat(report.ends()).containsKeys(Fuzz.QUICK_TARGETS.toArray(String[]::new));
    assertThat(report.ends())
        .containsKeys(
            FuzzSamples.READERS.stream().map(FuzzSamples.Reader::toString).toArray(String[]::new));
  }

  @Test
  @Tag("long")
  void aHundredThousandCallsEndWell() throws IOException {
    long from = Long.getLong("fuzz.from", 0);
    long count = Long.getLong("fuzz.count", 100_000);

    FuzzRun.Report report = FuzzRun.of(from, count, folder, System.out);

    for (Map.Entry<String, int[]> end : report.ends().entrySet()) {
      int[] numbers = end.getValue();
      System.out.printf(
          "%s: %d calls, %d answers, %d ms%n", end.getKey(), numbers[0], numbers[1], numbers[2]);
    }
    assertThat(report.findings()).isEmpty();
    if (count >= Fuzz.round()) {
      assertThat(report.ends()).containsKeys(Fuzz.targets().toArray(String[]::new));
    }
  }
}
