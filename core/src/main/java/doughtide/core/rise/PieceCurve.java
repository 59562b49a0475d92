package doughtide.core.rise;

import doughtide.core.Internal;
import doughtide.core.quantity.Checks;
import doughtide.core.quantity.Rise;
import doughtide.core.quantity.Temperature;
import doughtide.core.thermal.CoolingSteps;
import java.util.Arrays;
import java.util.OptionalDouble;
import org.jspecify.annotations.Nullable;

/**
 * A piece of dough from the hour it is taken from the bulk: every shell has its own temperature and
 * its own biology, and the piece's volume is the sum. Hours count from mixing. Rise is its own
 * volume over that of the dough after mixing. Immutable.
 */
@Internal
public final class PieceCurve {
  private final double[] hours;
  private final double[] rise;
  private final double[] strength;
  private final double[] netGas;
  private final double[] core;
  private final double[] full;
  private final double[] made;
  private final double[] cells;
  private final double[] lost;
  private final AirBalance air;

  private PieceCurve(int points, AirBalance air) {
    this.hours = new double[points];
    this.rise = new double[points];
    this.strength = new double[points];
    this.netGas = new double[points];
    this.core = new double[points];
    this.full = new double[points];
    this.made = new double[points];
    this.cells = new double[points];
    this.lost = new double[points];
    this.air = air;
  }

  /**
   * Runs a piece on from a state of the bulk (classical Runge–Kutta of fourth order, equal steps up
   * to the change of air and after it, longer ones once it has cooled in a steady cold). The heat
   * of its own fermentation warms it.
   *
   * @param bulk the bulk it is taken from
   * @param fromHours hour at which it is taken
   * @param body the piece and the air around it
   * @param shiftCelsius how much warmer the air is than stated, from its change on
   * @param losses what hands have taken out
   * @param hours how long it is followed, more than 0
   * @param stepHours longest step while it is warm or cools, 0.01…1 h
   */
  public static PieceCurve of(
      RiseCurve bulk,
      double fromHours,
      PieceBody body,
      double shiftCelsius,
      GasLosses losses,
      double hours,
      double stepHours) {
    double[] after = PieceMesh.of(body, shiftCelsius, hours, stepHours);
    Kernel kernel = new Kernel(bulk, fromHours, body, shiftCelsius, losses);
    PieceCurve curve = new PieceCurve(after.length, kernel.dynamics.air());
    for (int i = 0; i < after.length; i++) {
      curve.hours[i] = fromHours + after[i];
    }
    kernel.run(curve, after);
    return curve;
  }

  /** Its {@link #riseAtEnd} alone, without what is kept on the way. */
  public static Rise riseAtEnd(
      RiseCurve bulk,
      double fromHours,
      PieceBody body,
      double shiftCelsius,
      GasLosses losses,
      double hours,
      double stepHours) {
    Kernel kernel = new Kernel(bulk, fromHours, body, shiftCelsius, losses);
    kernel.run(null, PieceMesh.of(body, shiftCelsius, hours, stepHours));
    return new Rise(kernel.rise());
  }

  /** All shells together, step by step. */
  private static final class Kernel {
    private static final int N = RiseDynamics.SIZE;
    private final RiseDynamics dynamics;
    private final PieceBody body;
    private final double[] fractions;
    private final double shift;
    private final CoolingSteps cooling;
    private final double[][] state;
    private final double[][] k1;
    private final double[] k2 = new double[N];
    private final double[] k3 = new double[N];
    private final double[] k4 = new double[N];
    private final double[] trial = new double[N];
    private final double[] now;
    private final double[] middle;

    Kernel(RiseCurve bulk, double fromHours, PieceBody body, double shift, GasLosses losses) {
      this.dynamics = bulk.dynamicsForChange();
      this.body = body;
      this.fractions = body.conduction().volumeFractions();
      this.shift = shift;
      double start = bulk.celsiusAt(fromHours);
      this.cooling = new CoolingSteps(body.conduction(), start, body.airCelsius(0, shift));
      this.state = new double[fractions.length][];
      this.k1 = new double[fractions.length][N];
      this.now = new double[fractions.length];
      this.middle = new double[fractions.length];
      double[] taken = handled(bulk, fromHours, losses);
      for (int shell = 0; shell < state.length; shell++) {
        state[shell] = taken.clone();
      }
    }

