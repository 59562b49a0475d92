package doughtide.core.flourtrial;

import doughtide.core.Internal;

/** How far below the limit of the flour a baker works (common practice, no source). */
@Internal
public enum Experience {
  /** 5 points below the limit. */
  BEGINNER("beginner", 5),
  /** 2 points below the limit. */
  EXPERIENCED("experienced", 2),
  /** Practised with wet doughs: 0 to 1 point below the limit; 1 is taken. */
  PRACTISED("practised", 1);

  private final String words;
  private final double pointsBelowLimit;

  Experience(String words, double pointsBelowLimit) {
    this.words = words;
    this.pointsBelowLimit = pointsBelowLimit;
  }

  /** As printed. */
  public String words() {
    return words;
  }

  /** Points of hydration below the limit. */
  public double pointsBelowLimit() {
    return pointsBelowLimit;
  }
}
