package doughtide.core.document;

import doughtide.core.Internal;
import doughtide.core.document.DocumentReader.Entry;
import doughtide.core.document.DocumentReader.Line;
import doughtide.core.document.DocumentReader.Use;
import doughtide.core.dough.Flour;
import doughtide.core.quantity.InputException;
import doughtide.core.quantity.Quantities;
import doughtide.core.quantity.SentRecord;
import doughtide.core.quantity.Shorten;
import java.io.Serializable;
import java.util.ArrayList;
import java.util.Iterator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Consumer;

/**
 * Who is in a class and what each makes: lines {@code key: value} about all, then a table with a
 * heading and a student a line. The columns are name, dough, flour, loaves and language, in any
 * order; only the name is needed. What a cell leaves out is what the head says of all, or the
 * usual: one loaf of the one dough.
 *
 * <pre>{@code
 * String text = "class: Quayside bread class\nlanguage: de\nname;dough;loaves\nAnn;country;2\nBo;rye;1";
 * RosterDocument roster =
 *     RosterDocument.read(text.lines().iterator(), Catalogue.standard());
 * int loaves = roster.entries().get(0).loaves(); // 2
 * }</pre>
 *
 * @param className what the class is called, as typed; empty if the roster does not say
 * @param entries the students in the order of the lines; no two have one name
 */
