package doughtide.examples;

import doughtide.core.kinetics.RateCurve;

/** A rate curve of one's own: straight from nothing at 5 °C to twice the rate at 45 °C. */
public record LinearCurve() implements RateCurve {
  private static final double NOTHING_CELSIUS = 5;

  @Override
  public double rate(double celsius) {
    return Math.max(0, (celsius - NOTHING_CELSIUS) / (REFERENCE_CELSIUS - NOTHING_CELSIUS));
  }

  @Override
  public double lowestCelsius() {
    return 15;
  }

  @Override
  public double highestCelsius() {
    return 30;
  }
}
