package doughtide.cli.command.again;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import doughtide.cli.CliRun;
import doughtide.cli.JsonAnswer;
import doughtide.cli.TestEnvironment;
import doughtide.core.day.ProofKind;
import doughtide.report.handout.ClassDayPages;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.OffsetDateTime;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import net.fortuna.ical4j.data.CalendarBuilder;
import net.fortuna.ical4j.data.ParserException;
import net.fortuna.ical4j.model.Calendar;
import net.fortuna.ical4j.model.component.VEvent;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** A class of two doughs that does not run as planned, all invented. */
class ClassDayAgainTest {
  private static final String DOUGHS =
      "name,loaves,starter,dough_temp\nHarrow white,1,20%,24C\nFenside,1,10%,24C\n";
  private static final String ROSTER = "name;dough\nAnn;Harrow white\nBjörn;Fenside\n";

  private static final List<CliRun> PLANNED = new ArrayList<>();
  private static byte[] calendar = {};

  @TempDir Path folder;

  private CliRun run(String... words) {
    List<String> all = new ArrayList<>(List.of("class-day"));
    all.addAll(Arrays.asList(words));
    return CliRun.in(TestEnvironment.in(folder).usual(), all.toArray(String[]::new));
  }

  /** Planned once, then written for each test. */
  @BeforeEach
  void plan() throws IOException {
    if (PLANNED.isEmpty()) {
      Files.writeString(folder.resolve("class.csv"), DOUGHS);
      Files.writeString(folder.resolve("roster.txt"), ROSTER);
      String words =
          "class.csv --roster roster.txt --ready-at 2027-03-14T12:00 --at-the-bench 07:00-22:00"
              + " --cold 4C --oven-capacity 4"
              + " --zone Europe/Berlin --calendar first.ics --format json";
      PLANNED.add(run(words.split(" ")));
      calendar = Files.readAllBytes(folder.resolve("first.ics"));
    }
    Files.writeString(folder.resolve("plan.json"), PLANNED.get(0).out());
    Files.write(folder.resolve("first.ics"), calendar);
  }

  private static JsonAnswer planned() {
    return JsonAnswer.of(PLANNED.get(0));
  }

  private static OffsetDateTime when(JsonAnswer answer, String step, String dough) {
    for (int i = 0; i < answer.number("plans.0.steps.size"); i++) {
      String at = "plans.0.steps." + i + ".";
      if (answer.text(at + "step").startsWith(step)
          && answer.under(at + "doughs").containsValue(dough)) {
        return OffsetDateTime.parse(answer.text(at + "from"));
      }
    }
    throw new AssertionError(step + " of " + dough);
  }

  private static String clock(OffsetDateTime moment) {
    return moment.toLocalDateTime().toString();
  }

  @Test
  void oneDoughThatIsLateMovesAndTheCalendarWithIt() throws Exception {
    OffsetDateTime mixed = when(planned(), "mix the dough", "Harrow white").plusMinutes(40);
    String[] again = {
      "--again",
      "plan.json",
      "--did",
      "harrow white mix " + clock(mixed),
      "--now",
      clock(mixed.plusMinutes(20)),
    };
    List<String> json = new ArrayList<>(List.of(again));
    json.addAll(List.of("--format", "json", "--calendar", "again.ics", "--page", "again.html"));
    CliRun run = run(json.toArray(String[]::new));
    assertThat(run.err()).isEmpty();
    JsonAnswer answer = JsonAnswer.of(run);

    assertThat(answer.text("schema")).isEqualTo("doughtide/class-day-again/1");
    assertThat(answer.text("answer"))
        .contains("mix the dough of Harrow white 40 min later than planned");
    assertThat(when(answer, "mix the dough", "Harrow white")).isEqualTo(mixed);
    assertThat(when(answer, "divide", "Harrow white"))
        .isAfter(when(answer, "fold 4", "Harrow white"));
    checkHands(answer, mixed.plusMinutes(20));
    assertThat(answer.number("students.size")).isEqualTo(2);
    assertThat(answer.text("students.1.name")).isEqualTo("Björn");
    assertThat(Files.readString(folder.resolve("again.html"))).contains("Fenside");

    List<VEvent> before = events("first.ics");
    List<VEvent> after = events("again.ics");
    assertThat(uids(after)).containsAll(uids(before)).doesNotHaveDuplicates();
    assertThat(after)
        .allSatisfy(
            event -> assertThat(event.getRequiredProperty("SEQUENCE").getValue()).isEqualTo("1"));

    Files.writeString(folder.resolve("second.json"), run.out());
    JsonAnswer second =
        JsonAnswer.of(run("--again", "second.json", "--now", again[5], "--format", "json"));
    assertThat(second.number("replanned")).isEqualTo(2);
    for (String step : List.of("divide", "bake", "ready")) {
      assertThat(when(second, step, "Fenside")).isEqualTo(when(answer, step, "Fenside"));
    }
  }

