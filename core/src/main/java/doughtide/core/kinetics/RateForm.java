package doughtide.core.kinetics;

/**
 * The published forms of the rate curve, each fitted to the same figures: yeast to the rates that M. Gänzle gave bakers
 * (fastest at 28 °C, half at 20 and 32, a quarter at 14 and 34, none at 8 and 35; rec.food.sourdough FAQ) together with
 * the growth table circulated after Gänzle 1998 (2–34 °C, from memory); bacteria to his figures for lactobacilli
 * (fastest at 32–33 °C, half at 20 and 37, a quarter at 15 and 39, none at 4 and 41). Least squares on the rate relative
 * to the fastest; the fit is repeated, and its residuals printed, by {@code RateFitPublishedTest}.
 *
 * <p>Where data are thin (below 12 and above 30 °C) the forms differ; a forecast takes that difference as one of its
 * unknowns. A new form is one class and one line here.
 */
public enum RateForm {
  /** Schoolfield, Sharpe &amp; Magnuson 1981; the default. */
  SCHOOLFIELD(
      RateCurve.schoolfield(101.5362, 443.8977, 29.2231, 2, 35),
      RateCurve.schoolfield(60.9935, 486.8689, 35.5872, 4, 41)),
  /** Rosso, Lobry &amp; Flandrois 1993. */
  CARDINAL(
      RateCurve.cardinal(8.5843, 26.9832, 34.5282, 2, 35),
      RateCurve.cardinal(7.9310, 30.1312, 39.9860, 4, 41)),
  /** Ratkowsky et al. 1983. */
  SQUARE_ROOT(
      RateCurve.squareRoot(6.5555, 35.3105, 0.2051, 2, 35),
      RateCurve.squareRoot(5.7858, 41.3258, 0.1313, 4, 41)),
  /** Power–exponential. */
  POWER_EXPONENTIAL(
      RateCurve.powerExponential(3.3005, 0.3469, 36.6288, 2, 35),
      RateCurve.powerExponential(3.3367, 0.2671, 42.9499, 4, 41));

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
}
