package doughtide.cli.command;

import static org.assertj.core.api.Assertions.assertThat;

import doughtide.cli.CliRun;
import doughtide.cli.JsonAnswer;
import doughtide.cli.TestEnvironment;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Flours and grades of the invented Quayside bread class. */
class FlourCommandTest {

  @TempDir Path folder;

  @BeforeEach
  void writeGrades() throws IOException {
    Files.writeString(
        folder.resolve("trial.csv"),
        """
        trial,person,hydration,grade
        6 March,Ann,64%,firm
        6 March,Ann,68%,thin window
        6 March,Ann,72%,thin window
        6 March,Ann,76%,tears when stretched far
        6 March,Ann,80%,torn
        6 March,Ben,68%,thin window
        6 March,Ben,76%,tears
        6 March,Ben,80%,torn
        """);
    Files.writeString(folder.resolve("bad.csv"), "a,b,72%,thin window\na,b,nice,torn\n");
  }

  private CliRun run(String... words) {
    List<String> all = new ArrayList<>(List.of("flour"));
    all.addAll(Arrays.asList(words));
    return CliRun.in(TestEnvironment.in(folder), all.toArray(String[]::new));
  }

  private String page(String... words) {
    CliRun run = run(words);
    assertThat(run.err()).isEmpty();
    assertThat(run.out().lines()).allSatisfy(line -> assertThat(line).hasSizeLessThanOrEqualTo(80));
    return run.out();
  }

  @Test
  void planWeighsToTheScaleAndSaysWhatRoundingDoes() {
    assertThat(page("plan", "--flour", "strong white"))
        .contains("a prior, not a result")
        .contains("50 g")
        .contains("Judge each bowl 30 minutes")
        .contains("not for tasting");
    JsonAnswer plan =
        JsonAnswer.of(
            run(
                "plan",
                "--bowl-flour",
                "40g",
                "--driest",
                "65%",
                "--wettest",
                "85%",
                "--step",
                "5%",
                "--format",
                "json"));
    assertThat(plan.number("bowls.size")).isEqualTo(5);
    assertThat(plan.number("bowls.0.waterGrams")).isEqualTo(26);
    assertThat(plan.number("bowls.4.waterGrams")).isEqualTo(34);
  }

  @Test
  void readGivesLimitRangesAndAWorkingHydration() {
    String page =
        page("read", "trial.csv", "--flour-name", "Harrow strong white", "--moisture", "12.5%");
    JsonAnswer json =
        JsonAnswer.of(run("read", "trial.csv", "--experience", "experienced", "--format", "json"));

    assertThat(page)
        .contains("Water for Harrow strong white")
        .contains("Comfortable")
        .contains("Work at")
        .contains("14 % moisture")
        .contains("By the hands of Ann");
    assertThat(json.number("limit.likelyPercent")).isBetween(75.0, 80.0);
    assertThat(json.number("limit.likelyPercent") - json.number("workingHydrationPercent"))
        .isBetween(1.99, 2.01);
  }

  @Test
  void readDrawsTheGrades() {
    page("read", "trial.csv", "--chart", "trial.svg");

    assertThat(folder.resolve("trial.svg")).content().contains("thin window");
  }

  @Test
  void aSavedRecordServesTheOtherCommands() {
    page(
        "save",
        "harrow.txt",
        "--flour-name",
        "Harrow strong white",
        "--flour",
        "strong white",
        "--protein",
        "12.4%",
        "--lot",
        "A12",
        "--date",
        "2027-03-06",
        "--trial",
        "trial.csv");

    assertThat(folder.resolve("harrow.txt"))
        .content()
        .startsWith("# doughtide flour record\nname: Harrow strong white\nlot: A12\n")
        .contains("hydration: ")
        .contains("bowl: 6 March; Ben; 80%; torn");
    for (String command :
        List.of(
            "rise --dough-temp 25C",
            "feed --starter-temp 22C --ratio 1:2:2",
            "water --dough-temp 25C --room 20C")) {
      String[] words = (command + " --flour-file harrow.txt").split(" ");
      CliRun run = CliRun.in(TestEnvironment.in(folder), words);
      assertThat(run.err()).isEmpty();
      assertThat(run.out()).contains("Harrow strong white");
    }
    assertThat(run("save", "harrow.txt").refusal()).contains("--overwrite");
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      quoteCharacter = '`',
      value = {
        "--driest 60% | flour alone is not enough: it needs one of plan, read FILE or save FILE",
        "mix | flour does not know mix: it needs one of plan, read FILE or save FILE",
        "read | flour read needs a file: write for example doughtide flour read trial.csv",
        "read none.csv | 'none.csv' does not exist",
        "read bad.csv | 'bad.csv' line 2: hydration 'nice' is not a number",
        "read trial.csv --driest 60% | --driest says nothing with flour read",
        "read trial.csv --experience clever | use beginner, experienced, practised",
        "read trial.csv --protein 70% | protein 70 % is outside 0…50 %",
        "plan trial.csv | flour plan takes no file",
        "plan --driest 80% --wettest 60% | swap the two",
        "plan --step 0.1% | finer than a scale of 1 g can weigh",
        "plan --driest 30% --wettest 140% | at most 24 are allowed",
        "plan --scale 50g | scale resolution 50 g is outside",
        "plan --bowl-rest 5h | rest 300 min is outside 5…240 min",
        "plan --chart plan.pdf | --chart says nothing with flour plan",
        "plan --format csv | flour has no csv form",
        "save x.txt --date yesterday | is not a date: write for example 2027-03-06",
        "save x.txt --hydration 30% | hydration 30 % is outside 45…200 %",
        "save no/x.txt | does not exist: make it first",
      })
  void isRefusedInOneLine(String words, String part) {
    assertThat(run(words.strip().split(" ")).refusal()).contains(part);
  }
}
