package doughtide.core.loaf;

import doughtide.core.dough.Flour;

/**
 * How firmly a piece is handled from dividing to its final shape, all together (starting values,
 * common practice without a source).
 */
public enum Shaping {
  /** Divided and rounded with as much of its gas left in as possible. */
  GENTLE("gentle", new Handling(0.15, 0.35)),
  /** Pressed flat and rolled tight, as for a tin. */
  FIRM("firm", new Handling(0.40, 0.60)),
  /** Knocked back before it is shaped. */
  KNOCKED_BACK("knocked-back", new Handling(0.80, 0.95));

  private static final double NO_GLUTEN = 0.5; // rye above half

  private final String key;
  private final Handling handling;

  Shaping(String key, Handling handling) {
    this.key = key;
    this.handling = handling;
  }

  /**
   * {@return a shaping, as a baker usually handles such a piece: firmly for rye and in a tin,
   * gently otherwise}
   *
   * @param flour of the dough
   * @param form of the piece
   */
  public static Shaping usual(Flour flour, PieceForm form) {
    return flour.gluten() < NO_GLUTEN || form.equals(PieceForm.TIN) ? FIRM : GENTLE;
  }

  /** {@return its word in options and documents} */
  public String key() {
    return key;
  }

  /** {@return what it takes out} */
  public Handling handling() {
    return handling;
  }
}
