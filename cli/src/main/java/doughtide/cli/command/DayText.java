package doughtide.cli.command;

import doughtide.cli.args.ClockTimes;
import doughtide.cli.args.Words;
import doughtide.cli.command.again.DayCalendar;
import doughtide.cli.command.again.DayNames;
import doughtide.cli.command.again.MixText;
import doughtide.cli.hand.LeaveSections;
import doughtide.core.day.BakePlan;
import doughtide.core.day.BakeStep;
import doughtide.core.day.DayAnswer;
import doughtide.core.day.DayPlan;
import doughtide.core.day.DayStep;
import doughtide.core.day.OvenLoad;
import doughtide.core.day.ProofKind;
import doughtide.core.day.StepMargin;
import doughtide.core.feeding.FeedAmounts;
import doughtide.core.feeding.FeedRatio;
import doughtide.core.loaf.StrengthPlan;
import doughtide.report.words.DayWords;
import doughtide.report.words.FeedWords;
import doughtide.report.words.Language;
import doughtide.report.words.StrengthWords;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.Collectors;

/**
 * A day in sentences.
 *
 * @param options what it was planned from
 * @param day the plan
 */
record DayText(DayOptions options, DayPlan day) {

  private static final DayWords WORDS =
      new DayWords(doughtide.report.words.Words.in(Language.ENGLISH));

  boolean isOneDough() {
    return day.plans().size() == 1;
  }

  ClockTimes times() {
    return options.clock().times();
  }

  /** What is done; the oven's loads are counted through the day. */
  static String step(BakeStep step) {
    return WORDS.step(step);
  }

  static String step(BakeStep.Kind kind) {
    return WORDS.step(kind);
  }

  static String limit(StepMargin.Limit limit) {
    return WORDS.limit(limit);
  }

  /** Its doughs by name. */
  DayNames names() {
    return new DayNames(options.names(), options.hands());
  }

  /** The steps with hands on, for a calendar. */
  List<DayCalendar.Entry> entries() {
    List<DayCalendar.Entry> entries = new ArrayList<>();
    for (DayStep each : day.steps()) {
      BakeStep step = each.step();
      if (step.kind().handsOn()) {
        entries.add(
            new DayCalendar.Entry(
                names().key(each),
                names().summary(step(step), each),
                detail(each),
                step.fromHour(),
                step.toHour(),
                false));
      }
    }
    return entries;
  }

  /** What a step needs beside its name. */
  String detail(DayStep each) {
    BakePlan plan = day.plans().get(each.doughs().get(0));
    return switch (each.step().kind()) {
      case FEED ->
          plain(WORDS.stage(plan, each.step()))
              + feed(plan.feedRatio(each.step()), day.feedAmounts(each));
      case AUTOLYSE -> MixText.water(plan);
      case MIX -> MixText.mix(plan);
      case FOLD ->
          plain(WORDS.fold(plan, each.step()))
              + (each.step().number() == plan.strength().folds()
                  ? "; then the windowpane check"
                  : "");
      case SHAPE ->
          "when the jar has risen "
              + Words.percent(Math.rint(plan.shapeRise().percent()))
              + ", not by the clock";
      case LOAVES_INTO_COLD -> "for " + Words.duration(plan.proofHours());
      case BAKE -> isOneDough() ? "" : loaves(load(each).loaves());
      case BULK_INTO_COLD, BULK_OUT_OF_COLD, PREHEAT, COOL, READY -> "";
    };
  }

  private static String feed(FeedRatio ratio, FeedAmounts amounts) {
    return FeedWords.english().parts(ratio)
        + ": "
        + Words.grams(amounts.starterGrams())
        + " + "
        + Words.grams(amounts.flourGrams())
        + " + "
        + Words.grams(amounts.waterGrams());
  }

  private OvenLoad load(DayStep step) {
    return day.loads().stream()
        .filter(load -> load.fromHour() == step.step().fromHour())
        .findFirst()
        .orElseThrow();
  }

  static String loaves(int number) {
    return number == 1 ? "1 loaf" : number + " loaves";
  }

  /** Whose loaves are in a load. */
  String portions(OvenLoad load) {
    return load.portions().stream()
        .map(each -> options.names().get(each.dough()) + " " + each.loaves())
        .collect(Collectors.joining(", "));
  }

  /** What kind of plan it is. */
  static String kind(BakePlan plan) {
    String bulk = plan.bulkColdFrom().isPresent() ? "bulk partly in the cold" : "bulk in the room";
    return bulk
        + ", proof "
        + WORDS.proof(plan.proofKind())
        + " ("
        + Words.duration(plan.proofHours())
        + ")";
  }

  /** Where and how long the loaves wait, for a column. */
  static String proof(BakePlan plan) {
    return (plan.proofKind() == ProofKind.COLD ? "cold " : "room ")
        + Words.duration(plan.proofHours());
  }

  /** So many doughs come out right. */
  static String right(BakePlan plan) {
    return tenths(plan) + " in 10";
  }

  /** The same in a sentence. */
  static String doughsRight(BakePlan plan) {
    return LeaveSections.ofTen(tenths(plan), "comes out right", "come out right");
  }

  private static long tenths(BakePlan plan) {
    return (long) Math.floor(plan.goodShare() * 10 + 1e-9);
  }

  /** What would give the tightest step more room; empty if nothing tried does. */
  String loosening() {
    return day.loosening().map(change -> plain(WORDS.loosening(change))).orElse("");
  }

  /** Which step is tight and what would loosen it. */
  String tight() {
    StepMargin tight = day.plans().get(day.tightDough()).tight();
    String loosening = loosening();
    return "Tight: "
        + step(tight.kind())
        + ", at most "
        + Words.duration(tight.hours())
        + " later ("
        + limit(tight.limit())
        + "). "
        + (loosening.isEmpty()
            ? "No single change tried loosens it."
            : "What would loosen it: " + loosening + ".");
  }

  /** Why the first plan comes first. */
  static String choice(DayAnswer.Choice choice) {
    return plain(WORDS.choice(choice));
  }

  static String strength(BakePlan plan) {
    StrengthPlan strength = plan.strength();
    return "Strength: "
        + String.join(
            " ", StrengthWords.english().sentences(strength, strength, plan.dough().hydration()));
  }

  /** Why there is no plan, and the smallest change that makes one. */
  static String obstacle(DayAnswer answer, DayOptions options) {
    int dough = answer.obstacle().orElseThrow().dough();
    String name = options.doughs().size() == 1 ? "" : "'" + options.names().get(dough) + "': ";
    return obstacle(answer, name, options.clock().times());
  }

  /** The same for the dough of a name; empty where there is only one. */
  static String obstacle(DayAnswer answer, String name, ClockTimes times) {
    DayAnswer.Obstacle obstacle = answer.obstacle().orElseThrow();
    return plain(
        name
            + WORDS.reason(obstacle.reason())
            + "; "
            + WORDS.remedy(answer, name.isEmpty(), times::at));
  }

  /** A terminal breaks lines where it likes. */
  private static String plain(String text) {
    return text.replace('\u00a0', ' ');
  }
}
