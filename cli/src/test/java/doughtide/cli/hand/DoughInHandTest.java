package doughtide.cli.hand;

import static org.assertj.core.api.Assertions.assertThat;

import doughtide.cli.CliRun;
import doughtide.cli.JsonAnswer;
import doughtide.cli.TestEnvironment;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** A dough from mixing to shaping, as one who stands at the bench types it. */
class DoughInHandTest {
  private static final String MIXED = "start saturday --dough-temp 25C --starter 20%";
  private static final String NIGHT = MIXED + " --cold 4C --bake-at 07:00";

  @TempDir Path folder;

  private CliRun at(String clock, String words) {
    return on("2027-03-06T" + clock, words);
  }

  private CliRun on(String moment, String words) {
    Instant now = Instant.parse(moment + ":00Z");
    return CliRun.in(new TestEnvironment(folder, () -> now, false), words.split(" "));
  }

  private String kept(String file) throws IOException {
    return Files.readString(folder.resolve(file));
  }

  @Test
  void begunNotedAndAskedFor() throws IOException {
    CliRun begun = at("09:30", NIGHT + " --room 21C --jar-height 62mm");
    assertThat(begun.err()).isEmpty();
    assertThat(begun.out().lines().toList().get(0))
        .isEqualTo("Begun: 'saturday.txt', mixed Sat 6 Mar 2027 09:30, Europe/London.");
    assertThat(begun.out())
        .containsPattern("\nShape about \\d\\d:\\d\\d when the jar shows \\d+ %; look at")
        .contains("Nothing has been read yet.");

    CliRun noted = at("12:35", "note 12.30 20% 24C");
    assertThat(noted.err()).isEmpty();
    assertThat(noted.out())
        .startsWith("Noted in 'saturday.txt': Sat 12:30, risen 20 %, 24 \u00b0C (75 \u00b0F).")
        .containsPattern("\n.* (ahead of|behind) the first forecast, which said \\d\\d:\\d\\d");
    at("12:40", "note fold");
    at("13:01", "note 80 mm");
    assertThat(kept("saturday.txt"))
        .contains("start height: 62 mm\n", "room: 21C\n", "bake at: 07:00\n")
        .endsWith("2027-03-06 12:30;74.4;24;;\n2027-03-06 12:40;;;;fold\n2027-03-06 13:01;80;;;\n");

    CliRun now = at("13:10", "now");
    assertThat(now.err()).isEmpty();
    assertThat(now.out().lines().toList().get(0)).matches("Shape (about|now).*");
    assertThat(now.out())
        .contains("  at first", "When to shape", "2 readings; the last rise 29 %")
        .contains("Caution: raw flour");
    assertThat(now.out().lines())
        .allSatisfy(
            line -> assertThat(line.codePointCount(0, line.length())).isLessThanOrEqualTo(80));
  }

  /** Else the answer would say to wait for a height that the jar has passed. */
  @Test
  void aReadingOfTheRiseToShapeAtThatComesEarlyIsToBeReadAgain() throws IOException {
    at("09:30", NIGHT);
    CliRun noted = at("11:10", "note 11:05 24%");

    assertThat(noted.out())
        .containsPattern("\nShape about 1\\d:\\d\\d when the jar shows 2\\d %; look")
        .contains("\nThe 24 % read at 11:05 is that much already; one reading may mislead by 7\n");
    assertThat(at("11:40", "note 11:35 12%").out()).doesNotContain("is that much already");
  }

  @Test
  void aProbeInTheLoafIsNotedAndTeachesTheCold() throws IOException {
    at("09:30", NIGHT);
    assertThat(at("15:00", "note into-cold").out()).contains("15:00, into the cold.");
    CliRun noted = at("18:00", "note core 14 C");
    assertThat(noted.err()).isEmpty();
    assertThat(noted.out()).contains("Sat 18:00, middle 14 \u00b0C (57 \u00b0F).");
    assertThat(kept("saturday.txt"))
        .contains("into cold: 2027-03-06 15:00\n", ";note;core temp C\n")
        .endsWith("2027-03-06 18:00;;;;;14\n");
    assertThat(at("18:10", "now").out()).contains("its air likely at");
    assertThat(at("18:10", "note core").refusal()).contains("core");
  }

  @Test
  void whatWasShapedIsToldUntilTheOven() throws IOException {
    at("09:30", NIGHT);
    at("12:30", "note 12.30 20% 24C");
    CliRun noted = at("14:20", "note shaped heute um 14:05 Uhr");
    assertThat(noted.err()).isEmpty();
    assertThat(noted.out())
        .contains("Sat 14:05, shaped.")
        .containsPattern("\nShaped at 14:05: good to bake from .* until .*");
    assertThat(kept("saturday.txt"))
        .contains("shaped: 2027-03-06 14:05\n")
        .endsWith("2027-03-06 14:05;;;;shaped\n");
    CliRun now = at("15:00", "now --format json");
    JsonAnswer answer = JsonAnswer.of(now);
    assertThat(answer.number("shaped.shapedHours")).isBetween(4.5, 4.6);
    assertThat(answer.number("cold.riseAtBakePercent.likely")).isPositive();
    assertThat(now.out()).doesNotContain("jarRule");
  }

