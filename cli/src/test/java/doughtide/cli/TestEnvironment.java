package doughtide.cli;

import doughtide.cli.session.Environment;
import java.io.ByteArrayInputStream;
import java.io.InputStream;
import java.nio.file.Path;
import java.time.Instant;
import java.time.ZoneId;
import java.util.function.Supplier;

/** Surroundings that are the same on every machine. */
public record TestEnvironment(Path directory, Supplier<Instant> clock, boolean trace)
    implements Environment {

  public static final Instant NOW = Instant.parse("2027-03-06T08:00:00Z");

  public static TestEnvironment in(Path directory) {
    return new TestEnvironment(directory, () -> NOW, false);
  }

  public static TestEnvironment plain() {
    return in(Path.of("target"));
  }

  /** A program whose clock fails, to see what the outermost layer makes of it. */
  public static TestEnvironment failingWith(Supplier<Instant> clock, boolean trace) {
    return new TestEnvironment(Path.of("target"), clock, trace);
  }

  @Override
  public ZoneId zone() {
    return ZoneId.of("Europe/London");
  }

  @Override
  public Instant now() {
    return clock.get();
  }

  @Override
  public InputStream in() {
    return new ByteArrayInputStream(new byte[0]);
  }

  @Override
  public boolean terminal() {
    return false;
  }
}
