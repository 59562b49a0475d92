package doughtide.core.day;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import org.junit.jupiter.api.Test;

/** What is chosen of the drafts of one dough of 24 °C, with a starter from the cold. */
class DoughCandidatesTest {
  private static final BakeDay DAY = Weeks.small(Oven.usual().loaves(), 7, 22, 31, 47).build();

  private final DayModel model = new DayModel(DAY);
  private final DoughCandidates candidates = of(1);

  private DoughCandidates of(double gridHours) {
    return DoughCandidates.of(model, DAY, gridHours, true, SearchControl.none());
  }

  private static OtherDoughs none(BakeDay day) {
    return new OtherDoughs(List.of(day), 0, new TreeMap<>(), 1, Taken.NOTHING, Optional.empty());
  }

  /** Six at most of those that are mixed at one hour and wait in the same way. */
  @Test
  void ofAKindAFewAreKept() {
    Map<String, Integer> kinds = new HashMap<>();
    for (DraftSearch.Scored each : candidates.found().fitting()) {
      Draft draft = each.draft();
      kinds.merge(
          draft.proof() + " " + draft.mixHour() + " " + draft.route().coldFrom(), 1, Integer::sum);
    }
    int few = kinds.values().stream().mapToInt(each -> Math.min(each, 6)).sum();

    assertThat(candidates.size()).isEqualTo(few);
    assertThat(candidates.day()).isSameAs(DAY);
    assertThat(candidates.model()).isSameAs(model);
    DoughCandidates coarser = candidates.coarser(SearchControl.none());
    assertThat(coarser.found().fed()).isEqualTo(of(SmallestChange.GRID_HOURS).found().fed());
    assertThat(coarser.model()).isSameAs(model);
  }

  /** The first that is taken has its steps at the bench, and enough doughs come right. */
  @Test
  void theFirstIsGoodAndFits() {
    Draft first = candidates.first(none(DAY)).orElseThrow();

    assertThat(candidates.isGood(first)).isTrue();
    assertThat(candidates.fits(first, none(DAY))).isTrue();
    BakePlan plan = candidates.plan(first);
    assertThat(plan.goodShare()).isGreaterThanOrEqualTo(DayPlanner.LEAST_GOOD_SHARE);
    assertThat(plan.ovenHour()).isEqualTo(first.ovenHour());
    assertThat(candidates.marginHours(first)).isEqualTo(plan.marginHours());
    Draft late = first.movedBy(20, first.ovenHour() + 20);
    assertThat(candidates.fits(late, none(DAY))).isFalse();
  }

  /** Another of the same day is better or worse, not both, and told by what parts them. */
  @Test
  void oneOfTwoPlansIsBetter() {
    Draft first = candidates.first(none(DAY)).orElseThrow();
    Draft other =
        candidates.found().fitting().stream()
            .map(DraftSearch.Scored::draft)
            .filter(each -> each.proof() != first.proof())
            .filter(candidates::isGood)
            .findFirst()
            .orElseThrow();

    assertThat(candidates.isBetter(first, other)).isNotEqualTo(candidates.isBetter(other, first));
    assertThat(candidates.isBetter(first, first)).isFalse();
  }

  /** By the clock its jar shows what the printed page says. */
  @Test
  void asItIsItIsTheSameButForItsJar() {
    Draft first = candidates.first(none(DAY)).orElseThrow();
    Draft printed = candidates.asItIs(first);

    assertThat(printed.ovenHour()).isCloseTo(first.ovenHour(), within(1.0 / 12));
    assertThat(printed.shapedHours()).isCloseTo(first.shapedHours(), within(1.0 / 12));
    assertThat(printed.shapeRise())
        .isCloseTo(model.shapePoint().atClock(first).shapeRise(), within(1e-9));
    assertThat(candidates.isGood(printed)).isTrue();
  }

  /** What missed the bench by less than three hours may fit a day that is longer. */
  @Test
  void nearMissesServeAnotherDay() {
    BakeDay longer =
        DAY.toBuilder().bench(new BenchHours(BenchHoursTest.intervals(6, 24, 29, 47))).build();
    DoughCandidates near = candidates.nearMissesOn(longer, SearchControl.none());

    assertThat(near.day()).isSameAs(longer);
    assertThat(near.found().near()).isEmpty();
    assertThat(near.found().fed()).isEqualTo(candidates.found().fed());
    assertThat(near.found().fitting()).isNotEmpty();
    List<Draft> missed = candidates.found().near().stream().map(DraftSearch.Miss::draft).toList();
    assertThat(near.found().fitting()).allMatch(each -> missed.contains(each.draft()));
    assertThat(near.first(none(longer))).isPresent();
  }
}
