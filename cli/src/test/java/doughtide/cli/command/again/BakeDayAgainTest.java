package doughtide.cli.command.again;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import doughtide.cli.CliRun;
import doughtide.cli.JsonAnswer;
import doughtide.cli.TestEnvironment;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.time.OffsetDateTime;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.stream.Stream;
import net.fortuna.ical4j.data.CalendarBuilder;
import net.fortuna.ical4j.data.ParserException;
import net.fortuna.ical4j.model.Calendar;
import net.fortuna.ical4j.model.component.VEvent;
import net.fortuna.ical4j.model.property.Trigger;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Days of the Tidemill kitchen that do not run as planned, all invented. */
class BakeDayAgainTest {

  @TempDir Path folder;

  private CliRun run(String... words) {
    List<String> all = new ArrayList<>(List.of("bake-day"));
    all.addAll(Arrays.asList(words));
    return CliRun.in(TestEnvironment.in(folder).usual(), all.toArray(String[]::new));
  }

  private static final List<CliRun> PLANNED = new ArrayList<>();
  private static byte[] calendar = {};

  /** Planned once, then written for each test. */
  private JsonAnswer plan() throws IOException {
    if (PLANNED.isEmpty()) {
      PLANNED.add(firstPlan());
      calendar = Files.readAllBytes(folder.resolve("first.ics"));
    }
    Files.writeString(folder.resolve("plan.json"), PLANNED.get(0).out());
    Files.write(folder.resolve("first.ics"), calendar);
    return JsonAnswer.of(PLANNED.get(0));
  }

  private CliRun firstPlan() {
    return run(
        "--ready-at",
        "2027-03-14T12:00",
        "--at-the-bench",
        "07:00-22:30",
        "--cold",
        "4C",
        "--loaves",
        "2",
        "--starter",
        "20%",
        "--dough-temp",
        "24C",
        "--plans",
        "1",
        "--zone",
        "Europe/Berlin",
        "--calendar",
        "first.ics",
        "--format",
        "json");
  }

  private static Map<String, OffsetDateTime> hours(JsonAnswer answer) {
    Map<String, OffsetDateTime> hours = new LinkedHashMap<>();
    for (int i = 0; i < answer.number("plans.0.steps.size"); i++) {
      String step = "plans.0.steps." + i + ".";
      hours.put(answer.text(step + "step"), OffsetDateTime.parse(answer.text(step + "from")));
    }
    return hours;
  }

  private static String clock(OffsetDateTime moment) {
    return moment.toLocalDateTime().toString();
  }

  @Test
  void aDoughMixedBeforeTheBakerGoesWaitsInItsTubInTheCold() throws IOException {
    plan();
    CliRun run =
        run(
            "--again",
            "plan.json",
            "--did",
            "mix 21:30",
            "--now",
            "2027-03-13T21:40",
            "--format",
            "json");
    Map<String, OffsetDateTime> again = hours(JsonAnswer.of(run));

    OffsetDateTime into = again.get("put the tub into the cold");
    assertThat(clock(into)).isBetween("2027-03-13T21:40", "2027-03-13T22:30");
    assertThat(again.get("take the tub out of the cold")).isAfter(into.plusHours(5));
    assertThat(again.get("divide, rest, shape")).isAfter(again.get("take the tub out of the cold"));
    assertThat(JsonAnswer.of(run).number("plans.0.doughs.0.goodShare")).isGreaterThan(0.15);
  }

