package doughtide.cli.command;

import static org.assertj.core.api.Assertions.assertThat;

import doughtide.cli.CliRun;
import doughtide.cli.JsonAnswer;
import doughtide.cli.TestEnvironment;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.time.Instant;
import java.time.ZoneId;
import java.time.ZonedDateTime;
import java.time.temporal.Temporal;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import net.fortuna.ical4j.data.CalendarBuilder;
import net.fortuna.ical4j.data.ParserException;
import net.fortuna.ical4j.model.Calendar;
import net.fortuna.ical4j.model.component.VEvent;
import net.fortuna.ical4j.model.property.DtStart;
import net.fortuna.ical4j.model.property.Trigger;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Days of bakers at the Tidemill kitchen, all invented. */
class BakeDayCommandTest {
  private static final String[] WORKER = {
    "--at-the-bench",
    "06:30-08:30,17:00-22:30",
    "--cold",
    "4C",
    "--loaves",
    "2",
    "--zone",
    "Europe/Berlin"
  };

  @TempDir Path folder;

  private CliRun run(String ready, String... more) {
    List<String> words = new ArrayList<>(List.of("bake-day", "--ready-at", ready));
    words.addAll(Arrays.asList(WORKER));
    words.addAll(Arrays.asList(more));
    return CliRun.in(TestEnvironment.in(folder), words.toArray(String[]::new));
  }

  @Test
  void thePageFitsAPhoneAndNamesEveryStep() {
    CliRun run = run("2027-03-14T12:00");

    assertThat(run.err()).isEmpty();
    assertThat(run.out().lines()).allSatisfy(line -> assertThat(line).hasSizeLessThanOrEqualTo(80));
    assertThat(run.out())
        .contains("Plan 1 of ")
        .contains("feed the starter")
        .contains("divide, rest, shape")
        .contains("prefermented flour")
        .contains("windowpane")
        .contains("Tight: ")
        .contains("Caution: raw flour");
  }

  @Test
  void manyLoavesAreTakenOneByOneOverTheBench() {
    String[] words = {
      "bake-day",
      "--ready-at",
      "2027-03-14T12:00",
      "--at-the-bench",
      "05:00-23:00",
      "--cold",
      "4C",
      "--loaves",
      "16",
      "--oven-capacity",
      "8",
      "--starter",
      "20%",
      "--dough-temp",
      "24C",
      "--plans",
      "1",
      "--mixer-capacity",
      "7kg",
      "--time-a-loaf",
      "3min",
      "--format",
      "json"
    };
    JsonAnswer day = JsonAnswer.of(CliRun.in(TestEnvironment.in(folder), words));

    String bench = "plans.0.doughs.0.bench.";
    assertThat(day.number(bench + "mixes.size")).isEqualTo(2);
    assertThat(day.number(bench + "mixes.0.doughGrams")).isEqualTo(6800);
    assertThat(day.number(bench + "last.loaf")).isEqualTo(16);
    assertThat(day.number(bench + "last.ovenBatch")).isEqualTo(2);
    assertThat(day.number(bench + "last.riseAtOvenPercent"))
        .isGreaterThan(day.number(bench + "first.riseAtOvenPercent"));
  }

  @Test
  void theKitchenIsShownWithItsUnits() {
    assertThat(PlanClock.roomInWords("70F")).isEqualTo("21.1 °C (70 °F)");
    assertThat(PlanClock.roomInWords("21C,22:00-06:00:18C"))
        .isEqualTo("21 °C (70 °F), 22:00–06:00 18 °C (64 °F)");
  }

  @Test
  void whereTwoChangesAreNeededBothAreSaid() {
    CliRun run =
        CliRun.in(
            TestEnvironment.in(folder),
            "bake-day",
            "--ready-at",
            "2027-03-14T12:00",
            "--at-the-bench",
            "07:00-07:15,19:00-19:10",
            "--room",
            "30C",
            "--zone",
            "Europe/Berlin");

    assertThat(run.refusal()).contains("it works with ", " and a cold place at 4 °C");
  }

