package doughtide.core.feeding;

import doughtide.core.Internal;

/**
 * The ratio for a wanted hour, or the nearest that is possible.
 *
 * @param wantedHours hours wanted from the first feeding to ready
 * @param reach whether the hour can be met
 * @param plan the feedings with the ratio found
 */
@Internal
public record RatioAnswer(double wantedHours, Reach reach, RefreshmentPlan plan) {
  /** Whether a wanted hour can be met. */
  @Internal
  public enum Reach {
    /** Ready at the wanted hour. */
    ON_TIME,
    /** Even with the most starter it is ready later than wanted. */
    NOT_SO_SOON,
    /** Even with the least starter it is ready earlier than wanted. */
    NOT_SO_LATE
  }

  /** The ratio of every feeding. */
  public FeedRatio ratio() {
    return plan.last().forecast().feeding().ratio();
  }
}
