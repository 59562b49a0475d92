package doughtide.core.kinetics;

/**
 * Power of the distance to the maximum, times an exponential; see {@link
 * RateCurve#powerExponential}.
 */
record PowerExponentialCurve(
    double power,
    double decayPerCelsius,
    double maximum,
    double lowestCelsius,
    double highestCelsius)
    implements RateCurve {

  @Override
  public double rate(double celsius) {
    double distance = maximum - celsius;
    if (distance <= 0) {
      return 0;
    }
    double reference = maximum - REFERENCE_CELSIUS;
    return Math.exp(
        power * Math.log(distance / reference) - decayPerCelsius * (distance - reference));
  }
}