  @Test
  void aDayMixedFortyMinutesLateIsPlannedAgainWithinTheHoursAtTheBench() throws IOException {
    Map<String, OffsetDateTime> first = hours(plan());
    OffsetDateTime mixed = first.get("mix the dough").plusMinutes(40);
    String did = "mix " + clock(mixed);
    String now = clock(mixed.plusMinutes(5));

    CliRun text = run("--again", "plan.json", "--did", did, "--now", now);
    CliRun json = run("--again", "plan.json", "--did", did, "--now", now, "--format", "json");
    Map<String, OffsetDateTime> again = hours(JsonAnswer.of(json));

    assertThat(text.out()).startsWith("Bake S").contains("mix the dough 40 min later");
    assertThat(text.out().lines()).allSatisfy(line -> assertThat(line).hasSizeLessThan(81));
    assertThat(again.get("mix the dough")).isEqualTo(mixed);
    assertThat(again.get("divide, rest, shape")).isAfter(first.get("divide, rest, shape"));
    assertThat(again.get("divide, rest, shape").toLocalTime().plusMinutes(35))
        .as("the loaves are in the cold before the baker goes")
        .isBeforeOrEqualTo("22:30");
    assertThat(Duration.between(mixed, again.get("fold 2")))
        .isEqualTo(Duration.between(first.get("mix the dough"), first.get("fold 2")));

    Files.writeString(folder.resolve("second.json"), json.out());
    CliRun replay = run("--again", "second.json", "--now", now, "--format", "json");
    assertThat(hours(JsonAnswer.of(replay))).isEqualTo(again);
    assertThat(JsonAnswer.of(replay).number("replanned")).isEqualTo(2);
  }

  @Test
  void moreLoavesOfTheSameDoughAreSmallerAndBakedInTwoBatches() throws IOException {
    Map<String, OffsetDateTime> first = hours(plan());
    OffsetDateTime shaped = first.get("divide, rest, shape").plusMinutes(15);
    JsonAnswer again =
        JsonAnswer.of(
            run(
                "--again",
                "plan.json",
                "--did",
                "shape " + clock(shaped),
                "--now",
                clock(shaped.plusMinutes(50)),
                "--at-the-bench",
                "06:30-23:00",
                "--loaves",
                "3",
                "--format",
                "json"));

    assertThat(again.number("plans.0.doughs.0.pieceGrams")).isEqualTo(566.7);
    assertThat(hours(again)).containsKeys("bake batch 1", "bake batch 2");
    assertThat(hours(again).get("divide, rest, shape")).isEqualTo(shaped);
    assertThat(again.text("answer"))
        .contains("3 loaves of 567 g instead of 2", "15 min later", "other hours at the bench");
  }

  @Test
  void theCalendarKeepsItsEntriesAndMovesThem() throws Exception {
    Map<String, OffsetDateTime> first = hours(plan());
    OffsetDateTime mixed = first.get("mix the dough").plusMinutes(40);
    CliRun run =
        run(
            "--again",
            "plan.json",
            "--did",
            "mix " + clock(mixed),
            "--now",
            clock(mixed),
            "--calendar",
            "again.ics");

    assertThat(run.err()).isEmpty();
    List<VEvent> before = events("first.ics");
    List<VEvent> after = events("again.ics");
    assertThat(uids(after))
        .containsExactlyInAnyOrderElementsOf(uids(before))
        .doesNotHaveDuplicates();
    assertThat(before).allSatisfy(event -> assertThat(sequence(event)).isZero());
    assertThat(after).allSatisfy(event -> assertThat(sequence(event)).isEqualTo(1));
    assertThat(after)
        .allSatisfy(
            event -> {
              Trigger trigger = event.getAlarms().get(0).getRequiredProperty("TRIGGER");
              assertThat(trigger.getDuration()).isEqualTo(Duration.ofMinutes(-10));
            });
  }

