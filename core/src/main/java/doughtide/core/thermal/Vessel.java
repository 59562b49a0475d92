package doughtide.core.thermal;

import doughtide.core.Internal;
import doughtide.core.quantity.Checks;
import java.io.Serializable;

/**
 * What a dough stands in.
 *
 * @param shape form of the dough in it
 * @param wall its wall at the sides and below
 * @param cover what lies over the top
 */
public record Vessel(@Internal PieceShape shape, @Internal Wall wall, Cover cover)
    implements Serializable {
  /**
   * Refuses nothing where something is needed.
   *
   * @param shape form of the dough in it
   * @param wall its wall at the sides and below
   * @param cover what lies over the top
   */
  public Vessel {
    Checks.given("cover", cover);
    Checks.given("shape", shape);
    Checks.given("wall", wall);
  }

  /**
   * {@return a covered bowl of usual wall thickness}
   *
   * @param material of its wall
   */
  public static Vessel bowl(Material material) {
    return new Vessel(PieceShape.bowl(), Wall.of(material), Cover.COVERED);
  }

  /**
   * {@return a covered tub of usual wall thickness}
   *
   * @param material of its wall
   */
  public static Vessel tub(Material material) {
    return new Vessel(PieceShape.tub(), Wall.of(material), Cover.COVERED);
  }

  /**
   * {@return a covered jar of usual wall thickness}
   *
   * @param material of its wall
   */
  public static Vessel jar(Material material) {
    return new Vessel(PieceShape.jar(), Wall.of(material), Cover.COVERED);
  }

  /** {@return the same vessel left open} */
  public Vessel open() {
    return new Vessel(shape, wall, Cover.OPEN);
  }
}
