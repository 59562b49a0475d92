package doughtide.core.day;

import static org.assertj.core.api.Assertions.assertThat;

import doughtide.core.dough.DoughFormula;
import doughtide.core.quantity.Share;
import doughtide.core.quantity.Temperature;
import java.util.List;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;

/** Days without a plan, each with the change that is known to make one. */
class SmallestChangeTest {
  private static DayAnswer.Obstacle obstacle(int hands, BakeDay... doughs) {
    DayAnswer answer = DayPlanner.plan(List.of(doughs), hands, SearchControl.none());
    assertThat(answer.days()).isEmpty();
    return answer.obstacle().orElseThrow();
  }

  private static boolean isPossible(int hands, BakeDay... doughs) {
    SearchControl plansAlone = SearchControl.none().withoutChange();
    return !DayPlanner.plan(List.of(doughs), hands, plansAlone).days().isEmpty();
  }

  private static BakeDay longer(BakeDay day, double hours) {
    List<BenchInterval> longer =
        day.bench().intervals().stream()
            .map(at -> new BenchInterval(at.fromHour(), at.toHour() + hours))
            .toList();
    return day.toBuilder().bench(new BenchHours(longer)).build();
  }

  private static BakeDay[] ovens(BakeDay[] doughs, int loaves) {
    return Stream.of(doughs)
        .map(dough -> dough.toBuilder().oven(dough.oven().withLoaves(loaves)).build())
        .toArray(BakeDay[]::new);
  }

  /** The value depends on the model of the dough; that it is the least that helps does not. */
  @Test
  void whoIsHardlyEverAtTheBenchMustStayLongerEveryTimeByTheLeastThatHelps() {
    BakeDay day = Weeks.hardlyEver().build();
    DayAnswer.Obstacle obstacle = obstacle(1, day);

    assertThat(obstacle.reason()).isEqualTo(DayAnswer.Reason.BENCH);
    DayAnswer.Remedy remedy = obstacle.remedy().orElseThrow();
    assertThat(remedy.adjustments()).hasSize(1);
    Adjustment change = remedy.adjustments().get(0);
    assertThat(change.kind()).isEqualTo(Adjustment.Kind.EVERY_TIME_LONGER);
    assertThat(change.atHour()).isEqualTo(-40.5);
    assertThat(change.dough()).isEqualTo(Adjustment.EVERY_DOUGH);
    BakeDay longer = longer(day, change.value());
    assertThat(remedy.day().plans().get(0).day().bench()).isEqualTo(longer.bench());
    assertThat(isPossible(1, longer)).isTrue();
    double less = change.value() > 2 ? 2 : change.value() - 0.5;
    assertThat(isPossible(1, longer(day, less))).isFalse();
  }

  @Test
  void whoAsksForPlansAloneIsToldNoChange() {
    DayAnswer answer =
        DayPlanner.plan(
            List.of(Weeks.hardlyEver().build()), 1, SearchControl.none().withoutChange());

    assertThat(answer.complete()).isTrue();
    assertThat(answer.obstacle().orElseThrow().remedy()).isEmpty();
  }

  @Test
  void whereNoSingleChangeHelpsTwoAreSaid() {
    DayAnswer.Remedy remedy = obstacle(1, Weeks.neverInTheHeat().build()).remedy().orElseThrow();

    assertThat(remedy.adjustments())
        .extracting(Adjustment::kind)
        .containsExactly(Adjustment.Kind.EVERY_TIME_LONGER, Adjustment.Kind.COLD);
    assertThat(remedy.adjustments().get(0).value()).isBetween(0.5, 3.0);
    assertThat(remedy.adjustments().get(1).value()).isEqualTo(4);
    assertThat(remedy.day().plans().get(0).goodShare())
        .isGreaterThanOrEqualTo(DayPlanner.LEAST_GOOD_SHARE);
  }

