package doughtide.core.learning;

import doughtide.core.forecast.Unknown;

/** Why a bake may not fit the others: the one thing that is freed, and how far it may then go. */
public enum OutlierReason {
  /** The dough was warmer or colder than noted. */
  TEMPERATURE_OFF,
  /** The starter was weak and slow to wake. */
  STARTER_PAST_RIPE,
  /** The starter was livelier than usual. */
  STARTER_LIVELIER,
  /** All heights were read too high or too low by the same share. */
  START_HEIGHT_WRONG,
  /** No single reason explains it. */
  UNEXPLAINED;

  private static final double FREE_KELVIN = 3; // starting value
  private static final double FREE_VIGOUR = 0.6; // starting value
  private static final double FREE_LAG = 1.2; // starting value
  private static final double FREE_JAR = 0.25; // starting value

  /** A bake's deviations when this one thing may be far off. */
  double[] freed(double[] bakeDeviation) {
    double[] freed = bakeDeviation.clone();
    switch (this) {
      case TEMPERATURE_OFF -> freed[Unknown.TEMPERATURE.ordinal()] = FREE_KELVIN;
      case STARTER_PAST_RIPE, STARTER_LIVELIER -> {
        freed[Unknown.VIGOUR.ordinal()] = FREE_VIGOUR;
        freed[Unknown.LAG.ordinal()] = FREE_LAG;
      }
      case START_HEIGHT_WRONG -> freed[LearningPrior.JAR] = FREE_JAR;
      case UNEXPLAINED -> {}
    }
    return freed;
  }
}
