package doughtide.cli.command;

import doughtide.cli.answer.Answer;
import doughtide.cli.answer.Listing;
import doughtide.cli.answer.Section;
import doughtide.cli.answer.Timeline;
import doughtide.cli.answer.Unit;
import doughtide.cli.answer.Value;
import doughtide.cli.args.Arguments;
import doughtide.cli.args.Words;
import doughtide.cli.file.FileProblem;
import doughtide.core.flourtrial.Absorption;
import doughtide.core.flourtrial.AbsorptionFit;
import doughtide.core.flourtrial.BowlPlan;
import doughtide.core.flourtrial.BowlTest;
import doughtide.core.flourtrial.Experience;
import doughtide.core.flourtrial.FlourRecord;
import doughtide.core.flourtrial.Grade;
import doughtide.core.flourtrial.HydrationEstimate;
import doughtide.core.flourtrial.HydrationRange;
import doughtide.core.quantity.Checks;
import doughtide.core.quantity.Share;
import doughtide.report.words.Language;
import doughtide.report.words.TrialWords;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;

/** A flour's trial as an answer. */
final class FlourSections {

  private static final int VERSION = 2;
  private static final int DECIMALS = 3;
  private static final String IN_EIGHT = " in 8 of 10 cases";

  private static final doughtide.report.words.Words ENGLISH =
      doughtide.report.words.Words.in(Language.ENGLISH);

  private final FlourRecord record;
  private final BowlTest test;
  private final Section.Builder body = Section.loose(Timeline.sinceMixing(Optional.empty()));

  private FlourSections(FlourRecord record) {
    this.record = record;
    this.test = BowlTest.of(record.toFlour());
    body.word("name", "", record.name());
  }

  private Answer answer(String headline) {
    return Answer.of("flour", VERSION, headline, body);
  }

  /** The bowls to mix. */
  public static Answer plan(FlourRecord record, BowlPlan plan) {
    FlourSections sections = new FlourSections(record);
    Section.Builder body = sections.body;
    body.number("restMinutes", "", plan.restMinutes(), Unit.MINUTES)
        .number("scaleGrams", "", plan.scale().resolutionGrams(), Unit.GRAMS);
    Listing.Builder bowls = body.listing("bowls", "Bowls for " + record.name());
    plan.bowls().forEach(bowl -> bowl(bowls.row(), bowl));
    sections.expected();
    BowlTest test = sections.test;
    body.section("", "What to do").say(TrialWords.explain(ENGLISH, test, plan));
    body.section("", "Grades, from dry to wet")
        .texts(
            "",
            "- ",
            Arrays.stream(Grade.values())
                .map(grade -> sections.grade(grade) + ": " + TrialWords.look(ENGLISH, test, grade))
                .toList());
    body.paragraph()
        .say("Write one grade a line: trial, person, hydration, grade. For example:")
        .say("  6 March, Ann, " + example(test) + ", " + sections.grade(Grade.THIN_WINDOW));
    body.cautions(FlourCommand.CAUTIONS);
    return sections.answer(
        "Mix "
            + plan.bowls().size()
            + " bowls, "
            + Words.grams(plan.flour().grams())
            + " of flour in all; the limit is expected at about "
            + Words.percent(record.prior().limit().likelyPercent())
            + ".");
  }

  private static String example(BowlTest test) {
    return Words.percent((test.driest().percent() + test.wettest().percent()) / 2);
  }

  private String grade(Grade grade) {
    return TrialWords.grade(ENGLISH, test, grade);
  }

  private static void bowl(Section.Builder row, BowlPlan.Bowl bowl) {
    row.number("number", "bowl", bowl.number(), Unit.COUNT)
        .number("wantedPercent", "wanted", exact(bowl.wantedPercent()), Unit.PERCENT, DECIMALS)
        .number("flourGrams", "", exact(bowl.flourGrams()), Unit.GRAMS, DECIMALS)
        .say("flour", Checks.plain(bowl.flourGrams()) + " g")
        .number("waterGrams", "", exact(bowl.waterGrams()), Unit.GRAMS, DECIMALS)
        .say("water", Checks.plain(bowl.waterGrams()) + " g")
        .number("truePercent", "true", exact(bowl.truePercent()), Unit.PERCENT, DECIMALS)
        .say("by rounding", Words.rounded(bowl.roundingPoints(), 2) + " points");
  }

  private static OptionalDouble exact(double number) {
    return OptionalDouble.of(number);
  }

