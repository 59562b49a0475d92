package doughtide.core.day;

import java.util.List;

/**
 * One moment of a day with several doughs.
 *
 * @param step what is done, and when
 * @param doughs the numbers of the doughs it is done for, from 0, ascending
 * @param person who does it, from 0; -1 where nobody is needed
 */
public record SharedStep(BakeStep step, List<Integer> doughs, int person) {
  /** Keeps its own copy. */
  public SharedStep {
    doughs = List.copyOf(doughs);
  }

  /** Whether a person's hands are busy for some time. */
  boolean needsHands() {
    return step.toHour() > step.fromHour();
  }

  SharedStep by(int newPerson) {
    return new SharedStep(step, doughs, newPerson);
  }
}
