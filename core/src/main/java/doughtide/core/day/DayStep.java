package doughtide.core.day;

import java.io.Serializable;
import java.util.List;

/**
 * One moment of a day with one dough or several.
 *
 * @param step what is done, and when
 * @param doughs the numbers of the doughs it is done for, from 0, ascending
 * @param person who does it, from 0; -1 where nobody is needed
 */
public record DayStep(BakeStep step, List<Integer> doughs, int person) implements Serializable {
  /**
   * Keeps its own copy.
   *
   * @param step what is done, and when
   * @param doughs the numbers of the doughs it is done for, from 0, ascending
   * @param person who does it, from 0; -1 where nobody is needed
   */
  public DayStep {
    doughs = List.copyOf(doughs);
  }

  /** Whether a person's hands are busy for some time. */
  boolean needsHands() {
    return step.toHour() > step.fromHour();
  }

  DayStep by(int newPerson) {
    return new DayStep(step, doughs, newPerson);
  }
}
