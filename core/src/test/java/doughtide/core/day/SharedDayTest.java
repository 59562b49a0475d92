package doughtide.core.day;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import doughtide.core.dough.DoughFormula;
import doughtide.core.dough.Flour;
import doughtide.core.dough.FlourClass;
import doughtide.core.feeding.FeedAmounts;
import doughtide.core.loaf.PieceForm;
import doughtide.core.quantity.InputException;
import doughtide.core.quantity.Mass;
import doughtide.core.quantity.Share;
import doughtide.core.quantity.Temperature;
import doughtide.core.thermal.TemperatureTrace;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import org.junit.jupiter.api.Test;

class SharedDayTest {
  private static final List<Double> SHARES = List.of(5.0, 10.0, 20.0);
  private static final List<Double> TEMPERATURES = List.of(22.0, 25.0);

  /** Eight different doughs of an invented class, two loaves each. */
  private static List<BakeDay> classOfEight() {
    Flour white = FlourClass.WHITE.flour();
    Flour mixed =
        Flour.mix(
            List.of(
                new Flour.Part(white, Share.ofPercent(80)),
                new Flour.Part(FlourClass.WHOLEMEAL_WHEAT.flour(), Share.ofPercent(20))));
    List<BakeDay> doughs = new ArrayList<>();
    for (int i = 0; i < 8; i++) {
      doughs.add(
          day(36, 6, -10, -1, 7, 22, 30, 36)
              .dough(
                  DoughFormula.builder()
                      .flour(i % 2 == 0 ? white : mixed)
                      .hydration(Share.ofPercent(66 + 2 * i))
                      .build())
              .starterPercents(i < 4 ? SHARES : List.of(15.0))
              .loaves(2, Mass.ofGrams(700 + 50 * (i % 4)), PieceForm.ROUND)
              .build());
    }
    return doughs;
  }

  /** Forty loaves in five doughs for an invented stall. */
  private static List<BakeDay> stall() {
    List<BakeDay> doughs = new ArrayList<>();
    for (int i = 0; i < 5; i++) {
      doughs.add(
          day(32, 8, -8, -2, 12, 23, 26, 32)
              .dough(DoughFormula.builder().hydration(Share.ofPercent(66 + 2 * i)).build())
              .loaves(8, Mass.ofGrams(850), PieceForm.ROUND)
              .build());
    }
    return doughs;
  }

  private static BakeDay.Builder day(double ready, int capacity, double... edges) {
    List<BenchInterval> bench = new ArrayList<>();
    for (int i = 0; i < edges.length; i += 2) {
      bench.add(new BenchInterval(edges[i], edges[i + 1]));
    }
    return BakeDay.builder()
        .readyAt(ready)
        .bench(new BenchHours(bench))
        .kitchen(TemperatureTrace.steady(Temperature.ofCelsius(21)))
        .fridge(Temperature.ofCelsius(4))
        .oven(Oven.usual().withLoaves(capacity))
        .starterPercents(SHARES)
        .doughCelsius(TEMPERATURES);
  }

  @Test
  void eightDoughsOfAClassFitAndReplay() {
    check(classOfEight(), 2);
  }

  @Test
  void fortyLoavesOfAStallFitAndReplay() {
    check(stall(), 2);
  }

  @Test
  void threeEqualDoughsOfADayWorkerTakeTurns() {
    List<BenchInterval> bench =
        List.of(new BenchInterval(-7, -1.5), new BenchInterval(7, 22), new BenchInterval(31, 44));
    BakeDay day = Weeks.dayWorker().bench(new BenchHours(bench)).readyAt(43).build();
    check(List.of(day, day, day), 1);
  }

  @Test
  void loavesOfSeveralDoughsGoIntoTheOvenTogetherAndOneFeedingServesSeveral() {
    SharedAnswer answer = SharedDay.plan(classOfEight(), 2, SearchProgress.none());

    assertThat(answer.loads()).anyMatch(load -> load.portions().size() > 1);
    SharedStep shared =
        answer.steps().stream()
            .filter(each -> each.step().kind() == BakeStep.Kind.FEED && each.doughs().size() > 1)
            .findFirst()
            .orElseThrow();
    FeedAmounts amounts = answer.feedAmounts(shared);
    double used =
        shared.doughs().stream()
            .mapToDouble(each -> answer.plans().get(each).ingredients().starterGrams())
            .sum();
    assertThat(amounts.starterGrams() + amounts.flourGrams() + amounts.waterGrams())
        .isGreaterThan(used);
    assertThat(SharedDay.plan(classOfEight(), 2, SearchProgress.none()).steps())
        .isEqualTo(answer.steps());
  }

