package doughtide.core.quantity;

import java.io.Serializable;

/**
 * Height of the kitchen above sea level. It sets the air pressure, and the pressure sets how large
 * the gas cells are.
 *
 * @param metres −430…5500 (the lowest and highest places where people live)
 */
public record Altitude(double metres) implements Serializable {
  /** Sea level. */
  public static final Altitude SEA_LEVEL = new Altitude(0);

  private static final double SEA_LEVEL_PA = 101_325;
  private static final double SEA_LEVEL_K = 288.15;
  private static final double LAPSE_K_PER_M = 0.0065;
  private static final double EXPONENT = 5.25588;

  /**
   * @param metres −430…5500 (the lowest and highest places where people live)
   * @throws InputException outside −430…5500 m or not a number
   */
  public Altitude {
    Checks.inRange("altitude", metres, -430, 5500, "m");
  }

  /**
   * @param metres −430…5500
   * @return the altitude
   */
  public static Altitude ofMetres(double metres) {
    return new Altitude(metres);
  }

  /**
   * {@return air pressure in pascal by the International Standard Atmosphere (ISO 2533:1975),
   * troposphere: p0·(1 − L·h/T0)^5.25588} Weather moves the true value by ±3 %.
   */
  public double pressurePa() {
    return SEA_LEVEL_PA * Math.pow(1 - LAPSE_K_PER_M * metres / SEA_LEVEL_K, EXPONENT);
  }
}
