package doughtide.core.day;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import doughtide.core.forecast.RiseForecast;
import doughtide.core.loaf.ColdScores;
import doughtide.core.loaf.PieceForm;
import doughtide.core.loaf.ShapeForecast;
import doughtide.core.loaf.ShapeForecaster;
import doughtide.core.loaf.UsableRise;
import doughtide.core.quantity.InputException;
import doughtide.core.quantity.Mass;
import doughtide.core.rise.PieceCurve;
import doughtide.core.thermal.Mixing;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.concurrent.ConcurrentHashMap;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.Arguments;
import org.junit.jupiter.params.provider.MethodSource;

class BakeDayPlannerTest {
  static Stream<Arguments> weeks() {
    return Stream.of(
        Arguments.of("day worker", Weeks.dayWorker().build()),
        Arguments.of("night worker", Weeks.nightWorker().build()),
        Arguments.of("market baker", Weeks.marketBaker().build()),
        Arguments.of("at home", Weeks.atHome().build()));
  }

  @ParameterizedTest(name = "{0}")
  @MethodSource("weeks")
  void plansKeepTheHoursAtTheBenchAndReplayInTheModel(String name, BakeDay day) {
    BakeDayAnswer answer = answer(name, day);

    assertThat(answer.plans()).as(name).isNotEmpty().hasSizeLessThanOrEqualTo(day.plans());
    assertThat(answer.hindrance()).isEmpty();
    assertThat(answer.plans())
        .isSortedAccordingTo(
            Comparator.comparingDouble((BakePlan p) -> -Math.rint(p.marginHours() * 12)));
    for (BakePlan plan : answer.plans()) {
      checkSteps(name, day, plan);
      checkReplay(name, plan);
    }
  }

  private static final Map<String, BakeDayAnswer> ANSWERS = new ConcurrentHashMap<>();

  private static BakeDayAnswer answer(String name, BakeDay day) {
    return ANSWERS.computeIfAbsent(name, key -> BakeDayPlanner.plan(day, SearchProgress.none()));
  }

  private static void checkSteps(String name, BakeDay day, BakePlan plan) {
    List<BakeStep> steps = plan.steps();
    for (BakeStep step : steps) {
      if (step.kind().handsOn()) {
        assertThat(day.bench().contains(step.fromHour(), step.toHour()))
            .as("%s: %s", name, step)
            .isTrue();
      }
    }
    for (int i = 1; i < steps.size(); i++) {
      assertThat(steps.get(i).fromHour())
          .as("%s: %s after %s", name, steps.get(i), steps.get(i - 1))
          .isGreaterThanOrEqualTo(steps.get(i - 1).toHour() - 1e-6);
    }
    BakeStep last = steps.get(steps.size() - 1);
    assertThat(last.kind()).isEqualTo(BakeStep.Kind.READY);
    assertThat(last.fromHour()).isLessThanOrEqualTo(day.readyHour() + 1e-6);
  }

  /** By the forecaster of shape points, which the planner does not use. */
  static void checkReplay(String name, BakePlan plan) {
    RiseForecast bulk =
        plan.day().forecaster().withMembers(64).forecast(plan.dough(), plan.temperature(), 48);
    double bulkHours = plan.bulkEndHour() - plan.mixHour();
    assertThat(bulk.typical().runFast(48).riseAt(bulkHours).fraction())
        .as("%s: rise when shaped", name)
        .isCloseTo(plan.shapeRise().fraction(), within(0.08));

    ShapeForecaster shaping = ShapeForecaster.of(bulk, plan.proof());
    ShapeForecast shape = shaping.forecast();
    assertThat(bulkHours)
        .as("%s: shaped inside the window of the shape point", name)
        .isBetween(
            shape.hours().early().orElseThrow(),
            shape.hours().late().orElse(Double.POSITIVE_INFINITY));

    ShapeForecast.Night night = shaping.nightIfShapedAt(bulkHours).orElseThrow();
    UsableRise usable = UsableRise.of(plan.day().target(), bulk.typical().runFast(48));
    double oven = plan.ovenHour() - plan.mixHour();
    assertThat(night.ovenHours()).as("%s: oven", name).isCloseTo(oven, within(0.01));
    assertThat(night.riseAtBake().likely().orElseThrow())
        .as("%s: rise at the oven", name)
        .isBetween(usable.from().percent(), usable.until().percent());
    assertThat(night.over().likely().orElse(Double.POSITIVE_INFINITY))
        .as("%s: past its best", name)
        .isGreaterThan(oven);
  }

  static Stream<Arguments> coldWeeks() {
    return weeks().limit(3);
  }

  /** With a proof in the cold, where the oven keeps the clock. */
  @ParameterizedTest(name = "{0}")
  @MethodSource("coldWeeks")
  void delaysInsideTheMarginSpoilAtMostOneDoughInTenMore(String name, BakeDay day) {
    BakePlan plan = answer(name, day).plans().get(0);
    double shape =
        plan.margins().stream()
            .filter(each -> each.kind() == BakeStep.Kind.SHAPE)
            .mapToDouble(StepMargin::hours)
            .findFirst()
            .orElseThrow();
    double good = share(plan, 0);

    assertThat(good).as(name).isCloseTo(plan.goodShare(), within(0.05));
    assertThat(share(plan, shape))
        .as(name)
        .isGreaterThanOrEqualTo(good - PlanScales.SPOILED_SHARE - 0.05);
  }