  @Test
  void aLoafWithoutAPlanIsAskedForItsOven() {
    at("09:30", MIXED);
    at("14:00", "note 55%");
    CliRun noted = at("14:30", "note shaped");
    assertThat(noted.out())
        .contains("\nShaped at 14:30.")
        .containsPattern("doughtide now\\s--cold 4C")
        .doesNotContain("Risen 50 %");
  }

  @Test
  void aLoafThatStoodInTheRoomGoesIntoTheColdWhenItWasNoted() {
    at("09:30", NIGHT);
    at("14:00", "note shaped");
    at("14:45", "note into-cold");
    assertThat(at("15:00", "now").out()).containsPattern("into the cold +Sat 14:45");
  }

  @Test
  void aForgottenDoughIsBakedAtOnce() {
    at("09:30", MIXED);
    assertThat(on("2027-03-07T07:30", "now").out())
        .startsWith("The dough is past its best in 10 cases of 10: bake it at once")
        .contains("\nLikely risen 50 % since Sat ");
    at("15:00", "note 120%");
    assertThat(at("15:05", "now").out())
        .startsWith("Shape now, or bake it soon in a tin: the jar has already shown 120 %.");
  }

  @Test
  void aDoughThatDoesNotMoveIsDoubted() {
    at("09:30", MIXED);
    assertThat(at("11:30", "note 1%").out()).doesNotContain("hardly risen");
    assertThat(at("15:30", "note 2%").out()).contains("\nIt has hardly risen,");
  }

  @Test
  void looksAtTheJarThatAreOverAreNotGiven() {
    at("09:30", NIGHT);
    assertThat(at("09:35", "now").out()).contains("jar at Sat ");
    CliRun later = on("2027-03-06T16:00", "now");
    assertThat(later.out()).doesNotContainPattern("jar at Sat 1[0-5]:");
  }

  /** The same dough, the same figures, whichever command reads its file. */
  @Test
  void riseAndNowSayTheSame() {
    at("09:30", MIXED);
    at("13:00", "note 13:00 30% 24.5C");
    String plan = " --cold 4C --bake-at 07:00 --format json";

    CliRun now = at("13:05", "now saturday" + plan);
    CliRun rise = at("13:05", "rise --readings saturday.txt" + plan);

    assertThat(now.out()).isEqualTo(rise.out());
    JsonAnswer answer = JsonAnswer.of(now);
    assertThat(answer.text("schema")).isEqualTo("doughtide/now/3");
    assertThat(answer.number("aheadHours")).isNotZero();
    assertThat(answer.number("cold.riseAtBakePercent.likely")).isPositive();
    assertThat(answer.number("shape.hoursLikely")).isBetween(2.0, 7.0);
  }

  /** Without a reading the dough in hand is the dough that rise describes. */
  @Test
  void unreadItIsWhatRiseSays() {
    at("09:30", MIXED + " --room 20C --vessel bowl");
    String of = " --dough-temp 25C --starter 20% --room 20C --vessel bowl";

    JsonAnswer now = JsonAnswer.of(at("09:31", "now --format json"));
    JsonAnswer rise = JsonAnswer.of(at("09:31", "rise --mixed-at 09:30" + of + " --format json"));

    for (String hours : new String[] {"hoursEarly", "hoursLikely", "hoursLate"}) {
      assertThat(now.text("rises.2." + hours)).isEqualTo(rise.text("rises.2." + hours));
    }
    assertThat(now.number("rises.2.aheadHours")).isZero();
  }

  @Test
  void worksAfterMidnight() throws IOException {
    at("21:10", "start night --dough-temp 24C --starter 10%");
    CliRun noted = on("2027-03-07T01:20", "note 1.15 12%");
    assertThat(noted.out()).startsWith("Noted in 'night.txt': Sun 7 Mar 01:15, risen 12 %.");
    on("2027-03-07T06:40", "note 63%");

    assertThat(kept("night.txt")).endsWith("2027-03-07 01:15;12;;;\n2027-03-07 06:40;63;;;\n");
    assertThat(on("2027-03-07T06:41", "now").out())
        .containsPattern("2 readings; .* Sun 7 Mar 06:40");
    CliRun late = on("2027-03-07T00:30", "start late --dough-temp 24C --mixed-at 23:30");
    assertThat(late.out()).contains("mixed Sat 6 Mar 2027 23:30");
  }

