package doughtide.core.day;

/**
 * How much later than planned a step may be.
 *
 * @param kind the step
 * @param hours widest delay, 0 or more
 * @param limit what ends it
 */
public record StepMargin(BakeStep.Kind kind, double hours, Limit limit) {
  /** What ends a margin. */
  public enum Limit {
    /** Later the loaf suffers, or the starter is not ripe. */
    DOUGH("the dough"),
    /** Later the baker is no longer at the bench, or the bread is not ready in time. */
    BENCH("the hours at the bench");

    private final String words;

    Limit(String words) {
      this.words = words;
    }

    /** As printed. */
    public String words() {
      return words;
    }
  }
}