  /** One pair of hands, in the hours at the bench, from now on. */
  private static void checkHands(JsonAnswer answer, OffsetDateTime now) {
    TreeMap<OffsetDateTime, OffsetDateTime> busy = new TreeMap<>();
    for (int i = 0; i < answer.number("plans.0.steps.size"); i++) {
      String at = "plans.0.steps." + i + ".";
      OffsetDateTime from = OffsetDateTime.parse(answer.text(at + "from"));
      OffsetDateTime to = OffsetDateTime.parse(answer.text(at + "to"));
      if (answer.text(at + "done").equals("false")) {
        assertThat(from).isAfterOrEqualTo(now);
        assertThat(from.toLocalTime()).isAfterOrEqualTo("07:00");
        assertThat(to.toLocalTime()).isBeforeOrEqualTo("22:00");
        if (to.isAfter(from)) {
          busy.put(from, to);
        }
      }
    }
    assertThat(busy).hasSizeGreaterThan(5);
    busy.forEach(
        (from, to) -> {
          OffsetDateTime next = busy.higherKey(from);
          assertThat(to).isBeforeOrEqualTo(next == null ? to : next);
        });
  }

  private List<VEvent> events(String name) throws IOException, ParserException {
    Calendar read = new CalendarBuilder().build(Files.newInputStream(folder.resolve(name)));
    assertThat(read.validate().hasErrors()).isFalse();
    return read.getComponents("VEVENT");
  }

  private static List<String> uids(List<VEvent> events) {
    return events.stream().map(event -> event.getRequiredProperty("UID").getValue()).toList();
  }

  @Test
  void oneDoughBecomesMoreLoaves() throws IOException {
    CliRun run =
        run(
            "--again",
            "plan.json",
            "--loaves",
            "fenside 3",
            "--now",
            clock(when(planned(), "divide", "Fenside").minusMinutes(30)),
            "--format",
            "json");
    assertThat(run.err()).isEmpty();
    JsonAnswer again = JsonAnswer.of(run);

    assertThat(again.text("answer")).contains("Fenside 3 loaves of 283 g instead of 1");
    assertThat(again.number("plans.0.doughs.0.loaves")).isEqualTo(1);
    assertThat(again.number("plans.0.doughs.1.loaves")).isEqualTo(3);
    assertThat(3 * again.number("plans.0.doughs.1.pieceGrams")).isBetween(849.5, 850.5);
    assertThat(again.text("doughOptions.1.loaves")).isEqualTo("3");
    assertThat(again.number("students.1.loaves")).isEqualTo(3);
  }

  /** A jar far ahead: its dough is shaped earlier, and of the others nothing is said. */
  @Test
  void readingsOfOneDoughMoveItsLoaves() throws IOException {
    OffsetDateTime mixed = when(planned(), "mix the dough", "Fenside");
    StringBuilder jar =
        new StringBuilder("flour: white\nhydration: 70%\nsalt: 2%\nstarter: 10%\nmixed at: ")
            .append(mixed.toLocalDateTime())
            .append("\n\ntime,rise %,dough temp C\n");
    int[] risen = {0, 6, 18, 32, 50};
    for (int i = 1; i < risen.length; i++) {
      jar.append(mixed.plusMinutes(30L * i).toLocalTime()).append("," + risen[i] + ",24\n");
    }
    Files.writeString(folder.resolve("today.csv"), jar);
    CliRun run =
        run(
            "--again",
            "plan.json",
            "--readings",
            "fenside today.csv",
            "--now",
            clock(mixed.plusHours(2)),
            "--format",
            "json");
    assertThat(run.err()).isEmpty();
    JsonAnswer again = JsonAnswer.of(run);

    assertThat(again.number("readings")).isEqualTo(4);
    assertThat(when(again, "divide", "Fenside"))
        .isBefore(when(planned(), "divide", "Fenside").minusMinutes(20));
    checkHands(again, mixed.plusHours(2));
  }

