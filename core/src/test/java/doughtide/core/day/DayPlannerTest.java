package doughtide.core.day;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import doughtide.core.feeding.FeedAmounts;
import doughtide.core.forecast.Distribution;
import doughtide.core.forecast.RiseForecast;
import doughtide.core.forecast.RiseForecaster;
import doughtide.core.forecast.TimeWindow;
import doughtide.core.loaf.PieceForm;
import doughtide.core.loaf.ShapeForecast;
import doughtide.core.loaf.ShapeForecaster;
import doughtide.core.quantity.InputException;
import doughtide.core.quantity.Mass;
import doughtide.core.quantity.Temperature;
import doughtide.core.thermal.Mixing;
import doughtide.core.thermal.WaterTemperature;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import java.util.concurrent.ConcurrentHashMap;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.atomic.AtomicInteger;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/** Days are planned once and looked at by several tests. */
class DayPlannerTest {
  private static final Map<String, DayAnswer> ANSWERS = new ConcurrentHashMap<>();

  /** For what does not hang on how many doughs of the belief weigh a plan. */
  private static final RiseForecaster FEW = RiseForecaster.standard().withMembers(8);

  /**
   * A day and who bakes it.
   *
   * @param name of the day
   * @param doughs of the day
   * @param hands how many persons work
   */
  record Day(String name, List<BakeDay> doughs, int hands) {
    DayAnswer answer() {
      return ANSWERS.computeIfAbsent(
          name, key -> DayPlanner.plan(doughs, hands, SearchControl.none()));
    }

    @Override
    public String toString() {
      return name;
    }
  }

  private static Day alone(String name, BakeDay dough) {
    return new Day(name, List.of(dough), 1);
  }

  private static final List<Day> WEEKS =
      List.of(
          alone("day worker", Weeks.dayWorker().build()),
          alone("market baker", Weeks.marketBaker().build()),
          alone("at home", Weeks.atHome().build()));
  private static final Day CLASS_OF_EIGHT = new Day("class of eight", Weeks.classOfEight(), 2);
  private static final Day STALL = new Day("stall", Weeks.stall(), 2);
  private static final Day TURNS = turns();

  private static Day turns() {
    List<BenchInterval> bench =
        List.of(new BenchInterval(-7, -1.5), new BenchInterval(7, 22), new BenchInterval(31, 44));
    BakeDay worker = Weeks.dayWorker().bench(new BenchHours(bench)).readyAt(43).plans(1).build();
    return new Day("three equal doughs take turns", List.of(worker, worker, worker), 1);
  }

  static Stream<Day> weeks() {
    return WEEKS.stream();
  }

  static Stream<Day> days() {
    return Stream.concat(WEEKS.stream(), Stream.of(CLASS_OF_EIGHT, STALL, TURNS));
  }

  @ParameterizedTest
  @MethodSource("days")
  void everyPlanKeepsTheHoursTheHandsAndTheOvenAndReplaysInTheModel(Day day) {
    DayAnswer answer = day.answer();

    assertThat(answer.obstacle()).isEmpty();
    assertThat(answer.complete()).isTrue();
    assertThat(answer.days()).hasSizeBetween(1, day.doughs().get(0).plans());
    for (DayPlan plan : answer.days()) {
      assertThat(plan.plans()).hasSameSizeAs(day.doughs());
      checkHands(plan, day.doughs().get(0).bench(), day.hands());
      checkOven(plan);
      for (int i = 0; i < plan.plans().size(); i++) {
        BakePlan dough = plan.plans().get(i);
        assertThat(dough.day()).isSameAs(day.doughs().get(i));
        assertThat(dough.goodShare()).isGreaterThanOrEqualTo(DayPlanner.LEAST_GOOD_SHARE);
        assertThat(dough.ingredients().doughGrams())
            .isCloseTo(dough.day().allDough().grams(), within(1e-6));
        checkReady(plan, i);
        checkReplay(day.name() + " dough " + i, dough, plan.plans().size() == 1);
        assertThat(MarginsTest.good(dough, BakeStep.Kind.READY, 0))
            .isCloseTo(dough.goodShare(), within(1.0 / 64));
      }
    }
  }

  private static void checkReady(DayPlan plan, int dough) {
    double ready =
        plan.steps().stream()
            .filter(each -> each.step().kind() == BakeStep.Kind.READY)
            .filter(each -> each.doughs().contains(dough))
            .mapToDouble(each -> each.step().fromHour())
            .max()
            .orElseThrow();
    assertThat(ready).isLessThanOrEqualTo(plan.plans().get(dough).day().readyHour() + 1e-6);
  }

