package doughtide.cli.command.again;

import doughtide.cli.args.Arguments;
import doughtide.core.day.BakeStep;
import doughtide.core.day.DayPlan;
import doughtide.core.day.DayStep;
import doughtide.core.day.StepMargin;
import doughtide.report.words.DayWords;
import doughtide.report.words.Language;
import doughtide.report.words.Words;
import java.util.List;

/**
 * A step of a plan that was written.
 *
 * @param day what is done and when, on the axis of the day, and for which doughs
 * @param done whether it was done then
 */
public record PlanStep(DayStep day, boolean done) {

  private static final DayWords WORDS = new DayWords(Words.in(Language.ENGLISH));

  /** The same for the same step of a day, whenever it is; the first of several has no number. */
  public static String key(BakeStep.Kind kind, int number) {
    return Arguments.word(kind) + (number > 1 ? " " + number : "");
  }

  BakeStep step() {
    return day.step();
  }

  String key() {
    return key(step().kind(), step().number());
  }

  boolean isOf(int dough) {
    return day.doughs().contains(dough);
  }

  /** What is done, in words. */
  String words() {
    return WORDS.step(step());
  }

  static String words(BakeStep.Kind kind) {
    return WORDS.step(kind);
  }

  /** What a step needs beside its name. A terminal breaks lines where it likes. */
  static String detail(DayPlan plan, DayStep step) {
    return WORDS.detail(plan, step).replace('\u00a0', ' ');
  }

  /** What ends a margin, in words. */
  static String limit(StepMargin.Limit limit) {
    return WORDS.limit(limit);
  }

  /** The same step at another hour, as long. */
  PlanStep at(double hour, boolean isDone) {
    double to = hour + step().toHour() - step().fromHour();
    BakeStep moved = new BakeStep(step().kind(), hour, to, step().number());
    return new PlanStep(new DayStep(moved, day.doughs(), day.person()), isDone);
  }

  /** The same for other doughs. */
  PlanStep of(List<Integer> doughs) {
    return new PlanStep(new DayStep(step(), doughs, day.person()), done);
  }

  PlanStep nowDone() {
    return new PlanStep(day, true);
  }
}