  @Test
  void severalDoughsByNameAndTheNewestWithout() throws IOException {
    at("08:00", "start white --dough-temp 25C");
    at("09:00", "start rye --dough-temp 25C --flour rye");
    at("10:00", "note white 9.45 6%");
    at("10:00", "note 4%");
    assertThat(kept("white.txt")).endsWith("2027-03-06 09:45;6;;;\n");
    assertThat(kept("rye.txt")).endsWith("2027-03-06 10:00;4;;;\n");

    at("18:00", "note rye result right crumb even crust dark brown");
    assertThat(kept("rye.txt")).contains("result: right\n", "crumb: even\n", "crust: dark brown\n");
    assertThat(at("18:00", "now").out()).contains("Readings  1 reading; the last rise 6 %");
    assertThat(on("2027-03-12T10:00", "now").refusal())
        .contains("no dough of this folder is in hand", "doughtide start");
  }

  /** Typed by hand, with commas and without a date; the plan stands in its head. */
  @Test
  void aFileTypedByHand() throws IOException {
    Files.writeString(
        folder.resolve("mine.csv"),
        "starter: 20%\nhydration: 70%\ndough temp: 25C\nmixed at: 09:30\ncold: 4C\n"
            + "bake at: 7:00\n\ntime,rise %,dough temp C\n11:30,8,24.8\n");
    CliRun noted = at("13:00", "note mine 1pm 31%");

    assertThat(noted.err()).isEmpty();
    assertThat(noted.out()).containsPattern("Shape (about|now)");
    assertThat(kept("mine.csv")).endsWith("11:30,8,24.8\n13:00,31,\n");
    assertThat(at("13:00", "note mine fold").refusal()).contains("add 'note' at the end");
  }

  @Test
  void aReadingThatCanHardlyBeOfThisDoughIsToldWithItsLikelyReason() {
    at("09:30", MIXED);
    at("12:30", "note 12:30 22%");
    CliRun noted = at("13:00", "note 13:00 700%");

    assertThat(noted.out().replaceAll("\\s+", " "))
        .contains("! 700 % at 13:00 can hardly be of this dough: it is likely another jar");
    JsonAnswer answer = JsonAnswer.of(at("13:00", "now --format json"));
    assertThat(answer.text("doubts.0.doubt")).isEqualTo("other-dough");
  }

  @Test
  void whoMustGoGetsTheThreeBestWaysOut() {
    at("09:30", NIGHT);
    at("12:30", "note 12:30 22%");
    String[] away = {"now", "--leave-at", "14:00", "--back-at", "18:00"};
    JsonAnswer answer = JsonAnswer.of(at("12:31", String.join(" ", away) + " --format json"));

    assertThat(answer.number("options.size")).isEqualTo(3);
    assertThat(answer.number("options.0.goodShare"))
        .isGreaterThanOrEqualTo(answer.number("options.2.goodShare") - 0.1);
    String text = at("12:31", String.join(" ", away)).out();
    assertThat(text).as("what was asked comes first").startsWith("Best: ");
    assertThat(text).containsSubsequence("Best: ", "If you stay: Shape ", "If you are away from");
    assertThat(at("12:31", "now --leave-at 14:00").refusal()).contains("--back-at is missing");
    assertThat(at("12:31", "now --leave-at 12:00 --back-at 12:10 --now 12:30").err()).isEmpty();
  }

  @Test
  void aDoughThatRunsLateIsToldSoWithWaysOut() {
    at("09:30", NIGHT);
    CliRun noted = at("14:30", "note 14:30 8%");
    assertThat(noted.out()).contains("behind the first forecast");

    CliRun now = at("14:31", "now");
    assertThat(now.out())
        .contains("It runs late. If you cannot wait for it and leave it from")
        .containsPattern("(Best|First): ");
  }

  /** The longer it has been ready, the sooner it must be baked, until it makes no loaf. */
  @Test
  void longPastItsShapePointItIsToldWhatHelps() {
    at("18:00", MIXED + " --cold 4C --bake-at 16:00");
    at("20:30", "note 20:30 20%");

    List<String> night = on("2027-03-07T02:00", "now").out().lines().toList();
    assertThat(night.get(0))
        .matches("Shape now and bake by \\d\\d:\\d\\d: in the oven at 16:00 .*");
    assertThat(String.join(" ", night))
        .containsPattern("It was likely ready to shape 4 h \\d+ min ago, at Sat 21:\\d\\d; by now");
    assertThat(on("2027-03-07T09:00", "now").out())
        .containsPattern("^The dough is past its best in (8|9|10) cases of 10: bake it at once");
  }

