package doughtide.core.thermal;

import doughtide.core.Internal;
import doughtide.core.dough.DoughProperties;
import doughtide.core.quantity.Checks;
import doughtide.core.quantity.Share;
import doughtide.core.quantity.Temperature;
import java.io.Serializable;

/**
 * What decides how heat moves in a dough, taken as constant while it cools.
 *
 * @param densityKgPerM3 50…2000 kg/m³, gas cells included
 * @param heatCapacityJPerKgK 500…5000 J/(kg K)
 * @param conductivityWPerMK 0.01…5 W/(m K)
 */
@Internal
public record DoughHeat(
    double densityKgPerM3, double heatCapacityJPerKgK, double conductivityWPerMK)
    implements Serializable {

  /**
   * Checks the ranges.
   *
   * @throws doughtide.core.quantity.InputException outside a range or not a number
   */
  public DoughHeat {
    Checks.inRange("density", densityKgPerM3, 50, 2000, "kg/m³");
    Checks.inRange("heat capacity", heatCapacityJPerKgK, 500, 5000, "J/(kg K)");
    Checks.inRange("conductivity", conductivityWPerMK, 0.01, 5, "W/(m K)");
  }

  /**
   * From the composition.
   *
   * @param properties of the dough without gas
   * @param at the temperature the properties are taken at, for example the mean of start and end
   * @param gasShare volume of gas over volume of dough, 0…90 %
   */
  public static DoughHeat of(DoughProperties properties, Temperature at, Share gasShare) {
    double gas = Checks.inRange("gas share", gasShare.percent(), 0, 90, "%") / 100;
    double celsius = at.celsius();
    return new DoughHeat(
        properties.densityKgPerM3(celsius) * (1 - gas),
        properties.heatCapacityJPerKgK(celsius),
        properties.conductivityWPerMK(celsius, gas));
  }

  /** Thermal diffusivity, m²/s: conductivity over density and heat capacity. */
  public double diffusivityM2PerS() {
    return conductivityWPerMK / (densityKgPerM3 * heatCapacityJPerKgK);
  }
}
