package doughtide.cli.session;

import java.io.Console;
import java.io.InputStream;
import java.nio.file.Path;
import java.time.Instant;
import java.time.ZoneId;

/** The machine the program runs on; each value is fetched when it is asked for. */
public final class SystemEnvironment implements Environment {

  private static final String TRACE_VARIABLE = "DOUGHTIDE_TRACE";

  @Override
  public ZoneId zone() {
    return ZoneId.systemDefault();
  }

  @Override
  public Instant now() {
    return Instant.now();
  }

  @Override
  public Path directory() {
    return Path.of("");
  }

  @Override
  public InputStream in() {
    return System.in;
  }

  @Override
  @SuppressWarnings("SystemConsoleNull") // Asked in both ways, for Java before and from 22.
  public boolean terminal() {
    Console console = System.console();
    return console != null && isTerminal(console);
  }

  /** From Java 22 on there is a console even without a terminal, and a method to ask it. */
  private static boolean isTerminal(Console console) {
    try {
      return (boolean) Console.class.getMethod("isTerminal").invoke(console);
    } catch (ReflectiveOperationException beforeJava22) {
      return true;
    }
  }

  @Override
  public boolean trace() {
    return System.getenv(TRACE_VARIABLE) != null;
  }
}
