package doughtide.core.thermal;

/** An upright cylinder, of a given proportion or (diameter above 0) of a given width. */
record Upright(double depthToDiameter, double diameterMm) implements PieceShape {
  @Override
  public PieceGeometry ofVolume(double volumeM3) {
    double radius = radius(volumeM3);
    double depth = volumeM3 / (Math.PI * radius * radius);
    double flat = Math.PI * radius * radius;
    double side = 2 * Math.PI * radius * depth;
    double across = BodyForm.CYLINDER.firstEigenvalue() / radius;
    double along = Math.PI / depth;
    return PieceGeometry.nearest(volumeM3, flat, side, flat, across * across + along * along);
  }

  private double radius(double volumeM3) {
    return diameterMm > 0
        ? diameterMm / 2000
        : Math.cbrt(volumeM3 / (2 * Math.PI * depthToDiameter));
  }
}
