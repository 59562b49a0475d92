package doughtide.core.feeding;

import doughtide.core.Internal;

/** Where a fed starter is on its way up and down. */
@Internal
public enum StarterPhase {
  /** Still rising, more than 5 % below its greatest height. */
  YOUNG("young", "still rising, domed on top; mild"),
  /** Within 5 % of its greatest height and not yet falling. */
  RIPE("ripe", "near its greatest height, full of bubbles, not yet falling"),
  /** Falling, but by less than 5 %. */
  LATE("late", "just begun to fall, flat or hollow on top; sourer"),
  /** Fallen by more than 5 %. */
  PAST_BEST("past its best", "clearly fallen, loose and sour");

  private final String words;
  private final String look;

  StarterPhase(String words, String look) {
    this.words = words;
    this.look = look;
  }

  /** As printed. */
  public String words() {
    return words;
  }

  /** How it looks (common practice, no source). */
  public String look() {
    return look;
  }
}
