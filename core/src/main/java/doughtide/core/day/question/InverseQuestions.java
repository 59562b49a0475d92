package doughtide.core.day.question;

import doughtide.core.Internal;
import doughtide.core.day.question.InverseAnswer.Reach;
import doughtide.core.dough.DoughFormula;
import doughtide.core.dough.StarterShare;
import doughtide.core.forecast.RiseForecast;
import doughtide.core.forecast.RiseForecaster;
import doughtide.core.forecast.TemperatureWarnings;
import doughtide.core.forecast.TimeWindow;
import doughtide.core.loaf.Proof;
import doughtide.core.loaf.ShapeForecast;
import doughtide.core.quantity.Checks;
import doughtide.core.quantity.InputException;
import doughtide.core.quantity.Mass;
import doughtide.core.quantity.Share;
import doughtide.core.quantity.Temperature;
import doughtide.core.rise.DoughTemperature;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.function.DoubleFunction;
import java.util.function.DoubleUnaryOperator;
import java.util.function.Function;
import org.apache.commons.math3.analysis.UnivariateFunction;
import org.apache.commons.math3.analysis.solvers.AllowedSolution;
import org.apache.commons.math3.analysis.solvers.BracketingNthOrderBrentSolver;

/**
 * One question at a time, turned round: which starter share or which dough temperature gives a
 * wanted bulk time, when to mix, and what to do when the baker must leave. The answers are found on
 * the likely path and then moved until half of the ensemble, a tenth or nine tenths are in time.
 *
 * <pre>{@code
 * InverseQuestions ask = InverseQuestions.of(RiseForecaster.standard());
 * InverseAnswer share = ask.starterShareFor(8, BulkEnd.atRise(Rise.ofPercent(60)), formula, temperature);
 * double percentOfAddedFlour = share.half().value();
 * }</pre>
 */
@Internal
public final class InverseQuestions {
  /** Least starter that is answered, per cent of the flour added. */
  public static final double LEAST_STARTER_PERCENT = 0.5;

  /** Most starter that is answered, per cent of the flour added. */
  public static final double MOST_STARTER_PERCENT = 60;

  /** Coolest dough that is answered, °C. */
  public static final double COOLEST_CELSIUS = 14;

  /** Warmest dough that is answered: beyond, a warmer dough is hardly quicker, °C. */
  public static final double WARMEST_CELSIUS = 28;

  private static final double ACCURACY = 2e-4;
  private static final int MOST_EVALUATIONS = 60;
  private static final int MOST_CORRECTIONS = 3;
  private static final double IN_TIME_PART = 0.005; // of the wanted time
  private static final double JUMP_HOURS = 0.1;
  private static final int ORDER = 5;
  private static final int FEWEST_MEMBERS = 8;

  private final RiseForecaster forecaster;

  private InverseQuestions(RiseForecaster forecaster) {
    this.forecaster = forecaster;
  }

  /** With a belief and parameters. */
  public static InverseQuestions of(RiseForecaster forecaster) {
    return new InverseQuestions(forecaster);
  }

  /**
   * Starter share with which bulk fermentation ends after a wanted time, 0.5…60 % of the flour
   * added.
   *
   * @param bulkHours wanted, 1…48 h
   * @param end what ends bulk fermentation
   * @param formula the dough; its starter share is not used
   * @param temperature of the dough
   * @throws InputException if no hours can be given at this temperature
   */
  public InverseAnswer starterShareFor(
      double bulkHours, BulkEnd end, DoughFormula formula, DoughTemperature temperature) {
    checked(bulkHours);
    checkGrowth(formula, temperature);
    return new Question(
            bulkHours,
            end,
            ln -> new Dough(withStarter(formula, Math.exp(ln)), temperature),
            Math.log(MOST_STARTER_PERCENT),
            Math.log(LEAST_STARTER_PERCENT),
            Math::exp)
        .answer();
  }

  /**
   * Dough temperature after mixing with which bulk fermentation ends after a wanted time, 14…28 °C.
   *
   * @param bulkHours wanted, 1…48 h
   * @param end what ends bulk fermentation
   * @param formula the dough
   * @param kept what becomes of a dough of some temperature, for example {@link
   *     DoughTemperature#steady}
   * @throws InputException if no hours can be given for such a dough
   */
  public InverseAnswer doughTemperatureFor(
      double bulkHours,
      BulkEnd end,
      DoughFormula formula,
      Function<Temperature, DoughTemperature> kept) {
    checked(bulkHours);
    DoubleFunction<DoughTemperature> at = c -> kept.apply(Temperature.ofCelsius(c));
    checkGrowth(formula, at.apply(WARMEST_CELSIUS));
    return new Question(
            bulkHours,
            end,
            c -> new Dough(formula, at.apply(c)),
            WARMEST_CELSIUS,
            COOLEST_CELSIUS,
            DoubleUnaryOperator.identity())
        .answer();
  }

  /**
   * When to mix so that bulk fermentation ends at an hour.
   *
   * @param atHour when the baker wants to shape, on any axis
   * @param end what ends bulk fermentation
   * @param formula the dough
   * @param temperature of the dough, from mixing on
   * @throws InputException if no hours can be given at this temperature
   */
  public MixingTime mixingFor(
      double atHour, BulkEnd end, DoughFormula formula, DoughTemperature temperature) {
    checkGrowth(formula, temperature);
    RiseForecast forecast = end.printed(forecaster).forecast(formula, temperature);
    BulkEnd.Moment moment = end.in(forecast);
    TimeWindow bulk = moment.hours();
    return new MixingTime(
        new TimeWindow(
            before(atHour, bulk.late()),
            before(atHour, bulk.likely()),
            before(atHour, bulk.early()),
            bulk.reachedShare()),
        bulk,
        forecast,
        moment.rise());
  }

