package doughtide.report.handout;

import doughtide.report.page.Page;
import doughtide.report.page.PageFormat;
import doughtide.report.page.Table;
import doughtide.report.words.Words;
import java.util.ArrayList;
import java.util.List;
import java.util.function.Function;

/** What the large tables for the wall share: a temperature a row, and sides that fit. */
final class WallTable {
  private WallTable() {}

  /**
   * One side, which lies on its side unless only an upright one has the room; where neither has,
   * the table is parted.
   *
   * @param page makes the page in a format
   */
  static List<Page> sides(PageFormat format, Function<PageFormat, Page> page) {
    Page sideways = page.apply(format.sideways());
    return sideways.fits() ? List.of(sideways) : page.apply(format).sides();
  }

  /**
   * The table.
   *
   * @param corner over the temperatures
   * @param heads of the other columns
   * @param celsius temperatures of the rows, °C
   * @param cells by row, then by column
   * @param text of a cell
   */
  static <C> Table of(
      String corner,
      List<String> heads,
      List<Double> celsius,
      List<List<C>> cells,
      Words words,
      Function<C, String> text) {
    List<Table.Column> columns = new ArrayList<>();
    columns.add(new Table.Column(corner, 1.3, Table.Kind.STRONG));
    heads.forEach(head -> columns.add(new Table.Column(head, 1, Table.Kind.TEXT)));
    List<List<String>> rows = new ArrayList<>();
    for (int i = 0; i < celsius.size(); i++) {
      List<String> row = new ArrayList<>();
      row.add(words.temperature(celsius.get(i)));
      cells.get(i).forEach(cell -> row.add(text.apply(cell)));
      rows.add(row);
    }
    return new Table(columns, rows);
  }
}
