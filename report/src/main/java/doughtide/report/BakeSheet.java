package doughtide.report;

import java.time.LocalDate;
import java.time.ZonedDateTime;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/**
 * One dough on one side: what it is made of, its chart, the steps of the day with boxes to tick and
 * room for own readings beside what was predicted.
 *
 * @param rise the forecast; its title names the dough, its subtitle the formula and temperatures
 * @param steps in order
 * @param cautions those that apply to this dough
 */
public record BakeSheet(RiseChartData rise, List<Step> steps, List<String> cautions) {

  /** Copies the lists. */
  public BakeSheet {
    steps = List.copyOf(steps);
    cautions = List.copyOf(cautions);
  }

  /**
   * A step of the day.
   *
   * @param name what to do
   * @param when hours after mixing
   */
  public record Step(String name, TimeSpan when) {}

  /**
   * One page; in large print two, the second with the steps.
   *
   * @param date printed at the foot
   */
  public List<Page> pages(PageFormat format, Words words, LocalDate date) {
    double size = format.text().sizePt();
    Page page = new Page(format, words, rise.title(), date);
    rise.subtitle().forEach(page::paragraph);
    page.chart(
        RiseChart.withoutHead(rise, words),
        20 * size,
        RiseChart.caption(rise, words).description());
    if (format.text() == PageFormat.TextSize.STANDARD) {
      return List.of(day(page, words));
    }
    return List.of(page, day(new Page(format, words, rise.title(), date), words));
  }

  private Page day(Page page, Words words) {
    page.table(steps(words));
    cautions.forEach(page::caution);
    return page.writingRoom(words.say("sheet.notes"), 1);
  }

  private Table steps(Words words) {
    Optional<ZonedDateTime> mixedAt = rise.mixedAt();
    List<Table.Column> columns = new ArrayList<>();
    columns.add(new Table.Column("", 1, Table.Kind.TICK));
    columns.add(new Table.Column(words.say("sheet.step"), 8, Table.Kind.TEXT));
    columns.add(new Table.Column(words.say("sheet.hours"), 5, Table.Kind.TEXT));
    if (mixedAt.isPresent()) {
      columns.add(new Table.Column(words.say("sheet.clock"), 6, Table.Kind.STRONG));
    }
    columns.add(new Table.Column(words.say("sheet.myTime"), 5, Table.Kind.WRITE));
    columns.add(new Table.Column(words.say("sheet.myReading"), 6, Table.Kind.WRITE));
    List<List<String>> rows = new ArrayList<>();
    for (Step step : steps) {
      List<String> row = new ArrayList<>();
      row.add("");
      row.add(step.name());
      row.add(words.hoursSpan(step.when().earlyHours(), step.when().lateHours()));
      mixedAt.ifPresent(m -> row.add(RiseChart.clockSpan(step.when(), m, words)));
      row.add("");
      row.add("");
      rows.add(row);
    }
    return new Table(columns, rows);
  }
}
