package doughtide.core.feeding;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import doughtide.core.dough.Starter;
import doughtide.core.dough.StarterCondition;
import doughtide.core.forecast.RiseForecaster;
import doughtide.core.forecast.TimeWindow;
import doughtide.core.forecast.Warning;
import doughtide.core.quantity.InputException;
import doughtide.core.quantity.Mass;
import doughtide.core.quantity.Temperature;
import doughtide.core.rise.DoughTemperature;
import doughtide.core.thermal.TemperatureTrace;
import java.util.List;
import org.junit.jupiter.api.Test;

class FeedingPlannerTest {
  private static final FeedingPlanner PLANNER =
      FeedingPlanner.with(RiseForecaster.standard().withMembers(64));
  private static final TemperatureTrace ROOM = room(22);

  static TemperatureTrace room(double celsius) {
    return TemperatureTrace.steady(Temperature.ofCelsius(celsius));
  }

  private static FeedingForecast forecast(double celsius) {
    return PLANNER.forecast(
        Feeding.of(new FeedRatio(1, 5, 5)),
        DoughTemperature.steady(Temperature.ofCelsius(celsius)));
  }

  @Test
  void ripeThenFallingThenFallen() {
    FeedingForecast forecast = forecast(22);
    double ripe = forecast.ripe().likely().orElseThrow();
    double falling = forecast.falling().likely().orElseThrow();
    double fallen = forecast.fallen().likely().orElseThrow();

    assertThat(forecast.ripe().early().orElseThrow()).isLessThan(ripe);
    assertThat(ripe).isLessThan(falling);
    assertThat(falling).isLessThan(fallen);
    assertThat(forecast.readyHours().orElseThrow()).isEqualTo((ripe + falling) / 2);
    assertThat(forecast.phaseAt(ripe - 0.1)).isEqualTo(StarterPhase.YOUNG);
    assertThat(forecast.phaseAt(ripe + 0.1)).isEqualTo(StarterPhase.RIPE);
    assertThat(forecast.phaseAt(falling + 0.1)).isEqualTo(StarterPhase.LATE);
    assertThat(forecast.phaseAt(fallen + 0.1)).isEqualTo(StarterPhase.PAST_BEST);
  }

  @Test
  void ripeTimeIsThatOfEachMember() {
    TimeWindow ripeFor = forecast(22).ripeFor();

    assertThat(ripeFor.likely().orElseThrow()).isBetween(0.2, 6.0);
    assertThat(ripeFor.early().orElseThrow()).isLessThan(ripeFor.late().orElseThrow());
  }

  @Test
  void phasesShareTheMembers() {
    FeedingForecast forecast = forecast(22);
    double sum = 0;
    for (StarterPhase phase : StarterPhase.values()) {
      sum += forecast.shareIn(phase, 9);
    }

    assertThat(sum).isEqualTo(1, within(1e-12));
    assertThat(forecast.shareIn(StarterPhase.RIPE, 0)).isZero();
    assertThat(forecast.shareIn(StarterPhase.YOUNG, 0)).isEqualTo(1);
  }

  @Test
  void heightIsAMultipleOfTheFedHeight() {
    Heights heights = forecast(22).heights().orElseThrow();

    assertThat(heights.low()).isBetween(1.2, heights.likely());
    assertThat(heights.likely()).isBetween(1.5, 6.0);
    assertThat(heights.high()).isGreaterThan(heights.likely());
  }

  @Test
  void tooWarmGivesNoHoursButAWarning() {
    FeedingForecast forecast = forecast(40);

    assertThat(forecast.ripe()).isEqualTo(TimeWindow.NEVER);
    assertThat(forecast.heights()).isEmpty();
    assertThat(forecast.shareIn(StarterPhase.RIPE, 5)).isZero();
    assertThat(forecast.warnings()).extracting(Warning::kind).contains(Warning.Kind.OUTSIDE_GROWTH);
  }

  @Test
  void firstFeedFromTheColdTakesLongest() {
    Starter cold = Starter.ripe().in(StarterCondition.FROM_COLD);
    RefreshmentPlan plan =
        PLANNER.refresh(Feeding.of(new FeedRatio(1, 2, 2)).withStarter(cold), 3, ROOM);
    List<RefreshmentPlan.Step> steps = plan.steps();

    double first = steps.get(0).forecast().readyHours().orElseThrow();
    double second = steps.get(1).forecast().readyHours().orElseThrow();
    assertThat(steps).hasSize(3);
    assertThat(first).isGreaterThan(second * 1.2);
    assertThat(steps.get(1).fromHours()).isEqualTo(first);
    assertThat(steps.get(2).forecast().feeding().starter().condition())
        .isEqualTo(StarterCondition.RIPE);
    assertThat(plan.readyHours().orElseThrow())
        .isEqualTo(steps.get(2).fromHours() + steps.get(2).forecast().readyHours().orElseThrow());
  }

  @Test
  void laterRefreshmentMeetsTheLaterTemperature() {
    TemperatureTrace warmThenCool = ROOM.then(9, room(15));
    Feeding feeding = Feeding.of(new FeedRatio(1, 5, 5));
    RefreshmentPlan plan = PLANNER.refresh(feeding, 2, warmThenCool);

    assertThat(plan.steps().get(1).forecast().readyHours().orElseThrow())
        .isGreaterThan(plan.steps().get(0).forecast().readyHours().orElseThrow() * 1.5);
  }

  @Test
  void stopsWhenAStepIsNeverRipe() {
    RefreshmentPlan plan = PLANNER.refresh(Feeding.of(new FeedRatio(1, 50, 50)), 2, room(1));

    assertThat(plan.steps()).hasSize(1);
    assertThat(plan.readyHours()).isEmpty();
  }