  @Test
  void aLoafThatRoseTooLittleHasItsLikeliestCausesTold() throws IOException {
    at("09:30", NIGHT);
    CliRun under = on("2027-03-07T09:00", "note result under crumb tight");

    assertThat(under.err()).isEmpty();
    assertThat(under.out())
        .startsWith("Noted in 'saturday.txt': the loaf came out under; crumb tight.")
        .contains("Likeliest: the starter was slower than believed.", "Of ten doughs");
    assertThat(kept("saturday.txt")).contains("result: under\ncrumb: tight\n");
    CliRun right = on("2027-03-07T09:00", "note saturday result right");
    assertThat(right.out()).doesNotContain("Likeliest");
  }

  @Test
  void theKitchenGoesIntoTheFile() throws IOException {
    Files.writeString(
        folder.resolve("kitchen.txt"), "room: 19C\nvessel: bowl\ncold: 4C\npiece: 700g\n");
    at("09:30", NIGHT.replace(" --cold 4C", "") + " --kitchen kitchen.txt");

    assertThat(kept("saturday.txt"))
        .contains("room: 19C", "vessel: bowl", "cold: 4C", "piece: 700g");
    assertThat(at("09:35", "now").out()).contains("700 g, round");
  }

  @Test
  void wordsAndNumbersOfAnotherCountryAreUnderstood() throws IOException {
    Files.writeString(folder.resolve("kitchen.txt"), "Raum: 21,5C\n");
    String room = " --kitchen kitchen.txt --cold 4C --bake-at 7.00";
    CliRun begun = at("09:30", "start anna --dough-temp 24,5C --starter 20%" + room);
    assertThat(begun.err()).isEmpty();
    assertThat(at("12:00", "note jetzt 24,5% 23,5C").out())
        .startsWith("Noted in 'anna.txt': Sat 12:00, risen 24.5 %, 23.5 \u00b0C");
    assertThat(at("12:05", "note gefaltet").out()).contains("12:05, fold.");
    assertThat(at("15:00", "note 14.45 geformt").out()).contains("14:45, shaped.");
    assertThat(on("2027-03-07T09:00", "note Ergebnis Untergare Krume dicht Kruste hell").out())
        .contains("the loaf came out under; crumb dicht; crust hell.");
    assertThat(kept("anna.txt")).contains("result: under\ncrumb: dicht\ncrust: hell\n");
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "start saturday --dough-temp 25C | no dough is begun over another",
        "start ../saturday --dough-temp 25C | cannot name a dough",
        "start .hidden --dough-temp 25C | cannot name a dough",
        "start con --dough-temp 25C | cannot name a dough",
        "start a/b --dough-temp 25C | cannot name a dough",
        "start fold --dough-temp 25C | takes it for what is noted of one, not for its name",
        "start 9.30 --dough-temp 25C | cannot name a dough: doughtide note takes it",
        "start other | --dough-temp is missing",
        "start other --dough-temp 25C,3h:22C | is one temperature",
        "start other --dough-temp 25C --bake-at 07:00 | --bake-at says nothing without --cold",
        "start other --dough-temp 25C --vessel bowl | --vessel says nothing without --room: add",
        "start other --dough-temp 25C --cover open | --cover says nothing without --room: add",
        "note | nothing is noted",
        "note 13:00 | nothing is noted",
        "note foldd | alone notes nothing",
        "start jetzt --dough-temp 25C | takes it for what is noted of one (now), not for",
        "start kalt --dough-temp 25C | takes it for what is noted of one (cold), not for",
        "note 44 | needs its unit",
        "note 12:00 44 | needs its unit",
        "note 44% 12:00 | stands first",
        "note 44% 50% | say each once",
        "note 44% 78mm | say the same",
        "note 78mm | start height: 52 mm",
        "note reslut under | did you mean result?",
        "note sunday 44% | there is no dough 'sunday'",
        "note 23:50 44% | still to come",
        "note 9.3 44% | can be read two ways",
        "note 44% 99C | dough",
        "note 12:00 0% 24C --format csv | note has no csv form",
        "note result good-ish | use under, right or over",
        "now sunday | there is no dough 'sunday'",
        "now --leave-at 15:00 --back-at 18:00 | how the loaves wait is missing",
      })
  void isRefusedInOneLineAndNothingIsChanged(String words, String part) throws IOException {
    String before =
        "mixed at: 2027-03-06T09:30\nstarter: 20%\ndough temp: 25C\ntime;rise %;dough temp C\n";
    Files.writeString(folder.resolve("saturday.txt"), before);

    assertThat(at("12:30", words).refusal()).contains(part);
    assertThat(kept("saturday.txt")).isEqualTo(before);
    try (var files = Files.list(folder)) {
      assertThat(files).hasSize(1);
    }
  }
}
