package doughtide.core.thermal;

/**
 * What bowls, tubs, tins and baskets are made of. A new material is one line here.
 *
 * <p>Conductivity: woods from Perry's Chemical Engineers' Handbook; polypropylene 0.12…0.22, glass
 * 1.0, stoneware 1.0…1.5, steel 15, cane with air 0.07…0.12 W/(m K) from memory, middle of the
 * range. Density and heat capacity: from memory. Usual wall thickness: starting value.
 */
public enum Material {
  /** Cane proofing basket, air between the canes. */
  CANE_BASKET(0.10, 450, 1500, 8),
  /** Stainless steel. */
  STEEL(15, 7900, 500, 1),
  /** Glass. */
  GLASS(1.0, 2500, 800, 4),
  /** Polypropylene, the plastic of most tubs. */
  POLYPROPYLENE(0.17, 905, 1900, 2),
  /** Oak. */
  OAK(0.21, 720, 1600, 15),
  /** Maple. */
  MAPLE(0.19, 690, 1600, 15),
  /** Pine. */
  PINE(0.15, 500, 1600, 15),
  /** Stoneware. */
  STONEWARE(1.25, 2300, 850, 8);

  private final double conductivityWPerMK;
  private final double densityKgPerM3;
  private final double heatCapacityJPerKgK;
  private final double usualMillimetres;

  Material(double conductivity, double density, double heatCapacity, double usualMillimetres) {
    this.conductivityWPerMK = conductivity;
    this.densityKgPerM3 = density;
    this.heatCapacityJPerKgK = heatCapacity;
    this.usualMillimetres = usualMillimetres;
  }

  /** {@return conductivity, W/(m K)} */
  public double conductivityWPerMK() {
    return conductivityWPerMK;
  }

  /** {@return density, kg/m³} */
  public double densityKgPerM3() {
    return densityKgPerM3;
  }

  /** {@return heat capacity, J/(kg K)} */
  public double heatCapacityJPerKgK() {
    return heatCapacityJPerKgK;
  }

  /** {@return usual wall thickness, mm} */
  public double usualMillimetres() {
    return usualMillimetres;
  }
}
