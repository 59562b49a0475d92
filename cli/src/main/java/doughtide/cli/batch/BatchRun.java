package doughtide.cli.batch;

import doughtide.cli.session.Session;
import doughtide.cli.text.OneLine;
import doughtide.core.quantity.InputException;
import java.io.IOException;
import java.io.OutputStream;
import java.util.Optional;

/** One pass through the rows. */
final class BatchRun {

  private static final int MOST_COMPLAINTS = 20;

  private final BatchInput input;
  private final BatchRows function;
  private final InOrder workers;
  private final Session session;
  private final Progress progress;
  private long rows;
  private long bad;
  private long firstBad;

  BatchRun(BatchInput input, BatchRows function, InOrder workers, Session session) {
    this.input = input;
    this.function = function;
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
    BatchLine last = null;
    for (long i = 0; i < done; i++) {
      Optional<BatchLine> row = input.nextLine();
      if (row.isEmpty()) {
        return Optional.empty();
      }
      last = row.orElseThrow();
      rows++;
    }
    return Optional.ofNullable(last).map(line -> function.line(line).bytes());
  }

  /**
   * Counts the rows of an earlier run that could not be used.
   *
   * @param rows how many
   * @param line the output of the first of them; empty if there is none
   */
  void wereBad(long rows, String line) {
    bad = rows;
    firstBad = rows == 0 ? 0 : BatchText.number(line);
  }

  /** How a line of the output ends whose row could be used. */
  byte[] goodEnding() {
    return function.goodEnding();
  }

  /** What stands before the first line of the output. */
  byte[] header() {
    return function.headerBytes();
  }

  /** Writes a line for each row that is left. */
  public void writeTo(OutputStream out) throws IOException {
    workers.run(input::nextLine, function::line, line -> take(line, out));
    progress.end();
  }

  private void take(BatchRows.Answered line, OutputStream out) throws IOException {
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
