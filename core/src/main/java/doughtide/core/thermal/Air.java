package doughtide.core.thermal;

/**
 * The air around a dough and its surface coefficients, W/(m² K), radiation included, for a dough
 * warmer than the air. A new kind is one line here.
 */
public enum Air {
  /** Still indoor air: 10 upward, 7.7 sideways, 5.9 downward (ISO 6946). */
  STILL_ROOM(10, 7.7, 5.9),
  /**
   * A refrigerator without a fan: convection 1.3…2.8 and radiation 4.3 at 5 °C (Energies 2025,
   * 18:6280), middle of the range.
   */
  STILL_COLD(6.35, 6.35, 6.35),
  /** Air moved by a fan, in a retarder or a ventilated refrigerator: starting value. */
  MOVING(15, 15, 15);

  private final double top;
  private final double side;
  private final double bottom;

  Air(double top, double side, double bottom) {
    this.top = top;
    this.side = side;
    this.bottom = bottom;
  }

  /** {@return film coefficient on top of the dough, W/(m² K)} */
  public double topWPerM2K() {
    return top;
  }

  /** {@return film coefficient on upright surfaces, W/(m² K)} */
  public double sideWPerM2K() {
    return side;
  }

  /** {@return film coefficient on the underside, W/(m² K)} */
  public double bottomWPerM2K() {
    return bottom;
  }
}
