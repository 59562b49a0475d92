package doughtide.core.rise;

import doughtide.core.kinetics.RateCurve;
import doughtide.core.kinetics.RateForm;
import doughtide.core.quantity.Checks;
import doughtide.core.quantity.InputException;
import java.io.Serializable;
import java.util.ArrayList;
import java.util.List;

/**
 * The numbers of the rise model. Where no source stands beside a number it is a starting value: it
 * put a prototype inside the hours that bakers report, and the reader of a forecast meets its
 * uncertainty in the width of the window.
 *
 * @param yeastRatePerHour greatest growth rate of yeast in dough at 25 °C without salt, 0.05…2 per
 *     h (0.3935: the growth table circulated after Gänzle 1998, from memory, read at 25 °C through
 *     the curve fitted to it; that a laboratory rate holds in dough is an assumption)
 * @param bacteriaRatePerHour the same for lactic bacteria, 0.05…2 per h (starting value)
 * @param yeastSalt how salt in the water slows yeast, exponent per kg/kg (starting value; yeast
 *     tolerates 8 % NaCl, Gänzle et al. 1998)
 * @param bacteriaSaltLimit salt in the water at which bacteria stop, kg/kg, in the inhibitor form 1
 *     − (S/Smax)³ (4 % NaCl, Gänzle et al. 1998; the exponent is a starting value)
 * @param growthGasMol CO2 made while the yeast grows from nothing to its ceiling, mol/kg flour
 *     (starting value)
 * @param restingGasMolPerHour CO2 made per hour by a full yeast population at 25 °C beside growth,
 *     mol/(kg h) (starting value; growth-linked plus maintenance production after Luedeking &amp;
 *     Piret 1959)
 * @param restingActivationKJPerMol temperature dependence of that, kJ/mol (starting value)
 * @param bacteriaGasMol CO2 made while the bacteria grow to their ceiling, mol/kg flour (starting
 *     value)
 * @param gasCeilingMol CO2 that the flour's sugars allow, mol/kg flour (starting value; 0.275 mol
 *     of hexose at 2 mol CO2 each, about 5 % of the flour)
 * @param growthAcidMol acid made while the bacteria grow to their ceiling, mol/kg flour (starting
 *     value)
 * @param restingAcidMolPerHour acid made per hour by a full bacterial population at 25 °C, mol/(kg
 *     h) (starting value)
 * @param boundWater water that does not take part, kg/kg flour (about what does not freeze)
 * @param freeWaterHalf free water at which growth is half, kg/kg flour (the sign is known in the
 *     trade, the size is not measured: one adjustable number)
 * @param leakWidth width of the step from tight to leaking, gas share (starting value)
 * @param leakPerHour rate at which connected cells empty, per h (starting value)
 * @param acidWeakening fall of the retained gas share per mol/kg of acid beyond {@code
 *     acidTolerated} (starting value)
 * @param acidTolerated acid that the gluten bears, mol/kg flour (starting value)
 * @param ashActivity gain of all rates per unit of ash over white flour's 0.5 % (wholemeal and rye
 *     ferment faster: common practice, no source; the size is a starting value)
 * @param strengthLossPerHour loss of dough strength at 25 °C far from acid, per h (starting value)
 * @param forms pairs of rate curves, the first is the default; their spread is one of a forecast's
 *     unknowns
 */
