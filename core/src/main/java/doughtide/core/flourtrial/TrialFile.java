package doughtide.core.flourtrial;

import doughtide.core.quantity.InputException;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;

/**
 * The lines of a trial's text: one grade a line, in the columns trial, person, hydration in per
 * cent, grade.
 *
 * <p>Columns are parted by semicolons, tabs or commas; the hydration may have a decimal point or
 * comma and a per cent sign. A heading line, blank lines and lines that begin with # are passed
 * over; so is a byte order mark, and a carriage return at the end of a line.
 */
public final class TrialFile {
  private static final int COLUMNS = 4;
  private static final String BYTE_ORDER_MARK = "\uFEFF";

  private TrialFile() {}

  /**
   * Reads the grades.
   *
   * @param lines the text, line by line, at most 5000 grades
   * @return the grades in the order of the lines
   * @throws InputException for the first line that cannot be used, with its number, or if there is
   *     no grade
   */
  public static List<GradedBowl> parse(Iterable<String> lines) {
    List<GradedBowl> bowls = new ArrayList<>();
    int number = 0;
    for (String raw : lines) {
      number++;
      String line = (number == 1 ? withoutMark(raw) : raw).strip();
      if (line.isEmpty() || line.startsWith("#") || isHeading(line, bowls)) {
        continue;
      }
      bowls.add(atLine(number, line));
      if (bowls.size() > AbsorptionFit.MOST_BOWLS) {
        throw new InputException(
            "trial-file.too-long",
            "line "
                + number
                + ": more than "
                + AbsorptionFit.MOST_BOWLS
                + " grades: split the file");
      }
    }
    if (bowls.isEmpty()) {
      throw new InputException(
          "trial-file.empty",
          "no grade found: write one a line as trial, person, hydration %, grade");
    }
    return List.copyOf(bowls);
  }

  private static String withoutMark(String line) {
    return line.startsWith(BYTE_ORDER_MARK) ? line.substring(1) : line;
  }

  /** A first line that names its columns. */
  private static boolean isHeading(String line, List<GradedBowl> before) {
    List<String> fields = fields(line);
    return before.isEmpty()
        && fields.size() == COLUMNS
        && fields.get(2).toLowerCase(Locale.ROOT).contains("hydration")
        && fields.get(3).toLowerCase(Locale.ROOT).startsWith("grade");
  }

  private static GradedBowl atLine(int number, String line) {
    List<String> fields = fields(line);
    if (fields.size() != COLUMNS) {
      throw new InputException(
          "trial-file.columns",
          "line "
              + number
              + ": "
              + fields.size()
              + (fields.size() == 1 ? " column" : " columns")
              + ", there must be 4: trial, person, hydration %, grade");
    }
    try {
      return new GradedBowl(
          fields.get(0), fields.get(1), percent(fields.get(2)), Grade.named(fields.get(3)));
    } catch (InputException cause) {
      throw cause.inWords("line " + number + ": " + cause.getMessage());
    }
  }

  private static List<String> fields(String line) {
    char separator = line.indexOf(';') >= 0 ? ';' : line.indexOf('\t') >= 0 ? '\t' : ',';
    List<String> fields = split(line, separator);
    if (separator == ',' && fields.size() == COLUMNS + 1 && isDecimalComma(fields)) {
      String joined = fields.get(2) + "." + fields.get(3);
      return List.of(fields.get(0), fields.get(1), joined, fields.get(4));
    }
    return fields;
  }

  /** A hydration such as 72,5 that the comma cut in two. */
  private static boolean isDecimalComma(List<String> fields) {
    return fields.get(2).matches("\\d{1,3}") && fields.get(3).matches("\\d{1,4}\\s*%?");
  }

  private static List<String> split(String line, char separator) {
    List<String> fields = new ArrayList<>();
    StringBuilder field = new StringBuilder();
    boolean quoted = false;
    for (int i = 0; i < line.length(); i++) {
      char each = line.charAt(i);
      if (each == '"') {
        quoted = !quoted;
      } else if (each == separator && !quoted) {
        fields.add(field.toString().strip());
        field.setLength(0);
      } else {
        field.append(each);
      }
    }
    fields.add(field.toString().strip());
    return fields;
  }

  private static double percent(String text) {
    String number = text.replace("%", "").replace(',', '.').strip();
    if (!number.matches("\\d{1,6}(\\.\\d{1,9})?")) {
      throw new InputException(
          "trial-file.hydration",
          "hydration '" + text + "' is not a number: write for example 72 or 72.5");
    }
    return Double.parseDouble(number);
  }
}