@Internal
public record RosterDocument(Optional<String> className, List<RosterEntry> entries)
    implements Serializable {

  /** The dough of a student for whom the roster names none. */
  public static final String USUAL_DOUGH = "dough";

  /** Most students. */
  public static final int MOST_ENTRIES = 200;

  private static final String NAME = "name";
  private static final String DOUGH = "dough";
  private static final String FLOUR = "flour";
  private static final String LOAVES = "loaves";
  private static final String LANGUAGE = "language";
  private static final String CLASS = "class";
  private static final List<String> COLUMNS = List.of(NAME, DOUGH, FLOUR, LOAVES, LANGUAGE);
  private static final int LONGEST_CLASS = 80;

  /**
   * @throws InputException if there is no student or more than 200, or two have one name
   */
  public RosterDocument {
    entries = List.copyOf(entries);
    if (entries.isEmpty() || entries.size() > MOST_ENTRIES) {
      throw new InputException(
          "roster.size",
          "a roster has 1 to "
              + MOST_ENTRIES
              + " students, this one has "
              + entries.size()
              + ": write a line for each under the heading");
    }
    for (int i = 0; i < entries.size(); i++) {
      checkNew(entries.get(i), entries.subList(0, i));
    }
  }

  private static void checkNew(RosterEntry entry, List<RosterEntry> before) {
    if (before.stream().anyMatch(each -> each.name().equals(entry.name()))) {
      throw new InputException(
          "roster.twice",
          "the name '"
              + entry.name()
              + "' stands there twice: tell them apart, for example by a letter");
    }
  }

  /** All loaves of the class. */
  public int loaves() {
    return entries.stream().mapToInt(RosterEntry::loaves).sum();
  }

  /**
   * Reads a roster.
   *
   * @param lines the text, without line endings
   * @param catalogue the flours that can be named, and words for keys and columns
   * @throws LineException for a line that cannot be used, with its number
   * @throws InputException if there is no heading or no student, or two have one name
   */
  public static RosterDocument read(Iterator<String> lines, Catalogue catalogue) {
    return read(lines, catalogue, tag -> {});
  }

  /**
   * Reads a roster for whoever writes in some languages only.
   *
   * @param lines the text, without line endings
   * @param catalogue the flours that can be named, and words for keys and columns
   * @param languages refuses a language that there is not, with an {@link InputException}
   * @throws LineException for a line that cannot be used, with its number
   * @throws InputException if there is no heading or no student, or two have one name
   */
  public static RosterDocument read(
      Iterator<String> lines, Catalogue catalogue, Consumer<String> languages) {
    return new TextReader(lines, catalogue, languages).read();
  }

  /** Reads one text. */
  private static final class TextReader {
    private final DocumentReader reader;
    private final Catalogue catalogue;
    private final Consumer<String> languages;
    private final List<RosterEntry> entries = new ArrayList<>();
    private List<String> columns = List.of();
    private char separator;

    TextReader(Iterator<String> lines, Catalogue catalogue, Consumer<String> languages) {
      Map<String, Use> keys = new LinkedHashMap<>();
      for (String key : List.of(CLASS, DOUGH, FLOUR, LOAVES, LANGUAGE)) {
        keys.put(key, Use.ONCE);
      }
      keys.put("note", Use.REMARK);
      this.reader = new DocumentReader(lines, keys, catalogue.vocabulary());
      this.catalogue = catalogue;
      this.languages = languages;
    }

    RosterDocument read() {
      Line heading =
          reader
              .head(this::isHeading)
              .orElseThrow(
                  () ->
                      new InputException(
                          "roster.no-table",
                          "there is no table: it begins with a line such as"
                              + " 'name;dough;flour;loaves;language'"));
      separator = CsvCells.separator(heading.text());
      columns = DocumentReader.at(heading.number(), () -> columns(heading.text()));
      checkHead();
      for (Optional<Line> line = reader.next(); line.isPresent(); line = reader.next()) {
        take(line.get());
      }
      return new RosterDocument(className(), entries);
    }

    private boolean isHeading(String line) {
      char mark = CsvCells.separator(line);
      return line.indexOf(':') < 0
          && CsvCells.of(line, mark).stream().anyMatch(cell -> column(cell).equals(NAME));
    }

    private String column(String cell) {
      return catalogue.vocabulary().meant(Vocabulary.Kind.COLUMN, cell, COLUMNS).orElse("");
    }

    private List<String> columns(String heading) {
      List<String> found = new ArrayList<>();
      for (String cell : CsvCells.of(heading, separator)) {
        String column = column(cell);
        if (column.isEmpty() && !cell.isBlank()) {
          throw new InputException(
              "roster.column-unknown",
              "the column '"
                  + Shorten.to(cell.strip(), 40)
                  + "' is not known: the columns are "
                  + String.join(", ", COLUMNS));
        }
        if (!column.isEmpty() && found.contains(column)) {
          throw new InputException(
              "roster.column-twice", "the column '" + column + "' stands there twice: keep one");
        }
        found.add(column);
      }
      return found;
    }

    /** What the head says of all is read once, so that its line is named. */
    private void checkHead() {
      reader.entry(FLOUR).ifPresent(entry -> entry.read(this::flour));
      reader.entry(LOAVES).ifPresent(entry -> entry.read(TextReader::loaves));
      reader.entry(LANGUAGE).ifPresent(entry -> entry.read(this::language));
    }

    private Optional<String> className() {
      return reader.value(CLASS, text -> Shorten.to(text.strip(), LONGEST_CLASS));
    }

    private void take(Line line) {
      if (entries.size() == MOST_ENTRIES) {
        throw new LineException(
            line.number(), "more than " + MOST_ENTRIES + " students: split the roster");
      }
      RosterEntry entry = DocumentReader.at(line.number(), () -> entry(line.text()));
      DocumentReader.at(
          line.number(),
          () -> {
            checkNew(entry, entries);
            return entry;
          });
      entries.add(entry);
    }

    private RosterEntry entry(String text) {
      Map<String, String> cells = cells(text);
      Optional<String> flour = cell(cells, FLOUR);
      return new RosterEntry(
          cells.getOrDefault(NAME, ""),
          cell(cells, DOUGH).orElse(USUAL_DOUGH),
          flour.map(this::flour),
          cell(cells, LOAVES).map(TextReader::loaves).orElse(1),
          cell(cells, LANGUAGE).map(this::language));
    }

    /** By column; what stands behind the last one is refused. */
    private Map<String, String> cells(String text) {
      List<String> cells = CsvCells.of(text, separator);
      Map<String, String> byColumn = new LinkedHashMap<>();
      for (int i = 0; i < cells.size(); i++) {
        String cell = cells.get(i).strip();
        if (i >= columns.size() && !cell.isEmpty()) {
          throw new InputException(
              "roster.cells",
              "the line has more cells than the heading: put a cell that holds a '"
                  + separator
                  + "' into quotation marks");
        }
        if (!cell.isEmpty() && !columns.get(i).isEmpty()) {
          byColumn.put(columns.get(i), cell);
        }
      }
      return byColumn;
    }

    private Optional<String> cell(Map<String, String> cells, String column) {
      return Optional.ofNullable(cells.get(column))
          .or(() -> reader.entry(column).map(Entry::value));
    }

    private Flour flour(String text) {
      return catalogue.flour(FLOUR, text);
    }

    private static int loaves(String text) {
      return Quantities.count(LOAVES, text, 1, RosterEntry.MOST_LOAVES);
    }

    private String language(String text) {
      String plain = Vocabulary.plain(text);
      languages.accept(plain);
      return plain;
    }
  }

  /** The roster as text, which {@link #read} reads back; a flour is told by its classes. */
  public String text() {
    DocumentText head = new DocumentText("roster");
    head.line(CLASS, className);
    StringBuilder text = new StringBuilder(head.toString());
    text.append(String.join(";", COLUMNS)).append('\n');
    entries.forEach(entry -> text.append(line(entry)).append('\n'));
    return text.toString();
  }

  private static String line(RosterEntry entry) {
    return CsvCells.quoted(entry.name(), ';')
        + ";"
        + CsvCells.quoted(entry.dough(), ';')
        + ";"
        + entry.flour().map(Catalogue::text).orElse("")
        + ";"
        + entry.loaves()
        + ";"
        + entry.language().orElse("");
  }

  private Object writeReplace() {
    return SentRecord.of(this);
  }
}
