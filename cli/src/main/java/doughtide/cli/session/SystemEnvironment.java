package doughtide.cli.session;

import java.io.Console;
import java.io.InputStream;
import java.nio.file.Path;
import java.time.Instant;
import java.time.ZoneId;
import java.util.Locale;
import java.util.Optional;

/** The machine the program runs on; each value is fetched when it is asked for. */
public final class SystemEnvironment implements Environment {

  private static final String TRACE_VARIABLE = "DOUGHTIDE_TRACE";

  @Override
  public ZoneId zone() {
    return ZoneSetting.checked(ZoneId.systemDefault(), variable(ZoneSetting.VARIABLE));
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
  public Optional<String> variable(String name) {
    return Optional.ofNullable(System.getenv(name)).filter(value -> !value.isBlank());
  }

  /** Where the platform keeps settings: Windows, macOS, or the XDG base directories. */
  @Override
  public Optional<Path> configuration() {
    String system = System.getProperty("os.name", "").toLowerCase(Locale.ROOT);
    String home = System.getProperty("user.home", "");
    Optional<Path> folder =
        system.startsWith("windows")
            ? variable("APPDATA").map(Path::of)
            : system.startsWith("mac")
                ? in(home, "Library", "Application Support")
                : variable("XDG_CONFIG_HOME").map(Path::of).or(() -> in(home, ".config"));
    return folder.filter(Path::isAbsolute).map(path -> path.resolve("doughtide"));
  }

  private static Optional<Path> in(String home, String... below) {
    return home.isBlank() ? Optional.empty() : Optional.of(Path.of(home, below));
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