  @Test
  void jsonHoldsStepsInsideTheHours() throws IOException {
    JsonAnswer day = JsonAnswer.of(run("2027-03-14T12:00", "--plans", "1", "--format", "json"));

    assertThat(day.text("schema")).isEqualTo("doughtide/bake-day/2");
    assertThat(day.number("plans.size")).isEqualTo(1);
    assertThat(day.number("plans.0.doughs.0.goodShare")).isBetween(0.15, 1.0);
    double grams =
        day.number("plans.0.doughs.0.ingredients.flourGrams")
            + day.number("plans.0.doughs.0.ingredients.waterGrams")
            + day.number("plans.0.doughs.0.ingredients.starterGrams")
            + day.number("plans.0.doughs.0.ingredients.saltGrams");
    assertThat(grams).isBetween(1699.0, 1701.0);
    for (int i = 0; i < day.number("plans.0.steps.size"); i++) {
      String from = day.text("plans.0.steps." + i + ".from").substring(11, 16);
      if (day.text("plans.0.steps." + i + ".handsOn").equals("true")) {
        assertThat(from)
            .satisfiesAnyOf(
                at -> assertThat(at).isBetween("06:30", "08:30"),
                at -> assertThat(at).isBetween("17:00", "22:30"));
      }
    }
  }

  @Test
  void csvHasARowForEachStep() {
    CliRun run = run("2027-03-14T12:00", "--plans", "1", "--format", "csv");

    assertThat(run.out().lines().toList().get(0))
        .isEqualTo("plan,step,doughs,person,from,to,hands_on,detail");
    assertThat(run.out().lines().filter(line -> line.contains("ready to slice"))).hasSize(1);
  }

  /** The clocks go forward in the night of 28 March 2027 in Berlin. */
  @Test
  void theCalendarIsReadBackAndRightOverAChangeOfTheClocks() throws IOException, ParserException {
    CliRun run =
        run("2027-03-28T20:30", "--plans", "1", "--format", "csv", "--calendar", "bake.ics");
    assertThat(run.err()).isEmpty();
    List<String> rows = run.out().lines().skip(1).filter(row -> row.contains(",yes,")).toList();

    Calendar calendar;
    try (var in = Files.newInputStream(folder.resolve("bake.ics"))) {
      calendar = new CalendarBuilder().build(in);
    }
    assertThat(calendar.validate().hasErrors()).isFalse();
    List<VEvent> events = calendar.getComponents("VEVENT");
    assertThat(events).hasSameSizeAs(rows);
    for (int i = 0; i < rows.size(); i++) {
      Instant from = Instant.from(start(events.get(i)));
      assertThat(rows.get(i)).contains(iso(from));
      assertThat(events.get(i).getAlarms()).hasSize(1);
      Trigger trigger = events.get(i).getAlarms().get(0).getRequiredProperty("TRIGGER");
      assertThat(trigger.getDuration()).as("before its step").isEqualTo(Duration.ofMinutes(-10));
    }
    ZonedDateTime first = Instant.from(start(events.get(0))).atZone(ZoneId.of("Europe/Berlin"));
    ZonedDateTime last =
        Instant.from(start(events.get(events.size() - 1))).atZone(ZoneId.of("Europe/Berlin"));
    assertThat(first.getOffset().getTotalSeconds()).isEqualTo(3600);
    assertThat(last.getOffset().getTotalSeconds()).isEqualTo(7200);
    assertThat(last.getHour()).isBetween(6, 22);
  }

  private static String iso(Instant instant) {
    return instant.atZone(ZoneId.of("Europe/Berlin")).toOffsetDateTime().toString();
  }

  private static Temporal start(VEvent event) {
    DtStart<Temporal> start = event.getRequiredProperty("DTSTART");
    return start.getDate();
  }

  @Test
  void drawsTheChart() {
    assertThat(run("2027-03-14T12:00", "--plans", "1", "--chart", "day.pdf").err()).isEmpty();
    assertThat(folder.resolve("day.pdf")).isNotEmptyFile();
  }

  private CliRun manyLoaves(int loaves, String ready) {
    String words =
        "bake-day --at-the-bench 07:00-22:00 --room 21C --cold 4C --oven-capacity 6 --zone UTC"
            + " --plans 1 --ready-at 2027-03-14T"
            + ready
            + " --loaves "
            + loaves;
    return CliRun.in(TestEnvironment.in(folder), words.split(" "));
  }

  @Test
  void fiveLoavesArePlanned() {
    assertThat(manyLoaves(5, "13:00").out()).contains("5 of 850 g").contains("Plan 1 of ");
  }

  /** Short: {@code SmallestChangeTest} has forty loaves that need a larger oven. */
  @Test
  @Tag("long")
  void fortyLoavesArePlannedAsTheRefusalSays() {
    assertThat(manyLoaves(40, "13:00").refusal()).contains("it works with the bread 2 h earlier");
    assertThat(manyLoaves(40, "11:00").out()).contains("Plan 1 of ");
  }

