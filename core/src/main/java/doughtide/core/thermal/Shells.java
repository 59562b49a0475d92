package doughtide.core.thermal;

/**
 * The shells of a body of length 1 and volume 1, and the conductances between them for a
 * conductivity of 1.
 *
 * <p>For T = a + b·r² the mean of a shell is a + b·m, where m is the shell's mean of r²; the flux
 * at a face r is 2·b·r. Dividing the one by the difference of the other gives conductances that are
 * exact for every parabola.
 */
final class Shells {
  private final double[] faces;
  private final double[] volumes;
  private final double[] meanSquares;
  private final double[] conductances;
  private final int dimension;

  private Shells(double[] faces, int dimension) {
    int n = faces.length - 1;
    this.faces = faces;
    this.dimension = dimension;
    this.volumes = new double[n];
    this.meanSquares = new double[n];
    for (int i = 0; i < n; i++) {
      volumes[i] = Math.pow(faces[i + 1], dimension) - Math.pow(faces[i], dimension);
      double moment = Math.pow(faces[i + 1], dimension + 2) - Math.pow(faces[i], dimension + 2);
      meanSquares[i] = moment * dimension / (dimension + 2) / volumes[i];
    }
    this.conductances = new double[n];
    for (int i = 1; i < n; i++) {
      double area = dimension * Math.pow(faces[i], dimension - 1);
      conductances[i] = area * 2 * faces[i] / (meanSquares[i] - meanSquares[i - 1]);
    }
  }

  static Shells of(BodyForm form, int count) {
    double[] faces = new double[count + 1];
    for (int i = 0; i <= count; i++) {
      double x = (double) i / count;
      faces[i] = x * (3 - x) / 2;
    }
    faces[count] = 1;
    return new Shells(faces, form.dimension());
  }

  int count() {
    return volumes.length;
  }

  double[] faces() {
    return faces.clone();
  }

  double volume(int shell) {
    return volumes[shell];
  }

  /** Between shell {@code face} and the one inside it. */
  double conductance(int face) {
    return conductances[face];
  }

  /** From the outermost shell to the surface, per area. */
  double surfaceLayer() {
    return 2 / (1 - meanSquares[count() - 1]);
  }

  /** From the outermost shell through the surface layer and the surface coefficient. */
  double toSurroundings(double biot) {
    return dimension / (1 / biot + 1 / surfaceLayer());
  }

  /** A parabola through the two innermost shells, taken to the centre. */
  double centreWeightOfSecond() {
    return -meanSquares[0] / (meanSquares[1] - meanSquares[0]);
  }
}
