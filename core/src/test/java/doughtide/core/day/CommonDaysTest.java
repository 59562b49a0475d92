package doughtide.core.day;

import static org.assertj.core.api.Assertions.assertThat;

import doughtide.core.dough.DoughFormula;
import doughtide.core.dough.StarterCondition;
import doughtide.core.feeding.FeedChoice;
import doughtide.core.forecast.RiseForecaster;
import doughtide.core.quantity.Share;
import doughtide.core.quantity.Temperature;
import doughtide.core.rise.Unknowns;
import doughtide.core.thermal.TemperatureTrace;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** The days that most bakers have, at 21 °C; hour 0 is midnight before the first day. */
class CommonDaysTest {
  private static final double[] WORKER = {6.5, 8, 17.5, 22.5};

  private static BakeDay.Builder day(double ready, double... edges) {
    List<BenchInterval> bench = new ArrayList<>();
    for (int i = 0; i < edges.length; i += 2) {
      bench.add(new BenchInterval(edges[i], edges[i + 1]));
    }
    return BakeDay.builder()
        .readyAt(ready)
        .bench(new BenchHours(bench))
        .cold(Temperature.ofCelsius(4))
        .plans(1);
  }

  private static double[] daily(double... edges) {
    double[] all = new double[4 * edges.length];
    for (int i = 0; i < all.length; i++) {
      all[i] = edges[i % edges.length] + 24 * (i / edges.length - 2);
    }
    return all;
  }

  private static DayPlan planned(BakeDay... doughs) {
    DayAnswer answer = DayPlanner.plan(List.of(doughs), 2, SearchControl.none());
    assertThat(answer.obstacle()).isEmpty();
    DayPlan plan = answer.days().get(0);
    for (BakePlan dough : plan.plans()) {
      assertThat(dough.goodShare()).isGreaterThanOrEqualTo(DayPlanner.LEAST_GOOD_SHARE);
      DayPlannerTest.checkReplay(dough.toString(), dough, false);
    }
    return plan;
  }

  /** From one evening to the next, with a day of work between. */
  @Test
  void breadOfAWorkerForTheEvening() {
    BakePlan plan = planned(day(46, daily(WORKER)).build()).plans().get(0);

    assertThat(plan.ovenHour()).as("baked in the second evening").isGreaterThan(41.5);
    assertThat(plan.proofHours()).isLessThanOrEqualTo(DraftSearch.LONGEST_COLD_HOURS);
  }

  /** Where the morning is too short for a bake there is a change that makes one. */
  @ParameterizedTest
  @ValueSource(doubles = {32, 34, 36})
  void breadOfAWorkerForTheMorning(double ready) {
    BakeDay day = day(ready, daily(WORKER)).build();
    DayAnswer answer = DayPlanner.plan(List.of(day), 1, SearchControl.none());
    Optional<DayPlan> told =
        answer.obstacle().map(obstacle -> obstacle.remedy().orElseThrow().day());
    BakePlan plan = told.orElseGet(() -> answer.days().get(0)).plans().get(0);

    assertThat(plan.goodShare()).isGreaterThanOrEqualTo(DayPlanner.LEAST_GOOD_SHARE);
    DayPlannerTest.checkReplay("morning " + ready, plan, false);
    if (ready == 36) {
      // The change that is told makes a day that has a plan by its own search.
      assertThat(told).isPresent();
      planned(plan.day());
    }
  }

  /** Nobody can feed a starter for six students who mix on Saturday morning: it is brought. */
  @Test
  void aClassOfSixMixesWithAStarterFromTheCold() {
    List<BakeDay> doughs = new ArrayList<>();
    for (int i = 0; i < 6; i++) {
      doughs.add(
          day(42, 18, 22, 32, 41)
              .dough(DoughFormula.builder().hydration(Share.ofPercent(66 + 2 * i)).build())
              .oven(Oven.usual().withLoaves(6))
              .starterInCold(24)
              .build());
    }

    DayPlan plan = planned(doughs.toArray(BakeDay[]::new));

    assertThat(plan.steps()).noneMatch(each -> each.step().kind() == BakeStep.Kind.FEED);
    assertThat(plan.plans())
        .allSatisfy(
            each ->
                assertThat(each.dough().starter().condition())
                    .isEqualTo(StarterCondition.FROM_COLD));
  }

  /** It mixes between 18:00 and 21:30 and goes on at home in the morning. */
  @Test
  void anEveningClassTakesTheDoughHome() {
    BakeDay day = day(36, 18, 21.5, 31, 36.5).starterInCold(12).build();
    BakePlan plan = planned(day).plans().get(0);

    assertThat(plan.mixHour()).isBetween(18.0, 21.25);
    assertThat(plan.ovenHour()).isBetween(31.0, 34.0);
  }

