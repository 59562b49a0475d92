package doughtide.core.loaf;

import doughtide.core.Internal;
import doughtide.core.quantity.Checks;
import doughtide.core.quantity.InputException;
import doughtide.core.thermal.Material;
import doughtide.core.thermal.PieceShape;
import doughtide.core.thermal.Wall;
import java.io.Serializable;
import java.util.List;

/**
 * A form in which a piece is proofed, with the wall it usually lies against.
 *
 * @param key what it is called in options and documents, in English, small letters
 * @param shape its geometry
 * @param wall what it lies against
 */
public record PieceForm(String key, @Internal PieceShape shape, @Internal Wall wall)
    implements Serializable {

  /** A round loaf in a cane basket. */
  public static final PieceForm ROUND =
      new PieceForm("round", PieceShape.round(), Wall.of(Material.CANE_BASKET));

  /** An oval loaf in a cane basket. */
  public static final PieceForm OVAL =
      new PieceForm("oval", PieceShape.oval(), Wall.of(Material.CANE_BASKET));

  /** A loaf in a steel tin. */
  public static final PieceForm TIN =
      new PieceForm("tin", PieceShape.tin(), Wall.of(Material.STEEL));

  /** A long loaf on a cloth. */
  public static final PieceForm BAGUETTE =
      new PieceForm("baguette", PieceShape.baguette(), Wall.NONE);

  /** Dough left in a plastic tub. */
  public static final PieceForm TUB =
      new PieceForm("tub", PieceShape.tub(), Wall.of(Material.POLYPROPYLENE));

  /**
   * @param key what it is called in options and documents, in English, small letters
   * @param shape its geometry
   * @param wall what it lies against
   * @throws InputException if the key is blank
   */
  public PieceForm {
    Checks.given("shape", shape);
    Checks.given("wall", wall);
    if (key.isBlank()) {
      throw new InputException("form.no-key", "a form needs a key, for example round");
    }
  }

  /** {@return the forms that come with the library} A new one is one line here and one above. */
  public static List<PieceForm> standard() {
    return List.of(ROUND, OVAL, TIN, BAGUETTE, TUB);
  }
}
