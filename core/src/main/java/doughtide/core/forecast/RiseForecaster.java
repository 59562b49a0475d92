package doughtide.core.forecast;

import doughtide.core.Internal;
import doughtide.core.dough.DoughFormula;
import doughtide.core.quantity.Checks;
import doughtide.core.quantity.Value;
import doughtide.core.rise.DoughTemperature;
import doughtide.core.rise.RiseCurve;
import doughtide.core.rise.RiseModel;
import doughtide.core.rise.RiseParameters;
import doughtide.core.rise.SeedState;
import doughtide.core.rise.Unknowns;
import java.util.List;
import java.util.OptionalDouble;
import java.util.function.BiConsumer;
import org.jspecify.annotations.Nullable;

/**
 * Makes forecasts. Immutable and thread-safe; the same input gives the same output.
 *
 * <pre>{@code
 * RiseForecast forecast = RiseForecaster.standard()
 *     .forecast(DoughFormula.builder().build(), DoughTemperature.steady(Temperature.ofCelsius(25)));
 * double likely = forecast.hoursToRise(Rise.ofPercent(50)).likely().orElseThrow();
 * }</pre>
 */
public final class RiseForecaster extends Value {
  private static final long serialVersionUID = 1;

  private static final double SHORTEST_HOURS = 8;
  private static final double LONGEST_HOURS = 168;
  private static final double SLOW_MEMBERS = 2.0; // the slowest members against the typical one

  private final RiseParameters parameters;
  private final Belief belief;
  private final int size;
  private final Threads threads;
  private final boolean keepsCurves;
  private transient volatile @Nullable Ensemble drawn; // made when first asked for

  private RiseForecaster(
      RiseParameters parameters, Belief belief, int size, Threads threads, boolean keepsCurves) {
    this.parameters = parameters;
    this.belief = belief;
    this.size = size;
    this.threads = threads;
    this.keepsCurves = keepsCurves;
  }

  /**
   * {@return a forecaster, for a baker nobody knows: standard parameters and belief, 512 members}
   */
  public static RiseForecaster standard() {
    return new RiseForecaster(
        RiseParameters.standard(),
        Belief.standard(),
        Ensemble.USUAL_SIZE,
        Threads.ALL_CORES,
        false);
  }

  /**
   * {@return the same with another belief, for example a learned one}
   *
   * @param newBelief for example {@link doughtide.core.learning.LearnedStarter#posterior}
   */
  public RiseForecaster with(Belief newBelief) {
    return new RiseForecaster(
        parameters, Checks.given("belief", newBelief), size, threads, keepsCurves);
  }

  /**
   * {@return the same with other parameters}
   *
   * @param newParameters of the model
   */
  public RiseForecaster with(RiseParameters newParameters) {
    return new RiseForecaster(
        Checks.given("parameters", newParameters), belief, size, threads, keepsCurves);
  }

  /**
   * {@return the same with another number of members}
   *
   * @param members 8…65536
   * @throws doughtide.core.quantity.InputException if there are fewer or more
   */
  public RiseForecaster withMembers(int members) {
    Ensemble.checkSize(members);
    return new RiseForecaster(parameters, belief, members, threads, keepsCurves);
  }

  /**
   * {@return the same, with all the work of a forecast, and of the questions put to it, done by the
   * thread that asks} For programs that make many forecasts at once and have a thread for each
   * core; the answers are the same.
   */
  public RiseForecaster onCallingThread() {
    return new RiseForecaster(parameters, belief, size, Threads.CALLING_THREAD, keepsCurves);
  }

  /**
   * {@return the same, with forecasts that keep every run (about 25 kB a member) instead of a
   * summary of each (about 1 kB): for questions that only {@link RiseForecast#curves()} answers}
   */
  public RiseForecaster keepingCurves() {
    return new RiseForecaster(parameters, belief, size, threads, true);
  }

  /** {@return what is believed} */
  public Belief belief() {
    return belief;
  }