  /** What the grades say. */
  public static Answer read(FlourRecord record, AbsorptionFit fit, Experience experience) {
    FlourSections sections = new FlourSections(record);
    Section.Builder body = sections.body;
    body.number("grades", "", fit.bowls().size(), Unit.COUNT);
    sections.ranges(fit, experience);
    sections.moisture(fit.limit());
    sections.expected();
    sections.people(fit);
    body.paragraph()
        .texts(
            "notes",
            "Note: ",
            record.notes().stream().map(n -> TrialWords.english(sections.test, n)).toList());
    body.section("", "Understood")
        .say("Grades", Words.counted(fit.bowls().size(), "grade"))
        .say("Judged by", String.join(", ", fit.people()))
        .say("Trials", String.join(", ", fit.trials()));
    body.cautions(FlourCommand.CAUTIONS);
    return sections.answer(
        "Work at "
            + Words.percent(fit.workingHydration(experience))
            + " water with "
            + record.name()
            + "; its limit is about "
            + range(fit.limit()).text()
            + ".");
  }

  private void ranges(AbsorptionFit fit, Experience experience) {
    Section.Builder table = body.section("", "Water for " + record.name());
    table.say("Limit", range(fit.limit()).text() + IN_EIGHT);
    table.section("limit", "").quantity("percent", "", range(fit.limit()));
    HydrationRange comfortable = fit.comfortable();
    table.say(
        "Comfortable",
        words(comfortable)
            + "; "
            + grade(Grade.THIN_WINDOW)
            + "; begins at "
            + start(fit, Grade.THIN_WINDOW));
    between(table.section("comfortable", ""), comfortable);
    HydrationRange demanding = fit.demanding();
    table.say(
        "Demanding",
        words(demanding)
            + "; "
            + grade(Grade.TEARS_FAR)
            + "; begins at "
            + start(fit, Grade.TEARS_FAR));
    between(table.section("demanding", ""), demanding);
    double working = fit.workingHydration(experience).percent();
    table
        .say("Too wet", "from " + Words.percent(fit.tooWetFromPercent()) + "; " + grade(Grade.TORN))
        .number("tooWetFromPercent", "", fit.tooWetFromPercent(), Unit.PERCENT)
        .say(
            "Work at",
            Words.percent(working)
                + "; "
                + Arguments.word(experience)
                + ", "
                + Checks.plain(experience.pointsBelowLimit())
                + " points below the limit")
        .word("experience", "", Arguments.word(experience))
        .number("workingHydrationPercent", "", exact(working), Unit.PERCENT, DECIMALS)
        .number("priorWeight", "", fit.priorWeight(), Unit.SHARE);
  }

  private static void between(Section.Builder to, HydrationRange range) {
    to.number("fromPercent", "", range.fromPercent(), Unit.PERCENT)
        .number("toPercent", "", range.toPercent(), Unit.PERCENT);
  }

  private void moisture(HydrationEstimate limit) {
    if (record.moisturePercent().isEmpty()) {
      return;
    }
    Share moisture = Share.ofPercent(record.moisturePercent().getAsDouble());
    Share at14 = Absorption.to14PercentBasis(Share.ofPercent(limit.likelyPercent()), moisture);
    body.number("limitAt14PercentMoisture", "", exact(at14.percent()), Unit.NONE, DECIMALS)
        .paragraph()
        .say(
            "With flour of 14 % moisture the limit would be "
                + Words.percent(at14)
                + " (ICC 115/1 basis), to compare with other lots.");
  }

  private void expected() {
    HydrationEstimate limit = record.prior().limit();
    body.section("expectedLimit", "").quantity("percent", "", range(limit));
    body.paragraph()
        .say(
            "Expected limit before any bowl, by protein and bran (a prior, not a result): "
                + range(limit).text()
                + IN_EIGHT
                + ".");
  }

  private void people(AbsorptionFit fit) {
    Listing.Builder people = body.listing("people", "");
    Section.Builder page = body.paragraph();
    for (String person : fit.people()) {
      Value.Range limit = range(fit.limitOf(person));
      people.row().word("name", "", person).section("limit", "").quantity("percent", "", limit);
      if (fit.people().size() > 1) {
        page.say("By the hands of " + person + " the limit is " + limit.text() + IN_EIGHT + ".");
      }
    }
  }

  private static Value.Range range(HydrationEstimate at) {
    return new Value.Range(
        exact(at.lowPercent()), exact(at.likelyPercent()), exact(at.highPercent()), Unit.PERCENT);
  }

  private static String words(HydrationRange range) {
    return Words.rounded(range.fromPercent(), 1) + " to " + Words.percent(range.toPercent());
  }

  private static String start(AbsorptionFit fit, Grade grade) {
    HydrationEstimate at = fit.beginning(grade);
    return Words.rounded(at.lowPercent(), 1) + " to " + Words.percent(at.highPercent());
  }

  /**
   * What was kept.
   *
   * @param file its name as shown
   * @param lines what it says
   */
  public static Answer saved(FlourRecord record, String file, List<String> lines) {
    FlourSections sections = new FlourSections(record);
    sections
        .body
        .word("file", "", file)
        .number("hydrationPercent", "", record.hydrationPercent(), Unit.PERCENT);
    Section.Builder page = sections.body.paragraph();
    lines.forEach(page::say);
    return sections.answer("Saved in " + FileProblem.quoted(file) + ".");
  }
}
