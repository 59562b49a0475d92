package doughtide.core.forecast;

/**
 * The unknowns of a forecast in the coordinates in which they are roughly normal: logarithms of
 * vigour, lag, rate scale and starting air; degrees; gas share. The order is that of a {@link
 * Belief}'s vectors.
 */
public enum Unknown {
  /** ln of the starter's vigour. */
  VIGOUR,
  /** ln of the lag factor. */
  LAG,
  /** True minus stated dough temperature, K. */
  TEMPERATURE,
  /** ln of the rate scale. */
  RATE,
  /** Shift of the gas share at which the dough leaks. */
  RETENTION,
  /** ln of the gas share after mixing over the usual one. */
  AIR,
  /** Which published rate curve; a rank from 0 to 1. */
  CURVE
}
