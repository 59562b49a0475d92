package doughtide.core.forecast;

import doughtide.core.Internal;
import doughtide.core.dough.DoughFormula;
import doughtide.core.quantity.Checks;
import doughtide.core.quantity.InnerFault;
import doughtide.core.quantity.Rise;
import doughtide.core.rise.DoughTemperature;
import doughtide.core.rise.RiseCurve;
import doughtide.core.rise.RiseModel;
import doughtide.core.rise.SeedState;
import java.io.Serializable;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.function.BiConsumer;
import java.util.function.BiFunction;
import java.util.function.DoubleUnaryOperator;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;

/**
 * The rise of one dough with its uncertainty: an ensemble of runs that can be asked when something
 * happens, each question by its distribution or by the window of that. It keeps a summary of each
 * run, about half a megabyte in all for a day, unless its maker was told to {@linkplain
 * RiseForecaster#keepingCurves keep the curves}.
 *
 * <pre>{@code
 * RiseForecast forecast = RiseForecaster.standard().forecast(formula, temperature);
 * TimeWindow half = forecast.hoursToRise(Rise.ofPercent(50));
 * double byNoon = forecast.passes(Rise.ofPercent(50)).probabilityBy(4.5);
 * }</pre>
 */
public final class RiseForecast {
  private static final int MOST_POINTS = 100_000;
  private static final Rise HALF = Rise.ofPercent(50);

  private final RiseModel model;
  private final Ensemble ensemble;
  private final double hours;
  private final Threads threads;
  private final boolean keepsCurves;
  private final List<SeedState> seeds; // one a member, or none
  private final List<Warning> warnings;
  private final RunSummaries runs;
  private volatile @Nullable List<RiseCurve> curves; // kept from the start, or when asked for

  private RiseForecast(
      RiseModel model,
      Ensemble ensemble,
      double hours,
      Threads threads,
      boolean keepsCurves,
      List<SeedState> seeds,
      BiConsumer<Integer, RiseCurve> shown) {
    this.seeds = seeds;
    this.model = model;
    this.ensemble = ensemble;
    this.hours = hours;
    this.threads = threads;
    this.keepsCurves = keepsCurves;
    List<Warning> found = new ArrayList<>(TemperatureWarnings.of(model.temperature(), hours));
    boolean possible = found.stream().noneMatch(TemperatureWarnings::forbidsHours);
    found.addAll(DoughWarnings.of(model.formula()));
    this.warnings = List.copyOf(found);
    List<RiseCurve> kept = possible && keepsCurves ? run(shown).toList() : List.of();
    this.curves = possible && !keepsCurves ? null : kept;
    Stream<RiseCurve> each = possible && !keepsCurves ? run(shown) : threads.stream(kept);
    this.runs = RunSummaries.of(model.temperature(), hours, ensemble.weights(), each);
  }

  private RiseForecast(RiseForecast other, Ensemble weighted) {
    this(other, weighted, other.seeds, other.curves, other.runs.weighted(weighted.weights()));
  }

  private RiseForecast(
      RiseForecast other,
      Ensemble weighted,
      List<SeedState> seeds,
      @Nullable List<RiseCurve> curves,
      RunSummaries runs) {
    this.model = other.model;
    this.ensemble = weighted;
    this.hours = other.hours;
    this.threads = other.threads;
    this.keepsCurves = other.keepsCurves;
    this.seeds = seeds;
    this.warnings = other.warnings;
    this.curves = curves;
    this.runs = runs;
  }

  static RiseForecast of(
      RiseModel model, Ensemble ensemble, double hours, Threads threads, boolean keepsCurves) {
    return of(model, ensemble, hours, threads, keepsCurves, List.of());
  }

  static RiseForecast of(
      RiseModel model,
      Ensemble ensemble,
      double hours,
      Threads threads,
      boolean keepsCurves,
      List<SeedState> seeds) {
    return new RiseForecast(
        model, ensemble, hours, threads, keepsCurves, seeds, (member, curve) -> {});
  }

