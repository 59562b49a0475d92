package doughtide.cli.command;

import doughtide.cli.args.Arguments;
import doughtide.cli.args.Words;
import doughtide.core.day.BakePlan;
import doughtide.core.day.BakeStep;
import doughtide.core.day.OvenLoad;
import doughtide.core.day.SharedAnswer;
import doughtide.core.day.SharedStep;
import java.util.List;
import java.util.stream.Collectors;

/** A day of several doughs in words. */
public final class ClassDayWords {

  private ClassDayWords() {}

  /** Whose a step is. */
  public static String doughs(List<Integer> doughs, ClassDayOptions options) {
    return doughs.size() == options.names().size() && doughs.size() > 2
        ? "all"
        : doughs.stream().map(options.names()::get).collect(Collectors.joining(", "));
  }

  public static String person(SharedStep step) {
    return step.person() < 0 ? "" : Character.toString('A' + step.person());
  }

  /** What a step needs beside its name. */
  public static String detail(SharedAnswer answer, SharedStep step) {
    BakePlan first = answer.plans().get(step.doughs().get(0));
    return switch (step.step().kind()) {
      case FEED -> BakeDayWords.feed(first, answer.feedAmounts(step));
      case BAKE -> loaves(load(answer, step).loaves());
      default -> BakeDayWords.detail(first, step.step());
    };
  }

  /** What is done; the oven's loads are counted through the day. */
  public static String words(SharedStep step) {
    return step.step().words();
  }

  private static OvenLoad load(SharedAnswer answer, SharedStep step) {
    return answer.loads().stream()
        .filter(load -> load.fromHour() == step.step().fromHour())
        .findFirst()
        .orElseThrow();
  }

  public static String loaves(int number) {
    return number == 1 ? "1 loaf" : number + " loaves";
  }

  /** The kind of a step in a word or two, for a column. */
  public static String shortly(BakeStep.Kind kind) {
    return Arguments.word(kind);
  }

  /** Whose loaves are in a load. */
  public static String portions(OvenLoad load, ClassDayOptions options) {
    return load.portions().stream()
        .map(each -> options.names().get(each.dough()) + " " + each.loaves())
        .collect(Collectors.joining(", "));
  }

  /** Why the day is not possible, and the smallest change that makes it so. */
  public static String misfit(SharedAnswer answer, ClassDayOptions options) {
    SharedAnswer.Misfit misfit = answer.misfit().orElseThrow();
    String name = "'" + options.names().get(misfit.dough()) + "'";
    String why =
        misfit.alone()
            ? "no plan: " + name + " does not even fit alone into your hours at the bench"
            : "no plan: " + name + " finds no place beside the others";
    return why
        + misfit
            .change()
            .map(change -> "; it works with " + change(change, options))
            .orElse(
                "; no single change tried makes a plan: give more hours at the bench, or fewer"
                    + " doughs");
  }

  private static String change(SharedAnswer.Change change, ClassDayOptions options) {
    return switch (change.kind()) {
      case HANDS -> "--hands " + Words.rounded(change.value(), 0);
      case EVERY_TIME_LONGER ->
          Words.duration(change.value()) + " more at the end of each of your hours at the bench";
      case OVEN_CAPACITY -> "--oven-capacity " + Words.rounded(change.value(), 0);
      case READY_LATER ->
          "'"
              + options.names().get(change.dough())
              + "' ready "
              + Words.duration(change.value())
              + " later";
    };
  }
}
