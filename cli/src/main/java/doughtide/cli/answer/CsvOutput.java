package doughtide.cli.answer;

import de.siegmar.fastcsv.writer.CsvWriter;
import de.siegmar.fastcsv.writer.LineDelimiter;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.io.Writer;
import java.util.ArrayList;
import java.util.List;

/**
 * Writes CSV (RFC 4180, lines end with LF). Text that a spreadsheet would run as a formula is
 * defused by an apostrophe.
 */
public final class CsvOutput {

  private final CsvWriter csv;
  private final Writer writer;
  private final List<String> row = new ArrayList<>();

  public CsvOutput(Writer writer) {
    this.writer = writer;
    this.csv = CsvWriter.builder().lineDelimiter(LineDelimiter.LF).build(writer);
  }

  /** A whole row of text, such as the names of the columns. */
  public CsvOutput header(String... names) {
    csv.writeRecord(names);
    return this;
  }

  /** A cell of text, from wherever it came. */
  public CsvOutput text(String text) {
    row.add(defused(text));
    return this;
  }

  /** A cell with a number; empty if it is not finite. */
  public CsvOutput number(double number, int decimals) {
    row.add(Double.isFinite(number) ? JsonWriter.number(number, decimals) : "");
    return this;
  }

  /** A cell with a number as it is written. */
  CsvOutput number(String number) {
    row.add(number);
    return this;
  }

  /** Ends the row. */
  public CsvOutput endRow() {
    csv.writeRecord(row);
    row.clear();
    return this;
  }

  /** Hands everything on to the writer. */
  public void flush() {
    try {
      csv.flush();
      writer.flush();
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  private static String defused(String text) {
    // The wide forms of East Asian keyboards open a formula in some spreadsheets, too.
    boolean formula = !text.isEmpty() && "=+-@\t\r\n＝＋－＠".indexOf(text.charAt(0)) >= 0;
    return formula ? "'" + text : text;
  }
}
