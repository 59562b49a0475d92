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
 * When a starter is ripe and when it begins to fall, by feed and temperature, in type to be read
 * from a distance.
 *
 * @param title of the page
 * @param notes which starter and flour
 * @param feeds heads of the columns: parts of starter, flour and water
 * @param celsius temperatures of the rows, °C
 * @param cells by row, then by column
 * @param cautions those that apply
 */
@Internal
public record StarterPage(
    String title,
    List<String> notes,
    List<String> feeds,
    List<Double> celsius,
    List<List<Cell>> cells,
    List<String> cautions)
    implements Handout {
  private static final double MOST_SCALE = 2.2;

  /**
   * Hours after feeding.
   *
   * @param ripe when it becomes ripe, absent when it does not in the time looked at
   * @param falling when it begins to fall
   */
  @Internal
  public record Cell(Optional<TimeSpan> ripe, Optional<TimeSpan> falling) {}

  /** Checks that there is a cell for every temperature and feed. */
  public StarterPage {
    notes = List.copyOf(notes);
    feeds = List.copyOf(feeds);
    celsius = List.copyOf(celsius);
    cautions = List.copyOf(cautions);
    cells = cells.stream().map(List::copyOf).toList();
    int wanted = feeds.size();
    if (cells.size() != celsius.size() || cells.stream().anyMatch(r -> r.size() != wanted)) {
      throw new IllegalArgumentException("a cell is needed for every temperature and feed");
    }
  }

  @Override
  public List<Page> pages(PageFormat format, Words words, LocalDate date) {
    return WallTable.sides(format, each -> page(each, words, date));
  }

  private Page page(PageFormat format, Words words, LocalDate date) {
    Page page = new Page(format, words, title, date);
    notes.forEach(page::paragraph);
    page.largeTable(table(words), MOST_SCALE);
    cautions.forEach(page::caution);
    return page;
  }

  private Table table(Words words) {
    return WallTable.of(
        words.say("starter.jar"), feeds, celsius, cells, words, cell -> text(cell, words));
  }

  private static String text(Cell cell, Words words) {
    if (cell.ripe().isEmpty()) {
      return words.say("hours.never");
    }
    String ripe = words.quarterHours(cell.ripe().get());
    return cell.falling().map(f -> ripe + "\n→\u00a0" + words.quarterHours(f)).orElse(ripe);
  }
}