  /** Twenty batches of fifty minutes are more than the hours at the bench; a larger oven helps. */
  @Test
  void fortyLoavesByTwosNeedALargerOven() {
    BakeDay[] stall = Weeks.stall().toArray(BakeDay[]::new);
    BakeDay[] byTwos =
        Weeks.stall().stream()
            .map(dough -> dough.toBuilder().oven(Oven.usual()).build())
            .toArray(BakeDay[]::new);

    DayAnswer.Obstacle obstacle = obstacle(2, byTwos);
    assertThat(obstacle.reason()).isEqualTo(DayAnswer.Reason.OTHER_DOUGHS);
    Adjustment change = obstacle.remedy().orElseThrow().adjustments().get(0);
    assertThat(change.kind()).isEqualTo(Adjustment.Kind.OVEN_CAPACITY);
    int loaves = (int) change.value();
    assertThat(isPossible(2, ovens(stall, loaves))).isTrue();
    assertThat(isPossible(2, ovens(stall, loaves - 2))).isFalse();
  }

  /**
   * Only from 8 to 17 on Saturday: nobody can feed for it, and nobody has mixed for the evening.
   */
  private static BakeDay[] saturdayOnly(int doughs) {
    return IntStream.range(0, doughs)
        .mapToObj(
            i ->
                BakeDay.builder()
                    .readyAt(41)
                    .bench(new BenchHours(List.of(new BenchInterval(32, 41))))
                    .cold(Temperature.ofCelsius(4))
                    .oven(Oven.usual().withLoaves(6))
                    .dough(DoughFormula.builder().hydration(Share.ofPercent(66 + i)).build())
                    .plans(1)
                    .build())
        .toArray(BakeDay[]::new);
  }

  private static BakeDay[] withTheEveningBefore(BakeDay[] doughs) {
    BenchHours bench =
        new BenchHours(List.of(new BenchInterval(18, 22), new BenchInterval(32, 41)));
    return Stream.of(doughs)
        .map(dough -> dough.toBuilder().bench(bench).starterInCold(24).build())
        .toArray(BakeDay[]::new);
  }

  @Test
  void aClassOnSaturdayOnlyNeedsTheEveningBefore() {
    DayAnswer.Obstacle obstacle = obstacle(3, saturdayOnly(4));

    assertThat(obstacle.reason()).isEqualTo(DayAnswer.Reason.STARTER);
    DayAnswer.Remedy remedy = obstacle.remedy().orElseThrow();
    assertThat(remedy.adjustments())
        .containsExactly(
            new Adjustment(Adjustment.Kind.EVENING_BEFORE, 4, 18, Adjustment.EVERY_DOUGH));
    assertThat(remedy.day().plans())
        .hasSize(4)
        .allMatch(each -> each.goodShare() >= DayPlanner.LEAST_GOOD_SHARE);
  }

  /** At a quarter past seven the rest of the evening is left, at ten nothing of it. */
  @Test
  void noHourIsAskedForThatHasPassed() {
    SearchControl evening = SearchControl.none().changingFrom(19.25);
    SearchControl night = SearchControl.none().changingFrom(22);
    DayAnswer left = DayPlanner.plan(List.of(saturdayOnly(2)), 3, evening);
    DayAnswer gone = DayPlanner.plan(List.of(saturdayOnly(2)), 3, night);

    assertThat(left.obstacle().orElseThrow().remedy().orElseThrow().adjustments())
        .containsExactly(
            new Adjustment(Adjustment.Kind.EVENING_BEFORE, 2.5, 19.5, Adjustment.EVERY_DOUGH));
    assertThat(gone.obstacle().orElseThrow().remedy().stream())
        .flatExtracting(DayAnswer.Remedy::adjustments)
        .extracting(Adjustment::kind)
        .doesNotContain(Adjustment.Kind.EVENING_BEFORE, Adjustment.Kind.BENCH_EARLIER);
  }

  /** Eight doughs are more than one person can do, too; each of the three changes is needed. */
  @Test
  @Tag("long")
  void whereNoTwoChangesHelpSeveralAreSaidOfWhichNoneCanBeLeftOut() {
    BakeDay[] doughs = saturdayOnly(8);
    DayAnswer.Remedy remedy = obstacle(1, doughs).remedy().orElseThrow();

    assertThat(remedy.adjustments())
        .extracting(Adjustment::kind)
        .containsExactly(
            Adjustment.Kind.EVENING_BEFORE, Adjustment.Kind.STARTER_IN_COLD, Adjustment.Kind.HANDS);
    int hands = (int) remedy.adjustments().get(2).value();
    assertThat(isPossible(hands, withTheEveningBefore(doughs))).isTrue();
    assertThat(isPossible(hands - 1, withTheEveningBefore(doughs))).isFalse();
    assertThat(isPossible(hands, doughs)).isFalse();
  }
}
