package doughtide.report.handout;

import doughtide.core.Internal;
import doughtide.report.page.Page;
import doughtide.report.page.PageFormat;
import doughtide.report.page.Table;
import doughtide.report.words.TimeSpan;
import doughtide.report.words.Words;
import java.time.LocalDate;
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
@Internal
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

  @Override
  public List<Page> pages(PageFormat format, Words words, LocalDate date) {
    return WallTable.sides(format, each -> page(each, words, date));
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
    return WallTable.of(
        words.say("hours.temperature"), columns, celsius, cells, words, cell -> text(cell, words));
  }

  private static String text(Optional<TimeSpan> cell, Words words) {
    return cell.map(words::quarterHours).orElseGet(() -> words.say("hours.never"));
  }
}
