package doughtide.cli.options;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import doughtide.cli.CliRun;
import doughtide.cli.JsonAnswer;
import doughtide.cli.TestEnvironment;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class FormulaOptionsTest {
  private static final String GRAMS = "flour 900, water 640, starter 200, salt 18";

  @TempDir Path folder;

  private static double sum(JsonAnswer answer, String at) {
    double sum = 0;
    for (String key : new String[] {"flourGrams", "waterGrams", "starterGrams", "saltGrams"}) {
      sum += answer.number(at + "." + key);
    }
    int more =
        answer.values().containsKey(at + ".additions.size")
            ? (int) answer.number(at + ".additions.size")
            : 0;
    for (int i = 0; i < more; i++) {
      sum += answer.number(at + ".additions." + i + ".grams");
      sum += answer.number(at + ".additions." + i + ".soakGrams");
    }
    return sum;
  }

  @Test
  void riseTellsThePercentagesOfGramsAndGivesTheGramsBack() {
    JsonAnswer answer =
        JsonAnswer.of(
            CliRun.of(
                "rise",
                "--dough-temp",
                "25C",
                "--members",
                "32",
                "--grams",
                GRAMS,
                "--inclusions",
                "seeds 80, soaker 120 with 70 water",
                "--format",
                "json"));

    assertThat(answer.number("understood.hydrationPercent")).isEqualTo(74);
    assertThat(answer.number("understood.prefermentedFlourPercent")).isEqualTo(10);
    assertThat(answer.number("ingredients.flourGrams")).isEqualTo(900);
    assertThat(answer.number("ingredients.additions.1.soakGrams")).isEqualTo(70);
    assertThat(sum(answer, "ingredients")).isCloseTo(2028, within(0.1));
    assertThat(answer.values()).containsEntry("warnings.0.kind", "inclusions");
  }

  @Test
  void riseGivesTheGramsOfSomeLoaves() {
    JsonAnswer answer =
        JsonAnswer.of(
            CliRun.of(
                "rise",
                "--dough-temp",
                "25C",
                "--members",
                "32",
                "--loaves",
                "2",
                "--piece",
                "900g",
                "--inclusions",
                "seeds 10%",
                "--format",
                "json"));

    assertThat(sum(answer, "ingredients")).isCloseTo(1800, within(0.1));
  }

  @Test
  void waterWarmsInclusionsToo() {
    String[] call = {
      "water", "--dough-temp", "26C", "--room", "15C", "--grams", GRAMS, "--format", "json"
    };
    JsonAnswer plain = JsonAnswer.of(CliRun.of(call));
    JsonAnswer seeds =
        JsonAnswer.of(
            CliRun.of(
                "water",
                "--dough-temp",
                "26C",
                "--room",
                "15C",
                "--grams",
                GRAMS,
                "--inclusions",
                "seeds 200, egg 50",
                "--format",
                "json"));

    assertThat(seeds.number("waterCelsius")).isGreaterThan(plain.number("waterCelsius") + 0.5);
    assertThat(seeds.values().get("additionNotes.1")).contains("food rules");
  }

  @Test
  void aDayIsPlannedWithTheBakersGrams() {
    JsonAnswer day =
        JsonAnswer.of(
            CliRun.in(
                TestEnvironment.in(folder),
                "bake-day",
                "--ready-at",
                "2027-03-14T12:00",
                "--at-the-bench",
                "06:00-23:00",
                "--cold",
                "4C",
                "--loaves",
                "2",
                "--zone",
                "Europe/Berlin",
                "--plans",
                "1",
                "--grams",
                GRAMS + ", milk 60",
                "--format",
                "json"));

    assertThat(sum(day, "plans.0.doughs.0.ingredients")).isCloseTo(1818, within(0.2));
    assertThat(day.number("plans.0.doughs.0.ingredients.starterGrams"))
        .isCloseTo(200, within(0.01));
    assertThat(day.values().get("warnings.0.remedy")).contains("spoils");
  }

  @Test
  void theKitchensFlourIsUsedUnlessTheGramsNameTheirs() throws IOException {
    Files.writeString(folder.resolve("kitchen.txt"), "flour: rye\npiece: 700g\n");

    assertThat(rise("flour 900, water 740, starter 200")).contains("Dough              rye");
    assertThat(rise("spelt 900, water 640, starter 200"))
        .contains("Dough              90 % spelt, 10 % white");
  }

  private String rise(String grams) {
    return CliRun.in(
            TestEnvironment.in(folder),
            "rise",
            "--dough-temp",
            "25C",
            "--members",
            "32",
            "--grams",
            grams,
            "--kitchen",
            "kitchen.txt")
        .out();
  }

  @Test
  void saysInOneLineWhatCannotBeUsed() {
    assertThat(
            CliRun.of("rise", "--dough-temp", "25C", "--grams", GRAMS, "--starter", "20%")
                .refusal())
        .contains("--grams and --starter exclude each other");
    assertThat(CliRun.of("rise", "--dough-temp", "25C", "--inclusions", "seeds 80").refusal())
        .contains("seeds 8%");
    assertThat(CliRun.of("rise", "--dough-temp", "25C", "--piece", "800g").refusal())
        .contains("--piece is about the loaf");
  }
}
