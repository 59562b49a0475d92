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
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Starters of the Quayside bread class, which is invented like its flours. */
class FeedCommandTest {

  @TempDir Path folder;

  private CliRun feed(String... words) {
    List<String> all = new ArrayList<>(List.of("feed"));
    all.addAll(Arrays.asList(words));
    CliRun run = CliRun.in(TestEnvironment.in(folder).usual(), all.toArray(String[]::new));
    assertThat(run.err()).isEmpty();
    assertThat(run.code()).isZero();
    assertThat(run.out().lines()).allSatisfy(line -> assertThat(line).hasSizeLessThanOrEqualTo(80));
    return run;
  }

  private JsonAnswer json(String... words) throws IOException {
    List<String> all = new ArrayList<>(Arrays.asList(words));
    all.addAll(List.of("--format", "json"));
    List<String> feed = new ArrayList<>(List.of("feed"));
    feed.addAll(all);
    CliRun run = CliRun.in(TestEnvironment.in(folder).usual(), feed.toArray(String[]::new));
    return JsonAnswer.of(run);
  }

  @Test
  void stagesEndWhenTheStarterIsWanted() throws IOException {
    Files.writeString(
        folder.resolve("sour.txt"),
        "starter flour: rye\nstage: fresh sour, 1:5, dough yield 200, rye, 26C, 6h\n"
            + "stage: full sour, 1:4:4, rye, 28C, until ripe\n");
    String[] words = {"--stages", "sour.txt", "--ready-at", "2027-03-14T07:00", "--amount", "900g"};

    assertThat(feed(words).out()).contains("Stage 1, fresh sour, ").contains("pH handed on");
    JsonAnswer answer = json(words);
    assertThat(answer.values().get("readyAt")).startsWith("2027-03-14T07:00");
    assertThat(answer.number("stages.0.hours")).isEqualTo(6);
    assertThat(answer.number("stages.1.starterGrams"))
        .isEqualTo(answer.number("stages.0.totalGrams"));
    assertThat(answer.number("stages.1.totalGrams")).isEqualTo(900);
    assertThat(answer.number("stages.0.endPhLikely")).isBetween(3.5, 5.0);
  }

  @Test
  void withoutAnHourOfFeedingItIsFedNow() throws IOException {
    JsonAnswer now = json("--starter-temp 22C --ready-at 2027-03-07T07:00".split(" "));
    CliRun text = feed("--starter-temp", "22C", "--ready-at", "2027-03-07T07:00");

    assertThat(text.out()).contains("No --fed-at was given: this is for a feeding now, ");
    assertThat(now.values().get("fedAt"))
        .startsWith(
            TestEnvironment.in(folder)
                .now()
                .atZone(TestEnvironment.in(folder).zone())
                .toString()
                .substring(0, 16));
  }

  @Test
  void whatSaysNothingToStagesIsRefused() {
    CliRun run = CliRun.of("feed", "--stage", "1:2:2, 25C, 4h", "--refreshments", "2");

    assertThat(run.refusal()).contains("--refreshments says nothing to a starter in stages");
  }

  @Test
  void namesTheOrderAndTheWindow() {
    String page = feed("--ratio", "1:5:4", "--starter-temp", "22C").out();

    assertThat(page)
        .contains("1 part starter, 5 parts flour, 4 parts water")
        .contains("Ripe from")
        .contains("Begins to fall")
        .contains("Stays ripe for")
        .contains("past its best")
        .contains("lid loose")
        .contains("Mould")
        .contains("not for tasting");
  }

  @Test
  void jsonHoldsTheWindow() throws IOException {
    JsonAnswer feed = json("--ratio", "1:5:5", "--starter-temp", "22C");

    assertThat(feed.text("schema")).isEqualTo("doughtide/feed/2");
    assertThat(feed.number("ripe.hoursEarly")).isLessThan(feed.number("ripe.hoursLikely"));
    assertThat(feed.number("ripe.hoursLikely")).isLessThan(feed.number("ripe.hoursLate"));
    assertThat(feed.number("ripeForHours")).isPositive();
    assertThat(feed.number("heightTimes")).isGreaterThan(1);
    assertThat(feed.number("cautions.size")).isEqualTo(3);
  }

  @Test
  void findsTheRatioForTheMorning() throws IOException {
    JsonAnswer feed =
        json(
            "--ready-at",
            "07:00",
            "--fed-at",
            "21:30",
            "--starter-temp",
            "20C",
            "--amount",
            "120g",
            "--keep",
            "30g");

    assertThat(feed.text("reach")).isEqualTo("on time");
    assertThat(feed.number("wantedHours")).isEqualTo(9.5);
    assertThat(feed.text("fedAt")).isEqualTo("2027-03-06T21:30Z");
    assertThat(feed.text("readyAt")).startsWith("2027-03-07T07:0");
    assertThat(feed.number("amounts.0.useGrams")).isEqualTo(120);
    assertThat(feed.number("amounts.0.keepGrams")).isBetween(30.0, 32.0);
  }

