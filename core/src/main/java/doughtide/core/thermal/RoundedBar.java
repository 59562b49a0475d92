package doughtide.core.thermal;

import doughtide.core.quantity.Checks;

/** A round bar with half-ball ends, its whole length given in thicknesses. */
record RoundedBar(double lengthToThickness) implements PieceShape {
  RoundedBar {
    Checks.inRange("length over thickness of the loaf", lengthToThickness, 1, 30, "");
  }

  @Override
  public PieceGeometry ofVolume(double volumeM3) {
    double straight = 2 * (lengthToThickness - 1);
    double radius = Math.cbrt(volumeM3 / (Math.PI * (straight + 4.0 / 3)));
    double area = 2 * Math.PI * radius * 2 * lengthToThickness * radius;
    return PieceGeometry.nearest(volumeM3, 0, area, 0, limitRate(radius));
  }

  /** As a cylinder with flat ends of the same volume and thickness. */
  private double limitRate(double radius) {
    double length = (2 * (lengthToThickness - 1) + 4.0 / 3) * radius;
    double across = BodyForm.CYLINDER.firstEigenvalue() / radius;
    double along = Math.PI / length;
    return across * across + along * along;
  }
}
