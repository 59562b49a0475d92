package doughtide.cli.command;

import doughtide.cli.answer.TextPage;
import doughtide.cli.args.Words;
import doughtide.core.flourtrial.Absorption;
import doughtide.core.flourtrial.AbsorptionFit;
import doughtide.core.flourtrial.BowlPlan;
import doughtide.core.flourtrial.Experience;
import doughtide.core.flourtrial.FlourRecord;
import doughtide.core.flourtrial.Grade;
import doughtide.core.flourtrial.HydrationEstimate;
import doughtide.core.flourtrial.HydrationRange;
import doughtide.core.quantity.Checks;
import doughtide.core.quantity.Share;
import doughtide.report.words.TrialWords;
import java.util.ArrayList;
import java.util.List;

/** A flour's trial as pages of text. */
public final class FlourPage {

  private FlourPage() {}

  public static List<String> plan(FlourRecord record, BowlPlan plan) {
    TextPage page = new TextPage();
    page.line("Bowls for " + record.name());
    page.sentence(expected(record));
    page.gap();
    List<List<String>> rows = new ArrayList<>();
    rows.add(List.of("bowl", "wanted", "flour", "water", "true", "by rounding"));
    for (BowlPlan.Bowl bowl : plan.bowls()) {
      rows.add(
          List.of(
              Integer.toString(bowl.number()),
              Words.percent(bowl.wantedPercent()),
              Checks.plain(bowl.flourGrams()) + " g",
              Checks.plain(bowl.waterGrams()) + " g",
              Words.percent(bowl.truePercent()),
              Words.rounded(bowl.roundingPoints(), 2) + " points"));
    }
    page.table(rows);
    page.sentence("Flour in all: " + Words.grams(plan.flour().grams()) + ".");
    page.gap();
    plan.steps().forEach(step -> page.sentence("- " + step, 2));
    page.gap().line("Grades, from dry to wet");
    plan.lookFor().forEach(each -> page.sentence("- " + each, 2));
    page.gap();
    page.sentence("Write one grade a line: trial, person, hydration, grade. For example:");
    page.line("  6 March, Ann, 72%, thin window");
    page.gap();
    plan.cautions().forEach(caution -> page.sentence("Caution: " + caution));
    return page.lines();
  }

  private static String expected(FlourRecord record) {
    HydrationEstimate limit = record.prior().limit();
    return "Expected limit before any bowl, by protein and bran (a prior, not a result): "
        + Words.percent(limit.likelyPercent())
        + ", "
        + interval(limit)
        + ".";
  }

  private static String interval(HydrationEstimate at) {
    return Words.rounded(at.lowPercent(), 1)
        + " to "
        + Words.percent(at.highPercent())
        + " in 8 of 10 cases";
  }

  public static List<String> read(FlourRecord record, AbsorptionFit fit, Experience experience) {
    TextPage page = new TextPage();
    page.line("Water for " + record.name());
    page.sentence(
        LearnCommand.counted(fit.bowls().size(), "grade")
            + "; judged by "
            + String.join(", ", fit.people())
            + "; "
            + String.join(", ", fit.trials()));
    page.gap();
    HydrationEstimate limit = fit.limit();
    HydrationRange comfortable = fit.comfortable();
    HydrationRange demanding = fit.demanding();
    page.table(
        List.of(
            List.of("Limit", Words.percent(limit.likelyPercent()), interval(limit)),
            List.of(
                "Comfortable",
                range(comfortable),
                "a thin window; begins at " + start(fit, Grade.THIN_WINDOW)),
            List.of(
                "Demanding",
                range(demanding),
                "tears far; begins at " + start(fit, Grade.TEARS_FAR)),
            List.of("Too wet", "from " + Words.percent(fit.tooWetFromPercent()), "torn"),
            List.of(
                "Work at",
                Words.percent(fit.workingHydration(experience)),
                experience.words()
                    + ", "
                    + Checks.plain(experience.pointsBelowLimit())
                    + " points below the limit")));
    page.gap();
    moisture(page, record, limit);
    page.sentence(expected(record));
    for (String person : fit.people()) {
      if (fit.people().size() > 1) {
        page.sentence(
            "By the hands of "
                + person
                + " the limit is "
                + Words.percent(fit.limitOf(person).likelyPercent())
                + ", "
                + interval(fit.limitOf(person))
                + ".");
      }
    }
    record.notes().forEach(note -> page.sentence("Note: " + TrialWords.english(note) + "."));
    page.gap();
    FlourCommand.CAUTIONS.forEach(caution -> page.sentence("Caution: " + caution));
    return page.lines();
  }

  private static void moisture(TextPage page, FlourRecord record, HydrationEstimate limit) {
    if (record.moisturePercent().isEmpty()) {
      return;
    }
    Share moisture = Share.ofPercent(record.moisturePercent().getAsDouble());
    Share at14 = Absorption.to14PercentBasis(Share.ofPercent(limit.likelyPercent()), moisture);
    page.sentence(
        "With flour of 14 % moisture the limit would be "
            + Words.percent(at14)
            + " (ICC 115/1 basis), to compare with other lots.");
  }

  private static String range(HydrationRange range) {
    return Words.rounded(range.fromPercent(), 1) + " to " + Words.percent(range.toPercent());
  }

  private static String start(AbsorptionFit fit, Grade grade) {
    HydrationEstimate at = fit.beginning(grade);
    return Words.rounded(at.lowPercent(), 1) + " to " + Words.percent(at.highPercent());
  }
}
