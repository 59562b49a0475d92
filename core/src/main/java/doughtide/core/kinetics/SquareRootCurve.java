package doughtide.core.kinetics;

/** Ratkowsky et al. 1983, J Bacteriol 154:1222–1226. */
record SquareRootCurve(
    double minimum, double maximum, double steepness, double lowestCelsius, double highestCelsius)
    implements RateCurve {

  @Override
  public double rate(double celsius) {
    return raw(celsius) / raw(REFERENCE_CELSIUS);
  }

  private double raw(double celsius) {
    if (celsius <= minimum || celsius >= maximum) {
      return 0;
    }
    double root = (celsius - minimum) * -Math.expm1(steepness * (celsius - maximum));
    return root * root;
  }
}
