package doughtide.core.rise;

import doughtide.core.dough.DoughFormula;
import doughtide.core.quantity.Temperature;
import java.util.concurrent.TimeUnit;
import org.apache.commons.math3.ode.FirstOrderDifferentialEquations;
import org.apache.commons.math3.ode.FirstOrderIntegrator;
import org.apache.commons.math3.ode.nonstiff.DormandPrince54Integrator;
import org.apache.commons.math3.ode.nonstiff.DormandPrince853Integrator;
import org.hipparchus.ode.ODEState;
import org.hipparchus.ode.OrdinaryDifferentialEquation;
import org.openjdk.jmh.annotations.Benchmark;
import org.openjdk.jmh.annotations.BenchmarkMode;
import org.openjdk.jmh.annotations.Fork;
import org.openjdk.jmh.annotations.Measurement;
import org.openjdk.jmh.annotations.Mode;
import org.openjdk.jmh.annotations.OutputTimeUnit;
import org.openjdk.jmh.annotations.Scope;
import org.openjdk.jmh.annotations.Setup;
import org.openjdk.jmh.annotations.State;
import org.openjdk.jmh.annotations.Warmup;

/**
 * One trajectory of 24 h at a steady 25 °C: ours, the same equations through general integrators at
 * the same error, and the bare cost of our derivative evaluations as the floor.
 */
@State(Scope.Thread)
@BenchmarkMode(Mode.AverageTime)
@OutputTimeUnit(TimeUnit.MICROSECONDS)
@Warmup(iterations = 4, time = 1)
@Measurement(iterations = 5, time = 1)
@Fork(1)
public class TrajectoryBenchmark {
  private static final double HOURS = 24;
  private static final double LARGEST_STEP = 6;

  private final RiseModel model =
      RiseModel.of(
          DoughFormula.builder().build(), DoughTemperature.steady(Temperature.ofCelsius(25)));
  private final double[] state = new double[RiseDynamics.SIZE];
  private final double[] derivative = new double[RiseDynamics.SIZE];
  private SegmentDynamics equations;
  private double[] start;
  private double[][] visited;
  private double tolerance853;
  private double tolerance54;
  private double toleranceHipparchus;

  /** Our own error, and the tolerances at which the others have the same. */
  @Setup
  public void calibrate() {
    RiseDynamics dynamics =
        new RiseDynamics(
            model.formula(),
            model.parameters(),
            model.unknowns(),
            model.temperature().startCelsius());
    equations = new SegmentDynamics(dynamics, Segment.of(model.temperature(), HOURS).get(0));
    start = dynamics.startState();
    double[] exact = start.clone();
    new DormandPrince853Integrator(1e-12, LARGEST_STEP, 1e-13, 1e-12)
        .integrate(CommonsMathSolution.asCommonsMath(equations), 0, start, HOURS, exact);
    double ours = error(kernelEnd(), exact);
    tolerance853 = tolerance(ours, t -> error(commons853(t), exact));
    tolerance54 = tolerance(ours, t -> error(commons54(t), exact));
    toleranceHipparchus = tolerance(ours, t -> error(hipparchus(t), exact));
    visited = visit();
    System.out.printf(
        "%nerror at the end %.2e; evaluations %d; tolerances %.1e (8-5-3) %.1e (5-4) %.1e (hipparchus)%n",
        ours, visited.length, tolerance853, tolerance54, toleranceHipparchus);
  }

  private interface ErrorAt {
    double of(double tolerance);
  }

  /** The loosest tolerance, in steps of a factor 1.5, whose error is no more than wanted. */
  private static double tolerance(double wanted, ErrorAt error) {
    double tolerance = 1e-3;
    while (tolerance > 1e-12 && error.of(tolerance) > wanted) {
      tolerance /= 1.5;
    }
    return tolerance;
  }

  private static double error(double[] got, double[] exact) {
    double worst = 0;
    for (int i = 0; i < RiseDynamics.CELSIUS; i++) {
      worst = Math.max(worst, Math.abs(got[i] - exact[i]) / (0.1 + Math.abs(exact[i])));
    }
    return worst;
  }

  private double[] kernelEnd() {
    double[] end = start.clone();
    new RungeKuttaKernel().integrate(equations, 0, HOURS, end);
    return end;
  }

  /** The states at which our kernel evaluates the derivatives. */
  private double[][] visit() {
    java.util.List<double[]> states = new java.util.ArrayList<>();
    RungeKuttaKernel.Equations recording =
        (hours, s, d) -> {
          states.add(s.clone());
          equations.computeDerivatives(hours, s, d);
        };
    new RungeKuttaKernel().integrate(recording, 0, HOURS, start.clone());
    return states.toArray(double[][]::new);
  }

  /** Our kernel with its dense output, from the start state. */
  @Benchmark
  public double[] kernel() {
    return kernelEnd();
  }

  /** What a user calls: sets up the dough as well. */
  @Benchmark
  public RiseCurve runFast() {
    return model.runFast(HOURS);
  }

  /** The derivative evaluations alone. */
  @Benchmark
  public double floor() {
    double sum = 0;
    for (double[] each : visited) {
      equations.computeDerivatives(0, each, derivative);
      sum += derivative[RiseDynamics.MADE];
    }
    return sum;
  }

  /** commons-math3, Dormand–Prince 8(5,3), without dense output. */
  @Benchmark
  public double[] commonsMath853() {
    return commons853(tolerance853);
  }

  /** commons-math3, Dormand–Prince 5(4), without dense output. */
  @Benchmark
  public double[] commonsMath54() {
    return commons54(tolerance54);
  }

  /** hipparchus, Dormand–Prince 8(5,3), without dense output. */
  @Benchmark
  public double[] hipparchus853() {
    return hipparchus(toleranceHipparchus);
  }

  private double[] commons853(double tolerance) {
    return integrated(
        new DormandPrince853Integrator(1e-12, LARGEST_STEP, tolerance / 10, tolerance));
  }

  private double[] commons54(double tolerance) {
    return integrated(
        new DormandPrince54Integrator(1e-12, LARGEST_STEP, tolerance / 10, tolerance));
  }

  private double[] integrated(FirstOrderIntegrator integrator) {
    FirstOrderDifferentialEquations same = CommonsMathSolution.asCommonsMath(equations);
    integrator.integrate(same, 0, start, HOURS, state);
    return state;
  }

  private double[] hipparchus(double tolerance) {
    OrdinaryDifferentialEquation same =
        new OrdinaryDifferentialEquation() {
          @Override
          public int getDimension() {
            return RiseDynamics.SIZE;
          }

          @Override
          public double[] computeDerivatives(double t, double[] y) {
            double[] d = new double[RiseDynamics.SIZE];
            equations.computeDerivatives(t, y, d);
            return d;
          }
        };
    return new org.hipparchus.ode.nonstiff.DormandPrince853Integrator(
            1e-12, LARGEST_STEP, tolerance / 10, tolerance)
        .integrate(same, new ODEState(0, start), HOURS)
        .getPrimaryState();
  }
}
