package doughtide.core.feeding;

import doughtide.core.Internal;

/** Where a fed starter is on its way up and down. */
@Internal
public enum StarterPhase {
  /** Still rising, more than 5 % below its greatest height. */
  YOUNG,
  /** Within 5 % of its greatest height and not yet falling. */
  RIPE,
  /** Falling, but by less than 5 %. */
  LATE,
  /** Fallen by more than 5 %. */
  PAST_BEST
}
