package doughtide.cli.command;

import doughtide.cli.answer.TextPage;
import doughtide.cli.args.ClockTimes;
import doughtide.cli.args.Words;
import doughtide.cli.text.Understood;
import doughtide.core.day.BakeDay;
import doughtide.core.day.BakeDayAnswer;
import doughtide.core.day.BakePlan;
import doughtide.core.day.BakeStep;
import doughtide.core.day.BenchInterval;
import doughtide.core.day.StepMargin;
import doughtide.core.forecast.TimeWindow;
import java.util.ArrayList;
import java.util.List;

/** The plans as a page for a phone or the kitchen wall. */
public final class BakeDayPage {

  private static final int INDENT = 2;

  private final ClockTimes times;
  private final TextPage page = new TextPage();

  private BakeDayPage(ClockTimes times) {
    this.times = times;
  }

  public static List<String> of(BakeDayAnswer answer, BakeDayOptions options) {
    BakeDayPage page = new BakeDayPage(options.clock().times());
    page.given(answer, options);
    int number = 1;
    for (BakePlan plan : answer.plans()) {
      page.plan(plan, number++, answer.plans().size());
    }
    page.page.gap();
    options
        .clock()
        .times()
        .clockChange(options.day().readyHour())
        .ifPresent(said -> page.page.sentence("Note: " + said + "."));
    page.page.sentence(BakeDayCommand.CAUTION);
    return page.page.lines();
  }

  private void given(BakeDayAnswer answer, BakeDayOptions options) {
    BakeDay day = options.day();
    page.understood(
        new Understood()
            .add("Bread ready by", times.at(day.readyHour()) + ", " + zone(options))
            .add(
                "Loaves",
                day.loaves()
                    + " of "
                    + Words.grams(day.piece().grams())
                    + ", "
                    + day.form().key()
                    + "; "
                    + day.dough().flour().name()
                    + ", hydration "
                    + Words.percent(day.dough().hydration())
                    + ", salt "
                    + Words.percent(day.dough().salt()))
            .add("Kitchen", PlanClock.kitchenInWords(options.kitchen()) + fridge(day))
            .add("At the bench", bench(day, first(answer))));
  }

  private static String zone(BakeDayOptions options) {
    return options.clock().readyAt().getZone().getId();
  }

  private static String fridge(BakeDay day) {
    return day.fridge()
        .map(at -> "; refrigerator " + Words.temperature(at))
        .orElse("; no refrigerator");
  }

  /** When the first plan that begins begins. */
  private static double first(BakeDayAnswer answer) {
    return answer.plans().stream()
        .mapToDouble(plan -> plan.steps().get(0).fromHour())
        .min()
        .orElse(0);
  }

  private String bench(BakeDay day, double first) {
    List<String> hours = new ArrayList<>();
    for (BenchInterval at : day.bench().intervals()) {
      if (at.toHour() > first && at.fromHour() < day.readyHour()) {
        hours.add(times.about(at.fromHour()) + "–" + clock(at.toHour()));
      }
    }
    return String.join(", ", hours);
  }

  private String clock(double hour) {
    String about = times.about(hour);
    return about.substring(about.indexOf(' ') + 1);
  }

  private void plan(BakePlan plan, int number, int all) {
    page.gap();
    page.sentence("Plan " + number + " of " + all + ": " + BakeDayWords.kind(plan), INDENT);
    page.sentence(
        "  Margin "
            + Words.duration(plan.marginHours())
            + "; all by plan, "
            + (long) Math.floor(plan.goodShare() * 10 + 1e-9)
            + " doughs in 10 come out right. "
            + BakeDayWords.tight(plan),
        INDENT);
    page.gap();
    steps(plan);
    page.gap();
    ingredients(plan);
    page.sentence("  " + BakeDayWords.strength(plan), INDENT);
    BakeDayWords.waterWarning(plan).ifPresent(said -> page.sentence("  Note: " + said, INDENT));
    windows(plan);
  }

  private void steps(BakePlan plan) {
    List<List<String>> rows = new ArrayList<>();
    for (BakeStep step : plan.steps()) {
      String detail = BakeDayWords.detail(plan, step);
      rows.add(
          List.of(
              "  " + times.about(step.fromHour()),
              step.words() + (detail.isEmpty() ? "" : ": " + detail)));
    }
    page.table(rows);
  }

  private void ingredients(BakePlan plan) {
    page.sentence(
        "  "
            + Words.weigh(plan.ingredients())
            + " Starter "
            + Words.percent(plan.starterPercent())
            + " of the flour added = "
            + Words.percent(100 * plan.dough().prefermentedFlour())
            + " prefermented flour.",
        INDENT);
  }

  private void windows(BakePlan plan) {
    TimeWindow shape = plan.shapeWindow();
    page.sentence(
        "  The jar is there between "
            + time(shape.early().orElse(Double.NaN))
            + " and "
            + time(shape.late().orElse(Double.NaN))
            + " (8 doughs in 10). How much later each step may be:",
        INDENT);
    List<List<String>> rows = new ArrayList<>();
    for (StepMargin margin : plan.margins()) {
      rows.add(
          List.of(
              "  " + margin.kind().words(),
              Words.duration(margin.hours()),
              "then " + margin.limit().words()));
    }
    page.table(rows);
  }

  private String time(double hour) {
    return Double.isFinite(hour) ? times.about(hour) : "later";
  }
}
