package doughtide.core.thermal;

import doughtide.core.Internal;
import doughtide.core.quantity.Checks;
import doughtide.core.quantity.InputException;
import doughtide.core.quantity.Value;
import java.util.Arrays;
import java.util.List;
import java.util.stream.Collectors;
import java.util.stream.IntStream;

/**
 * Heat set free evenly in the dough, per kilogram of dough, constant between steps; immutable.
 *
 * <p>Fermentation sets free 50.2 kJ per mol of CO2 ({@link #FERMENTATION_J_PER_MOL_CO2}).
 */
@Internal
public final class HeatSource extends Value {
  private static final long serialVersionUID = 1;

  /**
   * Heat of fermentation, J per mol CO2 (100 kJ per mol hexose; Colombié et al. 2007, second hand).
   */
  public static final double FERMENTATION_J_PER_MOL_CO2 = 50_200;

  private static final HeatSource NONE = new HeatSource(new double[] {0}, new double[] {0});

  private final double[] fromHours;
  private final double[] wattsPerKg;

  private HeatSource(double[] fromHours, double[] wattsPerKg) {
    this.fromHours = TraceHours.ascending(fromHours);
    this.wattsPerKg = wattsPerKg.clone();
  }

  /** No heat. */
  public static HeatSource none() {
    return NONE;
  }

  /**
   * The same heat all the time.
   *
   * @param wattsPerKg −100…100 W per kg of dough
   */
  public static HeatSource steady(double wattsPerKg) {
    return steps(new double[] {0}, new double[] {wattsPerKg});
  }

  /**
   * Steps: each value holds from its hour until the next; the first also before.
   *
   * @param fromHours one or more, strictly ascending
   * @param wattsPerKg as many values, −100…100 W per kg of dough
   * @throws InputException if lengths differ, there is none, hours do not ascend or a value is out
   *     of range
   */
  public static HeatSource steps(double[] fromHours, double[] wattsPerKg) {
    if (fromHours.length != wattsPerKg.length || fromHours.length == 0) {
      throw new InputException(
          "heat-source.lengths",
          fromHours.length
              + " hours and "
              + wattsPerKg.length
              + " heats: give one of each per step, at least one");
    }
    for (double each : wattsPerKg) {
      Checks.inRange("heat source", each, -100, 100, "W/kg");
    }
    return new HeatSource(fromHours, wattsPerKg);
  }

  /**
   * Heat at an hour, W per kg of dough.
   *
   * @param hours any finite hour
   */
  public double wattsPerKg(double hours) {
    int found = Arrays.binarySearch(fromHours, hours);
    int last = found >= 0 ? found : -found - 2;
    return wattsPerKg[Math.max(last, 0)];
  }

  double[] breakpoints() {
    return Arrays.copyOfRange(fromHours, 1, fromHours.length);
  }

  @Override
  protected List<?> parts() {
    return List.of(list(fromHours), list(wattsPerKg));
  }

  @Override
  public String toString() {
    return IntStream.range(0, wattsPerKg.length)
        .mapToObj(
            i ->
                (i == 0 ? "" : "from " + Checks.plain(fromHours[i]) + " h ")
                    + Checks.plain(wattsPerKg[i])
                    + " W/kg")
        .collect(Collectors.joining(", "));
  }
}