    /** Gas lost in folds is missing from then on; how the dough leaks is not looked at again. */
    private double[] handled(RiseCurve bulk, double fromHours, GasLosses losses) {
      double folded = 0;
      for (double hour : losses.foldHours()) {
        double[] then = bulk.stateForChange(hour);
        double before = then[RiseDynamics.LOST];
        then[RiseDynamics.LOST] += folded;
        dynamics.takeOut(losses.foldShare(), bulk.celsiusAt(hour), then);
        folded = then[RiseDynamics.LOST] - before;
      }
      double[] taken = bulk.stateForChange(fromHours);
      taken[RiseDynamics.LOST] += folded;
      dynamics.takeOut(losses.shapeShare(), bulk.celsiusAt(fromHours), taken);
      return taken;
    }

    void run(@Nullable PieceCurve curve, double[] after) {
      cooling.shellCelsius(now);
      for (int shell = 0; shell < state.length; shell++) {
        look(shell, curve, 0);
      }
      for (int i = 1; i < after.length; i++) {
        step(after[i - 1], after[i], curve, i);
      }
    }

    /** How a shell goes on from here; its part of what the curve keeps. */
    private void look(int shell, @Nullable PieceCurve curve, int i) {
      dynamics.derivatives(now[shell], state[shell], k1[shell]);
      if (curve != null) {
        record(shell, curve, i);
      }
    }

    private void record(int shell, PieceCurve curve, int i) {
      double[] s = state[shell];
      double share = fractions[shell];
      curve.rise[i] += share * dynamics.rise(now[shell], s);
      curve.strength[i] += share * Math.exp(s[RiseDynamics.STRENGTH]);
      curve.netGas[i] += share * (k1[shell][RiseDynamics.MADE] - k1[shell][RiseDynamics.LOST]);
      curve.full[i] += share * dynamics.fullRise(s);
      curve.made[i] += share * s[RiseDynamics.MADE];
      curve.lost[i] += share * s[RiseDynamics.LOST];
      curve.cells[i] += share * dynamics.inCellsMol(now[shell], s);
      if (shell == 0) {
        curve.core[i] = cooling.coreCelsius();
      }
    }

    double rise() {
      double rise = 0;
      for (int shell = 0; shell < state.length; shell++) {
        rise += fractions[shell] * dynamics.rise(now[shell], state[shell]);
      }
      return rise;
    }

    /** How fast the fermentation of all shells warms the piece, K per hour. */
    private double warming() {
      double heat = 0;
      for (int shell = 0; shell < state.length; shell++) {
        heat += fractions[shell] * k1[shell][RiseDynamics.CELSIUS];
      }
      return heat / body.heatCapacityPerKgFlourJPerK();
    }

    /** A shell goes on where it has just arrived, at the temperature that was last looked up. */
    private void step(double from, double to, @Nullable PieceCurve curve, int i) {
      double h = to - from;
      double warming = warming();
      cooling.step(h / 2, body.airCelsius(from + h / 4, shift), warming);
      cooling.shellCelsius(middle);
      cooling.step(h / 2, body.airCelsius(to - h / 4, shift), warming);
      cooling.shellCelsius(now);
      for (int shell = 0; shell < state.length; shell++) {
        step(state[shell], k1[shell], h, middle[shell], now[shell]);
        look(shell, curve, i);
      }
    }

    private void step(double[] s, double[] slope, double h, double middle, double after) {
      advance(s, slope, h / 2);
      dynamics.derivatives(middle, trial, k2);
      advance(s, k2, h / 2);
      dynamics.derivatives(middle, trial, k3);
      advance(s, k3, h);
      dynamics.derivatives(after, trial, k4);
      for (int j = 0; j < RiseDynamics.CELSIUS; j++) {
        s[j] += h / 6 * (slope[j] + 2 * (k2[j] + k3[j]) + k4[j]);
      }
    }

