package doughtide.cli.command.again;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import doughtide.cli.CliRun;
import doughtide.cli.JsonAnswer;
import doughtide.cli.TestEnvironment;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.OffsetDateTime;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** A day whose starter is built in stages is planned again while they are made. */
class StagesAgainTest {
  private static final String STAGES =
      "fresh sour, 1:4:6, white, 26C, 5h; full sour, 1:3:3, white, 28C, until ripe";
  private static final String DOUGH = "plans.0.doughs.0.";

  @TempDir Path folder;

  private CliRun run(String... words) {
    List<String> all = new ArrayList<>(List.of("bake-day"));
    all.addAll(Arrays.asList(words));
    return CliRun.in(TestEnvironment.in(folder).usual(), all.toArray(String[]::new));
  }

  private JsonAnswer again(String plan, String now, String... more) throws IOException {
    List<String> words = new ArrayList<>(List.of("--again", plan, "--now", now));
    words.addAll(Arrays.asList(more));
    words.addAll(List.of("--format", "json", "--calendar", "again.ics", "--overwrite"));
    CliRun run = run(words.toArray(String[]::new));
    assertThat(run.err()).isEmpty();
    Files.writeString(folder.resolve("last.json"), run.out());
    return JsonAnswer.of(run);
  }

  private static OffsetDateTime when(JsonAnswer answer, String step) {
    for (int i = 0; i < answer.number("plans.0.steps.size"); i++) {
      String at = "plans.0.steps." + i + ".";
      if (answer.text(at + "step").equals(step)) {
        return OffsetDateTime.parse(answer.text(at + "from"));
      }
    }
    throw new AssertionError(step);
  }

  private static String clock(OffsetDateTime moment) {
    return moment.toLocalDateTime().toString();
  }

  @Test
  void stagesThatAreDoneAreHistoryAndTheRestIsKeptOrMoved() throws IOException {
    CliRun plan =
        run(
            "--ready-at",
            "2027-03-14T18:00",
            "--at-the-bench",
            "2027-03-13T16:00/2027-03-13T22:30,2027-03-14T06:00/2027-03-14T18:00",
            "--starter",
            "20%",
            "--dough-temp",
            "24C",
            "--plans",
            "1",
            "--stage",
            STAGES,
            "--calendar",
            "first.ics",
            "--format",
            "json");
    assertThat(plan.err()).isEmpty();
    Files.writeString(folder.resolve("plan.json"), plan.out());
    JsonAnswer planned = JsonAnswer.of(plan);

    OffsetDateTime fed = when(planned, "feed the starter 1").plusMinutes(40);
    JsonAnswer late =
        again("plan.json", clock(fed.plusMinutes(10)), "--did", "feed 1 " + clock(fed));

    assertThat(when(late, "feed the starter 1")).isEqualTo(fed);
    assertThat(late.text("plans.0.steps.0.done")).isEqualTo("true");
    OffsetDateTime second = when(late, "feed the starter 2");
    assertThat(second).isAfter(fed.plusHours(3)).isBeforeOrEqualTo(fed.plusHours(5));
    assertThat(clock(second)).isBetween("2027-03-13T16:00", "2027-03-13T22:25");
    assertThat(late.text("plans.0.steps.1.detail"))
        .startsWith("full sour, 28 °C")
        .contains(" g + ");
    assertThat(OffsetDateTime.parse(late.text(DOUGH + "stages.1.from"))).isEqualTo(second);
    for (String grams : List.of("starterGrams", "flourGrams", "waterGrams")) {
      assertThat(late.number(DOUGH + "stages.1." + grams))
          .isCloseTo(planned.number(DOUGH + "stages.1." + grams), within(0.01));
    }
    assertThat(when(late, "mix the dough"))
        .isAfterOrEqualTo(OffsetDateTime.parse(late.text(DOUGH + "stages.1.ripe.clockEarly")));
    assertThat(Files.readString(folder.resolve("again.ics")))
        .contains(
            Files.readString(folder.resolve("first.ics"))
                .lines()
                .filter(line -> line.startsWith("UID:"))
                .toList());

    OffsetDateTime fedAgain = second.plusMinutes(5);
    JsonAnswer morning =
        again("last.json", "2027-03-14T06:00", "--did", "feed 2 " + clock(fedAgain));
    assertThat(when(morning, "feed the starter 1")).isEqualTo(fed);
    assertThat(when(morning, "feed the starter 2")).isEqualTo(fedAgain);
    assertThat(clock(when(morning, "mix the dough"))).isGreaterThanOrEqualTo("2027-03-14T06:00");

    String before = "feed 2 " + clock(fed.minusHours(1));
    String refusal =
        run("--again", "last.json", "--now", "2027-03-14T06:00", "--did", before).refusal();
    assertThat(refusal).contains("the stages of the starter do not come one after the other");
  }
}
