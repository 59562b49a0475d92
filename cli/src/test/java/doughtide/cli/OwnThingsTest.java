package doughtide.cli;

import static org.assertj.core.api.Assertions.assertThat;

import doughtide.cli.file.StarterFile;
import doughtide.cli.session.Environment;
import doughtide.core.document.StarterDocument;
import doughtide.core.dough.Composition;
import doughtide.core.dough.Flour;
import doughtide.core.forecast.Belief;
import doughtide.core.kinetics.RateCurve;
import doughtide.core.learning.LearnedStarter;
import doughtide.core.loaf.PieceForm;
import doughtide.core.quantity.Rise;
import doughtide.core.rise.RiseParameters.RateCurves;
import doughtide.core.thermal.PieceShape;
import doughtide.core.thermal.VesselForm;
import doughtide.core.thermal.Wall;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/**
 * A flour, a form, a vessel and a rate curve that only this test knows go through every command,
 * page and file.
 */
class OwnThingsTest {

  private static final Flour EMMER =
      new Flour(
          "emmer",
          Composition.ofParts(0.13, 0.022, 0.09, 0.016, 0.13),
          0.66,
          0.6,
          Rise.ofPercent(55),
          List.of("wheat (emmer)"));
  private static final PieceForm RING = new PieceForm("ring", PieceShape.oval(6), Wall.NONE);
  private static final VesselForm TROUGH = new VesselForm("trough", PieceShape.tin(3, 0.6));

  /** Invented: fastest at 29 °C. */
  private static final RateCurve CURVE = RateCurve.cardinal(5, 29, 38, 5, 38);

  private static final RateCurves OWN =
      new RateCurves("emmer/own", CURVE, RateCurve.cardinal(6, 32, 42, 6, 42));

  @TempDir Path folder;

  private Environment own() {
    TestEnvironment usual = TestEnvironment.in(folder).tracing();
    return usual.with(usual.catalogue().with(EMMER).with(RING).with(TROUGH).with(OWN));
  }

  private String run(String call) {
    CliRun run = CliRun.in(own(), call.split(" "));
    assertThat(run.err()).as(call).isEmpty();
    assertThat(run.code()).as(call).isZero();
    return run.out();
  }

  @Test
  void everyCommandTakesThem() throws IOException {
    writeStarter();
    String dough = " --dough-temp 25C --flour emmer:60%,white:40% --starter-flour emmer";
    String room = " --room 20C --vessel trough";
    String loaf = " --cold 4C --hold 12h --form ring";
    String starter = " --starter-file own.txt";
    assertThat(run("rise" + dough + room + loaf + starter + " --members 32 --chart rise.pdf"))
        .contains("60 % emmer, 40 % white", "plastic trough", "ring");
    run("rise" + dough + room + loaf + starter + " --members 32 --format json");
    run("rise" + dough + starter + " --members 32 --format csv");
    assertThat(run("wanted --bulk 8h" + dough + starter)).contains("emmer");
    assertThat(run("feed --flour emmer --starter-temp 24C --ratio 1:5:5")).contains("emmer");
    run(
        "bake-day --ready-at 2027-03-07T18:00 --at-the-bench 07:00-22:00 --cold 4C --flour emmer"
            + " --form ring --plans 1"
            + starter);
    run(
        "leave --mixed-at 09:30 --now 10:00 --leave-at 11:00 --back-at 12:00"
            + dough
            + room
            + loaf
            + starter);
    assertThat(run("flour plan --flour emmer")).contains("emmer");
    Files.writeString(folder.resolve("class.csv"), "name,flour,form\nours,emmer,ring\n");
    assertThat(
            run(
                "class-day class.csv --ready-at 2027-03-07T18:00 --at-the-bench 7-22"
                    + " --cold 4C --format json"
                    + starter))
        .contains("\"ours\"");
    run("flour save emmer.txt --flour emmer --flour-name Mine --hydration 70%");
    assertThat(run("water --dough-temp 25C --room 20C --flour-file emmer.txt")).contains("Mixed");
    run("kitchen set vessel trough --kitchen own-kitchen.txt");
    run("kitchen set form ring --kitchen own-kitchen.txt");
    assertThat(run("kitchen set flour emmer --kitchen own-kitchen.txt")).contains("emmer");
    assertThat(
            run(
                "wanted --bulk 8h --dough-temp 25C --room 20C --cold 4C --hold 12h"
                    + " --kitchen own-kitchen.txt"))
        .contains("From the kitchen", "vessel trough", "flour emmer", "form ring");
    Files.writeString(folder.resolve("night.csv"), "hours,temperature C\n0,25\n3,23\n9,21\n");
    run("rise --members 16 --flour emmer --temps night.csv");
    Files.writeString(folder.resolve("trial.csv"), "6 March, Ann, 72%, thin window\n");
    assertThat(run("flour read trial.csv --flour emmer")).contains("emmer");
    Files.writeString(folder.resolve("doughs.csv"), "flour,dough_temp\nemmer,25C\n");
    assertThat(run("batch doughs.csv --members 16")).doesNotContain("not known");
  }

