package doughtide.core.rise;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import doughtide.core.dough.DoughFormula;
import doughtide.core.kinetics.BaranyiRoberts;
import doughtide.core.quantity.Rise;
import doughtide.core.quantity.Temperature;
import doughtide.core.thermal.TemperatureTrace;
import java.util.ArrayList;
import java.util.List;
import java.util.OptionalDouble;
import java.util.function.Function;
import java.util.stream.LongStream;
import java.util.stream.Stream;
import org.apache.commons.math3.analysis.solvers.BrentSolver;
import org.apache.commons.math3.ode.events.EventHandler;
import org.apache.commons.math3.ode.nonstiff.DormandPrince853Integrator;
import org.hipparchus.ode.ODEIntegrator;
import org.hipparchus.ode.ODEState;
import org.hipparchus.ode.OrdinaryDifferentialEquation;
import org.hipparchus.ode.nonstiff.AdamsMoultonIntegrator;
import org.hipparchus.ode.nonstiff.GraggBulirschStoerIntegrator;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/** The integration against exact growth, against other algorithms, and against itself. */
class IntegrationTest {
  private static final double HOURS = 24;

  /** Greatest height and what is measured from it: the hour of a flat top is less sharp. */
  private static final List<Integer> FLAT = List.of(3, 5, 6);

  static LongStream steadySeeds() {
    return LongStream.range(1000, 1100);
  }

  static LongStream fastSeeds() {
    return LongStream.range(2000, 2100);
  }

  static LongStream moreFastSeeds() {
    return LongStream.range(2100, 2400);
  }

  /** Growth alone is Baranyi &amp; Roberts 1994, whose isothermal solution is exact. */
  @ParameterizedTest
  @MethodSource("steadySeeds")
  void isothermalGrowthMeetsTheExactSolution(long seed) {
    RiseModel model = RandomDough.steady(seed);
    RiseDynamics dynamics = dynamics(model);
    double[] start = dynamics.startState();
    double[] slope = new double[RiseDynamics.SIZE];
    new SegmentDynamics(dynamics, Segment.of(model.temperature(), HOURS).get(0))
        .computeDerivatives(0, start, slope);
    double rate = slope[RiseDynamics.READINESS];
    if (rate <= 0) {
      assertThat(model.run(HOURS).yeastAt(HOURS))
          .as("seed %d: nothing grows", seed)
          .isEqualTo(Math.exp(start[RiseDynamics.YEAST]));
      return;
    }
    double work = Math.log1p(Math.exp(-start[RiseDynamics.READINESS]));
    BaranyiRoberts exact = new BaranyiRoberts(Math.exp(start[RiseDynamics.YEAST]), rate, work);
    assertThat(exact.startingReadiness())
        .as("seed %d", seed)
        .isCloseTo(Math.exp(start[RiseDynamics.READINESS]), within(1e-9));
    RiseCurve curve = model.run(HOURS);
    for (int i = 0; i <= 100; i++) {
      double at = HOURS * i / 100;
      assertThat(curve.yeastAt(at))
          .as("seed %d at %s h", seed, at)
          .isCloseTo(exact.populationAt(at), within(1e-8));
    }
  }

  @ParameterizedTest
  @MethodSource("fastSeeds")
  void fastKernelAgreesWithTheFullIntegrator(long seed) {
    compareKernels(seed);
  }

  @ParameterizedTest
  @MethodSource("moreFastSeeds")
  @Tag("long")
  void fastKernelAgreesWithTheFullIntegratorForMoreDoughs(long seed) {
    compareKernels(seed);
  }

