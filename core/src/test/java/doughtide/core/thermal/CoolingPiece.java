package doughtide.core.thermal;

import doughtide.core.quantity.Checks;
import doughtide.core.quantity.InputException;
import doughtide.core.quantity.Temperature;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.OptionalDouble;
import java.util.stream.DoubleStream;
import org.apache.commons.math3.analysis.solvers.BrentSolver;

/**
 * A piece of dough whose temperature differs from its surroundings, from its first hour on;
 * immutable.
 *
 * <p>Where the surroundings are steady between breakpoints the solution is exact in time. Where
 * they change smoothly (a logger's readings) they are followed by straight lines of a quarter of an
 * hour, up to {@value #HORIZON_HOURS} h; later they keep their last value. Before hour 0 the piece
 * is as it was at the start.
 */
public final class CoolingPiece {
  private static final double HORIZON_HOURS = 240;
  private static final double LINE_HOURS = 0.25;
  private static final double J_PER_WATT_HOUR = 3600;
  private static final double ROOT_HOURS = 1e-10;
  private static final double SAME_KELVIN = 1e-9;

  private final Conduction conduction;
  private final double[] startHours;
  private final Span[] spans;

  private CoolingPiece(Conduction conduction, List<Span> spans) {
    this.conduction = conduction;
    this.spans = spans.toArray(new Span[0]);
    this.startHours = spans.stream().mapToDouble(Span::start).toArray();
  }

  /**
   * A piece of one temperature throughout, without a heat source.
   *
   * @param conduction the body
   * @param start its temperature at hour 0
   * @param surroundings air around it
   */
  public static CoolingPiece start(
      Conduction conduction, Temperature start, TemperatureTrace surroundings) {
    double[] shells = new double[conduction.shells()];
    Arrays.fill(shells, start.celsius());
    return start(conduction, shells, surroundings, HeatSource.none());
  }

  /**
   * A piece with a temperature in each shell and a heat source.
   *
   * @param conduction the body
   * @param shellCelsius temperature of each shell at hour 0 from the centre outward, −60…300 °C
   * @param surroundings air around it
   * @param source heat set free in the dough
   * @throws InputException if the number of temperatures is not the number of shells or one is out
   *     of range
   */
  public static CoolingPiece start(
      Conduction conduction,
      double[] shellCelsius,
      TemperatureTrace surroundings,
      HeatSource source) {
    if (shellCelsius.length != conduction.shells()) {
      throw new InputException(
          "shell-temperature.lengths",
          shellCelsius.length
              + " shell temperatures for a body of "
              + conduction.shells()
              + " shells: give one per shell");
    }
    for (double each : shellCelsius) {
      Checks.inRange("shell temperature", each, -60, 300, "°C");
    }
    return new CoolingPiece(conduction, spans(conduction, shellCelsius, surroundings, source));
  }

  private static List<Span> spans(
      Conduction conduction, double[] shells, TemperatureTrace room, HeatSource source) {
    double[] one = conduction.modesOfOne();
    double[] modes = conduction.toModes(shells);
    List<Span> spans = new ArrayList<>();
    double outside = 0;
    double lost = 0;
    for (Line line : lines(room, source)) {
      double forcing = sourcePerHour(conduction, source, line) - line.slope();
      double[] begin = new double[one.length];
      double[] end = new double[one.length];
      for (int i = 0; i < one.length; i++) {
        begin[i] = modes[i] + one[i] * (outside - line.celsius());
        end[i] = one[i] * forcing / conduction.rates()[i];
      }
      Span span = new Span(line.from(), line.celsius(), line.slope(), begin, end, lost);
      spans.add(span);
      double width = line.to() - line.from();
      modes = Arrays.copyOf(span.modes(conduction, width), one.length);
      outside = line.celsius() + line.slope() * width;
      lost = span.lost(conduction, width);
    }
    return spans;
  }

  private static double sourcePerHour(Conduction conduction, HeatSource source, Line line) {
    double middle = line.from() + Math.min(line.to() - line.from(), 1) / 2;
    return source.wattsPerKg(middle) * J_PER_WATT_HOUR / conduction.heat().heatCapacityJPerKgK();
  }