  /** One loaf instead of three in an oven for two: the second batch falls away. */
  @Test
  void aStepThatFallsAwayIsCancelledUnderItsName() throws Exception {
    Map<String, OffsetDateTime> first = hours(plan());
    String shaped = clock(first.get("divide, rest, shape"));
    String now = clock(first.get("divide, rest, shape").plusHours(1));
    String[] again = {"--again", "plan.json", "--did", "shape " + shaped, "--now", now};
    List<String> three = new ArrayList<>(List.of(again));
    three.addAll(List.of("--loaves", "3", "--calendar", "three.ics", "--format", "json"));
    Files.writeString(folder.resolve("three.json"), run(three.toArray(String[]::new)).out());
    CliRun one =
        run(
            "--again",
            "three.json",
            "--now",
            now,
            "--loaves",
            "1",
            "--calendar",
            "one.ics",
            "--chart",
            "one.png",
            "--page",
            "one.html");

    assertThat(one.err()).isEmpty();
    assertThat(one.out()).contains("Left out now: bake batch 2", "How much later each step may be");
    assertThat(Files.size(folder.resolve("one.png"))).isGreaterThan(5_000);
    assertThat(Files.readString(folder.resolve("one.html"))).contains("bake");
    assertThat(uids(events("one.ics"))).containsAll(uids(events("three.ics")));
    for (VEvent event : events("one.ics")) {
      boolean second = event.getRequiredProperty("SUMMARY").getValue().contains("batch 2");
      boolean cancelled =
          event.getProperty("STATUS").filter(it -> it.getValue().equals("CANCELLED")).isPresent();
      assertThat(cancelled).as("%s", event).isEqualTo(second);
      assertThat(sequence(event)).isEqualTo(2);
      assertThat(event.getAlarms()).hasSize(cancelled ? 0 : 1);
    }
  }

  /** A jar that is far ahead of what was expected: the loaves are shaped earlier. */
  @Test
  void readingsOfTodayMoveTheRestAndMarginsAreGivenAnew() throws IOException {
    Map<String, OffsetDateTime> first = hours(plan());
    OffsetDateTime mixed = first.get("mix the dough");
    StringBuilder jar =
        new StringBuilder("flour: white\nhydration: 70%\nsalt: 2%\nstarter: 20%\nmixed at: ")
            .append(mixed.toLocalDateTime())
            .append("\n\ntime,rise %,dough temp C\n");
    int[] risen = {0, 4, 12, 22, 35};
    for (int i = 1; i < risen.length; i++) {
      jar.append(mixed.plusMinutes(30L * i).toLocalTime()).append("," + risen[i] + ",24\n");
    }
    Files.writeString(folder.resolve("today.csv"), jar);
    String now = clock(mixed.plusHours(2));
    CliRun run =
        run("--again", "plan.json", "--readings", "today.csv", "--now", now, "--format", "json");
    assertThat(run.err()).isEmpty();
    JsonAnswer again = JsonAnswer.of(run);

    assertThat(again.number("readings")).isEqualTo(4);
    assertThat(again.text("answer")).contains("4 readings of today");
    assertThat(hours(again).get("divide, rest, shape"))
        .isBefore(first.get("divide, rest, shape").minusMinutes(20));
    assertThat(again.text("plans.0.doughs.0.margins.0.step")).isEqualTo("divide, rest, shape");
    assertThat(again.text("plans.0.doughs.0.margins.1.step")).isEqualTo("bake");
    assertThat(again.number("plans.0.doughs.0.margins.0.hours")).isBetween(0.0, 6.0);
  }

  /** Fed as planned, and then kept from mixing for half an hour. */
  @Test
  void aDoughThatIsNotMixedYetIsPlannedFromItsStarterOn() throws IOException {
    Map<String, OffsetDateTime> first = hours(plan());
    OffsetDateTime now = first.get("mix the dough").plusMinutes(30);
    CliRun run = run("--again", "plan.json", "--now", clock(now), "--format", "json");
    assertThat(run.err()).isEmpty();
    JsonAnswer again = JsonAnswer.of(run);

    assertThat(again.text("answer")).contains("the dough is not mixed yet");
    assertThat(hours(again).get("feed the starter")).isEqualTo(first.get("feed the starter"));
    assertThat(hours(again).get("mix the dough")).isAfterOrEqualTo(now);
    assertThat(again.number("plans.0.doughs.0.starterOfAddedFlourPercent")).isEqualTo(20);
    assertThat(again.text("plans.0.doughs.0.margins.0.step")).isEqualTo("mix the dough");
    hours(again)
        .forEach(
            (step, at) -> {
              if (!step.equals("feed the starter")) {
                assertThat(at).as(step).isAfterOrEqualTo(now);
              }
            });
  }