  static void checkHands(DayPlan plan, BenchHours bench, int hands) {
    Map<Integer, Double> free = new TreeMap<>();
    for (DayStep each : plan.steps()) {
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

  static void checkOven(DayPlan plan) {
    Oven oven = plan.plans().get(0).day().oven();
    double before = Double.NEGATIVE_INFINITY;
    int[] baked = new int[plan.plans().size()];
    for (OvenLoad load : plan.loads()) {
      assertThat(load.loaves()).isLessThanOrEqualTo(oven.loaves());
      assertThat(load.fromHour()).isGreaterThanOrEqualTo(before - 1e-6);
      before = load.toHour();
      for (OvenLoad.Portion portion : load.portions()) {
        baked[portion.dough()] += portion.loaves();
        BakePlan dough = plan.plans().get(portion.dough());
        double each = oven.bakeHours() + HandsOnTime.LOAD_HOURS;
        double in = dough.ovenHour() + (portion.batch() - 1) * each;
        assertThat(load.fromHour()).isCloseTo(in, within(1e-3));
      }
      double hot = load.fromHour() - oven.preheatHours() + 1e-6;
      assertThat(plan.steps())
          .as("%s", load)
          .anyMatch(
              each -> each.step().kind() == BakeStep.Kind.PREHEAT && each.step().fromHour() <= hot);
    }
    for (int i = 0; i < baked.length; i++) {
      assertThat(baked[i]).as("dough %s", i).isEqualTo(plan.plans().get(i).day().loaves());
    }
  }

  /** By the forecaster of shape points, which the planner does not use. */
  static void checkReplay(String name, BakePlan plan, boolean alone) {
    RiseForecast bulk =
        plan.day().forecaster().withMembers(64).forecast(plan.dough(), plan.temperature(), 48);
    double bulkHours = plan.bulkEndHour() - plan.mixHour();
    RiseForecast printed =
        plan.day().forecaster().forecast(plan.dough(), plan.temperature(), bulkHours + 1);
    assertThat(printed.bandAt(bulkHours).riseLikelyPercent() / 100)
        .as("%s: rise of the likely dough when shaped", name)
        .isCloseTo(plan.shapeRise().fraction(), within(0.08));

    ShapeForecaster shaping = ShapeForecaster.of(bulk, plan.proof()).folded(plan.strength());
    TimeWindow shape =
        Distribution.of(
                shaping.forecast().bulkEndOfMembers().stream().mapToDouble(each -> each).toArray())
            .window();
    assertThat(bulkHours)
        .as("%s: shaped inside the hours at which the loaves of such doughs come out right", name)
        .isBetween(shape.early().orElseThrow(), shape.late().orElse(Double.POSITIVE_INFINITY));

    ShapeForecast.Night night = shaping.nightIfShapedAt(bulkHours).orElseThrow();
    double target = plan.day().target().percent();
    double oven = plan.ovenHour() - plan.mixHour();
    assertThat(night.ovenHours()).as("%s: oven", name).isCloseTo(oven, within(0.01));
    // In the kitchen the oven follows the jar; beside others a dough may be shaped off its point.
    if (alone && plan.proofKind() == ProofKind.COLD) {
      assertThat(night.riseAtBake().likely().orElseThrow())
          .as("%s: rise at the oven", name)
          .isBetween(0.85 * target, 1.2 * target);
    }
    assertThat(night.over().window().likely().orElse(Double.POSITIVE_INFINITY))
        .as("%s: past its best", name)
        .isGreaterThan(oven);
  }

  @Test
  void loavesOfSeveralDoughsGoIntoTheOvenTogetherAndOneFeedingServesSeveral() {
    DayPlan plan = CLASS_OF_EIGHT.answer().days().get(0);

    assertThat(plan.loads()).anyMatch(load -> load.portions().size() > 1);
    DayStep shared =
        plan.steps().stream()
            .filter(each -> each.step().kind() == BakeStep.Kind.FEED && each.doughs().size() > 1)
            .findFirst()
            .orElseThrow();
    FeedAmounts amounts = plan.feedAmounts(shared);
    double used =
        shared.doughs().stream()
            .mapToDouble(each -> plan.plans().get(each).ingredients().starterGrams())
            .sum();
    assertThat(amounts.useGrams()).isCloseTo(used, within(1e-6));
    assertThat(amounts.starterGrams() + amounts.flourGrams() + amounts.waterGrams())
        .isGreaterThan(used);
  }

  @Test
  void theSameDayGivesTheSamePlansOnAnyThreads() {
    Day day = WEEKS.get(0);
    ExecutorService one = Executors.newSingleThreadExecutor();
    try {
      DayAnswer again = DayPlanner.plan(day.doughs(), 1, SearchControl.none().on(one));

      assertThat(told(again)).isEqualTo(told(day.answer()));
    } finally {
      one.shutdown();
    }
  }

  private static List<String> told(DayAnswer answer) {
    return answer.days().stream()
        .map(day -> day.steps() + " " + day.plans().get(0).margins() + " " + day.loosening())
        .toList();
  }

  @Test
  void aStoppedSearchSaysSoAndGivesWhatItHas() {
    AtomicInteger asked = new AtomicInteger();
    Day day = WEEKS.get(0);
    DayAnswer answer =
        DayPlanner.plan(
            day.doughs(), 1, SearchControl.none().stoppingWhen(() -> asked.incrementAndGet() > 15));

    assertThat(answer.complete()).isFalse();
    assertThat(answer.days()).hasSizeLessThanOrEqualTo(3);
    answer.days().forEach(each -> checkHands(each, day.doughs().get(0).bench(), 1));
  }

  @Test
  void anInterruptEndsTheSearch() {
    Thread.currentThread().interrupt();
    try {
      DayAnswer answer =
          DayPlanner.plan(List.of(Weeks.hardlyEver().build()), 1, SearchControl.none());

      assertThat(answer.complete()).isFalse();
      assertThat(answer.days()).isEmpty();
      assertThat(answer.obstacle().orElseThrow().remedy()).isEmpty();
    } finally {
      assertThat(Thread.interrupted()).isTrue();
    }
  }

  /** What is said to loosen the tightest step is looked for, and does. */
  @Test
  void whatLoosensAStepGivesItMoreRoom() {
    int said = 0;
    for (Day day : WEEKS) {
      for (DayPlan plan : day.answer().days()) {
        StepMargin tight = plan.plans().get(0).tight();
        Optional<Adjustment> loosening = plan.loosening();
        said += loosening.isPresent() ? 1 : 0;
        if (tight.limit() == StepMargin.Limit.BENCH) {
          assertThat(loosening.orElseThrow().kind()).isEqualTo(Adjustment.Kind.BENCH_LONGER);
        } else if (tight.kind() == BakeStep.Kind.FEED) {
          assertThat(loosening.orElseThrow().kind()).isEqualTo(Adjustment.Kind.FEED);
        } else {
          double percent = plan.plans().get(0).starterPercent();
          loosening
              .filter(change -> change.kind() == Adjustment.Kind.STARTER_SHARE)
              .ifPresent(
                  change ->
                      assertThat(change.value() / percent).isBetween(0.6, 1.5).isNotEqualTo(1.0));
        }
      }
    }
    assertThat(said).isGreaterThanOrEqualTo(3);
  }

  @Test
  void noFeedAsksForLessStarterThanAScaleShows() {
    BakeDay day =
        Weeks.atHome().loaves(1, Mass.ofGrams(400), PieceForm.ROUND).forecaster(FEW).build();
    for (DayPlan each : DayPlanner.plan(List.of(day), 1, SearchControl.none()).days()) {
      BakePlan plan = each.plans().get(0);
      assertThat(plan.feedAmounts().starterGrams()).isGreaterThanOrEqualTo(4 - 1e-9);
      assertThat(plan.feedAmounts().useGrams())
          .isCloseTo(plan.ingredients().starterGrams(), within(1e-6));
      double poured = plan.water(Mixing.BY_HAND).waterCelsius();
      assertThat(poured).isBetween(-10.0, 60.0);
      checkStanding(plan, poured);
    }
  }

  /** Flour and water that stand in the room before the rest comes in go part of the way to it. */
  private static void checkStanding(BakePlan plan, double poured) {
    Temperature room = Temperature.ofCelsius(plan.day().room().celsius(plan.mixHour()));
    double atOnce =
        WaterTemperature.of(plan.dough(), plan.ingredients(), room, room)
            .mixing(Mixing.BY_HAND)
            .waterFor(plan.doughTemperature())
            .waterCelsius();
    assertThat(plan.hasAutolyse()).isEqualTo(plan.strength().autolyseHours() > 0);
    assertThat(Math.abs(poured - room.celsius()))
        .isGreaterThanOrEqualTo(Math.abs(atOnce - room.celsius()) - 1e-9)
        .isLessThan(Math.abs(atOnce - room.celsius()) + 10);
    assertThat(poured == atOnce).isEqualTo(!plan.hasAutolyse());
  }

  @Test
  void progressGoesUpToOne() {
    List<Double> seen = Collections.synchronizedList(new ArrayList<>());
    DayPlanner.plan(
        List.of(Weeks.atHome().forecaster(FEW).plans(1).build()),
        1,
        SearchControl.none().withProgress(seen::add));

    assertThat(seen).isNotEmpty().allMatch(share -> share >= 0 && share <= 1).endsWith(1.0);
  }

  @Test
  void missingHoursAndOtherOvensAreNamed() {
    assertThatThrownBy(() -> BakeDay.builder().readyAt(3).build())
        .isInstanceOf(InputException.class)
        .hasMessageContaining("bench");
    assertThatThrownBy(() -> new BenchInterval(5, 5)).isInstanceOf(InputException.class);
    assertThatThrownBy(() -> new BenchHours(List.of())).isInstanceOf(InputException.class);
    List<BakeDay> doughs = new ArrayList<>(Weeks.stall());
    doughs.set(0, doughs.get(0).toBuilder().oven(Oven.usual()).build());
    assertThatThrownBy(() -> DayPlanner.plan(doughs, 1, SearchControl.none()))
        .isInstanceOf(InputException.class)
        .hasMessageContaining("share one oven");
  }

  @Test
  void equalDaysAreEqual() {
    BakeDay day = Weeks.dayWorker().build();

    assertThat(day.toBuilder().build()).isEqualTo(day).hasSameHashCodeAs(day);
    assertThat(day.toBuilder().plans(7).build()).isNotEqualTo(day);
    assertThat(day)
        .hasToString("2 × 850 g ready at hour 36, at the bench " + day.bench().intervals());
  }
}
