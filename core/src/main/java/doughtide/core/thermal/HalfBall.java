package doughtide.core.thermal;

/** Half a ball, flat side up; the curved side counts as upright. */
record HalfBall() implements PieceShape {
  /** First zero of the spherical Bessel function j1 (Abramowitz &amp; Stegun 1964, table 10.6). */
  private static final double FIRST_ZERO = 4.493409457909064;

  @Override
  public PieceGeometry ofVolume(double volumeM3) {
    double radius = Math.cbrt(3 * volumeM3 / (2 * Math.PI));
    double flat = Math.PI * radius * radius;
    double limit = FIRST_ZERO / radius;
    return PieceGeometry.nearest(volumeM3, flat, 2 * flat, 0, limit * limit);
  }
}
