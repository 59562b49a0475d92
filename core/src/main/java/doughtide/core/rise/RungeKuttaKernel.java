package doughtide.core.rise;

import java.util.Arrays;

/**
 * Dormand &amp; Prince 5(4) with dense output over plain arrays (coefficients and interpolant:
 * Hairer, Nørsett &amp; Wanner 1993, Solving Ordinary Differential Equations I, II.5 and II.6). It
 * does for an ensemble what commons-math3 does for one run, without objects in the loop; a test
 * holds it against commons-math3 over random doughs.
 */
final class RungeKuttaKernel implements DenseSolution {
  private static final int N = RiseDynamics.SIZE;
  private static final int STAGES = 7;
  private static final int ROW = 5 * N;
  private static final double RELATIVE = 2e-8;
  private static final double ABSOLUTE = 2e-9;
  private static final double LARGEST_STEP_HOURS = 6;
  private static final double SMALLEST_STEP_HOURS = 1e-10;
  private static final double[][] A = {
    {},
    {1.0 / 5},
    {3.0 / 40, 9.0 / 40},
    {44.0 / 45, -56.0 / 15, 32.0 / 9},
    {19372.0 / 6561, -25360.0 / 2187, 64448.0 / 6561, -212.0 / 729},
    {9017.0 / 3168, -355.0 / 33, 46732.0 / 5247, 49.0 / 176, -5103.0 / 18656},
    {35.0 / 384, 0, 500.0 / 1113, 125.0 / 192, -2187.0 / 6784, 11.0 / 84}
  };
  private static final double[] C = {0, 1.0 / 5, 3.0 / 10, 4.0 / 5, 8.0 / 9, 1, 1};
  private static final double[] ERROR = {
    71.0 / 57600, 0, -71.0 / 16695, 71.0 / 1920, -17253.0 / 339200, 22.0 / 525, -1.0 / 40
  };
  private static final double[] DENSE = {
    -12715105075.0 / 11282082432.0,
    0,
    87487479700.0 / 32700410799.0,
    -10690763975.0 / 1880347072.0,
    701980252875.0 / 199316789632.0,
    -1453857185.0 / 822651844.0,
    69997945.0 / 29380423.0
  };

  private final double[][] k = new double[STAGES][N];
  private final double[] trial = new double[N];
  private double[] mesh = new double[64];
  private double[] rows = new double[64 * ROW];
  private int steps;
  private double suggestedStep = 0.05;

  /** Integrates one segment from {@code state}, which receives the state at its end. */
  void integrate(SegmentDynamics equations, double from, double to, double[] state) {
    if (steps == 0) {
      mesh[0] = from;
    }
    double t = from;
    double step = Math.min(suggestedStep, to - from);
    equations.computeDerivatives(t, state, k[0]);
    while (t < to) {
      double h = t + step * 1.0000001 >= to ? to - t : step;
      double error = attempt(equations, t, h, state);
      if (error <= 1 || h <= SMALLEST_STEP_HOURS) {
        store(t + h >= to ? to : t + h, h, state);
        t = mesh[steps];
        System.arraycopy(trial, 0, state, 0, N);
        System.arraycopy(k[STAGES - 1], 0, k[0], 0, N);
      }
      step = nextStep(h, error);
    }
    suggestedStep = step;
  }

  private static double nextStep(double h, double error) {
    if (!Double.isFinite(error)) {
      return h * 0.2; // a far too long step can overflow
    }
    double factor = error > 1e-10 ? 0.9 * Math.pow(error, -0.2) : 5;
    return Math.min(h * Math.min(5, Math.max(0.2, factor)), LARGEST_STEP_HOURS);
  }

  private double attempt(SegmentDynamics equations, double t, double h, double[] state) {
    for (int stage = 1; stage < STAGES; stage++) {
      double[] a = A[stage];
      for (int i = 0; i < N; i++) {
        double sum = 0;
        for (int j = 0; j < stage; j++) {
          sum += a[j] * k[j][i];
        }
        trial[i] = state[i] + h * sum;
      }
      equations.computeDerivatives(t + C[stage] * h, trial, k[stage]);
    }
    return error(h, state);
  }

  private double error(double h, double[] state) {
    double sum = 0;
    for (int i = 0; i < N; i++) {
      double e = 0;
      for (int j = 0; j < STAGES; j++) {
        e += ERROR[j] * k[j][i];
      }
      double scale = ABSOLUTE + RELATIVE * Math.max(Math.abs(state[i]), Math.abs(trial[i]));
      double ratio = h * e / scale;
      sum += ratio * ratio;
    }
    return Math.sqrt(sum / N);
  }

  private void store(double end, double h, double[] state) {
    steps++;
    if (steps == mesh.length) {
      mesh = Arrays.copyOf(mesh, 2 * mesh.length);
      rows = Arrays.copyOf(rows, 2 * rows.length);
    }
    mesh[steps] = end;
    int row = (steps - 1) * ROW;
    for (int i = 0; i < N; i++) {
      double difference = trial[i] - state[i];
      double bend = h * k[0][i] - difference;
      double sum = 0;
      for (int j = 0; j < STAGES; j++) {
        sum += DENSE[j] * k[j][i];
      }
      rows[row + i] = state[i];
      rows[row + N + i] = difference;
      rows[row + 2 * N + i] = bend;
      rows[row + 3 * N + i] = difference - h * k[STAGES - 1][i] - bend;
      rows[row + 4 * N + i] = h * sum;
    }
  }

  @Override
  public double[] mesh() {
    return Arrays.copyOf(mesh, steps + 1);
  }

  @Override
  public void stateAt(double hours, double[] state) {
    int found = Arrays.binarySearch(mesh, 0, steps + 1, hours);
    int step = Math.min(Math.max(found >= 0 ? found : -found - 2, 0), steps - 1);
    double x = (hours - mesh[step]) / (mesh[step + 1] - mesh[step]);
    double rest = 1 - x;
    int row = step * ROW;
    for (int i = 0; i < N; i++) {
      state[i] =
          rows[row + i]
              + x
                  * (rows[row + N + i]
                      + rest
                          * (rows[row + 2 * N + i]
                              + x * (rows[row + 3 * N + i] + rest * rows[row + 4 * N + i])));
    }
  }
}
