package doughtide.core.thermal;

/**
 * What lies over the top of a dough. Water drying from an open surface also cools it; that is not
 * counted.
 */
public enum Cover {
  /** Nothing. */
  OPEN(0),
  /**
   * A lid or cloth with resting air under it: 0.16 m² K/W for an unventilated layer of 15…300 mm,
   * heat flowing upward (ISO 6946, from memory).
   */
  COVERED(0.16);

  private final double resistanceM2KPerW;

  Cover(double resistanceM2KPerW) {
    this.resistanceM2KPerW = resistanceM2KPerW;
  }

  /** {@return thermal resistance, m² K/W} */
  public double resistanceM2KPerW() {
    return resistanceM2KPerW;
  }
}
