package doughtide.core.loaf;

import doughtide.core.Internal;
import doughtide.core.quantity.InnerFault;
import doughtide.core.quantity.SentRecord;
import java.io.Serializable;
import java.util.OptionalDouble;

/**
 * Until when the likely dough is too early, right and late to be shaped, hours since mixing. Right
 * is every hour from which the loaf is right at the oven, see {@link LoafLimits#right}.
 *
 * @param rightFrom shaped earlier, the loaf has not risen enough at the oven; 0 if it never has too
 *     little
 * @param rightUntil shaped later, the loaf has risen too far at the oven; empty if it never does
 * @param pastBest shaped later, the loaf has fallen or become weak by the oven; empty for beyond
 *     the time looked at
 */
@Internal
public record ShapeStages(double rightFrom, OptionalDouble rightUntil, OptionalDouble pastBest)
    implements Serializable {

  /** Checks the order. */
  public ShapeStages {
    double until = rightUntil.orElse(pastBest.orElse(Double.POSITIVE_INFINITY));
    if (!(rightFrom >= 0) || !(until >= rightFrom) || !(pastBest.orElse(until) >= until)) {
      throw new InnerFault("hours to shape must be in order: right, late, past its best");
    }
  }

  private Object writeReplace() {
    return SentRecord.of(this);
  }
}