  /**
   * At the bench from 07:00 to 22:00, bread at noon: a dough left overnight in the room passes its
   * mark while the baker sleeps. The night in the cold is before it, and is not baked at the last
   * minute: an oven hour that left 5 minutes is moved until another step is as tight.
   */
  @Test
  void aNightInTheColdIsBeforeABulkThatNobodySees() {
    BakePlan plan = planned(day(36, daily(7, 22)).build()).plans().get(0);

    assertThat(plan.proofKind()).isEqualTo(ProofKind.COLD);
    assertThat(plan.marginHours()).isGreaterThanOrEqualTo(0.25);
    assertThat(PlanWorth.ageHours(plan.day(), plan.draft())).isBetween(0.25, 1.5);
    assertThat(plan.jarAtBenchShare()).isGreaterThan(0.6);
    assertThat(plan.goodShare()).isGreaterThan(0.25);
  }

  /** A dough that stands overnight in a cool room. */
  @Test
  void overnightInACoolRoom() {
    BakeDay day =
        day(41, -6, -1, 7, 23, 30.5, 42)
            .room(TemperatureTrace.steady(Temperature.ofCelsius(16)))
            .starterPercents(List.of(8.0, 12.0, 16.0))
            .doughCelsius(List.of(16.0, 18.0, 20.0))
            .build();
    BakePlan plan = planned(day).plans().get(0);

    assertThat(plan.doughTemperature().celsius()).isLessThanOrEqualTo(20);
  }

  /**
   * From 17:30 to 23:30 every day, with a starter of which nothing is known: one part of it to
   * thirty or more of flour before bed, where it is cool to ten or more, is ripe, or a little past
   * its best, when the baker comes home, and the tub or the loaves wait in the cold until the
   * evening after. Half of the starters that the belief holds possible are in that time.
   */
  @ParameterizedTest
  @CsvSource({"18, 10", "21, 30", "24, 30"})
  void whoHasEveningsOnlyBakesInTheThird(double celsius, double leastParts) {
    BakeDay day =
        day(47.5, daily(17.5, 23.5))
            .room(TemperatureTrace.steady(Temperature.ofCelsius(celsius)))
            .build();
    BakePlan plan = planned(day).plans().get(0);

    assertThat(plan.ovenHour()).isGreaterThan(41.5);
    FeedChoice feed = plan.draft().feed();
    assertThat(feed.ageHours()).isBetween(18.0, 24.0);
    assertThat(feed.ratio().flourPerStarter()).isGreaterThanOrEqualTo(leastParts);
    List<Unknowns> members = day.forecaster().withMembers(64).ensemble().members();
    long inTime =
        new DayModel(day)
            .ripeTimes().members(feed, members).stream()
                .filter(each -> feed.ageHours() >= each.ripe())
                .filter(each -> feed.ageHours() <= each.fallen())
                .count();
    assertThat(inTime).isGreaterThan(64 * 2 / 5);
  }

  /** Where a usual feed is ripe in time no thin one is taken. */
  @Test
  void whoIsThereInTheMorningFeedsAsUsual() {
    BakePlan plan = planned(day(46, daily(WORKER)).build()).plans().get(0);

    assertThat(plan.draft().feed().ratio().flourPerStarter()).isLessThanOrEqualTo(20);
  }

  /**
   * Of unknown doughs hardly one in ten that stands overnight and through the day comes right; of a
   * starter that has been read, from the cold, it does.
   */
  @Test
  void whoKnowsTheStarterBakesInTheEveningAfter() {
    BakeDay day =
        day(47.5, daily(17.5, 23.5))
            .forecaster(RiseForecaster.standard().with(Weeks.learned()))
            .starterInCold(24)
            .build();
    BakePlan plan = planned(day).plans().get(0);

    assertThat(plan.mixHour()).isBetween(17.5, 23.25);
    assertThat(plan.proofKind()).isEqualTo(ProofKind.ROOM);
  }

  @Test
  void whoHasShortEveningsOnlyIsToldWhatWouldHelp() {
    DayAnswer answer =
        DayPlanner.plan(List.of(day(44, daily(18, 20)).build()), 1, SearchControl.none());

    DayAnswer.Remedy remedy = answer.obstacle().orElseThrow().remedy().orElseThrow();
    assertThat(remedy.day().plans().get(0).goodShare())
        .isGreaterThanOrEqualTo(DayPlanner.LEAST_GOOD_SHARE);
    assertThat(remedy.adjustments()).hasSizeBetween(1, 2);
  }
}
