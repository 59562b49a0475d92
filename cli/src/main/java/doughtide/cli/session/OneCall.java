package doughtide.cli.session;

import doughtide.core.document.Catalogue;
import doughtide.core.forecast.RiseForecaster;
import java.io.InputStream;
import java.nio.file.Path;
import java.time.Instant;
import java.time.ZoneId;
import java.util.Optional;

/**
 * The surroundings of one call, which remember the files that it reads and writes, and for which
 * the clock stands still: an answer that asks twice how late it is gets one hour.
 *
 * @param around what the surroundings are otherwise
 * @param now when the call began
 * @param files of this call
 */
public record OneCall(Environment around, Instant now, CallFiles files) implements Environment {

  /** A call that begins now, and has read and written nothing yet. */
  public static OneCall in(Environment around) {
    return new OneCall(around, around.now(), new CallFiles());
  }

  @Override
  public ZoneId zone() {
    return around.zone();
  }

  @Override
  public Path directory() {
    return around.directory();
  }

  @Override
  public InputStream in() {
    return around.in();
  }

  @Override
  public Catalogue catalogue() {
    return around.catalogue();
  }

  @Override
  public RiseForecaster forecaster() {
    return around.forecaster();
  }

  @Override
  public Optional<String> variable(String name) {
    return around.variable(name);
  }

  @Override
  public Optional<Path> configuration() {
    return around.configuration();
  }

  @Override
  public boolean terminal() {
    return around.terminal();
  }

  @Override
  public boolean trace() {
    return around.trace();
  }
}