  /** {@return the numbers of the model} */
  public RiseParameters parameters() {
    return parameters;
  }

  /**
   * {@return the draws of this forecaster}
   *
   * @hidden
   */
  @Internal
  public Ensemble ensemble() {
    Ensemble ensemble = drawn;
    return ensemble == null ? draw() : ensemble;
  }

  private synchronized Ensemble draw() {
    Ensemble ensemble = drawn;
    if (ensemble == null) {
      ensemble = Ensemble.of(belief, parameters.curves(), size);
      drawn = ensemble;
    }
    return ensemble;
  }

  /**
   * {@return the middle of the belief, see {@link Belief#middle}}
   *
   * @hidden
   */
  @Internal
  public Unknowns middle() {
    return belief.middle(parameters.curves());
  }

  /**
   * {@return a model of the dough at the middle of the belief, to look ahead with} It is no median;
   * {@link RiseForecast#typical} is near it.
   *
   * @param formula what is in the dough
   * @param temperature the dough's own temperature from mixing on
   * @hidden
   */
  @Internal
  public RiseModel typical(DoughFormula formula, DoughTemperature temperature) {
    return RiseModel.of(formula, temperature).with(parameters).with(middle());
  }

  /**
   * {@return forecast until the dough is clearly past its best, at most a week}
   *
   * @param formula what is in the dough
   * @param temperature the dough's own temperature from mixing on
   */
  public RiseForecast forecast(DoughFormula formula, DoughTemperature temperature) {
    RiseModel typical = typical(formula, temperature);
    if (drawn == null) {
      threads.begin(this::ensemble);
    }
    return forecast(typical, usefulHours(typical));
  }

  /**
   * {@return forecast for a number of hours}
   *
   * @param formula what is in the dough
   * @param temperature the dough's own temperature from mixing on
   * @param hours 0.001…240
   */
  public RiseForecast forecast(DoughFormula formula, DoughTemperature temperature, double hours) {
    return forecast(typical(formula, temperature), hours);
  }

  /**
   * {@return forecast of a dough or a starter whose own starter another forecast has run, member by
   * member}
   *
   * @param formula what is in the dough
   * @param temperature the dough's own temperature from mixing on
   * @param hours 0.001…240
   * @param seeds what each member of {@link #ensemble()} begins with, in their order
   * @hidden
   */
  @Internal
  public RiseForecast forecast(
      DoughFormula formula, DoughTemperature temperature, double hours, List<SeedState> seeds) {
    return RiseForecast.of(
        typical(formula, temperature), ensemble(), hours, threads, keepsCurves, seeds);
  }

  /**
   * {@return forecast for a number of hours, each run of which is shown while it lasts: for whoever
   * needs the runs once and must not keep them}
   *
   * @param formula what is in the dough
   * @param temperature the dough's own temperature from mixing on
   * @param hours 0.001…240
   * @param shown takes the place in {@link #ensemble()} and the run of each member, several at once
   *     on several threads; none if no hours can be given
   * @hidden
   */
  @Internal
  public RiseForecast forecast(
      DoughFormula formula,
      DoughTemperature temperature,
      double hours,
      BiConsumer<Integer, RiseCurve> shown) {
    return RiseForecast.shown(
        typical(formula, temperature), ensemble(), hours, threads, keepsCurves, shown);
  }

  private RiseForecast forecast(RiseModel typical, double hours) {
    return RiseForecast.of(typical, ensemble(), hours, threads, keepsCurves);
  }

  private static double usefulHours(RiseModel typical) {
    OptionalDouble over = typical.runFast(LONGEST_HOURS).hoursToOver();
    double wanted = over.orElse(LONGEST_HOURS) * SLOW_MEMBERS;
    return Math.min(Math.max(wanted, SHORTEST_HOURS), LONGEST_HOURS);
  }

  @Override
  protected List<?> parts() {
    return List.of(parameters, belief, size, threads, keepsCurves);
  }

  @Override
  public String toString() {
    return size + " members, " + threads + ", " + belief;
  }
}
