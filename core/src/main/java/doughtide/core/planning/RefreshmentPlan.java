package doughtide.core.planning;

import java.util.List;
import java.util.OptionalDouble;

/**
 * One or more feedings after one another, each when the one before is in the middle of its ripe
 * time.
 *
 * @param steps the feedings in order; fewer than asked for if one of them is not ripe within ten
 *     days
 * @param asked how many were asked for
 */
public record RefreshmentPlan(List<Step> steps, int asked) {
  /** Keeps its own copy. */
  public RefreshmentPlan {
    steps = List.copyOf(steps);
  }

  /**
   * One feeding.
   *
   * @param fromHours when it is fed, hours since the first feeding
   * @param forecast hours count from this feeding
   */
  public record Step(double fromHours, FeedingForecast forecast) {
    /** When it is ready, hours since the first feeding. */
    public OptionalDouble readyHours() {
      OptionalDouble own = forecast.readyHours();
      return own.isEmpty() ? own : OptionalDouble.of(fromHours + own.getAsDouble());
    }
  }

  /** The last feeding. */
  public Step last() {
    return steps.get(steps.size() - 1);
  }

  /** When the last one is ready, hours since the first feeding; empty if that is never. */
  public OptionalDouble readyHours() {
    return steps.size() < asked ? OptionalDouble.empty() : last().readyHours();
  }
}
