package doughtide.core.thermal;

import doughtide.core.quantity.Checks;
import doughtide.core.quantity.InputException;
import doughtide.core.quantity.Value;
import java.util.Arrays;
import java.util.List;
import java.util.stream.Collectors;
import java.util.stream.IntStream;

/** Constant between jumps. */
final class StepTrace extends Value implements TemperatureTrace {
  private static final long serialVersionUID = 1;

  private final double[] fromHours;
  private final double[] celsius;

  StepTrace(List<Step> steps) {
    if (steps.isEmpty()) {
      throw new InputException(
          "temperature-trace.empty",
          "a temperature trace needs at least one step, for example 0 h 24 °C");
    }
    double[] hours = new double[steps.size()];
    this.celsius = new double[steps.size()];
    for (int i = 0; i < hours.length; i++) {
      hours[i] = steps.get(i).hours();
      celsius[i] = steps.get(i).temperature().celsius();
    }
    this.fromHours = TraceHours.ascending(hours);
  }

  @Override
  public double celsius(double hours) {
    if (celsius.length == 1) {
      return celsius[0];
    }
    int found = Arrays.binarySearch(fromHours, hours);
    int last = found >= 0 ? found : -found - 2;
    return celsius[Math.max(last, 0)];
  }

  @Override
  public double[] breakpoints() {
    return Arrays.copyOfRange(fromHours, 1, fromHours.length);
  }

  @Override
  protected List<?> parts() {
    return List.of(list(fromHours), list(celsius));
  }

  @Override
  public String toString() {
    return IntStream.range(0, celsius.length)
        .mapToObj(
            i -> (i == 0 ? "" : "from " + Checks.plain(fromHours[i]) + " h ") + degrees(celsius[i]))
        .collect(Collectors.joining(", "));
  }

  static String degrees(double celsius) {
    return Checks.plain(celsius) + " °C";
  }
}