  /** In whole parts and in the steps of the scale, with as much to use as was asked for. */
  @Test
  void leadsWithWhatToWeigh() throws IOException {
    String[] words =
        "--ready-at 7am --fed-at 21h30 --starter-temp 20C --amount 120g --scale 5g".split(" ");
    JsonAnswer feed = json(words);

    assertThat(feed(words).out())
        .startsWith("Feed 45 g starter, 60 g flour, 60 g water (3:4:4), Sat 21:30: ready Sun ");
    assertThat(feed.number("ratio.starter")).isEqualTo(3);
    assertThat(feed.number("amounts.0.flourGrams") % 5).isZero();
    assertThat(feed.number("amounts.0.useGrams")).isEqualTo(120);
  }

  /** Asked at eight in the morning; what was fed before that is told, what is planned is not. */
  @Test
  void plansNothingInThePast() throws IOException {
    String asked = "--fed-at 00:30 --starter-temp 20C ";
    JsonAnswer planned = json((asked + "--ready-at 07:00").split(" "));
    JsonAnswer told = json((asked + "--ratio 1:5:5").split(" "));

    assertThat(planned.text("fedAt")).isEqualTo("2027-03-07T00:30Z");
    assertThat(planned.text("readyAt")).startsWith("2027-03-07T");
    assertThat(planned.text("remarks.0"))
        .isEqualTo(
            "--fed-at 00:30 has passed for today: this is for Sun 7 Mar 2027 00:30,"
                + " Europe/London.");
    assertThat(told.text("fedAt")).isEqualTo("2027-03-06T00:30Z");
  }

  @Test
  void saysTheNearestWhereTheHourCannotBeMet() {
    assertThat(feed("--ready-at", "23:00", "--fed-at", "21:30", "--starter-temp", "20C").out())
        .contains("That is too soon. The nearest possible: feed 2:1:1")
        .containsIgnoringWhitespaces("warmer alone would not do it.");
    assertThat(feed("--ready-at", "04:00", "--fed-at", "21:30", "--starter-temp", "20C").out())
        .containsIgnoringWhitespaces("Feed earlier, or keep it warmer: at 2")
        .containsIgnoringWhitespaces(" it would be in time.");
    assertThat(
            feed("--ready-at", "2027-03-09T07:00", "--fed-at", "21:30", "--starter-temp", "20C")
                .out())
        .contains("That is too long. The nearest possible: feed 1:100:100");
  }

  @Test
  void saysWhenToFeedAndThatTheHourHasPassed() throws IOException {
    String[] words = {"--ratio", "1:5:5", "--starter-temp", "22C", "--ready-at", "12:00"};

    assertThat(json(words).text("readyAt")).isEqualTo("2027-03-06T12:00Z");
    assertThat(feed(words).out()).contains("The hour to feed has passed already");
  }

  @Test
  void countsRealHoursOverAChangeOfTheClocks() throws IOException {
    JsonAnswer feed =
        json(
            "--fed-at",
            "2027-03-27T22:00",
            "--ready-at",
            "07:00",
            "--zone",
            "Europe/Berlin",
            "--starter-temp",
            "21C");

    assertThat(feed.number("wantedHours")).isEqualTo(8);
    // Fed in equal parts, the nearest that bakers feed.
    assertThat(feed.text("readyAt")).matches("2027-03-28T07:1[0-9]\\+02:00");
    assertThat(feed.text("answer")).contains("10 min after the hour you want");
    assertThat(feed.text("remarks.0")).contains("the clocks go forward");
  }

  @Test
  void refreshesFromTheCold() throws IOException {
    JsonAnswer feed =
        json(
            "--ratio",
            "1:2:2",
            "--starter-condition",
            "from cold",
            "--refreshments",
            "2",
            "--starter-temp",
            "24C",
            "--flour",
            "rye",
            "--amount",
            "100g");

    assertThat(feed.number("refreshments.size")).isEqualTo(2);
    assertThat(feed.number("refreshments.1.fedHours"))
        .isEqualTo(feed.number("refreshments.0.readyHours"));
    assertThat(feed.number("readyHours")).isEqualTo(feed.number("refreshments.1.readyHours"));
    assertThat(feed.text("warnings.0.kind")).isEqualTo("starter");
  }

  @Test
  void takesAFloursRecordStiffAndSalted() throws IOException {
    Files.writeString(
        folder.resolve("fenside.txt"), "name: Fenside rye\nflour: rye\nprotein: 8.9%\n");
    String page =
        feed(
                "--ratio",
                "1:2:1.2",
                "--starter-hydration",
                "60%",
                "--flour-file",
                "fenside.txt",
                "--starter-flour",
                "white",
                "--salt",
                "2%",
                "--starter-temp",
                "70F",
                "--amount",
                "200g")
            .out();

    assertThat(page)
        .contains("Fenside rye")
        .contains("hydration 60 %, salt 2 % of the flour given")
        .contains("salt");
  }

