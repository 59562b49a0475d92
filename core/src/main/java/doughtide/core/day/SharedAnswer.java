package doughtide.core.day;

import doughtide.core.feeding.FeedAmounts;
import java.util.List;
import java.util.Optional;

/**
 * A day of several doughs, or why there is none.
 *
 * @param plans one for each dough, in the order given; empty if they do not all fit
 * @param steps all steps by the clock, with who does them
 * @param loads what is in the oven together
 * @param hands how many persons work
 * @param misfit why the doughs do not all fit; empty if they do
 */
public record SharedAnswer(
    List<BakePlan> plans,
    List<SharedStep> steps,
    List<OvenLoad> loads,
    int hands,
    Optional<Misfit> misfit) {
  /** Keeps its own copies. */
  public SharedAnswer {
    plans = List.copyOf(plans);
    steps = List.copyOf(steps);
    loads = List.copyOf(loads);
  }

  /**
   * What to weigh for a feeding that serves several doughs.
   *
   * @param step a feeding
   */
  public FeedAmounts feedAmounts(SharedStep step) {
    double use =
        step.doughs().stream()
            .mapToDouble(number -> plans.get(number).ingredients().starterGrams())
            .sum();
    return plans.get(step.doughs().get(0)).feedAmounts(use);
  }

  /** The least margin of all doughs, hours. */
  public double marginHours() {
    return plans.stream().mapToDouble(BakePlan::marginHours).min().orElse(0);
  }

  /**
   * Why the doughs do not all fit.
   *
   * @param dough the dough that finds no place, from 0
   * @param alone whether it would not even fit alone
   * @param change the smallest change tried that makes the day possible
   */
  public record Misfit(int dough, boolean alone, Optional<Change> change) {}

  /**
   * A change that makes the day possible.
   *
   * @param kind what is changed
   * @param value persons, loaves or hours
   * @param dough the dough it is about, from 0; -1 for all
   */
  public record Change(Kind kind, double value, int dough) {
    /** What is changed. */
    public enum Kind {
      /** So many persons. */
      HANDS,
      /** So many hours more at the end of each stretch at the bench. */
      EVERY_TIME_LONGER,
      /** Room for so many loaves in the oven. */
      OVEN_CAPACITY,
      /** The bread of one dough so many hours later. */
      READY_LATER
    }
  }
}
