package doughtide.core.thermal;

import doughtide.core.quantity.Checks;

/** A box, as in a tin. */
record Box(double lengthToWidth, double heightToWidth) implements PieceShape {
  Box {
    Checks.inRange("length over width of the tin", lengthToWidth, 1, 10, "");
    Checks.inRange("height over width of the dough in the tin", heightToWidth, 0.1, 3, "");
  }

  @Override
  public PieceGeometry ofVolume(double volumeM3) {
    double width = Math.cbrt(volumeM3 / (lengthToWidth * heightToWidth));
    double length = lengthToWidth * width;
    double height = heightToWidth * width;
    double flat = length * width;
    double sides = 2 * height * (length + width);
    double limit = square(width) + square(length) + square(height);
    return PieceGeometry.nearest(volumeM3, flat, sides, flat, limit);
  }

  private static double square(double thickness) {
    double rate = Math.PI / thickness;
    return rate * rate;
  }
}
