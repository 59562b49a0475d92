package doughtide.core.day;

import doughtide.core.quantity.Checks;
import java.io.Serializable;
import java.util.List;
import java.util.Optional;

/**
 * The best ways through a day, or why there is none.
 *
 * @param days best first; they differ in where a dough waits or in when it is mixed
 * @param obstacle why there is no plan, and what would make one possible; empty if there is one
 * @param choice why the first plan comes first; empty if there is none
 * @param complete whether the search came to its end; otherwise this is the best found by then
 */
public record DayAnswer(
    List<DayPlan> days, Optional<Obstacle> obstacle, Optional<Choice> choice, boolean complete) {
  /**
   * Keeps its own copy.
   *
   * @param days best first; they differ in where a dough waits or in when it is mixed
   * @param obstacle why there is no plan, and what would make one possible; empty if there is one
   * @param choice why the first plan comes first; empty if there is none
   * @param complete whether the search came to its end; otherwise this is the best found by then
   */
  public DayAnswer {
    days = List.copyOf(days);
  }

  /**
   * Why the first plan comes first.
   *
   * @param criterion what put it before the next best
   * @param value its own; hours, share or number by the criterion
   * @param other that of the next best; of {@link Criterion#ALONE} the age of the oldest bread when
   *     it is wanted, hours
   */
  public record Choice(Criterion criterion, double value, double other) implements Serializable {
    /**
     * Checks that the criterion is given.
     *
     * @param criterion what put it before the next best
     * @param value its own; hours, share or number by the criterion
     * @param other that of the next best, or the age of the oldest bread in hours
     */
    public Choice {
      Checks.given("criterion", criterion);
    }
  }

  /** What plans are ranked by, the weightiest first. */
  public enum Criterion {
    /** It is shaped where its jar says; the other by so many hours before or after. */
    POINT,
    /** Its least margin, hours. */
    MARGIN,
    /** Share of doughs that come out right, 0…1. */
    RIGHT,
    /** Share of the hours in which its jar may show its mark that are hours at the bench, 0…1. */
    JAR,
    /** Age of the bread when it is wanted, hours. */
    FRESH,
    /** Steps with hands on between 23:00 and 06:00. */
    NIGHT,
    /** From the first step to the bread, hours. */
    LENGTH,
    /**
     * What is not ordinary: a dough far from the room's temperature, a very small or large share.
     */
    ORDINARY,
    /** No other plan was weighed against it: its least margin, hours. */
    ALONE
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
    /**
     * Keeps its own copy.
     *
     * @param adjustments one; two where none alone does
     * @param day a plan then
     */
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
