package doughtide.cli;

import static org.assertj.core.api.Assertions.assertThat;

import doughtide.cli.args.CommandSpec;
import doughtide.cli.args.HelpPage;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.time.Instant;
import java.util.List;
import java.util.function.Function;
import java.util.function.Supplier;
import java.util.function.UnaryOperator;
import java.util.stream.Stream;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.DynamicTest;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestFactory;
import org.junit.jupiter.api.io.TempDir;

/** Every command explains itself, and its examples run. */
class CommandHelpTest {

  @TempDir Path folder;
  private int examplesRun;
  private int examplesInHand;

  @BeforeEach
  void makeTheFilesThatExamplesRead() throws IOException {
    Files.writeString(folder.resolve("doughs.csv"), "id,dough_temp,salt\nA,25C,2%\nB,70F,\n");
    Files.writeString(
        folder.resolve("class.csv"),
        "name,loaves,hydration,starter,dough_temp\nwhite,2,70%,20%,24C\nbowl,2,72%,10%,24C\n");
    Files.writeString(folder.resolve("roster.txt"), "name;dough;loaves\nAnn;white;2\nBo;bowl;2\n");
  }

  /** With few members and one row in a table of hours; as they stand in the profile "long". */
  @TestFactory
  Stream<DynamicTest> theExamplesOfEveryCommandRun() {
    return Commands.NAMES.stream()
        .flatMap(name -> examples(name, CommandHelpTest::oneRow, UnaryOperator.identity()));
  }

  @TestFactory
  @Tag("long")
  Stream<DynamicTest> theExamplesOfEveryCommandRunAsTheyStand() {
    return Commands.NAMES.stream()
        .flatMap(name -> examples(name, List::stream, TestEnvironment::usual));
  }

  private static Stream<String> oneRow(List<String> words) {
    return words.contains("hours-table")
        ? Stream.concat(words.stream(), Stream.of("--vary", "dough-temp:24C"))
        : words.stream();
  }

  private Stream<DynamicTest> examples(
      String name,
      Function<List<String>, Stream<String>> arguments,
      UnaryOperator<TestEnvironment> around) {
    List<CommandSpec.Example> examples = Commands.named(name).spec().examples();
    assertThat(examples).as("examples of %s", name).isNotEmpty();
    return examples.stream()
        .map(
            example ->
                DynamicTest.dynamicTest(
                    name + ": " + example.says(),
                    () -> run(name, example, arguments.apply(example.arguments()), around)));
  }

  private void run(
      String name,
      CommandSpec.Example example,
      Stream<String> arguments,
      UnaryOperator<TestEnvironment> around)
      throws IOException {
    String[] words = Stream.concat(Stream.of(name), arguments).toArray(String[]::new);
    boolean learns = example.arguments().contains("--starter-file");
    boolean reads = example.arguments().stream().anyMatch(word -> word.startsWith("quayside-"));
    boolean needsReadings = learns || reads;
    Path own =
        needsReadings ? Files.createDirectories(folder.resolve(name + examplesRun++)) : folder;
    if (learns) {
      DemoReadings.learnedIn(own);
    } else if (reads) {
      DemoReadings.copyTo(own);
    }
    TestEnvironment few = new TestEnvironment(own, clock(name), false);
    CliRun run = CliRun.in(around.apply(few), words);
    assertThat(run.err()).isEmpty();
    assertThat(run.code()).isZero();
    assertThat(run.out()).isNotBlank();
  }

  /** Doughs begin in the morning; in the evening of that day they are in hand. */
  private Supplier<Instant> clock(String name) {
    boolean later = name.equals("note") || name.equals("now");
    Instant now =
        later
            ? TestEnvironment.NOW.plus(Duration.ofMinutes(350 + 7L * examplesInHand++))
            : TestEnvironment.NOW;
    return () -> now;
  }

  @Test
  void theNameAloneShowsQuestionsWhoseLinesRun() {
    String page = CliRun.of().out();
    assertThat(Commands.QUESTIONS).hasSize(5);
    for (CommandSpec.Example question : Commands.QUESTIONS) {
      assertThat(page).contains(question.says());
      CliRun run =
          CliRun.in(TestEnvironment.in(folder), question.arguments().toArray(String[]::new));
      assertThat(run.err()).isEmpty();
      assertThat(run.out()).isNotBlank();
    }
  }

  @Test
  void whatACommandDoesHasPagesOfItsOwn() {
    CommandSpec spec = Commands.named("flour").spec();
    assertThat(spec.actions()).hasSize(3);
    for (CommandSpec.Action action : spec.actions()) {
      String page = CliRun.of("flour", action.name(), "--help").out();
      assertThat(page).contains("Usage: doughtide flour " + action.operands());
      assertThat(page).doesNotContain("doughtide flour --help");
      assertThat(page).isEqualTo(CliRun.of("help", "flour", action.name()).out());
      assertThat(action.options()).allSatisfy(name -> assertThat(page).contains("--" + name));
    }
    assertThat(CliRun.of("flour", "save", "--help").out()).doesNotContain("--bowl-rest");
  }

  @TestFactory
  Stream<DynamicTest> helpFitsEightyColumnsAndNamesEveryOption() {
    return Commands.NAMES.stream()
        .map(name -> DynamicTest.dynamicTest(name, () -> checkHelp(name)));
  }

  private static void checkHelp(String name) {
    CommandSpec spec = Commands.named(name).spec();
    String help = CliRun.of("help", name).out();
    assertThat(spec.name()).isEqualTo(name);
    String brief = CliRun.of(name, "--help").out();
    assertThat(brief.lines().count()).isLessThanOrEqualTo(HelpPage.BRIEF_LINES);
    assertThat(brief.lines()).allSatisfy(line -> assertThat(line).hasSizeLessThanOrEqualTo(80));
    assertThat(brief).contains("Usage: doughtide " + name);
    assertThat(brief)
        .satisfiesAnyOf(
            page -> assertThat(page).contains("doughtide help " + name),
            all -> assertThat(all).isEqualTo(help));
    assertThat(help.lines()).allSatisfy(line -> assertThat(line).hasSizeLessThanOrEqualTo(80));
    assertThat(spec.options())
        .allSatisfy(option -> assertThat(help).contains("  " + option.typed()));
    assertThat(help).contains("doughtide " + name + " ");
    assertThat(CliRun.of("--help").out()).contains(spec.name());
  }
}
