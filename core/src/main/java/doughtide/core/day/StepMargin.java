package doughtide.core.day;

import doughtide.core.Internal;
import java.io.Serializable;

/**
 * How much later than planned a step may be.
 *
 * @param kind the step
 * @param hours widest delay, 0 or more
 * @param limit what ends it
 */
@Internal
public record StepMargin(BakeStep.Kind kind, double hours, Limit limit) implements Serializable {
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
}
