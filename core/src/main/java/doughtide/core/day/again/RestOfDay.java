package doughtide.core.day.again;

import doughtide.core.Internal;
import doughtide.core.day.BakePlan;
import doughtide.core.day.BakeStep;
import java.util.List;

/**
 * What is left of a day, planned again; hours on the axis of the day.
 *
 * @param plan the dough as it goes on, with the margins of what is not done
 * @param steps from shaping on, ascending, with those that are done
 */
@Internal
public record RestOfDay(BakePlan plan, List<BakeStep> steps) {

  /** Keeps its own copy. */
  public RestOfDay {
    steps = List.copyOf(steps);
  }
}
