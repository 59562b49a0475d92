package doughtide.core.kinetics;

/** Rosso, Lobry &amp; Flandrois 1993, J Theor Biol 162:447–463. */
record CardinalCurve(
    double minimum, double optimum, double maximum, double lowestCelsius, double highestCelsius)
    implements RateCurve {

  @Override
  public double rate(double celsius) {
    return raw(celsius) / raw(REFERENCE_CELSIUS);
  }

  private double raw(double celsius) {
    if (celsius <= minimum || celsius >= maximum) {
      return 0;
    }
    double aboveMinimum = celsius - minimum;
    double span = optimum - minimum;
    double denominator =
        span
            * (span * (celsius - optimum)
                - (optimum - maximum) * (optimum + minimum - 2 * celsius));
    return (celsius - maximum) * aboveMinimum * aboveMinimum / denominator;
  }
}
