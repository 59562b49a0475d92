package doughtide.core.loaf;

import doughtide.core.quantity.InputException;
import doughtide.core.thermal.Material;
import doughtide.core.thermal.PieceShape;
import doughtide.core.thermal.Wall;
import java.util.Arrays;
import java.util.Locale;

/**
 * The forms a piece is proofed in, each with the wall it usually lies against. A new form is one
 * line here.
 */
public enum PieceForm {
  /** A round loaf in a cane basket. */
  ROUND("round", PieceShape.round(), Wall.of(Material.CANE_BASKET)),
  /** An oval loaf in a cane basket. */
  OVAL("oval", PieceShape.oval(), Wall.of(Material.CANE_BASKET)),
  /** A loaf in a steel tin. */
  TIN("tin", PieceShape.tin(), Wall.of(Material.STEEL)),
  /** A long loaf on a cloth. */
  BAGUETTE("baguette", PieceShape.baguette(), Wall.NONE),
  /** Dough left in a plastic tub. */
  TUB("tub", PieceShape.tub(), Wall.of(Material.POLYPROPYLENE));

  private final String words;
  private final PieceShape shape;
  private final Wall wall;

  PieceForm(String words, PieceShape shape, Wall wall) {
    this.words = words;
    this.shape = shape;
    this.wall = wall;
  }

  /** As a baker says it. */
  public String words() {
    return words;
  }

  /** Its geometry. */
  public PieceShape shape() {
    return shape;
  }

  /** What it lies against. */
  public Wall wall() {
    return wall;
  }

  /**
   * Finds a form by its word.
   *
   * @param word for example {@code "round"}, upper or lower case
   * @throws InputException if there is none; the message lists them
   */
  public static PieceForm named(String word) {
    String wanted = word.strip().toLowerCase(Locale.ROOT);
    return Arrays.stream(values())
        .filter(form -> form.words.equals(wanted))
        .findFirst()
        .orElseThrow(
            () ->
                InputException.unknown(
                    "form", word, Arrays.stream(values()).map(PieceForm::words).toList()));
  }
}
