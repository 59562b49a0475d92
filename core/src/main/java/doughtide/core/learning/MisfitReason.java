package doughtide.core.learning;

import doughtide.core.forecast.Unknown;

/** Why a bake may not fit the others: the one thing that is freed, and how far it may then go. */
public enum MisfitReason {
  /** The dough was warmer or colder than noted. */
  TEMPERATURE_OFF(
      "the dough temperature noted is off",
      "check the thermometer in melting ice and measure in the middle of the dough"),
  /** Weak and slow to wake. */
  STARTER_PAST_RIPE(
      "the starter was past its best or cold",
      "note how ripe the starter was, for example 'starter condition: past best'"),
  /** Livelier than usual. */
  STARTER_LIVELIER(
      "the starter was livelier than usual", "note what was different about its last feeding"),
  /** Everything read too high or too low in proportion. */
  START_HEIGHT_WRONG(
      "the starting height noted is wrong",
      "mark the jar after the dough has settled and level its top"),
  /** No single thing explains it. */
  UNEXPLAINED(
      "no single reason explains it",
      "check the times and the dough written at the top of the file");

  private static final double FREE_KELVIN = 3; // starting value
  private static final double FREE_VIGOUR = 0.6; // starting value
  private static final double FREE_LAG = 1.2; // starting value
  private static final double FREE_JAR = 0.25; // starting value

  private final String words;
  private final String remedy;

  MisfitReason(String words, String remedy) {
    this.words = words;
    this.remedy = remedy;
  }

  /** What it is, in a baker's words. */
  public String words() {
    return words;
  }

  /** What the baker can do. */
  public String remedy() {
    return remedy;
  }

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
