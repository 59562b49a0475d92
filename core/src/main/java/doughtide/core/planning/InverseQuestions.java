package doughtide.core.planning;

import doughtide.core.dough.DoughFormula;
import doughtide.core.dough.StarterShare;
import doughtide.core.forecast.Proof;
import doughtide.core.forecast.RiseForecast;
import doughtide.core.forecast.RiseForecaster;
import doughtide.core.forecast.TimeWindow;
import doughtide.core.quantity.Checks;
import doughtide.core.quantity.Mass;
import doughtide.core.quantity.Rise;
import doughtide.core.quantity.Share;
import doughtide.core.quantity.Temperature;
import doughtide.core.rise.DoughTemperature;
import java.util.List;
import java.util.OptionalDouble;
import java.util.function.DoubleFunction;
import java.util.function.Function;
import org.apache.commons.math3.analysis.solvers.BrentSolver;

/**
 * One question at a time, turned round: which starter share or which dough temperature gives a
 * wanted bulk time, when to mix at the latest, and what to do when the baker must leave. The
 * answers are found on the likely path; the window beside them is that of the ensemble.
 *
 * <pre>{@code
 * InverseQuestions ask = InverseQuestions.of(RiseForecaster.standard());
 * Inverse share = ask.starterShareFor(8, Rise.ofPercent(60), formula, temperature);
 * double percentOfAddedFlour = share.value();
 * }</pre>
 */
public final class InverseQuestions {
  /** Least starter that is answered, per cent of the flour added. */
  public static final double LEAST_STARTER_PERCENT = 0.5;

  /** Most starter that is answered, per cent of the flour added. */
  public static final double MOST_STARTER_PERCENT = 60;

  /** Coolest dough that is answered, °C. */
  public static final double COOLEST_CELSIUS = 14;

  /** Warmest dough that is answered: beyond, a warmer dough is hardly quicker, °C. */
  public static final double WARMEST_CELSIUS = 28;

  private static final double ACCURACY = 1e-4;
  private static final int MOST_EVALUATIONS = 60;
  private static final double LONGEST_HOURS = 96;

  private final RiseForecaster forecaster;

  private InverseQuestions(RiseForecaster forecaster) {
    this.forecaster = forecaster;
  }

  /** With a belief and parameters. */
  public static InverseQuestions of(RiseForecaster forecaster) {
    return new InverseQuestions(forecaster);
  }

  /** Whether the wanted time can be had. */
  public enum Reach {
    /** It can. */
    ON_TIME,
    /** Even at the quick end it takes longer. */
    NOT_SO_SOON,
    /** Even at the slow end it is done sooner. */
    NOT_SO_LATE
  }

  /**
   * An answer.
   *
   * @param value starter in per cent of the flour added, or °C; the nearest possible where the time
   *     cannot be had
   * @param reach whether the wanted time can be had
   * @param window when the rise is reached with this value, hours since mixing
   */
  public record Inverse(double value, Reach reach, TimeWindow window) {}

  /**
   * Starter share with which a rise is reached after a wanted time, 0.5…60 % of the flour added.
   *
   * @param bulkHours wanted, 1…48 h
   * @param rise rise that ends bulk fermentation
   * @param formula the dough; its starter share is not used
   * @param temperature of the dough
   */
  public Inverse starterShareFor(
      double bulkHours, Rise rise, DoughFormula formula, DoughTemperature temperature) {
    checked(bulkHours);
    DoubleFunction<DoughFormula> dough = ln -> withStarter(formula, Math.exp(ln));
    Function<Double, Double> miss = ln -> hours(rise, dough.apply(ln), temperature) - bulkHours;
    Found found = solve(miss, Math.log(MOST_STARTER_PERCENT), Math.log(LEAST_STARTER_PERCENT));
    RiseForecast forecast = forecaster.forecast(dough.apply(found.at()), temperature);
    return new Inverse(Math.exp(found.at()), found.reach(), forecast.hoursToRise(rise));
  }

