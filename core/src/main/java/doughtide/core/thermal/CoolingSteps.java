package doughtide.core.thermal;

import doughtide.core.Internal;

/**
 * A piece of dough that cools step by step, for a source of heat that is known only as it goes: the
 * dough's own fermentation. Within a step the air and the source are constant and the solution is
 * exact in time. Not thread-safe.
 */
@Internal
public final class CoolingSteps {
  private final Conduction conduction;
  private final double[] one;
  private final double[] modes;
  private final double[] decay;
  private double decayHours = Double.NaN;
  private double air;

  /**
   * A piece of one temperature throughout.
   *
   * @param conduction the body
   * @param startCelsius its temperature
   * @param airCelsius the air around it
   */
  public CoolingSteps(Conduction conduction, double startCelsius, double airCelsius) {
    this.conduction = conduction;
    this.one = conduction.modesOfOne();
    this.modes = new double[one.length];
    this.decay = new double[one.length];
    this.air = airCelsius;
    for (int i = 0; i < modes.length; i++) {
      modes[i] = one[i] * (startCelsius - airCelsius);
    }
  }

  /**
   * Goes on.
   *
   * @param hours length of the step, more than 0
   * @param airCelsius the air around it from now on
   * @param kelvinPerHour warming by the source, were no heat lost
   */
  public void step(double hours, double airCelsius, double kelvinPerHour) {
    setDecay(hours);
    double[] rates = conduction.rates();
    for (int i = 0; i < modes.length; i++) {
      double begin = modes[i] + one[i] * (air - airCelsius);
      double end = one[i] * kelvinPerHour / rates[i];
      modes[i] = end + (begin - end) * decay[i];
    }
    air = airCelsius;
  }

  private void setDecay(double hours) {
    if (hours == decayHours) {
      return;
    }
    decayHours = hours;
    double[] rates = conduction.rates();
    for (int i = 0; i < decay.length; i++) {
      decay[i] = Math.exp(-rates[i] * hours);
    }
  }

  /**
   * Mean temperature of every shell, °C.
   *
   * @param into receives them, from the centre outward
   */
  public void shellCelsius(double[] into) {
    for (int shell = 0; shell < into.length; shell++) {
      into[shell] = shell(shell);
    }
  }

  /** Temperature at the very centre, °C. */
  public double coreCelsius() {
    double second = conduction.centreWeightOfSecond();
    return (1 - second) * shell(0) + second * shell(1);
  }

  private double shell(int shell) {
    double[] weights = conduction.modesAt(shell);
    double sum = air;
    for (int i = 0; i < modes.length; i++) {
      sum += weights[i] * modes[i];
    }
    return sum;
  }
}
