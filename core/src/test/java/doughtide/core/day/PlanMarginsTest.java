package doughtide.core.day;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import doughtide.core.day.BakeStep.Kind;
import doughtide.core.loaf.PieceForm;
import doughtide.core.quantity.Mass;
import doughtide.core.quantity.Temperature;
import java.util.EnumSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.function.Predicate;
import org.junit.jupiter.api.Test;

/**
 * Margins of plans of small days: in a replay that is written apart, with a step late by its
 * margin, no more doughs are spoiled than may be, and five minutes later more are, or the step
 * cannot be done.
 */
class PlanMarginsTest {
  private static final int MEMBERS = 32;
  private static final double ONE_MEMBER = 1.0 / MEMBERS;
  private static final double FIVE_MINUTES = 1.0 / 12;

  private static BakeDay.Builder small(int loaves, double ready, double... edges) {
    return Weeks.small(2, edges).loaves(loaves, Mass.ofGrams(850), PieceForm.ROUND).readyAt(ready);
  }

  private static List<BakeDay> days() {
    return List.of(
        small(2, 46, 7, 22, 31, 47).build(),
        small(4, 44, 7, 22, 31, 47).build(),
        small(4, 36, 12, 22, 30, 35).build(),
        small(2, 40, 8, 20, 30, 40).build(),
        small(4, 38, 10, 15, 17, 22, 29, 38).build(),
        small(3, 40, 9, 17, 20, 23, 31, 40).restHours(1).build(),
        fed(36, 6.5, 10, 16, 22, 30, 36).build());
  }

  /** With a starter that is fed in the evening or the morning before. */
  private static BakeDay.Builder fed(double ready, double... edges) {
    return BakeDay.builder()
        .readyAt(ready)
        .bench(new BenchHours(BenchHoursTest.intervals(edges)))
        .bulkPlace(BakeDay.BulkPlace.HELD)
        .starterPercents(List.of(20.0))
        .doughCelsius(List.of(25.0))
        .cold(Temperature.ofCelsius(4))
        .loaves(2, Mass.ofGrams(850), PieceForm.ROUND);
  }

  private static Optional<Draft> first(List<DraftSearch.Scored> drafts, Predicate<Draft> which) {
    return drafts.stream().map(DraftSearch.Scored::draft).filter(which).findFirst();
  }

  @Test
  void marginsHoldInAReplay() {
    Set<StepMargin.Limit> limits = EnumSet.noneOf(StepMargin.Limit.class);
    int checked = 0;
    for (BakeDay day : days()) {
      DayModel model = new DayModel(day);
      PlanWeigher weigher =
          new PlanWeigher(
              model,
              day,
              day.forecaster().withMembers(MEMBERS).ensemble().members(),
              SearchControl.none());
      List<DraftSearch.Scored> drafts =
          new DraftSearch(model, day).search(1, SearchControl.none()).fitting();
      for (Predicate<Draft> which :
          List.<Predicate<Draft>>of(
              each -> each.proof() == ProofKind.COLD,
              each -> each.proof() == ProofKind.ROOM && each.route().coldFrom().isEmpty(),
              each -> each.proof() == ProofKind.ROOM && each.route().coldFrom().isPresent())) {
        Optional<Draft> found =
            first(drafts, which.and(each -> weigher.isGood(each, DayPlanner.LEAST_GOOD_SHARE)));
        if (found.isPresent()) {
          PlanWeigher.Weighing weighing = weigher.weighing(found.get());
          BakePlan plan =
              new BakePlan(
                  day, found.get(), weighing.weighed(), model.temperature(found.get().route()));
          assertThat(weighing.leastMarginHours()).isEqualTo(plan.marginHours());
          assertThat(weighing.goodShare()).isEqualTo(plan.goodShare());
          assertThat(weighing.shape()).isEqualTo(plan.shapeWindow());
          check(plan);
          checked++;
          plan.margins().forEach(each -> limits.add(each.limit()));
        }
      }
    }
    assertThat(limits).hasSize(3);
    assertThat(checked).isGreaterThan(8);
  }

  private static double good(BakePlan plan, Kind kind, double late) {
    return MarginsTest.good(plan, kind, late, MEMBERS);
  }

  private static void check(BakePlan plan) {
    assertThat(plan.goodShare()).isCloseTo(good(plan, Kind.READY, 0), within(ONE_MEMBER + 1e-9));
    for (StepMargin margin : plan.margins()) {
      Kind kind = margin.kind();
      String name = plan + " " + margin;
      double least = good(plan, kind, 0) - StepMargin.SPOILED_SHARE;
      // A loaf that is followed to another hour may fall to the other side of its limit.
      double one = kind == Kind.BAKE ? ONE_MEMBER : 0;
      assertThat(MarginsTest.possible(plan, kind, margin.hours())).as(name).isTrue();
      assertThat(good(plan, kind, margin.hours()))
          .as(name)
          .isGreaterThanOrEqualTo(least - one - 1e-9);
      double later = margin.hours() + FIVE_MINUTES;
      double bench = benchSlack(plan, kind);
      if (margin.limit() == StepMargin.Limit.BENCH) {
        assertThat(bench).as(name).isCloseTo(margin.hours(), within(1e-6));
      } else {
        assertThat(bench).as(name).isGreaterThanOrEqualTo(margin.hours() - 1e-6);
      }
      if (margin.limit() == StepMargin.Limit.DOUGH) {
        assertThat(good(plan, kind, later)).as(name).isLessThan(least + one);
      } else if (margin.hours() < StepMargin.LONGEST_HOURS - 1e-9) {
        assertThat(MarginsTest.possible(plan, kind, later)).as(name).isFalse();
      }
    }
  }

  /** How much later the bench allows a step and what moves with it. */
  private static double benchSlack(BakePlan plan, Kind kind) {
    return plan.steps().stream()
        .filter(
            step ->
                step.kind() == kind
                    || kind == Kind.MIX && step.kind() == Kind.FOLD
                    || kind == Kind.BAKE && step.kind() == Kind.COOL)
        .mapToDouble(step -> plan.day().bench().slackHours(step.fromHour(), step.toHour()))
        .min()
        .orElseThrow();
  }
}
