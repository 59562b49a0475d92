package doughtide.core.dough;

/**
 * Density, heat capacity and conductivity of the parts of a food against temperature, °C.
 *
 * <p>Source: Choi &amp; Okos 1986, as printed in the ASHRAE Handbook, Refrigeration, "Thermal
 * properties of foods" (from memory). Valid −40…150 °C, water from 0 °C.
 */
enum ComponentProperties {
  PROTEIN(
      quadratic(1329.9, -0.51840, 0),
      quadratic(2008.2, 1.2089, -1.3129e-3),
      quadratic(0.17881, 1.1958e-3, -2.7178e-6)),
  FAT(
      quadratic(925.59, -0.41757, 0),
      quadratic(1984.2, 1.4733, -4.8008e-3),
      quadratic(0.18071, -2.7604e-4, -1.7749e-7)),
  CARBOHYDRATE(
      quadratic(1599.1, -0.31046, 0),
      quadratic(1548.8, 1.9625, -5.9399e-3),
      quadratic(0.20141, 1.3874e-3, -4.3312e-6)),
  FIBRE(
      quadratic(1311.5, -0.36589, 0),
      quadratic(1845.9, 1.8306, -4.6509e-3),
      quadratic(0.18331, 1.2497e-3, -3.1683e-6)),
  ASH(
      quadratic(2423.8, -0.28063, 0),
      quadratic(1092.6, 1.8896, -3.6817e-3),
      quadratic(0.32962, 1.4011e-3, -2.9069e-6)),
  WATER(
      quadratic(997.18, 0.0031439, -0.0037574),
      quadratic(4176.2, -9.0864e-2, 5.4731e-3),
      quadratic(0.57109, 1.7625e-3, -6.7036e-6));

  private final double[] densityKgPerM3;
  private final double[] heatCapacityJPerKgK;
  private final double[] conductivityWPerMK;

  ComponentProperties(double[] density, double[] heatCapacity, double[] conductivity) {
    this.densityKgPerM3 = density;
    this.heatCapacityJPerKgK = heatCapacity;
    this.conductivityWPerMK = conductivity;
  }

  private static double[] quadratic(double a, double b, double c) {
    return new double[] {a, b, c};
  }

  private static double at(double celsius, double[] k) {
    return k[0] + celsius * (k[1] + celsius * k[2]);
  }

  /** Density, kg/m³. */
  double densityKgPerM3(double celsius) {
    return at(celsius, densityKgPerM3);
  }

  /** Heat capacity, J/(kg K). */
  double heatCapacityJPerKgK(double celsius) {
    return at(celsius, heatCapacityJPerKgK);
  }

  /** Conductivity, W/(m K). */
  double conductivityWPerMK(double celsius) {
    return at(celsius, conductivityWPerMK);
  }
}