  @Test
  void everyPageAndFileTakesThem() throws IOException {
    String flour = " --flour emmer:60%,white:40%";
    String dough = " --dough-temp 25C" + flour;
    int pages = 0;
    for (String language : List.of("en", "de", "fr", "es", "pt")) {
      for (String call :
          List.of(
              "bake-sheet" + dough + " --cold 4C --hold 12h --form ring",
              "comparison --dough-temp 25C --vary flour:white;emmer",
              "hours-table --vary dough-temp:24C --vary starter:20%" + flour,
              "why-it-rises" + dough,
              "readings-log" + flour,
              "starter-page" + flour,
              "bowl-worksheet")) {
        // The words of the longest pages are those of the others: each in the languages in turn.
        if (call.startsWith("bake-sheet") || pages % 4 == 0) {
          run("handout " + call + " --language " + language + " --out page" + pages + ".pdf");
        }
        pages++;
      }
    }
    run("flour save emmer.txt --flour emmer --flour-name Mine");
    assertThat(run("rise --dough-temp 25C --members 16 --flour-file emmer.txt")).contains("Mine");
    Files.createDirectories(folder.resolve("bakes"));
    Files.writeString(
        folder.resolve("bakes/a.csv"),
        "flour: emmer 70%, white 30%\nstarter: 20%\ndough temp: 25C\nmixed at: 09:30\n"
            + "time;rise %\n11:30;8\n13:00;30\n");
    run("learn bakes --save learned.txt");
    run("rise --readings bakes/a.csv --members 32 --starter-file learned.txt");
    Files.writeString(
        folder.resolve("kitchen.txt"), "flour: emmer\nform: ring\nroom: 20C\nvessel: trough\n");
    assertThat(run("rise --dough-temp 25C --members 16 --kitchen kitchen.txt"))
        .contains("trough", "emmer");
  }

  @Test
  void aCurveOfOnesOwnChangesNobodyElsesForecast() throws IOException {
    writeStarter();
    String cold = "rise --dough-temp 14C --members 64";
    String usual = CliRun.in(TestEnvironment.in(folder), cold.split(" ")).out();
    assertThat(run(cold)).isEqualTo(usual);
    String mine = run(cold + " --starter-file own.txt");
    assertThat(mine).isNotEqualTo(usual);
    CliRun elsewhere =
        CliRun.in(TestEnvironment.in(folder), (cold + " --starter-file own.txt").split(" "));
    assertThat(elsewhere.code()).isZero();
    assertThat(elsewhere.err().lines()).singleElement().asString().contains("knows emmer/own");
  }

  /** What was learned of a starter, with the own curve the likeliest of two. */
  private void writeStarter() throws IOException {
    DemoReadings.learnedIn(folder);
    LearnedStarter learned = StarterFile.read("--starter-file", "starter.json", own());
    Belief belief = learned.posterior();
    Map<String, Belief> parts = new java.util.TreeMap<>();
    Map<String, Double> weights = new java.util.TreeMap<>();
    belief.curves().forEach(key -> parts.put(key, belief.under(key)));
    belief.curves().forEach(key -> weights.put(key, belief.weight(key)));
    parts.put(OWN.key(), Belief.standard());
    weights.put(OWN.key(), 3.0);
    LearnedStarter own =
        new LearnedStarter(
            learned.programVersion(),
            learned.dataDigest(),
            learned.bakes(),
            learned.readings(),
            learned.prior(),
            Belief.byCurve(parts, weights),
            learned.jar(),
            learned.mixerFrictionCelsius());
    Files.writeString(folder.resolve("own.txt"), StarterDocument.text(own));
    assertThat(StarterFile.read("--starter-file", "own.txt", own()).posterior().curves())
        .contains(OWN.key());
    assertThat(Arrays.asList(Files.readString(folder.resolve("own.txt")).split("\n")))
        .anyMatch(line -> line.startsWith("curve: emmer/own; "));
  }
}