public record RiseParameters(
    double yeastRatePerHour,
    double bacteriaRatePerHour,
    double yeastSalt,
    double bacteriaSaltLimit,
    double growthGasMol,
    double restingGasMolPerHour,
    double restingActivationKJPerMol,
    double bacteriaGasMol,
    double gasCeilingMol,
    double growthAcidMol,
    double restingAcidMolPerHour,
    double boundWater,
    double freeWaterHalf,
    double leakWidth,
    double leakPerHour,
    double acidWeakening,
    double acidTolerated,
    double ashActivity,
    double strengthLossPerHour,
    List<RateCurves> forms)
    implements Serializable {

  private static final double LOWEST_CELSIUS = -15;
  private static final double HIGHEST_CELSIUS = 60;
  private static final double STEP_CELSIUS = 0.25;
  private static final double FASTEST_RATE = 1000; // a slip, not a microbe
  private static final double REFERENCE_TOLERANCE = 1e-6;

  /** Checks every range. */
  public RiseParameters {
    Checks.inRange("yeast growth rate", yeastRatePerHour, 0.05, 2, "per h");
    Checks.inRange("bacterial growth rate", bacteriaRatePerHour, 0.05, 2, "per h");
    Checks.inRange("effect of salt on yeast", yeastSalt, 0, 50, "");
    Checks.inRange("salt limit of bacteria", bacteriaSaltLimit, 0.005, 0.3, "kg/kg");
    Checks.inRange("growth-linked gas", growthGasMol, 0.001, 1, "mol/kg");
    Checks.inRange("resting gas", restingGasMolPerHour, 0, 0.5, "mol/(kg h)");
    Checks.inRange("activation energy of resting gas", restingActivationKJPerMol, 0, 150, "kJ/mol");
    Checks.inRange("bacterial gas", bacteriaGasMol, 0, 1, "mol/kg");
    Checks.inRange("gas ceiling", gasCeilingMol, 0.05, 3, "mol/kg");
    Checks.inRange("growth-linked acid", growthAcidMol, 0, 1, "mol/kg");
    Checks.inRange("resting acid", restingAcidMolPerHour, 0, 0.1, "mol/(kg h)");
    Checks.inRange("bound water", boundWater, 0, 0.45, "kg/kg");
    Checks.inRange("half-saturation of free water", freeWaterHalf, 0, 2, "kg/kg");
    Checks.inRange("width of the leak", leakWidth, 0.001, 0.3, "");
    Checks.inRange("leak rate", leakPerHour, 0, 20, "per h");
    Checks.inRange("weakening by acid", acidWeakening, 0, 10, "per mol/kg");
    Checks.inRange("acid tolerated", acidTolerated, 0, 1, "mol/kg");
    Checks.inRange("activity by ash", ashActivity, 0, 100, "");
    Checks.inRange("loss of strength", strengthLossPerHour, 0, 1, "per h");
    Checks.inRange("number of rate curve forms", forms.size(), 1, 100, "");
    forms = List.copyOf(forms);
  }

  /**
   * Rate curves of yeast and bacteria that belong together.
   *
   * @param name as printed
   * @param yeast rate curve of the yeast
   * @param bacteria rate curve of the bacteria
   */
  public record RateCurves(String name, RateCurve yeast, RateCurve bacteria)
      implements Serializable {

    /**
     * @throws InputException if a curve is not 1 at 25 °C, or negative or not a number somewhere
     *     between −15 and 60 °C
     */
    public RateCurves {
      checkUnlessPublished("yeast", yeast);
      checkUnlessPublished("bacteria", bacteria);
    }

    /** The published ones are checked by a test instead of at every start of a program. */
    private static void checkUnlessPublished(String microbe, RateCurve curve) {
      if (!RateForm.isPublished(curve)) {
        check(microbe, curve);
      }
    }

    static void check(String microbe, RateCurve curve) {
      for (double celsius = LOWEST_CELSIUS; celsius <= HIGHEST_CELSIUS; celsius += STEP_CELSIUS) {
        double rate = curve.rate(celsius);
        if (!(rate >= 0 && rate <= FASTEST_RATE)) {
          Checks.inRange(name(microbe, celsius), rate, 0, FASTEST_RATE, "times the rate at 25 °C");
        }
      }
      Checks.inRange(
          name(microbe, RateCurve.REFERENCE_CELSIUS),
          curve.rate(RateCurve.REFERENCE_CELSIUS),
          1 - REFERENCE_TOLERANCE,
          1 + REFERENCE_TOLERANCE,
          "");
    }

    private static String name(String microbe, double celsius) {
      return "rate curve of the " + microbe + " at " + Checks.plain(celsius) + " °C";
    }
  }

  /**
   * The starting values with all published rate curves. The first pair, which the likely path uses,
   * is the mean of the four: in the cold the published forms run from no growth at all to a twelfth
   * of the rate at 25 °C, and a likely path on any one of them would not lie in the middle of its
   * own window.
   */
  public static RiseParameters standard() {
    return Standard.PARAMETERS;
  }

  /** Made and checked once, when first asked for. */
  private static final class Standard {
    static final RiseParameters PARAMETERS = published();
  }

  private static RiseParameters published() {
    List<RateCurves> forms = new ArrayList<>();
    forms.add(
        new RateCurves(
            "mean of the published forms", RateForm.meanYeast(), RateForm.meanBacteria()));
    for (RateForm form : RateForm.values()) {
      forms.add(new RateCurves(form.name(), form.yeast(), form.bacteria()));
    }
    return new RiseParameters(
        0.3935, 0.60, 7, 0.04, 0.16, 0.020, 60, 0.03, 0.55, 0.10, 0.004, 0.30, 0.30, 0.035, 0.5,
        1.5, 0.05, 8, 0.01, forms);
  }

  /**
   * The same numbers with one pair of rate curves only, for a culture whose curve is known.
   *
   * @param curves the pair
   */
  public RiseParameters withRateCurves(RateCurves curves) {
    return withForms(List.of(curves));
  }

  private RiseParameters withForms(List<RateCurves> newForms) {
    return new RiseParameters(
        yeastRatePerHour,
        bacteriaRatePerHour,
        yeastSalt,
        bacteriaSaltLimit,
        growthGasMol,
        restingGasMolPerHour,
        restingActivationKJPerMol,
        bacteriaGasMol,
        gasCeilingMol,
        growthAcidMol,
        restingAcidMolPerHour,
        boundWater,
        freeWaterHalf,
        leakWidth,
        leakPerHour,
        acidWeakening,
        acidTolerated,
        ashActivity,
        strengthLossPerHour,
        newForms);
  }
}