  /**
   * Dough temperature after mixing with which a rise is reached after a wanted time, 14…28 °C.
   *
   * @param bulkHours wanted, 1…48 h
   * @param rise rise that ends bulk fermentation
   * @param formula the dough
   * @param kept what becomes of a dough of some temperature, for example {@link
   *     DoughTemperature#steady}
   */
  public Inverse doughTemperatureFor(
      double bulkHours,
      Rise rise,
      DoughFormula formula,
      Function<Temperature, DoughTemperature> kept) {
    checked(bulkHours);
    DoubleFunction<DoughTemperature> at = c -> kept.apply(Temperature.ofCelsius(c));
    Function<Double, Double> miss = c -> hours(rise, formula, at.apply(c)) - bulkHours;
    Found found = solve(miss, WARMEST_CELSIUS, COOLEST_CELSIUS);
    RiseForecast forecast = forecaster.forecast(formula, at.apply(found.at()));
    return new Inverse(found.at(), found.reach(), forecast.hoursToRise(rise));
  }

  /**
   * Latest hour to mix so that nine doughs in ten have reached a rise at an hour.
   *
   * @param atHour when the baker shapes, on any axis
   * @param rise rise that ends bulk fermentation
   * @param formula the dough
   * @param temperature of the dough, from mixing on
   * @return hour on the same axis; empty if fewer than nine in ten ever get there
   */
  public OptionalDouble latestMixing(
      double atHour, Rise rise, DoughFormula formula, DoughTemperature temperature) {
    OptionalDouble late = forecaster.forecast(formula, temperature).hoursToRise(rise).late();
    return late.isEmpty() ? late : OptionalDouble.of(atHour - late.getAsDouble());
  }

  /**
   * What can be done when the baker must leave during a running bulk.
   *
   * @param bulk the dough, with today's readings if there are any, forecast past its greatest
   *     height: what a loaf bears is judged by it
   * @param nowHours hours since mixing
   * @param leaveHours when she must leave, hours since mixing, not before now
   * @param backHours when she is back, hours since mixing, after leaving
   * @param proof how the loaves wait when shaped: mass, form, target, temperatures and length; its
   *     cold, if it has one, may take the tub too
   * @param inTub dough in the tub, by which it cools there
   * @return the best first by {@link LeaveOption#goodShare}; none if no hours can be given
   */
  public static List<LeaveOption> leaveAt(
      RiseForecast bulk,
      double nowHours,
      double leaveHours,
      double backHours,
      Proof proof,
      Mass inTub) {
    return new LeaveOptions(bulk, nowHours, leaveHours, backHours, proof, inTub).all();
  }

  private static void checked(double bulkHours) {
    Checks.inRange("wanted bulk time", bulkHours, 1, 48, "h");
  }

  private static DoughFormula withStarter(DoughFormula formula, double percent) {
    return formula.toBuilder()
        .starterShare(StarterShare.ofAddedFlour(Share.ofPercent(percent)))
        .build();
  }

  private double hours(Rise rise, DoughFormula formula, DoughTemperature temperature) {
    return forecaster
        .typical(formula, temperature)
        .runFast(LONGEST_HOURS)
        .hoursToRise(rise)
        .orElse(2 * LONGEST_HOURS);
  }

  private record Found(double at, Reach reach) {}

  private static Found solve(Function<Double, Double> miss, double quick, double slow) {
    if (miss.apply(quick) >= 0) {
      return new Found(quick, miss.apply(quick) == 0 ? Reach.ON_TIME : Reach.NOT_SO_SOON);
    }
    if (miss.apply(slow) <= 0) {
      return new Found(slow, Reach.NOT_SO_LATE);
    }
    double low = Math.min(quick, slow);
    double high = Math.max(quick, slow);
    double at = new BrentSolver(ACCURACY).solve(MOST_EVALUATIONS, miss::apply, low, high);
    return new Found(at, Reach.ON_TIME);
  }
}
