package doughtide.core.flourtrial;

/** Points of the standard normal distribution. */
final class Quantiles {
  /**
   * One tenth of a normal distribution lies above its mean by more than this many standard
   * deviations.
   */
  static final double NINETY_PERCENT = 1.2815515655446004;

  private Quantiles() {}
}