  private static void compareKernels(long seed) {
    boolean room = seed % 5 == 0;
    RiseModel model = room ? RandomDough.inRoom(seed) : RandomDough.of(seed);
    double tolerance = room ? 5e-5 : 1e-5; // in a room the kernel reads rates from a table
    RiseCurve full = model.run(48);
    RiseCurve fast = model.runFast(48);
    for (int i = 0; i <= 96; i++) {
      double at = i / 2.0;
      assertThat(states(fast, at))
          .as("seed %d at %s h", seed, at)
          .containsExactly(states(full, at), within(tolerance));
    }
    List<Function<RiseCurve, OptionalDouble>> times =
        List.of(
            curve -> curve.hoursToRise(Rise.ofPercent(25)),
            curve -> curve.hoursToRise(Rise.ofPercent(50)),
            curve -> curve.hoursToRise(Rise.ofPercent(100)),
            RiseCurve::hoursToPeak,
            RiseCurve::hoursToWeak,
            RiseCurve::hoursToRipe,
            RiseCurve::hoursToFallen);
    for (int i = 0; i < times.size(); i++) {
      OptionalDouble expected = times.get(i).apply(full);
      OptionalDouble found = times.get(i).apply(fast);
      assertThat(found.isPresent()).as("seed %d time %d", seed, i).isEqualTo(expected.isPresent());
      if (expected.isPresent()) {
        assertThat(found.getAsDouble())
            .as("seed %d time %d", seed, i)
            .isCloseTo(expected.getAsDouble(), within(FLAT.contains(i) ? 2e-3 : 1e-3));
      }
    }
  }

  private static double[] states(RiseCurve curve, double at) {
    GasBalance gas = curve.gasAt(at);
    return new double[] {
      Math.log(curve.yeastAt(at)),
      Math.log(curve.bacteriaAt(at)),
      gas.madeMol(),
      gas.inCellsMol(),
      gas.lostMol(),
      curve.acidMolAt(at),
      Math.log(curve.strengthAt(at)),
      curve.celsiusAt(at) / 10
    };
  }

  static Stream<RiseModel> someDoughs() {
    return Stream.concat(
        Stream.concat(
            LongStream.range(3000, 3010).mapToObj(RandomDough::of),
            LongStream.range(3010, 3016).mapToObj(RandomDough::inRoom)),
        Stream.of(
            RiseModel.of(
                DoughFormula.builder().build(),
                DoughTemperature.following(
                    TemperatureTrace.logged(
                        new double[] {0, 1, 3, 6, 12}, new double[] {26, 25.5, 23, 22, 21})))));
  }

  @ParameterizedTest
  @MethodSource("someDoughs")
  void extrapolationMethodGivesTheSameTrajectory(RiseModel model) {
    compare(model, new GraggBulirschStoerIntegrator(1e-12, 0.5, 1e-11, 1e-11));
  }

  @ParameterizedTest
  @MethodSource("someDoughs")
  void multistepMethodGivesTheSameTrajectory(RiseModel model) {
    compare(model, new AdamsMoultonIntegrator(5, 1e-9, 0.25, 1e-10, 1e-10));
  }

  private static void compare(RiseModel model, ODEIntegrator integrator) {
    RiseCurve curve = model.run(HOURS);
    RiseDynamics dynamics = dynamics(model);
    double[] state = dynamics.startState();
    for (Segment segment : Segment.of(model.temperature(), HOURS)) {
      SegmentDynamics equations = new SegmentDynamics(dynamics, segment);
      equations.enter(state);
      for (int part = 1; part <= 4; part++) {
        double from = segment.atPart((part - 1) / 4.0);
        double to = segment.atPart(part / 4.0);
        state =
            integrator
                .integrate(hipparchus(equations), new ODEState(from, state), to)
                .getPrimaryState();
        if (part < 4) {
          assertThat(states(curve, to))
              .as("%s at %s h", model.unknowns(), to)
              .containsExactly(states(dynamics, equations, to, state), within(1e-6));
        }
      }
    }
  }

  private static double[] states(
      RiseDynamics dynamics, SegmentDynamics equations, double at, double[] state) {
    double celsius = equations.celsius(at, state);
    return new double[] {
      state[RiseDynamics.YEAST],
      state[RiseDynamics.BACTERIA],
      state[RiseDynamics.MADE],
      dynamics.inCellsMol(celsius, state),
      state[RiseDynamics.LOST],
      state[RiseDynamics.ACID],
      state[RiseDynamics.STRENGTH],
      celsius / 10
    };
  }

  private static OrdinaryDifferentialEquation hipparchus(SegmentDynamics equations) {
    return new OrdinaryDifferentialEquation() {
      @Override
      public int getDimension() {
        return RiseDynamics.SIZE;
      }

      @Override
      public double[] computeDerivatives(double hours, double[] state) {
        double[] derivative = new double[RiseDynamics.SIZE];
        equations.computeDerivatives(hours, state, derivative);
        return derivative;
      }
    };
  }

