package doughtide.core.rise;

import doughtide.core.kinetics.RateCurve;
import doughtide.core.kinetics.RateForm;
import doughtide.core.kinetics.YeastKind;
import doughtide.core.quantity.Checks;
import doughtide.core.quantity.InputException;
import java.io.Serializable;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Set;

/**
 * The numbers of the rise model, in parts. Where no source stands beside a number it is a starting
 * value; the reader of a forecast meets its uncertainty in the width of the window.
 * core/docs/validation.md says which published lines each number was fitted to.
 *
 * <pre>{@code
 * RiseParameters standard = RiseParameters.standard();
 * RiseParameters tighter = standard.with(new RiseParameters.Retention(0.035, 0.3, 1.5, 0.05, 0.05));
 * }</pre>
 *
 * @param growth of yeast and bacteria
 * @param gas made by them
 * @param acid made by them
 * @param retention of the gas
 * @param strength of the dough
 * @param curves pairs of rate curves; their spread is one of a forecast's unknowns
 */
public record RiseParameters(
    Growth growth,
    Gas gas,
    Acid acid,
    Retention retention,
    Strength strength,
    List<RateCurves> curves)
    implements Serializable {

  private static final double LOWEST_CELSIUS = -15;
  private static final double HIGHEST_CELSIUS = 60;
  private static final double STEP_CELSIUS = 0.25;
  private static final double FASTEST_RATE = 1000; // a slip, not a microbe
  private static final double REFERENCE_TOLERANCE = 1e-6;

  /**
   * @param growth of yeast and bacteria
   * @param gas made by them
   * @param acid made by them
   * @param retention of the gas
   * @param strength of the dough
   * @param curves pairs of rate curves; their spread is one of a forecast's unknowns
   * @throws InputException if there is no pair of rate curves, or two have one key
   */
  public RiseParameters {
    Checks.given("acid", acid);
    Checks.given("gas", gas);
    Checks.given("growth", growth);
    Checks.given("retention", retention);
    Checks.given("strength", strength);
    Checks.inRange("number of rate curves", curves.size(), 1, 100, "");
    curves = List.copyOf(curves);
    Set<String> keys = new HashSet<>();
    for (RateCurves each : curves) {
      if (!keys.add(each.key())) {
        throw new InputException(
            "model.curves",
            "two pairs of rate curves are called '" + each.key() + "': give each its own key");
      }
    }
  }

  /**
   * How fast the microbes grow.
   *
   * @param yeastPerHour greatest growth rate of yeast in dough at 25 °C without salt, 0.05…2 per h
   *     (0.40 for both kinds: the growth table circulated after Gänzle 1998, from memory, gives
   *     0.39, the mean of 16 strains of <em>S. cerevisiae</em> 0.41, Molinet et al. 2025; that a
   *     laboratory rate holds in dough is an assumption)
   * @param bacteriaPerHour the same for lactic bacteria, 0.05…2 per h (starting value)
   * @param yeastSalt how salt in the water slows yeast, exponent per kg/kg (starting value; yeast
   *     tolerates 8 % NaCl, Gänzle et al. 1998)
   * @param bacteriaSaltLimit salt in the water at which bacteria stop, kg/kg, in the inhibitor form
   *     1 − (S/Smax)³ (4 % NaCl, Gänzle et al. 1998; the exponent is a starting value)
   * @param boundWater water that does not take part, kg/kg flour (about what does not freeze)
   * @param freeWaterHalf free water at which growth is half, kg/kg flour (the sign is known in the
   *     trade, the size is not measured: one adjustable number)
   * @param ashGain gain of all rates per unit of ash over white flour's 0.5 % (wholemeal and rye
   *     ferment faster: common practice, no source; the size is a starting value)
   */
  public record Growth(
      double yeastPerHour,
      double bacteriaPerHour,
      double yeastSalt,
      double bacteriaSaltLimit,
      double boundWater,
      double freeWaterHalf,
      double ashGain)
      implements Serializable {
    /**
     * Checks every range.
     *
     * @param yeastPerHour greatest growth rate of yeast in dough at 25 °C without salt, 0.05…2 per
     *     h
     * @param bacteriaPerHour the same for lactic bacteria, 0.05…2 per h (starting value)
     * @param yeastSalt how salt in the water slows yeast, exponent per kg/kg
     * @param bacteriaSaltLimit salt in the water at which bacteria stop, kg/kg
     * @param boundWater water that does not take part, kg/kg flour (about what does not freeze)
     * @param freeWaterHalf free water at which growth is half, kg/kg flour
     * @param ashGain gain of all rates per unit of ash over white flour's 0.5 %
     */
    public Growth {
      Checks.inRange("yeast growth rate", yeastPerHour, 0.05, 2, "per h");
      Checks.inRange("bacterial growth rate", bacteriaPerHour, 0.05, 2, "per h");
      Checks.inRange("effect of salt on yeast", yeastSalt, 0, 50, "");
      Checks.inRange("salt limit of bacteria", bacteriaSaltLimit, 0.005, 0.3, "kg/kg");
      Checks.inRange("bound water", boundWater, 0, 0.45, "kg/kg");
      Checks.inRange("half-saturation of free water", freeWaterHalf, 0, 2, "kg/kg");
      Checks.inRange("activity by ash", ashGain, 0, 100, "");
    }
  }

  /**
   * Carbon dioxide, mol per kg of flour.
   *
   * @param growthMol made while the yeast grows from nothing to its ceiling (starting value)
   * @param restingMolPerHour made per hour by a full yeast population at 25 °C beside growth
   *     (starting value; growth-linked plus maintenance production after Luedeking &amp; Piret
   *     1959)
   * @param restingMinimumCelsius where that ends in the cold, −20…10 °C; it goes as the square of
   *     the distance from there (the square-root law of Ratkowsky et al. 1982, J Bacteriol 149:1;
   *     −4 °C gives what 60 kJ/mol gave between 15 and 25 °C; starting value)
   * @param bacteriaMol made while the bacteria grow to their ceiling (starting value)
   * @param ceilingMol what the flour's sugars allow (starting value; 0.275 mol of hexose at 2 mol
   *     CO2 each, about 5 % of the flour)
   */
  public record Gas(
      double growthMol,
      double restingMolPerHour,
      double restingMinimumCelsius,
      double bacteriaMol,
      double ceilingMol)
      implements Serializable {
    /**
     * Checks every range.
     *
     * @param growthMol made while the yeast grows from nothing to its ceiling (starting value)
     * @param restingMolPerHour made per hour by a full yeast population at 25 °C beside growth
     * @param restingMinimumCelsius where that ends in the cold, −20…10 °C
     * @param bacteriaMol made while the bacteria grow to their ceiling (starting value)
     * @param ceilingMol what the flour's sugars allow
     */
    public Gas {
      Checks.inRange("growth-linked gas", growthMol, 0.001, 1, "mol/kg");
      Checks.inRange("resting gas", restingMolPerHour, 0, 0.5, "mol/(kg h)");
      Checks.inRange("coldest resting gas", restingMinimumCelsius, -20, 10, "°C");
      Checks.inRange("bacterial gas", bacteriaMol, 0, 1, "mol/kg");
      Checks.inRange("gas ceiling", ceilingMol, 0.05, 3, "mol/kg");
    }
  }

  /**
   * Acid, mol per kg of flour (starting values).
   *
   * @param growthMol made while the bacteria grow to their ceiling
   * @param restingMolPerHour made per hour by a full bacterial population at 25 °C
   */
  public record Acid(double growthMol, double restingMolPerHour) implements Serializable {
    /**
     * Checks every range.
     *
     * @param growthMol made while the bacteria grow to their ceiling
     * @param restingMolPerHour made per hour by a full bacterial population at 25 °C
     */
    public Acid {
      Checks.inRange("growth-linked acid", growthMol, 0, 1, "mol/kg");
      Checks.inRange("resting acid", restingMolPerHour, 0, 0.1, "mol/(kg h)");
    }
  }

  /**
   * How a dough holds its gas; the flour's own part stands in {@link
   * doughtide.core.dough.FlourClass}. Starting values.
   *
   * @param leakWidth width of the step from tight to leaking, gas share
   * @param leakPerHour rate at which connected cells empty, per h
   * @param acidWeakening fall of the retained gas share per mol/kg of acid beyond {@code
   *     acidTolerated}
   * @param acidTolerated acid that the gluten bears, mol/kg flour
   * @param slackDrop fall of the retained gas share from a dough to a liquid starter
   */
  public record Retention(
      double leakWidth,
      double leakPerHour,
      double acidWeakening,
      double acidTolerated,
      double slackDrop)
      implements Serializable {
    /**
     * Checks every range.
     *
     * @param leakWidth width of the step from tight to leaking, gas share
     * @param leakPerHour rate at which connected cells empty, per h
     * @param acidWeakening fall of the retained gas share per mol/kg of acid beyond {@code
     *     acidTolerated}
     * @param acidTolerated acid that the gluten bears, mol/kg flour
     * @param slackDrop fall of the retained gas share from a dough to a liquid starter
     */
    public Retention {
      Checks.inRange("width of the leak", leakWidth, 0.001, 0.3, "");
      Checks.inRange("leak rate", leakPerHour, 0, 20, "per h");
      Checks.inRange("weakening by acid", acidWeakening, 0, 10, "per mol/kg");
      Checks.inRange("acid tolerated", acidTolerated, 0, 1, "mol/kg");
      Checks.inRange("loss of retention in a liquid dough", slackDrop, 0, 0.3, "");
    }
  }

  /**
   * How a dough loses its strength (starting values).
   *
   * @param lossPerHour loss at 25 °C far from acid, white flour, per h
   * @param activationKJPerMol how it grows with warmth (the flour's proteases are most active near
   *     45–50 °C, from memory)
   * @param acidGain how many times as much again is lost in full acid
   * @param ashGain gain per unit of ash over white flour's 0.5 %
   */
  public record Strength(
      double lossPerHour, double activationKJPerMol, double acidGain, double ashGain)
      implements Serializable {
    /**
     * Checks every range.
     *
     * @param lossPerHour loss at 25 °C far from acid, white flour, per h
     * @param activationKJPerMol how it grows with warmth
     * @param acidGain how many times as much again is lost in full acid
     * @param ashGain gain per unit of ash over white flour's 0.5 %
     */
    public Strength {
      Checks.inRange("loss of strength", lossPerHour, 0, 1, "per h");
      Checks.inRange("activation of the loss of strength", activationKJPerMol, 0, 150, "kJ/mol");
      Checks.inRange("loss of strength in acid", acidGain, 0, 50, "times");
      Checks.inRange("loss of strength by ash", ashGain, 0, 500, "");
    }
  }

  /**
   * Rate curves of yeast and bacteria that belong together.
   *
   * @param key the name by which beliefs and files know them: kind of yeast, a stroke, form; for
   *     example {@code humilis/schoolfield}
   * @param yeast rate curve of the yeast
   * @param bacteria rate curve of the bacteria
   * @param weight how likely they are before any reading, against the other pairs of a model
   */
  public record RateCurves(String key, RateCurve yeast, RateCurve bacteria, double weight)
      implements Serializable {

    private static final String CURVES = "model.curves";

    /**
     * @param key the name by which beliefs and files know them: kind of yeast, a stroke, form
     * @param yeast rate curve of the yeast
     * @param bacteria rate curve of the bacteria
     * @param weight how likely they are before any reading, against the other pairs of a model
     * @throws InputException if the key is empty or a curve is not 1 at 25 °C, or negative or not a
     *     number somewhere between −15 and 60 °C, or has its data above a temperature that is not
     *     below the one up to which it has them
     */
    public RateCurves {
      Checks.given("key", key);
      Checks.given("rate curve of the yeast", yeast);
      Checks.given("rate curve of the bacteria", bacteria);
      if (!key.matches("[!-~]{1,80}")) {
        throw new InputException(
            CURVES, "the key of rate curves must have 1 to 80 plain characters without blanks");
      }
      Checks.inRange("weight of rate curves", weight, 1e-9, 1e9, "");
      checkUnlessPublished("yeast", yeast);
      checkUnlessPublished("bacteria", bacteria);
    }

    /**
     * A pair with the weight of one published form of one kind of yeast.
     *
     * @param key kind of yeast, or that, a stroke and a name of its own
     * @param yeast growth of yeast over temperature
     * @param bacteria growth of bacteria over temperature
     */
    public RateCurves(String key, RateCurve yeast, RateCurve bacteria) {
      this(key, yeast, bacteria, 1);
    }

    /** {@return kind of yeast: what stands before the stroke, or the whole key} */
    public String kind() {
      int stroke = key.indexOf('/');
      return stroke < 0 ? key : key.substring(0, stroke);
    }

    /** The published ones are checked by a test instead of at every start of a program. */
    private static void checkUnlessPublished(String microbe, RateCurve curve) {
      if (!RateForm.isPublished(curve)) {
        check(microbe, curve);
      }
    }

    static void check(String microbe, RateCurve curve) {
      String name = "rate curve of the " + microbe;
      for (double celsius = LOWEST_CELSIUS; celsius <= HIGHEST_CELSIUS; celsius += STEP_CELSIUS) {
        double rate = curve.rate(celsius);
        if (!(rate >= 0 && rate <= FASTEST_RATE)) {
          String where = name + " at " + Checks.plain(celsius) + " °C";
          Checks.inRange(CURVES, where, rate, 0, FASTEST_RATE, "times the rate at 25 °C");
        }
      }
      double reference = curve.rate(RateCurve.REFERENCE_CELSIUS);
      if (!(Math.abs(reference - 1) <= REFERENCE_TOLERANCE)) {
        throw new InputException(
            CURVES,
            name
                + " is "
                + Checks.plain(reference)
                + " at 25 °C and must be 1 there: divide all its rates by its rate at 25 °C");
      }
      if (!(curve.lowestCelsius() < curve.highestCelsius())) {
        throw new InputException(
            CURVES,
            name
                + " has data from "
                + Checks.plain(curve.lowestCelsius())
                + " to "
                + Checks.plain(curve.highestCelsius())
                + " °C: give the lower temperature first");
      }
    }
  }

  /**
   * The numbers in use, with every published rate curve of both kinds of yeast, all alike likely:
   * about even between the kinds, for surveys differ (S. cerevisiae rules most of 21 Belgian bakery
   * sourdoughs, Vrancken et al. 2010, and 1 of 14 French ones, Urien et al. 2019).
   *
   * @return the numbers in use
   */
  public static RiseParameters standard() {
    return Standard.PARAMETERS;
  }

  /** Made and checked once, when first asked for. */
  private static final class Standard {
    static final RiseParameters PARAMETERS =
        new RiseParameters(
            new Growth(0.40, 0.60, 10, 0.04, 0.30, 0.30, 8),
            new Gas(0.11, 0.036, -4, 0.03, 0.55),
            new Acid(0.10, 0.004),
            new Retention(0.035, 0.5, 1.5, 0.05, 0.05),
            new Strength(0.045, 60, 1.5, 60),
            published());
  }

  private static List<RateCurves> published() {
    List<RateCurves> curves = new ArrayList<>();
    for (YeastKind kind : YeastKind.values()) {
      for (RateForm form : RateForm.values()) {
        curves.add(
            new RateCurves(kind.key() + "/" + form.key(), form.yeast(kind), form.bacteria()));
      }
    }
    return curves;
  }

  /**
   * {@return the same with another part}
   *
   * @param newGrowth of yeast and bacteria
   */
  public RiseParameters with(Growth newGrowth) {
    return new RiseParameters(newGrowth, gas, acid, retention, strength, curves);
  }

  /**
   * {@return the same with another part}
   *
   * @param newGas gas made
   */
  public RiseParameters with(Gas newGas) {
    return new RiseParameters(growth, newGas, acid, retention, strength, curves);
  }

  /**
   * {@return the same with another part}
   *
   * @param newAcid acid made
   */
  public RiseParameters with(Acid newAcid) {
    return new RiseParameters(growth, gas, newAcid, retention, strength, curves);
  }

  /**
   * {@return the same with another part}
   *
   * @param newRetention gas held
   */
  public RiseParameters with(Retention newRetention) {
    return new RiseParameters(growth, gas, acid, newRetention, strength, curves);
  }

  /**
   * {@return the same with another part}
   *
   * @param newStrength gluten lost
   */
  public RiseParameters with(Strength newStrength) {
    return new RiseParameters(growth, gas, acid, retention, newStrength, curves);
  }

  /**
   * {@return the same with other pairs of rate curves, for example with one of one's own added}
   *
   * @param newCurves at least one pair
   */
  public RiseParameters with(List<RateCurves> newCurves) {
    return new RiseParameters(growth, gas, acid, retention, strength, newCurves);
  }

  /**
   * {@return the same with one pair of rate curves only, for a culture whose curve is known}
   *
   * @param only for yeast and bacteria
   */
  public RiseParameters with(RateCurves only) {
    return with(List.of(only));
  }
}
