package doughtide.core.thermal;

import doughtide.core.Internal;
import doughtide.core.dough.Flour;
import doughtide.core.quantity.Checks;
import doughtide.core.quantity.Temperature;
import java.io.Serializable;

/**
 * Heat capacities for mixing a dough, J/(kg K).
 *
 * @param flourJPerKgK flour as sold, 1000…3000
 * @param waterJPerKgK water, 4000…4400
 * @param saltJPerKgK salt, 500…1500
 */
@Internal
public record HeatCapacities(double flourJPerKgK, double waterJPerKgK, double saltJPerKgK)
    implements Serializable {
  /** Sodium chloride, J/(kg K): from memory. */
  private static final double SALT = 864;

  /**
   * Checks the ranges.
   *
   * @throws doughtide.core.quantity.InputException outside a range or not a number
   */
  public HeatCapacities {
    Checks.inRange("heat capacity of flour", flourJPerKgK, 1000, 3000, "J/(kg K)");
    Checks.inRange("heat capacity of water", waterJPerKgK, 4000, 4400, "J/(kg K)");
    Checks.inRange("heat capacity of salt", saltJPerKgK, 500, 1500, "J/(kg K)");
  }

  /** Flour 1.76, water 4.18 kJ/(kg K): Çengel &amp; Boles, Thermodynamics, problem 5-157. */
  public static HeatCapacities published() {
    return new HeatCapacities(1760, 4180, SALT);
  }

  /**
   * From the flour's composition (Choi &amp; Okos 1986, from memory), water 4.18 kJ/(kg K).
   *
   * @param flour the flour
   * @param at the temperature it is taken at, −2…50 °C
   */
  public static HeatCapacities ofComposition(Flour flour, Temperature at) {
    double celsius = Checks.inRange("temperature of the flour", at.celsius(), -2, 50, "°C");
    return new HeatCapacities(flour.composition().heatCapacityJPerKgK(celsius), 4180, SALT);
  }

  /**
   * Starter: its flour and water by mass.
   *
   * @param hydration water over flour
   */
  double starterJPerKgK(double hydration) {
    return (flourJPerKgK + hydration * waterJPerKgK) / (1 + hydration);
  }
}