  /** The hour of the feeding has passed, and nobody fed it. */
  @Test
  void aStarterThatWasNotFedIsFedFromNowOn() throws IOException {
    OffsetDateTime now = hours(plan()).get("feed the starter").plusMinutes(40);
    CliRun run =
        run("--again", "plan.json", "--not-done", "feed", "--now", clock(now), "--format", "json");
    assertThat(run.err()).isEmpty();

    assertThat(hours(JsonAnswer.of(run)))
        .containsKey("feed the starter")
        .allSatisfy((step, at) -> assertThat(at).as(step).isAfterOrEqualTo(now));
  }

  /** The oven of a dough in the cold, forgotten until the bread cannot be ready at noon. */
  @Test
  void breadThatIsLaterThanWantedIsSaidInTheFirstLine() throws IOException {
    OffsetDateTime shaped = hours(plan()).get("divide, rest, shape");
    String did = "shape " + clock(shaped);
    CliRun text = run("--again", "plan.json", "--did", did, "--now", "2027-03-14T11:00");
    CliRun run = again("plan.json", "2027-03-14T11:00", "--did", did);
    CliRun inTime = again("plan.json", clock(shaped.plusHours(1)), "--did", did);
    OffsetDateTime ready = hours(JsonAnswer.of(run)).get("ready to slice");
    double late =
        Duration.between(OffsetDateTime.parse("2027-03-14T12:00+01:00"), ready).toMinutes() / 60.0;

    assertThat(late).isBetween(1.0, 4.0);
    assertThat(JsonAnswer.of(run).number("plans.0.doughs.0.laterThanWantedHours"))
        .isCloseTo(late, within(1e-3));
    assertThat(text.out().split("\n\n")[0].replace('\n', ' '))
        .contains("the bread is ready Sun " + ready.toLocalTime() + ", ")
        .contains("later than wanted: switch the oven on is not done yet, it was meant for Sun");
    assertThat(JsonAnswer.of(inTime).number("plans.0.doughs.0.laterThanWantedHours")).isZero();
    assertThat(JsonAnswer.of(inTime).text("answer")).doesNotContain("wanted", "not done yet");
  }

  /** The likely dough is past its shape point: no jar is waited for, nor for a higher rise. */
  @Test
  void aDoughWhoseShapingIsOverdueIsShapedWhateverTheJarShows() throws IOException {
    JsonAnswer first = plan();
    OffsetDateTime meant = hours(first).get("divide, rest, shape");
    String late = clock(meant.plusHours(1));
    CliRun text = run("--again", "plan.json", "--not-done", "shape", "--now", late);
    JsonAnswer overdue = JsonAnswer.of(again("plan.json", late, "--not-done", "shape"));
    String early = clock(meant.minusMinutes(30));
    JsonAnswer inTime = JsonAnswer.of(again("plan.json", early, "--not-done", "shape"));
    String dough = "plans.0.doughs.0.";

    String jar = Math.round(overdue.number(dough + "overdueJarPercent")) + " %";
    String rule = "Shape Sat " + late.substring(11) + " whatever the jar shows, likely " + jar;
    assertThat(text.out().replace('\n', ' '))
        .startsWith(rule + ". Bake S")
        .contains(rule + ": by then the dough is likely ready to shape, or past it.")
        .doesNotContain("when the jar has risen");
    assertThat(overdue.text(dough + "shapeByJar")).isEqualTo("false");
    assertThat(clock(hours(overdue).get("divide, rest, shape"))).isEqualTo(late);
    assertThat(overdue.number(dough + "shapeRisePercent"))
        .isCloseTo(first.number(dough + "shapeRisePercent"), within(6.0))
        .isLessThan(overdue.number(dough + "overdueJarPercent") - 6);
    assertThat(inTime.text(dough + "shapeByJar")).isEqualTo("true");
    assertThat(inTime.text("answer")).startsWith("Bake ");
    JsonAnswer night = JsonAnswer.of(again("plan.json", "2027-03-13T22:00", "--not-done", "shape"));
    String into = hours(night).get("put the tub into the cold").toLocalTime().toString();
    String out = hours(night).get("take the tub out of the cold").toLocalTime().toString();
    assertThat(night.text("answer"))
        .startsWith("Shape Sun ")
        .contains(", the tub in the cold from Sat " + into + " to Sun " + out + ". Bake ");
  }

