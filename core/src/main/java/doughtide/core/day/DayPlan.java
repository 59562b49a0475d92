package doughtide.core.day;

import doughtide.core.Internal;
import doughtide.core.feeding.FeedAmounts;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import java.util.stream.IntStream;

/**
 * A day of one dough or several on one clock.
 *
 * @param plans one for each dough, in the order given
 * @param steps all steps by the clock, with who does them
 * @param loads what is in the oven together
 * @param hands how many persons work
 * @param loosening the single change tried that gives the tightest step most room; empty if none
 *     does
 */
public record DayPlan(
    List<BakePlan> plans,
    List<DayStep> steps,
    List<OvenLoad> loads,
    int hands,
    Optional<Adjustment> loosening) {
  /**
   * Keeps its own copies.
   *
   * @param plans one for each dough, in the order given
   * @param steps all steps by the clock, with who does them
   * @param loads what is in the oven together
   * @param hands how many persons work
   * @param loosening the single change tried that gives the tightest step most room
   */
  public DayPlan {
    plans = List.copyOf(plans);
    steps = List.copyOf(steps);
    loads = List.copyOf(loads);
  }

  /**
   * {@return a day of one dough that was begun}
   *
   * @param plan as it goes on
   * @param steps what was done and what is left, ascending
   */
  public static DayPlan begun(BakePlan plan, List<BakeStep> steps) {
    List<OvenLoad> loads =
        DayTimetable.loads(List.of(plan.day()), new TreeMap<>(Map.of(0, plan.draft())));
    List<DayStep> one =
        steps.stream()
            .map(step -> new DayStep(step, List.of(0), step.toHour() > step.fromHour() ? 0 : -1))
            .toList();
    return new DayPlan(List.of(plan), one, loads, 1, Optional.empty());
  }

  /**
   * {@return what to weigh for a feeding, which may serve several doughs}
   *
   * @param step a feeding
   * @hidden
   */
  @Internal
  public FeedAmounts feedAmounts(DayStep step) {
    double use =
        step.doughs().stream()
            .mapToDouble(number -> plans.get(number).ingredients().starterGrams())
            .sum();
    return plans.get(step.doughs().get(0)).feedAmounts(step.step(), use);
  }

  /** {@return the number of the dough with the least margin, from 0} */
  public int tightDough() {
    return IntStream.range(0, plans.size())
        .boxed()
        .min(Comparator.comparingDouble(number -> plans.get(number).marginHours()))
        .orElseThrow();
  }

  DayPlan with(Optional<Adjustment> loosest) {
    return new DayPlan(plans, steps, loads, hands, loosest);
  }

  /** {@return the least margin of all doughs, hours} */
  public double marginHours() {
    return plans.get(tightDough()).marginHours();
  }
}