  /** Every member shaped when its jar is there, in the hours at the bench, and then late. */
  private static double share(BakePlan plan, double late) {
    BakeDay day = plan.day();
    DayModel model = new DayModel(day);
    var members = day.forecaster().withMembers(64).ensemble().members();
    BenchInterval bench = day.bench().around(plan.bulkEndHour(), plan.basketHour()).orElseThrow();
    double from = bench.fromHour() - plan.mixHour();
    double to = bench.toHour() - plan.mixHour() - day.restHours();
    double oven = plan.ovenHour() - plan.mixHour();
    double each = day.oven().bakeHours() + Work.LOAD_HOURS;
    double lastOven = oven + (day.oven().batches(day.loaves()) - 1) * each;
    int good = 0;
    for (int i = 0; i < members.size(); i++) {
      var curve = model.run(plan.draft().route(), members.get(i), oven);
      double jar = curve.hoursToRise(plan.shapeRise()).orElse(curve.endHours());
      double end = Math.min(Math.min(Math.max(jar, from), to) + late, to);
      double shaped = Math.min(end + day.restHours(), oven - 0.25);
      PieceCurve loaf =
          model.loaf(
              new DayModel.Grown(curve, ColdScores.celsius(i)),
              shaped,
              plan.proofKind(),
              plan.mixHour() + shaped,
              lastOven - shaped);
      UsableRise usable =
          UsableRise.of(day.target(), model.run(plan.draft().route(), members.get(i), 48));
      if (usable.from(loaf).orElse(Double.POSITIVE_INFINITY) <= oven
          && usable.until(loaf).isEmpty()) {
        good++;
      }
    }
    return (double) good / members.size();
  }

  @Test
  void theSameDayGivesTheSamePlans() {
    BakeDay day = Weeks.dayWorker().build();

    assertThat(told(BakeDayPlanner.plan(day, SearchProgress.none())))
        .isEqualTo(told(answer("day worker", day)));
  }

  private static List<String> told(BakeDayAnswer answer) {
    List<String> told = new ArrayList<>();
    for (BakePlan plan : answer.plans()) {
      told.add(plan.steps() + " " + plan.margins() + " " + plan.knob() + plan.goodShare());
    }
    return told;
  }

  @Test
  void aDayWithoutPlanSaysWhatWouldMakeOne() {
    BakeDay day = Weeks.hardlyEver().build();
    BakeDayAnswer answer = BakeDayPlanner.plan(day, SearchProgress.none());

    assertThat(answer.plans()).isEmpty();
    BakeDayAnswer.Hindrance hindrance = answer.hindrance().orElseThrow();
    assertThat(hindrance.why()).isEqualTo(BakeDayAnswer.Why.BENCH);
    BakeDayAnswer.Change change = hindrance.change().orElseThrow();
    assertThat(change.hours()).isPositive();
    checkSteps("changed day", change.plan().day(), change.plan());
  }

  @Test
  void whereNoSingleChangeHelpsTwoAreSaid() {
    BakeDay day = Weeks.neverInTheHeat().build();
    BakeDayAnswer answer = BakeDayPlanner.plan(day, SearchProgress.none());

    BakeDayAnswer.Change change = answer.hindrance().orElseThrow().change().orElseThrow();
    BakeDayAnswer.Change also = change.also().orElseThrow();
    assertThat(also.kind()).isNotEqualTo(change.kind());
    assertThat(change.plan().goodShare()).isGreaterThanOrEqualTo(0.5);
    checkSteps("changed day", change.plan().day(), change.plan());
  }

  @Test
  void noFeedAsksForLessStarterThanAScaleShows() {
    for (var each : List.of(Weeks.dayWorker(), Weeks.nightWorker(), Weeks.atHome())) {
      BakeDay day = each.loaves(1, Mass.ofGrams(400), PieceForm.ROUND).build();
      for (BakePlan plan : BakeDayPlanner.plan(day, SearchProgress.none()).plans()) {
        assertThat(plan.feedAmounts().starterGrams()).isGreaterThanOrEqualTo(4 - 1e-9);
      }
    }
  }

  @Test
  void ingredientsAddUpAndStarterIsFedForThem() {
    BakePlan plan =
        BakeDayPlanner.plan(Weeks.dayWorker().build(), SearchProgress.none()).plans().get(0);

    assertThat(plan.ingredients().doughGrams()).isCloseTo(1700, within(1e-6));
    assertThat(plan.feedAmounts().useGrams())
        .isCloseTo(plan.ingredients().starterGrams(), within(1e-6));
    assertThat(plan.water(Mixing.BY_HAND).waterCelsius()).isBetween(-10.0, 60.0);
  }

  @Test
  void progressGoesUpToOne() {
    List<Double> seen = java.util.Collections.synchronizedList(new ArrayList<>());
    BakeDayPlanner.plan(Weeks.nightWorker().plans(1).build(), seen::add);

    assertThat(seen).isNotEmpty().allMatch(share -> share >= 0 && share <= 1).endsWith(1.0);
  }

  @Test
  void missingHoursAreNamed() {
    assertThatThrownBy(() -> BakeDay.builder().readyAt(3).build())
        .isInstanceOf(InputException.class)
        .hasMessageContaining("bench");
    assertThatThrownBy(() -> new BenchInterval(5, 5)).isInstanceOf(InputException.class);
    assertThatThrownBy(() -> new BenchHours(List.of())).isInstanceOf(InputException.class);
  }
}
