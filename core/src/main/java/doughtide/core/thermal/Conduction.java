package doughtide.core.thermal;

import doughtide.core.Internal;
import doughtide.core.quantity.Checks;
import java.util.Arrays;
import org.apache.commons.math3.linear.EigenDecomposition;
import org.apache.commons.math3.linear.RealVector;

/**
 * Heat conduction from the centre of a body to its surface, by finite volumes in space and exactly
 * in time.
 *
 * <p>The body is cut into shells, thinner towards the surface (face i of n at x(3 − x)/2 of the
 * length, x = i/n). What flows between two shells is chosen so that a parabolic temperature, the
 * shape a cooling body tends to, is met exactly by the shells' means; the surface layer likewise,
 * in series with the surface coefficient. The shells' balances are a linear system with constant
 * coefficients. It is made symmetric by the square roots of the shell volumes and split into its
 * eigenvectors once, so every later hour costs one exponential per shell and no time step has to be
 * chosen.
 *
 * <p>Against the exact series for slab, cylinder and sphere (Biot numbers 0.5…5, Fourier numbers
 * from 0.1) centre, surface and mean are met within 0.082 % of the initial difference with the
 * standard {@value #STANDARD_SHELLS} shells, 0.19 % with 8 and 0.013 % with 32. Properties are
 * constant; moisture loss at the surface is not counted.
 *
 * <pre>{@code
 * DoughHeat heat = new DoughHeat(800, 2850, 0.3);
 * Conduction ball = Conduction.of(BodyForm.SPHERE, 0.06, heat, 6.3);
 * CoolingSteps piece = new CoolingSteps(ball, 24, 4);
 * piece.step(2, 4, 0);
 * double core = piece.coreCelsius();
 * }</pre>
 */
@Internal
public final class Conduction {
  /** Shells used when nothing else is asked for. */
  public static final int STANDARD_SHELLS = 12;

  private static final double SECONDS_PER_HOUR = 3600;

  private final BodyForm form;
  private final double lengthMetres;
  private final DoughHeat heat;
  private final double surfaceWPerM2K;
  private final Shells shells;
  private final double surfaceToShell;
  private final double[] ratesPerHour;
  private final double[][] modeAtShell;
  private final double[][] shellToMode;

  private Conduction(
      BodyForm form, double lengthMetres, DoughHeat heat, double surfaceWPerM2K, Shells shells) {
    this.form = form;
    this.lengthMetres = lengthMetres;
    this.heat = heat;
    this.surfaceWPerM2K = surfaceWPerM2K;
    this.shells = shells;
    double layer = shells.surfaceLayer();
    this.surfaceToShell = layer / (layer + biot());
    int n = shells.count();
    EigenDecomposition split = split(shells, biot());
    double perHour = heat.diffusivityM2PerS() / (lengthMetres * lengthMetres) * SECONDS_PER_HOUR;
    this.ratesPerHour = new double[n];
    this.modeAtShell = new double[n][n];
    this.shellToMode = new double[n][n];
    for (int mode = 0; mode < n; mode++) {
      int slowestFirst = n - 1 - mode;
      ratesPerHour[mode] = split.getRealEigenvalue(slowestFirst) * perHour;
      RealVector vector = split.getEigenvector(slowestFirst);
      for (int shell = 0; shell < n; shell++) {
        double root = Math.sqrt(shells.volume(shell));
        modeAtShell[shell][mode] = vector.getEntry(shell) / root;
        shellToMode[mode][shell] = vector.getEntry(shell) * root;
      }
    }
  }

  /**
   * A body with the standard number of shells.
   *
   * @param form slab, cylinder or sphere
   * @param lengthMetres half thickness or radius, 0.001…1 m
   * @param heat the dough's properties
   * @param surfaceWPerM2K heat transfer coefficient at the surface, 0.01…100 000 W/(m² K)
   * @throws doughtide.core.quantity.InputException if a value is out of range
   */
  public static Conduction of(
      BodyForm form, double lengthMetres, DoughHeat heat, double surfaceWPerM2K) {
    return of(form, lengthMetres, heat, surfaceWPerM2K, STANDARD_SHELLS);
  }

