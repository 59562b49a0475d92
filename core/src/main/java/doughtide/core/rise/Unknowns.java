package doughtide.core.rise;

import doughtide.core.quantity.Checks;
import java.io.Serializable;

/**
 * What nobody knows exactly about one bake. A forecast draws many of these; learning narrows them.
 *
 * @param vigour living microbes of this starter against a typical ripe one, 0.02…20; 1 is typical
 * @param lagFactor lag against the usual one of the starter's condition, 0.02…20
 * @param temperatureErrorCelsius true dough temperature minus the one stated, −8…8 °C
 * @param rateScale all rates against the model's, 0.1…10
 * @param retentionShift shift of the gas share at which the dough begins to leak, −0.2…0.2
 * @param startingAir gas share right after mixing, 0.005…0.25
 * @param formQuantile which rate curve form: 0 (the first) … 1 (the last)
 */
public record Unknowns(
    double vigour,
    double lagFactor,
    double temperatureErrorCelsius,
    double rateScale,
    double retentionShift,
    double startingAir,
    double formQuantile)
    implements Serializable {

  /** Gas share after ordinary mixing by hand or machine (starting value). */
  public static final double USUAL_STARTING_AIR = 0.06;

  /** Checks every range. */
  public Unknowns {
    Checks.inRange("vigour", vigour, 0.02, 20, "");
    Checks.inRange("lag factor", lagFactor, 0.02, 20, "");
    Checks.inRange("temperature error", temperatureErrorCelsius, -8, 8, "°C");
    Checks.inRange("rate scale", rateScale, 0.1, 10, "");
    Checks.inRange("retention shift", retentionShift, -0.2, 0.2, "");
    Checks.inRange("starting air", startingAir, 0.005, 0.25, "");
    Checks.inRange("form quantile", formQuantile, 0, 1, "");
  }

  /** The typical bake: every unknown at its middle, the default rate curves. */
  public static Unknowns typical() {
    return new Unknowns(1, 1, 0, 1, 0, USUAL_STARTING_AIR, 0);
  }
}
