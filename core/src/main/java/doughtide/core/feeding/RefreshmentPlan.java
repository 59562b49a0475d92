package doughtide.core.feeding;

import doughtide.core.Internal;
import doughtide.core.quantity.Mass;
import java.util.ArrayList;
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
@Internal
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
  @Internal
  public record Step(double fromHours, FeedingForecast forecast) {
    /** When it is ready, hours since the first feeding. */
    public OptionalDouble readyHours() {
      OptionalDouble own = forecast.readyHours();
      return own.isEmpty() ? own : OptionalDouble.of(fromHours + own.getAsDouble());
    }
  }

  /** Less starter than this is hard to weigh and to stir in (starting value). */
  private static final double LEAST_STARTER_GRAMS = 5;

  /** The last feeding. */
  public Step last() {
    return steps.get(steps.size() - 1);
  }

  /** When the last one is ready, hours since the first feeding; empty if that is never. */
  public OptionalDouble readyHours() {
    return steps.size() < asked ? OptionalDouble.empty() : last().readyHours();
  }

  /**
   * What to weigh at each feeding so that an amount can be used at the end and enough is kept back
   * for the last feed again. Earlier feeds make at least what the next one takes, and take at least
   * 5 g of starter; what is left over is discarded.
   *
   * @param use what is used when the last feeding is ripe
   */
  public List<FeedAmounts> amounts(Mass use) {
    return amountsBefore(feedingOf(steps.size() - 1).amounts(use));
  }

  /**
   * The same with another amount to keep back.
   *
   * @param use what is used when the last feeding is ripe
   * @param keep what is kept back
   */
  public List<FeedAmounts> amounts(Mass use, Mass keep) {
    return amountsBefore(feedingOf(steps.size() - 1).amounts(use, keep));
  }

  private List<FeedAmounts> amountsBefore(FeedAmounts last) {
    List<FeedAmounts> amounts = new ArrayList<>(List.of(last));
    for (int i = steps.size() - 2; i >= 0; i--) {
      FeedAmounts next = amounts.get(0);
      amounts.add(0, feedingOf(i).making(next.starterGrams(), LEAST_STARTER_GRAMS));
    }
    return List.copyOf(amounts);
  }

  private Feeding feedingOf(int step) {
    return steps.get(step).forecast().feeding();
  }
}
