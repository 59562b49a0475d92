package doughtide.cli;

import static org.assertj.core.api.Assertions.assertThat;

import doughtide.cli.session.Environment;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/**
 * Seven days of what a baker who teaches asks, in the invented Tidemill kitchen: first with every
 * option on the command line, then with a kitchen file and the shortest way of writing. The words
 * typed in the week are counted, a word is what stands between two spaces; the kitchen is written
 * once for all weeks and is not counted.
 */
class WeekTest {

  /** Each question as it is asked without a kitchen, and with one. */
  private record Question(String before, String now) {}

  private static final String DOUGH =
      " --flour white:80%,wholemeal_wheat:20% --starter-hydration 80%";
  private static final String LOAF =
      " --cold 4C --cold-measured --cold-air fan --piece 900g --form oval --target 75%";
  private static final String PLACE = " --altitude 300m --zone Europe/Lisbon";
  private static final String MINE = " --starter-file starter.txt";

  private static final List<Question> WEEK =
      List.of(
          // Monday: what the bakes so far tell, and what to feed tonight.
          new Question(
              "learn bakes --starter-routine kept --save starter.txt",
              "learn bakes --keep-in-kitchen"),
          new Question(
              "feed --fed-at 21:30 --ready-at 07:00 --starter-temp 20C --amount 120g --scale 5g"
                  + " --flour white:80%,wholemeal_wheat:20% --starter-hydration 80%"
                  + MINE
                  + PLACE,
              "feed --fed-at 21h30 --ready-at 7 --starter-temp 20C --amount 120g"),
          // Tuesday: the dough of the day, and its loaf for tomorrow morning.
          new Question(
              "rise --dough-temp 25C --room 19C --vessel bowl --vessel-material wood --starter 20%"
                  + " --mixed-at 09:30 --bake-at 07:00"
                  + DOUGH
                  + LOAF
                  + PLACE
                  + MINE,
              "rise --dough-temp 25C --mixed-at 9.30 --bake-at 7"),
          // Wednesday: water for the mixer, as it was measured.
          new Question(
              "water --pour 22C --got 25C --room 19C --starter 20% --starter-hydration 80%",
              "water --pour 22C --got 25C --keep-in-kitchen"),
          new Question(
              "water --dough-temp 25C --room 19C --warming 3C --starter 20% --starter-hydration"
                  + " 80%",
              "water --dough-temp 25C"),
          // Thursday: when to mix, to shape at seven.
          new Question(
              "wanted --shape-at 19:00 --dough-temp 24C --starter 20% --room 19C --bake-at 07:00"
                  + DOUGH
                  + LOAF
                  + PLACE
                  + MINE,
              "wanted --shape-at 19h --dough-temp 24C --bake-at 7"),
          // Friday: she must go.
          new Question(
              "leave --dough-temp 25C --room 19C --vessel bowl --vessel-material wood --starter 20%"
                  + " --mixed-at 07:00 --now 09:00 --leave-at 10:00 --back-at 14:00 --bake-at 07:00"
                  + DOUGH
                  + LOAF
                  + PLACE
                  + MINE,
              "leave --dough-temp 25C --mixed-at 7 --now 9 --leave-at 10 --back-at 14 --bake-at 7"),
          // Saturday: the bread for Sunday noon.
          new Question(
              "bake-day --ready-at 2027-03-07T12:00 --at-the-bench 07:00-22:00 --room 19C --cold 4C"
                  + " --loaves 2 --piece 900g --form oval --target 75% --oven-capacity 4 --vessel"
                  + " bowl --vessel-material wood --starter 20% --dough-temp 25C --plans 1"
                  + DOUGH
                  + PLACE
                  + MINE,
              "bake-day --ready-at 2027-03-07T12 --loaves 2 --starter 20% --dough-temp 25C"),
          // Sunday: a page for the class.
          new Question(
              "handout bake-sheet --dough-temp 25C --starter 20% --hold 12h --language pt --degrees"
                  + " celsius --out before.pdf"
                  + DOUGH
                  + LOAF
                  + " --altitude 300m",
              "handout bake-sheet --dough-temp 25C --hold 12h --out now.pdf"));

  @TempDir Path folder;

  @Test
  void aKitchenSavesTwoThirdsOfTheWords() throws IOException {
    DemoReadings.copyTo(folder);
    Files.move(folder.resolve("quayside-bakes"), folder.resolve("bakes"));
    TestEnvironment here = TestEnvironment.in(folder).tracing();
    int before = 0;
    for (Question each : WEEK) {
      before += ask(here, each.before());
    }
    String kitchen =
        "room: 19C\nvessel: bowl\nvessel material: wood\ncold: 4C\ncold measured: yes\n"
            + "cold air: fan\naltitude: 300m\nzone: Europe/Lisbon\nlanguage: pt\n"
            + "degrees: celsius\nflour: white 80%, whole wheat 20%\nstarter hydration: 80%\n"
            + "starter routine: kept\npiece: 900g\nform: oval\ntarget: 75%\n"
            + "oven capacity: 4\nat the bench: 7-22\nscale: 5g\n";
    Files.writeString(folder.resolve("kitchen.txt"), kitchen);
    int now = 0;
    for (Question each : WEEK) {
      now += ask(here.of(folder, Map.of()), each.now());
    }

    assertThat(Files.readString(folder.resolve("kitchen.txt")))
        .startsWith(kitchen)
        .contains("starter-file: starter.txt", "warming: ");
    assertThat(now).as("words typed, of %d before", before).isLessThanOrEqualTo(before / 3);
  }

  private static int ask(Environment environment, String call) {
    String[] words = call.split(" ");
    for (int i = 0; i < words.length; i++) {
      words[i] = words[i].replace('_', ' ');
    }
    CliRun run = CliRun.in(environment, words);
    assertThat(run.code()).as("%s: %s", call, run.err()).isZero();
    return words.length;
  }
}