  /** The runs are shown as they are made, each with its place, by the threads that make them. */
  static RiseForecast shown(
      RiseModel model,
      Ensemble ensemble,
      double hours,
      Threads threads,
      boolean keepsCurves,
      BiConsumer<Integer, RiseCurve> shown) {
    return new RiseForecast(model, ensemble, hours, threads, keepsCurves, List.of(), shown);
  }

  /** All members, in their order. */
  private Stream<RiseCurve> run(BiConsumer<Integer, RiseCurve> shown) {
    List<Integer> places = IntStream.range(0, ensemble.size()).boxed().toList();
    return threads.stream(places).map(place -> shownRun(place, shown));
  }

  private RiseCurve shownRun(int place, BiConsumer<Integer, RiseCurve> shown) {
    RiseCurve curve = member(place).runFast(hours);
    shown.accept(place, curve);
    return curve;
  }

  /**
   * Asks some members, each run once more and not kept, unless the runs are.
   *
   * @param <T> what an answer is
   * @param members places in {@link #ensemble()}
   * @param asked of the place and the run of a member
   * @return the answers, in the order of the places
   * @hidden
   */
  @Internal
  public <T> List<T> ofMembers(List<Integer> members, BiFunction<Integer, RiseCurve, T> asked) {
    return threads.stream(members).map(each -> asked.apply(each, curve(each))).toList();
  }

  private RiseCurve curve(int number) {
    List<RiseCurve> known = curves;
    return known == null ? member(number).runFast(hours) : known.get(number);
  }

  private RiseModel member(int number) {
    RiseModel member = model.with(ensemble.members().get(number));
    return seeds.isEmpty() ? member : member.from(seeds.get(number));
  }

  /** {@return the dough} */
  public DoughFormula formula() {
    return model.formula();
  }

  /** {@return its temperature, as stated} */
  public DoughTemperature temperature() {
    return model.temperature();
  }

  /**
   * {@return one run to stand for all where a single one must be shown: of the members the one
   * whose height is nearest to the median, by the squares of the differences of the logarithms at
   * twelve evenly spaced hours} If no hours are given, the middle of the belief.
   *
   * @hidden
   */
  @Internal
  public RiseModel typical() {
    return isPossible() ? member(runs.nearestMedian(hours)) : model;
  }

  /**
   * {@return the dough's own temperature, °C, from hour 0 to {@link #hours()}: as stated where it
   * was stated, in a room as the likely dough drifts and warms itself} What no thermometer shows,
   * that the likely dough is really a little warmer or colder than stated, is left out.
   *
   * @hidden
   */
  @Internal
  public DoubleUnaryOperator likelyCelsius() {
    RiseCurve likely = typical().runFast(hours);
    double off = temperature().startCelsius() - likely.celsiusAt(0);
    return at -> likely.celsiusAt(at) + off;
  }

  /**
   * {@return the draws behind the runs, in the order of {@link #curves()}, and their weights}
   *
   * @hidden
   */
  @Internal
  public Ensemble ensemble() {
    return ensemble;
  }

  /**
   * {@return the runs, one a member; none if the dough is outside growth} Unless the forecaster was
   * told to {@linkplain RiseForecaster#keepingCurves keep} them, the first call runs them again;
   * from then on they are kept.
   *
   * @hidden
   */
  @Internal
  public List<RiseCurve> curves() {
    List<RiseCurve> known = curves;
    if (known == null) {
      known = run((member, curve) -> {}).toList();
      curves = known;
    }
    return known;
  }

  /**
   * {@return whether hours can be given at all: the dough stays inside the temperatures at which
   * yeast grows}
   */
  public boolean isPossible() {
    return !runs.isEmpty();
  }

  private void checkPossible() {
    if (!isPossible()) {
      throw new InnerFault("no hours can be given for this dough: ask isPossible() first");
    }
  }

