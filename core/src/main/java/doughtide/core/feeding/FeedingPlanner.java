package doughtide.core.feeding;

import doughtide.core.Internal;
import doughtide.core.dough.Starter;
import doughtide.core.forecast.RiseForecast;
import doughtide.core.forecast.RiseForecaster;
import doughtide.core.forecast.TemperatureWarnings;
import doughtide.core.quantity.Checks;
import doughtide.core.quantity.InputException;
import doughtide.core.quantity.Temperature;
import doughtide.core.rise.DoughTemperature;
import doughtide.core.rise.RiseCurve;
import doughtide.core.rise.RiseModel;
import doughtide.core.thermal.LaterTrace;
import doughtide.core.thermal.TemperatureTrace;
import java.util.ArrayList;
import java.util.List;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import org.apache.commons.math3.analysis.UnivariateFunction;
import org.apache.commons.math3.analysis.solvers.BrentSolver;

/**
 * Forecasts of feedings, and the ratio for a wanted hour, with the same model as the dough.
 * Immutable and thread-safe; the same input gives the same output.
 *
 * <pre>{@code
 * FeedingPlanner planner = FeedingPlanner.with(RiseForecaster.standard());
 * TemperatureTrace room = TemperatureTrace.steady(Temperature.ofCelsius(20));
 * RatioAnswer answer = planner.ratioFor(9.5, Feeding.of(new FeedRatio(1, 1, 1)), 1, room);
 * String ratio = answer.ratio().text(); // starter, flour and water
 * }</pre>
 */
@Internal
public final class FeedingPlanner {
  /** Least flour to one part of starter that {@link #ratioFor} gives (common practice). */
  public static final double LEAST_FLOUR_PARTS = 0.5;

  /**
   * Most flour to one part of starter that {@link #ratioFor} gives: less starter than this cannot
   * be weighed in a kitchen and other microbes may win (starting value).
   */
  public static final double MOST_FLOUR_PARTS = 100;

  /** Most refreshments of one plan. */
  public static final int MOST_REFRESHMENTS = 6;

  private static final int COOLEST_CELSIUS = 4;
  private static final int WARMEST_CELSIUS = 32;
  private static final double SHORTEST_HOURS = 8;
  private static final double SLOW_FALL = 1.8; // the slowest members against the typical one
  private static final double SLOW_PEAK = 2.5;
  private static final double LN_RATIO_ACCURACY = 1e-4;
  private static final int LARGEST_EVALUATIONS = 60;

  private final RiseForecaster forecaster;

  private FeedingPlanner(RiseForecaster forecaster) {
    this.forecaster = forecaster;
  }

  /** With another belief, other parameters or another number of members. */
  public static FeedingPlanner with(RiseForecaster forecaster) {
    return new FeedingPlanner(Checks.given("forecaster", forecaster));
  }

  /**
   * Forecast of one feeding until it has clearly fallen, at most ten days.
   *
   * @param feeding starter and feed
   * @param temperature of the jar's contents, from feeding on
   */
  public FeedingForecast forecast(Feeding feeding, DoughTemperature temperature) {
    return new FeedingForecast(
        feeding,
        forecaster.forecast(feeding.formula(), temperature, usefulHours(feeding, temperature)));
  }

  /**
   * Forecast of a starter that is built in stages: each begins with what the one before has left.
   *
   * @param build seed and stages
   * @throws InputException if no hours can be given at the temperature of a stage
   */
  public StagedForecast build(StagedBuild build) {
    return build(build, StagedForecast.HandOver.AS_MEANT);
  }

  /**
   * The same with stages that are handed on at other hours than meant.
   *
   * @param build seed and stages
   * @param handOver when each stage is handed on
   * @throws InputException if no hours can be given at the temperature of a stage
   */
  public StagedForecast build(StagedBuild build, StagedForecast.HandOver handOver) {
    RiseForecaster keeping = forecaster.keepingCurves();
    return StagedForecast.of(
        build,
        (feeding, stage, seeds) -> {
          DoughTemperature at = DoughTemperature.steady(stage.temperature());
          double hours = Math.max(usefulHours(feeding, at), stage.hours().orElse(0));
          RiseForecast rise = keeping.forecast(feeding.formula(), at, hours, seeds);
          if (!rise.isPossible()) {
            throw noGrowth(build.stages().indexOf(stage) + 1, rise);
          }
          return new FeedingForecast(feeding, rise);
        },
        handOver);
  }

  private static InputException noGrowth(int stage, RiseForecast rise) {
    String why = TemperatureWarnings.refusal(rise.warnings().get(0)).getMessage();
    return new InputException("stage.no-growth", "stage " + stage + ": " + why);
  }

  private double usefulHours(Feeding feeding, DoughTemperature temperature) {
    RiseCurve typical =
        forecaster.typical(feeding.formula(), temperature).runFast(RiseModel.LONGEST_HOURS);
    double peak = typical.hoursToPeak().orElse(RiseModel.LONGEST_HOURS) * SLOW_PEAK;
    double fallen = typical.hoursToFallen().orElse(RiseModel.LONGEST_HOURS) * SLOW_FALL;
    return Math.min(Math.max(Math.max(peak, fallen), SHORTEST_HOURS), RiseModel.LONGEST_HOURS);
  }

