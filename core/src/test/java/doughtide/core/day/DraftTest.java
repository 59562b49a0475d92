package doughtide.core.day;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import doughtide.core.day.BakeStep.Kind;
import doughtide.core.feeding.FeedChoice;
import doughtide.core.feeding.FeedRatio;
import doughtide.core.loaf.PieceForm;
import doughtide.core.loaf.Proof;
import doughtide.core.loaf.StrengthPlan;
import doughtide.core.quantity.Mass;
import doughtide.core.quantity.Rise;
import doughtide.core.quantity.Share;
import doughtide.core.quantity.Temperature;
import java.util.List;
import java.util.Locale;
import java.util.OptionalDouble;
import org.junit.jupiter.api.Test;

/**
 * A dough by the clock: fed at 5:00, mixed at 10:00 after half an hour of autolyse, three folds, in
 * its baskets at 15:00; three loaves in an oven for two.
 */
class DraftTest {
  private static final Mass PIECE = Mass.ofGrams(850);
  private static final BakeDay DAY =
      BakeDay.builder()
          .readyAt(36)
          .bench(new BenchHours(List.of(new BenchInterval(-12, 40))))
          .cold(Temperature.ofCelsius(4))
          .loaves(3, PIECE, PieceForm.ROUND)
          .build();
  private static final double REST = 0.5;
  private static final FeedRatio EQUAL = FeedRatio.oneTo(1, Share.ofPercent(100));
  private static final BakeRoute ROUTE = BakeRoute.inRoom(20, 24, 10);
  private static final StrengthPlan THREE_FOLDS =
      new StrengthPlan(0.5, 3, 2, 0.5, OptionalDouble.empty());
  private static final Draft ROOM = draft(ROUTE, ProofKind.ROOM, 5, 17);
  private static final Draft COLD = draft(ROUTE, ProofKind.COLD, 5, 31);

  private static Draft draft(BakeRoute route, ProofKind proof, double shaped, double oven) {
    return new Draft(
        route, new FeedChoice(5, 10, EQUAL, 4, 6), THREE_FOLDS, proof, shaped, oven, 0.5, 0.2);
  }

  /** For example {@code FOLD 2 11:00-11:05}. */
  private static String told(BakeStep step) {
    return step.kind() + " " + step.number() + " " + clock(step.fromHour(), step.toHour());
  }

  private static String clock(double from, double to) {
    long begin = Math.round(from * 60);
    long end = Math.round(to * 60);
    return String.format(
        Locale.ROOT, "%d:%02d-%d:%02d", begin / 60, begin % 60, end / 60, end % 60);
  }

  private static List<String> told(List<BakeStep> steps) {
    return steps.stream().map(DraftTest::told).toList();
  }

  @Test
  void everyStepOfADayWithAProofInTheRoom() {
    assertThat(told(ROOM.steps(DAY)))
        .containsExactly(
            "FEED 0 5:00-5:05",
            "AUTOLYSE 0 9:20-9:30",
            "MIX 0 10:00-10:15",
            "FOLD 1 10:30-10:35",
            "FOLD 2 11:00-11:05",
            "FOLD 3 11:30-11:35",
            "SHAPE 0 14:30-15:00",
            "PREHEAT 0 16:15-16:17",
            "BAKE 1 17:00-17:05",
            "COOL 1 17:50-17:50",
            "BAKE 2 17:50-17:55",
            "COOL 2 18:40-18:45",
            "READY 0 20:10-20:10");
  }

  @Test
  void afterANightInTheCold() {
    assertThat(told(COLD.steps(DAY)))
        .contains("LOAVES_INTO_COLD 0 15:00-15:05", "PREHEAT 0 30:15-30:17", "READY 0 34:10-34:10");
  }

  @Test
  void aTubInTheColdIsCarriedThereAndBack() {
    Draft tub = draft(ROUTE.partlyCold(12, 20), ProofKind.ROOM, 11, 23);
    assertThat(told(tub.steps(DAY)))
        .contains("BULK_INTO_COLD 0 12:00-12:05", "BULK_OUT_OF_COLD 0 20:00-20:05")
        .doesNotContain("LOAVES_INTO_COLD 0 21:00-21:05");
  }