  /**
   * {@return the same doughs, member by member, at another temperature from mixing on}
   *
   * @param temperature the dough's own
   */
  public RiseForecast at(DoughTemperature temperature) {
    return of(model.with(temperature), ensemble, hours, threads, keepsCurves, seeds);
  }

  /**
   * {@return the same runs with other weights; nothing is run again}
   *
   * @param weights one a member, 0 or more, not all 0
   * @throws InnerFault if they are otherwise
   */
  public RiseForecast weighted(double[] weights) {
    return new RiseForecast(this, ensemble.weighted(weights));
  }

  /**
   * {@return some of the same runs; nothing is run again}
   *
   * @param places in {@link #ensemble()}; one may stand there more than once
   * @param weights one a place, 0 or more, not all 0
   * @hidden
   */
  @Internal
  public RiseForecast at(int[] places, double[] weights) {
    List<RiseCurve> known = curves;
    return new RiseForecast(
        this,
        ensemble.at(places).weighted(weights),
        seeds.isEmpty() ? seeds : Arrays.stream(places).mapToObj(seeds::get).toList(),
        known == null ? null : Arrays.stream(places).mapToObj(known::get).toList(),
        runs.at(places, weights));
  }

  /**
   * {@return the same belief told by doughs that count alike, run anew and kept: for whoever
   * follows the first of them only, or each of them through what comes after}
   *
   * @param members 8…65536
   * @param newHours how far, 0.001…240 h
   */
  public RiseForecast drawn(int members, double newHours) {
    return isPossible()
        ? of(model, ensemble.at(placesDrawn(members)), newHours, threads, true)
        : this;
  }

  /**
   * {@return the places in {@link #ensemble()} of the doughs that {@link #drawn} tells, in their
   * order}
   *
   * @param members 8…65536
   * @hidden
   */
  @Internal
  public int[] placesDrawn(int members) {
    return ensemble.drawn(members, runs.hoursTo(HALF));
  }

  /** {@return how far the runs go, hours} */
  public double hours() {
    return hours;
  }

  /** {@return what the user should know} */
  public List<Warning> warnings() {
    return warnings;
  }

  /**
   * {@return when the rise passes a value: within 0.002 h of what the runs give, 0.05 h where they
   * are flat}
   *
   * @param rise over the volume after mixing
   */
  public Distribution passes(Rise rise) {
    return runs.distribution(runs.hoursTo(rise));
  }

  /** {@return the hours from which the dough is past its best: it falls back or has become weak} */
  public Distribution pastBest() {
    return runs.distribution(runs.each(MemberSummary::over));
  }

  /** {@return the hours from which a starter is ripe: within 5 % of its greatest height} */
  public Distribution ripe() {
    return runs.distribution(runs.each(MemberSummary::ripe));
  }

  /** {@return when dough or starter begins to fall: at its greatest height} */
  public Distribution beginsToFall() {
    return runs.distribution(runs.each(MemberSummary::peak));
  }

  /**
   * {@return how long a starter stays ripe: from {@link #ripe()} until it begins to fall, hours}
   */
  public Distribution ripeFor() {
    return runs.distribution(runs.each(MemberSummary::ripeFor));
  }

  /** {@return when a starter has fallen 5 % below its greatest height} */
  public Distribution fallen() {
    return runs.distribution(runs.each(MemberSummary::fallen));
  }

  /**
   * {@return the greatest rise in percent, not hours; of members whose greatest height lies beyond
   * the time looked at, the last}
   */
  public Distribution greatestPercent() {
    return runs.distribution(runs.each(member -> 100 * member.peakRise()));
  }

  /**
   * {@return the rise that half of the doughs have passed by an hour, percent: what the likely jar
   * shows then, unless it is past its top}
   *
   * @param at 0…{@link #hours()}
   * @throws InnerFault if it lies outside, or no hours can be given for the dough
   */
  public double likelyPercentAt(double at) {
    checkPossible();
    return runs.likelyHighestBy(Checks.inside("hour", at, 0, hours, "h"));
  }

