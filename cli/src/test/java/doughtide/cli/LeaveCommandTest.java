package doughtide.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class LeaveCommandTest {
  private static final String DOUGH =
      "--dough-temp 25C --mixed-at 2027-03-06T10:00 --zone UTC --cold 4C --bake-at 07:30";

  @TempDir Path folder;

  private CliRun leave(String words) {
    List<String> all = new ArrayList<>(List.of("leave"));
    all.addAll(Arrays.asList((DOUGH + " " + words.strip()).split(" ")));
    return CliRun.in(TestEnvironment.in(folder), all.toArray(String[]::new));
  }

  @Test
  void saysWhatEachWayOutLeadsTo() {
    CliRun run = leave("--now 13:00 --leave-at 15:00 --back-at 19:30");

    assertThat(run.err()).isEmpty();
    assertThat(run.out().lines()).allSatisfy(line -> assertThat(line).hasSizeLessThanOrEqualTo(80));
    assertThat(run.out())
        .contains("Best: ")
        .contains("shape now")
        .contains("shape just before leaving, in the baskets by Sat 15:00")
        .contains("shape when back")
        .contains("doughs in 10 are right")
        .contains("Caution: raw flour");
  }

  @Test
  void jsonPutsTheBestFirst() throws IOException {
    JsonAnswer answer =
        JsonAnswer.of(leave("--now 13:00 --leave-at 15:00 --back-at 19:30 --format json"));

    assertThat(answer.number("options.size")).isEqualTo(3);
    assertThat(answer.number("options.0.goodShare"))
        .isGreaterThanOrEqualTo(answer.number("options.1.goodShare"));
    assertThat(answer.text("options.0.ovenAt")).isEqualTo("2027-03-07T07:30Z");
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "--now 13:00 --back-at 19:30 | --leave-at is missing",
        "--now 13:00 --leave-at 15:00 | --back-at is missing",
        "--now 16:00 --leave-at 15:00 --back-at 19:30 | --now lies after --leave-at",
        "--now 13:00 --leave-at soon --back-at 19:30 | is not a time",
        "--now 13:00 --leave-at 15:00 --back-at 19:30 --format csv | use text or json",
      })
  void isRefusedInOneLine(String words, String part) {
    assertThat(leave(words).refusal()).contains(part);
  }
}