  @Test
  void whatNeedsNoFeedingOrAutolyseHasNone() {
    BakeDay keeps = DAY.toBuilder().starterInCold(24).build();
    BakeDay fed = DAY.toBuilder().fed(5, EQUAL).build();

    assertThat(told(ROOM.steps(keeps))).doesNotContain("FEED 0 5:00-5:05").hasSize(12);
    assertThat(told(ROOM.steps(fed))).doesNotContain("FEED 0 5:00-5:05").hasSize(12);
    BakeDay one = DAY.toBuilder().loaves(2, PIECE, PieceForm.ROUND).build();
    assertThat(told(ROOM.steps(one))).contains("BAKE 0 17:00-17:05", "COOL 0 17:50-17:55");
  }

  /** Shaping takes from 14:30 to 15:00, and nobody leaves it for the oven. */
  @Test
  void theOvenIsSwitchedOnBeforeOrAfterShaping() {
    assertThat(preheated(15.2)).isEqualTo("PREHEAT 0 14:27-14:29");
    assertThat(preheated(15.24)).isEqualTo("PREHEAT 0 14:28-14:30");
    assertThat(preheated(15.5)).isEqualTo("PREHEAT 0 14:28-14:30");
    assertThat(preheated(15.7)).isEqualTo("PREHEAT 0 14:28-14:30");
    assertThat(preheated(15.75)).isEqualTo("PREHEAT 0 15:00-15:02");
  }

  private static String preheated(double ovenHour) {
    return Draft.afterBulk(DAY, ProofKind.ROOM, 15, ovenHour).stream()
        .filter(step -> step.kind() == Kind.PREHEAT)
        .map(DraftTest::told)
        .findFirst()
        .orElseThrow();
  }

  @Test
  void itsLoavesWaitWhereTheDraftSays() {
    Temperature room = Temperature.ofCelsius(21);
    assertThat(ROOM.proof(DAY)).isEqualTo(DAY.ofItsLoaves(Proof.inRoom(room, 2)));
    assertThat(COLD.proof(DAY))
        .isEqualTo(DAY.ofItsLoaves(Proof.inColdUntil(Temperature.ofCelsius(4), 21)));
  }

  /** 36 minutes of bulk more are seven times five minutes; the proof keeps its length. */
  @Test
  void shapedAtAnotherHour() {
    Draft later = ROOM.shapedAt(5.1, new Rise(0.6), REST);
    assertThat(later.basketHour()).isCloseTo(15 + 35 / 60.0, within(1e-9));
    assertThat(later.ovenHour()).isCloseTo(17 + 35 / 60.0, within(1e-9));
    assertThat(later.shapeRise()).isEqualTo(0.6);
    assertThat(later.strength().folds()).isEqualTo(3);
    assertThat(COLD.shapedAt(5.1, new Rise(0.6), REST).ovenHour()).isEqualTo(31);
  }

  /** Folds at 0:30, 1:00 and 1:30 after mixing, five minutes each; two must be. */
  @Test
  void foldsEndBeforeShapingButForThoseItNeeds() {
    assertThat(ROOM.shapedAt(1.6, new Rise(0.2), REST).strength().folds()).isEqualTo(3);
    assertThat(ROOM.shapedAt(1.5, new Rise(0.2), REST).strength().folds()).isEqualTo(2);
    assertThat(ROOM.shapedAt(0.5, new Rise(0.2), REST).strength().folds()).isEqualTo(2);
    assertThat(draft(ROUTE, ProofKind.ROOM, 2.05, 17).foldsTooLate(REST)).isTrue();
    assertThat(draft(ROUTE, ProofKind.ROOM, 2.09, 17).foldsTooLate(REST)).isFalse();
    StrengthPlan none = new StrengthPlan(0, 0, 0, 0.5, OptionalDouble.empty());
    Draft unfolded = new Draft(ROUTE, ROOM.feed(), none, ProofKind.ROOM, 0.55, 17, 0.5, 0.2);
    assertThat(unfolded.foldsTooLate(REST)).isFalse();
  }

