package doughtide.cli.command;

import doughtide.cli.args.ClockTimes;
import doughtide.cli.args.Words;
import doughtide.core.day.BakeDayAnswer;
import doughtide.core.day.BakePlan;
import doughtide.core.day.BakeStep;
import doughtide.core.day.ProofKind;
import doughtide.core.day.StepMargin;
import doughtide.core.feeding.FeedAmounts;
import doughtide.core.loaf.StrengthPlan;
import doughtide.core.thermal.Mixing;
import doughtide.core.thermal.WaterAnswer;
import doughtide.report.words.StrengthWords;
import doughtide.report.words.WaterWords;
import java.util.Optional;

/** A plan in words. */
public final class BakeDayWords {

  /** What mixing by hand adds (starting value). */
  private BakeDayWords() {}

  /** What a step needs beside its name. */
  public static String detail(BakePlan plan, BakeStep step) {
    return switch (step.kind()) {
      case FEED -> feed(plan);
      case MIX -> "dough at " + Words.temperature(plan.doughTemperature()) + "; " + water(plan);
      case FOLD -> step.number() == plan.strength().folds() ? "then the windowpane check" : "";
      case SHAPE ->
          "when the jar has risen "
              + Words.percent(Math.rint(plan.shapeRise().percent()))
              + ", not by the clock";
      case LOAVES_INTO_COLD -> "for " + Words.duration(plan.proofHours());
      case BULK_INTO_COLD, BULK_OUT_OF_COLD, AUTOLYSE, PREHEAT, BAKE, COOL, READY -> "";
    };
  }

  private static String feed(BakePlan plan) {
    return feed(plan, plan.feedAmounts());
  }

  /** A feeding that may serve other doughs too. */
  public static String feed(BakePlan plan, FeedAmounts amounts) {
    return plan.feed().ratio().words()
        + ": "
        + Words.grams(amounts.starterGrams())
        + " + "
        + Words.grams(amounts.flourGrams())
        + " + "
        + Words.grams(amounts.waterGrams());
  }

  public static WaterAnswer waterAnswer(BakePlan plan) {
    return plan.water(Mixing.BY_HAND);
  }

  private static String water(BakePlan plan) {
    double celsius = waterAnswer(plan).waterCelsius();
    return celsius < 0
        ? "part of the water as ice (see water)"
        : "water at " + Words.rounded(celsius, 0) + " °C";
  }

  /** What kind of plan it is. */
  public static String kind(BakePlan plan) {
    String bulk =
        plan.bulkColdFrom().isPresent() ? "bulk partly in the cold" : "bulk in the kitchen";
    String proof =
        plan.proofKind() == ProofKind.COLD ? "proof in the cold" : "proof in the kitchen";
    return bulk + ", " + proof + " (" + Words.duration(plan.proofHours()) + ")";
  }

  /** Which step is tight and what would loosen it. */
  public static String tight(BakePlan plan) {
    StepMargin tight = plan.tight();
    return "Tight: "
        + tight.kind().words()
        + ", at most "
        + Words.duration(tight.hours())
        + " later ("
        + tight.limit().words()
        + "). "
        + plan.knob()
            .map(knob -> "What would loosen it: " + knob + ".")
            .orElse("No single change tried loosens it.");
  }

  public static String strength(BakePlan plan) {
    StrengthPlan strength = plan.strength();
    return "Strength: "
        + String.join(
            " ", StrengthWords.english().sentences(strength, strength, plan.dough().hydration()));
  }

  /** Why there is no plan, and the smallest change that makes one. */
  public static String hindrance(BakeDayAnswer answer, ClockTimes times) {
    BakeDayAnswer.Hindrance hindrance = answer.hindrance().orElseThrow();
    String why =
        switch (hindrance.why()) {
          case STARTER -> "no plan: no feeding leaves the starter ripe when you can mix";
          case BENCH -> "no plan: some step always falls outside your hours at the bench";
          case DOUGH -> "no plan: what fits your hours leaves half of the doughs spoiled";
        };
    return why
        + hindrance
            .change()
            .map(
                change ->
                    "; it works with "
                        + change(change, times)
                        + change.also().map(also -> " and " + change(also, times)).orElse(""))
            .orElse("; no change tried makes one: give more hours at the bench");
  }

  private static String change(BakeDayAnswer.Change change, ClockTimes times) {
    String by = Words.duration(Math.abs(change.hours()));
    return switch (change.kind()) {
      case BENCH_EARLIER -> by + " more before " + times.at(change.atHour());
      case BENCH_LONGER -> by + " more after " + times.at(change.atHour());
      case EVERY_TIME_LONGER -> by + " more at the end of each of your hours at the bench";
      case REFRIGERATOR -> "a refrigerator at 4 °C";
      case READY ->
          "the bread "
              + by
              + (change.hours() > 0 ? " later, " : " earlier, ")
              + times.at(change.atHour());
      case STARTER_SHARE -> Words.rounded(change.atHour(), 1) + " % starter of the flour added";
      case DOUGH_TEMPERATURE -> "a dough of " + Words.rounded(change.atHour(), 1) + " °C";
    };
  }

  /** Warnings about the water. */
  public static Optional<String> waterWarning(BakePlan plan) {
    return WaterWords.english().cautions(waterAnswer(plan)).stream().findFirst();
  }
}
