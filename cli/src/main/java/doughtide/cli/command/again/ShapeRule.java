package doughtide.cli.command.again;

import doughtide.cli.args.ClockTimes;
import doughtide.cli.args.Words;
import doughtide.core.day.BakePlan;
import doughtide.core.quantity.Rise;
import java.util.List;
import java.util.stream.Collectors;
import java.util.stream.IntStream;

/**
 * When to shape what is not shaped yet: by the jar, or at once where that is overdue.
 *
 * @param names of the doughs
 * @param times the clock of the day
 * @param nowHour what the clock says
 */
record ShapeRule(DayNames names, ClockTimes times, double nowHour) {

  /** For the step. */
  static String detail(BakePlan plan) {
    return plan.overdueJar()
        .map(jar -> "whatever the jar shows, likely " + percent(jar))
        .orElseGet(
            () -> "when the jar has risen " + percent(plan.shapeRise()) + ", not by the clock");
  }

  /** For a dough that is not shaped. */
  String sentence(int dough, BakePlan plan) {
    String shape = "Shape " + names.before(dough);
    return plan.overdueJar().isEmpty()
        ? shape + detail(plan) + "."
        : shape
            + times.about(plan.bulkEndHour())
            + " "
            + detail(plan)
            + ": by then the dough is likely ready to shape, or past it. Wait for nothing.";
  }

  /** The doughs whose shaping is overdue, before all else; empty where there is none. */
  String overdue(List<BakePlan> plans) {
    String all =
        IntStream.range(0, plans.size())
            .filter(dough -> plans.get(dough).overdueJar().isPresent())
            .mapToObj(dough -> overdue(dough, plans.get(dough)))
            .collect(Collectors.joining("; "));
    return all.isEmpty() ? "" : "Shape " + all + ". ";
  }

  private String overdue(int dough, BakePlan plan) {
    boolean cooled = plan.bulkColdFrom().orElse(Double.NEGATIVE_INFINITY) >= nowHour - 1e-6;
    return names.before(dough)
        + times.about(plan.bulkEndHour())
        + " "
        + detail(plan)
        + (cooled ? ", the tub in the cold from " + cold(plan) : "");
  }

  private String cold(BakePlan plan) {
    return times.about(plan.bulkColdFrom().orElseThrow())
        + " to "
        + times.about(plan.bulkColdTo().orElseThrow());
  }

  private static String percent(Rise rise) {
    return Words.percent(Math.rint(rise.percent()));
  }
}
