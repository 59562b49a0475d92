package doughtide.core.forecast;

import doughtide.core.dough.DoughFormula;
import doughtide.core.rise.DoughTemperature;
import doughtide.core.rise.RiseCurve;
import doughtide.core.rise.RiseModel;
import doughtide.core.rise.RiseParameters;
import java.io.Serializable;
import java.util.ArrayList;
import java.util.List;
import java.util.OptionalDouble;
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
public final class RiseForecaster implements Serializable {
  private static final long serialVersionUID = 1;

  private static final double SHORTEST_HOURS = 8;
  private static final double LONGEST_HOURS = 168;
  private static final double SLOW_MEMBERS = 2.0; // the slowest members against the typical one

  private final RiseParameters parameters;
  private final Belief belief;
  private final int size;
  private transient volatile @Nullable Ensemble drawn; // made when first asked for

  private RiseForecaster(RiseParameters parameters, Belief belief, int size) {
    this.parameters = parameters;
    this.belief = belief;
    this.size = size;
  }

  /** For a baker nobody knows: standard parameters and belief, 512 members. */
  public static RiseForecaster standard() {
    return new RiseForecaster(RiseParameters.standard(), Belief.standard(), Ensemble.USUAL_SIZE);
  }

  /** The same with another belief, for example a learned one. */
  public RiseForecaster with(Belief newBelief) {
    return new RiseForecaster(parameters, newBelief, size);
  }

  /** The same with other parameters. */
  public RiseForecaster with(RiseParameters newParameters) {
    return new RiseForecaster(newParameters, belief, size);
  }

  /**
   * The same with another number of members.
   *
   * @param members 8…65536
   */
  public RiseForecaster withMembers(int members) {
    return new RiseForecaster(parameters, belief, members);
  }

  /** What is believed. */
  public Belief belief() {
    return belief;
  }

  /** The numbers of the model. */
  public RiseParameters parameters() {
    return parameters;
  }

  /** The draws of this forecaster. */
  public Ensemble ensemble() {
    Ensemble ensemble = drawn;
    if (ensemble == null) {
      ensemble = Ensemble.of(belief, size);
      drawn = ensemble;
    }
    return ensemble;
  }

  /** A model of the dough at the middle of the belief. */
  public RiseModel typical(DoughFormula formula, DoughTemperature temperature) {
    return RiseModel.of(formula, temperature).with(parameters).with(belief.middle());
  }

  /** Forecast until the dough is clearly past its best, at most a week. */
  public RiseForecast forecast(DoughFormula formula, DoughTemperature temperature) {
    return forecast(formula, temperature, usefulHours(typical(formula, temperature)));
  }

  /**
   * Forecast for a number of hours.
   *
   * @param hours 0.001…240
   */
  public RiseForecast forecast(DoughFormula formula, DoughTemperature temperature, double hours) {
    RiseModel typical = typical(formula, temperature);
    Ensemble ensemble = ensemble();
    List<Warning> warnings = new ArrayList<>(TemperatureWarnings.of(temperature, hours));
    boolean possible = warnings.stream().noneMatch(TemperatureWarnings::forbidsHours);
    List<RiseCurve> curves = possible ? runs(typical, ensemble, hours) : List.of();
    warnings.addAll(DoughWarnings.of(formula));
    return new RiseForecast(typical, ensemble, curves, hours, warnings);
  }

  /** All members, on all cores, in their order. */
  private static List<RiseCurve> runs(RiseModel typical, Ensemble ensemble, double hours) {
    return ensemble.members().parallelStream()
        .map(member -> typical.with(member).runFast(hours))
        .toList();
  }

  private static double usefulHours(RiseModel typical) {
    OptionalDouble over = typical.runFast(LONGEST_HOURS).hoursToOver();
    double wanted = over.orElse(LONGEST_HOURS) * SLOW_MEMBERS;
    return Math.min(Math.max(wanted, SHORTEST_HOURS), LONGEST_HOURS);
  }
}
