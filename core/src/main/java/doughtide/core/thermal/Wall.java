package doughtide.core.thermal;

import doughtide.core.Internal;
import doughtide.core.quantity.Checks;
import java.io.Serializable;

/**
 * The wall between dough and air.
 *
 * @param material what it is made of
 * @param millimetres thickness, 0…100 mm; 0 is no wall
 */
@Internal
public record Wall(Material material, double millimetres) implements Serializable {
  /** No wall: the dough lies free. */
  public static final Wall NONE = new Wall(Material.CANE_BASKET, 0);

  /**
   * Checks the thickness.
   *
   * @throws doughtide.core.quantity.InputException outside 0…100 mm
   */
  public Wall {
    Checks.given("material", material);
    Checks.inRange("wall thickness", millimetres, 0, 100, "mm");
  }

  /** A wall of the material's usual thickness. */
  public static Wall of(Material material) {
    return new Wall(material, material.usualMillimetres());
  }

  /** Thermal resistance, m² K/W: thickness over conductivity. */
  public double resistanceM2KPerW() {
    return millimetres / 1000 / material.conductivityWPerMK();
  }

  /** Heat capacity per area, J/(m² K). */
  public double heatCapacityJPerM2K() {
    return millimetres / 1000 * material.densityKgPerM3() * material.heatCapacityJPerKgK();
  }
}
