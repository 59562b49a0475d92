package doughtide.core.day;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import doughtide.core.dough.DoughFormula;
import doughtide.core.forecast.RiseForecaster;
import doughtide.core.loaf.PieceForm;
import doughtide.core.quantity.Mass;
import doughtide.core.quantity.Share;
import doughtide.core.quantity.Temperature;
import doughtide.core.thermal.TemperatureTrace;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Random;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;

/** Random days: steps never overlap, never leave the bench, and no gram is lost. */
class RandomDaysPropertyTest {
  private static final long SEED = 20261125;
  private static final int MOST_DOUGHS = 16;

  private static final int FROM = Integer.getInteger("doughtide.days.from", 0);
  private static final int TO = Integer.getInteger("doughtide.days", 1000);
  private static final SearchControl PLANS_ALONE = SearchControl.none().withoutChange();

  /** As many members of the belief as the fewest that a forecast has. */
  private static final RiseForecaster FEW = RiseForecaster.standard().withMembers(8);

  /** What is looked at of a plan does not hang on how many doughs of the belief weigh it. */
  static final RiseForecaster SOME = RiseForecaster.standard().withMembers(64);

  /** The first of the thousand, for plans alone: the changes of days without one take longest. */
  @Test
  void thirtyDays() {
    assertThat(planned(0, 30, FEW, PLANS_ALONE)).isGreaterThan(5);
  }

  /** All thousand likewise, in parts as below: some minutes. */
  @Test
  @Tag("long")
  void aThousandPlansAlone() {
    assertThat(planned(FROM, TO, FEW, PLANS_ALONE)).isGreaterThan((TO - FROM) / 10);
  }

  /** In parts: {@code -Ddoughtide.days.from=200 -Ddoughtide.days=300}. */
  @Test
  @Tag("long")
  void aThousandDays() {
    assertThat(planned(FROM, TO, SOME, SearchControl.none())).isGreaterThan((TO - FROM) / 10);
  }

  /** A day on which several changes are tried together and then each is left out. */
  @Test
  void ofSeveralChangesEachIsLeftOutInTurn() {
    assertThat(planned(202, 203, SOME, SearchControl.none())).isZero();
  }

  /** How many of the days from one to before another have a plan. */
  private static int planned(int from, int to, RiseForecaster forecaster, SearchControl control) {
    Random random = new Random(SEED);
    int planned = 0;
    List<String> findings = new ArrayList<>();
    for (int i = 0; i < to; i++) {
      List<BakeDay> doughs = doughs(random, 1 + random.nextInt(MOST_DOUGHS), forecaster);
      int hands = 1 + random.nextInt(3);
      try {
        planned += i >= from && isPlanned(doughs, hands, control) ? 1 : 0;
      } catch (AssertionError | RuntimeException e) {
        findings.add("day " + i + " of " + doughs.size() + " doughs: " + e);
      }
    }
    System.out.println("plans for " + planned + " of " + (to - from) + " days");
    assertThat(findings).isEmpty();
    return planned;
  }

  private static boolean isPlanned(List<BakeDay> doughs, int hands, SearchControl control) {
    DayAnswer answer = DayPlanner.plan(doughs, hands, control);
    assertThat(answer.days().isEmpty()).isEqualTo(answer.obstacle().isPresent());
    answer.days().forEach(RandomDaysPropertyTest::check);
    Optional<DayAnswer.Remedy> remedy = answer.obstacle().flatMap(DayAnswer.Obstacle::remedy);
    remedy.ifPresent(change -> check(change.day()));
    return !answer.days().isEmpty();
  }

  private static void check(DayPlan plan) {
    DayPlannerTest.checkHands(plan, plan.plans().get(0).day().bench(), plan.hands());
    DayPlannerTest.checkOven(plan);
    checkGrams(plan);
  }

  static void checkGrams(DayPlan plan) {
    for (BakePlan each : plan.plans()) {
      double all =
          each.ingredients().flourGrams()
              + each.ingredients().waterGrams()
              + each.ingredients().starterGrams()
              + each.ingredients().saltGrams();
      assertThat(all).isCloseTo(each.day().allDough().grams(), within(1e-6));
    }
  }

  static List<BakeDay> doughs(Random random, int number, RiseForecaster forecaster) {
    double morning = 6 + random.nextInt(4);
    List<BenchInterval> bench = new ArrayList<>();
    bench.add(new BenchInterval(-6 + random.nextInt(3), -1));
    bench.add(new BenchInterval(morning, morning + 4 + random.nextInt(12)));
    bench.add(new BenchInterval(24 + morning, 24 + morning + 6 + random.nextInt(6)));
    double kitchen = 16 + random.nextInt(15);
    Oven oven = Oven.usual().withLoaves(4 + random.nextInt(17));
    boolean cold = random.nextInt(4) > 0;
    List<BakeDay> doughs = new ArrayList<>();
    for (int i = 0; i < number; i++) {
      BakeDay.Builder day =
          BakeDay.builder()
              .readyAt(24 + morning + 5 + random.nextInt(6))
              .bench(new BenchHours(bench))
              .room(TemperatureTrace.steady(Temperature.ofCelsius(kitchen)))
              .dough(
                  DoughFormula.builder()
                      .hydration(Share.ofPercent(62 + random.nextInt(20)))
                      .build())
              .starterPercents(List.of(5.0, 10.0, 20.0))
              .doughCelsius(List.of(24.0))
              .oven(oven)
              .loaves(
                  1 + random.nextInt(1 + random.nextInt(40 / number)),
                  Mass.ofGrams(850),
                  PieceForm.ROUND)
              .forecaster(forecaster)
              .plans(1);
      if (cold) {
        day.cold(Temperature.ofCelsius(4));
      }
      doughs.add(day.build());
    }
    return doughs;
  }
}
