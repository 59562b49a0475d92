package doughtide.core.day;

import static org.assertj.core.api.Assertions.assertThat;

import doughtide.core.loaf.PieceForm;
import doughtide.core.quantity.Mass;
import doughtide.core.quantity.Temperature;
import doughtide.core.thermal.TemperatureTrace;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** One to forty loaves in rooms of 16 to 30 °C: a plan that holds, or a reason that does. */
class LoavesAndRoomsTest {

  private static BakeDay day(int loaves, double celsius) {
    return BakeDay.builder()
        .readyAt(37)
        .bench(new BenchHours(List.of(new BenchInterval(7, 22), new BenchInterval(31, 38))))
        .room(TemperatureTrace.steady(Temperature.ofCelsius(celsius)))
        .cold(Temperature.ofCelsius(4))
        .oven(Oven.usual().withLoaves(6))
        .loaves(loaves, Mass.ofGrams(850), PieceForm.ROUND)
        .plans(1)
        .build();
  }

  @ParameterizedTest
  @CsvSource({"1, 30", "5, 21", "13, 16", "40, 24"})
  void someAnswer(int loaves, double celsius) {
    check(day(loaves, celsius));
  }

  /**
   * In parts by the number of loaves: {@code -Ddoughtide.loaves.from=11 -Ddoughtide.loaves.to=20}.
   */
  @Test
  @Tag("long")
  void allAnswer() {
    int from = Integer.getInteger("doughtide.loaves.from", 1);
    int to = Integer.getInteger("doughtide.loaves.to", 40);
    int planned = 0;
    List<String> findings = new ArrayList<>();
    for (int loaves = from; loaves <= to; loaves++) {
      for (int celsius = 16; celsius <= 30; celsius++) {
        try {
          planned += check(day(loaves, celsius)) ? 1 : 0;
        } catch (AssertionError | RuntimeException e) {
          findings.add(loaves + " loaves at " + celsius + " °C: " + e);
        }
      }
    }
    System.out.println("plans for " + planned + " of " + 15 * (to - from + 1));
    assertThat(findings).isEmpty();
    assertThat(to - from < 39 || planned > 200).as("%s plans in the whole grid", planned).isTrue();
  }

  /** Whether there is a plan; a change that is said to help is one that does. */
  private static boolean check(BakeDay day) {
    DayAnswer answer = DayPlanner.plan(List.of(day), 1, SearchControl.none());
    Optional<DayPlan> plan = answer.days().stream().findFirst();
    plan.ifPresent(each -> check(each, 1));
    if (plan.isEmpty()) {
      DayAnswer.Obstacle obstacle = answer.obstacle().orElseThrow();
      assertThat(obstacle.reason()).isNotEqualTo(DayAnswer.Reason.OTHER_DOUGHS);
      obstacle.remedy().ifPresent(remedy -> check(remedy.day(), 2));
    }
    return plan.isPresent();
  }

  private static void check(DayPlan plan, int hands) {
    BakePlan dough = plan.plans().get(0);
    DayPlannerTest.checkHands(plan, dough.day().bench(), hands);
    DayPlannerTest.checkOven(plan);
    RandomDaysPropertyTest.checkGrams(plan);
    assertThat(dough.goodShare()).isGreaterThanOrEqualTo(DayPlanner.LEAST_GOOD_SHARE);
  }

  /** Ten kilograms in a mixer for four: three batches, the first fold when all are mixed. */
  @Test
  void aSmallMixerTakesItsTime() {
    BakeDay day = day(12, 21).toBuilder().mixer(Mass.ofGrams(4000)).build();
    assertThat(day.mixHours()).isEqualTo(0.75);

    DayPlan plan = DayPlanner.plan(List.of(day), 1, SearchControl.none()).days().get(0);

    check(plan, 1);
    BakeStep mix = step(plan, BakeStep.Kind.MIX);
    assertThat(mix.toHour() - mix.fromHour()).isEqualTo(0.75);
    assertThat(step(plan, BakeStep.Kind.FOLD).fromHour())
        .isGreaterThanOrEqualTo(mix.toHour() - 1e-6);
  }

  private static BakeStep step(DayPlan plan, BakeStep.Kind kind) {
    return plan.steps().stream()
        .map(DayStep::step)
        .filter(step -> step.kind() == kind)
        .findFirst()
        .orElseThrow();
  }
}
