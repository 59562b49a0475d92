package doughtide.cli.command;

import static org.assertj.core.api.Assertions.assertThat;

import doughtide.cli.CliRun;
import doughtide.cli.TestEnvironment;
import doughtide.cli.session.Environment;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class KitchenCommandTest {

  @TempDir Path folder;

  /** A user with a folder of settings and variables of her own. */
  private Environment user(Map<String, String> variables) {
    return TestEnvironment.in(folder).of(folder.resolve("settings"), variables);
  }

  private CliRun run(String... words) {
    return CliRun.in(user(Map.of()), words);
  }

  @Test
  void isSetShownCheckedAndTakenOut() throws IOException {
    assertThat(run("kitchen").out()).contains("Nothing is kept of your kitchen yet");
    assertThat(run("kitchen", "set", "room", "19C").out()).startsWith("Kept: room: 19C, in ");
    Path file = folder.resolve("settings").resolve("kitchen.txt");
    Files.writeString(file, Files.readString(file) + "# the big tub\nvessel: tub\n");
    run("kitchen", "set", "room", "20C");
    assertThat(run("kitchen", "set", "Teigeinlage", "900g").code()).isZero();
    assertThat(Files.readAllLines(file))
        .containsExactly(
            "# my kitchen", "room: 20C", "# the big tub", "vessel: tub", "piece: 900g");
    assertThat(run("kitchen").out()).contains("room: 20C", "vessel: tub", "piece: 900g", "Kept in");
    assertThat(run("kitchen", "check").out()).startsWith("All 3 values of ");
    run("kitchen", "unset", "vessel");
    assertThat(Files.readAllLines(file)).doesNotContain("vessel: tub").contains("# the big tub");
  }

  @Test
  void severalValuesAreSetAndTakenOutAtOnce() throws IOException {
    assertThat(run("kitchen", "set", "room", "19C", "cold", "4C").out())
        .startsWith("Kept: room: 19C, cold: 4C, in ");
    Path file = folder.resolve("settings").resolve("kitchen.txt");
    assertThat(Files.readAllLines(file)).containsExactly("# my kitchen", "room: 19C", "cold: 4C");
    assertThat(run("kitchen", "set", "room", "20C", "cold", "4").refusal()).contains("cold: 4");
    assertThat(run("kitchen", "set", "flour", "white", "80%").refusal())
        .contains("a key and its value in turn");
    assertThat(run("kitchen", "set", "room", "20C", "room", "21C").refusal()).contains("twice");
    assertThat(run("kitchen", "unset").refusal()).contains("names no key");
    assertThat(Files.readAllLines(file)).contains("room: 19C");
    assertThat(run("kitchen", "unset", "room", "cold").out()).startsWith("Taken out: room, cold");
    assertThat(Files.readAllLines(file)).containsExactly("# my kitchen");
  }

  @Test
  void aTemperatureBelowZeroIsAValueAndNoOption() {
    assertThat(run("kitchen", "set", "warming", "-2.9C", "room", "19C").out())
        .startsWith("Kept: warming: -2.9C, room: 19C, in ");
    assertThat(run("kitchen", "set", "-warming", "2C").refusal()).contains("has no option");
  }

  @Test
  void whoMustLeaveIsAskedOnlyWhatTheKitchenDoesNotSay() {
    run("kitchen", "set", "cold", "4C");
    String leave = "leave --dough-temp 25C --mixed-at 10:00 --now 13:00 --leave-at 15:00";
    String[] words = (leave + " --back-at 19:30").split(" ");

    assertThat(run(words).refusal())
        .contains("--cold needs to know how long: add --hold 12h, or --bake-at 07:00")
        .doesNotContain("--cold 4C", "--mixed-at");
  }

  @Test
  void whatCannotBeUsedIsRefusedAndChangesNothing() throws IOException {
    assertThat(run("kitchen", "set", "room", "19").refusal()).contains("room: 19 has no unit");
    assertThat(run("kitchen", "set", "colour", "red").refusal()).contains("has no 'colour'");
    assertThat(run("kitchen", "sit", "room", "19C").refusal()).contains("is not understood");
    assertThat(run("kitchen", "unset", "room").refusal()).contains("there is no line 'room: …'");
    assertThat(run("kitchen", "check").refusal()).contains("does not exist");
    assertThat(folder.resolve("settings")).doesNotExist();
    Files.writeString(folder.resolve("bad.txt"), "room: 19C\nromm: 20C\n");
    assertThat(run("rise", "--dough-temp", "25C", "--kitchen", "bad.txt").refusal())
        .contains("bad.txt' line 2: 'romm:' is not known here: did you mean 'room:'?");
    assertThat(run("rise", "--dough-temp", "25C", "--kitchen", "none.txt").refusal())
        .contains("none.txt' does not exist, which --kitchen names", "kitchen set room 19C");
  }

  @Test
  void aRiseTakesWhatWasNotGivenAndSaysSo() throws IOException {
    Files.writeString(
        folder.resolve("k.txt"),
        "room: 19C\nvessel: bowl\ncold: 4C\npiece: 700g\nzone: Europe/Berlin\nflour: rye\n"
            + "starter-hydration: 75%\nat-the-bench: 07:00-22:00\npaper: A5\n");
    CliRun plain = run("rise", "--dough-temp", "25C", "--kitchen", "k.txt", "--members", "16");
    assertThat(plain.out())
        .contains("room of 19", "bowl", "rye", "hydration 75 %")
        .endsWith(
            "From the kitchen (--no-kitchen leaves it out): starter-hydration 75%; flour rye; room"
                + " 19C; vessel bowl\n")
        .doesNotContain("700 g");
    CliRun wins =
        run(
            "rise",
            "--dough-temp",
            "25C",
            "--kitchen",
            "k.txt",
            "--members",
            "16",
            "--flour",
            "white",
            "--hold",
            "12h",
            "--mixed-at",
            "09:30",
            "--format",
            "json");
    assertThat(wins.out())
        .contains(
            "\"fromKitchen\": [\"starter-hydration 75%\", \"room 19C\", \"vessel bowl\", \"cold"
                + " 4C\", \"piece 700g\", \"zone Europe/Berlin\"]");
    assertThat(run("rise", "--dough-temp", "25C", "--members", "16").out())
        .isEqualTo(
            run(
                    "rise",
                    "--dough-temp",
                    "25C",
                    "--members",
                    "16",
                    "--kitchen",
                    "k.txt",
                    "--no-kitchen")
                .out());
  }

  @Test
  void aFedStarterStandsInTheRoomOfTheKitchen() throws IOException {
    Files.writeString(folder.resolve("k.txt"), "room: 19C\n");
    CliRun fed = run("feed", "--ratio", "1:5:5", "--kitchen", "k.txt");
    assertThat(fed.out())
        .contains("19 °C", "From the kitchen (--no-kitchen leaves it out): starter-temp 19C");
    assertThat(run("feed", "--ratio", "1:5:5", "--starter-temp", "24C", "--kitchen", "k.txt").out())
        .contains("24 °C")
        .doesNotContain("From the kitchen");
    assertThat(run("feed", "--stage", "1:5:5, 26C, 6h", "--kitchen", "k.txt").out())
        .doesNotContain("starter-temp");
  }

  @Test
  void theVariableNamesTheFileAndFilesAreSeenFromIt() throws IOException {
    Files.createDirectories(folder.resolve("school"));
    Files.writeString(folder.resolve("school/k.txt"), "flour-file: mill.txt\n");
    Files.writeString(
        folder.resolve("school/mill.txt"), "name: Millrace\nflour: white\nhydration: 68%\n");
    Environment user = user(Map.of("DOUGHTIDE_KITCHEN", "school/k.txt"));
    assertThat(CliRun.in(user, "rise", "--dough-temp", "25C", "--members", "16").out())
        .contains("Millrace; hydration 68 %", "From the kitchen");
    assertThat(CliRun.in(user, "kitchen", "check").code()).isZero();
  }

  @Test
  void theColdAndTheHandsOfTheKitchenActInBothDays() throws IOException {
    Files.writeString(
        folder.resolve("k.txt"),
        "cold: 5C\ncold-measured: yes\nshaping: firm\nat-the-bench: 06:00-22:00\n");
    Files.writeString(folder.resolve("class.csv"), "name,loaves\nFenside,2\n");
    for (String day : List.of("bake-day", "class-day class.csv")) {
      String typed = day + " --ready-at 2027-03-07T18:00 --zone Europe/Berlin --kitchen k.txt";
      CliRun run = run(typed.split(" "));
      assertThat(run.err()).as(day).isEmpty();
      assertThat(run.out())
          .as(day)
          .contains("cold 5 °C (41 °F) ± 0.5 °C", "850 g, round, firm")
          .contains("cold 5C", "cold-measured", "shaping firm");
    }
  }

  @Test
  void theTrialOfAFlourTakesScaleAndWordsButNotTheUsualFlour() throws IOException {
    Files.writeString(folder.resolve("k.txt"), "flour: rye\nscale: 0.1g\nlanguage: de\n");
    Files.writeString(
        folder.resolve("trial.csv"),
        "trial,person,hydration,grade\n1,Ann,68%,thin window\n1,Ann,76%,torn\n");
    assertThat(run("flour", "plan", "--kitchen", "k.txt").out())
        .contains("white")
        .endsWith("(--no-kitchen leaves it out): scale 0.1g\n");
    String[] read = "flour read trial.csv --kitchen k.txt --chart bowls.svg".split(" ");
    assertThat(run(read).out())
        .contains("with white;")
        .endsWith("(--no-kitchen leaves it out): language de\n");
    assertThat(folder.resolve("bowls.svg")).content().contains("Wasser");
    assertThat(run("flour", "read", "trial.csv", "--kitchen", "k.txt").out())
        .doesNotContain("From the kitchen");
  }

  @Test
  void everyCommandRunsWithAFullKitchen() throws IOException {
    Files.writeString(
        folder.resolve("k.txt"),
        "room: 20C\nvessel: bowl\nvessel-material: wood\ncold: 4C\naltitude: 300m\n"
            + "zone: Europe/Berlin\nlanguage: de\ndegrees: F\npaper: A5\nflour: white\n"
            + "starter-hydration: 80%\npiece: 700g\nform: oval\ntarget: 85%\noven-capacity: 4\n"
            + "at-the-bench: 07:00-22:00\nmixer: spiral\n");
    String[][] calls = {
      {"rise", "--dough-temp", "25C", "--members", "16"},
      {"wanted", "--bulk", "8h", "--starter", "20%"},
      {"feed", "--starter-temp", "24C", "--ready-at", "18:00", "--fed-at", "08:30"},
      {"bake-day", "--ready-at", "2027-03-07T18:00"},
      {
        "leave",
        "--dough-temp",
        "25C",
        "--mixed-at",
        "09:30",
        "--now",
        "10:00",
        "--leave-at",
        "11:00",
        "--back-at",
        "12:00",
        "--bake-at",
        "07:30"
      },
      {
        "water",
        "--dough-temp",
        "25C",
        "--flour-temp",
        "19C",
        "--starter-temp",
        "24C",
        "--warming",
        "2C"
      },
      {"handout", "bowl-worksheet", "--out", "bowls.pdf"},
      {"handout", "readings-log", "--out", "log.pdf"},
    };
    for (String[] call : calls) {
      String[] words = java.util.Arrays.copyOf(call, call.length + 2);
      words[call.length] = "--kitchen";
      words[call.length + 1] = "k.txt";
      CliRun run = run(words);
      assertThat(run.err()).as(String.join(" ", words)).isEmpty();
      assertThat(run.out()).as(String.join(" ", words)).contains("From the kitchen");
    }
  }
}
