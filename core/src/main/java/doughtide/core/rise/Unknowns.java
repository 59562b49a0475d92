package doughtide.core.rise;

import doughtide.core.Internal;
import doughtide.core.quantity.Checks;
import java.io.Serializable;

/**
 * What nobody knows exactly about one bake. A forecast draws many of these; learning narrows them.
 *
 * @param vigour living microbes of this starter against a typical ripe one, 0.02…20; 1 is typical
 * @param lagFactor lag against the usual one of the starter's condition, 0.02…20
 * @param temperatureErrorCelsius true dough temperature minus the one stated, −8…8 °C
 * @param rateScale all rates against the model's, 0.1…10
 * @param retentionShift shift of the gas share at which the dough begins to leak, −0.3…0.3
 * @param startingAir gas share right after mixing, without the gas of the seed, 0.005…0.25
 * @param strengthLoss how fast strength is lost against the model's, 0.1…10
 * @param curves key of the rate curves, for example {@code humilis/schoolfield}; a model with one
 *     pair only uses that one
 */
@Internal
public record Unknowns(
    double vigour,
    double lagFactor,
    double temperatureErrorCelsius,
    double rateScale,
    double retentionShift,
    double startingAir,
    double strengthLoss,
    String curves)
    implements Serializable {

  /** Gas share after ordinary mixing by hand or machine (starting value). */
  public static final double USUAL_STARTING_AIR = 0.06;

  private static final Unknowns TYPICAL =
      new Unknowns(1, 1, 0, 1, 0, USUAL_STARTING_AIR, 1, "humilis/schoolfield");

  /** Checks every range. */
  public Unknowns {
    Checks.given("curves", curves);
    Checks.inRange("vigour", vigour, 0.02, 20, "");
    Checks.inRange("lag factor", lagFactor, 0.02, 20, "");
    Checks.inRange("temperature error", temperatureErrorCelsius, -8, 8, "°C");
    Checks.inRange("rate scale", rateScale, 0.1, 10, "");
    Checks.inRange("retention shift", retentionShift, -0.3, 0.3, "");
    Checks.inRange("starting air", startingAir, 0.005, 0.25, "");
    Checks.inRange("loss of strength", strengthLoss, 0.1, 10, "");
  }

  /** Every unknown at its middle, with one published rate curve of <em>K. humilis</em>. */
  public static Unknowns typical() {
    return TYPICAL;
  }

  /**
   * The same bake with other rate curves.
   *
   * @param key key of a pair that the model has
   */
  public Unknowns withCurves(String key) {
    return new Unknowns(
        vigour,
        lagFactor,
        temperatureErrorCelsius,
        rateScale,
        retentionShift,
        startingAir,
        strengthLoss,
        key);
  }
}
