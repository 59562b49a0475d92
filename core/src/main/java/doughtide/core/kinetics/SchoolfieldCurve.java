package doughtide.core.kinetics;

/** Schoolfield, Sharpe &amp; Magnuson 1981, J Theor Biol 88:719–731. */
record SchoolfieldCurve(
    double activationKJPerMol,
    double inactivationKJPerMol,
    double halfInactiveCelsius,
    double lowestCelsius,
    double highestCelsius)
    implements RateCurve {

  private static final double GAS_CONSTANT_KJ_PER_MOL_K = 8.314462618e-3; // CODATA 2018
  private static final double ZERO_CELSIUS_K = 273.15;

  @Override
  public double rate(double celsius) {
    return raw(celsius) / raw(REFERENCE_CELSIUS);
  }

  private double raw(double celsius) {
    double inverse = 1 / (celsius + ZERO_CELSIUS_K);
    double reference = 1 / (REFERENCE_CELSIUS + ZERO_CELSIUS_K);
    double half = 1 / (halfInactiveCelsius + ZERO_CELSIUS_K);
    double rise = Math.exp(activationKJPerMol / GAS_CONSTANT_KJ_PER_MOL_K * (reference - inverse));
    double loss = Math.exp(inactivationKJPerMol / GAS_CONSTANT_KJ_PER_MOL_K * (half - inverse));
    return rise / (1 + loss);
  }
}
