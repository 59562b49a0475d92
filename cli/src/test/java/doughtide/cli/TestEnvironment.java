package doughtide.cli;

import doughtide.cli.session.Environment;
import doughtide.core.document.Catalogue;
import doughtide.core.forecast.Ensemble;
import doughtide.core.forecast.RiseForecaster;
import java.io.ByteArrayInputStream;
import java.io.InputStream;
import java.nio.file.Path;
import java.time.Instant;
import java.time.ZoneId;
import java.util.Map;
import java.util.Optional;
import java.util.function.Supplier;

/**
 * Surroundings that are the same on every machine, with an eighth of the usual doughs in a
 * forecast: words, files and refusals do not depend on the third digit of an hour.
 *
 * @param directory where relative names of files start
 * @param clock what the time is
 * @param trace whether faults are printed with their stack
 * @param own what can be named, if it is not the usual
 * @param configuration where the program keeps what belongs to the user
 * @param variables of the environment
 * @param members of a forecast for which none are asked
 */
public record TestEnvironment(
    Path directory,
    Supplier<Instant> clock,
    boolean trace,
    Optional<Catalogue> own,
    Optional<Path> configuration,
    Map<String, String> variables,
    int members)
    implements Environment {

  public static final Instant NOW = Instant.parse("2027-03-06T08:00:00Z");

  private static final int USUAL = Ensemble.USUAL_SIZE;
  private static final int FEW = 64;

  public TestEnvironment(Path directory, Supplier<Instant> clock, boolean trace) {
    this(directory, clock, trace, Optional.empty(), Optional.empty(), Map.of(), FEW);
  }

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

  /** The same where faults are printed with their stack. */
  public TestEnvironment tracing() {
    return new TestEnvironment(directory, clock, true, own, configuration, variables, members);
  }

  /** The same with as many doughs in a forecast as the program takes where none are asked. */
  public TestEnvironment usual() {
    return new TestEnvironment(directory, clock, trace, own, configuration, variables, USUAL);
  }

  /** The same where other things can be named. */
  public TestEnvironment with(Catalogue catalogue) {
    return new TestEnvironment(
        directory, clock, trace, Optional.of(catalogue), configuration, variables, members);
  }

  /** The same for a user with a folder of settings and variables of her own. */
  public TestEnvironment of(Path settings, Map<String, String> set) {
    return new TestEnvironment(directory, clock, trace, own, Optional.of(settings), set, members);
  }

  @Override
  public Catalogue catalogue() {
    return own.orElseGet(Environment.super::catalogue);
  }

  @Override
  public RiseForecaster forecaster() {
    return RiseForecaster.standard().withMembers(members);
  }

  @Override
  public Optional<String> variable(String name) {
    return Optional.ofNullable(variables.get(name));
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
