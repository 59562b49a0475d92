package doughtide.core.thermal;

import doughtide.core.quantity.Checks;

/** Oblate spheroid; a sphere stands for it. */
record FlattenedBall(double heightToWidth) implements PieceShape {
  FlattenedBall {
    Checks.inRange("height over width of the loaf", heightToWidth, 0.2, 1, "");
  }

  @Override
  public PieceGeometry ofVolume(double volumeM3) {
    double halfWidth = Math.cbrt(3 * volumeM3 / (4 * Math.PI * heightToWidth));
    double half = Math.PI * halfWidth * halfWidth * (1 + flank());
    return new PieceGeometry(volumeM3, half, 0, half, BodyForm.SPHERE);
  }

  /**
   * Half the area of a spheroid of half width 1 is π·(1 + flank): (1 − e²)·artanh(e)/e, 1 for a
   * ball.
   */
  private double flank() {
    double e = Math.sqrt(1 - heightToWidth * heightToWidth);
    if (e < 1e-4) {
      return 1;
    }
    double artanh = 0.5 * Math.log((1 + e) / (1 - e));
    return (1 - e * e) * artanh / e;
  }
}
