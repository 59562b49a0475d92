package doughtide.core.document;

import doughtide.core.Internal;
import doughtide.core.document.DocumentReader.Line;
import doughtide.core.document.DocumentReader.Use;
import doughtide.core.flourtrial.AbsorptionFit;
import doughtide.core.flourtrial.Grade;
import doughtide.core.flourtrial.GradedBowl;
import doughtide.core.quantity.Checks;
import doughtide.core.quantity.InputException;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Iterator;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/**
 * The grades of a flour trial as text: one bowl a line, in the columns trial, person, hydration in
 * per cent and grade.
 *
 * <p>Columns are parted by semicolons, tabs or commas; the hydration may have a decimal point or
 * comma and a per cent sign. A line that names the columns may stand first, and then they may come
 * in any order.
 *
 * <pre>{@code
 * String text = "trial;person;hydration %;grade\n6 March;Ann;72;thin window";
 * List<GradedBowl> bowls = BowlsDocument.read(text.lines().iterator(), Vocabulary.KEYS_ONLY);
 * }</pre>
 */
@Internal
public final class BowlsDocument {

  private static final List<String> COLUMNS = List.of("trial", "person", "hydration", "grade");
  private static final List<String> GRADES =
      Arrays.stream(Grade.values()).map(grade -> Vocabulary.plain(grade.name())).toList();
  private static final String WANTED = "trial, person, hydration %, grade";

  private BowlsDocument() {}

  /**
   * Reads the grades.
   *
   * @param lines the text, without line endings, at most 5000 grades
   * @param vocabulary words for columns and grades
   * @return the grades in the order of the lines
   * @throws InputException for the first line that cannot be used, with its number, or if there is
   *     no grade
   */
  public static List<GradedBowl> read(Iterator<String> lines, Vocabulary vocabulary) {
    DocumentReader reader = new DocumentReader(lines, Map.of("note", Use.REMARK), vocabulary);
    List<GradedBowl> bowls = new ArrayList<>();
    List<String> order = COLUMNS;
    Optional<Line> line = reader.headWhileKnown();
    List<String> named = line.map(first -> columns(first, vocabulary)).orElse(List.of());
    if (!named.isEmpty()) {
      order = named;
      line = reader.next();
    }
    for (; line.isPresent(); line = reader.next()) {
      bowls.add(bowl(line.get(), order, vocabulary));
      if (bowls.size() > AbsorptionFit.MOST_BOWLS) {
        throw new LineException(
            line.get().number(),
            "more than " + AbsorptionFit.MOST_BOWLS + " grades: split the file");
      }
    }
    if (bowls.isEmpty()) {
      throw new InputException("bowls.none", "no grade found: write one a line as " + WANTED);
    }
    return List.copyOf(bowls);
  }

  /** The columns that a line names; empty if it is not a line of names. */
  private static List<String> columns(Line line, Vocabulary vocabulary) {
    List<String> named = new ArrayList<>();
    for (String cell : DocumentReader.at(line.number(), () -> cells(line.text()))) {
      vocabulary
          .meant(Vocabulary.Kind.COLUMN, cell.replaceFirst(" ?%$", ""), COLUMNS)
          .ifPresent(named::add);
    }
    return named.containsAll(COLUMNS) && named.size() == COLUMNS.size() ? named : List.of();
  }

  private static GradedBowl bowl(Line line, List<String> order, Vocabulary vocabulary) {
    return DocumentReader.at(line.number(), () -> bowl(line.text(), order, vocabulary));
  }

  /** One bowl in the usual order of columns. */
  static GradedBowl bowl(String text, Vocabulary vocabulary) {
    return bowl(text, COLUMNS, vocabulary);
  }

  private static GradedBowl bowl(String text, List<String> order, Vocabulary vocabulary) {
    List<String> cells = cells(text);
    if (cells.size() != COLUMNS.size()) {
      throw new InputException(
          "bowls.columns",
          cells.size()
              + (cells.size() == 1 ? " column" : " columns")
              + ", there must be 4: "
              + WANTED);
    }
    String grade = cells.get(order.indexOf("grade"));
    return new GradedBowl(
        cells.get(order.indexOf("trial")),
        cells.get(order.indexOf("person")),
        percent(cells.get(order.indexOf("hydration"))),
        Grade.named(vocabulary.meant(Vocabulary.Kind.GRADE, grade, GRADES).orElse(grade)));
  }

  private static List<String> cells(String line) {
    char separator = CsvCells.separator(line);
    List<String> cells =
        CsvCells.of(line.replaceAll("([;,\t]) +\"", "$1\""), separator).stream()
            .map(String::strip)
            .toList();
    boolean cut = separator == ',' && cells.size() == COLUMNS.size() + 1;
    return cut && isDecimalComma(cells)
        ? List.of(cells.get(0), cells.get(1), cells.get(2) + "." + cells.get(3), cells.get(4))
        : cells;
  }

  /** A hydration such as 72,5 that the comma cut in two. */
  private static boolean isDecimalComma(List<String> cells) {
    return cells.get(2).matches("\\d{1,3}") && cells.get(3).matches("\\d{1,4}\\s*%?");
  }

  private static double percent(String text) {
    String number = text.replace("%", "").replace(',', '.').strip();
    if (!number.matches("\\d{1,6}(\\.\\d{1,9})?")) {
      throw new InputException(
          "bowls.hydration",
          "hydration '" + text + "' is not a number: write for example 72 or 72.5");
    }
    return Double.parseDouble(number);
  }

  /** The grades as text, which {@link #read} reads back. */
  public static String text(List<GradedBowl> bowls) {
    StringBuilder text = new StringBuilder("trial;person;hydration %;grade\n");
    bowls.forEach(bowl -> text.append(text(bowl)).append('\n'));
    return text.toString();
  }

  static String text(GradedBowl bowl) {
    return CsvCells.quoted(bowl.trial(), ';')
        + "; "
        + CsvCells.quoted(bowl.person(), ';')
        + "; "
        + Checks.plain(bowl.hydrationPercent())
        + "%; "
        + bowl.grade().key();
  }
}
