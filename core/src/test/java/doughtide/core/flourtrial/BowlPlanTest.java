package doughtide.core.flourtrial;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import doughtide.core.quantity.InputException;
import doughtide.core.quantity.Mass;
import doughtide.core.quantity.Share;
import org.junit.jupiter.api.Test;

class BowlPlanTest {
  private static BowlPlan plan(double grams, double from, double to, double step, Scale scale) {
    return BowlPlan.of(
        Mass.ofGrams(grams),
        Share.ofPercent(from),
        Share.ofPercent(to),
        Share.ofPercent(step),
        scale);
  }

  @Test
  void weighsTheUsualBowls() {
    assertThat(plan(40, 65, 85, 5, Scale.ONE_GRAM).bowls())
        .extracting(BowlPlan.Bowl::waterGrams)
        .containsExactly(26.0, 28.0, 30.0, 32.0, 34.0);
  }

  @Test
  void saysWhatRoundingDoesToTheHydration() {
    BowlPlan.Bowl bowl = plan(30, 60, 80, 4, Scale.ONE_GRAM).bowls().get(1);
    assertThat(bowl.wantedPercent()).isEqualTo(64);
    assertThat(bowl.waterGrams()).isEqualTo(19);
    assertThat(bowl.truePercent()).isCloseTo(63.3333, within(1e-4));
    assertThat(bowl.roundingPoints()).isCloseTo(-0.6667, within(1e-4));
    assertThat(plan(30, 60, 80, 4, Scale.TENTH_GRAM).bowls().get(1).waterGrams()).isEqualTo(19.2);
  }

  @Test
  void roundsTheFlourToTheScaleFirst() {
    BowlPlan.Bowl bowl = plan(37.6, 70, 70, 5, Scale.ONE_GRAM).bowls().get(0);
    assertThat(bowl.flourGrams()).isEqualTo(38);
    assertThat(bowl.waterGrams()).isEqualTo(27);
  }

  @Test
  void refusesAStepTheScaleCannotWeigh() {
    assertThatThrownBy(() -> plan(40, 65, 85, 1, Scale.ONE_GRAM))
        .isInstanceOf(InputException.class)
        .hasMessage(
            "a step of 1 % on 40 g of flour is 0.4 g of water, finer than a scale of 1 g can weigh:"
                + " use a step of at least 2.5 %, more flour per bowl, or a finer scale");
    assertThat(plan(40, 65, 85, 2.5, Scale.ONE_GRAM).bowls()).hasSize(9);
    assertThat(plan(40, 65, 85, 1, Scale.TENTH_GRAM).bowls()).hasSize(21);
  }

  @Test
  void refusesAStepOfZero() {
    assertThatThrownBy(() -> plan(40, 65, 85, 0, Scale.TENTH_GRAM))
        .isInstanceOf(InputException.class)
        .hasMessageContaining("finer than a scale");
  }

  @Test
  void allowsTwentyFourBowlsAndNoMore() {
    assertThat(plan(100, 60, 83, 1, Scale.ONE_GRAM).bowls()).hasSize(24);
    assertThatThrownBy(() -> plan(100, 60, 84, 1, Scale.ONE_GRAM))
        .isInstanceOf(InputException.class)
        .hasMessageContaining("makes 25 bowls, at most 24 are allowed");
  }

  @Test
  void endsBeforeTheWettestWhenTheStepDoesNotReachIt() {
    assertThat(plan(50, 60, 79, 4, Scale.ONE_GRAM).bowls())
        .extracting(BowlPlan.Bowl::wantedPercent)
        .containsExactly(60.0, 64.0, 68.0, 72.0, 76.0);
  }

  @Test
  void refusesARangeTheWrongWayRound() {
    assertThatThrownBy(() -> plan(50, 80, 60, 4, Scale.ONE_GRAM))
        .isInstanceOf(InputException.class)
        .hasMessageContaining("swap the two");
  }

  @Test
  void tellsRestAndFlour() {
    BowlPlan plan = plan(50, 60, 80, 4, Scale.ONE_GRAM);
    assertThat(plan.restMinutes()).isEqualTo(30);
    assertThat(plan.withRest(45).restMinutes()).isEqualTo(45);
    assertThat(plan.flour().grams()).isEqualTo(300);
    assertThatThrownBy(() -> plan.withRest(Double.NaN)).isInstanceOf(InputException.class);
  }
}
