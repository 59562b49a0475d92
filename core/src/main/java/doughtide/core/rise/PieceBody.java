package doughtide.core.rise;

import doughtide.core.Internal;
import doughtide.core.thermal.Conduction;
import doughtide.core.thermal.TemperatureTrace;
import java.util.Arrays;

/**
 * A piece of dough as a body that exchanges heat with the air around it.
 *
 * @param conduction its shells and how heat moves between them
 * @param around the air; hour 0 is when the piece gets there
 * @param changesFromHours from this hour on the air may be warmer than stated (when the piece goes
 *     into the cold)
 * @param doughPerFlour mass of dough over mass of all flour
 */
@Internal
public record PieceBody(
    Conduction conduction, TemperatureTrace around, double changesFromHours, double doughPerFlour) {

  double heatCapacityPerKgFlourJPerK() {
    return conduction.heat().heatCapacityJPerKgK() * doughPerFlour;
  }

  /** Whether the air keeps its temperature from an hour on. */
  boolean isSteadyFrom(double hours) {
    return Arrays.stream(around.breakpoints()).allMatch(each -> each <= hours);
  }

  double airCelsius(double hours, double shiftCelsius) {
    return around.celsius(hours) + (hours >= changesFromHours ? shiftCelsius : 0);
  }
}
