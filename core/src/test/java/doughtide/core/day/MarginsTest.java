package doughtide.core.day;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import doughtide.core.loaf.LoafLimits;
import doughtide.core.loaf.LoafScores;
import doughtide.core.quantity.Temperature;
import doughtide.core.rise.PieceCurve;
import doughtide.core.rise.RiseCurve;
import doughtide.core.rise.Unknowns;
import doughtide.core.thermal.TemperatureTrace;
import java.util.List;
import java.util.Random;
import java.util.stream.Stream;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/**
 * Margins are proved on both sides by a replay that is written apart from the planner's: with a
 * step late by its margin few doughs more are spoiled; five minutes more spoil too many, or come
 * after the hours at the bench, or after the next step that needs it.
 */
class MarginsTest {
  private static final double FIVE_MINUTES = 1.0 / 12;
  private static final double ONE_MEMBER = 1.0 / 64;

  static Stream<DayPlannerTest.Day> weeks() {
    return DayPlannerTest.weeks();
  }

  @ParameterizedTest
  @MethodSource("weeks")
  void aStepMayBeAsLateAsItsMarginAndNoLater(DayPlannerTest.Day day) {
    for (DayPlan each : day.answer().days()) {
      check(day.toString(), each.plans().get(0));
    }
  }

  /** The hours of the issue: shaped about noon, baked about two hours later, bread at 17:00. */
  @Test
  void shapingMayNotBeLaterThanTheLoavesAreBaked() {
    BakeDay day =
        BakeDay.builder()
            .readyAt(41)
            .bench(new BenchHours(List.of(new BenchInterval(18, 22), new BenchInterval(32, 44))))
            .room(TemperatureTrace.steady(Temperature.ofCelsius(22)))
            .plans(2)
            .build();
    List<DayPlan> days = DayPlanner.plan(List.of(day), 1, SearchControl.none()).days();

    assertThat(days).isNotEmpty();
    for (DayPlan each : days) {
      BakePlan plan = each.plans().get(0);
      StepMargin shape =
          plan.margins().stream()
              .filter(margin -> margin.kind() == BakeStep.Kind.SHAPE)
              .findFirst()
              .orElseThrow();
      assertThat(plan.basketHour() + shape.hours())
          .isLessThanOrEqualTo(plan.ovenHour() - PlanWeigher.LEAST_PROOF_HOURS + 1e-6);
      check("the example", plan);
    }
  }

  /** A few random days of one dough in every build, more in long ones. */
  @Test
  void marginsOfRandomDaysHoldToo() {
    assertThat(checked(3)).isPositive();
  }

  @Test
  @Tag("long")
  void marginsOfManyRandomDaysHoldToo() {
    assertThat(checked(60)).isGreaterThan(10);
  }

  private static int checked(int days) {
    Random random = new Random(3);
    int checked = 0;
    for (int i = 0; i < days; i++) {
      List<BakeDay> doughs = RandomDaysPropertyTest.doughs(random, 1, RandomDaysPropertyTest.SOME);
      for (DayPlan plan : DayPlanner.plan(doughs, 1, SearchControl.none()).days()) {
        check("random day " + i, plan.plans().get(0));
        checked++;
      }
    }
    return checked;
  }

  static void check(String day, BakePlan plan) {
    double good = good(plan, BakeStep.Kind.READY, 0);
    assertThat(good).isCloseTo(plan.goodShare(), within(ONE_MEMBER));
    for (StepMargin margin : plan.margins()) {
      String name = day + " " + margin;
      assertThat(plan.marginHours()).isLessThanOrEqualTo(margin.hours());
      assertThat(possible(plan, margin.kind(), margin.hours())).as(name).isTrue();
      double late = good(plan, margin.kind(), margin.hours());
      double later = good(plan, margin.kind(), margin.hours() + FIVE_MINUTES);
      double least = good(plan, margin.kind(), 0) - StepMargin.SPOILED_SHARE;
      assertThat(late).as(name).isGreaterThanOrEqualTo(least - ONE_MEMBER);
      boolean longest = margin.hours() >= StepMargin.LONGEST_HOURS - 1e-9;
      if (margin.limit() == StepMargin.Limit.DOUGH) {
        assertThat(later).as(name).isLessThan(least + ONE_MEMBER);
      } else if (!longest) {
        assertThat(possible(plan, margin.kind(), margin.hours() + FIVE_MINUTES)).as(name).isFalse();
      }
    }
  }

  /** Whether it stays at the bench and before what needs it. */
  static boolean possible(BakePlan plan, BakeStep.Kind kind, double late) {
    BenchHours bench = plan.day().bench();
    double mostFolds =
        plan.steps().stream()
            .filter(step -> step.kind() == kind || moves(kind, step.kind()))
            .mapToDouble(step -> bench.slackHours(step.fromHour(), step.toHour()))
            .min()
            .orElseThrow();
    return late <= mostFolds + 1e-6 && last(plan, kind) + late <= next(plan, kind) + 1e-6;
  }

  private static boolean moves(BakeStep.Kind kind, BakeStep.Kind with) {
    return kind == BakeStep.Kind.MIX && with == BakeStep.Kind.FOLD
        || kind == BakeStep.Kind.BAKE && with == BakeStep.Kind.COOL;
  }