  @Test
  void aDayThatIsTooShortIsSaidWithWhatMakesItPossible() {
    BakeDay one =
        day(12, 1, -3, 11)
            .starterPercents(List.of(20.0))
            .doughCelsius(List.of(25.0))
            .loaves(4, Mass.ofGrams(850), PieceForm.ROUND)
            .build();

    SharedAnswer answer = SharedDay.plan(List.of(one, one, one), 1, SearchProgress.none());

    assertThat(answer.plans()).isEmpty();
    assertThat(answer.misfit()).isPresent();
  }

  @Test
  void otherOvensOrOtherHoursAtTheBenchAreRefused() {
    List<BakeDay> doughs = new ArrayList<>(stall());
    doughs.set(0, doughs.get(0).toBuilder().oven(Oven.usual()).build());

    assertThatThrownBy(() -> SharedDay.plan(doughs, 1, SearchProgress.none()))
        .isInstanceOf(InputException.class)
        .hasMessageContaining("share one oven");
  }

  private static void check(List<BakeDay> doughs, int hands) {
    SharedAnswer answer = SharedDay.plan(doughs, hands, SearchProgress.none());

    assertThat(answer.misfit()).isEmpty();
    assertThat(answer.plans()).hasSameSizeAs(doughs);
    checkHands(answer, doughs.get(0).bench(), hands);
    checkOven(answer, doughs);
    for (int i = 0; i < doughs.size(); i++) {
      BakePlan plan = answer.plans().get(i);
      assertThat(plan.day()).isSameAs(doughs.get(i));
      assertThat(plan.goodShare()).as("dough %s", i).isGreaterThanOrEqualTo(0.5);
      BakeDayPlannerTest.checkReplay("dough " + i, plan);
    }
  }

  private static void checkHands(SharedAnswer answer, BenchHours bench, int hands) {
    Map<Integer, Double> free = new TreeMap<>();
    for (SharedStep each : answer.steps()) {
      BakeStep step = each.step();
      if (step.kind().handsOn()) {
        assertThat(bench.contains(step.fromHour(), step.toHour())).as("%s", each).isTrue();
      }
      if (step.toHour() > step.fromHour()) {
        assertThat(each.person()).as("%s", each).isBetween(0, hands - 1);
        assertThat(step.fromHour())
            .as("%s", each)
            .isGreaterThanOrEqualTo(free.getOrDefault(each.person(), -100.0) - 1e-6);
        free.put(each.person(), step.toHour());
      }
    }
  }

  private static void checkOven(SharedAnswer answer, List<BakeDay> doughs) {
    Oven oven = doughs.get(0).oven();
    double before = Double.NEGATIVE_INFINITY;
    int[] baked = new int[doughs.size()];
    for (OvenLoad load : answer.loads()) {
      assertThat(load.loaves()).isLessThanOrEqualTo(oven.loaves());
      assertThat(load.fromHour()).isGreaterThanOrEqualTo(before - 1e-6);
      before = load.toHour();
      for (OvenLoad.Portion portion : load.portions()) {
        baked[portion.dough()] += portion.loaves();
        BakePlan plan = answer.plans().get(portion.dough());
        double in = plan.ovenHour() + (portion.batch() - 1) * (oven.bakeHours() + Work.LOAD_HOURS);
        assertThat(load.fromHour()).isCloseTo(in, within(1e-3));
      }
      boolean heated =
          answer.steps().stream()
              .anyMatch(
                  each ->
                      each.step().kind() == BakeStep.Kind.PREHEAT
                          && each.step().fromHour()
                              <= load.fromHour() - oven.preheatHours() + 1e-6);
      assertThat(heated).as("%s", load).isTrue();
    }
    for (int i = 0; i < baked.length; i++) {
      assertThat(baked[i]).as("dough %s", i).isEqualTo(doughs.get(i).loaves());
    }
  }
}
