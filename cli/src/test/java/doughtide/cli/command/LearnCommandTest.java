package doughtide.cli.command;

import static org.assertj.core.api.Assertions.assertThat;

import doughtide.cli.CliRun;
import doughtide.cli.DemoReadings;
import doughtide.cli.JsonAnswer;
import doughtide.cli.TestEnvironment;
import doughtide.cli.file.OutputFile;
import doughtide.cli.file.StarterFile;
import doughtide.cli.session.Environment;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class LearnCommandTest {

  @TempDir Path folder;

  private CliRun run(String... args) {
    return CliRun.in(TestEnvironment.in(folder), args);
  }

  @Test
  void thePathOfANewcomer() throws IOException {
    DemoReadings.copyTo(folder);
    CliRun learn =
        run("learn", "quayside-bakes", "--starter-routine", "kept", "--save", "starter.json");
    assertThat(learn.err()).isEmpty();
    assertThat(learn.code()).isZero();
    assertThat(learn.out())
        .contains("Learned from 6 bakes")
        .contains("Does not fit the others: 2026-02-07")
        .contains("dough temperature noted is off")
        .contains("% narrower")
        .contains("Saved in 'starter.json'");
    CliRun today =
        run("rise", "--readings", "quayside-today.csv", "--starter-file", "starter.json");
    assertThat(today.err()).isEmpty();
    assertThat(today.out())
        .contains("learned from 6 bakes")
        .contains("Sat 21 Feb 2026 09:30")
        .containsPattern("^Risen 50 % about \\d\\d:\\d\\d; look (at|now)")
        .containsPattern("(ahead of|behind) the first forecast|As the first forecast said")
        .contains("risen 50 %", "  at first");
    assertThat(learn.out().lines()).allMatch(line -> line.codePointCount(0, line.length()) <= 80);
    assertThat(today.out().lines()).allMatch(line -> line.codePointCount(0, line.length()) <= 80);
    CliRun json =
        run(
            "rise",
            "--readings",
            "quayside-today.csv",
            "--starter-file",
            "starter.json",
            "--format",
            "json");
    assertThat(json.out()).contains("\"schema\": \"doughtide/now/3\"", "\"nextLookHours\"");
  }

  @Test
  void todaysReadingsAreDrawnOnItsChart() throws IOException {
    DemoReadings.learnedIn(folder);
    String call = "rise --readings quayside-today.csv --members 32 --chart today.svg";
    assertThat(run(call.split(" ")).out()).contains("Chart: today.svg");
    assertThat(Files.readString(folder.resolve("today.svg")))
        .contains("Crosses: your readings.", "How far is today");
    assertThat(run("rise", "--readings", "quayside-today.csv", "--title", "x").refusal())
        .contains("--title says nothing without --chart");
  }

  @Test
  void whatWasLearnedAlsoComesAsJson() throws IOException {
    DemoReadings.learnedIn(folder);
    String json =
        run("learn", "quayside-bakes", "--starter-routine", "kept", "--format", "json").out();
    assertThat(json)
        .contains("\"schema\": \"doughtide/learn/2\"", "\"linesLeftOut\": 0")
        .contains("{\"bake\": \"2026-02-07\", \"reason\": \"temperature-off\"")
        .contains("\"doughWarmerKelvin\"", "\"narrowerShare\"");
    assertThat(run("learn", "quayside-bakes", "--format", "csv").refusal())
        .contains("learn has no csv form");
  }

  @Test
  void howLoavesCameOutMovesTheTargetAndIsSaid() throws IOException {
    DemoReadings.learnedIn(folder);
    assertThat(run("learn", "quayside-bakes").out()).doesNotContain("Your target");
    Path bakes = folder.resolve("quayside-bakes");
    try (var files = Files.list(bakes)) {
      for (Path file : files.toList()) {
        Files.writeString(file, "result: under\n" + Files.readString(file));
      }
    }
    CliRun under = run("learn", "quayside-bakes");
    assertThat(under.err()).isEmpty();
    assertThat(under.out())
        .contains("Your target")
        .containsPattern("6 loaf results of yours: a\\s+rise at the oven of \\d+ %\\s+instead of")
        .containsPattern("kitchen\\s+set\\s+target\\s+\\d+%");
    JsonAnswer json = JsonAnswer.of(run("learn", "quayside-bakes", "--format", "json"));
    assertThat(json.number("target.targetPercent"))
        .isGreaterThan(json.number("target.usedPercent"));
  }

  /** A loaf that was shaped late and came out over tells little of the target. */
  @Test
  void aLoafIsWeighedByTheHourAtWhichItWasShaped() throws IOException {
    double unknown = targetAfter("");
    double late = targetAfter("shaped: 17:00\n");
    double early = targetAfter("shaped: 11:00\n");
    assertThat(unknown).isLessThan(85);
    assertThat(late).isBetween(unknown, 85.0);
    assertThat(early).isLessThan(unknown);
    assertThat(run("learn", "one").out().replaceAll("\\s+", " "))
        .contains("1 loaf result of yours, weighed by the hour at which you shaped: a");
  }

  private double targetAfter(String shaped) throws IOException {
    Path one = Files.createDirectories(folder.resolve("one"));
    Files.writeString(
        one.resolve("bake.csv"),
        "starter: 20%\nhydration: 70%\ndough temp: 25C\nmixed at: 09:00\ncold: 4C\nhold: 12h\n"
            + "target: 85%\nresult: over\n"
            + shaped
            + "\ntime,rise %\n11:00,14\n12:00,27\n");
    JsonAnswer json = JsonAnswer.of(run("learn", "one", "--format", "json"));
    return json.number("target.targetPercent");
  }

  @Test
  void sameReadingsGiveTheSameFileByteForByte() throws IOException {
    DemoReadings.learnedIn(folder);
    byte[] first = Files.readAllBytes(folder.resolve("starter.json"));
    run("learn", "quayside-bakes", "--save", "again.json");
    assertThat(Files.readAllBytes(folder.resolve("again.json"))).isEqualTo(first);
  }

  @Test
  void anExistingFileIsKeptUnlessToldOtherwise() throws IOException {
    DemoReadings.learnedIn(folder);
    assertThat(run("learn", "quayside-bakes", "--save", "starter.json").refusal())
        .contains("exists already");
    assertThat(run("learn", "quayside-bakes", "--save", "starter.json", "--overwrite").code())
        .isZero();
  }

  @Test
  void aMissingOrEmptyFolderIsRefused() throws IOException {
    assertThat(run("learn", "nowhere").refusal()).contains("'nowhere' does not exist");
    Files.createDirectories(folder.resolve("bare"));
    assertThat(run("learn", "bare").refusal()).contains("holds no .csv or .txt file of readings");
    Files.writeString(folder.resolve("a.csv"), "time;rise %\n");
    assertThat(run("learn", "a.csv").refusal()).contains("is a file");
  }

  @Test
  void whatIsReadBackEqualsWhatWasWritten() throws IOException {
    DemoReadings.learnedIn(folder);
    Environment here = TestEnvironment.in(folder);
    var starter = StarterFile.read("--starter-file", "starter.json", here);
    assertThat(starter.bakes()).isEqualTo(6);
    assertThat(starter.dataDigest()).matches("[0-9a-f]{64}");
    OutputFile copy = OutputFile.of("--save", "copy.json", OutputFile.Existing.KEEP, here);
    StarterFile.write(starter, copy);
    assertThat(Files.readString(folder.resolve("copy.json")))
        .isEqualTo(Files.readString(folder.resolve("starter.json")));
  }

  @Test
  void mixersAreKept() throws IOException {
    DemoReadings.learnedIn(folder);
    Environment here = TestEnvironment.in(folder);
    var starter =
        StarterFile.read("--starter-file", "starter.json", here)
            .withMixerFriction(java.util.Map.of("spiral", 7.5));
    StarterFile.write(
        starter, OutputFile.of("--save", "mixer.json", OutputFile.Existing.KEEP, here));
    assertThat(StarterFile.read("--starter-file", "mixer.json", here).mixerFrictionCelsius())
        .containsEntry("spiral", 7.5);
  }

  @Test
  void aStarterFileThatCannotBeUsedSaysWhy() throws IOException {
    DemoReadings.learnedIn(folder);
    String good = Files.readString(folder.resolve("starter.json"));
    assertThat(withStarter(good.replace("form: 2", "form: 3")))
        .contains("written in form 3, this program reads form 2");
    assertThat(withStarter("{}")).contains("is no starter file");
    assertThat(withStarter("{ not json")).contains("line 1 is no JSON");
    assertThat(withStarter("not a starter")).contains("line 1: 'not a starter' is no line 'key:");
    assertThat(withStarter(good.substring(0, good.indexOf("curve;unknown"))))
        .contains("there is no table of what is believed");
    assertThat(withStarter(good.substring(0, good.length() - 9))).contains("columns, but the");
    assertThat(withStarter("")).contains("is empty");
    assertThat(withStarter(good.replace("bakes: ", "bakes: x"))).contains("is not a number");
    assertThat(withStarter(good.replaceFirst("data: ..", "data: ")))
        .contains("64 hexadecimal digits");
    assertThat(withStarter(good + "more\n")).contains("1 columns, but the heading names");
    assertThat(run("rise", "--dough-temp", "25C", "--starter-file", "gone.json").refusal())
        .contains("does not exist");
  }

  @Test
  void aStarterOfTheFirstRoundIsStillReadWithOneLineOfNotice() throws IOException {
    Files.writeString(folder.resolve("old.json"), firstRound());
    CliRun old =
        run("rise", "--dough-temp", "25C", "--members", "32", "--starter-file", "old.json");
    assertThat(old.code()).isZero();
    assertThat(old.err().lines())
        .singleElement()
        .asString()
        .contains("'old.json' was written by the first round of this program")
        .contains("says nothing of strength, humilis/power-exponential, cerevisiae/")
        .contains("knows mean-of-the-published-forms, which is left out");
    assertThat(old.out()).isNotEqualTo(run("rise", "--dough-temp", "25C", "--members", "32").out());
  }

  /** As the first round wrote it: five forms of one yeast, six unknowns, the jar last. */
  private static String firstRound() {
    StringBuilder json =
        new StringBuilder(
            "{\"schema\": \"doughtide/starter/1\", \"program\": \"0.1.0\", \"data\": {\"sha256\":"
                + " \"");
    json.append("0a".repeat(32)).append("\", \"bakes\": 6, \"readings\": 40}, \"coordinates\": [");
    json.append(
        "\"ln vigour\", \"ln lag factor\", \"true minus noted temperature, K\", \"ln rate scale\","
            + " \"retention shift, gas share\", \"ln starting air over 0.06\","
            + " \"ln height read over true height\"], \"prior\": {\"mean\": [0,0,0,0,0,0,0],"
            + " \"betweenBakers\": [0.2,0.3,0.5,0.1,0.025,0.2,0.03],"
            + " \"betweenBakes\": [0.1,0.14,0.5,0,0,0.12,0.015]}, \"posterior\": [");
    String comma = "";
    for (String form :
        List.of("mean of the published forms", "SCHOOLFIELD", "CARDINAL", "SQUARE_ROOT")) {
      json.append(comma).append("{\"rateCurve\": \"").append(form);
      json.append("\", \"weight\": 0.25, \"mean\": [0.3,0,0,0.1,0,0], \"covariance\": [");
      for (int row = 0; row < 6; row++) {
        StringBuilder cells = new StringBuilder();
        for (int column = 0; column < 6; column++) {
          cells.append(column > 0 ? "," : "").append(row == column ? "0.01" : "0");
        }
        json.append(row > 0 ? ",[" : "[").append(cells).append(']');
      }
      json.append("]}");
      comma = ",";
    }
    return json.append("], \"jar\": {\"mean\": 0.01, \"deviation\": 0.02},")
        .append(" \"mixerFrictionCelsius\": {\"spiral\": 7.5}}")
        .toString();
  }

  @Test
  void whatAFileDoesNotKnowKeepsItsPrior() throws IOException {
    DemoReadings.learnedIn(folder);
    String[] lines = Files.readString(folder.resolve("starter.json")).split("\n");
    StringBuilder fewer = new StringBuilder();
    for (String line : lines) {
      if (!line.startsWith("curve: cerevisiae/cardinal")
          && !line.startsWith("cerevisiae/cardinal")) {
        fewer.append(line).append('\n');
      }
    }
    Files.writeString(folder.resolve("fewer.txt"), fewer);
    CliRun run =
        run("rise", "--dough-temp", "25C", "--members", "32", "--starter-file", "fewer.txt");
    assertThat(run.code()).isZero();
    assertThat(run.err())
        .isEqualTo(
            "doughtide: 'fewer.txt' says nothing of cerevisiae/cardinal, of which the usual belief"
                + " holds\n");
  }

  private String withStarter(String content) throws IOException {
    Files.write(folder.resolve("odd.json"), content.getBytes(StandardCharsets.UTF_8));
    return run("rise", "--dough-temp", "25C", "--starter-file", "odd.json").refusal();
  }

  @Test
  void theDoughIsDescribedInOnePlace() throws IOException {
    DemoReadings.copyTo(folder);
    assertThat(run("rise", "--readings", "quayside-today.csv", "--hydration", "70%").refusal())
        .contains("the file describes the dough at its top");
  }

  @Test
  void learnedStarterAlsoPlansADayAndALeave() throws IOException {
    DemoReadings.learnedIn(folder);
    String[] leave =
        ("leave --dough-temp 25C --mixed-at 2027-03-06T10:00 --zone UTC --cold 4C --bake-at 07:30"
                + " --now 13:00 --leave-at 15:00 --back-at 19:30 --format json")
            .split(" ");
    String[] day =
        ("bake-day --ready-at 2027-03-14T12:00 --at-the-bench 06:30-08:30,17:00-22:30 --cold 4C"
                + " --zone UTC --plans 1 --format json")
            .split(" ");

    assertThat(run(with(leave)).out()).isNotEqualTo(run(leave).out()).contains("goodShare");
    assertThat(run(with(day)).out()).isNotEqualTo(run(day).out()).contains("\"plans\"");
    assertThat(run("leave", "--starter-file", "none.json").refusal()).isNotEmpty();
  }

  /** Every bad file in one line with all that is wrong in it; the others on request. */
  @Test
  void aFolderIsReadToItsEnd() throws IOException {
    Path bakes = Files.createDirectory(folder.resolve("bk"));
    String good = "starter: 100g in 500g flour\nhydration: 72\nflour: white 80%, wholemeal 20%\n";
    String table = "dough temp: 25C\nmixed at: 9.30\ntime;rise %\n11:30;12\n1:30 pm;30\n";
    Files.writeString(bakes.resolve("a.csv"), good + table);
    Files.writeString(
        bakes.resolve("b.csv"),
        "starter: 20\nhydratoin: 70%\nmixed at: 9.3\ndough temp: 25C\ntime;rise %\n11:30;12\n");
    Files.writeString(bakes.resolve("c.txt"), good + table + "13;x\n14:00;1,250\n14:30;x\n");
    Files.writeString(bakes.resolve("starter.txt"), "# doughtide starter\nform: 2\n");

    CliRun refused = run("learn", "bk");
    assertThat(refused.code()).isEqualTo(2);
    assertThat(refused.err().lines())
        .hasSize(3)
        .satisfiesExactly(
            line ->
                assertThat(line)
                    .startsWith("'bk/b.csv': line 1: starter: 20 has no unit: ")
                    .contains("; line 2: 'hydratoin:' is not known here: did you mean 'hydration")
                    .contains("; line 3: mixed at: 9.3 can be read two ways: write 9:03 or 9:30"),
            line ->
                assertThat(line)
                    .startsWith("'bk/c.txt': lines 9, 11: rise x")
                    .contains("; line 10: ", "can be read two ways"),
            line -> assertThat(line).contains("2 of 3 files cannot be used", "--skip-bad-files"));

    CliRun used = run("learn", "bk", "--skip-bad-files");
    assertThat(used.code()).isZero();
    assertThat(used.err().lines()).hasSize(2);
    assertThat(used.out()).contains("1 bake");
  }

  @Test
  void otherFilesOfAKitchenAreLeftOutInOneLine() throws IOException {
    Files.writeString(folder.resolve("kitchen.txt"), "# my kitchen\nroom: 19C\ncold: 4C\n");
    Files.writeString(folder.resolve("roster.csv"), "name;loaves\nAnn;2\n");
    Files.writeString(
        folder.resolve("trial.csv"), "trial,person,hydration,grade\n1,Ann,72%,tears\n");
    Files.writeString(
        folder.resolve("logger.csv"),
        "time,temperature C\n2027-03-06T09:30,25\n2027-03-06T12:00,24\n");
    assertThat(run("learn", ".").refusal()).contains("holds no .csv or .txt file of readings");
    Files.writeString(
        folder.resolve("mon.txt"),
        "# doughtide dough\ndough temp: 25C\nmixed at: 9.30\ntime;rise %\n11:30;12\n1:30 pm;30\n");

    CliRun learn = run("learn", ".");

    assertThat(learn.code()).isZero();
    assertThat(learn.err())
        .isEqualTo(
            "Left out, for no line in it begins a table of readings: './kitchen.txt',"
                + " './logger.csv', './roster.csv', './trial.csv'\n");
    assertThat(learn.out()).contains("Learned from 1 bake");
  }

  private static String[] with(String[] words) {
    String[] all = java.util.Arrays.copyOf(words, words.length + 2);
    all[words.length] = "--starter-file";
    all[words.length + 1] = "starter.json";
    return all;
  }
}
