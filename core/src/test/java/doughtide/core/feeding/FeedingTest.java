package doughtide.core.feeding;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import doughtide.core.dough.FlourClass;
import doughtide.core.dough.Starter;
import doughtide.core.dough.StarterCondition;
import doughtide.core.quantity.InputException;
import doughtide.core.quantity.Mass;
import doughtide.core.quantity.Share;
import org.junit.jupiter.api.Test;

class FeedingTest {
  @Test
  void weighsWhatIsUsedAndWhatFeedsTheNextTime() {
    FeedAmounts amounts = Feeding.of(new FeedRatio(1, 5, 5)).amounts(Mass.ofGrams(120));

    assertThat(amounts.starterGrams()).isEqualTo(12, within(1e-9));
    assertThat(amounts.flourGrams()).isEqualTo(60, within(1e-9));
    assertThat(amounts.waterGrams()).isEqualTo(60, within(1e-9));
    assertThat(amounts.keepGrams()).isEqualTo(12, within(1e-9));
    assertThat(amounts.useGrams()).isEqualTo(120, within(1e-9));
  }

  @Test
  void keepsBackWhatIsAskedFor() {
    FeedAmounts amounts =
        Feeding.of(new FeedRatio(1, 2, 2)).amounts(Mass.ofGrams(100), Mass.ofGrams(25));

    assertThat(amounts.starterGrams()).isEqualTo(25, within(1e-9));
    assertThat(amounts.keepGrams()).isEqualTo(25);
    assertThat(amounts.totalGrams()).isEqualTo(125, within(1e-9));
  }

  @Test
  void saltIsAShareOfTheFlourGiven() {
    Feeding salted = Feeding.of(new FeedRatio(1, 2, 2)).withSalt(Share.ofPercent(2));

    assertThat(salted.amounts(Mass.ofGrams(100)).saltGrams())
        .isEqualTo(salted.amounts(Mass.ofGrams(100)).flourGrams() * 0.02, within(1e-9));
    FeedAmounts kept = salted.amounts(Mass.ofGrams(100), Mass.ofGrams(25));
    assertThat(kept.totalGrams()).isEqualTo(125, within(1e-9));
    assertThat(kept.starterGrams()).isEqualTo(125 / 5.04, within(1e-9));
    assertThat(salted.formula().salt().percent()).isEqualTo(2 * 2 / 2.5, within(1e-9));
  }

  @Test
  void feedingAnotherFlourMixesIt() {
    Feeding feeding =
        Feeding.of(new FeedRatio(1, 4.5, 4.5)).withFlour(FlourClass.WHOLEMEAL_RYE.flour());

    assertThat(feeding.flourInJar().name()).isEqualTo("10 % white, 90 % wholemeal rye");
    assertThat(feeding.ripened().flour()).isEqualTo(feeding.flourInJar());
  }

  @Test
  void ripenedStarterIsRipeAndHasTheNewHydration() {
    Starter cold = Starter.ripe(Share.ofPercent(100)).in(StarterCondition.FROM_COLD);
    Starter after = Feeding.of(new FeedRatio(2, 2, 1)).withStarter(cold).ripened();

    assertThat(after.condition()).isEqualTo(StarterCondition.RIPE);
    assertThat(after.hydration().percent()).isEqualTo(100 * 2.0 / 3, within(1e-9));
  }

  @Test
  void refusesFeedsThatAreNoStarter() {
    assertThatThrownBy(() -> Feeding.of(new FeedRatio(1, 5, 0)))
        .isInstanceOf(InputException.class)
        .hasMessageStartingWith("hydration of the starter after feeding 1:5:0 9.0909 %");
    assertThatThrownBy(() -> Feeding.of(new FeedRatio(1, 600, 600)))
        .isInstanceOf(InputException.class)
        .hasMessageContaining("0.0833 % of the flour comes from the old starter")
        .hasMessageEndingWith("it must be 0.1…60 %: give less flour");
    assertThatThrownBy(() -> Feeding.of(new FeedRatio(10, 1, 1)))
        .isInstanceOf(InputException.class)
        .hasMessageEndingWith("it must be 0.1…60 %: give more flour");
    assertThatThrownBy(() -> Feeding.of(new FeedRatio(1, 1, 1)).withSalt(Share.ofPercent(5)))
        .isInstanceOf(InputException.class);
  }
}
