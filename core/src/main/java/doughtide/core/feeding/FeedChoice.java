package doughtide.core.feeding;

import doughtide.core.Internal;
import java.io.Serializable;

/**
 * A feeding that makes the starter ripe for mixing; hours on the plan's axis.
 *
 * @param feedHour when it is fed
 * @param mixHour when it is used
 * @param ratio how it is fed
 * @param ripeHours likely hours from feeding to ripe
 * @param fallingHours likely hours from feeding until it begins to fall; of a thin feed that is
 *     long on its way until it has fallen by 5 %
 */
@Internal
public record FeedChoice(
    double feedHour, double mixHour, FeedRatio ratio, double ripeHours, double fallingHours)
    implements Serializable {
  /** Age of the starter at mixing, hours. */
  public double ageHours() {
    return mixHour - feedHour;
  }

  /** Distance to the nearer end of the ripe time; negative outside. */
  public double slackHours() {
    return Math.min(ageHours() - ripeHours, fallingHours - ageHours());
  }
}
