package doughtide.core.rise;

import doughtide.core.quantity.Rise;
import doughtide.core.quantity.Temperature;
import java.util.Arrays;
import java.util.OptionalDouble;

/**
 * A piece of dough from the hour it is taken from the bulk: every shell has its own temperature and
 * its own biology, and the piece's volume is the sum. Hours count from mixing. Rise is that of an
 * undisturbed jar: what shaping presses out is not taken off. Immutable.
 */
public final class PieceCurve {
  private final double[] hours;
  private final double[] rise;
  private final double[] strength;
  private final double[] netGas;
  private final double[] madeMol;
  private final double[] core;

  private PieceCurve(int points) {
    this.hours = new double[points];
    this.rise = new double[points];
    this.strength = new double[points];
    this.netGas = new double[points];
    this.madeMol = new double[points];
    this.core = new double[points];
  }

  /**
   * Runs a piece on from a state of the bulk (classical Runge–Kutta of fourth order, equal steps).
   *
   * @param bulk the bulk it is taken from
   * @param fromHours hour at which it is taken
   * @param temperature its shells' temperatures
   * @param shiftCelsius how much warmer the surroundings are than stated
   * @param hours how long it is followed, more than 0
   * @param stepHours longest step, 0.01…1 h
   */
  public static PieceCurve of(
      RiseCurve bulk,
      double fromHours,
      PieceTemperature temperature,
      double shiftCelsius,
      double hours,
      double stepHours) {
    int steps = Math.max(1, (int) Math.ceil(hours / stepHours - 1e-9));
    PieceCurve curve = new PieceCurve(steps + 1);
    double start = bulk.celsiusAt(fromHours);
    Kernel kernel = new Kernel(bulk.dynamicsForChange(), temperature, start, shiftCelsius);
    for (int i = 0; i <= steps; i++) {
      curve.hours[i] = fromHours + hours * i / steps;
      curve.core[i] = temperature.coreCelsius(hours * i / steps, start, shiftCelsius);
    }
    for (int shell = 0; shell < temperature.shells(); shell++) {
      kernel.run(curve, shell, bulk.stateForChange(fromHours), hours / steps);
    }
    return curve;
  }

  /** One shell after the other, over arrays made once. */
  private static final class Kernel {
    private static final int N = RiseDynamics.SIZE;
    private final RiseDynamics dynamics;
    private final PieceTemperature temperature;
    private final double[] fractions;
    private final double start;
    private final double shift;
    private final double[] k1 = new double[N];
    private final double[] k2 = new double[N];
    private final double[] k3 = new double[N];
    private final double[] k4 = new double[N];
    private final double[] trial = new double[N];

    Kernel(RiseDynamics dynamics, PieceTemperature temperature, double start, double shift) {
      this.dynamics = dynamics;
      this.temperature = temperature;
      this.fractions = temperature.fractions();
      this.start = start;
      this.shift = shift;
    }

    void run(PieceCurve curve, int shell, double[] state, double h) {
      int last = curve.hours.length - 1;
      double before = temperature.celsius(shell, 0, start, shift);
      for (int i = 0; i <= last; i++) {
        dynamics.derivatives(before, state, k1);
        record(curve, i, shell, before, state);
        if (i == last) {
          return;
        }
        double middle = temperature.celsius(shell, (i + 0.5) * h, start, shift);
        double after = temperature.celsius(shell, (i + 1) * h, start, shift);
        step(state, h, middle, after);
        before = after;
      }
    }

    private void step(double[] state, double h, double middle, double after) {
      advance(state, k1, h / 2);
      dynamics.derivatives(middle, trial, k2);
      advance(state, k2, h / 2);
      dynamics.derivatives(middle, trial, k3);
      advance(state, k3, h);
      dynamics.derivatives(after, trial, k4);
      for (int j = 0; j < RiseDynamics.CELSIUS; j++) {
        state[j] += h / 6 * (k1[j] + 2 * (k2[j] + k3[j]) + k4[j]);
      }
    }

    private void advance(double[] state, double[] k, double h) {
      for (int j = 0; j < RiseDynamics.CELSIUS; j++) {
        trial[j] = state[j] + h * k[j];
      }
    }

    private void record(PieceCurve curve, int i, int shell, double celsius, double[] state) {
      double share = fractions[shell];
      curve.rise[i] += share * dynamics.rise(celsius, state);
      curve.strength[i] += share * Math.exp(state[RiseDynamics.STRENGTH]);
      curve.madeMol[i] += share * state[RiseDynamics.MADE];
      curve.netGas[i] += share * (k1[RiseDynamics.MADE] - k1[RiseDynamics.LOST]);
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

  /** Temperature at the very centre at an hour inside the curve, °C. */
  public double coreCelsiusAt(double at) {
    return at(core, at);
  }

  /** CO2 made since mixing, mean over the piece, mol per kg of flour. */
  public double madeMolAt(double at) {
    return at(madeMol, at);
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
}
