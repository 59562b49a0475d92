package doughtide.core.day;

import doughtide.core.Internal;
import doughtide.core.feeding.FeedAmounts;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
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
   * {@return a day that was begun}
   *
   * @param plans of all its doughs, as they go on
   * @param own of each dough its steps; when its loaves are in the oven is by its plan
   * @param hands how many persons work
   */
  @Internal
  public static DayPlan begun(List<BakePlan> plans, List<List<BakeStep>> own, int hands) {
    DayTimetable table = DayTimetable.ofRest(plans, own, hands);
    return new DayPlan(plans, table.steps(), table.loads(), hands, Optional.empty());
  }

  /** {@return the same with other steps, ascending} */
  @Internal
  public DayPlan with(List<DayStep> others) {
    return new DayPlan(plans, others, loads, hands, loosening);
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
