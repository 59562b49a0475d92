package doughtide.core.day;

/** Where shaped loaves wait for the oven. */
public enum ProofKind {
  /** In the refrigerator. */
  COLD,
  /** In the kitchen. */
  ROOM
}
