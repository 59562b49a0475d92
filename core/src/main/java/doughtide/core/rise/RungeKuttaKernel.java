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
  private static final int ROW = 5 * N;
  private static final double RELATIVE = 2e-8;
  private static final double ABSOLUTE = 2e-9;
  private static final double LARGEST_STEP_HOURS = 6;
  private static final double SMALLEST_STEP_HOURS = 1e-10;
  private static final double A21 = 1.0 / 5;
  private static final double A31 = 3.0 / 40;
  private static final double A32 = 9.0 / 40;
  private static final double A41 = 44.0 / 45;
  private static final double A42 = -56.0 / 15;
  private static final double A43 = 32.0 / 9;
  private static final double A51 = 19372.0 / 6561;
  private static final double A52 = -25360.0 / 2187;
  private static final double A53 = 64448.0 / 6561;
  private static final double A54 = -212.0 / 729;
  private static final double A61 = 9017.0 / 3168;
  private static final double A62 = -355.0 / 33;
  private static final double A63 = 46732.0 / 5247;
  private static final double A64 = 49.0 / 176;
  private static final double A65 = -5103.0 / 18656;
  private static final double B1 = 35.0 / 384; // B2 is 0
  private static final double B3 = 500.0 / 1113;
  private static final double B4 = 125.0 / 192;
  private static final double B5 = -2187.0 / 6784;
  private static final double B6 = 11.0 / 84;
  private static final double C2 = 1.0 / 5;
  private static final double C3 = 3.0 / 10;
  private static final double C4 = 4.0 / 5;
  private static final double C5 = 8.0 / 9;
  private static final double E1 = 71.0 / 57600; // E2 is 0
  private static final double E3 = -71.0 / 16695;
  private static final double E4 = 71.0 / 1920;
  private static final double E5 = -17253.0 / 339200;
  private static final double E6 = 22.0 / 525;
  private static final double E7 = -1.0 / 40;
  private static final double D1 = -12715105075.0 / 11282082432.0; // D2 is 0
  private static final double D3 = 87487479700.0 / 32700410799.0;
  private static final double D4 = -10690763975.0 / 1880347072.0;
  private static final double D5 = 701980252875.0 / 199316789632.0;
  private static final double D6 = -1453857185.0 / 822651844.0;
  private static final double D7 = 69997945.0 / 29380423.0;

  private static final int STEPS_AHEAD = 4;
  private static final int USUAL_STEPS = 96; // most runs of a day have fewer

  /** What is integrated. */
  interface Equations {
    void computeDerivatives(double hours, double[] state, double[] derivative);
  }

  private double[] k1 = new double[N];
  private final double[] k2 = new double[N];
  private final double[] k3 = new double[N];
  private final double[] k4 = new double[N];
  private final double[] k5 = new double[N];
  private final double[] k6 = new double[N];
  private double[] k7 = new double[N];
  private final double[] trial = new double[N];
  private double[] mesh = new double[USUAL_STEPS];
  private double[] rows = new double[USUAL_STEPS * ROW];
  private int steps;
  private int lastStep;
  private double suggestedStep = 0.05;

  /** Integrates one segment from {@code state}, which receives the state at its end. */
  void integrate(Equations equations, double from, double to, double[] state) {
    if (steps == 0) {
      mesh[0] = from;
    }
    double t = from;
    double step = Math.min(suggestedStep, to - from);
    equations.computeDerivatives(t, state, k1);
    while (t < to) {
      double h = t + step * 1.0000001 >= to ? to - t : step;
      double error = attempt(equations, t, h, state);
      if (error <= 1 || h <= SMALLEST_STEP_HOURS) {
        store(t + h >= to ? to : t + h, h, state);
        t = mesh[steps];
        System.arraycopy(trial, 0, state, 0, N);
        double[] last = k7; // the last stage is the first of the next step
        k7 = k1;
        k1 = last;
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

  /** Reads each field once: until the method is compiled, every access to a field costs time. */
  private double attempt(Equations equations, double t, double h, double[] y) {
    double[] a = k1;
    double[] b = k2;
    double[] c = k3;
    double[] d = k4;
    double[] e = k5;
    double[] f = k6;
    double[] next = trial;
    for (int i = 0; i < N; i++) {
      next[i] = y[i] + h * (A21 * a[i]);
    }
    equations.computeDerivatives(t + C2 * h, next, b);
    for (int i = 0; i < N; i++) {
      next[i] = y[i] + h * (A31 * a[i] + A32 * b[i]);
    }
    equations.computeDerivatives(t + C3 * h, next, c);
    for (int i = 0; i < N; i++) {
      next[i] = y[i] + h * (A41 * a[i] + A42 * b[i] + A43 * c[i]);
    }
    equations.computeDerivatives(t + C4 * h, next, d);
    for (int i = 0; i < N; i++) {
      next[i] = y[i] + h * (A51 * a[i] + A52 * b[i] + A53 * c[i] + A54 * d[i]);
    }
    equations.computeDerivatives(t + C5 * h, next, e);
    for (int i = 0; i < N; i++) {
      next[i] = y[i] + h * (A61 * a[i] + A62 * b[i] + A63 * c[i] + A64 * d[i] + A65 * e[i]);
    }
    equations.computeDerivatives(t + h, next, f);
    for (int i = 0; i < N; i++) {
      next[i] = y[i] + h * (B1 * a[i] + B3 * c[i] + B4 * d[i] + B5 * e[i] + B6 * f[i]);
    }
    equations.computeDerivatives(t + h, next, k7);
    return error(h, y);
  }

  private double error(double h, double[] state) {
    double[] a = k1;
    double[] c = k3;
    double[] d = k4;
    double[] e = k5;
    double[] f = k6;
    double[] g = k7;
    double[] next = trial;
    double sum = 0;
    for (int i = 0; i < N; i++) {
      double off = E1 * a[i] + E3 * c[i] + E4 * d[i] + E5 * e[i] + E6 * f[i] + E7 * g[i];
      double scale = ABSOLUTE + RELATIVE * Math.max(Math.abs(state[i]), Math.abs(next[i]));
      double ratio = h * off / scale;
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
      double bend = h * k1[i] - difference;
      double sum = D1 * k1[i] + D3 * k3[i] + D4 * k4[i] + D5 * k5[i] + D6 * k6[i] + D7 * k7[i];
      rows[row + i] = state[i];
      rows[row + N + i] = difference;
      rows[row + 2 * N + i] = bend;
      rows[row + 3 * N + i] = difference - h * k7[i] - bend;
      rows[row + 4 * N + i] = h * sum;
    }
  }

  @Override
  public double[] mesh() {
    return Arrays.copyOf(mesh, steps + 1);
  }

  /** Curves are mostly read in the order of time: the step looked for is rarely far ahead. */
  private int stepAt(double hours) {
    int step = hours >= mesh[lastStep] ? lastStep : 0;
    int nearby = Math.min(step + STEPS_AHEAD, steps - 1);
    while (step < nearby && hours >= mesh[step + 1]) {
      step++;
    }
    if (step == nearby && step < steps - 1) {
      int found = Arrays.binarySearch(mesh, step, steps + 1, hours);
      step = Math.min(Math.max(found >= 0 ? found : -found - 2, 0), steps - 1);
    }
    lastStep = step;
    return step;
  }

  @Override
  public void stateAt(double hours, double[] state) {
    int step = stepAt(hours);
    int row = step * ROW;
    if (hours == mesh[step]) {
      System.arraycopy(rows, row, state, 0, N);
      return;
    }
    double x = (hours - mesh[step]) / (mesh[step + 1] - mesh[step]);
    double rest = 1 - x;
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