  /** The surroundings as straight lines, the last one level and without end. */
  private static List<Line> lines(TemperatureTrace room, HeatSource source) {
    double[] breaks =
        DoubleStream.concat(
                DoubleStream.of(0, HORIZON_HOURS),
                DoubleStream.concat(
                    Arrays.stream(room.breakpoints()), Arrays.stream(source.breakpoints())))
            .filter(hour -> hour >= 0)
            .sorted()
            .distinct()
            .toArray();
    List<Line> lines = new ArrayList<>();
    for (int i = 0; i < breaks.length - 1; i++) {
      addLines(lines, room, breaks[i], breaks[i + 1]);
    }
    double last = breaks[breaks.length - 1];
    lines.add(new Line(last, Double.POSITIVE_INFINITY, room.celsius(last + 1e-6), 0));
    return lines;
  }

  private static void addLines(List<Line> lines, TemperatureTrace room, double from, double to) {
    int count = isLevel(room, from, to) ? 1 : (int) Math.ceil((to - from) / LINE_HOURS);
    double width = (to - from) / count;
    for (int i = 0; i < count; i++) {
      double a = from + i * width;
      double b = i == count - 1 ? to : from + (i + 1) * width;
      // A hair inside, so that a jump at either end belongs to its own side.
      double hair = 1e-9 * (b - a);
      double left = room.celsius(a + hair);
      double right = room.celsius(b - hair);
      lines.add(new Line(a, b, left, count == 1 ? 0 : (right - left) / (b - a)));
    }
  }

  private static boolean isLevel(TemperatureTrace room, double from, double to) {
    int looks = (int) Math.min(2000, Math.ceil((to - from) / LINE_HOURS) + 1);
    double first = room.celsius(from + 1e-9 * (to - from));
    for (int i = 1; i <= looks; i++) {
      double hour = from + (to - from) * (i - 1e-9) / looks;
      if (Math.abs(room.celsius(hour) - first) > 1e-12) {
        return false;
      }
    }
    return true;
  }

  /** The body. */
  public Conduction conduction() {
    return conduction;
  }

  /**
   * Mean temperature of a shell.
   *
   * @param shell 0 at the centre … {@code shells() − 1} at the surface
   * @param hours since the start
   */
  public double shellCelsius(int shell, double hours) {
    Span span = spanAt(hours);
    double after = Math.max(0, hours) - span.start();
    return span.outside(after) + dot(conduction.modesAt(shell), span.modes(conduction, after));
  }

  /**
   * Mean temperature of every shell, from the centre outward.
   *
   * @param hours since the start
   */
  public double[] shellCelsius(double hours) {
    Span span = spanAt(hours);
    double after = Math.max(0, hours) - span.start();
    double[] modes = span.modes(conduction, after);
    double[] celsius = new double[conduction.shells()];
    for (int shell = 0; shell < celsius.length; shell++) {
      celsius[shell] = span.outside(after) + dot(conduction.modesAt(shell), modes);
    }
    return celsius;
  }

  /**
   * Temperature of a shell over time.
   *
   * @param shell 0 at the centre … {@code shells() − 1} at the surface
   */
  public TemperatureTrace shellTrace(int shell) {
    Checks.inside("shell", shell, 0, conduction.shells() - 1.0, "");
    double[] breakpoints = Arrays.copyOf(startHours, startHours.length);
    return new TemperatureTrace() {
      @Override
      public double celsius(double hours) {
        return shellCelsius(shell, hours);
      }

      @Override
      public double[] breakpoints() {
        return breakpoints.clone();
      }
    };
  }

  /**
   * Temperature at the very centre.
   *
   * @param hours since the start
   */
  public double coreCelsius(double hours) {
    double second = conduction.centreWeightOfSecond();
    return (1 - second) * shellCelsius(0, hours) + second * shellCelsius(1, hours);
  }

  /**
   * Temperature of the surface itself.
   *
   * @param hours since the start
   */
  public double surfaceCelsius(double hours) {
    Span span = spanAt(hours);
    double outside = span.outside(Math.max(0, hours) - span.start());
    double shell = shellCelsius(conduction.shells() - 1, hours);
    return outside + (shell - outside) * conduction.surfaceToShell();
  }

  /**
   * Mean temperature of the piece by volume.
   *
   * @param hours since the start
   */
  public double meanCelsius(double hours) {
    return dot(conduction.volumeFractions(), shellCelsius(hours));
  }

