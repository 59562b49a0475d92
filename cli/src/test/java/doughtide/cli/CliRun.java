package doughtide.cli;

import static org.assertj.core.api.Assertions.assertThat;

import doughtide.cli.session.Environment;
import java.io.ByteArrayOutputStream;
import java.io.PrintStream;
import java.nio.charset.StandardCharsets;

/** The program run inside the test, with what it printed. */
public record CliRun(int code, String out, String err) {

  public static CliRun of(String... args) {
    return in(TestEnvironment.plain(), args);
  }

  public static CliRun in(Environment environment, String... args) {
    ByteArrayOutputStream out = new ByteArrayOutputStream();
    ByteArrayOutputStream err = new ByteArrayOutputStream();
    int code = Main.run(args, utf8(out), utf8(err), environment);
    return new CliRun(
        code, out.toString(StandardCharsets.UTF_8), err.toString(StandardCharsets.UTF_8));
  }

  private static PrintStream utf8(ByteArrayOutputStream bytes) {
    return new PrintStream(bytes, true, StandardCharsets.UTF_8);
  }

  /** Asserts that the input was refused in one line, and returns it. */
  public String refusal() {
    assertThat(code).as("exit code; stderr: %s", err).isEqualTo(Main.BAD_INPUT);
    assertThat(out).isEmpty();
    return onlyLine();
  }

  /** Asserts that exactly one line stands on standard error, and returns it. */
  public String onlyLine() {
    assertThat(err).startsWith("doughtide: ").endsWith("\n");
    assertThat(err.strip().lines()).as("lines on stderr").hasSize(1);
    assertThat(err).doesNotContain("Exception", "\tat ");
    return err.strip();
  }
}
