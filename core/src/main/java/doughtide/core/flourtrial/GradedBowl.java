package doughtide.core.flourtrial;

import doughtide.core.Internal;
import doughtide.core.quantity.Checks;
import doughtide.core.quantity.InputException;
import java.io.Serializable;

/**
 * One grade given by one person to one bowl.
 *
 * @param trial name of the trial (a day, a lot), 1…100 characters
 * @param person who judged, 1…100 characters
 * @param hydrationPercent water over flour in the bowl, 30…150 %
 * @param grade what was found
 */
@Internal
public record GradedBowl(String trial, String person, double hydrationPercent, Grade grade)
    implements Serializable {
  private static final int LONGEST = 100;

  /**
   * @throws InputException if a name is blank or too long, or the hydration is out of range
   */
  public GradedBowl {
    Checks.given("grade", grade);
    trial = named("trial", trial);
    person = named("person", person);
    Checks.inRange("hydration of the bowl", hydrationPercent, 30, 150, "%");
  }

  private static String named(String what, String text) {
    String name = text.strip();
    if (name.isEmpty() || name.length() > LONGEST) {
      throw new InputException(
          "trial.name-length",
          "the name of the "
              + what
              + " has "
              + name.length()
              + " characters, it must have 1 to "
              + LONGEST
              + ": write a short name");
    }
    return name;
  }
}
