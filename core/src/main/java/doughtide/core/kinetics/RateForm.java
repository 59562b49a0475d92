package doughtide.core.kinetics;

import java.util.ArrayList;
import java.util.List;
import java.util.function.Function;

/**
 * The published forms of the rate curve, fitted in this project. Yeast: the first three to the
 * rates that M. Gänzle gave bakers (fastest at 28 °C, half at 20 and 32, a quarter at 14 and 34,
 * next to none, taken as 0.05, at 8 and 35; rec.food.sourdough FAQ), the power–exponential form to
 * the growth table circulated after Gänzle 1998 (2–34 °C, from memory). Bacteria: all to his
 * figures for lactobacilli (fastest at 32–33 °C, half at 20 and 37, a quarter at 15 and 39, none at
 * 4 and 41). Least squares on the rate relative to the fastest; {@code RateFitPublishedTest}
 * repeats the fits and prints their residuals.
 *
 * <p>Where data are thin (below 12 and above 30 °C) the forms differ; a forecast takes that
 * difference as one of its unknowns. A new form is one class and one line here.
 */
public enum RateForm {
  /** Schoolfield, Sharpe &amp; Magnuson 1981; the default. */
  SCHOOLFIELD(
      RateCurve.schoolfield(83.4151, 524.0302, 30.5513, 8, 35),
      RateCurve.schoolfield(60.9935, 486.8689, 35.5872, 4, 41)),
  /** Rosso, Lobry &amp; Flandrois 1993. */
  CARDINAL(
      RateCurve.cardinal(7.9035, 26.9794, 35.0653, 8, 35),
      RateCurve.cardinal(7.9310, 30.1312, 39.9860, 4, 41)),
  /** Ratkowsky et al. 1983. */
  SQUARE_ROOT(
      RateCurve.squareRoot(5.0552, 35.6783, 0.2107, 8, 35),
      RateCurve.squareRoot(5.7858, 41.3258, 0.1313, 4, 41)),
  /** Power–exponential. */
  POWER_EXPONENTIAL(
      RateCurve.powerExponential(3.0110, 0.3369, 36.0440, 2, 34),
      RateCurve.powerExponential(3.3367, 0.2671, 42.9499, 4, 41));

  private static final RateCurve MEAN_YEAST = mean(RateForm::yeast);
  private static final RateCurve MEAN_BACTERIA = mean(RateForm::bacteria);

  private final RateCurve yeast;
  private final RateCurve bacteria;

  RateForm(RateCurve yeast, RateCurve bacteria) {
    this.yeast = yeast;
    this.bacteria = bacteria;
  }

  /** Rate curve of sourdough yeast. */
  public RateCurve yeast() {
    return yeast;
  }

  /** Rate curve of sourdough lactic bacteria. */
  public RateCurve bacteria() {
    return bacteria;
  }

  private static RateCurve mean(Function<RateForm, RateCurve> microbe) {
    List<RateCurve> curves = new ArrayList<>();
    for (RateForm form : values()) {
      curves.add(microbe.apply(form));
    }
    return RateCurve.mean(curves);
  }

  /** Mean of the forms' rate curves of sourdough yeast. */
  public static RateCurve meanYeast() {
    return MEAN_YEAST;
  }

  /** Mean of the forms' rate curves of sourdough lactic bacteria. */
  public static RateCurve meanBacteria() {
    return MEAN_BACTERIA;
  }

  /**
   * Whether a curve is one of those made here, which are known to be sound at every temperature of
   * the model.
   */
  public static boolean isPublished(RateCurve curve) {
    for (RateForm form : values()) {
      if (curve == form.yeast || curve == form.bacteria) {
        return true;
      }
    }
    return curve == MEAN_YEAST || curve == MEAN_BACTERIA;
  }
}
