package doughtide.cli.batch;

import doughtide.cli.args.CommandSpec;
import doughtide.cli.options.DoughOptions;
import doughtide.cli.session.Environment;
import doughtide.cli.session.SystemEnvironment;
import doughtide.core.forecast.RiseForecaster;
import doughtide.core.quantity.Checks;
import doughtide.core.quantity.InputException;
import java.io.Serializable;
import java.nio.charset.StandardCharsets;
import java.util.Optional;
import org.jspecify.annotations.Nullable;

/**
 * What {@code batch} does with one row, as a function for other programs: the text of a row in, the
 * text of its forecast out, a row that cannot be used included. Serializable, so that the workers
 * of a distributed engine can have it; immutable, and the same row gives the same text everywhere.
 *
 * <pre>{@code
 * RiseForecaster forecaster = RiseForecaster.standard().withMembers(128).onCallingThread();
 * BatchRows rows = BatchRows.of("id,dough_temp,starter,hydration", forecaster);
 * String columns = rows.header();
 * String forecast = rows.answer(2, "A,25C,20%,72%");
 * }</pre>
 */
public final class BatchRows implements Serializable {
  private static final long serialVersionUID = 1;

  private static final CommandSpec DOUGH =
      CommandSpec.named("batch", "").options(DoughOptions.specs()).build();

  /** The options of a dough are the columns of the input. */
  static final BatchColumns COLUMNS = new BatchColumns(DOUGH);

  private final String first;
  private final RiseForecaster forecaster;
  private transient volatile @Nullable Parts parts;

  /** What is made anew on each machine. */
  private record Parts(BatchReader reader, BatchForecasts forecasts, BatchText text) {
    static Parts of(
        BatchReader reader,
        BatchFormat format,
        RiseForecaster forecaster,
        Environment environment) {
      return new Parts(
          reader,
          new BatchForecasts(DOUGH, COLUMNS, forecaster, environment),
          new BatchText(format));
    }

    static Parts of(String first, RiseForecaster forecaster) {
      BatchReader reader = new BatchReader(first, COLUMNS);
      return of(reader, reader.format(), forecaster, new SystemEnvironment());
    }
  }

  /** An answer and its line with its ending. */
  record Answered(BatchAnswer answer, byte[] bytes) {}

  private BatchRows(String first, RiseForecaster forecaster, Parts parts) {
    this.first = first;
    this.forecaster = forecaster;
    this.parts = parts;
  }

  /**
   * {@return the function for rows of CSV or JSON lines; the forecasts come in the same form}
   *
   * @param first the first line: the header of CSV with the names that {@code doughtide help batch}
   *     lists, or any row of JSON lines
   * @param forecaster best one that stays {@linkplain RiseForecaster#onCallingThread() on its
   *     thread}
   * @throws InputException if a column is not known or stands there twice
   */
  public static BatchRows of(String first, RiseForecaster forecaster) {
    return new BatchRows(first, forecaster, Parts.of(first, forecaster));
  }

  /** For a batch on this machine. */
  static BatchRows of(
      BatchReader reader,
      Optional<BatchFormat> asked,
      RiseForecaster forecaster,
      Environment environment) {
    BatchFormat format = asked.orElse(reader.format());
    return new BatchRows("", forecaster, Parts.of(reader, format, forecaster, environment));
  }

  private Parts parts() {
    Parts made = parts;
    if (made == null) {
      made = Parts.of(first, forecaster);
      parts = made;
    }
    return made;
  }

  /** {@return the line before the first forecast, without its ending; empty for JSON lines} */
  public String header() {
    return text(headerBytes());
  }

  byte[] headerBytes() {
    return parts().text().header();
  }

  byte[] goodEnding() {
    return parts().text().goodEnding();
  }

  /**
   * {@return the forecast of a row, without the ending of its line; of a row that cannot be used,
   * what is wrong with it}
   *
   * @param number its line in the input, from 1; it stands in the answer
   * @param row its text
   * @throws InputException if the number is none of a line
   */
  public String answer(long number, String row) {
    Checks.inRange("line", number, 1, Long.MAX_VALUE, "");
    Checks.given("row", row);
    return text(line(new BatchLine(number, row)).bytes());
  }

  /** In a line, for logs: what it was made of. */
  @Override
  public String toString() {
    return "rows of " + first + " by " + forecaster;
  }

  Answered line(BatchLine line) {
    Parts made = parts();
    BatchAnswer answer = made.forecasts().answer(made.reader().row(line));
    return new Answered(answer, made.text().line(answer));
  }

  private static String text(byte[] line) {
    String text = new String(line, StandardCharsets.UTF_8);
    return text.endsWith("\n") ? text.substring(0, text.length() - 1) : text;
  }
}
