package doughtide.core.gas;

import org.apache.commons.math3.analysis.interpolation.SplineInterpolator;
import org.apache.commons.math3.analysis.polynomials.PolynomialFunction;

/**
 * Solubility of carbon dioxide in water and the vapour pressure of water.
 *
 * <p>Solubility: CRC Handbook of Chemistry and Physics, p. 8-90, 0–40 °C, accuracy about 2 %,
 * interpolated by a cubic spline in its logarithm; the two-parameter form of Sander 2023 (Atmos
 * Chem Phys 23:10901) is 7 % low at 0 °C.
 */
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

  private static double[][] spline() {
    int n = HENRY_MOL_PER_M3_PA.length;
    double[] celsius = new double[n];
    double[] logarithm = new double[n];
    for (int i = 0; i < n; i++) {
      celsius[i] = i * STEP_CELSIUS;
      logarithm[i] = Math.log(HENRY_MOL_PER_M3_PA[i]);
    }
    PolynomialFunction[] pieces =
        new SplineInterpolator().interpolate(celsius, logarithm).getPolynomials();
    double[][] coefficients = new double[pieces.length][];
    for (int i = 0; i < pieces.length; i++) {
      double[] own = pieces[i].getCoefficients();
      coefficients[i] = java.util.Arrays.copyOf(own, 4);
    }
    return coefficients;
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