  /** A quarter of an hour after the tub is out, at 20:15. */
  @Test
  void aTubIsNotShapedBeforeItIsOutOfTheCold() {
    BakeRoute cold = ROUTE.partlyCold(12, 20);
    assertThat(draft(cold, ProofKind.ROOM, 10.7, 23).isShapedTooSoon(REST)).isTrue();
    assertThat(draft(cold, ProofKind.ROOM, 10.75, 23).isShapedTooSoon(REST)).isFalse();
    assertThat(draft(ROUTE, ProofKind.ROOM, 1, 23).isShapedTooSoon(REST)).isFalse();
    assertThat(cold.earliestShapeHours()).isEqualTo(10.25);
    assertThat(ROUTE.earliestShapeHours()).isEqualTo(1);
  }

  @Test
  void movedTheTubInTheColdKeepsItsClock() {
    Draft moved = draft(ROUTE.partlyCold(12, 20), ProofKind.ROOM, 11, 23).movedBy(0.25, 23.5);
    assertThat(moved.mixHour()).isEqualTo(10.25);
    assertThat(moved.route().coldFrom()).hasValue(12);
    assertThat(moved.basketHour()).isEqualTo(21.25);
    assertThat(moved.ovenHour()).isEqualTo(23.5);
    assertThat(moved.ovenHours()).isEqualTo(13.25);
    assertThat(ROOM.movedBy(0, 18).route()).isEqualTo(ROUTE);
  }

  @Test
  void mixedAtZeroTheTubMovesWithIt() {
    BakeRoute zero = ROUTE.partlyCold(12.00001, 20).mixedAtZero();
    assertThat(zero.mixHour()).isZero();
    assertThat(zero.coldFrom()).hasValue(2);
    assertThat(zero.coldTo()).hasValue(10);
    assertThat(ROUTE.mixedAtZero().coldFrom()).isEmpty();
  }

  @Test
  void aTubStaysInTheColdForFiveToTwentyHours() {
    assertThat(BakeRoute.mayStayInCold(22, 27)).isFalse();
    assertThat(BakeRoute.mayStayInCold(22, 27.1)).isTrue();
    assertThat(BakeRoute.mayStayInCold(22, 41.9)).isTrue();
    assertThat(BakeRoute.mayStayInCold(22, 42)).isFalse();
  }

  @Test
  void twoThingsAtOnceOverlap() {
    BakeStep mix = new BakeStep(Kind.MIX, 10, 10.25, 0);
    assertThat(Draft.overlap(List.of(mix, new BakeStep(Kind.FOLD, 10.2, 10.3, 1)))).isTrue();
    assertThat(Draft.overlap(List.of(mix, new BakeStep(Kind.FOLD, 10.25, 10.3, 1)))).isFalse();
    assertThat(Draft.overlap(List.of(mix, new BakeStep(Kind.READY, 10.2, 10.2, 0)))).isFalse();
  }

  /** One load is put down to cool as the next goes in, at whatever hour. */
  @Test
  void twoLoadsFollowEachOtherAtEveryHour() {
    for (int i = 12 * 12; i < 36 * 12; i++) {
      List<BakeStep> steps = Draft.afterBulk(DAY, ProofKind.ROOM, 10, i / 12.0);
      assertThat(steps).filteredOn(each -> each.kind() == Kind.BAKE).hasSize(2);
      assertThat(Draft.overlap(steps)).as("baked at %s", i / 12.0).isFalse();
    }
  }

  /** Two loads of 50 minutes. */
  @Test
  void theOvenIsBusyForAllItsLoads() {
    assertThat(Draft.ovenBusyHours(DAY)).isCloseTo(100 / 60.0, within(1e-9));
  }
}
