package doughtide.core.dough;

import doughtide.core.Internal;

/**
 * Physical properties of a dough from its composition, without gas unless a gas share is given.
 *
 * <p>Sources: Choi &amp; Okos 1986 for the parts (from memory, by way of the ASHRAE Handbook,
 * Refrigeration); salt is counted as ash; gas cells by the Maxwell equation for a dispersed phase.
 */
@Internal
public final class DoughProperties {
  private static final double AIR_CONDUCTIVITY_W_PER_M_K = 0.0257; // 20 °C, from memory
  private static final ComponentProperties[] PARTS = ComponentProperties.values();

  private final double[] fractions;
  private final double doughPerFlour;
  private final double inertLitresPerKgFlour;

  private DoughProperties(double[] fractions, double doughPerFlour, double inertLitresPerKgFlour) {
    this.fractions = fractions;
    this.doughPerFlour = doughPerFlour;
    this.inertLitresPerKgFlour = inertLitresPerKgFlour;
  }

  /**
   * Properties of the dough that this formula makes, without what it holds beside flour, water,
   * starter and salt; heat moves in seeds about as in dough (starting value).
   */
  public static DoughProperties of(DoughFormula formula) {
    Composition c = formula.flour().composition();
    double total = formula.fermentingPerFlour();
    double[] fractions = {
      c.protein() / total,
      c.fat() / total,
      c.carbohydrate() / total,
      c.fibre() / total,
      (c.ash() + formula.salt().fraction()) / total,
      (c.moisture() + formula.hydration().fraction()) / total
    };
    return new DoughProperties(fractions, total, formula.additions().litresPerKgFlour());
  }

  /**
   * Density of the gas-free dough: volumes of the parts add up.
   *
   * @param celsius −2…50 °C
   * @return kg/m³
   */
  public double densityKgPerM3(double celsius) {
    return 1 / volumePerMass(celsius);
  }

  private double volumePerMass(double celsius) {
    double volume = 0;
    for (int i = 0; i < fractions.length; i++) {
      volume += fractions[i] / PARTS[i].densityKgPerM3(celsius);
    }
    return volume;
  }

  /**
   * Gas-free volume per kilogram of all flour, litres.
   *
   * @param celsius −2…50 °C
   */
  public double litresPerKgFlour(double celsius) {
    return volumePerMass(celsius) * doughPerFlour * 1000;
  }

  /** Volume that does not ferment, litres per kg of all flour. */
  public double inertLitresPerKgFlour() {
    return inertLitresPerKgFlour;
  }

  /** The same over the gas-free volume of the whole dough at 25 °C, 0…1. */
  public double inertVolumeShare() {
    return inertLitresPerKgFlour / (inertLitresPerKgFlour + litresPerKgFlour(25));
  }

  /**
   * Heat capacity: mass fractions times the parts' own.
   *
   * @param celsius −2…50 °C
   * @return J/(kg K)
   */
  public double heatCapacityJPerKgK(double celsius) {
    double sum = 0;
    for (int i = 0; i < fractions.length; i++) {
      sum += fractions[i] * PARTS[i].heatCapacityJPerKgK(celsius);
    }
    return sum;
  }

  /**
   * Conductivity of the gas-free dough with the parts side by side (upper bound).
   *
   * @param celsius −2…50 °C
   * @return W/(m K)
   */
  public double parallelConductivityWPerMK(double celsius) {
    double sum = 0;
    for (int i = 0; i < fractions.length; i++) {
      sum += volumeFraction(i, celsius) * PARTS[i].conductivityWPerMK(celsius);
    }
    return sum;
  }

  /**
   * Conductivity of the gas-free dough with the parts one behind the other (lower bound).
   *
   * @param celsius −2…50 °C
   * @return W/(m K)
   */
  public double seriesConductivityWPerMK(double celsius) {
    double sum = 0;
    for (int i = 0; i < fractions.length; i++) {
      sum += volumeFraction(i, celsius) / PARTS[i].conductivityWPerMK(celsius);
    }
    return 1 / sum;
  }

  private double volumeFraction(int part, double celsius) {
    return fractions[part] / PARTS[part].densityKgPerM3(celsius) / volumePerMass(celsius);
  }

  /**
   * Conductivity of the dough with gas cells: for the dough itself the parts side by side, as Choi
   * &amp; Okos 1986 add them up; for the cells Maxwell's equation (Maxwell 1873; dispersed spheres
   * of air).
   *
   * @param celsius −2…50 °C
   * @param gasShare volume of gas over volume of dough, 0…0.9
   * @return W/(m K)
   */
  public double conductivityWPerMK(double celsius, double gasShare) {
    double dough = parallelConductivityWPerMK(celsius);
    double air = AIR_CONDUCTIVITY_W_PER_M_K;
    double sum = 2 * dough + air;
    double difference = dough - air;
    return dough * (sum - 2 * gasShare * difference) / (sum + gasShare * difference);
  }
}
