package doughtide.core.forecast;

/**
 * The unknowns of a forecast in the coordinates in which they are roughly normal: logarithms of
 * vigour, lag, rate scale and starting air; degrees; gas share. The order is that of a {@link
 * Belief}'s vectors.
 */
public enum Unknown {
  /** ln of the starter's vigour. */
  VIGOUR(
      "how lively the starter is",
      "note its rise after a known feeding, or read this dough once in mid-rise"),
  /** ln of the lag factor. */
  LAG(
      "how long the starter needs to wake",
      "use it at the same ripeness each time and note how ripe it was"),
  /** True minus stated dough temperature, K. */
  TEMPERATURE(
      "the true dough temperature", "measure the middle of the dough with a thermometer you trust"),
  /** ln of the rate scale. */
  RATE(
      "how fast this flour and culture ferment",
      "keep readings of a few bakes and let the tool learn from them"),
  /** Shift of the gas share at which the dough leaks. */
  RETENTION("how well the dough holds its gas", "note the greatest height your sample jar reached"),
  /** ln of the gas share after mixing over the usual one. */
  AIR(
      "how much air mixing put in",
      "mark the jar only after the dough has settled and its top is level"),
  /** Which published rate curve; a rank from 0 to 1. */
  CURVE(
      "which published temperature curve fits the culture",
      "bake nearer 20 to 28 °C, where the curves agree");

  private final String words;
  private final String remedy;

  Unknown(String words, String remedy) {
    this.words = words;
    this.remedy = remedy;
  }

  /** What it is, in a baker's words. */
  public String words() {
    return words;
  }

  /** What the baker can do to narrow it. */
  public String remedy() {
    return remedy;
  }
}
