package doughtide.cli;

import static org.assertj.core.api.Assertions.assertThat;

import doughtide.cli.session.StandardOutput;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.OutputStream;
import java.io.PrintStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.NoSuchFileException;
import java.time.Instant;
import java.util.function.Supplier;
import org.junit.jupiter.api.Test;

class MainTest {

  private static final String[] USES_THE_CLOCK = {
    "rise", "--dough-temp", "25C", "--mixed-at", "09:30"
  };

  @Test
  void versionLineNamesTheProgramAndSaysWhenItIsNotPackaged() {
    assertThat(Main.versionLine()).isEqualTo("doughtide (unpackaged)");
    assertThat(CliRun.of("--version").out()).isEqualTo("doughtide (unpackaged)\n");
  }

  @Test
  void withoutAnyWordThereIsHelp() {
    assertThat(CliRun.of().code()).isZero();
    assertThat(CliRun.of("--help").out()).contains("Usage:", "rise");
    assertThat(CliRun.of().out()).contains("doughtide rise", "doughtide --help");
  }

  @Test
  void helpOfOneCommandComesInThreeWays() {
    String help = CliRun.of("rise", "--help").out();
    assertThat(help).contains("Usage: doughtide rise", "--dough-temp 25C", "doughtide help rise");
    assertThat(CliRun.of("rise", "-h").out()).isEqualTo(help);
    assertThat(CliRun.of("help", "rise").out()).contains("--dough-temp TEMP", "Examples");
  }

  @Test
  void aNearCommandIsNamed() {
    assertThat(CliRun.of("rsie").refusal()).contains("'rsie'", "did you mean rise?");
    assertThat(CliRun.of("zzzz").refusal()).contains("the commands are rise");
  }

  @Test
  void aNearOptionIsNamed() {
    assertThat(CliRun.of("rise", "--hydratoin", "72%").refusal())
        .contains("did you mean --hydration?");
    assertThat(CliRun.of("rise", "--hydratoin=72%").refusal())
        .contains("did you mean --hydration?");
    assertThat(CliRun.of("rise", "--qqq").refusal()).contains("see doughtide rise --help");
  }

  @Test
  void faultsOfTheProgramAreOneLineAndExit70() {
    CliRun run = failing(() -> throwing(new IllegalStateException("inner detail")));
    assertThat(run.code()).isEqualTo(Main.FAULT);
    assertThat(run.err())
        .isEqualTo(
            "doughtide: a fault of the program, not of what you typed"
                + " (java.lang.IllegalStateException): please report it with the command you"
                + " typed\n");
  }

  @Test
  void aDeveloperMayAskForTheStack() {
    Supplier<Instant> clock = () -> throwing(new IllegalStateException("inner detail"));
    CliRun run = CliRun.in(TestEnvironment.failingWith(clock, true), USES_THE_CLOCK);
    assertThat(run.err()).contains("inner detail", "\tat doughtide.cli");
  }

  @Test
  void exhaustionIsOneLine() {
    CliRun memory = failing(() -> throwing(new OutOfMemoryError()));
    assertThat(memory.code()).isEqualTo(Main.FAULT);
    assertThat(memory.onlyLine()).contains("out of memory", "-Xmx");
    CliRun stack = failing(() -> throwing(new StackOverflowError()));
    assertThat(stack.code()).isEqualTo(Main.FAULT);
    assertThat(stack.onlyLine()).contains("out of stack");
  }

  @Test
  void anInputOrOutputFailureNamesTheFile() {
    CliRun run =
        failing(() -> throwing(new UncheckedIOException(new NoSuchFileException("week.csv"))));
    assertThat(run.refusal()).contains("'week.csv' does not exist: check the name");
  }

  @Test
  void aReaderWhoLeavesIsNoError() {
    CliRun run = printingTo("Broken pipe");
    assertThat(run.code()).isZero();
    assertThat(run.err()).isEmpty();
  }

  @Test
  void aFullDiskBehindStandardOutputIsToldInOneLine() {
    CliRun run = printingTo("No space left on device");
    assertThat(run.code()).isEqualTo(Main.BAD_INPUT);
    assertThat(run.onlyLine()).contains("No space left on device");
  }

  @Test
  void messagesCarryNoTerminalCommands() {
    assertThat(CliRun.of("\u001b[31mred\n\u202e").refusal()).doesNotContain("\u001b", "\u202e");
    assertThat(CliRun.of("x".repeat(100_000)).refusal()).hasSizeLessThan(700);
  }

  private static CliRun failing(Supplier<Instant> clock) {
    return CliRun.in(TestEnvironment.failingWith(clock, false), USES_THE_CLOCK);
  }

  private static Instant throwing(RuntimeException e) {
    throw e;
  }

  private static Instant throwing(Error e) {
    throw e;
  }

  private static CliRun printingTo(String failure) {
    OutputStream broken =
        new OutputStream() {
          @Override
          public void write(int b) throws IOException {
            throw new IOException(failure);
          }
        };
    ByteArrayOutputStream err = new ByteArrayOutputStream();
    PrintStream out = new PrintStream(new StandardOutput(broken), false, StandardCharsets.UTF_8);
    PrintStream errors = new PrintStream(err, true, StandardCharsets.UTF_8);
    int code = Main.run(new String[] {"--help"}, out, errors, TestEnvironment.plain());
    return new CliRun(code, "", err.toString(StandardCharsets.UTF_8));
  }
}
