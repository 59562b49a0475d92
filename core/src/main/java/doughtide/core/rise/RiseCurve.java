package doughtide.core.rise;

import doughtide.core.Internal;
import doughtide.core.quantity.Checks;
import doughtide.core.quantity.Rise;
import java.util.Arrays;
import java.util.OptionalDouble;
import java.util.function.DoubleUnaryOperator;
import java.util.function.Supplier;
import org.apache.commons.math3.analysis.UnivariateFunction;
import org.apache.commons.math3.analysis.solvers.BrentSolver;
import org.jspecify.annotations.Nullable;

/**
 * What one run of the model gives back: the dough at any hour, and the hours at which something
 * happens. Hours count from mixing. Safe for use by several threads.
 *
 * <pre>{@code
 * RiseCurve curve = RiseModel.of(formula, DoughTemperature.steady(Temperature.ofCelsius(25))).run(12);
 * OptionalDouble hours = curve.hoursToRise(Rise.ofPercent(50));
 * }</pre>
 */
@Internal
public final class RiseCurve {
  /** Strength index below which a dough is sticky and does not hold a shape (starting value). */
  public static final double WEAK = 0.4;

  /** A starter is ripe within this share of its greatest height, and a dough has fallen beyond. */
  public static final double RIPE_SHARE = 0.05;

  private static final double HOURS_ACCURACY = 1e-9;
  private static final int LARGEST_EVALUATIONS = 200;
  private static final double BEFORE_JUMP_HOURS = 1e-9;

  private final RiseDynamics dynamics;
  private final Supplier<RiseDynamics> changing;
  private final SegmentDynamics[] equations;
  private final double[] scratch = new double[RiseDynamics.SIZE];
  private final double[] slope = new double[RiseDynamics.SIZE];
  private final DenseSolution solution;
  private final double[] mesh;
  private final double[] looks;
  private double @Nullable [] looksWithPeak; // made when first needed, as are these two
  private double @Nullable [] risesAtLooks;
  private @Nullable OptionalDouble peak;

  RiseCurve(
      RiseDynamics dynamics,
      Supplier<RiseDynamics> changing,
      SegmentDynamics[] equations,
      DenseSolution solution) {
    this.dynamics = dynamics;
    this.changing = changing;
    this.equations = equations;
    this.solution = solution;
    this.mesh = solution.mesh();
    this.looks = withEndsOfSegments(mesh, equations);
  }

  /**
   * At the end of a segment the temperature may jump, and the volume with it, so that what was
   * reached before is undone: look just before, too.
   */
  private static double[] withEndsOfSegments(double[] mesh, SegmentDynamics[] equations) {
    double[] looks = Arrays.copyOf(mesh, mesh.length + equations.length - 1);
    for (int i = 1; i < equations.length; i++) {
      looks[mesh.length + i - 1] = equations[i].fromHours() - BEFORE_JUMP_HOURS;
    }
    Arrays.sort(looks);
    return looks;
  }

  /** First hour of the run, 0. */
  public double startHours() {
    return mesh[0];
  }

  /** Last hour of the run. */
  public double endHours() {
    return mesh[mesh.length - 1];
  }

  /** The state in an array that the next call writes over; only with the lock of this held. */
  private double[] stateAt(double hours) {
    if (!(hours >= mesh[0] && hours <= mesh[mesh.length - 1])) {
      Checks.inside("hour", hours, startHours(), endHours(), "h");
    }
    solution.stateAt(hours, scratch);
    return scratch;
  }

  private synchronized double stateAt(double hours, int index) {
    return stateAt(hours)[index];
  }

  /** A copy of the state, to run on from. */
  synchronized double[] stateForChange(double hours) {
    return stateAt(hours).clone();
  }

  /** Dynamics of the same dough that are quick where the temperature changes all the time. */
  RiseDynamics dynamicsForChange() {
    return changing.get();
  }

  private SegmentDynamics segmentAt(double hours) {
    int low = 0;
    int high = equations.length - 1;
    while (low < high) {
      int middle = (low + high) >>> 1;
      if (hours >= equations[middle].toHours()) {
        low = middle + 1;
      } else {
        high = middle;
      }
    }
    return equations[low];
  }

