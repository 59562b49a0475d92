package doughtide.core.planning;

import doughtide.core.thermal.TemperatureTrace;
import java.util.Arrays;

/** A trace seen from a later hour on. */
record LaterTrace(TemperatureTrace trace, double fromHours) implements TemperatureTrace {
  @Override
  public double celsius(double hours) {
    return trace.celsius(hours + fromHours);
  }

  @Override
  public double[] breakpoints() {
    return Arrays.stream(trace.breakpoints()).map(hour -> hour - fromHours).toArray();
  }
}
