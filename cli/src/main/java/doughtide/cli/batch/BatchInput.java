package doughtide.cli.batch;

import doughtide.cli.file.InputLines;
import doughtide.cli.session.Environment;
import doughtide.core.quantity.InputException;
import java.io.Closeable;
import java.util.Optional;

/**
 * The rows of a batch, one at a time, from CSV with a header or from JSON lines; which of them the
 * first character tells. Empty lines are passed over.
 */
public final class BatchInput implements Closeable {

  private final InputLines lines;
  private final BatchReader reader;
  private Optional<InputLines.Line> held = Optional.empty();

  private BatchInput(InputLines lines, BatchColumns columns) {
    this.lines = lines;
    InputLines.Line first = firstLine(lines);
    this.reader = reader(first, columns);
    if (reader.format() == BatchFormat.JSONL) {
      held = Optional.of(first);
    }
  }

  /**
   * Opens a file, or standard input for {@code -}.
   *
   * @throws InputException if there is nothing to read or the header cannot be used
   */
  public static BatchInput open(String name, BatchColumns columns, Environment environment) {
    InputLines lines =
        name.equals("-")
            ? InputLines.of("standard input", environment.in())
            : InputLines.open("the file of doughs", name, environment);
    try {
      return new BatchInput(lines, columns);
    } catch (RuntimeException e) {
      lines.close();
      throw e;
    }
  }

  private static InputLines.Line firstLine(InputLines lines) {
    Optional<InputLines.Line> line = lines.next();
    while (line.isPresent() && line.orElseThrow().text().isBlank()) {
      line = lines.next();
    }
    return line.orElseThrow(
        () ->
            new InputException(
                lines.quotedName()
                    + " has no rows to read: the first line names the columns, for example"
                    + " id,dough_temp,hydration"));
  }

  private BatchReader reader(InputLines.Line first, BatchColumns columns) {
    try {
      return new BatchReader(first.text(), columns);
    } catch (InputException e) {
      throw lines.problem(first, String.valueOf(e.getMessage()));
    }
  }

  /** The name of the file for messages, in quotes. */
  public String quotedName() {
    return lines.quotedName();
  }

  /** What reads its lines. */
  BatchReader reader() {
    return reader;
  }

  /** The next row, or nothing at the end. */
  public Optional<BatchRow> next() {
    return nextLine().map(reader::row);
  }

  /** The next line with a row, or nothing at the end. */
  Optional<BatchLine> nextLine() {
    while (true) {
      Optional<InputLines.Line> line;
      try {
        line = held.isPresent() ? held : lines.next();
      } catch (InputLines.BadLine e) {
        lines.skipRest();
        return Optional.of(new BatchLine(e.line(), "", e.what()));
      }
      held = Optional.empty();
      if (line.isEmpty()) {
        return Optional.empty();
      }
      if (!line.orElseThrow().text().isBlank()) {
        return line.map(each -> new BatchLine(each.number(), each.text()));
      }
    }
  }

  @Override
  public void close() {
    lines.close();
  }
}
