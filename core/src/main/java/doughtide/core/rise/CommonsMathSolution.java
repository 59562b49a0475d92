package doughtide.core.rise;

import java.util.ArrayList;
import java.util.List;
import org.apache.commons.math3.ode.ContinuousOutputModel;
import org.apache.commons.math3.ode.FirstOrderDifferentialEquations;
import org.apache.commons.math3.ode.nonstiff.DormandPrince853Integrator;
import org.apache.commons.math3.ode.sampling.StepHandler;
import org.apache.commons.math3.ode.sampling.StepInterpolator;

/** One run through the integrator of commons-math3, kept with its dense output. */
final class CommonsMathSolution implements DenseSolution {
  private static final double SMALLEST_STEP_HOURS = 1e-12;
  private static final double LARGEST_STEP_HOURS = 2;
  private static final double ABSOLUTE = 1e-11;
  private static final double RELATIVE = 1e-10;

  private final ContinuousOutputModel dense = new ContinuousOutputModel();
  private final List<Double> mesh = new ArrayList<>();

  /** Integrates one segment from {@code state}, which receives the state at its end. */
  void integrate(SegmentDynamics equations, double[] state) {
    DormandPrince853Integrator integrator =
        new DormandPrince853Integrator(SMALLEST_STEP_HOURS, LARGEST_STEP_HOURS, ABSOLUTE, RELATIVE);
    ContinuousOutputModel part = new ContinuousOutputModel();
    integrator.addStepHandler(part);
    integrator.addStepHandler(new MeshCollector());
    integrator.integrate(
        asCommonsMath(equations), equations.fromHours(), state, equations.toHours(), state);
    dense.append(part);
  }

  /** The dynamics as commons-math3 wants them. */
  static FirstOrderDifferentialEquations asCommonsMath(SegmentDynamics equations) {
    return new FirstOrderDifferentialEquations() {
      @Override
      public int getDimension() {
        return RiseDynamics.SIZE;
      }

      @Override
      public void computeDerivatives(double hours, double[] state, double[] derivative) {
        equations.computeDerivatives(hours, state, derivative);
      }
    };
  }

  private final class MeshCollector implements StepHandler {
    @Override
    public void init(double t0, double[] y0, double t) {
      if (mesh.isEmpty()) {
        mesh.add(t0);
      }
    }

    @Override
    public void handleStep(StepInterpolator interpolator, boolean isLast) {
      mesh.add(interpolator.getCurrentTime());
    }
  }

  @Override
  public double[] mesh() {
    return mesh.stream().mapToDouble(Double::doubleValue).toArray();
  }

  @Override
  public void stateAt(double hours, double[] state) {
    dense.setInterpolatedTime(hours);
    System.arraycopy(dense.getInterpolatedState(), 0, state, 0, state.length);
  }
}
