package doughtide.core.day;

import doughtide.core.Internal;
import java.io.Serializable;
import java.util.function.DoublePredicate;

/**
 * How much later than planned a step may be.
 *
 * @param kind the step
 * @param hours widest delay, 0 or more
 * @param limit what ends it
 */
@Internal
public record StepMargin(BakeStep.Kind kind, double hours, Limit limit) implements Serializable {
  /** A delay is too long when it spoils this share of doughs more (starting value). */
  public static final double SPOILED_SHARE = 0.1;

  /** Margins are found to this, hours. */
  public static final double GRID_HOURS = 1.0 / 12;

  /** A longer margin is not looked for, hours. */
  public static final double LONGEST_HOURS = 6;

  /** What ends a margin. */
  @Internal
  public enum Limit {
    /** Later the loaf suffers, or the starter is not ripe. */
    DOUGH,
    /** Later the baker is no longer at the bench. */
    BENCH,
    /** Later the next step that needs it, or the bread, would be late too. */
    NEXT_STEP
  }

  /**
   * The longest delay of the grid with which enough doughs are good, where one of no length is
   * known to be good and the longest not to be.
   *
   * @param most hours
   * @param isGood whether enough doughs are good when something is so many hours late
   */
  public static double longest(double most, DoublePredicate isGood) {
    return longest(most, most, isGood);
  }

  /**
   * The same where it does not matter by how much a delay is longer than some hours.
   *
   * @param enough hours after which the search ends
   */
  static double longest(double most, double enough, DoublePredicate isGood) {
    int kept = 0;
    int spoiled = (int) Math.ceil(most / GRID_HOURS - 1e-9);
    while (spoiled - kept > 1 && kept * GRID_HOURS < enough) {
      int middle = (kept + spoiled) / 2;
      if (isGood.test(middle * GRID_HOURS)) {
        kept = middle;
      } else {
        spoiled = middle;
      }
    }
    return kept * GRID_HOURS;
  }
}
