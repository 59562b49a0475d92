package doughtide.core.thermal;

import doughtide.core.Internal;
import java.io.Serializable;

/**
 * Water of a temperature below the tap's, made from tap water and ice at 0 °C.
 *
 * @param tapGrams water from the tap
 * @param iceGrams ice
 */
@Internal
public record Ice(double tapGrams, double iceGrams) implements Serializable {
  /** Heat of melting, J/kg (334 kJ/kg; Çengel &amp; Boles, Thermodynamics, table A-3). */
  public static final double HEAT_OF_MELTING_J_PER_KG = 334_000;

  /**
   * Share of ice in the water: c·(tap − wanted)/(L + c·tap), from the balance of heat with ice at 0
   * °C.
   *
   * @param tapCelsius temperature of the tap water
   * @param wantedCelsius temperature of the water wanted; below 0 °C what ice there is melts in the
   *     dough
   * @param waterJPerKgK heat capacity of water
   * @return 0 or less where no ice is needed, above 1 where all ice is not enough
   */
  static double share(double tapCelsius, double wantedCelsius, double waterJPerKgK) {
    return waterJPerKgK
        * (tapCelsius - wantedCelsius)
        / (HEAT_OF_MELTING_J_PER_KG + waterJPerKgK * tapCelsius);
  }
}
