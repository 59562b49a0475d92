package doughtide.core.day;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import doughtide.core.day.again.RestPlanner;
import doughtide.core.day.again.Slipped;
import doughtide.core.feeding.FeedChoice;
import doughtide.core.feeding.FeedRatio;
import doughtide.core.loaf.PieceForm;
import doughtide.core.quantity.InputException;
import doughtide.core.quantity.Mass;
import doughtide.core.quantity.Share;
import doughtide.core.quantity.Temperature;
import doughtide.core.thermal.TemperatureTrace;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import org.junit.jupiter.api.Test;

/** The rest of one dough that is mixed: what is said of it holds in a replay written apart. */
class RestMarginsTest {
  private static final FeedChoice FEED =
      new FeedChoice(3, 8, FeedRatio.oneTo(1, Share.ofPercent(100)), 4, 6);

  /** Mixed at 8:00. */
  private static final BakeRoute IN_ROOM = BakeRoute.inRoom(20, 26, 8);

  private static BakeDay.Builder day(double ready, double... edges) {
    return BakeDay.builder()
        .readyAt(ready)
        .bench(new BenchHours(BenchHoursTest.intervals(edges)))
        .room(TemperatureTrace.steady(Temperature.ofCelsius(23)))
        .loaves(2, Mass.ofGrams(850), PieceForm.ROUND);
  }

  private static Slipped mixed(
      BakeRoute route, double now, ProofKind proof, double proofHours, double oven) {
    return new Slipped(
        route,
        FEED,
        now,
        OptionalDouble.empty(),
        OptionalDouble.empty(),
        OptionalDouble.empty(),
        OptionalDouble.empty(),
        4,
        proof,
        proofHours,
        oven,
        List.of());
  }

  private static BakePlan rest(BakeDay day, Slipped dough) {
    return RestPlanner.plan(
            List.of(new RestPlanner.Dough("", day, Optional.of(dough), Optional.empty())),
            1,
            dough.nowHour(),
            found -> new InputException("test", "no plan"))
        .plans()
        .get(0);
  }

  private static void check(BakePlan plan, StepMargin.Limit shaped, StepMargin.Limit baked) {
    assertThat(plan.margins())
        .extracting(StepMargin::kind)
        .containsExactly(BakeStep.Kind.SHAPE, BakeStep.Kind.BAKE);
    assertThat(plan.margins()).extracting(StepMargin::limit).containsExactly(shaped, baked);
    MarginsTest.check("the rest", plan);
  }

  /** Shaped too late it would not be in its basket before the oven. */
  @Test
  void aLoafInTheRoom() {
    BakePlan plan = rest(day(22, 7, 22).build(), mixed(IN_ROOM, 9, ProofKind.ROOM, 2, 16));

    assertThat(plan.proofKind()).isEqualTo(ProofKind.ROOM);
    assertThat(plan.ovenHour()).isBetween(14.0, 16.0);

    check(plan, StepMargin.Limit.NEXT_STEP, StepMargin.Limit.DOUGH);
  }

  /** Four loaves in two batches: the last must be right as well. */
  @Test
  void twoBatchesFromTheRoom() {
    BakeDay day = day(22, 7, 22).loaves(4, Mass.ofGrams(850), PieceForm.ROUND).build();
    BakePlan plan = rest(day, mixed(IN_ROOM, 9, ProofKind.ROOM, 2, 15));

    assertThat(plan.day().oven().batches(4)).isEqualTo(2);

    check(plan, StepMargin.Limit.NEXT_STEP, StepMargin.Limit.DOUGH);
  }

  /** Whoever shapes it goes a quarter of an hour later and is back after an hour. */
  @Test
  void aLoafOfAShortMorning() {
    BakeDay day = day(22, 7, 13.2, 14.5, 22).build();
    BakePlan plan = rest(day, mixed(IN_ROOM, 9, ProofKind.ROOM, 2, 16));

    assertThat(plan.basketHour()).isLessThanOrEqualTo(13.2);
    check(plan, StepMargin.Limit.BENCH, StepMargin.Limit.DOUGH);
  }

  @Test
  void aLoafInTheCold() {
    BakeDay day = day(36, 7, 22, 30, 36).cold(Temperature.ofCelsius(4)).build();
    BakePlan plan = rest(day, mixed(BakeRoute.inRoom(20, 26, 12), 13, ProofKind.COLD, 14, 31));

    assertThat(plan.proofKind()).isEqualTo(ProofKind.COLD);
    assertThat(plan.ovenHour()).isCloseTo(31, within(1e-9));
    check(plan, StepMargin.Limit.DOUGH, StepMargin.Limit.NEXT_STEP);
  }

  /** It is shaped when its tub has been out of the cold for a quarter of an hour or longer. */
  @Test
  void aTubInTheCold() {
    BakeDay day = day(43, 16, 22, 30, 33, 40, 46).cold(Temperature.ofCelsius(4)).build();
    BakeRoute tub = new BakeRoute(20, 28, 17, OptionalDouble.of(21.5), OptionalDouble.of(30));
    BakePlan plan = rest(day, mixed(tub, 21.8, ProofKind.ROOM, 1, 31.9));

    assertThat(plan.bulkEndHour()).isBetween(30.25, 32.0);
    assertThat(plan.ovenHour()).isBetween(plan.basketHour(), 33.0);
    check(plan, StepMargin.Limit.NEXT_STEP, StepMargin.Limit.BENCH);
  }

  /**
   * By 15:00 hardly one in fifty comes right; kept in the cold until the morning more would, but a
   * dough that is past its point is not kept for that.
   */
  @Test
  void anOverdueDoughIsNotKeptInTheColdForMoreOfItsDoughs() {
    BakeDay day =
        day(39, 15, 19, 29, 40)
            .room(TemperatureTrace.steady(Temperature.ofCelsius(25)))
            .cold(Temperature.ofCelsius(4))
            .build();
    BakePlan plan = rest(day, mixed(BakeRoute.inRoom(20, 27, 7), 15, ProofKind.ROOM, 2, 18));

    assertThat(plan.bulkEndHour()).isBetween(15.0 - 1e-6, 16.0);
    assertThat(plan.bulkColdFrom()).isEmpty();
    assertThat(plan.overdueJar()).isPresent();
    assertThat(plan.margins()).extracting(StepMargin::kind).contains(BakeStep.Kind.BAKE);
  }
}