  @Test
  void tooWarmGivesAWarningAndNoHours() throws IOException {
    JsonAnswer feed = json("--ratio", "1:5:5", "--starter-temp", "41C");

    assertThat(feed.text("ripe.hoursLikely")).isEqualTo("null");
    assertThat(feed.text("heightTimes")).isEqualTo("null");
    assertThat(feed.text("warnings.0.kind")).isEqualTo("outside-growth");
    assertThat(feed("--ratio", "1:5:5", "--starter-temp", "41C").out())
        .contains("no hours are given");
  }

  @Test
  void drawsTheChartOnce() {
    feed("--ratio", "1:5:5", "--starter-temp", "22C", "--chart", "feed.pdf");

    assertThat(folder.resolve("feed.pdf")).isNotEmptyFile();
    String[] again = {"feed", "--ratio", "1:5:5", "--starter-temp", "22C", "--chart", "feed.pdf"};
    assertThat(CliRun.in(TestEnvironment.in(folder), again).refusal()).contains("--overwrite");
  }

  @Test
  void csvHasARowForEachEvent() {
    assertThat(feed("--ratio", "1:5:5", "--starter-temp", "22C", "--format", "csv").out().lines())
        .hasSize(5)
        .first()
        .isEqualTo("feed,event,hours_early,hours_likely,hours_late,reached_share");
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      quoteCharacter = '`',
      value = {
        "--ratio 1:5:5 | --starter-temp is missing: write for example --starter-temp 22C",
        "--starter-temp 22C | --ratio is missing: write for example --ratio 1:5:5, or give"
            + " --ready-at",
        "--starter-temp 22C --ratio 1:5 | is not a feed: write three numbers starter:flour:water",
        "--starter-temp 22C --ratio 5:0:5 | part 0 is outside",
        "--starter-temp 22C --ratio 1:5:0 | hydration of the starter after feeding 1:5:0",
        "--starter-temp 22C --ratio 20:1:1 | it must be 0.1…60 %: give more flour",
        "--starter-temp 22 --ratio 1:5:5 | --starter-temp 22 has no unit: write --starter-temp 22C"
            + " (or 71.6F)",
        "--starter-temp 60C --ratio 1:5:5 | is outside -2…45 °C",
        "--starter-temp 22C --ratio 1:5:5 --amount 0g | is no mass",
        "--starter-temp 22C --ratio 1:5:5 --keep 20g | --keep says nothing without --amount",
        "--starter-temp 22C --ratio 1:5:5 --refreshments 9 | --refreshments 9 is outside 1…6",
        "--starter-temp 22C --ratio 1:5:5 --starter-condition tired | use ripe, young, past best,"
            + " from cold",
        "--starter-temp 22C --ratio 1:5:5 --salt 9% | salt 9 % is outside 0…4 %",
        "--starter-temp 22C --ratio 1:5:5 --flour spely | did you mean spelt?",
        "--starter-temp 22C --ratio 1:5:5 --flour rye --flour-file f.txt | exclude each other",
        "--starter-temp 22C --ratio 1:5:5 --flour-file none.txt | 'none.txt' does not exist",
        "--starter-temp 22C --ratio 1:5:5 --zone UTC | says nothing without --fed-at or --ready-at",
        "--starter-temp 22C --ratio 1:5:5 --chart feed.gif | must end in .pdf, .svg or .png",
        "--starter-temp 40C --fed-at 09:00 --ready-at 17:00 | no hours are given",
        "--starter-temp 0C --fed-at 09:00 --ready-at 17:00 | --starter-temp 0C: at 0 °C the dough"
            + " freezes",
        "--starter-temp 22C --fed-at 09:00 --ready-at 2027-03-05T09:00 | lies before Sat 6 Mar 2027"
            + " 09:00",
        "--starter-temp 41C --ratio 1:5:5 --chart feed.png | there is nothing to draw",
      })
  void isRefusedInOneLine(String words, String part) {
    List<String> all = new ArrayList<>(List.of("feed"));
    all.addAll(List.of(words.strip().split(" ")));
    assertThat(CliRun.in(TestEnvironment.in(folder), all.toArray(String[]::new)).refusal())
        .contains(part);
  }

  /** Two stages, the second of which freezes; one that is too warm. */
  @Test
  void aStageWithoutGrowthIsNamedWithItsOption() {
    assertThat(stages("1:5:5, 26C, 6h", "1:2:2, 0C, 6h").refusal())
        .contains("--stage \"1:5:5, 26C, 6h 1:2:2, 0C, 6h\": stage 2: at 0 °C the dough freezes");
    assertThat(stages("1:5:5, 40C, 6h").refusal())
        .contains("--stage \"1:5:5, 40C, 6h\": stage 1: at 40 °C the dough is too warm");
  }

  private CliRun stages(String... stages) {
    List<String> all = new ArrayList<>(List.of("feed"));
    for (String stage : stages) {
      all.addAll(List.of("--stage", stage));
    }
    return CliRun.in(TestEnvironment.in(folder), all.toArray(String[]::new));
  }
}
