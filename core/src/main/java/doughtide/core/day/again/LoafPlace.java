package doughtide.core.day.again;

import doughtide.core.day.BakeStep;
import doughtide.core.day.ProofKind;

/**
 * Where shaped loaves place for the oven.
 *
 * @param kind where, at last
 * @param roomHours how long they stand in the room before they go into the cold, hours; 0 where
 *     they go there from the bench, or never
 */
record LoafPlace(ProofKind kind, double roomHours) {

  /** From the bench. */
  static LoafPlace fromBench(ProofKind kind) {
    return new LoafPlace(kind, 0);
  }

  boolean isCold() {
    return kind == ProofKind.COLD;
  }

  /** The step with its hour as it is by this: the loaves go into the cold after the room. */
  BakeStep moved(BakeStep step) {
    double later = step.kind() == BakeStep.Kind.LOAVES_INTO_COLD ? roomHours : 0;
    return later == 0
        ? step
        : new BakeStep(step.kind(), step.fromHour() + later, step.toHour() + later, step.number());
  }
}
