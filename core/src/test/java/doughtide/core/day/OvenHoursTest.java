package doughtide.core.day;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import doughtide.core.loaf.PieceForm;
import doughtide.core.quantity.Mass;
import java.util.List;
import org.junit.jupiter.api.Test;

/**
 * Bread for hour 36: two loaves fit, are loaded in five minutes, bake 45 and cool 90, so that the
 * first must be in at 33:40. The oven is switched on in two minutes and hot 45 minutes later.
 */
class OvenHoursTest {
  private static final double LAST = 36 - 1.5 - 50.0 / 60;

  private static BakeDay day(int loaves, double... edges) {
    return BakeDay.builder()
        .readyAt(36)
        .bench(new BenchHours(BenchHoursTest.intervals(edges)))
        .loaves(loaves, Mass.ofGrams(850), PieceForm.ROUND)
        .build();
  }

  private static double[] hours(int loaves, double... edges) {
    return OvenHours.of(day(loaves, edges));
  }

  /** From 30:50 in quarters to 33:35. */
  @Test
  void theFirstAMiddleAndTheLastHourOfEveryStay() {
    assertThat(hours(2, 30, 40))
        .containsExactly(
            new double[] {30 + 50 / 60.0, 32 + 20 / 60.0, 33 + 35 / 60.0}, within(1e-9));
    assertThat(hours(2, 22, 24, 30, 32))
        .containsExactly(
            new double[] {22 + 50 / 60.0, 23 + 5 / 60.0, 30 + 50 / 60.0, 31 + 5 / 60.0},
            within(1e-9));
  }

  /** Out of the oven and unloaded before the baker leaves: in 55 minutes before. */
  @Test
  void whatIsInMustComeOutAgain() {
    assertThat(hours(2, 30, 31.75)).containsExactly(new double[] {30 + 50 / 60.0}, within(1e-9));
    assertThat(hours(2, 30, 31.7)).as("none fits").contains(new double[] {LAST}, within(1e-9));
    assertThat(hours(4, 30, 33))
        .hasSize(2)
        .endsWith(new double[] {30 + 50 / 60.0 + 0.25}, within(1e-9));
  }

  @Test
  void breadOfMoreThanTwelveHoursIsNotPlanned() {
    assertThat(hours(2, 18, 24)).startsWith(new double[] {21 + 50 / 60.0}, within(1e-9));
    assertThat(hours(2, 10, 20)).containsExactly(new double[] {LAST}, within(1e-9));
  }

  @Test
  void whereNothingFitsTheLastHourAndTheFirstOfEveryStayAreLookedAt() {
    assertThat(hours(2, 30, 31, 35, 36))
        .containsExactly(new double[] {30 + 50 / 60.0, LAST}, within(1e-9));
    assertThat(hours(2, 10, 10.5, 30, 31)).hasSize(2);
  }

  /** Five loads of 50 minutes take 4:10. */
  @Test
  void theOvenHasRoomForTheLoadsThatFitBetweenTheHoursAtTheBench() {
    assertThat(OvenRoom.isEnough(List.of(day(10, 30, 34.2)))).isTrue();
    assertThat(OvenRoom.isEnough(List.of(day(10, 30, 34.1)))).isFalse();
    assertThat(OvenRoom.isEnough(List.of(day(10, 20, 22, 30, 32.6)))).isTrue();
    assertThat(OvenRoom.isEnough(List.of(day(10, 20, 21.6, 30, 32.6)))).isFalse();
    assertThat(OvenRoom.isEnough(List.of(day(6, 30, 34.2), day(6, 30, 34.2)))).isFalse();
    assertThat(OvenRoom.isEnough(List.of(day(6, 30, 35), day(4, 30, 35)))).isTrue();
  }

  /** Bread for 36 is out at 34:30, of ten loaves the first goes in twelve hours before 30:20. */
  @Test
  void onlyTheHoursBeforeTheBreadIsWantedCount() {
    assertThat(OvenRoom.isEnough(List.of(day(10, 30.3, 40)))).isTrue();
    assertThat(OvenRoom.isEnough(List.of(day(10, 30.4, 40)))).isFalse();
    assertThat(OvenRoom.isEnough(List.of(day(10, 10, 22.6)))).isTrue();
    assertThat(OvenRoom.isEnough(List.of(day(10, 10, 22.4)))).isFalse();
    BakeDay late = day(2, 30, 40).toBuilder().readyAt(40).build();
    assertThat(OvenRoom.isEnough(List.of(day(10, 30.4, 40), late))).isTrue();
  }

  /** Five loads without a pause and five minutes to unload, 4:15; one bakes while nobody is in. */
  @Test
  void allLoadsOfADoughAreBakedInOneStay() {
    assertThat(OvenRoom.hasPlaceFor(day(10, 30, 34.3))).isTrue();
    assertThat(OvenRoom.hasPlaceFor(day(10, 30, 34.2))).isFalse();
    assertThat(OvenRoom.hasPlaceFor(day(10, 20, 22, 30, 32.6))).isFalse();
    assertThat(OvenRoom.hasPlaceFor(day(10, 30, 32, 32.7, 34.4))).isTrue();
    assertThat(OvenRoom.hasPlaceFor(day(10, 30, 32, 32.8, 34.4))).isFalse();
  }

  @Test
  void itsLoadsAreBakedInTimeAndNotTooLongBefore() {
    assertThat(OvenRoom.hasPlaceFor(day(10, 30.3, 40))).isTrue();
    assertThat(OvenRoom.hasPlaceFor(day(10, 30.4, 40))).isFalse();
    assertThat(OvenRoom.hasPlaceFor(day(2, 10, 22.6))).isTrue();
    assertThat(OvenRoom.hasPlaceFor(day(2, 10, 22.5))).isFalse();
  }

  @Test
  void theLongestDelayIsTheLastOfTheGridThatIsGood() {
    assertThat(StepMargin.longest(1, late -> late < 0.45)).isCloseTo(5 / 12.0, within(1e-9));
    assertThat(StepMargin.longest(1, late -> true)).isCloseTo(11 / 12.0, within(1e-9));
    assertThat(StepMargin.longest(1, late -> false)).isZero();
    assertThat(StepMargin.longest(0.52, late -> true)).isCloseTo(0.5, within(1e-9));
    assertThat(StepMargin.longest(0.5, late -> true)).isCloseTo(5 / 12.0, within(1e-9));
    assertThat(StepMargin.longest(6, 0.5, late -> late < 4)).isGreaterThanOrEqualTo(0.5);
    assertThat(StepMargin.longest(6, 0.5, late -> late < 0.3)).isCloseTo(0.25, within(1e-9));
  }
}