  /**
   * The sheet of the first plan is of another dough: what to weigh now is said, as it was there.
   */
  @Test
  void aDoughThatIsNotMixedYetIsWeighedAnewWhereItsRecipeChanges() throws IOException {
    JsonAnswer first = plan();
    OffsetDateTime now = hours(first).get("feed the starter").plusMinutes(40);
    String dough = "plans.0.doughs.0.";
    String other =
        PLANNED
            .get(0)
            .out()
            .replace("\"doughCelsius\": 24", "\"doughCelsius\": 27")
            .replace("\"starterOfAddedFlourPercent\": 20", "\"starterOfAddedFlourPercent\": 15.5");
    Files.writeString(folder.resolve("other.json"), other);
    JsonAnswer again = JsonAnswer.of(again("other.json", clock(now), "--not-done", "feed"));
    CliRun text = run("--again", "other.json", "--not-done", "feed", "--now", clock(now));

    String change =
        "starter 20 % instead of 15.5 % of the flour added, dough at 24 °C instead of 27 °C";
    assertThat(again.text(dough + "recipeChange")).startsWith(change);
    assertThat(again.under(dough + "ingredients"))
        .isEqualTo(first.under(dough + "ingredients"))
        .isNotEmpty();
    assertThat(again.under(dough + "feed").keySet())
        .isEqualTo(first.under(dough + "feed").keySet());
    assertThat(again.number(dough + "waterCelsius"))
        .isCloseTo(first.number(dough + "waterCelsius"), within(0.5));
    String grams = Math.round(first.number(dough + "ingredients.flourGrams")) + " g";
    assertThat(text.out().replace('\n', ' '))
        .contains("the dough is not mixed yet, its recipe changes: weigh anew")
        .contains("Weigh: flour " + grams + ", water ")
        .contains("so weigh by this: " + change)
        .contains("; water at ");
    assertThat(again(dough, first)).isEmpty();
  }

  /** Of a dough that is mixed as planned, nothing is to be weighed. */
  private Map<String, String> again(String dough, JsonAnswer first) {
    String mixed = clock(hours(first).get("mix the dough"));
    return JsonAnswer.of(again("plan.json", mixed, "--did", "mix " + mixed))
        .under(dough + "ingredients");
  }

  /** The first line says it, and the calendar takes back the one that is left out. */
  @Test
  void aFoldThatWasNotDoneComesLaterAndOneThatIsTooLateIsNamed() throws IOException {
    OffsetDateTime second = hours(plan()).get("fold 2");
    OffsetDateTime mixed = hours(plan()).get("mix the dough");
    String soon = clock(second.plusMinutes(10));
    CliRun planned = run("--again", "plan.json", "--not-done", "fold 2", "--now", soon);
    JsonAnswer data = JsonAnswer.of(again("plan.json", soon, "--not-done", "fold 2"));
    String late = clock(mixed.plusHours(5));
    CliRun leftOut = run("--again", "plan.json", "--not-done", "fold 2", "--now", late);

    String headline = planned.out().split("\n\n")[0].replace('\n', ' ');
    assertThat(headline).contains("fold 2 was not done, it comes S");
    assertThat(clock(hours(data).get("fold 2"))).isEqualTo(soon);
    assertThat(hours(data).get("fold 3")).isAfterOrEqualTo(second.plusMinutes(30));
    assertThat(leftOut.out().split("\n\n")[0].replace('\n', ' '))
        .contains("fold 2, fold 3")
        .contains("are left out");
  }

