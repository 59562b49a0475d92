package doughtide.core.kinetics;

import java.util.List;

/** Mean of several curves; outside the data of one it is outside the data of all. */
record MeanCurve(List<RateCurve> curves) implements RateCurve {
  MeanCurve {
    curves = List.copyOf(curves);
  }

  @Override
  public double rate(double celsius) {
    double sum = 0;
    for (RateCurve curve : curves) {
      sum += curve.rate(celsius);
    }
    return sum / curves.size();
  }

  @Override
  public double lowestCelsius() {
    return curves.stream().mapToDouble(RateCurve::lowestCelsius).max().orElseThrow();
  }

  @Override
  public double highestCelsius() {
    return curves.stream().mapToDouble(RateCurve::highestCelsius).min().orElseThrow();
  }
}
