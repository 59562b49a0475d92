package doughtide.core.forecast;

import doughtide.core.quantity.Checks;
import doughtide.core.quantity.Rise;
import doughtide.core.rise.DoughTemperature;
import doughtide.core.rise.RiseCurve;
import doughtide.core.rise.RiseModel;
import java.io.Serializable;
import java.util.Arrays;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.OptionalDouble;
import java.util.function.Function;
import java.util.stream.IntStream;

/**
 * The rise of one dough with its uncertainty: an ensemble of runs that can be asked when something
 * happens.
 *
 * <pre>{@code
 * RiseForecast forecast = RiseForecaster.standard().forecast(formula, temperature);
 * TimeWindow half = forecast.hoursToRise(Rise.ofPercent(50));
 * }</pre>
 */
public final class RiseForecast {
  private final RiseModel typical;
  private final Ensemble ensemble;
  private final List<RiseCurve> curves;
  private final double hours;
  private final List<Warning> warnings;
  private final Crew crew;

  RiseForecast(
      RiseModel typical,
      Ensemble ensemble,
      List<RiseCurve> curves,
      double hours,
      List<Warning> warnings,
      Crew crew) {
    this.typical = typical;
    this.ensemble = ensemble;
    this.curves = List.copyOf(curves);
    this.hours = hours;
    this.warnings = List.copyOf(warnings);
    this.crew = crew;
  }

  /** The dough with every unknown at its middle. */
  public RiseModel typical() {
    return typical;
  }

  /** The draws behind the runs, in the order of {@link #curves()}. */
  public Ensemble ensemble() {
    return ensemble;
  }

  /** The runs, one a member; none if the dough is outside growth. */
  public List<RiseCurve> curves() {
    return curves;
  }

  /**
   * Whether hours can be given at all: the dough stays inside the temperatures at which yeast
   * grows.
   */
  public boolean isPossible() {
    return !curves.isEmpty();
  }

  /**
   * The same doughs, member by member, at another temperature from mixing on.
   *
   * @param temperature the dough's own
   */
  public RiseForecast at(DoughTemperature temperature) {
    return RiseForecaster.run(typical.with(temperature), ensemble, hours, crew);
  }

  /** How far the runs go, hours. */
  public double hours() {
    return hours;
  }

  /** What the user should know. */
  public List<Warning> warnings() {
    return warnings;
  }

  /** When the rise reaches a value. */
  public TimeWindow hoursToRise(Rise rise) {
    return when(curve -> curve.hoursToRise(rise));
  }

  /** From when the dough is past its best: it falls back or has become weak. */
  public TimeWindow hoursToOver() {
    return when(RiseCurve::hoursToOver);
  }

  /** From when a starter is ripe: within 5 % of its greatest height. */
  public TimeWindow hoursToRipe() {
    return when(RiseCurve::hoursToRipe);
  }

  /** When a starter has fallen 5 % below its greatest height. */
  public TimeWindow hoursToFallen() {
    return when(RiseCurve::hoursToFallen);
  }

  /**
   * When something happens.
   *
   * @param event gives the hour in one run, empty for never; called by several threads at once
   */
  public TimeWindow when(Function<RiseCurve, OptionalDouble> event) {
    return curves.isEmpty() ? TimeWindow.NEVER : TimeWindow.of(hoursOf(event));
  }

  private double[] hoursOf(Function<RiseCurve, OptionalDouble> event) {
    return crew.stream(curves)
        .mapToDouble(curve -> event.apply(curve).orElse(Double.POSITIVE_INFINITY))
        .toArray();
  }

  /**
   * The band at an hour.
   *
   * @param at 0…{@link #hours()}
   */
  public BandPoint bandAt(double at) {
    return bandAt(new double[] {at}).get(0);
  }

  /** One curve after the other, so that each is at hand only once. */
  private List<BandPoint> bandAt(double[] at) {
    double[][] rises = new double[at.length][curves.size()];
    double[][] phs = new double[at.length][curves.size()];
    for (int m = 0; m < curves.size(); m++) {
      RiseCurve curve = curves.get(m);
      for (int i = 0; i < at.length; i++) {
        rises[i][m] = curve.riseAt(at[i]).percent();
        phs[i][m] = curve.phAt(at[i]);
      }
    }
    return IntStream.range(0, at.length).mapToObj(i -> bandPoint(at[i], rises[i], phs[i])).toList();
  }

  private static BandPoint bandPoint(double at, double[] rises, double[] phs) {
    Arrays.sort(rises);
    Arrays.sort(phs);
    return new BandPoint(
        at,
        Quantiles.of(rises, 0.9),
        Quantiles.of(rises, 0.5),
        Quantiles.of(rises, 0.1),
        Quantiles.of(phs, 0.5));
  }

  /**
   * The band at evenly spaced hours from 0 to the end.
   *
   * @param points 2 or more
   * @return the points; none if no forecast is possible
   */
  public List<BandPoint> band(int points) {
    if (curves.isEmpty()) {
      return List.of();
    }
    return bandAt(
        IntStream.range(0, points)
            .mapToDouble(i -> Math.min(hours, hours * i / (points - 1)))
            .toArray());
  }

  /**
   * How much of the width of a time each unknown explains alone, largest first.
   *
   * @param rise the rise whose time is looked at
   * @return shares 0…1; empty if fewer than nine in ten members reach it
   */
  public Map<Unknown, Double> whatWidens(Rise rise) {
    Map<Unknown, Double> shares = new EnumMap<>(Unknown.class);
    double[] at = curves.isEmpty() ? new double[0] : hoursOf(c -> c.hoursToRise(rise));
    int never = 0;
    double latest = Double.NEGATIVE_INFINITY;
    for (double each : at) {
      never += Double.isInfinite(each) ? 1 : 0;
      latest = Double.isInfinite(each) ? latest : Math.max(latest, each);
    }
    if (at.length == 0 || never * 10 > at.length) {
      return shares;
    }
    double[] held = new double[at.length];
    for (int m = 0; m < at.length; m++) {
      held[m] = Math.min(at[m], latest);
    }
    double[] byUnknown = ensemble.varianceShares(held);
    for (Unknown unknown : Unknown.values()) {
      shares.put(unknown, byUnknown[unknown.ordinal()]);
    }
    return shares;
  }

  /** In a line, for logs: the dough, and the hours to 50 % rise. */
  @Override
  public String toString() {
    String dough = typical.formula() + "; " + typical.temperature() + ": ";
    if (!isPossible()) {
      return dough + "no hours";
    }
    TimeWindow half = hoursToRise(Rise.ofPercent(50));
    return dough
        + "50 % rise after "
        + words(half.early())
        + " / "
        + words(half.likely())
        + " / "
        + words(half.late())
        + " h";
  }

  private static String words(OptionalDouble at) {
    return at.isPresent() ? Checks.plain(Math.round(at.getAsDouble() * 100) / 100.0) : "–";
  }

  /**
   * The band of rises at an hour, and the likely pH.
   *
   * @param hours since mixing
   * @param riseEarlyPercent the fast tenth of doughs has risen more
   * @param riseLikelyPercent half has risen more
   * @param riseLatePercent the slow tenth has risen less
   * @param ph median, uncertain by about ±0.2
   */
  public record BandPoint(
      double hours,
      double riseEarlyPercent,
      double riseLikelyPercent,
      double riseLatePercent,
      double ph)
      implements Serializable {}
}
