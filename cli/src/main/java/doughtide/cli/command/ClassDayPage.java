package doughtide.cli.command;

import doughtide.cli.answer.TextPage;
import doughtide.cli.args.ClockTimes;
import doughtide.cli.args.Words;
import doughtide.cli.text.Understood;
import doughtide.core.day.BakeDay;
import doughtide.core.day.BakePlan;
import doughtide.core.day.BenchInterval;
import doughtide.core.day.OvenLoad;
import doughtide.core.day.ProofKind;
import doughtide.core.day.SharedAnswer;
import doughtide.core.day.SharedStep;
import doughtide.core.dough.Ingredients;
import java.util.ArrayList;
import java.util.List;

/** A day of several doughs as a page for a phone or the kitchen wall. */
public final class ClassDayPage {

  private final SharedAnswer answer;
  private final ClassDayOptions options;
  private final ClockTimes times;
  private final TextPage page = new TextPage();

  private ClassDayPage(SharedAnswer answer, ClassDayOptions options) {
    this.answer = answer;
    this.options = options;
    this.times = options.clock().times();
  }

  public static List<String> of(SharedAnswer answer, ClassDayOptions options) {
    ClassDayPage page = new ClassDayPage(answer, options);
    page.given();
    page.timeline();
    page.oven();
    page.doughs();
    page.weigh();
    page.page.gap();
    page.times
        .clockChange(options.clock().readyHour())
        .ifPresent(said -> page.page.sentence("Note: " + said + "."));
    page.page.sentence(BakeDayCommand.CAUTION);
    return page.page.lines();
  }

  private void given() {
    BakeDay first = options.days().get(0);
    int loaves = options.days().stream().mapToInt(BakeDay::loaves).sum();
    page.understood(
        new Understood()
            .add(
                "Bread ready by",
                times.at(options.clock().readyHour())
                    + ", "
                    + options.clock().readyAt().getZone().getId())
            .add("Doughs", options.days().size() + ", " + ClassDayWords.loaves(loaves) + " in all")
            .add(
                "Oven",
                ClassDayWords.loaves(first.oven().loaves())
                    + " at once, baked "
                    + Words.duration(first.oven().bakeHours()))
            .add("Hands", options.hands() == 1 ? "1 person" : options.hands() + " persons")
            .add(
                "Kitchen",
                PlanClock.kitchenInWords(options.kitchen())
                    + first
                        .fridge()
                        .map(at -> "; refrigerator " + Words.temperature(at))
                        .orElse("; no refrigerator"))
            .add("At the bench", bench(first)));
  }

  private String bench(BakeDay day) {
    double first = answer.steps().get(0).step().fromHour();
    double last = answer.steps().get(answer.steps().size() - 1).step().toHour();
    List<String> hours = new ArrayList<>();
    for (BenchInterval at : day.bench().intervals()) {
      if (at.toHour() > first && at.fromHour() < last) {
        String to = times.about(at.toHour());
        hours.add(times.about(at.fromHour()) + "–" + to.substring(to.indexOf(' ') + 1));
      }
    }
    return String.join(", ", hours);
  }

  private void timeline() {
    page.gap();
    List<List<String>> rows = new ArrayList<>();
    for (SharedStep step : answer.steps()) {
      String detail = ClassDayWords.detail(answer, step);
      String text =
          ClassDayWords.words(step)
              + ": "
              + ClassDayWords.doughs(step.doughs(), options)
              + (detail.isEmpty() ? "" : "; " + detail);
      String at = times.about(step.step().fromHour());
      rows.add(
          options.hands() == 1 ? List.of(at, text) : List.of(at, ClassDayWords.person(step), text));
    }
    page.table(rows);
  }

  private void oven() {
    page.gap();
    page.sentence("Oven:");
    List<List<String>> rows = new ArrayList<>();
    for (OvenLoad load : answer.loads()) {
      String out = times.about(load.toHour());
      rows.add(
          List.of(
              "  " + times.about(load.fromHour()) + "–" + out.substring(out.indexOf(' ') + 1),
              ClassDayWords.loaves(load.loaves()),
              ClassDayWords.portions(load, options)));
    }
    page.table(rows);
  }

  private void doughs() {
    page.gap();
    page.sentence(
        "Doughs; margin: how much later the tightest step may be until one dough in ten more is"
            + " spoiled.");
    List<List<String>> rows = new ArrayList<>();
    rows.add(List.of("", "dough", "starter", "proof", "right", "margin", "tightest"));
    for (int i = 0; i < answer.plans().size(); i++) {
      BakePlan plan = answer.plans().get(i);
      rows.add(
          List.of(
              options.names().get(i),
              Words.rounded(plan.doughTemperature().celsius(), 1) + " °C",
              Words.percent(plan.starterPercent()),
              (plan.proofKind() == ProofKind.COLD ? "cold " : "room ")
                  + Words.duration(plan.proofHours()),
              (long) Math.floor(plan.goodShare() * 10 + 1e-9) + " in 10",
              Words.duration(plan.marginHours()),
              ClassDayWords.shortly(plan.tight().kind())));
    }
    page.table(rows);
  }

  private void weigh() {
    page.gap();
    page.sentence("Weigh (starter in per cent of the flour added):");
    List<List<String>> rows = new ArrayList<>();
    rows.add(List.of("", "flour", "water", "starter", "salt"));
    for (int i = 0; i < answer.plans().size(); i++) {
      Ingredients weigh = answer.plans().get(i).ingredients();
      rows.add(
          List.of(
              options.names().get(i),
              Words.grams(weigh.flourGrams()),
              Words.grams(weigh.waterGrams()),
              Words.grams(weigh.starterGrams()),
              Words.grams(weigh.saltGrams())));
    }
    page.table(rows);
  }
}
