package doughtide.core.thermal;

import doughtide.core.Internal;
import doughtide.core.quantity.Checks;
import doughtide.core.quantity.Mass;
import java.io.Serializable;

/**
 * The form of a piece of dough. All implementations are immutable. A new form is one class and one
 * factory here.
 *
 * <p>The proportions of the plain factories are common practice, no source; give your own where
 * they differ.
 *
 * <pre>{@code
 * PieceGeometry loaf = PieceShape.round().geometry(Mass.ofGrams(850), 800);
 * double coefficient =
 *     loaf.surfaceWPerM2K(Air.STILL_COLD, Wall.of(Material.CANE_BASKET), Cover.COVERED);
 * Conduction conduction = loaf.conduction(new DoughHeat(800, 2850, 0.3), coefficient);
 * }</pre>
 */
@Internal
public interface PieceShape extends Serializable {
  /**
   * Volume and surface of a piece.
   *
   * @param volumeM3 volume with gas, 0.00001…1 m³
   */
  PieceGeometry ofVolume(double volumeM3);

  /**
   * Volume and surface of a piece.
   *
   * @param mass mass of the piece
   * @param densityKgPerM3 density with gas, 50…2000 kg/m³
   */
  default PieceGeometry geometry(Mass mass, double densityKgPerM3) {
    Checks.inRange("density", densityKgPerM3, 50, 2000, "kg/m³");
    return ofVolume(mass.kilograms() / densityKgPerM3);
  }

  /** A round loaf 0.6 times as high as wide. */
  static PieceShape round() {
    return round(0.6);
  }

  /**
   * A round loaf: a flattened ball (oblate spheroid), its upper half facing up, its lower half
   * down.
   *
   * @param heightToWidth 0.2…1
   */
  static PieceShape round(double heightToWidth) {
    return new FlattenedBall(heightToWidth);
  }

  /** An oval loaf twice as long as thick. */
  static PieceShape oval() {
    return oval(2);
  }

  /**
   * An oval loaf: a bar with rounded ends.
   *
   * @param lengthToThickness 1…30
   */
  static PieceShape oval(double lengthToThickness) {
    return new RoundedBar(lengthToThickness);
  }

  /** A baguette, ten times as long as thick. */
  static PieceShape baguette() {
    return oval(10);
  }

  /** A tin loaf: length to width to height 2.2 to 1 to 0.9. */
  static PieceShape tin() {
    return tin(2.2, 0.9);
  }

  /**
   * A tin loaf: a box.
   *
   * @param lengthToWidth 1…10
   * @param heightToWidth 0.1…3
   */
  static PieceShape tin(double lengthToWidth, double heightToWidth) {
    return new Box(lengthToWidth, heightToWidth);
  }

  /** Dough in a tub, half as deep as the tub is wide. */
  static PieceShape tub() {
    return new Upright(0.5, 0);
  }

  /**
   * Dough in a tub of known width.
   *
   * @param diameterMm inner diameter (of a square tub: side times 1.13), 50…1500 mm
   */
  static PieceShape tub(double diameterMm) {
    return new Upright(0.5, Checks.inRange("diameter of the tub", diameterMm, 50, 1500, "mm"));
  }

  /** Starter in a jar, filled as high as it is wide. */
  static PieceShape jar() {
    return new Upright(1, 0);
  }

  /**
   * Starter in a jar of known width.
   *
   * @param diameterMm inner diameter, 20…300 mm
   */
  static PieceShape jar(double diameterMm) {
    return new Upright(1, Checks.inRange("diameter of the jar", diameterMm, 20, 300, "mm"));
  }

  /** Dough in a round bowl: half a ball, flat on top. */
  static PieceShape bowl() {
    return new HalfBall();
  }
}
