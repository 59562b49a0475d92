package doughtide.core.day;

import static org.assertj.core.api.Assertions.assertThat;

import doughtide.core.day.again.RestPlanner;
import doughtide.core.day.again.Slipped;
import doughtide.core.quantity.InputException;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Random;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;

/**
 * Days of several doughs that slip: the rest is planned beside what has happened, nobody does two
 * things at once, nothing lies outside the hours at the bench or before now, and the model, asked
 * by a replay that is written apart from the planner, says the same of every dough.
 */
class RestOfDayTest {
  private static final long SEED = 16;

  @Test
  void aFewDaysGoOnWithinTheirBounds() {
    assertThat(checked(0, 1, 1)).isPositive();
  }

  /** In parts: {@code -Ddoughtide.days.from=20 -Ddoughtide.days=40}. */
  @Test
  @Tag("long")
  void manyDaysGoOnWithinTheirBounds() {
    int from = Integer.getInteger("doughtide.days.from", 0);
    int to = Integer.getInteger("doughtide.days", 60);
    assertThat(checked(from, to, 8)).isGreaterThan((to - from) / 6);
  }

  private static int checked(int from, int to, int mostDoughs) {
    int checked = 0;
    List<String> findings = new ArrayList<>();
    for (int i = from; i < to; i++) {
      Random random = new Random(SEED + i);
      List<BakeDay> doughs =
          RandomDaysPropertyTest.doughs(
              random, 2 + random.nextInt(mostDoughs), RandomDaysPropertyTest.SOME);
      int hands = 1 + random.nextInt(2);
      try {
        List<DayPlan> found = DayPlanner.plan(doughs, hands, SearchControl.none()).days();
        if (!found.isEmpty()) {
          checked++;
          check(found.get(0), hands, random);
        }
      } catch (AssertionError | RuntimeException e) {
        findings.add("day " + i + " of " + doughs.size() + " doughs: " + e);
      }
    }
    System.out.println("checked " + checked + " of " + (to - from) + " days");
    assertThat(findings).isEmpty();
    return checked;
  }

  /** Some dough is mixed a little late; those mixed before it were not. */
  private static void check(DayPlan day, int hands, Random random) {
    int late = random.nextInt(day.plans().size());
    double by = (1 + random.nextInt(6)) / 12.0;
    double now = day.plans().get(late).mixHour() + by + 0.25;
    List<RestPlanner.Dough> doughs = new ArrayList<>();
    for (int i = 0; i < day.plans().size(); i++) {
      doughs.add(dough(day.plans().get(i), "dough " + i, i == late ? by : 0, now));
    }
    DayPlan rest =
        RestPlanner.plan(
            doughs, hands, now, found -> new InputException("test", "no plan for the rest"));

    BenchHours bench = doughs.get(0).day().bench();
    double free = now - 1e-6;
    for (DayStep each : rest.steps()) {
      BakeStep step = each.step();
      if (wasBegun(each, doughs)) {
        continue;
      }
      if (step.kind() != BakeStep.Kind.FEED && step.kind() != BakeStep.Kind.AUTOLYSE) {
        assertThat(step.fromHour()).as("%s", each).isGreaterThanOrEqualTo(free);
      }
      if (step.kind().handsOn()) {
        assertThat(bench.contains(step.fromHour(), step.toHour())).as("%s", each).isTrue();
      }
    }
    DayPlannerTest.checkHands(rest, day.plans().get(0).day().bench(), hands);
    DayPlannerTest.checkOven(rest);
    RandomDaysPropertyTest.checkGrams(rest);
    for (int i = 0; i < rest.plans().size(); i++) {
      // A dough that is shaped already is not shaped by its jar any more, as the replay does.
      if (doughs.get(i).slipped().filter(each -> each.shapedHour().isEmpty()).isPresent()) {
        checkReplay(rest.plans().get(i));
      }
    }
  }

  /** A dough's steps are told from its shaping on, though that was begun before now. */
  private static boolean wasBegun(DayStep each, List<RestPlanner.Dough> doughs) {
    BakeStep.Kind kind = each.step().kind();
    return (kind == BakeStep.Kind.SHAPE || kind == BakeStep.Kind.LOAVES_INTO_COLD)
        && each.doughs().stream()
            .map(i -> doughs.get(i).slipped())
            .allMatch(slipped -> slipped.isPresent() && slipped.get().shapedHour().isPresent());
  }

  private static RestPlanner.Dough dough(BakePlan plan, String name, double late, double now) {
    double mixed = plan.mixHour() + late;
    BakeDay day = plan.day().toBuilder().bench(from(plan.day().bench(), now)).build();
    if (mixed > now) {
      BakeDay.Builder rest = day.toBuilder().plans(1);
      if (day.needsFeeding() && plan.feed().feedHour() <= now) {
        rest.fed(plan.feed().feedHour(), plan.feed().ratio());
      }
      return new RestPlanner.Dough(name, rest.build(), Optional.empty(), Optional.empty());
    }
    List<BakeStep> open =
        plan.steps().stream()
            .filter(step -> step.kind().compareTo(BakeStep.Kind.MIX) > 0)
            .filter(step -> step.kind().compareTo(BakeStep.Kind.SHAPE) < 0)
            .filter(step -> step.fromHour() + late > now)
            .toList();
    boolean shaped = plan.bulkEndHour() <= now;
    boolean baked = plan.ovenHour() <= now;
    Slipped slipped =
        new Slipped(
            plan.draft().route().withMixHour(mixed),
            plan.feed(),
            now,
            shaped ? OptionalDouble.of(plan.bulkEndHour()) : OptionalDouble.empty(),
            shaped && plan.proofKind() == ProofKind.COLD
                ? OptionalDouble.of(plan.basketHour())
                : OptionalDouble.empty(),
            OptionalDouble.empty(),
            baked ? OptionalDouble.of(plan.ovenHour()) : OptionalDouble.empty(),
            plan.strength().folds() - (int) open.stream().filter(RestOfDayTest::isFold).count(),
            plan.proofKind(),
            plan.proofHours(),
            plan.ovenHour(),
            open);
    return new RestPlanner.Dough(name, day, Optional.of(slipped), Optional.empty());
  }

  private static boolean isFold(BakeStep step) {
    return step.kind() == BakeStep.Kind.FOLD;
  }

  private static BenchHours from(BenchHours bench, double now) {
    return new BenchHours(
        bench.intervals().stream()
            .filter(at -> at.toHour() > now + 0.1)
            .map(at -> new BenchInterval(Math.max(at.fromHour(), now), at.toHour()))
            .toList());
  }

  /** Shaped by its jar, baked by the plan, each late by its margin and five minutes more. */
  private static void checkReplay(BakePlan plan) {
    double good = MarginsTest.good(plan, BakeStep.Kind.READY, 0);
    assertThat(plan.goodShare()).isBetween(good - 4.0 / 64, good + 4.0 / 64);
    for (StepMargin margin : plan.margins()) {
      double least = good - StepMargin.SPOILED_SHARE - 4.0 / 64;
      assertThat(MarginsTest.good(plan, margin.kind(), margin.hours()))
          .as("%s of %s", margin, plan.day())
          .isGreaterThanOrEqualTo(least);
      if (margin.limit() == StepMargin.Limit.DOUGH) {
        assertThat(MarginsTest.good(plan, margin.kind(), margin.hours() + 1.0 / 12))
            .as("later than %s of %s", margin, plan.day())
            .isLessThan(good - StepMargin.SPOILED_SHARE + 4.0 / 64);
      }
    }
  }
}
