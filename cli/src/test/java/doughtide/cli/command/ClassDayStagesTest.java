package doughtide.cli.command;

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

/** Starters of a class's doughs that are built in stages. All names are invented. */
class ClassDayStagesTest {
  private static final String COLUMNS = "name,loaves,starter,dough_temp,stage,starter_in_cold\n";
  private static final String LEVAIN = "levain, 1:3:3, white, 28C, until ripe";
  private static final String SOUR =
      "\"fresh sour, 1:5, dough yield 200, rye, 26C, 6h; full sour, 1:3:3, rye, 30C, 3h\"";

  @TempDir Path folder;

  private CliRun run(String doughs, String... more) throws IOException {
    Files.writeString(folder.resolve("class.csv"), COLUMNS + doughs);
    List<String> words =
        new ArrayList<>(
            List.of(
                "class-day class.csv --ready-at 2027-03-14T18:00 --at-the-bench 06:00-23:00 --cold 4C"
                    .split(" ")));
    words.addAll(Arrays.asList(more));
    return CliRun.in(TestEnvironment.in(folder), words.toArray(String[]::new));
  }

  @Test
  void theStagesOfEachDoughAreStepsOfTheDay() throws IOException {
    CliRun run =
        run(
            "Harrow white,1,20%,24C,,\nFenside rye,2,20%,26C," + SOUR + ",\n",
            "--stage",
            LEVAIN,
            "--calendar",
            "class.ics",
            "--format",
            "json");
    assertThat(run.err()).isEmpty();
    JsonAnswer day = JsonAnswer.of(run);

    assertThat(feeds(day, "Harrow white")).containsExactly("feed the starter");
    assertThat(feeds(day, "Fenside rye"))
        .containsExactly("feed the starter 1", "feed the starter 2");
    assertThat(day.number("plans.0.doughs.0.stages.size")).isEqualTo(1);
    assertThat(day.text("plans.0.doughs.1.stages.1.name")).isEqualTo("full sour");
    assertThat(OffsetDateTime.parse(day.text("plans.0.doughs.1.stages.1.from")))
        .isEqualTo(OffsetDateTime.parse(day.text("plans.0.doughs.1.stages.0.from")).plusHours(6));
    assertThat(day.text("doughOptions.1.stage")).startsWith("fresh sour, 1:5");
    checkGrams(day, "plans.0.doughs.0.", 0.5);
    checkGrams(day, "plans.0.doughs.1.", 0.5);
    assertThat(Files.readString(folder.resolve("class.ics")).replace("\r\n ", ""))
        .contains("feed the starter 2: Fenside rye", "full sour\\, 30 °C", "levain\\, 28 °C");
  }

  private static List<String> feeds(JsonAnswer day, String dough) {
    List<String> feeds = new ArrayList<>();
    for (int i = 0; i < day.number("plans.0.steps.size"); i++) {
      String at = "plans.0.steps." + i + ".";
      if (day.text(at + "kind").equals("feed") && day.under(at + "doughs").containsValue(dough)) {
        feeds.add(day.text(at + "step"));
      }
    }
    return feeds;
  }

  /** Flour and water of the seed and of every stage are those of the starter. */
  private static void checkGrams(JsonAnswer day, String dough, double flourOfSeed) {
    double seed = day.number(dough + "stages.0.starterGrams");
    double flour = seed * flourOfSeed;
    double water = seed - flour;
    for (int i = 0; i < day.number(dough + "stages.size"); i++) {
      flour += day.number(dough + "stages." + i + ".flourGrams");
      water += day.number(dough + "stages." + i + ".waterGrams");
    }
    double starter = day.number(dough + "ingredients.starterGrams");
    double added = day.number(dough + "ingredients.flourGrams");
    assertThat(flour + water).isCloseTo(starter, within(0.1));
    assertThat(100 * starter / added).isCloseTo(20, within(0.1));
    water += day.number(dough + "ingredients.waterGrams");
    assertThat(100 * water / (flour + added)).as("hydration").isCloseTo(70, within(0.1));
  }

  @Test
  void aStarterIsMadeReadyInOneWay() throws IOException {
    CliRun both = run("Quay,1,20%,24C,\"" + LEVAIN + "\",24h\n");
    assertThat(both.code()).isEqualTo(2);
    assertThat(both.err()).contains("line 2", "stage and starter_in_cold exclude each other");

    CliRun twice = run("Quay,1,20%,24C,,\n", "--stage", LEVAIN, "--stages", "sour.txt");
    assertThat(twice.err()).contains("--stage and --stages exclude each other");
  }
}
