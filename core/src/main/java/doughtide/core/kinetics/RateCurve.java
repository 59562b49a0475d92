package doughtide.core.kinetics;

import doughtide.core.quantity.Checks;
import java.io.Serializable;

/**
 * How fast a microbe grows at a temperature, relative to its rate at 25 °C. All implementations
 * must be immutable, serializable and thread-safe, give 1 at 25 °C, 0 where nothing grows, and
 * never a negative number or NaN for −15…60 °C, which {@code RiseParameters.RateCurves} checks.
 *
 * <pre>{@code
 * RateCurve yeast = RateForm.SCHOOLFIELD.yeast(YeastKind.HUMILIS);
 * double twice = yeast.rate(27) / yeast.rate(20);
 * }</pre>
 *
 * <p>Four published forms stand in {@link RateForm}; another is one class that implements this
 * interface.
 */
public interface RateCurve extends Serializable {
  /** The temperature at which every curve is 1, °C. */
  double REFERENCE_CELSIUS = 25;

  /**
   * {@return rate relative to 25 °C}
   *
   * @param celsius dough temperature, −15…60 °C (the model looks beyond the dough's −2…45 °C)
   */
  double rate(double celsius);

  /**
   * {@return lowest temperature of the data behind this curve, °C; below it the curve is a guess}
   */
  double lowestCelsius();

  /**
   * {@return highest temperature of the data behind this curve, °C; above it the curve is a guess}
   */
  double highestCelsius();

  /**
   * {@return the form of Schoolfield, Sharpe &amp; Magnuson (1981, J Theor Biol 88:719–731) with
   * high-temperature inactivation: exp(Ea/R·(1/298.15 − 1/K)) / (1 + exp(Ed/R·(1/Kh − 1/K)))}
   *
   * @param activationKJPerMol Ea, 10…300
   * @param inactivationKJPerMol Ed, 50…2000
   * @param halfInactiveCelsius temperature at which half is inactive, 10…60 °C
   * @param lowest lowest temperature of the data, °C
   * @param highest highest temperature of the data, °C
   */
  static RateCurve schoolfield(
      double activationKJPerMol,
      double inactivationKJPerMol,
      double halfInactiveCelsius,
      double lowest,
      double highest) {
    checkData(lowest, highest);
    return new SchoolfieldCurve(
        Checks.inRange("activation energy", activationKJPerMol, 10, 300, "kJ/mol"),
        Checks.inRange("inactivation energy", inactivationKJPerMol, 50, 2000, "kJ/mol"),
        Checks.inRange("half-inactive temperature", halfInactiveCelsius, 10, 60, "°C"),
        lowest,
        highest);
  }

  /**
   * {@return the cardinal temperature model with inflection of Rosso, Lobry &amp; Flandrois (1993,
   * J Theor Biol 162:447–463)}
   *
   * @param minimum no growth at and below, −20…20 °C
   * @param optimum fastest growth, 15…45 °C
   * @param maximum no growth at and above, up to 60 °C
   * @param lowest lowest temperature of the data, °C
   * @param highest highest temperature of the data, °C
   */
  static RateCurve cardinal(
      double minimum, double optimum, double maximum, double lowest, double highest) {
    Checks.inRange("minimum temperature", minimum, -20, 20, "°C");
    Checks.inRange("optimum temperature", optimum, Math.max(15, minimum), 45, "°C");
    Checks.inRange("maximum temperature", maximum, optimum, 60, "°C");
    checkData(lowest, highest);
    return new CardinalCurve(minimum, optimum, maximum, lowest, highest);
  }

  /**
   * {@return the extended square-root model of Ratkowsky et al. (1983, J Bacteriol 154:1222–1226):
   * √µ = b·(T − Tmin)·(1 − exp(c·(T − Tmax)))}.
   *
   * @param minimum Tmin, −20…20 °C
   * @param maximum Tmax, above 25, up to 60 °C
   * @param steepness c, 0.01…2 per °C
   * @param lowest lowest temperature of the data, °C
   * @param highest highest temperature of the data, °C
   */
  static RateCurve squareRoot(
      double minimum, double maximum, double steepness, double lowest, double highest) {
    Checks.inRange("minimum temperature", minimum, -20, 20, "°C");
    Checks.inRange("maximum temperature", maximum, 25.5, 60, "°C");
    Checks.inRange("steepness", steepness, 0.01, 2, "per °C");
    checkData(lowest, highest);
    return new SquareRootCurve(minimum, maximum, steepness, lowest, highest);
  }

  /**
   * {@return the power–exponential form x^b·exp(−c·x) with x = Tmax − T, 0 from Tmax on (the form
   * in which the growth rates after Gänzle, Ehmann &amp; Hammes 1998, Appl Environ Microbiol
   * 64:2616–2623, are often written; from memory)}
   *
   * @param power b, 0.1…20
   * @param decayPerCelsius c, 0.01…2 per °C
   * @param maximum Tmax, above 25, up to 60 °C
   * @param lowest lowest temperature of the data, °C
   * @param highest highest temperature of the data, °C
   */
  static RateCurve powerExponential(
      double power, double decayPerCelsius, double maximum, double lowest, double highest) {
    Checks.inRange("power", power, 0.1, 20, "");
    Checks.inRange("decay", decayPerCelsius, 0.01, 2, "per °C");
    Checks.inRange("maximum temperature", maximum, 25.5, 60, "°C");
    checkData(lowest, highest);
    return new PowerExponentialCurve(power, decayPerCelsius, maximum, lowest, highest);
  }

  private static void checkData(double lowest, double highest) {
    Checks.inRange("lowest temperature of the data", lowest, -60, 100, "°C");
    Checks.inRange("highest temperature of the data", highest, lowest, 100, "°C");
  }
}
