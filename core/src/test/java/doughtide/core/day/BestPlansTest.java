package doughtide.core.day;

import static org.assertj.core.api.Assertions.assertThat;

import doughtide.core.forecast.RiseForecaster;
import doughtide.core.quantity.Rise;
import java.util.List;
import java.util.Optional;
import java.util.TreeMap;
import org.junit.jupiter.api.Test;

/** Which plans of small days are told first, weighed by few doughs of the belief. */
class BestPlansTest {
  private static final RiseForecaster FEW = RiseForecaster.standard().withMembers(8);

  private static BakeDay.Builder small(int oven) {
    return Weeks.small(oven, 7, 22, 31, 47).forecaster(FEW);
  }

  private static DoughCandidates candidates(BakeDay day, boolean alone) {
    return DoughCandidates.of(new DayModel(day), day, 0.5, alone, SearchControl.none());
  }

  private static OtherDoughs none(BakeDay day) {
    return new OtherDoughs(List.of(day), 0, new TreeMap<>(), 1, Taken.NOTHING, Optional.empty());
  }

  private static boolean atPoint(DoughCandidates candidates, Draft draft) {
    double point = candidates.model().shapePoint().printed(draft).shapedHours();
    return Math.abs(point - draft.shapedHours()) <= 5.0 / 60;
  }

  /** At its shape point first, then by worth; none is baked later than is good for it. */
  @Test
  void theBestOfADoughAloneComeFirst() {
    BakeDay day = small(2).build();
    DoughCandidates candidates = candidates(day, true);
    List<Draft> best = candidates.best(none(day), 4);

    assertThat(best).hasSize(4);
    assertThat(best).allMatch(candidates::isGood);
    assertThat(best).allMatch(each -> candidates.fits(each, none(day)));
    for (int i = 1; i < best.size(); i++) {
      Draft before = best.get(i - 1);
      Draft after = best.get(i);
      boolean point = atPoint(candidates, before);
      assertThat(point || !atPoint(candidates, after)).isTrue();
      if (point == atPoint(candidates, after)) {
        assertThat(candidates.isBetter(after, before)).isFalse();
      }
      DayAnswer.Choice choice = candidates.choice(before, after);
      assertThat(choice.criterion() == DayAnswer.Criterion.POINT)
          .isEqualTo(point && !atPoint(candidates, after));
    }
    assertThat(best.stream().map(Draft::proof).distinct()).as("of both kinds").hasSize(2);
    assertThat(candidates.best(none(day), 2)).hasSize(2);
  }

  /** Shaped twenty minutes off its point a plan comes after one that is shaped at its own. */
  @Test
  void whatIsShapedOffItsPointComesAfter() {
    BakeDay day = small(2).build();
    DoughCandidates candidates = candidates(day, true);
    Draft best =
        candidates.best(none(day), 4).stream()
            .filter(each -> each.proof() == ProofKind.COLD && atPoint(candidates, each))
            .findFirst()
            .orElseThrow();
    double bulk = best.shapedHours() - day.restHours();
    for (double by : new double[] {-20.0 / 60, 20.0 / 60}) {
      Draft off = best.shapedAt(bulk + by, new Rise(best.shapeRise()), day.restHours());
      DayAnswer.Choice choice = candidates.choice(best, off);
      assertThat(choice.criterion()).isEqualTo(DayAnswer.Criterion.POINT);
      assertThat(choice.value()).isZero();
      assertThat(choice.other()).isBetween(0.25, 0.42);
      assertThat(candidates.choice(off, best).criterion()).isNotEqualTo(DayAnswer.Criterion.POINT);
    }
    assertThat(candidates.choice(best, best).criterion()).isNotEqualTo(DayAnswer.Criterion.POINT);
  }
}