  @Test
  void whatIsNotClearIsRefusedInOneLine() {
    String now = clock(when(planned(), "divide", "Fenside"));
    List<String[]> calls =
        List.of(
            new String[] {"of several doughs", "--did", "fold 2 2027-03-14T09:00"},
            new String[] {"is no step of the plan", "--did", "Rye shape 14:40"},
            new String[] {"whose they are", "--readings", "today.csv"},
            new String[] {"says nothing to --again", "class.csv"});
    for (String[] call : calls) {
      List<String> words = new ArrayList<>(List.of("--again", "plan.json", "--now", now));
      words.addAll(Arrays.asList(call).subList(1, call.length));
      CliRun run = run(words.toArray(String[]::new));
      assertThat(run.code()).as(call[0]).isEqualTo(2);
      assertThat(run.err().lines()).hasSize(1);
      assertThat(run.err()).contains(call[0]);
    }
    CliRun alone = run("--did", "shape 14:40");
    assertThat(alone.err()).contains("--did says nothing without --again");
  }

  /** Her dough is mixed: somebody bakes it. One that is not mixed has nobody left. */
  @Test
  void anAbsentStudentHasNoPageAndADoughThatIsMixedIsStillBaked() {
    OffsetDateTime last = when(planned(), "mix the dough", "Harrow white");
    OffsetDateTime other = when(planned(), "mix the dough", "Fenside");
    OffsetDateTime both = (last.isAfter(other) ? last : other).plusMinutes(20);
    String[] absent = {"--again", "plan.json", "--absent", "ann", "--format", "json", "--now"};
    CliRun run = run(with(absent, clock(both)));
    assertThat(run.err()).isEmpty();
    JsonAnswer answer = JsonAnswer.of(run);

    assertThat(answer.text("answer")).endsWith("absent: Ann.");
    assertThat(answer.text("absent.0")).isEqualTo("Ann");
    assertThat(answer.number("students.size")).isEqualTo(1);
    assertThat(answer.text("students.0.name")).isEqualTo("Björn");
    assertThat(when(answer, "divide", "Harrow white")).isAfter(both);
    OffsetDateTime before = when(planned(), "mix the dough", "Harrow white").minusHours(1);
    assertThat(run(with(absent, clock(before))).refusal())
        .contains("nobody is left for 'Harrow white', which is not mixed");
  }

  private static String[] with(String[] words, String more) {
    List<String> all = new ArrayList<>(List.of(words));
    all.add(more);
    return all.toArray(String[]::new);
  }

  @Test
  void aStudentWhoSharesADoughThatIsNotMixedTakesHerLoavesOutOfIt() {
    PlanFile file =
        new PlanFile(
            Map.of(),
            "id",
            0,
            1,
            List.of(dough("rye", 5), dough("wheat", 2)),
            List.of(),
            List.of(
                new ClassDayPages.Student("Ann", 0, 2, Optional.empty()),
                new ClassDayPages.Student("Bo", 0, 3, Optional.empty()),
                new ClassDayPages.Student("Cy", 1, 2, Optional.empty())));
    Happened nothing = new Happened(List.of(), List.of(), 0, file.names(), List.of());

    PlanFile without = AbsentStudents.without(AbsentStudents.names("Bo", file), file, nothing);

    assertThat(without.doughs().get(0).options()).containsEntry("loaves", "2");
    assertThat(without.doughs().get(1).options()).isEmpty();
    assertThat(without.students())
        .extracting(ClassDayPages.Student::name)
        .containsExactly("Ann", "Cy");
    assertThatThrownBy(() -> AbsentStudents.without(List.of("Cy"), file, nothing))
        .hasMessageContaining("nobody is left for 'wheat'");
  }

  private static PlanFile.Dough dough(String name, int loaves) {
    return new PlanFile.Dough(name, Map.of(), loaves, 20, 24, ProofKind.ROOM, 2, Optional.empty());
  }
}
