package doughtide.core.gas;

import doughtide.core.Internal;

/**
 * Where the carbon dioxide is: shared at every instant between the dough's water and its gas cells,
 * which also hold the air beaten in while mixing. Amounts in mol and litres per kg of all flour.
 */
@Internal
public final class GasCells {
  /** Molar gas constant, J/(mol K), CODATA 2018. */
  public static final double GAS_CONSTANT = 8.314462618;

  private static final double ZERO_CELSIUS_K = 273.15;

  private GasCells() {}

  /**
   * CO2 in the cells. Henry's law, Dalton's law and the ideal gas give n² + n·(air + K − free) −
   * free·air = 0, K being what the water would hold under pure CO2.
   *
   * @param freeMol CO2 not lost, mol, 0 or more
   * @param airMol air in the cells, mol, more than 0
   * @param capacityMol K, mol, more than 0
   * @return mol, between 0 and {@code freeMol}
   */
  public static double inCellsMol(double freeMol, double airMol, double capacityMol) {
    double b = airMol + capacityMol - freeMol;
    double root = Math.sqrt(b * b + 4 * freeMol * airMol);
    return b > 0 ? 2 * freeMol * airMol / (b + root) : (root - b) / 2;
  }

  /**
   * Volume of one mol of moist gas, litres: R·T/(P − vapour pressure).
   *
   * @param celsius −2…45 °C
   * @param pressurePa air pressure, Pa
   */
  public static double litresPerMol(double celsius, double pressurePa) {
    double dry = pressurePa - CarbonDioxide.waterVapourPa(celsius);
    return 1000 * GAS_CONSTANT * (celsius + ZERO_CELSIUS_K) / dry;
  }
}
