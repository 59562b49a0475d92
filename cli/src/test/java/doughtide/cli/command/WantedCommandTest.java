package doughtide.cli.command;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import doughtide.cli.CliRun;
import doughtide.cli.DemoReadings;
import doughtide.cli.JsonAnswer;
import doughtide.cli.TestEnvironment;
import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

class WantedCommandTest {
  private static final String NIGHT =
      "--shape-at 2027-03-06T19:00 --starter 15% --dough-temp 24C --cold 4C --bake-at 07:00"
          + " --zone Europe/Berlin";

  @TempDir Path folder;

  private CliRun run(String words) {
    List<String> all = new ArrayList<>(Arrays.asList(words.strip().split(" ")));
    return CliRun.in(TestEnvironment.in(folder).usual(), all.toArray(String[]::new));
  }

  private JsonAnswer json(String words) {
    return JsonAnswer.of(run("wanted " + words + " --format json"));
  }

  @Test
  void theStarterFoundGivesTheWantedHoursInRise() {
    JsonAnswer answer = json("--bulk 6h --dough-temp 24C --hydration 72%");
    String starter =
        String.format(Locale.ROOT, "%.3f%%", answer.number("answers.0.starterOfAddedFlourPercent"));

    JsonAnswer rise =
        JsonAnswer.of(
            run("rise --dough-temp 24C --hydration 72% --format json --starter " + starter));
    assertThat(rise.number("rises.2.risePercent")).isEqualTo(50);
    assertThat(rise.number("rises.2.hoursLikely")).isCloseTo(6, within(0.03));
    assertThat(answer.number("answers.0.hoursLikely")).isCloseTo(6, within(0.03));
    assertThat(answer.number("answers.1.hoursLate")).isCloseTo(6, within(0.03));
    assertThat(answer.number("answers.2.hoursEarly")).isCloseTo(6, within(0.03));
  }

  @Test
  void theTemperatureFoundGivesTheWantedHoursInRise() {
    JsonAnswer answer = json("--bulk 7h --starter 15% --rise 60%");
    String celsius = String.format(Locale.ROOT, "%.2fC", answer.number("answers.0.doughCelsius"));

    JsonAnswer rise =
        JsonAnswer.of(run("rise --starter 15% --rise 60% --format json --dough-temp " + celsius));
    assertThat(rise.number("rises.3.risePercent")).isEqualTo(60);
    assertThat(rise.number("rises.3.hoursLikely")).isCloseTo(7, within(0.04));
  }

  @Test
  void theMixingTimeFoundShapesAtTheWantedHour() {
    JsonAnswer answer = json(NIGHT);

    assertThat(answer.text("asked")).isEqualTo("mix-at");
    assertThat(answer.text("answers.0.clockLikely")).isEqualTo("2027-03-06T19:00+01:00");
    assertThat(answer.text("answers.1.clockLate")).isEqualTo("2027-03-06T19:00+01:00");
    assertThat(answer.text("answers.1.mixAt")).isLessThan(answer.text("answers.0.mixAt"));
    assertThat(answer.text("understood.loaf")).contains("11 h 30 min in the cold");
  }

  @Test
  void gramsAreThoseOfTheFlourGiven() {
    JsonAnswer answer = json("--bulk 6h --dough-temp 24C --all-flour 1000g");
    double starter = answer.number("ingredients.starterGrams");

    assertThat(answer.number("ingredients.flourGrams") + starter / 2).isCloseTo(1000, within(0.2));
    assertThat(100 * starter / answer.number("ingredients.flourGrams"))
        .isCloseTo(answer.number("answers.0.starterOfAddedFlourPercent"), within(0.1));
  }

  @Test
  void theRoomAndALearnedStarterChangeTheAnswer() throws IOException {
    DemoReadings.learnedIn(folder);
    double plain =
        json("--bulk 6h --dough-temp 25C").number("answers.0.starterOfAddedFlourPercent");
    double learned =
        json("--bulk 6h --dough-temp 25C --starter-file starter.json")
            .number("answers.0.starterOfAddedFlourPercent");
    double cooling =
        json("--bulk 6h --dough-temp 25C --room 19C")
            .number("answers.0.starterOfAddedFlourPercent");

    assertThat(learned).isNotCloseTo(plain, within(0.1));
    assertThat(cooling).isGreaterThan(plain + 1);
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "--bulk 2h --dough-temp 22C | even with 60 % | 60 %",
        "--bulk 40h --dough-temp 26C | with 0.5 % of the flour added it is over | 0.5 %",
        "--bulk 3h --starter 5% | even at 28 °C | 28 °C",
        "--bulk 40h --starter 30% | at 14 °C (57 °F) it is over | 14 °C",
        "--bulk 12h --dough-temp 24C --rise 230% | half of the doughs never get there | none",
      })
  void whatCannotBeHadIsSaidWithTheNearest(String words, String said, String nearest) {
    CliRun run = run("wanted " + words);

    assertThat(run.err()).isEmpty();
    assertThat(run.code()).isZero();
    assertThat(run.out().replaceAll("\\s+", " ")).contains(said, "That comes nearest.");
    if (!nearest.equals("none")) {
      assertThat(run.out()).containsPattern("half of the doughs +" + nearest);
      assertThat(run.out().replaceAll("\\s+", " ")).doesNotContain("nine in ten none");
    }
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "--bulk 6h --dough-temp 24C --all-flour 1000g",
        "--bulk 6h --starter 15% --mixed-at 2027-03-06T12:00 --zone UTC",
        "--bulk 6h --shape-at 2027-03-06T19:00 --dough-temp 25C --zone UTC",
        NIGHT,
      })
  void pagesAreNarrowAndSayTheCaution(String words) {
    CliRun run = run("wanted " + words);

    assertThat(run.err()).isEmpty();
    assertThat(run.out().lines()).allSatisfy(line -> assertThat(line).hasSizeLessThanOrEqualTo(80));
    assertThat(run.out())
        .contains("half of the doughs", "nine in ten", "one in ten", "What would narrow")
        .contains("Caution: raw flour");
  }

  @Test
  void csvHasARowForEachPartOfTheDoughs() {
    CliRun run = run("wanted --bulk 6h --starter 15% --format csv");

    assertThat(run.out().lines().toList()).hasSize(4);
    assertThat(run.out())
        .startsWith(
            "doughs_in_time,dough_celsius,reach,hours_early,hours_likely,hours_late,reached_share\n")
        .contains("\nnine-in-ten,", ",on-time,");
  }

  @Test
  void mixingAndShapingTogetherSayHowLong() {
    double byClock =
        json("--mixed-at 2027-03-06T13:00 --shape-at 2027-03-06T19:00 --zone UTC --dough-temp 24C")
            .number("answers.0.starterOfAddedFlourPercent");

    assertThat(byClock)
        .isEqualTo(
            json("--bulk 6h --dough-temp 24C").number("answers.0.starterOfAddedFlourPercent"));
  }

  /** Asked at eight in the morning: noon is too near, seven o'clock is tomorrow's. */
  @Test
  void mixesNothingInThePast() {
    String dough = "wanted --dough-temp 24C --starter 20% --shape-at ";

    assertThat(run(dough + "12").out())
        .startsWith("The hour to mix, Sat 06:45, has passed: mixed now, the dough is likely there");
    assertThat(run(dough + "7am").out())
        .startsWith("Mix at Sun 01:45: likely there at Sun 07:00. Look from Sun 05:25 on, when a");
  }
}
