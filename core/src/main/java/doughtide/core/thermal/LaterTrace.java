package doughtide.core.thermal;

import doughtide.core.Internal;
import doughtide.core.quantity.Checks;
import java.util.Arrays;

/**
 * A trace seen from a later hour on: its hour 0 is that hour of the other.
 *
 * @param trace the other, in °C over hours
 * @param fromHours hour of the other that becomes hour 0, h
 */
@Internal
public record LaterTrace(TemperatureTrace trace, double fromHours) implements TemperatureTrace {
  /** Refuses nothing where something is needed. */
  public LaterTrace {
    Checks.given("trace", trace);
  }

  @Override
  public double celsius(double hours) {
    return trace.celsius(hours + fromHours);
  }

  @Override
  public double[] breakpoints() {
    return Arrays.stream(trace.breakpoints()).map(hour -> hour - fromHours).toArray();
  }
}
