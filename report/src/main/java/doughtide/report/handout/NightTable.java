package doughtide.report.handout;

import doughtide.core.Internal;
import doughtide.report.page.Page;
import doughtide.report.page.PageFormat;
import doughtide.report.page.Table;
import doughtide.report.words.TimeSpan;
import doughtide.report.words.Words;
import java.time.LocalDate;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/**
 * At which rise and hour to shape before a night in the cold, by dough temperature and starter
 * share, for the wall beside an {@link HoursTable}.
 *
 * @param title which night
 * @param notes formula and loaf, printed under the title
 * @param across what the columns stand for
 * @param columns their heads
 * @param celsius dough temperatures of the rows, °C
 * @param cells by row, then by column; absent where there is no hour to shape
 * @param cautions those that apply
 */
@Internal
public record NightTable(
    String title,
    List<String> notes,
    String across,
    List<String> columns,
    List<Double> celsius,
    List<List<Optional<Cell>>> cells,
    List<String> cautions)
    implements Handout {
  private static final double MOST_SCALE = 2.4;

  /**
   * When to shape.
   *
   * @param jarPercent rise of the sample jar that shows it
   * @param hours after mixing
   */
  record Cell(double jarPercent, TimeSpan hours) {}

  /** Copies the lists. */
  public NightTable {
    notes = List.copyOf(notes);
    columns = List.copyOf(columns);
    celsius = List.copyOf(celsius);
    cells = cells.stream().map(List::copyOf).toList();
    cautions = List.copyOf(cautions);
  }

  @Override
  public List<Page> pages(PageFormat format, Words words, LocalDate date) {
    return WallTable.sides(format, each -> page(each, words, date));
  }

  private Page page(PageFormat format, Words words, LocalDate date) {
    Page page = new Page(format, words, title, date);
    notes.forEach(page::paragraph);
    page.paragraph(words.say("night.explain", Map.of("across", across)));
    page.largeTable(table(words), MOST_SCALE);
    cautions.forEach(page::caution);
    return page;
  }

  private Table table(Words words) {
    return WallTable.of(
        words.say("hours.temperature"), columns, celsius, cells, words, cell -> text(cell, words));
  }

  private static String text(Optional<Cell> cell, Words words) {
    return cell.map(
            each ->
                words.percent(Math.rint(each.jarPercent()), 0)
                    + "\n"
                    + words.quarterHours(each.hours()))
        .orElseGet(() -> words.say("night.none"));
  }
}
