package doughtide.core.thermal;

import doughtide.core.Internal;
import doughtide.core.quantity.Checks;
import doughtide.core.quantity.InputException;
import java.io.Serializable;
import java.util.List;

/**
 * A vessel by its form, whatever it is made of.
 *
 * @param key what it is called in options and documents, in English, small letters
 * @param shape form of the dough in it
 */
@Internal
public record VesselForm(String key, PieceShape shape) implements Serializable {

  /** Half a ball, flat on top. */
  public static final VesselForm BOWL = new VesselForm("bowl", PieceShape.bowl());

  /** Half as deep as wide. */
  public static final VesselForm TUB = new VesselForm("tub", PieceShape.tub());

  /** Filled as high as it is wide. */
  public static final VesselForm JAR = new VesselForm("jar", PieceShape.jar());

  /**
   * @throws InputException if the key is blank
   */
  public VesselForm {
    Checks.given("shape", shape);
    if (key.isBlank()) {
      throw new InputException("vessel.no-key", "a vessel needs a key, for example bowl");
    }
  }

  /** The vessels that come with the library. A new one is one line here and one above. */
  public static List<VesselForm> standard() {
    return List.of(BOWL, TUB, JAR);
  }

  /**
   * The vessel made of a material, of usual wall thickness, covered.
   *
   * @param material of sides and bottom
   */
  public Vessel of(Material material) {
    return new Vessel(shape, Wall.of(material), Cover.COVERED);
  }
}
