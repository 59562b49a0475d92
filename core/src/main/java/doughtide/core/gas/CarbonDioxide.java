package doughtide.core.gas;

import doughtide.core.Internal;

/**
 * Solubility of carbon dioxide in water and the vapour pressure of water.
 *
 * <p>Solubility: CRC Handbook of Chemistry and Physics, p. 8-90, 0–40 °C, accuracy about 2 %,
 * interpolated by a cubic spline in its logarithm; the two-parameter form of Sander 2023 (Atmos
 * Chem Phys 23:10901) is 7 % low at 0 °C.
 */
@Internal
public final class CarbonDioxide {
  private static final double STEP_CELSIUS = 5;
  private static final double HIGHEST_CELSIUS = 40;
  private static final double[] HENRY_MOL_PER_M3_PA = {
    7.430e-4, 6.240e-4, 5.277e-4, 4.518e-4, 3.904e-4, 3.400e-4, 2.992e-4, 2.655e-4, 2.375e-4
  };
  private static final double[][] SPLINE = spline();
  private static final double SETSCHENOW_L_PER_MOL = 0.10; // sodium chloride, from memory
  private static final double SALT_KG_PER_MOL = 0.05844;

  private CarbonDioxide() {}

  /**
   * The natural cubic spline through the logarithms, as commons-math3 makes it, without the thirty
   * classes that would cost every start of a program.
   */
  private static double[][] spline() {
    int n = HENRY_MOL_PER_M3_PA.length - 1;
    double[] y = new double[n + 1];
    for (int i = 0; i <= n; i++) {
      y[i] = Math.log(HENRY_MOL_PER_M3_PA[i]);
    }
    double h = STEP_CELSIUS;
    double[] mu = new double[n + 1];
    double[] z = new double[n + 1];
    for (int i = 1; i < n; i++) {
      double g = 2 * (2 * h) - h * mu[i - 1];
      mu[i] = h / g;
      z[i] = (3 * (y[i + 1] * h - y[i] * (2 * h) + y[i - 1] * h) / (h * h) - h * z[i - 1]) / g;
    }
    double[][] pieces = new double[n][];
    double next = 0; // nothing bends at the ends
    for (int i = n - 1; i >= 0; i--) {
      double c = z[i] - mu[i] * next;
      double b = (y[i + 1] - y[i]) / h - h * (next + 2 * c) / 3;
      pieces[i] = new double[] {y[i], b, c, (next - c) / (3 * h)};
      next = c;
    }
    return pieces;
  }

  /**
   * Henry's constant of CO2 in pure water.
   *
   * @param celsius 0…40 °C; outside, the end pieces of the spline go on
   * @return mol per m³ of water and pascal
   */
  public static double henryMolPerM3Pa(double celsius) {
    double inside = Math.min(Math.max(celsius, 0), HIGHEST_CELSIUS - 1e-9);
    int piece = (int) (inside / STEP_CELSIUS);
    double x = celsius - piece * STEP_CELSIUS;
    double[] c = SPLINE[piece];
    return Math.exp(c[0] + x * (c[1] + x * (c[2] + x * c[3])));
  }

  /**
   * Factor by which salt lowers the solubility: 10^(−0.10·c), c in mol NaCl per litre of water
   * (Setschenow; constant from memory). 2 % salt at 70 % hydration: 0.91.
   *
   * @param saltKgPerLitre kg of salt per litre of water, 0 or more
   */
  public static double saltFactor(double saltKgPerLitre) {
    return Math.pow(10, -SETSCHENOW_L_PER_MOL * saltKgPerLitre / SALT_KG_PER_MOL);
  }

  /**
   * Vapour pressure of water, Magnus form with the constants of Alduchov &amp; Eskridge 1996 (from
   * memory), within 0.4 % for −5…50 °C.
   *
   * @param celsius −5…50 °C
   * @return Pa
   */
  public static double waterVapourPa(double celsius) {
    return 610.94 * Math.exp(17.625 * celsius / (celsius + 243.04));
  }
}