  /** Dough temperature, °C. */
  public synchronized double celsiusAt(double hours) {
    return segmentAt(hours).celsius(hours, stateAt(hours));
  }

  /** Rise over the volume after mixing. */
  public Rise riseAt(double hours) {
    return new Rise(riseFraction(hours));
  }

  private synchronized double riseFraction(double hours) {
    double[] state = stateAt(hours);
    return dynamics.rise(segmentAt(hours).celsius(hours, state), state);
  }

  /** Gas over total volume, 0…1. */
  public synchronized double gasShareAt(double hours) {
    double[] state = stateAt(hours);
    return dynamics.gasShare(segmentAt(hours).celsius(hours, state), state);
  }

  /** Where the carbon dioxide is; made = dissolved + in the cells + lost. */
  public synchronized GasBalance gasAt(double hours) {
    double[] state = stateAt(hours);
    double cells = dynamics.inCellsMol(segmentAt(hours).celsius(hours, state), state);
    double made = state[RiseDynamics.MADE];
    double lost = state[RiseDynamics.LOST];
    return new GasBalance(made, made - lost - cells, cells, lost);
  }

  /** Yeast as a share of a ripe population, in (0, 1]. */
  public double yeastAt(double hours) {
    return Math.min(1, Math.exp(stateAt(hours, RiseDynamics.YEAST)));
  }

  /** Lactic bacteria as a share of a ripe population, in (0, 1]. */
  public double bacteriaAt(double hours) {
    return Math.min(1, Math.exp(stateAt(hours, RiseDynamics.BACTERIA)));
  }

  /** Lactic and acetic acid, mol per kg of flour. */
  public double acidMolAt(double hours) {
    return stateAt(hours, RiseDynamics.ACID);
  }

  /** pH, uncertain by about ±0.2. */
  public synchronized double phAt(double hours) {
    return dynamics.ph(stateAt(hours));
  }

  /** What this brings along as the starter of another dough or stage, used at an hour. */
  public SeedState seedAt(double hours) {
    return new SeedState(
        yeastAt(hours),
        bacteriaAt(hours),
        stateAt(hours, RiseDynamics.READINESS),
        acidMolAt(hours),
        Math.max(gasAt(hours).dissolvedMol(), 0));
  }

  /** Strength index, 1 right after mixing, falling towards 0. */
  public double strengthAt(double hours) {
    return Math.exp(stateAt(hours, RiseDynamics.STRENGTH));
  }

  /**
   * First hour at which the rise reaches a value.
   *
   * @param rise the rise looked for
   * @return the hour, or empty if it is not reached in this run
   */
  public OptionalDouble hoursToRise(Rise rise) {
    double level = rise.fraction();
    double[] at = looksWithPeak();
    double[] rises = risesAtLooks();
    int first = 0;
    while (first < rises.length && !(rises[first] - level >= 0)) {
      first++;
    }
    if (first == rises.length) {
      return OptionalDouble.empty();
    }
    return first == 0
        ? OptionalDouble.of(at[0])
        : crossing(hours -> riseFraction(hours) - level, at[first - 1], at[first]);
  }

  /** One curve is asked for the hours of many rises, so the heights at its steps are kept. */
  private synchronized double[] risesAtLooks() {
    if (risesAtLooks == null) {
      double[] at = looksWithPeak();
      double[] rises = new double[at.length];
      for (int i = 0; i < at.length; i++) {
        rises[i] = riseFraction(at[i]);
      }
      risesAtLooks = rises;
    }
    return risesAtLooks;
  }

  /**
   * Hour of the greatest height: gas is lost as fast as it is made. Empty if that lies beyond the
   * run.
   */
  public synchronized OptionalDouble hoursToPeak() {
    if (peak == null) {
      peak = firstUpCrossing(hours -> -netGasMolPerHour(hours), startHours(), looks);
    }
    return peak;
  }

  /**
   * Hour at which the strength index falls below {@link #WEAK}; empty if it does not in this run.
   */
  public OptionalDouble hoursToWeak() {
    int strong = -1; // strength only falls: halve the looks
    int weak = looks.length;
    while (weak - strong > 1) {
      int middle = (strong + weak) >>> 1;
      if (WEAK - strengthAt(looks[middle]) >= 0) {
        weak = middle;
      } else {
        strong = middle;
      }
    }
    if (weak == looks.length) {
      return OptionalDouble.empty();
    }
    return strong < 0
        ? OptionalDouble.of(looks[weak])
        : crossing(hours -> WEAK - strengthAt(hours), looks[strong], looks[weak]);
  }