  /**
   * A body with a chosen number of shells.
   *
   * @param form slab, cylinder or sphere
   * @param lengthMetres half thickness or radius, 0.001…1 m
   * @param heat the dough's properties
   * @param surfaceWPerM2K heat transfer coefficient at the surface, 0.01…100 000 W/(m² K)
   * @param shells 4…200
   * @throws doughtide.core.quantity.InputException if a value is out of range
   */
  public static Conduction of(
      BodyForm form, double lengthMetres, DoughHeat heat, double surfaceWPerM2K, int shells) {
    Checks.inRange("half thickness or radius", lengthMetres * 1000, 1, 1000, "mm");
    Checks.inRange("surface coefficient", surfaceWPerM2K, 0.01, 1e5, "W/(m² K)");
    Checks.inRange("number of shells", shells, 4, 200, "");
    return new Conduction(form, lengthMetres, heat, surfaceWPerM2K, Shells.of(form, shells));
  }

  private static EigenDecomposition split(Shells shells, double biot) {
    int n = shells.count();
    double[] main = new double[n];
    double[] beside = new double[n - 1];
    for (int i = 0; i < n; i++) {
      double inner = i == 0 ? 0 : shells.conductance(i);
      double outer = i == n - 1 ? shells.toSurroundings(biot) : shells.conductance(i + 1);
      main[i] = (inner + outer) / shells.volume(i);
      if (i > 0) {
        beside[i - 1] = -inner / Math.sqrt(shells.volume(i - 1) * shells.volume(i));
      }
    }
    return new EigenDecomposition(main, beside);
  }

  /** Half thickness or radius, m. */
  public double lengthMetres() {
    return lengthMetres;
  }

  /** Properties of the dough. */
  public DoughHeat heat() {
    return heat;
  }

  /** Biot number h·L/k: resistance inside over resistance at the surface. */
  public double biot() {
    return surfaceWPerM2K * lengthMetres / heat.conductivityWPerMK();
  }

  /** Number of shells. */
  public int shells() {
    return shells.count();
  }

  /** Share of the volume in each shell, from the centre outward; adds up to 1. */
  public double[] volumeFractions() {
    double[] fractions = new double[shells.count()];
    for (int i = 0; i < fractions.length; i++) {
      fractions[i] = shells.volume(i);
    }
    return fractions;
  }

  /**
   * Faces of the shells as fractions of the length, from 0 at the centre to 1; one more than
   * shells.
   */
  public double[] shellFaces() {
    return shells.faces();
  }

  /**
   * Hours in which the difference to the surroundings falls to 1/e once the first hours are over
   * (the slowest mode's time constant).
   */
  public double timeConstantHours() {
    return 1 / ratesPerHour[0];
  }

  /** Decay rates of the modes per hour, slowest first; not copied. */
  double[] rates() {
    return ratesPerHour;
  }

  /** Temperature of a shell per unit of each mode; not copied. */
  double[] modesAt(int shell) {
    return modeAtShell[shell];
  }

  /** Amount of each mode in a temperature per shell. */
  double[] toModes(double[] perShell) {
    double[] modes = new double[perShell.length];
    for (int mode = 0; mode < modes.length; mode++) {
      for (int shell = 0; shell < perShell.length; shell++) {
        modes[mode] += shellToMode[mode][shell] * perShell[shell];
      }
    }
    return modes;
  }

  /** Amount of each mode in a temperature of 1 everywhere. */
  double[] modesOfOne() {
    double[] ones = new double[shells.count()];
    Arrays.fill(ones, 1);
    return toModes(ones);
  }

  /** Excess over the surroundings at the surface per unit of excess in the outermost shell. */
  double surfaceToShell() {
    return surfaceToShell;
  }

  /** Weight of the second shell in the centre temperature (the first has 1 minus it); negative. */
  double centreWeightOfSecond() {
    return shells.centreWeightOfSecond();
  }

  /** Fall of the mean per hour and kelvin of excess in the outermost shell. */
  double meanLossPerHour() {
    double perHour = heat.diffusivityM2PerS() / (lengthMetres * lengthMetres) * SECONDS_PER_HOUR;
    return shells.toSurroundings(biot()) * perHour;
  }
}
