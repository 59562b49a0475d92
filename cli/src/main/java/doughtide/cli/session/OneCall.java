package doughtide.cli.session;

import doughtide.core.document.Catalogue;
import java.io.InputStream;
import java.nio.file.Path;
import java.time.Instant;
import java.time.ZoneId;
import java.util.Optional;

/**
 * The surroundings of one call, which remember the files that it reads and writes.
 *
 * @param around what the surroundings are otherwise
 * @param files of this call
 */
public record OneCall(Environment around, CallFiles files) implements Environment {

  /** A call that has read and written nothing yet. */
  public static OneCall in(Environment around) {
    return new OneCall(around, new CallFiles());
  }

  @Override
  public ZoneId zone() {
    return around.zone();
  }

  @Override
  public Instant now() {
    return around.now();
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
