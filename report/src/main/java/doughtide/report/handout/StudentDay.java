package doughtide.report.handout;

import doughtide.core.day.BakePlan;
import doughtide.core.day.BakeStep;
import doughtide.core.day.DayStep;
import doughtide.core.forecast.TimeWindow;
import doughtide.core.quantity.Hours;
import doughtide.report.page.Table;
import doughtide.report.words.DayWords;
import doughtide.report.words.ShapeWords;
import doughtide.report.words.Words;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Collectors;

/** What a dough of a class's day says on the page of a student who makes it. */
final class StudentDay {

  private final ClassDayPages pages;
  private final int number;
  private final BakePlan plan;
  private final Words words;
  private final DayWords say;

  StudentDay(ClassDayPages pages, int number, Words words) {
    this.pages = pages;
    this.number = number;
    this.plan = pages.day().plans().get(number);
    this.words = words;
    this.say = new DayWords(words);
  }

  /** With the steps that a student takes part in. */
  StudentPage.Dough dough(List<DayStep> hers) {
    List<String> notes = new ArrayList<>();
    String formula = new FormulaWords(words).formulaWithin(plan.dough());
    notes.add(
        pages.names().size() > 1
            ? pages.names().get(number) + " – " + formula
            : words.capitalized(formula));
    return new StudentPage.Dough(
        Optional.of(answer()), notes, table(hers), new FormulaWords(words).cautions(plan.dough()));
  }

  /** When the plan has her shape, then what other starters would do. */
  private String answer() {
    ShapeWords led = new ShapeWords(words);
    String shaped = led.answer(clock(plan.bulkEndHour()), plan.shapeRise().percent());
    TimeWindow window = plan.shapeWindow();
    if (window.early().isEmpty() || window.late().isEmpty()) {
      return shaped;
    }
    return shaped
        + " "
        + led.others(clock(window.early().getAsDouble()), clock(window.late().getAsDouble()));
  }

  private String clock(double hour) {
    return pages.clock(hour, words);
  }

  private Table table(List<DayStep> hers) {
    List<Table.Column> columns =
        List.of(
            new Table.Column("", 1, Table.Kind.TICK),
            new Table.Column(words.say("timetable.clock"), 3.5, Table.Kind.STRONG),
            new Table.Column(words.say("sheet.step"), 12, Table.Kind.TEXT),
            new Table.Column(words.say("sheet.myTime"), 4, Table.Kind.WRITE));
    List<List<String>> rows = new ArrayList<>();
    List<DayStep> folds = new ArrayList<>();
    for (DayStep step : hers) {
      if (step.step().kind() == BakeStep.Kind.FOLD) {
        folds.add(step);
      } else {
        addFolds(folds, rows);
        rows.add(row(step.step().fromHour(), say.step(step.step()), detail(step)));
      }
    }
    return new Table(columns, rows);
  }

  /** All folds as one row with the hour of each. */
  private void addFolds(List<DayStep> folds, List<List<String>> rows) {
    if (folds.isEmpty()) {
      return;
    }
    String hours =
        folds.stream()
            .map(fold -> words.clock(Hours.after(pages.zero(), fold.step().fromHour())))
            .collect(Collectors.joining(", "));
    String name = say.step(BakeStep.Kind.FOLD);
    rows.add(
        row(
            folds.get(0).step().fromHour(),
            folds.size() == 1 ? name : name + " 1–" + folds.size(),
            folds.size() == 1 ? "" : hours));
    folds.clear();
  }

  private List<String> row(double hour, String step, String detail) {
    return List.of("", clock(hour), detail.isEmpty() ? step : step + " – " + detail, "");
  }

  /** The starter is fed once for all, so its grams are not a student's. */
  private String detail(DayStep step) {
    return step.step().kind() == BakeStep.Kind.FEED
        ? say.stage(plan, step.step())
            + words.say("dayDetail.feedForAll", Map.of("ratio", plan.feedRatio(step.step()).text()))
        : say.detail(pages.day(), step);
  }
}
