package doughtide.core.kinetics;

import java.io.Serializable;

/**
 * Growth with lag towards a ceiling, at a steady rate: the exact solution of Baranyi &amp; Roberts
 * (1994, Int J Food Microbiol 23:277–294), here for checking the integrator and for teaching. All
 * populations as shares of the ceiling.
 *
 * @param start population at the start, more than 0, at most 1
 * @param ratePerHour greatest specific growth rate, per hour
 * @param workToDo h0, the lag times the rate (dimensionless), more than 0
 */
public record BaranyiRoberts(double start, double ratePerHour, double workToDo)
    implements Serializable {
  /**
   * Population at a time.
   *
   * @param hours 0 or more
   * @return share of the ceiling, in (0, 1]
   */
  public double populationAt(double hours) {
    double growth = ratePerHour * adjustedHours(hours);
    double numerator = Math.log(start) + growth;
    return Math.exp(numerator - Math.log1p(Math.expm1(growth) * start));
  }

  private double adjustedHours(double hours) {
    double done = Math.exp(-ratePerHour * hours);
    double left = Math.exp(-workToDo);
    return hours + Math.log(done + left - done * left) / ratePerHour;
  }

  /** Readiness q0 = 1/(exp(h0) − 1) with which the differential form starts. */
  public double startingReadiness() {
    return 1 / Math.expm1(workToDo);
  }
}
