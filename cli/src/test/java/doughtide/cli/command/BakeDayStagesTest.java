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

/** A starter that is built in stages stands in the day of its dough. */
class BakeDayStagesTest {
  private static final String FRESH = "fresh sour, 1:4:6, white, 26C, 5h";
  private static final String FULL = "full sour, 1:3:3, white, 28C, until ripe";

  @TempDir Path folder;

  private JsonAnswer day(String... stages) {
    List<String> words =
        new ArrayList<>(
            List.of("bake-day", "--ready-at", "2027-03-14T18:00", "--at-the-bench", "06:00-22:30"));
    words.addAll(
        List.of("--starter", "20%", "--dough-temp", "24C", "--plans", "1", "--format", "json"));
    words.addAll(Arrays.asList(stages));
    return JsonAnswer.of(CliRun.in(TestEnvironment.in(folder), words.toArray(String[]::new)));
  }

  @Test
  void stagesAreStepsAndFlourAndWaterAreThoseOfTheDough() {
    JsonAnswer day = day("--stage", FRESH, "--stage", FULL);
    String dough = "plans.0.doughs.0.";

    OffsetDateTime first = OffsetDateTime.parse(day.text("plans.0.steps.0.from"));
    OffsetDateTime second = OffsetDateTime.parse(day.text("plans.0.steps.1.from"));
    assertThat(day.text("plans.0.steps.0.step")).isEqualTo("feed the starter 1");
    assertThat(day.text("plans.0.steps.0.detail")).startsWith("fresh sour, 26 °C");
    assertThat(day.text("plans.0.steps.1.step")).isEqualTo("feed the starter 2");
    assertThat(second).isEqualTo(first.plusHours(5));
    assertThat(day.number(dough + "stages.0.endPh")).isBetween(3.3, 6.0);
    assertThat(day.text(dough + "stages.1.ripe.clockLikely")).isNotBlank();

    double seed = day.number(dough + "stages.0.starterGrams");
    double flour = seed / 2;
    double water = seed / 2;
    for (int i = 0; i < 2; i++) {
      flour += day.number(dough + "stages." + i + ".flourGrams");
      water += day.number(dough + "stages." + i + ".waterGrams");
    }
    assertThat(flour + water)
        .isCloseTo(day.number(dough + "ingredients.starterGrams"), within(0.1));
    flour += day.number(dough + "ingredients.flourGrams");
    water += day.number(dough + "ingredients.waterGrams");
    assertThat(100 * water / flour).as("hydration").isCloseTo(70, within(0.1));
    assertThat(flour + water + day.number(dough + "ingredients.saltGrams"))
        .isCloseTo(850, within(0.1));
  }

  @Test
  void theStagesOfAFileAreTheSame() throws IOException {
    Files.writeString(folder.resolve("sour.txt"), "stage: " + FRESH + "\nstage: " + FULL + "\n");

    JsonAnswer file = day("--stages", "sour.txt");
    JsonAnswer typed = day("--stage", FRESH + "; " + FULL);

    assertThat(file.text("plans.0.steps.0.from")).isEqualTo(typed.text("plans.0.steps.0.from"));
    assertThat(file.number("plans.0.doughs.0.stages.1.flourGrams"))
        .isEqualTo(typed.number("plans.0.doughs.0.stages.1.flourGrams"));
  }
}
