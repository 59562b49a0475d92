package doughtide.core.day.again;

import doughtide.core.Internal;
import doughtide.core.day.BakeStep;
import doughtide.core.day.ProofKind;
import java.util.List;

/**
 * What is left of a day, planned again; hours on the axis of the day.
 *
 * @param shapeHour when dividing begins or began
 * @param shapeRisePercent rise that the sample jar of the likely dough shows then
 * @param basketHour when the loaves are in their baskets
 * @param proof where they wait
 * @param ovenHour when the first go into the oven
 * @param goodShare share of doughs that come out right, 0…1
 * @param steps from shaping on, ascending, with those that are done
 */
@Internal
public record RestOfDay(
    double shapeHour,
    double shapeRisePercent,
    double basketHour,
    ProofKind proof,
    double ovenHour,
    double goodShare,
    List<BakeStep> steps) {

  /** Keeps its own copy. */
  public RestOfDay {
    steps = List.copyOf(steps);
  }
}