  /**
   * When to mix.
   *
   * @param hours on the axis of the wanted hour: mixed at the early one nine doughs in ten are in
   *     time, at the likely one half, at the late one one in ten; empty where so many never are
   * @param bulk length of bulk fermentation
   * @param forecast the dough
   * @param rise that the sample jar shows at the end of bulk fermentation
   */
  @Internal
  public record MixingTime(
      TimeWindow hours, TimeWindow bulk, RiseForecast forecast, ShapeForecast.RiseRange rise) {}

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
   * @return the best first by whole tenths of {@link LeaveOption#goodShare}, then by the likely
   *     rise nearest to the target; none if no hours can be given
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

  private static OptionalDouble before(double hour, OptionalDouble bulk) {
    return bulk.isEmpty() ? bulk : OptionalDouble.of(hour - bulk.getAsDouble());
  }

  private void checkGrowth(DoughFormula formula, DoughTemperature temperature) {
    RiseForecast few = forecaster.withMembers(FEWEST_MEMBERS).forecast(formula, temperature);
    if (!few.isPossible()) {
      throw TemperatureWarnings.refusal(few.warnings().get(0));
    }
  }

  private record Dough(DoughFormula formula, DoughTemperature temperature) {}

  private record Found(double at, Reach reach) {}

  /** One number of a dough that is not known, between a quick end and a slow end. */
  private final class Question {
    private final double bulkHours;
    private final BulkEnd end;
    private final DoubleFunction<Dough> dough;
    private final double quick;
    private final double slow;
    private final DoubleUnaryOperator value;
    private final RiseForecaster members;
    private final Map<Double, Double> likely = new HashMap<>();
    private final Map<Double, RiseForecast> forecasts = new HashMap<>();
    private final Map<Double, BulkEnd.Moment> moments = new HashMap<>();

    Question(
        double bulkHours,
        BulkEnd end,
        DoubleFunction<Dough> dough,
        double quick,
        double slow,
        DoubleUnaryOperator value) {
      this.bulkHours = bulkHours;
      this.end = end;
      this.dough = dough;
      this.quick = quick;
      this.slow = slow;
      this.value = value;
      this.members = end.printed(forecaster);
    }

    InverseAnswer answer() {
      Found first = solve(bulkHours);
      Found half = corrected(first, TimeWindow::likely).orElse(first);
      return new InverseAnswer(
          choice(half),
          corrected(half, TimeWindow::early).map(this::choice),
          corrected(half, TimeWindow::late).map(this::choice),
          forecast(half.at()),
          moment(half.at()).rise());
    }

    private InverseAnswer.Choice choice(Found found) {
      return new InverseAnswer.Choice(
          value.applyAsDouble(found.at()), found.reach(), moment(found.at()).hours());
    }

    /**
     * Moves what was found on the likely path until a part of the ensemble is in time: the likely
     * path is asked for a time that differs from the wanted one as the two did before.
     */
    private Optional<Found> corrected(Found from, Function<TimeWindow, OptionalDouble> part) {
      Found found = from;
      for (int i = 0; i < MOST_CORRECTIONS; i++) {
        OptionalDouble there = part.apply(moment(found.at()).hours());
        if (there.isEmpty()) {
          return Optional.empty();
        }
        if (Math.abs(there.getAsDouble() - bulkHours) <= IN_TIME_PART * bulkHours) {
          return Optional.of(new Found(found.at(), Reach.ON_TIME));
        }
        double before = found.at();
        found = solve(bulkHours * likelyHours(before) / there.getAsDouble());
        if (found.at() == before) {
          break;
        }
      }
      return Optional.of(found);
    }

    private double likelyHours(double at) {
      return likely.computeIfAbsent(
          at,
          x -> {
            Dough tried = dough.apply(x);
            return end.likelyHours(forecaster, tried.formula(), tried.temperature());
          });
    }

    private RiseForecast forecast(double at) {
      return forecasts.computeIfAbsent(
          at,
          x -> {
            Dough tried = dough.apply(x);
            return members.forecast(tried.formula(), tried.temperature());
          });
    }

    private BulkEnd.Moment moment(double at) {
      return moments.computeIfAbsent(at, x -> end.in(forecast(x)));
    }

    private Found solve(double hours) {
      if (likelyHours(quick) >= hours) {
        return new Found(quick, Reach.NOT_SO_SOON);
      }
      if (likelyHours(slow) <= hours) {
        return new Found(slow, Reach.NOT_SO_LATE);
      }
      UnivariateFunction miss = x -> likelyHours(x) - hours;
      double low = Math.min(quick, slow);
      double high = Math.max(quick, slow);
      AllowedSolution side = quick > slow ? AllowedSolution.RIGHT_SIDE : AllowedSolution.LEFT_SIDE;
      double at =
          new BracketingNthOrderBrentSolver(ACCURACY, ORDER)
              .solve(MOST_EVALUATIONS, miss, low, high, side);
      // Slower doughs may not get there at all: then the time jumps past the wanted one.
      Reach reach = hours - likelyHours(at) > JUMP_HOURS ? Reach.NOT_SO_LATE : Reach.ON_TIME;
      return new Found(at, reach);
    }
  }
}
