package doughtide.core.day;

/** Where shaped loaves wait for the oven. */
public enum ProofKind {
  /** In the refrigerator. */
  COLD("in the cold"),
  /** In the kitchen. */
  ROOM("in the kitchen");

  private final String words;

  ProofKind(String words) {
    this.words = words;
  }

  /** As printed. */
  public String words() {
    return words;
  }
}