  /**
   * The integrator's own event detection finds the same hours as the curve, to what its own dense
   * output leaves open where the curve is nearly flat.
   */
  @Test
  void eventDetectionWhileIntegratingFindsTheSameHours() {
    int found = 0;
    for (long seed = 4000; seed < 4060; seed++) {
      RiseModel model = RandomDough.steady(seed);
      RiseCurve curve = model.run(HOURS);
      for (double percent : new double[] {10, 25, 50, 100}) {
        List<Double> events = eventHours(model, percent / 100);
        OptionalDouble hours = curve.hoursToRise(Rise.ofPercent(percent));
        assertThat(hours.isPresent())
            .as("seed %d %s %%", seed, percent)
            .isEqualTo(!events.isEmpty());
        if (hours.isPresent()) {
          found++;
          assertThat(hours.getAsDouble())
              .as("seed %d %s %%", seed, percent)
              .isCloseTo(events.get(0), within(2e-6));
        }
      }
    }
    assertThat(found).isGreaterThan(80);
  }

  private static List<Double> eventHours(RiseModel model, double rise) {
    RiseDynamics dynamics = dynamics(model);
    Segment segment = Segment.of(model.temperature(), HOURS).get(0);
    SegmentDynamics equations = new SegmentDynamics(dynamics, segment);
    List<Double> hours = new ArrayList<>();
    DormandPrince853Integrator integrator = new DormandPrince853Integrator(1e-12, 1, 1e-11, 1e-10);
    integrator.addEventHandler(
        new EventHandler() {
          @Override
          public void init(double t0, double[] y0, double t) {}

          @Override
          public double g(double t, double[] y) {
            return dynamics.rise(equations.celsius(t, y), y) - rise;
          }

          @Override
          public Action eventOccurred(double t, double[] y, boolean increasing) {
            if (increasing) {
              hours.add(t);
            }
            return Action.CONTINUE;
          }

          @Override
          public void resetState(double t, double[] y) {}
        },
        0.1,
        1e-10,
        200,
        new BrentSolver(1e-10));
    double[] state = dynamics.startState();
    integrator.integrate(CommonsMathSolution.asCommonsMath(equations), 0, state, HOURS, state);
    return hours;
  }

  /** A rise just below the greatest one is passed inside one integration step, up and down. */
  @ParameterizedTest
  @MethodSource("steadySeeds")
  void findsARiseJustBelowTheGreatest(long seed) {
    RiseModel model = RandomDough.steady(seed);
    RiseCurve curve = seed % 2 == 0 ? model.runFast(96) : model.run(96);
    OptionalDouble peak = curve.hoursToPeak();
    if (peak.isEmpty()) {
      assertThat(curve.riseAt(96).fraction()).as("seed %d", seed).isGreaterThanOrEqualTo(0);
      return;
    }
    double greatest = curve.riseAt(peak.getAsDouble()).fraction();
    OptionalDouble found = curve.hoursToRise(new Rise(greatest - 1e-6 * (1 + greatest)));
    assertThat(found).as("seed %d", seed).isPresent();
    assertThat(found.getAsDouble()).as("seed %d", seed).isLessThanOrEqualTo(peak.getAsDouble());
  }

  /** A rise reached in the warm counts although the cold then shrinks the dough at once. */
  @Test
  void findsARiseReachedJustBeforeADropOfTemperature() {
    DoughFormula formula = DoughFormula.builder().build();
    double at50 =
        RiseModel.of(formula, DoughTemperature.steady(Temperature.ofCelsius(27)))
            .run(12)
            .hoursToRise(Rise.ofPercent(50))
            .orElseThrow();
    DoughTemperature drop =
        DoughTemperature.following(
            TemperatureTrace.steps(
                List.of(
                    new TemperatureTrace.Step(0, Temperature.ofCelsius(27)),
                    new TemperatureTrace.Step(at50 + 0.001, Temperature.ofCelsius(3)))));
    RiseModel model = RiseModel.of(formula, drop);
    assertThat(model.run(12).hoursToRise(Rise.ofPercent(50)).orElseThrow())
        .isCloseTo(at50, within(1e-6));
    assertThat(model.runFast(12).hoursToRise(Rise.ofPercent(50)).orElseThrow())
        .isCloseTo(at50, within(1e-3));
  }

  private static RiseDynamics dynamics(RiseModel model) {
    return new RiseDynamics(
        model.formula(), model.parameters(), model.unknowns(), model.temperature().startCelsius());
  }
}
