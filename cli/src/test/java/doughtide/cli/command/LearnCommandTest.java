package doughtide.cli.command;

import static org.assertj.core.api.Assertions.assertThat;

import doughtide.cli.CliRun;
import doughtide.cli.DemoReadings;
import doughtide.cli.TestEnvironment;
import doughtide.cli.file.OutputFile;
import doughtide.cli.file.StarterFile;
import doughtide.cli.session.Environment;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
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
        .contains("risen 50 %", "50 % rise: ")
        .containsPattern("today is .* (ahead of|behind) what was expected|today is on time")
        .contains("look again after");
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
    assertThat(json.out()).contains("\"schema\": \"doughtide/today/2\"", "\"nextLookHours\"");
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
    assertThat(run("learn", "bare").refusal()).contains("holds no .csv file");
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
    assertThat(withStarter(good.replace("doughtide/starter/1", "doughtide/starter/2")))
        .contains("written in form 2, this program reads form 1");
    assertThat(withStarter("{}")).contains("is no starter file");
    assertThat(withStarter("not json")).contains("line 1 is no JSON");
    assertThat(withStarter(good.substring(0, good.length() / 2))).contains("is no JSON");
    assertThat(withStarter("")).contains("is no JSON");
    assertThat(withStarter(good.replace("\"posterior\"", "\"posteriour\"")))
        .contains("has no 'posterior'");
    assertThat(withStarter(good.replace("\"weight\": ", "\"weight\": \"x\", \"w\": ")))
        .contains("must be a number");
    assertThat(withStarter(good.replaceFirst("\"sha256\": \"..", "\"sha256\": \"")))
        .contains("64 hexadecimal digits");
    assertThat(withStarter(good + "{}")).contains("goes on after its end");
    assertThat(run("rise", "--dough-temp", "25C", "--starter-file", "gone.json").refusal())
        .contains("does not exist");
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
                + " --zone UTC --format json")
            .split(" ");

    assertThat(run(with(leave)).out()).isNotEqualTo(run(leave).out()).contains("goodShare");
    assertThat(run(with(day)).out()).isNotEqualTo(run(day).out()).contains("\"plans\"");
    assertThat(run("leave", "--starter-file", "none.json").refusal()).isNotEmpty();
  }

  private static String[] with(String[] words) {
    String[] all = java.util.Arrays.copyOf(words, words.length + 2);
    all[words.length] = "--starter-file";
    all[words.length + 1] = "starter.json";
    return all;
  }
}
