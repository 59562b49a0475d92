package doughtide.cli.command.again;

import doughtide.cli.args.ClockTimes;
import doughtide.cli.args.Words;
import doughtide.core.day.BakePlan;
import doughtide.core.day.BakeStep.Kind;
import java.util.List;
import java.util.stream.Collectors;
import java.util.stream.IntStream;

/**
 * How much later than wanted bread is ready.
 *
 * @param plans of the doughs
 * @param steps of the day as they are now
 * @param names of the doughs
 * @param times the clock of the day
 */
record LateBread(List<BakePlan> plans, List<PlanStep> steps, DayNames names, ClockTimes times) {

  private static final double SAME_HOURS = 2.5 / 60;
  private static final int MOST_NAMED = 3;

  /** How much later than wanted; 0 where it is in time. */
  double hours(int dough) {
    double wanted = plans.get(dough).day().readyHour();
    double late = readyHour(dough, wanted) - wanted;
    return late < SAME_HOURS ? 0 : late;
  }

  private double readyHour(int dough, double otherwise) {
    return steps.stream()
        .filter(each -> each.isOf(dough) && each.step().kind() == Kind.READY)
        .mapToDouble(each -> each.step().toHour())
        .max()
        .orElse(otherwise);
  }

  /** To go on with behind the hour of baking; empty where all bread is in time. */
  String words() {
    List<Integer> late =
        IntStream.range(0, plans.size()).filter(dough -> hours(dough) > 0).boxed().toList();
    if (late.isEmpty()) {
      return "";
    }
    int more = late.size() - MOST_NAMED;
    return "; "
        + late.stream().limit(MOST_NAMED).map(this::words).collect(Collectors.joining(", "))
        + (more > 0 ? ", " + more + " more are late too" : "");
  }

  private String words(int dough) {
    double hours = hours(dough);
    return (names.isOne() ? "the bread" : names.names().get(dough))
        + " is ready "
        + times.about(plans.get(dough).day().readyHour() + hours)
        + ", "
        + Words.duration(hours)
        + " later than wanted";
  }
}
