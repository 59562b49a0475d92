package doughtide.core.day;

import java.util.List;
import java.util.Optional;

/**
 * The best ways through a day, or why there is none.
 *
 * @param days best first; they differ in where a dough waits or in when it is mixed
 * @param obstacle why there is no plan, and what would make one possible; empty if there is one
 * @param complete whether the search came to its end; otherwise this is the best found by then
 */
public record DayAnswer(List<DayPlan> days, Optional<Obstacle> obstacle, boolean complete) {
  /** Keeps its own copy. */
  public DayAnswer {
    days = List.copyOf(days);
  }

  /**
   * Why there is no plan.
   *
   * @param reason what stands in the way
   * @param dough the dough that finds no place, from 0
   * @param remedy the smallest change tried that makes the day possible
   */
  public record Obstacle(Reason reason, int dough, Optional<Remedy> remedy) {}

  /**
   * A change that makes the day possible.
   *
   * @param adjustments one; two where none alone does
   * @param day a plan then
   */
  public record Remedy(List<Adjustment> adjustments, DayPlan day) {
    /** Keeps its own copy. */
    public Remedy {
      adjustments = List.copyOf(adjustments);
    }
  }

  /** What stands in the way. */
  public enum Reason {
    /** No feeding leaves the starter ripe when the baker can mix. */
    STARTER,
    /** Some step always falls outside the hours at the bench. */
    BENCH,
    /** Every plan that fits the clock leaves most of the doughs spoiled. */
    DOUGH,
    /** It would fit alone but finds no place beside the other doughs. */
    OTHER_DOUGHS
  }
}
