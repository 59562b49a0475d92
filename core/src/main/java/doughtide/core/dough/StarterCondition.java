package doughtide.core.dough;

/**
 * The state the starter is in when it goes into the dough or is fed.
 *
 * <p>Lag and vigour are starting values; that a cold or past-ripe starter wakes later is common
 * practice, no source.
 */
public enum StarterCondition {
  /** At or near its greatest height. */
  RIPE(0.5, 1.0, 1),
  /** Well before its greatest height: few cells, but growing. */
  YOUNG(0.2, 0.6, 0.5),
  /** Clearly fallen back. */
  PAST_BEST(1.2, 0.85, 1),
  /** Straight from the refrigerator, not refreshed. */
  FROM_COLD(3.0, 0.6, 1);

  private final double lagHours;
  private final double vigour;
  private final double gasSaturation;

  StarterCondition(double lagHours, double vigour, double gasSaturation) {
    this.lagHours = lagHours;
    this.vigour = vigour;
    this.gasSaturation = gasSaturation;
  }

  /** {@return lag at 25 °C, hours} */
  public double lagHours() {
    return lagHours;
  }

  /** {@return living yeast per flour against a typical ripe starter, 1 = typical} */
  public double vigour() {
    return vigour;
  }

  /**
   * {@return how far the starter's water is filled with carbon dioxide, 1 = saturated (a young one
   * half: starting value)}
   */
  public double gasSaturation() {
    return gasSaturation;
  }
}