  @Test
  void aSearchLimitIsATimeAndSaid() {
    assertThat(run("2027-03-14T12:00", "--search-limit", "0s").refusal())
        .contains("--search-limit must be longer than nothing");
    assertThat(run("2027-03-14T12:00", "--search-limit", "3").refusal()).contains("has no unit");
    assertThat(run("2027-03-14T12:00", "--search-limit", "1h").err()).isEmpty();
  }

  @Test
  void theVesselMatters() {
    String metal =
        run("2027-03-14T12:00", "--vessel", "bowl", "--vessel-material", "metal", "--format", "csv")
            .out();

    assertThat(metal)
        .startsWith("plan,")
        .isNotEqualTo(run("2027-03-14T12:00", "--format", "csv").out());
    assertThat(run("2027-03-14T12:00", "--proofer", "--vessel", "bowl").refusal())
        .contains("--vessel says nothing with --proofer");
    assertThat(run("2027-03-14T12:00", "--proofer", "--vessel-material", "wood").refusal())
        .contains("--vessel-material says nothing with --proofer");
  }

  @Test
  void aDayThatDoesNotWorkSaysWhatWould() {
    CliRun run =
        CliRun.in(
            TestEnvironment.in(folder),
            "bake-day",
            "--ready-at",
            "2027-03-14T12:00",
            "--at-the-bench",
            "07:00-08:00,19:00-20:00",
            "--cold",
            "4C",
            "--zone",
            "UTC");

    assertThat(run.refusal())
        .contains("--ready-at 2027-03-14T12:00, --at-the-bench 07:00-08:00,19:00-20:00: no plan: ")
        .contains("it works with");
  }

  /** On Saturday at 8:00 the evening of Friday has passed, that of Saturday has not. */
  @Test
  void aChangeThatIsProposedIsStillPossible() {
    CliRun run =
        CliRun.in(
            TestEnvironment.in(folder),
            "bake-day",
            "--ready-at",
            "2027-03-07T12:00",
            "--at-the-bench",
            "22:00-06:00",
            "--cold",
            "4C",
            "--zone",
            "UTC");

    assertThat(run.refusal()).contains(": no plan: ").contains("Sat 6 Mar").doesNotContain("5 Mar");
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "--at-the-bench 06:30-08:30 | --ready-at is missing",
        "--ready-at 2027-03-14T12:00 | --at-the-bench is missing",
        "--ready-at 2026-03-14T12:00 --at-the-bench 6:00-9:00 | has passed already",
        "--ready-at 2029-03-14T12:00 --at-the-bench 6:00-9:00 | more than a year ahead",
        "--ready-at 2027-03-14T12:00 --at-the-bench 6am | is not understood at 6am",
        "--ready-at 2027-03-14T12:00 --at-the-bench 7-9pm | two ways: write 7am-9pm or 7pm-9pm",
        "--ready-at 2027-03-14T12:00 --at-the-bench 6:00-6:00 | has no length",
        "--ready-at 2027-03-14T12:00 --at-the-bench 6:00-26:00 | no time on any clock",
        "--ready-at 2027-03-14T12:00 --at-the-bench 6:00-9:00 --room 21 | has no unit",
        "--ready-at 2027-03-14T12:00 --at-the-bench 6:00-9:00 --room 50C | outside 5…38",
        "--ready-at 2027-03-14T12:00 --at-the-bench 6:00-9:00 --room 21C,x:18C | not understood",
        "--ready-at 2027-03-14T12:00 --at-the-bench 6:00-9:00 --loaves 16 --mixer-capacity 1kg"
            + " | --mixer-capacity 1kg: 13600 g of dough are 14 batches in the mixer",
        "--ready-at 2027-03-14T12:00 --at-the-bench 6:00-9:00 --cold 20C | outside 0…12",
        "--ready-at 2027-03-14T12:00 --at-the-bench 6:00-9:00 --calendar a.txt | must end in .ics",
        "--ready-at 2027-03-14T12:00 --at-the-bench 6:00-9:00 --dough-temp 40C | outside 10…32",
        "--ready-at 2027-03-14T12:00 --at-the-bench 6:00-9:00 --loaves 0 | is outside 1…500",
      })
  void isRefusedInOneLine(String words, String part) {
    List<String> all = new ArrayList<>(List.of("bake-day"));
    all.addAll(List.of(words.strip().split(" ")));
    assertThat(CliRun.in(TestEnvironment.in(folder), all.toArray(String[]::new)).refusal())
        .contains(part);
  }
}
