package doughtide.core.rise;

import java.util.List;

/**
 * The temperature of a run of some length, cut into segments and checked. Immutable, shared by the
 * members of an ensemble.
 *
 * @param hours length of the run
 * @param segments in order
 * @param stepwise whether the dough keeps one temperature in each segment, so that rates need
 *     computing only at its start
 */
record TemperatureSegments(double hours, List<Segment> segments, boolean stepwise) {

  /**
   * Cuts and checks.
   *
   * @throws doughtide.core.quantity.InputException if a temperature is one at which the equations
   *     mean nothing
   */
  static TemperatureSegments of(DoughTemperature temperature, double hours) {
    List<Segment> segments = List.copyOf(Segment.of(temperature, hours));
    boolean stepwise = true;
    for (Segment segment : segments) {
      segment.checkCelsius();
      stepwise &= segment.keepsOneTemperature();
    }
    return new TemperatureSegments(hours, segments, stepwise);
  }
}
