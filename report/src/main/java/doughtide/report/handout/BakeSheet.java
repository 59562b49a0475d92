package doughtide.report.handout;

import doughtide.core.Internal;
import doughtide.report.chart.PrintedChart;
import doughtide.report.chart.RiseChart;
import doughtide.report.chart.RiseChartData;
import doughtide.report.page.Page;
import doughtide.report.page.PageFormat;
import doughtide.report.page.Table;
import doughtide.report.words.TimeSpan;
import doughtide.report.words.Words;
import java.time.LocalDate;
import java.time.ZonedDateTime;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/**
 * One dough on one side: what it is made of, its chart, the steps of the day with boxes to tick and
 * room for own readings beside what was predicted.
 *
 * @param answer when to shape and at which height of the jar, or when it has risen by half where
 *     nothing is said of a loaf, in a sentence; empty if unknown
 * @param rise the forecast; its title names the dough, its subtitle the formula and temperatures
 * @param steps in order
 * @param cautions those that apply to this dough
 */
public record BakeSheet(
    Optional<String> answer,
    @Internal RiseChartData rise,
    @Internal List<Step> steps,
    List<String> cautions)
    implements Handout {

  /** Height of the chart, in sizes of the text. */
  private static final int TALLEST_LINES = 25;

  private static final int LEAST_LINES = 11;

  /**
   * Copies the lists.
   *
   * @param answer when to shape and at which height of the jar, or when it has risen by half where
   *     nothing is said of a loaf, in a sentence; empty if unknown
   * @param rise the forecast; its title names the dough, its subtitle the formula and temperatures
   * @param steps in order
   * @param cautions those that apply to this dough
   */
  public BakeSheet {
    steps = List.copyOf(steps);
    cautions = List.copyOf(cautions);
  }

  /**
   * A step of the day.
   *
   * @param name what to do
   * @param when hours after mixing
   * @param forecast what is to be seen then, for example the rise; may be empty
   * @hidden
   */
  @Internal
  public record Step(String name, TimeSpan when, String forecast) {}

  @Internal
  @Override
  public List<Page> pages(PageFormat format, Words words, LocalDate date) {
    PrintedChart chart = RiseChart.withoutHead(rise, words);
    for (int lines = TALLEST_LINES; lines >= LEAST_LINES; lines -= 2) {
      Page whole = day(drawn(chart, lines, empty(format, words, date), words), words);
      if (whole.fits()) {
        return List.of(whole);
      }
    }
    return Page.sidesOf(
        drawn(chart, LEAST_LINES, empty(format, words, date), words),
        day(empty(format, words, date), words));
  }

  private Page empty(PageFormat format, Words words, LocalDate date) {
    return new Page(format, words, rise.title(), date);
  }

  @Override
  public List<NamedChart> charts(Words words) {
    return List.of(
        new NamedChart("rise", RiseChart.of(rise, words), RiseChart.caption(rise, words)));
  }

  private Page drawn(PrintedChart chart, int lines, Page page, Words words) {
    answer.ifPresent(page::strong);
    rise.subtitle().forEach(page::paragraph);
    page.chart(
        chart, (lines + rows()) * page.sizePt(), RiseChart.caption(rise, words).description());
    rise.warnings().forEach(page::paragraph);
    return page;
  }

  /** What stands above and below the plot itself: clock times, temperature, shape point. */
  private double rows() {
    return (rise.mixedAt().isPresent() ? 2.6 : 0)
        + (rise.temperature().isPresent() ? 4 : 0)
        + (rise.shape().isPresent() ? 1.4 : 0);
  }

  private Page day(Page page, Words words) {
    page.table(table(words));
    cautions.forEach(page::caution);
    return page.writingRoom(words.say("sheet.notes"), 1);
  }

  /** The steps of the day with boxes to tick, and room for one's own times and readings. */
  Table table(Words words) {
    Optional<ZonedDateTime> mixedAt = rise.mixedAt();
    List<Table.Column> columns =
        List.of(
            new Table.Column("", 1, Table.Kind.TICK),
            new Table.Column(words.say("sheet.step"), 8, Table.Kind.TEXT),
            new Table.Column(
                words.say(mixedAt.isPresent() ? "sheet.clock" : "sheet.hours"),
                6.5,
                Table.Kind.STRONG),
            new Table.Column(words.say("sheet.forecast"), 5, Table.Kind.TEXT),
            new Table.Column(words.say("sheet.myTime"), 4, Table.Kind.WRITE),
            new Table.Column(words.say("sheet.myReading"), 6, Table.Kind.WRITE));
    List<List<String>> rows = new ArrayList<>();
    for (Step step : steps) {
      rows.add(List.of("", step.name(), when(step, mixedAt, words), step.forecast(), "", ""));
    }
    return new Table(columns, rows);
  }

  private static String when(Step step, Optional<ZonedDateTime> mixedAt, Words words) {
    return mixedAt
        .map(mixed -> RiseChart.clockTimes(step.when(), mixed, words))
        .map(BakeSheet::unbroken)
        .map(text -> text.replace("\u00a0(", " ("))
        .orElseGet(() -> words.hoursSpan(step.when()));
  }

  private static String unbroken(String text) {
    return text.replace(' ', '\u00a0');
  }
}