  private static double last(BakePlan plan, BakeStep.Kind kind) {
    return kind == BakeStep.Kind.BAKE
        ? hour(plan, BakeStep.Kind.READY)
        : plan.steps().stream()
            .filter(step -> step.kind() == kind || moves(kind, step.kind()))
            .mapToDouble(BakeStep::toHour)
            .max()
            .orElseThrow();
  }

  private static double next(BakePlan plan, BakeStep.Kind kind) {
    return switch (kind) {
      case FEED -> plan.mixHour();
      case MIX -> plan.bulkColdFrom().orElse(plan.bulkEndHour());
      case SHAPE -> plan.ovenHour() - 0.25;
      case LOAVES_INTO_COLD -> plan.ovenHour();
      default -> plan.day().readyHour();
    };
  }

  private static double hour(BakePlan plan, BakeStep.Kind kind) {
    return plan.steps().stream()
        .filter(step -> step.kind() == kind)
        .mapToDouble(BakeStep::fromHour)
        .max()
        .orElseThrow();
  }

  /** Share of doughs that come out right where one step is late and the rest keeps to the clock. */
  static double good(BakePlan plan, BakeStep.Kind kind, double late) {
    return good(plan, kind, late, DoughCandidates.MEMBERS);
  }

  /** The same of so many members of the belief. */
  static double good(BakePlan plan, BakeStep.Kind kind, double late, int number) {
    DayModel model = new DayModel(plan.day());
    List<Unknowns> members = plan.day().forecaster().withMembers(number).ensemble().members();
    int good = 0;
    for (int i = 0; i < members.size(); i++) {
      if (isGood(plan, model, members.get(i), i, kind, late)) {
        good++;
      }
    }
    return (double) good / members.size();
  }

  private static boolean isGood(
      BakePlan plan,
      DayModel model,
      Unknowns unknowns,
      int member,
      BakeStep.Kind kind,
      double late) {
    if (kind == BakeStep.Kind.FEED) {
      RipeTimes.RipeTime ripe = new RipeTimes(model).members(plan.feed(), List.of(unknowns)).get(0);
      double age = plan.feed().ageHours() - late;
      return age >= ripe.ripe() && age <= ripe.fallen();
    }
    boolean intoCold = kind == BakeStep.Kind.LOAVES_INTO_COLD;
    double mix = plan.mixHour() + (kind == BakeStep.Kind.MIX ? late : 0);
    double shape = kind == BakeStep.Kind.SHAPE || intoCold ? late : 0;
    double bake = kind == BakeStep.Kind.BAKE ? late : 0;
    double oven = oven(plan, basket(plan, model, unknowns, plan.mixHour(), lastOven(plan)));
    double basket = basket(plan, model, unknowns, mix, oven) + shape;
    double lastBatch = oven + bake + busy(plan) - plan.day().oven().bakeHours() - 5.0 / 60;
    if (basket > oven - 0.25 + 1e-9) {
      return false;
    }
    RiseCurve curve = model.run(plan.draft().route().withMixHour(mix), unknowns, 48);
    PieceCurve loaf =
        model.loaf(
            new DayModel.BulkRun(curve, LoafScores.of(member), plan.strength()),
            basket - mix,
            plan.proofKind(),
            basket,
            lastBatch - basket);
    LoafLimits right = LoafLimits.right(plan.day().target());
    double from = right.from(loaf).orElse(Double.POSITIVE_INFINITY);
    return mix + from <= oven + bake && right.until(loaf).isEmpty();
  }

  private static double busy(BakePlan plan) {
    Oven oven = plan.day().oven();
    return oven.batches(plan.day().loaves()) * (oven.bakeHours() + 5.0 / 60);
  }

  private static double lastOven(BakePlan plan) {
    if (plan.proofKind() == ProofKind.COLD) {
      return plan.ovenHour();
    }
    BenchInterval bench = plan.day().bench().around(plan.ovenHour(), plan.ovenHour()).orElseThrow();
    double last = bench.toHour() - busy(plan) - 5.0 / 60;
    double ready = plan.day().readyHour() - plan.day().oven().coolHours() - busy(plan);
    return Math.max(Math.min(last, ready), plan.ovenHour());
  }

  private static double oven(BakePlan plan, double basket) {
    if (plan.proofKind() == ProofKind.COLD) {
      return plan.ovenHour();
    }
    BenchInterval bench = plan.day().bench().around(plan.ovenHour(), plan.ovenHour()).orElseThrow();
    double first = Math.min(bench.fromHour() + plan.day().oven().preheatHours(), plan.ovenHour());
    return Math.min(Math.max(basket + plan.proofHours(), first), lastOven(plan));
  }

  /** When the jar is there, in the hours at the bench, before the oven and before it falls. */
  private static double basket(
      BakePlan plan, DayModel model, Unknowns unknowns, double mix, double oven) {
    RiseCurve curve = model.run(plan.draft().route().withMixHour(mix), unknowns, 48);
    BenchInterval bench =
        plan.day().bench().around(plan.bulkEndHour(), plan.basketHour()).orElseThrow();
    double jar = mix + curve.hoursToRise(plan.shapeRise()).orElse(curve.endHours());
    double over = mix + curve.hoursToOver().orElse(curve.endHours());
    double to = Math.min(Math.min(bench.toHour(), oven - 0.25), over) - plan.day().restHours();
    double afterCold = plan.bulkColdTo().orElse(Double.NEGATIVE_INFINITY) + 0.25;
    double from = Math.max(Math.max(bench.fromHour(), afterCold), mix);
    return Math.max(from, Math.min(jar, to)) + plan.day().restHours();
  }
}
