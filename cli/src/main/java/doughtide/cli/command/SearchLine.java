package doughtide.cli.command;

import doughtide.cli.session.Environment;
import doughtide.cli.session.Session;
import doughtide.core.day.SearchProgress;
import java.io.PrintStream;
import java.time.Duration;
import java.time.Instant;

/** A line on the terminal once a search has taken more than a second. */
final class SearchLine implements SearchProgress {

  private static final Duration QUIET = Duration.ofSeconds(1);

  private final PrintStream err;
  private final Environment environment;
  private final Instant start;
  private int shown = -1;

  public SearchLine(Session session) {
    this.err = session.err();
    this.environment = session.environment();
    this.start = environment.now();
  }

  @Override
  public synchronized void at(double share) {
    int percent = (int) Math.floor(share * 100);
    if (!environment.terminal() || percent <= shown) {
      return;
    }
    if (Duration.between(start, environment.now()).compareTo(QUIET) > 0) {
      shown = percent;
      err.print("\rplanning " + percent + " %  ");
      err.flush();
    }
  }

  /** Clears the line. */
  public synchronized void end() {
    if (shown >= 0) {
      err.print("\r                  \r");
      err.flush();
    }
  }
}
