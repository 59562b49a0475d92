package doughtide.cli.batch;

import doughtide.cli.session.Session;
import doughtide.cli.text.OneLine;
import doughtide.core.quantity.InputException;
import java.io.IOException;
import java.io.OutputStream;
import java.util.Optional;

/** One pass through the rows. */
public final class BatchRun {

  private static final int MOST_COMPLAINTS = 20;

  private final BatchInput input;
  private final BatchForecasts forecasts;
  private final BatchText text;
  private final InOrder workers;
  private final Session session;
  private final Progress progress;
  private long rows;
  private long bad;
  private long firstBad;

  public BatchRun(
      BatchInput input,
      BatchForecasts forecasts,
      BatchText text,
      InOrder workers,
      Session session) {
    this.input = input;
    this.forecasts = forecasts;
    this.text = text;
    this.workers = workers;
    this.session = session;
    this.progress = new Progress(session);
  }

  /**
   * Passes over rows that are done.
   *
   * @param done how many
   * @return the line of output of the last of them, to see whether it is the same job; empty if the
   *     input is shorter
   */
  public Optional<byte[]> skip(long done) {
    BatchRow last = null;
    for (long i = 0; i < done; i++) {
      Optional<BatchRow> row = input.next();
      if (row.isEmpty()) {
        return Optional.empty();
      }
      last = row.orElseThrow();
      rows++;
    }
    return Optional.ofNullable(last).map(row -> text.line(forecasts.answer(row)));
  }

  /** Writes a line for each row that is left. */
  public void writeTo(OutputStream out) throws IOException {
    workers.run(input::next, this::line, line -> take(line, out));
    progress.end();
  }

  /** An answer and its line, made together by a worker. */
  private record Line(BatchAnswer answer, byte[] bytes) {}

  private Line line(BatchRow row) {
    BatchAnswer answer = forecasts.answer(row);
    return new Line(answer, text.line(answer));
  }

  private void take(Line line, OutputStream out) throws IOException {
    out.write(line.bytes());
    rows++;
    progress.step();
    if (line.answer().isBad()) {
      report(line.answer());
    }
  }

  private void report(BatchAnswer answer) {
    bad++;
    firstBad = bad == 1 ? answer.row().line() : firstBad;
    if (bad <= MOST_COMPLAINTS) {
      progress.end();
      session
          .err()
          .println(
              OneLine.of(
                  "doughtide: "
                      + input.quotedName()
                      + " line "
                      + answer.row().line()
                      + ": "
                      + answer.error()));
    }
  }

  /** Number of rows written, those of an earlier run included. */
  public long rows() {
    return rows;
  }

  /**
   * Says at the end that rows were bad.
   *
   * @throws InputException if there were any
   */
  public void complain() {
    if (bad > 0) {
      throw new InputException(
          bad
              + " of the "
              + rows
              + " rows of "
              + input.quotedName()
              + " could not be used, the first on line "
              + firstBad
              + ": see the column error of the output");
    }
  }
}
