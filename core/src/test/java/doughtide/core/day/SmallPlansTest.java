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
import java.util.Optional;
import java.util.SortedMap;
import java.util.TreeMap;
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
      assertThat(plan(day).choice().orElseThrow().criterion())
          .isEqualTo(three.choice().orElseThrow().criterion());
    }
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
  }

  /** Baked earlier together, loaves from the cold would have hardly more room. */
  @Test
  void loavesOfSeveralDoughsAreBakedInGoodTime() {
    int possible = 0;
    for (int oven : new int[] {4, 6}) {
      List<BakeDay> doughs =
          Stream.of(small(oven, 2, 7, 20, 28, 40), small(oven, 4, 7, 20, 28, 40))
              .map(day -> day.toBuilder().readyAt(36).build())
              .toList();
      DayPlan day = DayPlanner.plan(doughs, 1, PLANS_ALONE).days().get(0);
      List<DoughCandidates> own = doughs.stream().map(SmallPlansTest::candidates).toList();
      assertThat(day.plans()).allMatch(each -> each.proofKind() == ProofKind.COLD);
      for (double by : new double[] {0.25, 0.5, 1}) {
        SortedMap<Integer, Draft> earlier = new TreeMap<>();
        for (int i = 0; i < 2; i++) {
          Draft draft = day.plans().get(i).draft();
          earlier.put(i, draft.movedBy(0, draft.ovenHour() - by));
        }
        boolean fits =
            earlier.keySet().stream()
                .allMatch(
                    i ->
                        own.get(i).fits(earlier.get(i), others(doughs, earlier, i))
                            && own.get(i).isGood(earlier.get(i)));
        if (fits) {
          possible++;
          double margin =
              earlier.keySet().stream()
                  .mapToDouble(i -> own.get(i).marginHours(earlier.get(i)))
                  .min()
                  .orElseThrow();
          assertThat(margin).isLessThanOrEqualTo(day.marginHours() + 1.0 / 24 + 1e-9);
        }
      }
    }
    assertThat(possible).isPositive();
  }

  private static DoughCandidates candidates(BakeDay day) {
    return DoughCandidates.of(new DayModel(day), day, 0.5, false, SearchControl.none());
  }

  private static OtherDoughs others(
      List<BakeDay> doughs, SortedMap<Integer, Draft> placed, int number) {
    SortedMap<Integer, Draft> others = new TreeMap<>(placed);
    others.remove(number);
    return new OtherDoughs(doughs, number, others, 1, Taken.NOTHING, Optional.empty());
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