    private void advance(double[] s, double[] k, double h) {
      for (int j = 0; j < RiseDynamics.CELSIUS; j++) {
        trial[j] = s[j] + h * k[j];
      }
    }
  }

  /** Hours of the points, from mixing. */
  public double[] hours() {
    return hours.clone();
  }

  /** Last hour. */
  public double endHours() {
    return hours[hours.length - 1];
  }

  /**
   * Rise at an hour inside the curve.
   *
   * @param at hours since mixing
   */
  public Rise riseAt(double at) {
    return new Rise(at(rise, at));
  }

  /** Rise at the end. */
  public Rise riseAtEnd() {
    return new Rise(rise[rise.length - 1]);
  }

  /**
   * Hour from which the piece is as high as a share of the greatest height that its dough can hold,
   * which falls as acid accumulates; empty if it does not get there.
   *
   * @param share of that height, 0…1
   */
  public OptionalDouble hoursToFull(double share) {
    double[] left = new double[rise.length];
    for (int i = 0; i < left.length; i++) {
      left[i] = 1 + rise[i] - share * (1 + full[i]);
    }
    return firstUp(left, 1, 0);
  }

  /** Where its carbon dioxide is; made = dissolved + in the cells + lost. */
  public GasBalance gasAt(double hours) {
    double in = at(cells, hours);
    double out = at(lost, hours);
    double all = at(made, hours);
    return new GasBalance(all, all - in - out, in, out);
  }

  /** Where the air is that was mixed in. */
  public AirBalance air() {
    return air;
  }

  /** Temperature at the very centre at an hour inside the curve, °C. */
  public double coreCelsiusAt(double at) {
    return at(core, at);
  }

  /** Hour at which the centre has cooled to a temperature; empty if it does not. */
  public OptionalDouble hoursUntilCoreIsAt(Temperature target) {
    return firstUp(core, -1, target.celsius());
  }

  /**
   * Hour at which the piece reaches a rise; its first hour if it has it already; empty if it does
   * not.
   */
  public OptionalDouble hoursToRise(Rise target) {
    return firstUp(rise, 1, target.fraction());
  }

  /** Hour from which the piece falls back or has become weak; empty if it does not. */
  public OptionalDouble hoursToOver() {
    OptionalDouble falls = firstUp(netGas, -1, 0);
    OptionalDouble weak = firstUp(strength, -1, RiseCurve.WEAK);
    if (falls.isEmpty() || weak.isEmpty()) {
      return falls.isPresent() ? falls : weak;
    }
    return OptionalDouble.of(Math.min(falls.getAsDouble(), weak.getAsDouble()));
  }

  private OptionalDouble firstUp(double[] values, int sign, double level) {
    for (int i = 0; i < values.length; i++) {
      double now = sign * (values[i] - level);
      if (now >= 0) {
        return OptionalDouble.of(i == 0 ? hours[0] : crossing(values, i, level));
      }
    }
    return OptionalDouble.empty();
  }

  private double crossing(double[] values, int i, double level) {
    double part = (level - values[i - 1]) / (values[i] - values[i - 1]);
    return hours[i - 1] + part * (hours[i] - hours[i - 1]);
  }

  private double at(double[] values, double when) {
    int found = Arrays.binarySearch(hours, when);
    int low = Math.min(Math.max(found >= 0 ? found : -found - 2, 0), hours.length - 2);
    double part = (when - hours[low]) / (hours[low + 1] - hours[low]);
    double inside = Math.min(Math.max(part, 0), 1);
    return values[low] + inside * (values[low + 1] - values[low]);
  }

  /** In a line, for logs: its last hour and the rise there. */
  @Override
  public String toString() {
    return "piece to "
        + Checks.plain(endHours())
        + " h, in the end "
        + Checks.plain(riseAtEnd().percent())
        + " %";
  }
}