  /** Meant to be baked in the evening; shaped far too late for that. */
  @Test
  void loavesShapedForTheRoomGoIntoTheColdAndTheNextPlanCarriesThatStep() throws IOException {
    String[] first = {
      "--ready-at",
      "2027-03-13T23:00",
      "--at-the-bench",
      "2027-03-12T20:00/2027-03-12T23:00,2027-03-13T08:00/2027-03-13T21:45,"
          + "2027-03-14T07:00/2027-03-14T20:00",
      "--room",
      "22C",
      "--cold",
      "4C",
      "--loaves",
      "2",
      "--starter",
      "20%",
      "--dough-temp",
      "26C",
      "--plans",
      "1",
      "--zone",
      "Europe/Berlin",
      "--format",
      "json"
    };
    CliRun planned = run(first);
    write("first.json", planned);
    String[] shaped = {"--did", "shape 19:30", "--chart", "again.svg"};
    CliRun again = again("first.json", "2027-03-13T20:40", shaped);
    write("second.json", again);
    assertThat(Files.readString(folder.resolve("again.svg")))
        .contains("Oven Sun")
        .doesNotContain("Shape about");
    OffsetDateTime into = hours(JsonAnswer.of(again)).get("put the loaves into the cold");

    assertThat(JsonAnswer.of(planned).text("plans.0.doughs.0.proof")).isEqualTo("room");
    assertThat(JsonAnswer.of(again).text("plans.0.doughs.0.proof")).isEqualTo("cold");
    assertThat(clock(into)).isBetween("2027-03-13T20:40", "2027-03-13T21:40");
    assertThat(clock(hours(JsonAnswer.of(again)).get("bake"))).startsWith("2027-03-14T");

    JsonAnswer waiting = JsonAnswer.of(again("second.json", "2027-03-13T21:10"));
    assertThat(hours(waiting).get("put the loaves into the cold"))
        .as("not told, so not carried yet")
        .isAfterOrEqualTo(OffsetDateTime.parse("2027-03-13T21:10+01:00"));
    CliRun carried = again("second.json", "2027-03-13T21:10", "--did", "loaves into cold 20:55");
    assertThat(clock(hours(JsonAnswer.of(carried)).get("put the loaves into the cold")))
        .isEqualTo("2027-03-13T20:55");
    write("third.json", carried);
    assertThat(hours(JsonAnswer.of(again("third.json", "2027-03-13T21:30"))))
        .isEqualTo(hours(JsonAnswer.of(carried)));
  }

  private void write(String name, CliRun run) throws IOException {
    assertThat(run.err()).isEmpty();
    Files.writeString(folder.resolve(name), run.out());
  }

  private CliRun again(String plan, String now, String... more) {
    List<String> words = new ArrayList<>(List.of("--again", plan, "--now", now));
    words.addAll(List.of(more));
    words.addAll(List.of("--format", "json"));
    return run(words.toArray(String[]::new));
  }

  private List<VEvent> events(String name) throws IOException, ParserException {
    Calendar calendar = new CalendarBuilder().build(Files.newInputStream(folder.resolve(name)));
    assertThat(calendar.validate().hasErrors()).isFalse();
    return calendar.getComponents("VEVENT");
  }

  private static List<String> uids(List<VEvent> events) {
    return events.stream().map(event -> event.getRequiredProperty("UID").getValue()).toList();
  }

