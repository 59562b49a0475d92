package doughtide.core.rise;

import doughtide.core.Internal;
import doughtide.core.dough.DoughFormula;
import doughtide.core.quantity.Checks;
import java.io.Serializable;
import org.jspecify.annotations.Nullable;

/**
 * The rise model of one dough, or of one starter after feeding: growth, gas, acid and heat.
 * Immutable.
 *
 * <pre>{@code
 * RiseModel model = RiseModel.of(
 *     DoughFormula.builder().build(), DoughTemperature.steady(Temperature.ofCelsius(25)));
 * double percent = model.run(6).riseAt(4.5).percent();
 * }</pre>
 *
 * <p>Growth after Baranyi &amp; Roberts 1994 for yeast and lactic bacteria; rates by a published
 * curve of temperature and by the salt in the water; CO2 linked to growth and to maintenance
 * (Luedeking &amp; Piret 1959), shared between water and gas cells by Henry's law and the ideal
 * gas; leaking above a gas share that falls as acid accumulates.
 */
@Internal
public final class RiseModel implements Serializable {
  private static final long serialVersionUID = 1;

  /** Longest run, hours (ten days). */
  public static final double LONGEST_HOURS = 240;

  private final DoughFormula formula;
  private final DoughTemperature temperature;
  private final RiseParameters parameters;
  private final Unknowns unknowns;
  private final LazyBasis basis;
  private final @Nullable SeedState seed; // null: as the starter's condition has it

  private RiseModel(
      DoughFormula formula,
      DoughTemperature temperature,
      RiseParameters parameters,
      Unknowns unknowns,
      LazyBasis basis,
      @Nullable SeedState seed) {
    this.formula = formula;
    this.temperature = temperature;
    this.parameters = parameters;
    this.unknowns = unknowns;
    this.basis = basis;
    this.seed = seed;
  }

  private static RiseModel of(
      DoughFormula formula, DoughTemperature temperature, RiseParameters parameters, Unknowns u) {
    return new RiseModel(
        formula, temperature, parameters, u, new LazyBasis(formula, parameters), null);
  }

  /** A model with the standard parameters and every unknown at its middle. */
  public static RiseModel of(DoughFormula formula, DoughTemperature temperature) {
    Checks.given("dough", formula);
    Checks.given("dough temperature", temperature);
    return of(formula, temperature, RiseParameters.standard(), Unknowns.typical());
  }

  /** The same dough with other parameters. */
  public RiseModel with(RiseParameters newParameters) {
    return new RiseModel(
        formula, temperature, newParameters, unknowns, new LazyBasis(formula, newParameters), seed);
  }

  /** The same dough with other unknowns. */
  public RiseModel with(Unknowns newUnknowns) {
    return new RiseModel(formula, temperature, parameters, newUnknowns, basis, seed);
  }

  /** The same dough at another temperature. */
  public RiseModel with(DoughTemperature newTemperature) {
    return new RiseModel(formula, newTemperature, parameters, unknowns, basis, seed);
  }

  /** The same dough with a starter in the state in which another run left it. */
  public RiseModel from(SeedState starter) {
    return new RiseModel(formula, temperature, parameters, unknowns, basis, starter);
  }

  /** The dough. */
  public DoughFormula formula() {
    return formula;
  }

  /** Its temperature. */
  public DoughTemperature temperature() {
    return temperature;
  }

  /** The numbers of the model. */
  public RiseParameters parameters() {
    return parameters;
  }

  /** What is assumed of this bake. */
  public Unknowns unknowns() {
    return unknowns;
  }

  /**
   * Integrates with commons-math3 to a relative error of 1e-10.
   *
   * @param hours length of the run, 0.001…240 h
   */
  public RiseCurve run(double hours) {
    RiseDynamics dynamics = dynamics();
    SegmentDynamics[] equations = equations(dynamics, segments(hours));
    CommonsMathSolution solution = new CommonsMathSolution();
    double[] state = dynamics.startState();
    for (SegmentDynamics each : equations) {
      each.enter(state);
      solution.integrate(each, state);
    }
    return new RiseCurve(dynamics, this::changing, equations, solution);
  }

  /**
   * Integrates with the kernel made for ensembles: times agree with {@link #run} to better than
   * 0.001 h, those measured from the greatest height, where the curve is flat, to 0.002 h.
   *
   * @param hours length of the run, 0.001…240 h
   */
  public RiseCurve runFast(double hours) {
    TemperatureSegments segments = segments(hours);
    RiseDynamics dynamics = segments.stepwise() ? dynamics() : changing();
    SegmentDynamics[] equations = equations(dynamics, segments);
    RungeKuttaKernel kernel = new RungeKuttaKernel();
    double[] state = dynamics.startState();
    for (SegmentDynamics each : equations) {
      each.enter(state);
      kernel.integrate(each, each.fromHours(), each.toHours(), state);
    }
    return new RiseCurve(dynamics, this::changing, equations, kernel);
  }

  private TemperatureSegments segments(double hours) {
    Checks.inRange("length of the run", hours, 0.001, LONGEST_HOURS, "h");
    return temperature.segments(hours);
  }

  private static SegmentDynamics[] equations(RiseDynamics dynamics, TemperatureSegments segments) {
    SegmentDynamics[] equations = new SegmentDynamics[segments.segments().size()];
    for (int i = 0; i < equations.length; i++) {
      equations[i] = new SegmentDynamics(dynamics, segments.segments().get(i));
    }
    return equations;
  }

  private RiseDynamics changing() {
    return new RiseDynamics(
        basis.basis(), unknowns, temperature.startCelsius(), basis.tables(), seed);
  }

  private RiseDynamics dynamics() {
    return new RiseDynamics(basis.basis(), unknowns, temperature.startCelsius(), seed);
  }
}
