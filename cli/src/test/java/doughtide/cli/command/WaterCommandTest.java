package doughtide.cli.command;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import doughtide.cli.CliRun;
import doughtide.cli.DemoReadings;
import doughtide.cli.JsonAnswer;
import doughtide.cli.TestEnvironment;
import doughtide.cli.session.Environment;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Doughs of the invented Quayside bread class. */
class WaterCommandTest {

  @TempDir Path folder;

  private CliRun run(String... words) {
    List<String> all = new ArrayList<>(List.of("water"));
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
  void saltThatNoScaleShowsHoldsNoHeat() {
    String[] dough = {"--dough-temp", "24C", "--room", "31C", "--tap", "24C", "--salt"};

    assertThat(page(with(dough, "0.000001%")).lines().findFirst())
        .isEqualTo(page(with(dough, "0%")).lines().findFirst());
  }

  private static String[] with(String[] words, String last) {
    String[] all = Arrays.copyOf(words, words.length + 1);
    all[words.length] = last;
    return all;
  }

  private JsonAnswer json(String... words) {
    List<String> all = new ArrayList<>(Arrays.asList(words));
    all.addAll(List.of("--format", "json"));
    return JsonAnswer.of(run(all.toArray(String[]::new)));
  }

  @Test
  void rulesComeAfterTheAnswerWhereTheyAreAskedFor() {
    String page =
        page("--dough-temp 26C --room 21C --flour-temp 20C --warming 2C --rules".split(" "));

    assertThat(page).startsWith("Pour water of ");
    assertThat(page.indexOf("balance of heat")).isLessThan(page.indexOf("rule of 3 factors"));
    assertThat(page)
        .contains("friction once")
        .contains("warming first")
        .contains("base temperature")
        .contains("3 times the warming")
        .contains("above 45 °C");
  }

  @Test
  void thereIsOneAnswerWithWhatIsUnknown() {
    String page = page("--dough-temp 26C --room 21C".split(" "));
    JsonAnswer hands = json("--dough-temp 26C --room 21C".split(" "));
    JsonAnswer mixer = json("--dough-temp 26C --room 21C --warming 0C".split(" "));

    assertThat(page).startsWith("Pour water of ").contains("mixed by").contains("add --rules");
    assertThat(page).doesNotContain("rule of 3").doesNotContain("Why they differ");
    assertThat(hands.number("mixingKelvin")).isZero();
    assertThat(hands.number("doughPlusMinusKelvin")).isBetween(1.0, 1.3);
    assertThat(mixer.number("waterCelsius")).isEqualTo(hands.number("waterCelsius"));
    assertThat(mixer.number("waterPlusMinusKelvin"))
        .isLessThan(hands.number("waterPlusMinusKelvin"));
  }

  @Test
  void driedFlourWarmsTheDoughMore() {
    JsonAnswer usual = json("--dough-temp 26C --room 21C".split(" "));
    JsonAnswer same = json("--dough-temp 26C --room 21C --moisture 14%".split(" "));
    JsonAnswer dried = json("--dough-temp 26C --room 21C --moisture 8%".split(" "));

    assertThat(same.number("waterCelsius")).isEqualTo(usual.number("waterCelsius"));
    assertThat(dried.number("waterCelsius")).isLessThan(usual.number("waterCelsius") - 2);
  }

  @Test
  void handsThatCoolADoughAreKeptForNextTime(@TempDir java.nio.file.Path home) throws IOException {
    DemoReadings.learnedIn(home);
    Environment here = TestEnvironment.in(home);
    String[] measured =
        ("water --pour 30C --got 25.5C --room 21C --mixer hands --starter-file starter.json"
                + " --save mine.json")
            .split(" ");
    String asked = "water --dough-temp 25.5C --room 21C --format json";

    assertThat(CliRun.in(here, measured).out()).startsWith("In mixing the dough lost ");
    JsonAnswer kept =
        JsonAnswer.of(CliRun.in(here, (asked + " --starter-file mine.json").split(" ")));
    JsonAnswer usual = JsonAnswer.of(CliRun.in(here, asked.split(" ")));
    assertThat(kept.number("mixingKelvin")).isNegative();
    assertThat(kept.number("waterCelsius")).isEqualTo(30, within(0.02));
    assertThat(usual.number("waterCelsius")).isLessThan(29);
  }

  @Test
  void bothConventionsAgreeWhenConverted() {
    JsonAnswer water =
        json("--dough-temp", "26C", "--room", "22C", "--starter-temp", "6C", "--warming", "5C");

    // (26 − 5) × 4 − (22 + 22 + 6) = 34
    assertThat(water.number("rule.warmingFirstCelsius")).isEqualTo(34);
    assertThat(water.number("rule.frictionOnceCelsius")).isEqualTo(34);
    assertThat(water.number("rule.frictionKelvin")).isEqualTo(20);
    assertThat(water.number("factors")).isEqualTo(4);
  }

  @Test
  void pouringTheAnswerGivesTheDough() {
    JsonAnswer water = json("--dough-temp", "25C", "--room", "20C", "--friction", "6C");
    JsonAnswer dough =
        json("--pour", water.text("waterCelsius") + "C", "--room", "20C", "--friction", "6C");

    assertThat(dough.number("doughCelsius")).isEqualTo(25, within(1e-3));
  }

  @Test
  void measuredDoughGivesTheWarmingOfTheMixer() {
    JsonAnswer water = json("--dough-temp", "25C", "--room", "20C", "--warming", "3C");
    JsonAnswer mixed =
        json("--pour", water.text("waterCelsius") + "C", "--got", "25C", "--room", "20C");

    assertThat(mixed.number("mixingKelvin")).isEqualTo(3, within(1e-3));
    assertThat(page("--pour", "30C", "--got", "25.5C", "--room", "21C"))
        .startsWith("In mixing the dough lost");
  }

  @Test
  void iceIsPartOfTheWater() {
    JsonAnswer water =
        json(
            "--dough-temp",
            "22C",
            "--room",
            "31C",
            "--tap",
            "25C",
            "--warming",
            "4C",
            "--bowl",
            "steel:600g");

    assertThat(water.number("ice.tapGrams") + water.number("ice.iceGrams"))
        .isEqualTo(water.number("ingredients.waterGrams"), within(0.02));
  }

  @Test
  void hotWaterIsWarnedAbout() {
    assertThat(page("--dough-temp", "33C", "--room", "8C")).contains("above 45 °C: it kills");
  }

  @Test
  void takesTheHydrationOfAFloursRecord() throws IOException {
    Files.writeString(
        folder.resolve("millrace.txt"),
        "name: Millrace wholemeal\nflour: wholemeal wheat\nhydration: 78%\n");

    assertThat(page("--dough-temp", "25C", "--room", "20C", "--flour-file", "millrace.txt"))
        .contains("Millrace wholemeal");
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      quoteCharacter = '`',
      value = {
        "--dough-temp 25C | --room is missing: write for example --room 21C",
        "--room 21C | --dough-temp is missing: write for example --dough-temp 25C, or --pour",
        "--room 21C --dough-temp 25C --pour 30C | exclude each other",
        "--room 21C --dough-temp 25C --got 25C | --got needs the water as it was poured",
        "--room 21C --pour 30C --tap 20C | --tap says nothing with --pour",
        "--room 21C --pour 30C --got 25C --friction 2C | must not be given",
        "--room 21C --dough-temp 25C --friction 2 | write --friction 2C or --friction 2F",
        "--room 21C --dough-temp 25C --friction 2C --warming 1C | exclude each other",
        "--room 21C --dough-temp 25C --warming 99C | is outside -30…60 K",
        "--room 21C --dough-temp 70C | wanted dough temperature 70 °C is outside 0…50 °C",
        "--room -20C --dough-temp 45C --all-flour 1kg --hydration 50% | at most 100 °C",
        "--room 90C --dough-temp 25C | --room 90 °C is outside -30…60 °C",
        "--room 21C --dough-temp 25C --bowl steel | needs material and mass",
        "--room 21C --dough-temp 25C --bowl gold:600g | the material is not known",
        "--room 21C --dough-temp 25C --all-flour 1kg --dough-mass 1kg | exclude each other",
        "--room 21C --dough-temp 25C --format csv | water has no csv form",
        "--room 59C --dough-temp 2C --tap 20C --warming 19C --hydration 45% --starter 5% | cannot"
            + " be reached even if all water is ice",
      })
  void isRefusedInOneLine(String words, String part) {
    assertThat(run(words.strip().split(" ")).refusal()).contains(part);
  }

  @Test
  void frictionOfAMixerIsKeptForNextTime(@TempDir java.nio.file.Path home) throws IOException {
    DemoReadings.learnedIn(home);
    Environment here = TestEnvironment.in(home);
    String[] measured =
        ("water --pour 22C --got 27C --room 21C --mixer spiral --starter-file starter.json"
                + " --save mine.json")
            .split(" ");
    String asked = "water --dough-temp 25C --room 21C --starter-file mine.json --mixer ";

    assertThat(CliRun.in(here, measured).out()).contains("Saved in 'mine.json'");
    String with = CliRun.in(here, (asked + "spiral").split(" ")).out();
    String without = CliRun.in(here, "water --dough-temp 25C --room 21C".split(" ")).out();
    assertThat(with).isNotEmpty().isNotEqualTo(without);
    assertThat(CliRun.in(here, (asked + "planetary").split(" ")).refusal())
        .contains("--mixer 'planetary' is not in the starter file, which has spiral");
    assertThat(CliRun.in(here, "water --dough-temp 25C --room 21C --mixer x".split(" ")).refusal())
        .contains("--mixer needs the baker's file");
    assertThat(
            CliRun.in(here, "water --dough-temp 25C --room 21C --save x.json".split(" ")).refusal())
        .contains("--save keeps what mixing did");
  }
}