  /**
   * Heat that has left through the surface since the start, J per kg of dough; negative if the
   * piece was warmed.
   *
   * @param hours since the start
   */
  public double heatLostJPerKg(double hours) {
    Span span = spanAt(hours);
    double kelvin = span.lost(conduction, Math.max(0, hours) - span.start());
    return kelvin * conduction.heat().heatCapacityJPerKgK();
  }

  /**
   * When the core first reaches a temperature, from whichever side.
   *
   * @param target the temperature
   * @return hours since the start, 0 if the core has it at the start, empty if it never does
   */
  public OptionalDouble hoursUntilCoreReaches(Temperature target) {
    double aim = target.celsius();
    double before = coreCelsius(0) - aim;
    if (Math.abs(before) < SAME_KELVIN) {
      return OptionalDouble.of(0);
    }
    double from = 0;
    for (double to : looks()) {
      double after = coreCelsius(to) - aim;
      if (Math.abs(after) < SAME_KELVIN) {
        continue; // Creeping towards the aim without end, or crossing it: the next look tells.
      }
      if (before * after < 0) {
        return OptionalDouble.of(
            new BrentSolver(1e-14, ROOT_HOURS)
                .solve(200, hour -> coreCelsius(hour) - aim, from, to));
      }
      from = to;
    }
    return OptionalDouble.empty();
  }

  /**
   * Hours between which the core turns at most once: in each span, steps of a tenth of the slowest
   * time constant, growing, and at the end twenty time constants, by when 2e-9 of the difference is
   * left.
   */
  private double[] looks() {
    double slowest = conduction.timeConstantHours();
    DoubleStream.Builder looks = DoubleStream.builder();
    for (int i = 0; i < spans.length; i++) {
      boolean last = i == spans.length - 1;
      double end = last ? startHours[i] + 20 * slowest : startHours[i + 1];
      double step = slowest / 10;
      for (double hour = startHours[i] + step; hour < end; hour += step) {
        looks.add(hour);
        step *= 1.2;
      }
      looks.add(end);
    }
    return looks.build().toArray();
  }

  private Span spanAt(double hours) {
    int found = Arrays.binarySearch(startHours, hours);
    return spans[Math.max(0, found >= 0 ? found : -found - 2)];
  }

  private static double dot(double[] a, double[] b) {
    double sum = 0;
    for (int i = 0; i < a.length; i++) {
      sum += a[i] * b[i];
    }
    return sum;
  }

  /** Surroundings between two hours: a temperature and a slope per hour. */
  private record Line(double from, double to, double celsius, double slope) {}

  /**
   * The excess over the surroundings in one span: each mode goes from {@code begin} towards {@code
   * end} at its own rate.
   */
  private static final class Span {
    private final double start;
    private final double celsius;
    private final double slope;
    private final double[] begin;
    private final double[] end;
    private final double lostBefore;

    Span(
        double start,
        double celsius,
        double slope,
        double[] begin,
        double[] end,
        double lostBefore) {
      this.start = start;
      this.celsius = celsius;
      this.slope = slope;
      this.begin = begin;
      this.end = end;
      this.lostBefore = lostBefore;
    }

    double start() {
      return start;
    }

    double outside(double after) {
      return slope == 0 ? celsius : celsius + slope * after;
    }

    double[] modes(Conduction conduction, double after) {
      double[] rates = conduction.rates();
      double[] modes = new double[rates.length];
      for (int i = 0; i < rates.length; i++) {
        modes[i] = end[i] + (begin[i] - end[i]) * Math.exp(-rates[i] * after);
      }
      return modes;
    }

    /**
     * Fall of the mean through the surface since hour 0, K: the outermost shell's excess,
     * integrated.
     */
    double lost(Conduction conduction, double after) {
      double[] rates = conduction.rates();
      double[] outermost = conduction.modesAt(rates.length - 1);
      double integral = 0;
      for (int i = 0; i < rates.length; i++) {
        double decayed = -Math.expm1(-rates[i] * after) / rates[i];
        integral += outermost[i] * (endTimes(i, after) + (begin[i] - end[i]) * decayed);
      }
      return lostBefore + conduction.meanLossPerHour() * integral;
    }

    private double endTimes(int mode, double after) {
      return end[mode] == 0 ? 0 : end[mode] * after;
    }
  }
}
