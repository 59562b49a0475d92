package doughtide.core.forecast;

import doughtide.core.rise.Unknowns;
import java.util.function.DoubleUnaryOperator;

/**
 * The unknowns of a forecast. All but the last two have a coordinate that is believed to be normal;
 * {@link #value} turns it into the unknown itself. The order is that of a {@link Belief}'s vectors.
 *
 * <p>The standard deviations of a baker nobody knows are starting values, widened so that the hours
 * to 50 % of a starter or dough scatter by about 0.29 in their logarithm: two cultures differ about
 * twofold in the gas of one dough (Houn &amp; Hsu 2013, Food Bioscience 3:75), one baker's peak
 * times by 0.27 (J. Lam 2021). Vigour and rate have heavier tails: Student's t with 5 degrees of
 * freedom.
 */
public enum Unknown {
  /** How lively the starter is; coordinate near its logarithm. */
  VIGOUR(0.45, x -> Math.exp(heavyTailed(x, 0.45))),
  /** ln of the lag factor. */
  LAG(0.50, Math::exp),
  /** True minus stated dough temperature, K. */
  TEMPERATURE(1.0, x -> x),
  /** The rate scale; coordinate near its logarithm. */
  RATE(0.18, x -> Math.exp(heavyTailed(x, 0.18))),
  /** Shift of the gas share at which the dough leaks. */
  RETENTION(0.06, x -> x),
  /** ln of the gas share after mixing over the usual one. */
  AIR(0.25, x -> Unknowns.USUAL_STARTING_AIR * Math.exp(x)),
  /** ln of the loss of strength over the model's. */
  STRENGTH(0.25, Math::exp),
  /** Which kind of yeast rules the culture. */
  KIND(0, x -> x),
  /** Which published rate curve of that kind. */
  CURVE(0, x -> x);

  private static final double FREEDOM = 5;
  private static final double UNIT_VARIANCE = Math.sqrt((FREEDOM - 2) / FREEDOM);

  private final double deviation;
  private final DoubleUnaryOperator value;

  Unknown(double deviation, DoubleUnaryOperator value) {
    this.deviation = deviation;
    this.value = value;
  }

  /**
   * {@return standard deviation of the coordinate for a baker nobody knows; 0 where there is none}
   */
  public double deviation() {
    return deviation;
  }

  /** {@return whether it has a coordinate; the other ones are a choice among names} */
  public boolean isNormal() {
    return deviation > 0;
  }

  /**
   * {@return the unknown itself, in the unit of {@link Unknowns}}
   *
   * @param coordinate in a belief
   */
  public double value(double coordinate) {
    return value.applyAsDouble(coordinate);
  }

  /**
   * A score of Student's t with the variance of the normal one in its place, by the expansion of
   * Cornish and Fisher (Abramowitz &amp; Stegun 26.7.5): increasing and smooth, so that the
   * coordinate stays normal.
   */
  private static double heavyTailed(double x, double scale) {
    double z = x / scale;
    double z2 = z * z;
    double first = (z2 + 1) / (4 * FREEDOM);
    double second = ((5 * z2 + 16) * z2 + 3) / (96 * FREEDOM * FREEDOM);
    double third = (((3 * z2 + 19) * z2 + 17) * z2 - 15) / (384 * FREEDOM * FREEDOM * FREEDOM);
    return x * UNIT_VARIANCE * (1 + first + second + third);
  }
}
