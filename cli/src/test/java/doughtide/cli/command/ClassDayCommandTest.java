package doughtide.cli.command;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import doughtide.cli.CliRun;
import doughtide.cli.JsonAnswer;
import doughtide.cli.TestEnvironment;
import doughtide.report.words.Language;
import doughtide.report.words.Words;
import java.io.IOException;
import java.io.StringReader;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.OffsetDateTime;
import java.time.temporal.ChronoUnit;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import net.fortuna.ical4j.data.CalendarBuilder;
import net.fortuna.ical4j.model.Calendar;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.text.PDFTextStripper;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class ClassDayCommandTest {
  private static final String DAY =
      "class.csv --ready-at 2027-03-14T12:00 --at-the-bench 07:00-22:00 --cold 4C"
          + " --oven-capacity 4 --hands 2 --zone Europe/Berlin";
  private static final String DOUGHS =
      "name,loaves,piece,flour,hydration,starter,dough_temp,ready_at\n"
          + "Harrow white,2,850g,white,70%,20%,24C,\n"
          + "Fenside,2,800g,\"white:80%,rye:20%\",72%,10%,24C,\n"
          + "Spelt,2,750g,\"spelt:50%,white:50%\",68%,20%,22C,13:00\n";

  @TempDir Path folder;

  private CliRun run(String doughs, String words) throws IOException {
    Files.writeString(folder.resolve("class.csv"), doughs);
    List<String> all = new ArrayList<>(List.of("class-day"));
    all.addAll(Arrays.asList((DAY + " " + words).strip().split(" ")));
    return CliRun.in(TestEnvironment.in(folder), all.toArray(String[]::new));
  }

  @Test
  void thePageHasOneTimelineTheOvenAndEveryDough() throws IOException {
    CliRun run = run(DOUGHS, "");

    assertThat(run.err()).isEmpty();
    assertThat(run.out().lines()).allSatisfy(line -> assertThat(line).hasSizeLessThanOrEqualTo(80));
    assertThat(run.out())
        .contains("Harrow white", "Fenside", "Spelt", "Oven", "6 loaves in all", "2 persons")
        .contains("Caution: raw flour");
  }

  @Test
  void jsonNamesEveryStepItsDoughsAndThePerson() throws IOException {
    JsonAnswer answer = JsonAnswer.of(run(DOUGHS, "--format json"));

    assertThat(answer.text("schema")).isEqualTo("doughtide/class-day/2");
    assertThat(answer.number("plans.0.doughs.size")).isEqualTo(3);
    assertThat(answer.text("plans.0.steps.0.step")).isEqualTo("feed the starter");
    assertThat(answer.text("plans.0.steps.0.person")).isIn("A", "B");
    for (int i = 0; i < answer.number("plans.0.ovenLoads.size"); i++) {
      assertThat(answer.number("plans.0.ovenLoads." + i + ".loaves")).isLessThanOrEqualTo(4);
    }
  }

  @Test
  void csvChartAndCalendarAreWritten() throws Exception {
    CliRun run = run(DOUGHS, "--format csv --chart day.svg --calendar day.ics");

    assertThat(run.err()).isEmpty();
    long handsOn = run.out().lines().filter(line -> line.contains(",yes,")).count();
    assertThat(run.out()).startsWith("plan,step,doughs,person,from,to,hands_on,detail\n");
    assertThat(Files.readString(folder.resolve("day.svg"))).contains("Fenside", "Hands A");
    Calendar calendar =
        new CalendarBuilder().build(new StringReader(Files.readString(folder.resolve("day.ics"))));
    assertThat(calendar.getComponents("VEVENT")).hasSize((int) handsOn);
    assertThat(calendar.validate().hasErrors()).isFalse();
    assertThat(Files.readString(folder.resolve("day.ics")).split("\r\n"))
        .allSatisfy(
            line -> assertThat(line.getBytes(StandardCharsets.UTF_8)).hasSizeLessThanOrEqualTo(75));
  }

  private CliRun roster(String roster, String... words) throws IOException {
    Files.writeString(folder.resolve("roster.txt"), roster);
    List<String> all =
        new ArrayList<>(
            List.of(
                "class-day",
                "--roster",
                "roster.txt",
                "--ready-at",
                "2027-03-14T12:00",
                "--at-the-bench",
                "07:00-22:00",
                "--cold",
                "4C",
                "--zone",
                "Europe/Berlin"));
    all.addAll(List.of(words));
    return CliRun.in(TestEnvironment.in(folder), all.toArray(String[]::new));
  }

  @Test
  void everyStudentHasHerPartOfTheDoughAndHerTimesInHerLanguage() throws IOException {
    Files.writeString(folder.resolve("class.csv"), "name,starter,dough_temp\ndough,20%,24C\n");
    JsonAnswer answer =
        JsonAnswer.of(
            roster(
                "name;loaves;language\n<b>Ann</b>;2;en\nBjörn;1;de\n",
                "class.csv",
                "--format",
                "json",
                "--pages",
                "class.pdf"));

    assertThat(answer.text("students.0.name")).isEqualTo("<b>Ann</b>");
    assertThat(answer.number("plans.0.doughs.0.loaves")).isEqualTo(3);
    for (String key : List.of("flourGrams", "waterGrams", "starterGrams", "saltGrams")) {
      double all = answer.number("plans.0.doughs.0.ingredients." + key);
      double ann = answer.number("students.0." + key);
      assertThat(ann + answer.number("students.1." + key)).isCloseTo(all, within(0.011));
      assertThat(ann).isCloseTo(all * 2 / 3, within(0.011));
    }
    assertThat(answer.text("students.0.steps.0.step")).isEqualTo("feed the starter");
    assertThat(answer.text("students.1.steps.0.step")).isEqualTo("Anstellgut auffrischen");
    assertThat(answer.text("students.1.steps.0.from"))
        .isEqualTo(answer.text("plans.0.steps.0.from"));
    assertThat(answer.number("students.0.steps.size"))
        .isEqualTo(answer.number("plans.0.steps.size") - 2); // but the other batch, in and out
    assertThat(page(1)).contains("bake batch 1").doesNotContain("bake batch 2");
    assertThat(page(2)).contains("Ofenladung 2 backen").doesNotContain("Ofenladung 1");
    saysTheSame(page(1), answer, 0, Words.in(Language.ENGLISH));
    saysTheSame(page(2), answer, 1, Words.in(Language.GERMAN));
    assertThat(page(1)).startsWith("<b>Ann</b>");
    saysWhenAndWhat(page(3), answer);
  }

  @Test
  void aNameThatTheFontLacksIsToldBesideTheAnswer() throws IOException {
    Files.writeString(folder.resolve("class.csv"), "name,starter,dough_temp\ndough,20%,24C\n");
    CliRun run =
        roster("name;loaves\nAnn;1\n\u674e\u5c0f;2\n", "class.csv", "--pages", "class.pdf");

    assertThat(run.code()).isZero();
    assertThat(run.err().lines())
        .singleElement()
        .asString()
        .contains("'\u674e\u5c0f' (printed as [U+674E][U+5C0F])", "by hand", "Latin letters")
        .doesNotContain("Ann");
    assertThat(page(2)).startsWith("[U+674E][U+5C0F]");
  }

  private String page(int number) throws IOException {
    try (PDDocument document = Loader.loadPDF(folder.resolve("class.pdf").toFile())) {
      PDFTextStripper stripper = new PDFTextStripper();
      stripper.setStartPage(number);
      stripper.setEndPage(number);
      return stripper.getText(document).replaceAll("[\\s\u00a0]+", " ");
    }
  }

  /** The page of a student has the grams and every hour of the answer. */
  private static void saysTheSame(String page, JsonAnswer answer, int student, Words words) {
    String key = "students." + student;
    for (String mass : List.of("flourGrams", "waterGrams", "starterGrams")) {
      assertThat(page).contains(words.number(answer.number(key + "." + mass), 0) + " g");
    }
    assertThat(page).contains(words.number(answer.number(key + ".saltGrams"), 1) + " g");
    for (int i = 0; i < answer.number(key + ".steps.size"); i++) {
      String step = key + ".steps." + i;
      assertThat(page)
          .contains(clock(answer.text(step + ".from")))
          .contains(answer.text(step + ".step").replaceAll("fold.* \\d|dehnen.* \\d", ""));
    }
  }

  /** The timetable of the one person has every step with hands on. */
  private static void saysWhenAndWhat(String page, JsonAnswer answer) {
    assertThat(page).contains("the option --page writes this day as one file; send it by e-mail");
    for (int i = 0; i < answer.number("plans.0.steps.size"); i++) {
      String step = "plans.0.steps." + i;
      if (answer.text(step + ".handsOn").equals("true")) {
        String time = clock(answer.text(step + ".from"));
        assertThat(page).contains(time + " " + answer.text(step + ".step"));
      }
    }
  }

  /** To five minutes, as it is printed. */
  private static String clock(String iso) {
    OffsetDateTime at = OffsetDateTime.parse(iso);
    long minutes = Math.round(at.getMinute() / 5.0) * 5;
    return at.truncatedTo(ChronoUnit.HOURS).plusMinutes(minutes).toLocalTime().toString();
  }

  /** A baker feeds once for both; the stages make what they need together. */
  @Test
  void doughsOfTheSameStagesHaveOneEventForEachStage() throws IOException {
    Files.writeString(
        folder.resolve("class.csv"),
        "name,flour,hydration,loaves,starter,dough_temp,form\n"
            + "dark,rye,75%,2,40%,28C,tin\nseeded,rye,78%,1,35%,28C,tin\n");
    String day =
        "class-day class.csv --ready-at 2027-03-14T17:00 --at-the-bench 06:00-22:00 --cold 4C"
            + " --oven-capacity 4 --zone Europe/Berlin --calendar rye.ics --format json --stage";
    List<String> words = new ArrayList<>(List.of(day.split(" ")));
    words.addAll(List.of("fresh sour, 1:4:6, rye, 26C, 5h", "--stage"));
    words.add("full sour, 1:3:3, rye, 28C, until ripe");
    JsonAnswer answer =
        JsonAnswer.of(CliRun.in(TestEnvironment.in(folder).usual(), words.toArray(String[]::new)));

    String events = Files.readString(folder.resolve("rye.ics")).replace("\r\n ", "");
    assertThat(events.lines().filter(line -> line.startsWith("SUMMARY:feed the starter")))
        .containsExactly(
            "SUMMARY:feed the starter 1: dark\\, seeded",
            "SUMMARY:feed the starter 2: dark\\, seeded");
    assertThat(answer.number("plans.0.doughs.size")).isEqualTo(2);
  }

  /** The same question as before, with one more in the roster who is not there. */
  @Test
  void whoIsAbsentHasNoPageNoGramsAndNoLoaves() throws IOException {
    Files.writeString(folder.resolve("class.csv"), "name,starter,dough_temp\ndough,20%,24C\n");
    JsonAnswer answer =
        JsonAnswer.of(
            roster(
                "name;loaves;language\nAnn;2;en\nLee, Cy;3;en\nBjörn;1;de\n",
                "class.csv",
                "--absent",
                "lee, cy",
                "--format",
                "json",
                "--pages",
                "class.pdf"));

    assertThat(answer.text("absent.0")).isEqualTo("Lee, Cy");
    assertThat(answer.number("students.size")).isEqualTo(2);
    assertThat(answer.number("plans.0.doughs.0.loaves")).isEqualTo(3);
    assertThat(page(1)).startsWith("Ann");
    assertThat(page(2)).startsWith("Björn");
    assertThat(page(3)).doesNotContain("Cy");
  }

  @Test
  void pagesAreNotWrittenOverAFileUnasked() throws IOException {
    Files.writeString(folder.resolve("class.pdf"), "mine");

    assertThat(roster("name\nAnn\n", "--pages", "class.pdf").refusal())
        .contains("class.pdf", "exists already");
    assertThat(roster("name\nAnn\n", "--pages", "class.html").refusal())
        .contains("must end in .pdf");
    assertThat(roster("name\nAnn\n", "--large-print").refusal())
        .contains("--large-print says nothing without --pages");
    assertThat(Files.readString(folder.resolve("class.pdf"))).isEqualTo("mine");
  }

  @Test
  void saysInOneLineWhatIsWrongWithARoster() throws IOException {
    Files.writeString(folder.resolve("class.csv"), DOUGHS);

    assertThat(roster("name;dough\nAnn;rye\n", "class.csv").refusal())
        .contains("the roster's dough 'rye' is not in 'class.csv': its doughs are Harrow white");
    assertThat(roster("name;language\nAnn;xx\n").refusal())
        .contains("line 2: language \"xx\" is not known");
    assertThat(roster("name\nAnn\nBo\n", "--absent", "Zoe").refusal())
        .contains("--absent Zoe is no student", "its students are Ann; Bo");
    assertThat(roster("name\nAnn\n", "--absent", "Ann").refusal()).contains("all students");
    assertThat(CliRun.of("class-day", "class.csv", "--absent", "Ann").refusal())
        .doesNotContain("Exception");
    assertThat(
            CliRun.of(
                    "class-day", "--ready-at", "2027-03-14T12:00", "--at-the-bench", "07:00-22:00")
                .refusal())
        .contains("class-day needs a file of doughs or a roster");
    assertThat(CliRun.of("class-day", "class.csv", "--at-the-bench", "07:00-22:00").refusal())
        .contains("--ready-at is missing");
  }

  @Test
  void aDayThatCannotBeSaysWhatWasAsked() throws IOException {
    String hours = "2027-03-14T10:30/2027-03-14T12:00";

    Files.writeString(folder.resolve("class.csv"), "name\nwhite\nother\n");

    assertThat(
            call("class-day class.csv --ready-at 2027-03-14T12:00 --zone UTC --at-the-bench "
                    + hours)
                .refusal())
        .contains("--ready-at 2027-03-14T12:00, --at-the-bench " + hours + ": '", "': no plan: ")
        .contains("give more hours at the bench, or fewer doughs");
  }

  @Test
  void afterwardsAllJarsStandAgainstTheirForecasts() {
    JsonAnswer answer =
        JsonAnswer.of(
            CliRun.of(
                "class-day",
                "--jars",
                System.getProperty("doughtide.testdata") + "/quayside-bakes",
                "--format",
                "json"));

    assertThat(answer.number("jars.size")).isEqualTo(6);
    assertThat(answer.number("inside") + answer.number("earlier") + answer.number("later"))
        .isEqualTo(6);
    assertThat(answer.text("jars.5.name")).isEqualTo("2026-02-07");
    assertThat(answer.text("jars.5.verdict")).isEqualTo("earlier");
    assertThat(answer.number("jars.5.readHours"))
        .isLessThan(answer.number("jars.5.forecast.hoursEarly"));
  }

  @Test
  void allJarsStandInOneChartAsInTheAnswer() throws IOException {
    JsonAnswer answer =
        JsonAnswer.of(
            CliRun.in(
                TestEnvironment.in(folder),
                "class-day",
                "--jars",
                System.getProperty("doughtide.testdata") + "/quayside-bakes",
                "--format",
                "json",
                "--chart",
                "jars.svg",
                "--language",
                "de"));

    String chart = Files.readString(folder.resolve("jars.svg"));
    Words german = Words.in(Language.GERMAN);
    assertThat(chart)
        .contains(
            german.say(
                "jars.inside",
                Map.of("inside", german.number(answer.number("inside"), 0), "all", "6")))
        .contains(german.hours(answer.number("middleAheadHours")) + " früher");
    for (int i = 0; i < 6; i++) {
      String jar = "jars." + i;
      assertThat(chart)
          .contains(
              answer.text(jar + ".name")
                  + " "
                  + german.percent(Math.rint(answer.number(jar + ".readPercent")), 0))
          .contains(german.hours(answer.number(jar + ".forecast.hoursLikely")) + " (");
    }
  }

  @Test
  void aPlanSaysNothingToJars() {
    assertThat(
            CliRun.of(
                    "class-day",
                    "--jars",
                    System.getProperty("doughtide.testdata") + "/quayside-bakes",
                    "--hands",
                    "2")
                .refusal())
        .contains("--hands says nothing to --jars");
  }

  /** A class of one dough is a day of one dough. */
  @Test
  void oneDoughHasThePlanOfADayAlone() throws IOException {
    String dough = " --loaves 2 --hydration 72% --oven-capacity 4 --cold 4C --zone Europe/Berlin";
    String hours = "--ready-at 2027-03-14T12:00 --at-the-bench 06:30-08:30,17:00-22:30";
    JsonAnswer alone =
        JsonAnswer.of(call("bake-day " + hours + dough + " --plans 1 --format json"));
    Files.writeString(folder.resolve("one.csv"), "name,loaves,hydration\ndough,2,72%\n");
    String common = " --oven-capacity 4 --cold 4C --zone Europe/Berlin --format json";
    JsonAnswer inClass = JsonAnswer.of(call("class-day one.csv " + hours + common));

    assertThat(alone.text("plans.0.steps.0.step")).isEqualTo("feed the starter");
    assertThat(inClass.under("plans.0")).isEqualTo(alone.under("plans.0"));
  }

  /** Also where the kitchen says what neither the options nor the line of the dough say. */
  @Test
  void oneDoughHasThePlanOfADayAloneInTheSameKitchen() throws IOException {
    Files.writeString(
        folder.resolve("k.txt"),
        "room: 20C\nvessel: bowl\nvessel-material: wood\ncold: 5C\nflour: spelt\npiece: 700g\n"
            + "form: oval\ntarget: 80%\nstarter-hydration: 80%\naltitude: 600m\n"
            + "at-the-bench: 06:30-22:30\noven-capacity: 4\nzone: Europe/Berlin\n");
    String hours = "--ready-at 2027-03-14T12:00 --kitchen k.txt --format json";
    JsonAnswer alone = JsonAnswer.of(call("bake-day --loaves 2 --plans 1 --starter 20% " + hours));
    Files.writeString(folder.resolve("one.csv"), "name,loaves,starter\ndough,2,20%\n");
    JsonAnswer inClass = JsonAnswer.of(call("class-day one.csv " + hours));

    assertThat(inClass.under("plans.0")).isEqualTo(alone.under("plans.0"));
    assertThat(fromKitchen(inClass)).containsExactlyInAnyOrderElementsOf(fromKitchen(alone));
    assertThat(fromKitchen(inClass))
        .contains("flour spelt", "piece 700g", "form oval", "target 80%", "vessel bowl");
  }

  /**
   * A starter from the cold wakes late, so it is fed earlier for the same dough, whether the
   * option, the kitchen or a line of the class says so.
   */
  @Test
  void aStarterFromTheColdIsFedEarlier() throws IOException {
    Files.writeString(folder.resolve("k.txt"), "starter-condition: from cold\n");
    Files.writeString(
        folder.resolve("one.csv"),
        "name,starter,dough_temp,starter_condition\nd,20%,24C,from cold\n");
    String day =
        " --ready-at 2027-03-14T18:00 --at-the-bench 06:00-22:30 --zone Europe/Berlin"
            + " --format json";
    String one = "bake-day --plans 1 --starter 20% --dough-temp 24C" + day;
    JsonAnswer ripe = JsonAnswer.of(call(one));
    JsonAnswer kitchen = JsonAnswer.of(call(one + " --kitchen k.txt"));
    JsonAnswer line = JsonAnswer.of(call("class-day one.csv" + day));

    assertThat(kitchen.text("plans.0.doughs.0.starterCondition")).isEqualTo("from cold");
    assertThat(fromKitchen(kitchen)).containsExactly("starter-condition from cold");
    assertThat(feedHours(kitchen)).isGreaterThan(feedHours(ripe));
    assertThat(feedHours(line)).isEqualTo(feedHours(kitchen));
    assertThat(ripe.text("plans.0.doughs.0.starterCondition")).isEqualTo("ripe");
  }

  /** From feeding to mixing. */
  private static double feedHours(JsonAnswer answer) {
    OffsetDateTime fed = OffsetDateTime.parse(answer.text("plans.0.steps.0.from"));
    OffsetDateTime mixed = OffsetDateTime.parse(answer.text("plans.0.steps.1.from"));
    return fed.until(mixed, ChronoUnit.MINUTES) / 60.0;
  }

  private static List<String> fromKitchen(JsonAnswer answer) {
    Map<String, String> all = new HashMap<>(answer.under("understood.fromKitchen"));
    all.remove("understood.fromKitchen.size");
    return List.copyOf(all.values());
  }

  /** What every dough and every student say themselves did not come from the kitchen. */
  @Test
  void aLineAndARosterWinOverTheKitchen() throws IOException {
    Files.writeString(folder.resolve("k.txt"), "flour: rye\npiece: 700g\nform: oval\n");
    Files.writeString(
        folder.resolve("class.csv"),
        "name,form,starter,dough_temp,flour\ncountry,tin,20%,24C,\nplain,tin,20%,24C,white\n");
    Files.writeString(
        folder.resolve("roster.txt"), "name;dough;flour\nAnn;country;spelt\nBo;plain;\n");
    String day = "class-day class.csv --ready-at 2027-03-14T20:00 --at-the-bench 06:00-22:00";
    String place = " --zone Europe/Berlin --kitchen k.txt";

    assertThat(call(day + place + " --roster roster.txt").out())
        .contains("country  370 g  248 g  74 g     8.1 g") // together 700 g
        .endsWith("From the kitchen (--no-kitchen leaves it out): piece 700g\n");
    Files.writeString(folder.resolve("class.csv"), "name,starter,dough_temp\ncountry,20%,24C\n");
    assertThat(call(day + place + " --no-kitchen").out())
        .contains("1 of 850 g, round; white")
        .doesNotContain("From the kitchen");
  }

  private CliRun call(String words) {
    return CliRun.in(TestEnvironment.in(folder), words.split(" "));
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      quoteCharacter = '`',
      value = {
        "name,loave;A,2 | line 1: column 'loave' is not known here: did you mean loaves?",
        "name,loaves;A,two | line 2: loaves",
        "name,hydration;A,72 | line 2: hydration 72 has no unit",
        "name,loaves;A,2;A,3 | line 3: the name 'A' stands there twice",
        "name,loaves | has no doughs",
        "name,ready_at;A,2027-03-18T12:00 | line 2: ready_at",
      })
  void aFileThatCannotBeUsedIsRefusedInOneLine(String file, String part) throws IOException {
    assertThat(run(file.replace(';', '\n') + "\n", "").refusal()).contains(part);
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "--stage | nonsense | --stage nonsense lacks its parts",
        "--preheat | 99h | --preheat 99h: preheating 99 h is outside",
        "--starter-condition | good | --starter-condition good is not known",
        "--altitude | 15000m | --altitude 15000m: altitude 15000 m is outside",
      })
  void aMistakeInASharedOptionIsNotBlamedOnALine(String option, String value, String part)
      throws IOException {
    assertThat(run("name,loaves\nA,2\n", option + " " + value).refusal())
        .startsWith("doughtide: " + part)
        .doesNotContain("line 2");
  }
}
