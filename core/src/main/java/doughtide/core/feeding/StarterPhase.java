package doughtide.core.feeding;

import doughtide.core.dough.StarterCondition;

/** Where a fed starter is on its way up and down. */
public enum StarterPhase {
  /** Still rising, more than 5 % below its greatest height. */
  YOUNG("young", "still rising, domed on top; mild", StarterCondition.YOUNG),
  /** Within 5 % of its greatest height and not yet falling. */
  RIPE("ripe", "near its greatest height, full of bubbles, not yet falling", StarterCondition.RIPE),
  /** Falling, but by less than 5 %. */
  LATE("late", "just begun to fall, flat or hollow on top; sourer", StarterCondition.RIPE),
  /** Fallen by more than 5 %. */
  PAST_BEST("past its best", "clearly fallen, loose and sour", StarterCondition.PAST_BEST);

  private final String words;
  private final String look;
  private final StarterCondition condition;

  StarterPhase(String words, String look, StarterCondition condition) {
    this.words = words;
    this.look = look;
    this.condition = condition;
  }

  /** As printed. */
  public String words() {
    return words;
  }

  /** How it looks (common practice, no source). */
  public String look() {
    return look;
  }

  /** The condition it has when it goes into a dough or is fed again. */
  public StarterCondition condition() {
    return condition;
  }
}
