package doughtide.core.day;

import java.util.List;
import java.util.Optional;

/**
 * The best plans for a day, or why there is none.
 *
 * @param plans best first; they differ in where the dough waits or in when it is mixed
 * @param hindrance why there is no plan, and what would make one possible; empty if there is one
 */
public record BakeDayAnswer(List<BakePlan> plans, Optional<Hindrance> hindrance) {
  /** Keeps its own copy. */
  public BakeDayAnswer {
    plans = List.copyOf(plans);
  }

  /**
   * Why there is no plan.
   *
   * @param why what stands in the way
   * @param change the smallest change tried that makes a plan possible; two where none alone does
   */
  public record Hindrance(Why why, Optional<Change> change) {}

  /** What stands in the way. */
  public enum Why {
    /** No feeding leaves the starter ripe when the baker can mix. */
    STARTER,
    /** Some step always falls outside the hours at the bench. */
    BENCH,
    /** Every plan that fits the clock leaves half of the doughs spoiled. */
    DOUGH
  }

  /**
   * A change that makes a plan possible.
   *
   * @param kind what is changed
   * @param hours by how much, where hours are changed; positive is later or longer
   * @param atHour the edge of the bench hours that moves, on the axis; for a starter share or dough
   *     temperature the new value, per cent or °C
   * @param plan the best plan then
   * @param also what must be changed as well
   */
  public record Change(
      Kind kind, double hours, double atHour, BakePlan plan, Optional<Change> also) {
    /** What is changed. */
    public enum Kind {
      /** The baker comes to the bench earlier. */
      BENCH_EARLIER,
      /** The baker stays at the bench longer. */
      BENCH_LONGER,
      /** The baker stays longer every time. */
      EVERY_TIME_LONGER,
      /** A refrigerator of 4 °C where there is none. */
      REFRIGERATOR,
      /** The bread is wanted at another hour. */
      READY,
      /** Another starter share. */
      STARTER_SHARE,
      /** Another dough temperature. */
      DOUGH_TEMPERATURE
    }
  }
}
