package doughtide.cli.command;

import static org.assertj.core.api.Assertions.assertThat;

import doughtide.cli.CliRun;
import doughtide.cli.DemoReadings;
import doughtide.cli.JsonAnswer;
import doughtide.cli.Main;
import doughtide.cli.TestEnvironment;
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
    assertThat(run.out().replaceAll("\\s+", " "))
        .startsWith("Best: shape at its shape point")
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

    assertThat(answer.number("options.size")).isEqualTo(5);
    assertThat(Math.floor(10 * answer.number("options.0.goodShare")))
        .isGreaterThanOrEqualTo(Math.floor(10 * answer.number("options.1.goodShare")));
    assertThat(answer.text("options.0.ovenAt")).isEqualTo("2027-03-07T07:30Z");
  }

  @Test
  void readingsOfTheDoughInHandNarrowWhatEachWayLeadsTo() throws IOException {
    DemoReadings.copyTo(folder);
    CliRun text = inHand();
    JsonAnswer json = JsonAnswer.of(inHand("--format", "json"));

    assertThat(text.out()).containsPattern("Now +Sat 12:30").contains("with 5 readings");
    double low = json.number("options.0.riseWhenShapedLowPercent");
    double high = json.number("options.0.riseWhenShapedHighPercent");
    assertThat(json.text("options.0.kind")).isEqualTo("shape-before-leaving");
    assertThat(high - low).isPositive().isLessThan(30);
  }

  private CliRun inHand(String... more) {
    List<String> all =
        new ArrayList<>(
            List.of("leave", "--readings", "quayside-today.csv", "--leave-at", "14:00"));
    all.addAll(List.of("--back-at", "18:00", "--cold", "4C", "--bake-at", "07:00"));
    all.addAll(Arrays.asList(more));
    return CliRun.in(TestEnvironment.in(folder), all.toArray(String[]::new));
  }

  @Test
  void theFileDescribesTheDoughButNotTheTub() throws IOException {
    DemoReadings.copyTo(folder);

    assertThat(inHand("--dough-mass", "2kg").err()).isEmpty();
    assertThat(inHand("--hydration", "70%").refusal()).contains("--readings");
    assertThat(inHand("--mixed-at", "09:30").refusal()).contains("--readings");
  }

  @Test
  void aTubInACoolRoomDriftsAndSaysSo() {
    CliRun run =
        leave("--room 18C --dough-mass 1.7kg --now 10:30 --leave-at 15:00 --back-at 19:30");

    assertThat(run.err()).isEmpty();
    assertThat(run.out()).containsPattern("Now +Sat 10:30").contains("drifting in a room of 18 °C");
  }

  @Test
  void whatIsPastItsBestIsCalledSo() {
    CliRun run = leave("--now 13:00 --leave-at 15:00 --back-at 23:30");

    assertThat(run.out().replaceAll("\\s+", " "))
        .contains("none of 10 doughs is right. It is likely past its best when shaped");
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "--now 13:00 --back-at 19:30 | --leave-at is missing",
        "--now 13:00 --leave-at 15:00 | --back-at is missing",
        "--now 16:00 --leave-at 15:00 --back-at 19:30 | --now lies after --leave-at",
        "--now 13:00 --leave-at soon --back-at 19:30 | is not a time",
        "--now 13:00 --leave-at 15:00 --back-at 19:30 --format csv | leave has no csv form",
        "--now 13:00 --leave-at 15:00 --back-at 19:30 --vessel bowl | nothing without --room",
      })
  void isRefusedInOneLine(String words, String part) {
    assertThat(leave(words).refusal()).contains(part);
  }

  /** Below freezing the model gives no hours, so no tub is put there. */
  @Test
  void aColdBelowFreezingIsNoFault(@org.junit.jupiter.api.io.TempDir java.nio.file.Path place)
      throws java.io.IOException {
    DemoReadings.copyTo(place);
    String call =
        "leave --readings quayside-today.csv --leave-at 14:00 --back-at 18:00 --cold -1C"
            + " --bake-at 07:00";
    CliRun run = CliRun.in(TestEnvironment.in(place), call.split(" "));
    assertThat(run.code()).as(run.err()).isIn(Main.OK, Main.BAD_INPUT);
  }
}
