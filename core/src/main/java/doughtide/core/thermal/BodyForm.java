package doughtide.core.thermal;

import doughtide.core.Internal;

/** The three bodies in which heat runs in one direction only, from the centre to the surface. */
@Internal
public enum BodyForm {
  /** A wide plate cooled on both faces; its length is half the thickness. */
  SLAB(0),
  /** A long round bar; its length is the radius. */
  CYLINDER(1),
  /** A ball; its length is the radius. */
  SPHERE(2);

  private final int areaExponent;

  BodyForm(int areaExponent) {
    this.areaExponent = areaExponent;
  }

  /** The area at distance r from the centre grows with this power of r. */
  int areaExponent() {
    return areaExponent;
  }

  /** Surface over volume, times the length: 1, 2 or 3. */
  public int dimension() {
    return areaExponent + 1;
  }

  /**
   * First eigenvalue for a surface held at the temperature of its surroundings (infinite Biot
   * number): π/2, the first zero of the Bessel function J0 (Abramowitz &amp; Stegun 1964, table
   * 9.5), π.
   */
  double firstEigenvalue() {
    return switch (this) {
      case SLAB -> Math.PI / 2;
      case CYLINDER -> 2.404825557695773;
      case SPHERE -> Math.PI;
    };
  }
}
