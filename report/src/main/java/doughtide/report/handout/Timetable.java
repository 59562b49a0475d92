package doughtide.report.handout;

import doughtide.core.day.BakeStep;
import doughtide.core.day.DayStep;
import doughtide.report.page.Page;
import doughtide.report.page.PageFormat;
import doughtide.report.page.Table;
import doughtide.report.words.DayWords;
import doughtide.report.words.Words;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.stream.Collectors;

/**
 * What one person does when on the day of a class, to be read from a distance. What nobody is named
 * for stands on the timetable of each.
 */
final class Timetable {

  private static final double MOST_SCALE = 1.5;

  private final ClassDayPages pages;
  private final int person;
  private final Words words;
  private final DayWords say;

  Timetable(ClassDayPages pages, int person, Words words) {
    this.pages = pages;
    this.person = person;
    this.words = words;
    this.say = new DayWords(words);
  }

  /** How to send the day to telephones stands at the end, unless that alone needs a side. */
  List<Page> sides(PageFormat format, LocalDate date) {
    List<Page> sides = page(format, date).sides();
    List<Page> sent = page(format, date).paragraph(words.say("timetable.send")).sides();
    return sent.size() == sides.size() ? sent : sides;
  }

  private Page page(PageFormat format, LocalDate date) {
    return new Page(format, words, heading(), date)
        .paragraph(pages.title())
        .largeTable(table(), MOST_SCALE);
  }

  private String heading() {
    String who = String.valueOf((char) ('A' + person));
    return pages.day().hands() == 1
        ? words.say("timetable.title")
        : words.say("timetable.titleOf", Map.of("person", who));
  }

  private Table table() {
    boolean several = pages.names().size() > 1;
    List<Table.Column> columns = new ArrayList<>();
    columns.add(new Table.Column("", 1, Table.Kind.TICK));
    columns.add(new Table.Column(words.say("timetable.clock"), 3, Table.Kind.STRONG));
    columns.add(new Table.Column(words.say("sheet.step"), 8, Table.Kind.TEXT));
    if (several) {
      columns.add(new Table.Column(words.say("hours.temperature"), 4, Table.Kind.TEXT));
    }
    return new Table(columns, steps().stream().map(step -> row(step, several)).toList());
  }

  private List<DayStep> steps() {
    return pages.day().steps().stream()
        .filter(step -> step.step().kind().handsOn())
        .filter(step -> step.person() == person || step.person() < 0)
        .toList();
  }

  private List<String> row(DayStep step, boolean several) {
    List<String> row = new ArrayList<>();
    row.add("");
    row.add(pages.clock(step.step().fromHour(), words));
    row.add(what(step));
    if (several) {
      row.add(whose(step));
    }
    return row;
  }

  private String what(DayStep step) {
    String detail = say.detail(pages.day(), step);
    boolean isFold = step.step().kind() == BakeStep.Kind.FOLD;
    boolean isAnyones = step.person() < 0 && pages.day().hands() > 1;
    return say.step(step.step())
        + (isAnyones ? " (" + words.say("timetable.anyone") + ")" : "")
        + (detail.isEmpty() ? "" : isFold ? " (" + detail + ")" : "\n" + detail);
  }

  /** Which doughs; of a load of the oven, how many loaves of each. */
  private String whose(DayStep step) {
    if (step.step().kind() == BakeStep.Kind.BAKE) {
      return pages.day().loads().stream()
          .filter(load -> load.fromHour() == step.step().fromHour())
          .flatMap(load -> load.portions().stream())
          .map(each -> pages.names().get(each.dough()) + " ×\u00a0" + each.loaves())
          .collect(Collectors.joining(", "));
    }
    return step.doughs().stream().map(pages.names()::get).collect(Collectors.joining(", "));
  }
}
