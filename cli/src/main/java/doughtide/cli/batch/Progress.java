package doughtide.cli.batch;

import doughtide.cli.session.Environment;
import doughtide.cli.session.Session;
import java.io.PrintStream;
import java.time.Duration;
import java.time.Instant;

/** A line on the terminal that says how far a long job is; nothing where nobody watches. */
final class Progress {

  private static final Duration BETWEEN = Duration.ofSeconds(1);
  private static final int LOOK_EVERY = 16;

  private final PrintStream err;
  private final Environment environment;
  private final boolean shown;
  private final Instant start;
  private Instant last;
  private long done;

  public Progress(Session session) {
    this.err = session.err();
    this.environment = session.environment();
    this.shown = environment.terminal();
    this.start = environment.now();
    this.last = start;
  }

  /** One more row is done. */
  public void step() {
    done++;
    if (!shown || done % LOOK_EVERY != 0) {
      return;
    }
    Instant now = environment.now();
    if (Duration.between(last, now).compareTo(BETWEEN) >= 0) {
      last = now;
      long millis = Math.max(Duration.between(start, now).toMillis(), 1);
      err.print("\r" + done + " rows, " + 1000 * done / millis + " rows/s  ");
      err.flush();
    }
  }

  /** Clears the line. */
  public void end() {
    if (shown && !last.equals(start)) {
      err.print("\r" + " ".repeat(50) + "\r");
      err.flush();
    }
  }
}