  @Test
  void earlierFeedsMakeWhatTheNextOneTakes() {
    RefreshmentPlan plan = PLANNER.refresh(Feeding.of(new FeedRatio(1, 2, 2)), 3, ROOM);
    List<FeedAmounts> amounts = plan.amounts(Mass.ofGrams(1000), Mass.ofGrams(50));

    assertThat(amounts).hasSize(3);
    assertThat(amounts.get(2).totalGrams()).isEqualTo(1050, within(1e-9));
    assertThat(amounts.get(1).totalGrams()).isEqualTo(210, within(1e-9));
    assertThat(amounts.get(0).totalGrams()).isEqualTo(42, within(1e-9));
    assertThat(plan.amounts(Mass.ofGrams(100)).get(0).starterGrams()).isEqualTo(5);
  }

  @Test
  void findsTheRatioAndKeepsTheHydrationOfTheFeed() {
    RatioAnswer answer = PLANNER.ratioFor(9.5, Feeding.of(new FeedRatio(1, 10, 8)), 1, ROOM);

    assertThat(answer.reach()).isEqualTo(RatioAnswer.Reach.ON_TIME);
    assertThat(answer.plan().readyHours().orElseThrow()).isEqualTo(9.5, within(0.01));
    assertThat(answer.ratio().waterPerFlour()).isEqualTo(0.8, within(1e-12));
  }

  @Test
  void saysTheNearestWhereTheHourCannotBeMet() {
    Feeding like = Feeding.of(new FeedRatio(1, 1, 1));
    RatioAnswer soon = PLANNER.ratioFor(2, like, 1, ROOM);
    RatioAnswer late = PLANNER.ratioFor(48, like, 1, ROOM);

    assertThat(soon.reach()).isEqualTo(RatioAnswer.Reach.NOT_SO_SOON);
    assertThat(soon.ratio().flour()).isEqualTo(FeedingPlanner.LEAST_FLOUR_PARTS);
    assertThat(soon.plan().readyHours().orElseThrow()).isGreaterThan(2);
    assertThat(late.reach()).isEqualTo(RatioAnswer.Reach.NOT_SO_LATE);
    assertThat(late.ratio().flour()).isEqualTo(FeedingPlanner.MOST_FLOUR_PARTS);
    assertThat(late.plan().readyHours().orElseThrow()).isLessThan(48);
  }

  @Test
  void refusesARatioWhereNothingGrows() {
    Feeding like = Feeding.of(new FeedRatio(1, 1, 1));

    assertThatThrownBy(() -> PLANNER.ratioFor(8, like, 1, room(40)))
        .isInstanceOf(InputException.class)
        .hasMessageContaining("40 °C")
        .hasMessageContaining("no hours are given");
    assertThatThrownBy(() -> PLANNER.ratioFor(Double.NaN, like, 1, ROOM))
        .isInstanceOf(InputException.class);
    assertThatThrownBy(() -> PLANNER.refresh(like, 0, ROOM)).isInstanceOf(InputException.class);
  }

  private static double readyAt(double celsius) {
    return FEW.refresh(FIVE, 1, room(celsius)).readyHours().orElseThrow();
  }

  private static final FeedingPlanner FEW =
      FeedingPlanner.with(RiseForecaster.standard().withMembers(8));
  private static final Feeding FIVE = Feeding.of(new FeedRatio(1, 5, 5));

  /** The nearest whole degree at which it is ready, and one nearer is not. */
  @Test
  void aWarmerOrCoolerPlaceMeetsTheHour() {
    double ready = readyAt(22.5);
    int warmer = FEW.celsiusFor(ready - 1.5, FIVE, 1, 22.5).orElseThrow();
    int cooler = FEW.celsiusFor(ready + 2, FIVE, 1, 22.5).orElseThrow();

    assertThat(warmer).isGreaterThan(23);
    assertThat(readyAt(warmer)).isLessThanOrEqualTo(ready - 1.5);
    assertThat(readyAt(warmer - 1)).isGreaterThan(ready - 1.5);
    assertThat(cooler).isLessThan(22);
    assertThat(readyAt(cooler)).isGreaterThanOrEqualTo(ready + 2);
    assertThat(readyAt(cooler + 1)).isLessThan(ready + 2);
    assertThat(FEW.celsiusFor(ready - 0.01, FIVE, 1, 22.5)).hasValue(23);
    assertThat(FEW.celsiusFor(ready + 0.01, FIVE, 1, 22.5)).hasValue(22);
  }

  /** From 4 °C on, this as well; where the yeast is quickest no warmer place helps. */
  @Test
  void wherePlaceAloneDoesNotMeetTheHourNoneIsGiven() {
    assertThat(FEW.celsiusFor(0.6, FIVE, 1, 30.5)).isEmpty();
    assertThat(FEW.celsiusFor(readyAt(5) + 0.5, FIVE, 1, 5.5)).hasValue(4);
    assertThat(FEW.celsiusFor(3000, FIVE, 1, 6)).isEmpty();
  }

  /** A jar is followed until its slowest doughs have fallen, and not for days in the warmth. */
  @Test
  void aFeedIsFollowedUntilItHasFallen() {
    for (double celsius : new double[] {16, 22, 30}) {
      FeedingForecast forecast = forecast(celsius);
      assertThat(forecast.fallen().reachedShare()).isGreaterThan(0.9);
      assertThat(forecast.rise().hours())
          .isBetween(
              1.3 * forecast.fallen().likely().orElseThrow(),
              4 * forecast.fallen().likely().orElseThrow());
    }
  }
}