  /**
   * Several feedings with one ratio, each when the one before is in the middle of its ripe time.
   * What is ripe then goes into the next feed in ripe condition, whatever condition the first
   * starter had.
   *
   * @param first the first feeding
   * @param times number of feedings, 1…6
   * @param temperature of the jar's contents; hour 0 is the first feeding
   */
  public RefreshmentPlan refresh(Feeding first, int times, TemperatureTrace temperature) {
    Checks.inRange("number of refreshments", times, 1, MOST_REFRESHMENTS, "");
    List<RefreshmentPlan.Step> steps = new ArrayList<>();
    Starter starter = first.starter();
    double from = 0;
    for (int i = 0; i < times; i++) {
      Feeding feeding = first.withStarter(starter);
      DoughTemperature later = DoughTemperature.following(new LaterTrace(temperature, from));
      RefreshmentPlan.Step step = new RefreshmentPlan.Step(from, forecast(feeding, later));
      steps.add(step);
      OptionalDouble ready = step.readyHours();
      if (ready.isEmpty()) {
        break;
      }
      from = ready.getAsDouble();
      starter = feeding.ripened();
    }
    return new RefreshmentPlan(steps, times);
  }

  /**
   * The ratio with which a starter is ready at a wanted hour: in the middle of its likely ripe
   * time, see {@link FeedingForecast#readyHours}. Between 1 : 0.5 and 1 : 100 parts of flour; the
   * water keeps the hydration of the feed given. Found with Brent's method on the logarithm of the
   * parts of flour.
   *
   * @param readyHours hours from the first feeding to ready, 0.5…240
   * @param like starter, flour, salt, and the proportion of water to flour; its parts of starter
   *     are not used
   * @param times number of feedings, all with the same ratio, 1…6
   * @param temperature of the jar's contents; hour 0 is the first feeding
   * @throws InputException if no hours can be given at this temperature
   */
  public RatioAnswer ratioFor(
      double readyHours, Feeding like, int times, TemperatureTrace temperature) {
    Checks.inRange("hours from feeding to ready", readyHours, 0.5, RiseModel.LONGEST_HOURS, "h");
    RefreshmentPlan most = refresh(fed(like, LEAST_FLOUR_PARTS), times, temperature);
    refuseImpossible(most);
    if (ready(most) >= readyHours) {
      return new RatioAnswer(readyHours, reach(ready(most), readyHours), most);
    }
    RefreshmentPlan least = refresh(fed(like, MOST_FLOUR_PARTS), times, temperature);
    if (ready(least) <= readyHours) {
      return new RatioAnswer(readyHours, reach(ready(least), readyHours), least);
    }
    UnivariateFunction miss =
        lnParts -> ready(refresh(fed(like, Math.exp(lnParts)), times, temperature)) - readyHours;
    double lnParts =
        new BrentSolver(LN_RATIO_ACCURACY)
            .solve(
                LARGEST_EVALUATIONS, miss, Math.log(LEAST_FLOUR_PARTS), Math.log(MOST_FLOUR_PARTS));
    RefreshmentPlan found = refresh(fed(like, Math.exp(lnParts)), times, temperature);
    return new RatioAnswer(readyHours, RatioAnswer.Reach.ON_TIME, found);
  }

  /**
   * The answer in whole parts, see {@link FeedRatio#inWholeParts}, with the hours that these give.
   */
  public RatioAnswer inWholeParts(
      RatioAnswer answer, Feeding like, int times, TemperatureTrace temperature) {
    FeedRatio whole = answer.ratio().inWholeParts();
    return new RatioAnswer(
        answer.wantedHours(), answer.reach(), refresh(like.withRatio(whole), times, temperature));
  }

  /**
   * The temperature nearest to one given, in whole °C, at which a feeding is ready by a wanted hour
   * if it comes too late at the one given, or not before it if it comes too soon.
   *
   * @param readyHours hours from the first feeding to ready
   * @param feeding with its ratio
   * @param times number of feedings, 1…6
   * @param celsius temperature of the jar's contents for which it is asked
   * @return °C; empty if no temperature from 4 to 32 °C does it
   */
  public OptionalInt celsiusFor(double readyHours, Feeding feeding, int times, double celsius) {
    boolean tooLate = readyAt(celsius, feeding, times) > readyHours;
    int step = tooLate ? 1 : -1;
    int at = (int) (tooLate ? Math.floor(celsius) : Math.ceil(celsius));
    for (at += step; at >= COOLEST_CELSIUS && at <= WARMEST_CELSIUS; at += step) {
      double ready = readyAt(at, feeding, times);
      if (tooLate ? ready <= readyHours : ready >= readyHours) {
        return OptionalInt.of(at);
      }
    }
    return OptionalInt.empty();
  }

  private double readyAt(double celsius, Feeding feeding, int times) {
    TemperatureTrace steady = TemperatureTrace.steady(Temperature.ofCelsius(celsius));
    return ready(refresh(feeding, times, steady));
  }

  private static RatioAnswer.Reach reach(double possible, double wanted) {
    int order = Double.compare(possible, wanted);
    return order == 0
        ? RatioAnswer.Reach.ON_TIME
        : order > 0 ? RatioAnswer.Reach.NOT_SO_SOON : RatioAnswer.Reach.NOT_SO_LATE;
  }

  private static Feeding fed(Feeding like, double flourParts) {
    double water = flourParts * like.ratio().waterPerFlour();
    return like.withRatio(new FeedRatio(1, flourParts, water));
  }

  /** Never counts as long after every hour that can be asked for. */
  private static double ready(RefreshmentPlan plan) {
    return plan.readyHours().orElse(MOST_REFRESHMENTS * RiseModel.LONGEST_HOURS * 2);
  }

  private static void refuseImpossible(RefreshmentPlan plan) {
    FeedingForecast last = plan.last().forecast();
    if (!last.rise().isPossible()) {
      throw TemperatureWarnings.refusal(last.warnings().get(0));
    }
  }
}
