package doughtide.core.kinetics;

import doughtide.core.Internal;

/**
 * The published forms of the rate curve, fitted in this project by least squares; {@code
 * RateFitPublishedTest} repeats the fits and prints their residuals.
 *
 * <ul>
 *   <li><em>K. humilis</em>: the first three to the rates that M. Gänzle gave bakers (fastest at 28
 *       °C, half at 20 and 32, a quarter at 14 and 34, next to none, taken as 0.05, at 8 and 35;
 *       rec.food.sourdough FAQ), the power–exponential form to the growth table circulated after
 *       Gänzle 1998 (2–34 °C, from memory).
 *   <li><em>S. cerevisiae</em>: to the mean growth of 16 strains (Molinet et al. 2025, data file),
 *       25–37 °C relative to 25 °C and 16–23 °C among themselves, for two incubators seem to have
 *       been used; 40 °C is left out, where four strains grow and twelve do not. The cardinal form
 *       is not fitted: it has the published cardinals (optimum 32.3, maximum 45.4 °C; minimum of
 *       the genus 1.3–4.3, taken as 3; Salvadó et al. 2011, Appl Environ Microbiol 77:2292).
 *   <li>Bacteria: to Gänzle's figures for lactobacilli (fastest at 32–33 °C, half at 20 and 37, a
 *       quarter at 15 and 39, none at 4 and 41).
 * </ul>
 *
 * <p>Where data are thin (below 12 and above 30 °C) the forms differ; a forecast takes that
 * difference as one of its unknowns. A new form is one class and one line here.
 */
@Internal
public enum RateForm {
  /** Schoolfield, Sharpe &amp; Magnuson 1981. */
  SCHOOLFIELD(
      "schoolfield",
      RateCurve.schoolfield(83.4151, 524.0302, 30.5513, 8, 35),
      RateCurve.schoolfield(66.4556, 273.9181, 35.8516, 16, 37),
      RateCurve.schoolfield(60.9935, 486.8689, 35.5872, 4, 41)),
  /** Rosso, Lobry &amp; Flandrois 1993. */
  CARDINAL(
      "cardinal",
      RateCurve.cardinal(7.9035, 26.9794, 35.0653, 8, 35),
      RateCurve.cardinal(3, 32.3, 45.4, 3, 45.4),
      RateCurve.cardinal(7.9310, 30.1312, 39.9860, 4, 41)),
  /** Ratkowsky et al. 1983. */
  SQUARE_ROOT(
      "square-root",
      RateCurve.squareRoot(5.0552, 35.6783, 0.2107, 8, 35),
      RateCurve.squareRoot(1.0051, 41.1782, 0.2960, 16, 37),
      RateCurve.squareRoot(5.7858, 41.3258, 0.1313, 4, 41)),
  /** Power–exponential. */
  POWER_EXPONENTIAL(
      "power-exponential",
      RateCurve.powerExponential(3.0110, 0.3369, 36.0440, 2, 34),
      RateCurve.powerExponential(1.2684, 0.1625, 40.8024, 16, 37),
      RateCurve.powerExponential(3.3367, 0.2671, 42.9499, 4, 41));

  private final String key;
  private final RateCurve humilis;
  private final RateCurve cerevisiae;
  private final RateCurve bacteria;

  RateForm(String key, RateCurve humilis, RateCurve cerevisiae, RateCurve bacteria) {
    this.key = key;
    this.humilis = humilis;
    this.cerevisiae = cerevisiae;
    this.bacteria = bacteria;
  }

  /** As it stands after the stroke in the key of a pair of rate curves. */
  public String key() {
    return key;
  }

  /** Rate curve of a kind of yeast. */
  public RateCurve yeast(YeastKind kind) {
    return kind == YeastKind.HUMILIS ? humilis : cerevisiae;
  }

  /** Rate curve of sourdough lactic bacteria. */
  public RateCurve bacteria() {
    return bacteria;
  }

  /**
   * Whether a curve is one of those made here, which are known to be sound at every temperature of
   * the model.
   */
  public static boolean isPublished(RateCurve curve) {
    for (RateForm form : values()) {
      if (curve == form.humilis || curve == form.cerevisiae || curve == form.bacteria) {
        return true;
      }
    }
    return false;
  }
}
