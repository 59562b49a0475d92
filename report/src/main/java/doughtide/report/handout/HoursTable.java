package doughtide.report.handout;

import doughtide.report.page.Page;
import doughtide.report.page.PageFormat;
import doughtide.report.page.Table;
import doughtide.report.words.TimeSpan;
import doughtide.report.words.Words;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/**
 * Hours by temperature and by something else, early to late in each cell, in type large enough to
 * be read from a metre away. Serves for the rise of a dough and for the ripening of a starter.
 *
 * @param title what the hours lead to
 * @param notes formula and conditions, printed under the title
 * @param across what the columns stand for, for example the starter share in both conventions
 * @param columns their heads
 * @param celsius dough temperatures of the rows, °C
 * @param cells by row, then by column; absent where the mark is not reached
 * @param cautions those that apply
 */
public record HoursTable(
    String title,
    List<String> notes,
    String across,
    List<String> columns,
    List<Double> celsius,
    List<List<Optional<TimeSpan>>> cells,
    List<String> cautions)
    implements Handout {

  private static final double MOST_SCALE = 2.4;

  /** Checks that there is a cell for every temperature and column. */
  public HoursTable {
    notes = List.copyOf(notes);
    columns = List.copyOf(columns);
    celsius = List.copyOf(celsius);
    cautions = List.copyOf(cautions);
    cells = cells.stream().map(List::copyOf).toList();
    int wanted = columns.size();
    if (cells.size() != celsius.size() || cells.stream().anyMatch(r -> r.size() != wanted)) {
      throw new IllegalArgumentException("a cell is needed for every temperature and column");
    }
  }

  /** The one page, which lies on its side unless only an upright one has the room. */
  @Override
  public List<Page> pages(PageFormat format, Words words, LocalDate date) {
    Page sideways = page(format.sideways(), words, date);
    return sideways.fits() ? List.of(sideways) : page(format, words, date).sides();
  }

  private Page page(PageFormat format, Words words, LocalDate date) {
    Page page = new Page(format, words, title, date);
    notes.forEach(page::paragraph);
    page.paragraph(words.say("hours.explain", java.util.Map.of("across", across)));
    page.largeTable(table(words), MOST_SCALE);
    cautions.forEach(page::caution);
    return page;
  }

  private Table table(Words words) {
    List<Table.Column> heads = new ArrayList<>();
    heads.add(new Table.Column(words.say("hours.temperature"), 1.3, Table.Kind.STRONG));
    columns.forEach(head -> heads.add(new Table.Column(head, 1, Table.Kind.TEXT)));
    List<List<String>> rows = new ArrayList<>();
    for (int i = 0; i < celsius.size(); i++) {
      List<String> row = new ArrayList<>();
      row.add(words.temperature(celsius.get(i)));
      for (Optional<TimeSpan> cell : cells.get(i)) {
        row.add(cell.map(c -> words.quarterHours(c)).orElseGet(() -> words.say("hours.never")));
      }
      rows.add(row);
    }
    return new Table(heads, rows);
  }
}