  private static int sequence(VEvent event) {
    return Integer.parseInt(event.getRequiredProperty("SEQUENCE").getValue());
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "--again none.json | 'none.json'",
        "--again text.json | is no plan of a day",
        "--again other.json | is no plan of a day",
        "--did mix | --did says nothing without --again",
        "--not-done feed | --not-done says nothing without --again",
      })
  void aPlanThatCannotBeReadIsRefusedInOneLine(String words, String part) throws IOException {
    Files.writeString(folder.resolve("text.json"), "Tidemill");
    Files.writeString(folder.resolve("other.json"), "{\"plans\": [], \"planId\": 3}");

    CliRun run = run(words.split(" "));

    assertThat(run.code()).isEqualTo(2);
    assertThat(run.err().lines()).hasSize(1);
    assertThat(run.err()).contains(part);
  }

  /** Somebody has taken the cold out of the file; it can be given anew. */
  @Test
  void loavesThatWaitInTheColdNeedOne() throws IOException {
    OffsetDateTime mixed = hours(plan()).get("mix the dough");
    Path file = folder.resolve("plan.json");
    String whole = Files.readString(file);
    String none = whole.replaceAll("\"cold\": *\"4C\",?", "");
    assertThat(none).as("the option stands among those of the plan").isNotEqualTo(whole);
    Files.writeString(file, none);
    String did = "mix " + clock(mixed);
    String[] again = {"--again", "plan.json", "--did", did, "--now", clock(mixed.plusMinutes(5))};

    CliRun refused = run(again);
    CliRun given =
        run(Stream.concat(Stream.of(again), Stream.of("--cold", "4C")).toArray(String[]::new));

    assertThat(refused.code()).isEqualTo(2);
    assertThat(refused.refusal()).contains("'plan.json': the loaves of", "give --cold 4C");
    assertThat(given.err()).isEmpty();
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "\"starterOfAddedFlourPercent\": *[0-9.]+ | \"starterOfAddedFlourPercent\": 1e10",
        "\"doughCelsius\": *[0-9.]+ | \"doughCelsius\": 240",
        "\"proofHours\": *[0-9.]+ | \"proofHours\": 1e6",
        "\"loaves\": *[0-9.]+ | \"loaves\": -3",
      })
  void aPlanWithNumbersThatNoPlanHasIsNamed(String number, String other) throws IOException {
    plan();
    Path file = folder.resolve("plan.json");
    String whole = Files.readString(file);
    Files.writeString(file, whole.replaceAll(number, other));

    assertThat(whole).containsPattern(number);
    assertThat(run("--again", "plan.json", "--now", "2027-03-13T20:00").refusal())
        .contains("'plan.json' is no plan of a day");
  }

  /** The kitchen's hours at the bench stand in for none: those of the plan are used, and named. */
  @Test
  void aRestWithoutPlanNamesTheHoursOfThePlanAndOnlyOptionsThatWereGiven() throws IOException {
    plan();
    Files.writeString(folder.resolve("kitchen.txt"), "at-the-bench: 05:00-23:30\n");
    String[] late = {
      "--again", "plan.json", "--now", "2027-03-14T09:00", "--kitchen", "kitchen.txt"
    };
    CliRun ofPlan = run(late);
    CliRun given =
        run(
            Stream.concat(Stream.of(late), Stream.of("--at-the-bench", "08:00-23:00"))
                .toArray(String[]::new));

    assertThat(List.of(ofPlan.code(), given.code())).containsOnly(2);
    assertThat(ofPlan.err())
        .startsWith("doughtide: --again plan.json: ")
        .contains("the hours at the bench are those of the plan, 07:00-22:30")
        .doesNotContain("05:00");
    assertThat(given.err())
        .startsWith("doughtide: --again plan.json, --at-the-bench 08:00-23:00: ")
        .doesNotContain("of the plan");
  }

  @Test
  void whatCannotHaveHappenedIsRefusedInOneLine() throws IOException {
    plan();
    for (String did : List.of("shpe 20:00", "shape", "mix 2027-03-14T23:00")) {
      CliRun run = run("--again", "plan.json", "--did", did, "--now", "2027-03-13T21:00");
      assertThat(run.code()).as(did).isEqualTo(2);
      assertThat(run.err().lines()).as(did).hasSize(1);
    }
  }
}
