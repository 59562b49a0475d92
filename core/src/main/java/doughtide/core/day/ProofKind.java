package doughtide.core.day;

/** Where shaped loaves wait for the oven. */
public enum ProofKind {
  /** In the cold. */
  COLD,
  /** In the room. */
  ROOM
}
