package doughtide.core.flourtrial;

import doughtide.core.Internal;

/** How far below the limit of the flour a baker works (common practice, no source). */
@Internal
public enum Experience {
  /** 5 points below the limit. */
  BEGINNER(5),
  /** 2 points below the limit. */
  EXPERIENCED(2),
  /** Practised with wet doughs: 0 to 1 point below the limit; 1 is taken. */
  PRACTISED(1);

  private final double pointsBelowLimit;

  Experience(double pointsBelowLimit) {
    this.pointsBelowLimit = pointsBelowLimit;
  }

  /** Points of hydration below the limit. */
  public double pointsBelowLimit() {
    return pointsBelowLimit;
  }
}