  /** Hour and percent: half of the members have passed that rise by that hour. */
  List<double[]> likelyHighest() {
    return runs.likelyHighest();
  }

  /** Height over a member's own greatest, some hours after it began to fall. */
  Distribution partOfTop(double hoursAfterPeak) {
    return runs.partOfTop(hoursAfterPeak);
  }

  /**
   * {@return when the rise passes a value in each member, in their order; positive infinity for
   * never}
   *
   * @param rise over the volume after mixing
   */
  public double[] hoursOfMembers(Rise rise) {
    return runs.hoursTo(rise);
  }

  /** {@return {@link #pastBest} in each member, in their order} */
  public double[] pastBestOfMembers() {
    return runs.each(MemberSummary::over);
  }

  /** {@return {@link #ripe} in each member, in their order} */
  public double[] ripeOfMembers() {
    return runs.each(MemberSummary::ripe);
  }

  /** {@return {@link #beginsToFall} in each member, in their order} */
  public double[] peakOfMembers() {
    return runs.each(MemberSummary::peak);
  }

  /** {@return {@link #fallen} in each member, in their order} */
  public double[] fallenOfMembers() {
    return runs.each(MemberSummary::fallen);
  }

  /**
   * {@return the rise of each member at an hour, as a fraction, in the order of the members}
   *
   * @param at 0…{@link #hours()}
   * @throws InnerFault if it lies outside
   */
  public double[] risesOfMembers(double at) {
    Checks.inside("hour", at, 0, hours, "h");
    return runs.rises(at);
  }

  /**
   * {@return window of {@link #passes}}
   *
   * @param rise over the volume after mixing
   */
  public TimeWindow hoursToRise(Rise rise) {
    return passes(rise).window();
  }

  /** {@return window of {@link #pastBest}} */
  public TimeWindow hoursToOver() {
    return pastBest().window();
  }

  /** {@return window of {@link #ripe}} */
  public TimeWindow hoursToRipe() {
    return ripe().window();
  }

  /** {@return window of {@link #fallen}} */
  public TimeWindow hoursToFallen() {
    return fallen().window();
  }

  /**
   * {@return the band at an hour}
   *
   * @param at 0…{@link #hours()}
   * @throws InnerFault if it lies outside, or no hours can be given for the dough
   */
  public BandPoint bandAt(double at) {
    checkPossible();
    Checks.inside("hour", at, 0, hours, "h");
    return runs.bandAt(at);
  }

  /**
   * The band at evenly spaced hours from 0 to the end.
   *
   * @param points 2…100000
   * @return the points; none if no forecast is possible
   * @throws InnerFault if there are fewer or more
   */
  public List<BandPoint> band(int points) {
    Checks.inside("points of a band", points, 2, MOST_POINTS, "");
    if (!isPossible()) {
      return List.of();
    }
    return IntStream.range(0, points)
        .mapToObj(i -> runs.bandAt(Math.min(hours, hours * i / (points - 1))))
        .toList();
  }

  /**
   * How much of the width of a time each unknown explains alone, largest first.
   *
   * @param rise the rise whose time is looked at
   * @return shares 0…1; empty if fewer than nine in ten members reach it
   */
  public Map<Unknown, Double> whatWidens(Rise rise) {
    Map<Unknown, Double> shares = new EnumMap<>(Unknown.class);
    double[] at = runs.hoursTo(rise);
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
    String dough = model.formula() + "; " + model.temperature() + ": ";
    if (!isPossible()) {
      return dough + "no hours";
    }
    TimeWindow half = hoursToRise(HALF);
    return dough
        + "50 % rise after "
        + Checks.line(half.early(), half.likely(), half.late())
        + " h";
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
