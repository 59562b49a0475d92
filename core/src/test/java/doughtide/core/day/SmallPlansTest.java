package doughtide.core.day;

import static org.assertj.core.api.Assertions.assertThat;

import doughtide.core.day.DayAnswer.Reason;
import doughtide.core.forecast.RiseForecaster;
import doughtide.core.loaf.PieceForm;
import doughtide.core.quantity.Mass;
import java.util.ArrayList;
import java.util.Collections;
import java.util.Comparator;
import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;

/** Small days of several doughs, weighed by few doughs of the belief. */
class SmallPlansTest {
  private static final RiseForecaster FEW = RiseForecaster.standard().withMembers(8);
  private static final SearchControl PLANS_ALONE = SearchControl.none().withoutChange();

  private static BakeDay small(int oven, int loaves, double... edges) {
    return Weeks.small(oven, edges)
        .loaves(loaves, Mass.ofGrams(850), PieceForm.ROUND)
        .forecaster(FEW)
        .plans(1)
        .build();
  }

  private static BakeDay small(int loaves) {
    return small(4, loaves, 7, 22, 31, 47);
  }

  private static DayAnswer plan(BakeDay... doughs) {
    return DayPlanner.plan(List.of(doughs), 1, PLANS_ALONE);
  }

  /** However many are shown, the same comes first. */
  @Test
  void theFirstPlanDoesNotHangOnHowManyAreShown() {
    for (BakeDay day : List.of(small(2), small(4, 2, 8, 21, 30, 46))) {
      DayPlan one = plan(day).days().get(0);
      DayAnswer three = plan(day.toBuilder().plans(3).build());
      assertThat(three.days()).hasSizeBetween(2, 3);
      BakePlan first = three.days().get(0).plans().get(0);
      assertThat(one.plans().get(0).mixHour()).isEqualTo(first.mixHour());
      assertThat(one.plans().get(0).ovenHour()).isEqualTo(first.ovenHour());
      assertThat(three.choice().orElseThrow().criterion()).isNotEqualTo(DayAnswer.Criterion.ALONE);
      assertThat(plan(day).choice().orElseThrow().criterion())
          .isEqualTo(three.choice().orElseThrow().criterion());
    }
  }

  /** Of several doughs no other plan is weighed: the least margin and the oldest bread are told. */
  @Test
  void aDayOfSeveralDoughsIsChosenAlone() {
    DayAnswer answer = plan(small(2), small(1));
    DayAnswer.Choice choice = answer.choice().orElseThrow();
    DayPlan day = answer.days().get(0);

    assertThat(choice.criterion()).isEqualTo(DayAnswer.Criterion.ALONE);
    assertThat(choice.value()).isEqualTo(day.marginHours());
    double oldest =
        day.plans().stream()
            .mapToDouble(each -> PlanWorth.ageHours(each.day(), each.draft()))
            .max()
            .orElseThrow();
    assertThat(choice.other()).isEqualTo(oldest).isPositive();
  }

  /** Searched to six tenths, then one dough after the other. */
  @Test
  void progressNeverGoesBack() {
    List<Double> told = Collections.synchronizedList(new ArrayList<>());
    DayPlanner.plan(
        List.of(small(2), small(1), small(3)),
        1,
        PLANS_ALONE.on(Runnable::run).withProgress(told::add));

    assertThat(told).isSortedAccordingTo(Comparator.naturalOrder()).endsWith(1.0);
    assertThat(told).contains(0.6);
    assertThat(told.stream().filter(each -> each > 0.6 && each < 1)).isNotEmpty();
    assertThat(told.stream().filter(each -> each < 0.6)).hasSize(2);
    told.clear();
    DayPlanner.plan(List.of(small(2)), 1, PLANS_ALONE.on(Runnable::run).withProgress(told::add));
    assertThat(told).isSortedAccordingTo(Comparator.naturalOrder()).endsWith(0.6, 1.0);
    assertThat(told.stream().filter(each -> each > 0 && each < 0.6)).isNotEmpty();
  }

  /**
   * Two doughs wait in the cold and are baked one after the other: where each was baked as late as
   * its own dough would choose, or kept the first plan that was found, there would be half an hour
   * of margin or none.
   */
  @Test
  void loavesOfSeveralDoughsAreBakedInGoodTime() {
    for (List<BakeDay> doughs :
        List.of(evening(4, 36, 3, 3, 10, 25, 30, 38), evening(2, 37, 1, 2, 11, 26, 29, 38))) {
      DayPlan day = DayPlanner.plan(doughs, 1, PLANS_ALONE).days().get(0);

      DayPlannerTest.checkHands(day, doughs.get(0).bench(), 1);
      DayPlannerTest.checkOven(day);
      assertThat(day.plans()).allMatch(each -> each.proofKind() == ProofKind.COLD);
      boolean three = doughs.get(0).loaves() == 3;
      assertThat(day.marginHours()).isGreaterThan(three ? 1.2 : 1.6);
    }
  }

  /** The loaves of the second are carried into the cold shortly before everybody goes. */
  @Test
  void whatLoosensTheTightestStepIsToldOfItsDough() {
    DayPlan day =
        DayPlanner.plan(evening(4, 43, 2, 4, 7, 22, 31, 47), 1, PLANS_ALONE).days().get(0);
    BakePlan tight = day.plans().get(day.tightDough());

    assertThat(tight.marginHours()).isEqualTo(day.marginHours());
    assertThat(tight.tight().limit()).isEqualTo(StepMargin.Limit.BENCH);
    assertThat(day.loosening())
        .contains(new Adjustment(Adjustment.Kind.BENCH_LONGER, 0, 0, day.tightDough()));
  }

  private static List<BakeDay> evening(
      int oven, double ready, int loaves, int others, double... edges) {
    return Stream.of(loaves, others)
        .map(number -> small(oven, number, edges).toBuilder().readyAt(ready).build())
        .toList();
  }

  private static DayAnswer.Obstacle obstacle(BakeDay... doughs) {
    DayAnswer answer = plan(doughs);
    assertThat(answer.days()).isEmpty();
    assertThat(answer.complete()).isTrue();
    return answer.obstacle().orElseThrow();
  }

  /**
   * Fourteen loaves, two at a time, are more than an evening has room for: the largest is named.
   */
  @Test
  void anOvenThatIsFullIsSaidOfTheLargestDough() {
    double[] edges = {7, 22, 40, 47};
    DayAnswer.Obstacle obstacle =
        obstacle(small(2, 4, edges), small(2, 6, edges), small(2, 4, edges));

    assertThat(obstacle.dough()).isEqualTo(1);
    assertThat(obstacle.reason()).isEqualTo(Reason.OTHER_DOUGHS);
    assertThat(obstacle.remedy()).isEmpty();
  }
}
