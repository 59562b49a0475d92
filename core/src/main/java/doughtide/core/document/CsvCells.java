package doughtide.core.document;

import doughtide.core.Internal;
import doughtide.core.quantity.InputException;
import java.util.ArrayList;
import java.util.List;

/** The cells of one line of CSV (RFC 4180), whatever separates them. */
@Internal
public final class CsvCells {

  private final String line;
  private final char separator;
  private final List<String> cells = new ArrayList<>();
  private int at;

  private CsvCells(String line, char separator) {
    this.line = line;
    this.separator = separator;
  }

  /**
   * The cells of a line.
   *
   * @param line without its ending
   * @param separator for example a comma, a semicolon or a tab
   * @throws InputException if its quotation marks do not pair
   */
  public static List<String> of(String line, char separator) {
    boolean marked = line.indexOf('"') >= 0;
    if (marked && line.chars().filter(c -> c == '"').count() % 2 != 0) {
      throw new InputException(
          "csv.open-quote",
          "a quotation mark is not closed: close it on the same line or leave it out");
    }
    return new CsvCells(line, separator).split();
  }

  /** The separator that a line of names uses: a semicolon, else a tab, else a comma. */
  static char separator(String heading) {
    if (heading.indexOf(';') >= 0) {
      return ';';
    }
    return heading.indexOf('\t') >= 0 ? '\t' : ',';
  }

  /** A cell as it is written: in quotation marks where it would be read as something else. */
  static String quoted(String cell, char separator) {
    boolean plain = cell.indexOf(separator) < 0 && cell.indexOf('"') < 0 && !cell.startsWith("#");
    return plain ? cell : '"' + cell.replace("\"", "\"\"") + '"';
  }

  private List<String> split() {
    do {
      cells.add(at < line.length() && line.charAt(at) == '"' ? quoted() : bare());
    } while (at++ < line.length());
    return cells;
  }

  private String bare() {
    int from = at;
    int to = line.indexOf(separator, from);
    at = to < 0 ? line.length() : to;
    return line.substring(from, at);
  }

  private String quoted() {
    StringBuilder cell = new StringBuilder();
    for (at++; at < line.length(); at++) {
      boolean mark = line.charAt(at) == '"';
      boolean twice = mark && at + 1 < line.length() && line.charAt(at + 1) == '"';
      if (mark && !twice) {
        return ended(cell.toString());
      }
      cell.append(line.charAt(at));
      at += twice ? 1 : 0;
    }
    return ended(cell.toString());
  }

  /** Steps over the closing mark, behind which the cell must end. */
  private String ended(String cell) {
    at++;
    if (at < line.length() && line.charAt(at) != separator) {
      throw new InputException(
          "csv.text-after-quote",
          "text stands after a closing quotation mark: put the whole cell into marks, and write"
              + " each mark inside it twice");
    }
    return cell;
  }
}
