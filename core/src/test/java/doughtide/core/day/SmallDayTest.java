package doughtide.core.day;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import doughtide.core.loaf.ShapeForecaster;
import doughtide.core.quantity.InputException;
import doughtide.core.quantity.Temperature;
import doughtide.core.thermal.TemperatureTrace;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import org.junit.jupiter.api.Test;

/** Days with one way to make each dough, which are planned in no time: a starter from the cold. */
class SmallDayTest {
  private static final BakeDay DOUGH = Weeks.small(4, 7, 22, 31, 47).build();

  private static DayAnswer plan(int hands, BakeDay... doughs) {
    return DayPlanner.plan(List.of(doughs), hands, SearchControl.none());
  }

  @Test
  void oneDoughHasPlansThatDifferTheBestFirst() {
    DayAnswer alone = plan(1, DOUGH);
    assertThat(alone.complete()).isTrue();
    assertThat(alone.obstacle()).isEmpty();
    assertThat(alone.days()).hasSizeBetween(2, 3);
    List<BakePlan> plans = alone.days().stream().map(each -> each.plans().get(0)).toList();
    for (DayPlan day : alone.days()) {
      DayPlannerTest.checkHands(day, DOUGH.bench(), 1);
      DayPlannerTest.checkOven(day);
      assertThat(day.plans()).hasSize(1);
      assertThat(day.plans().get(0).goodShare())
          .isGreaterThanOrEqualTo(DayPlanner.LEAST_GOOD_SHARE);
      assertThat(day.marginHours()).isEqualTo(day.plans().get(0).marginHours());
    }
    assertThat(plans).extracting(BakePlan::mixHour).doesNotHaveDuplicates();
    assertThat(alone.choice()).isPresent();
    BakePlan best = plans.get(0);
    double point =
        ShapeForecaster.of(
                DOUGH
                    .forecaster()
                    .withMembers(DoughCandidates.POINT_MEMBERS)
                    .keepingCurves()
                    .forecast(best.dough(), best.temperature(), 48),
                best.proof())
            .folded(best.strength())
            .point()
            .hours()
            .likely()
            .orElseThrow();
    assertThat(Math.abs(best.bulkEndHour() - best.mixHour() - point)).isLessThan(0.1);
  }

  /** Equal doughs share a search and an oven, and one person makes both. */
  @Test
  void twoDoughsKeepOutOfEachOthersWay() {
    List<Double> told = new ArrayList<>();
    DayAnswer pair =
        DayPlanner.plan(List.of(DOUGH, DOUGH), 1, SearchControl.none().withProgress(told::add));
    assertThat(told).isSortedAccordingTo(Comparator.naturalOrder()).last().isEqualTo(1.0);
    assertThat(told).allMatch(each -> each >= 0 && each <= 1).hasSizeGreaterThan(2);
    assertThat(pair.obstacle()).isEmpty();
    assertThat(pair.days()).isNotEmpty();
    DayPlan day = pair.days().get(0);
    DayPlannerTest.checkHands(day, DOUGH.bench(), 1);
    DayPlannerTest.checkOven(day);
    assertThat(day.plans()).hasSize(2);
    assertThat(day.hands()).isEqualTo(1);
    assertThat(Math.abs(day.plans().get(0).mixHour() - day.plans().get(1).mixHour()))
        .isGreaterThanOrEqualTo(DOUGH.mixHours() - 1e-6);
    assertThat(day.marginHours())
        .isEqualTo(Math.min(day.plans().get(0).marginHours(), day.plans().get(1).marginHours()));
    assertThat(day.plans()).allMatch(each -> each.goodShare() >= DayPlanner.LEAST_GOOD_SHARE);
    assertThat(pair.choice().orElseThrow().criterion()).isEqualTo(DayAnswer.Criterion.ALONE);
  }

  @Test
  void aDayHasOneOvenAndOneBench() {
    BakeDay otherOven = Weeks.small(5, 7, 22, 31, 47).build();
    BakeDay otherBench = Weeks.small(4, 8, 22, 31, 47).build();
    for (BakeDay other : List.of(otherOven, otherBench)) {
      assertThatThrownBy(() -> plan(1, DOUGH, other))
          .isInstanceOf(InputException.class)
          .hasMessageContaining("share one oven and the hours at the bench");
    }
    assertThatThrownBy(() -> plan(0, DOUGH)).hasMessageContaining("persons 0");
    assertThatThrownBy(() -> DayPlanner.plan(List.of(), 1, SearchControl.none()))
        .hasMessageContaining("doughs 0");
  }

  private static DayAnswer.Obstacle obstacle(int hands, BakeDay... doughs) {
    DayAnswer answer = plan(hands, doughs);
    assertThat(answer.days()).isEmpty();
    return answer.obstacle().orElseThrow();
  }

  /** No starter is ripe, nobody is there to shape, or no room in the oven for both. */
  @Test
  void whatStandsInTheWayIsTold() {
    BakeDay unfed =
        BakeDay.builder()
            .readyAt(20)
            .bench(new BenchHours(BenchHoursTest.intervals(7, 8, 10, 20)))
            .room(TemperatureTrace.steady(Temperature.ofCelsius(12)))
            .starterPercents(List.of(20.0))
            .doughCelsius(List.of(24.0))
            .build();
    assertThat(obstacle(1, unfed).reason()).isEqualTo(DayAnswer.Reason.STARTER);
    BakeDay away = Weeks.small(4, 7, 8).readyAt(30).build();
    assertThat(obstacle(1, away).reason()).isEqualTo(DayAnswer.Reason.BENCH);
  }
}