  /**
   * Hour from which a dough is past its best: it has fallen 5 % below its greatest height or has
   * become weak, whichever is first. A starter has no shape to hold: for it {@link #hoursToFallen}
   * alone counts.
   */
  public OptionalDouble hoursToOver() {
    OptionalDouble fallen = hoursToFallen();
    OptionalDouble weak = hoursToWeak();
    if (fallen.isEmpty() || weak.isEmpty()) {
      return fallen.isPresent() ? fallen : weak;
    }
    return OptionalDouble.of(Math.min(fallen.getAsDouble(), weak.getAsDouble()));
  }

  /**
   * Hour from which a starter is ripe: within 5 % of its greatest height. Empty if the greatest
   * height lies beyond the run.
   */
  public OptionalDouble hoursToRipe() {
    OptionalDouble top = hoursToPeak();
    return top.isEmpty() ? top : hoursToRise(nearly(top.getAsDouble()));
  }

  /**
   * Hour at which a starter or dough has fallen 5 % below its greatest height; empty if it has not
   * in this run.
   */
  public OptionalDouble hoursToFallen() {
    OptionalDouble top = hoursToPeak();
    if (top.isEmpty()) {
      return top;
    }
    double level = nearly(top.getAsDouble()).fraction();
    return firstUpCrossing(hours -> level - riseFraction(hours), top.getAsDouble(), looks);
  }

  private Rise nearly(double peakHours) {
    double height = 1 + riseFraction(peakHours);
    return new Rise(height * (1 - RIPE_SHARE) - 1);
  }

  private synchronized double netGasMolPerHour(double hours) {
    segmentAt(hours).computeDerivatives(hours, stateAt(hours), slope);
    return slope[RiseDynamics.MADE] - slope[RiseDynamics.LOST];
  }

  /** If a step holds the greatest height, a rise may be passed upward and downward inside it. */
  private synchronized double[] looksWithPeak() {
    if (looksWithPeak == null) {
      looksWithPeak = with(hoursToPeak(), looks);
    }
    return looksWithPeak;
  }

  private static double[] with(OptionalDouble one, double[] ascending) {
    if (one.isEmpty()) {
      return ascending;
    }
    double[] all = Arrays.copyOf(ascending, ascending.length + 1);
    all[ascending.length] = one.getAsDouble();
    Arrays.sort(all);
    return all;
  }

  /**
   * An event function changes sign inside one of the integrator's own steps; Brent's method finds
   * where.
   */
  private static OptionalDouble firstUpCrossing(
      DoubleUnaryOperator event, double fromHours, double[] looks) {
    double before = fromHours;
    if (event.applyAsDouble(before) >= 0) {
      return OptionalDouble.of(before);
    }
    for (double after : looks) {
      if (after <= before) {
        continue;
      }
      if (event.applyAsDouble(after) >= 0) {
        return crossing(event, before, after);
      }
      before = after;
    }
    return OptionalDouble.empty();
  }

  private static OptionalDouble crossing(DoubleUnaryOperator event, double before, double after) {
    if (after - before <= HOURS_ACCURACY) {
      return OptionalDouble.of(after);
    }
    return OptionalDouble.of(
        new BrentSolver(HOURS_ACCURACY)
            .solve(LARGEST_EVALUATIONS, new Event(event), before, after));
  }

  /**
   * A class instead of a lambda: an archive of loaded classes cannot hold a lambda of this type.
   */
  private record Event(DoubleUnaryOperator function) implements UnivariateFunction {
    @Override
    public double value(double hours) {
      return function.applyAsDouble(hours);
    }
  }

  /** In a line, for logs: its hours and the rise at their end. */
  @Override
  public String toString() {
    return "rise from "
        + Checks.plain(startHours())
        + " to "
        + Checks.plain(endHours())
        + " h, in the end "
        + Checks.plain(riseAt(endHours()).percent())
        + " %";
  }
}
