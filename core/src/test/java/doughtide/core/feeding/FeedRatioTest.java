package doughtide.core.feeding;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import doughtide.core.quantity.InputException;
import doughtide.core.quantity.Share;
import org.junit.jupiter.api.Test;

class FeedRatioTest {
  @Test
  void isWrittenStarterFlourWater() {
    assertThat(new FeedRatio(1, 5, 4.5).text()).isEqualTo("1:5:4.5");
  }

  @Test
  void keepsAHydration() {
    FeedRatio ratio = FeedRatio.oneTo(4, Share.ofPercent(60));

    assertThat(ratio.water()).isEqualTo(2.4);
    assertThat(ratio.waterPerFlour()).isEqualTo(0.6);
    assertThat(ratio.growth()).isEqualTo(7.4);
  }

  @Test
  void countsPerPartOfStarter() {
    assertThat(new FeedRatio(20, 100, 80).perPartOfStarter()).isEqualTo(new FeedRatio(1, 5, 4));
  }

  @Test
  void refusesWhatIsNoPart() {
    assertThatThrownBy(() -> new FeedRatio(0, 5, 5))
        .isInstanceOf(InputException.class)
        .hasMessage("parts of starter 0 is outside 0.001…1000");
    assertThatThrownBy(() -> new FeedRatio(1, Double.NaN, 5)).isInstanceOf(InputException.class);
    assertThatThrownBy(() -> new FeedRatio(1, 5, -1)).isInstanceOf(InputException.class);
  }

  /** The nearest ratio that a kitchen weighs, with a starter of one part up to ten. */
  @Test
  void isRoundedToWholeParts() {
    assertThat(new FeedRatio(1, 5.02, 5.02).inWholeParts()).isEqualTo(new FeedRatio(1, 5, 5));
    assertThat(new FeedRatio(1, 1.5, 1.5).inWholeParts()).isEqualTo(new FeedRatio(2, 3, 3));
    assertThat(new FeedRatio(1, 0.55, 0.55).inWholeParts()).isEqualTo(new FeedRatio(2, 1, 1));
    assertThat(new FeedRatio(1, 5, 4).inWholeParts()).isEqualTo(new FeedRatio(1, 5, 4));
    assertThat(new FeedRatio(1, 4, 2.4).inWholeParts()).isEqualTo(new FeedRatio(2, 8, 5));
    assertThat(new FeedRatio(1, 0.04, 0.04).inWholeParts()).isEqualTo(new FeedRatio(10, 1, 1));
    assertThat(new FeedRatio(2, 10, 8).growth()).isEqualTo(10);
  }

  /** Nobody weighs 5 : 4 : 4. */
  @Test
  void lessFlourThanStarterIsHalfOfItOrAsMuch() {
    for (double flour = 0.46; flour < 0.745; flour += 0.01) {
      assertThat(new FeedRatio(1, flour, flour).inWholeParts()).isEqualTo(new FeedRatio(2, 1, 1));
    }
    for (double flour = 0.755; flour < 1.09; flour += 0.01) {
      assertThat(new FeedRatio(1, flour, flour).inWholeParts()).isEqualTo(new FeedRatio(1, 1, 1));
    }
    assertThat(new FeedRatio(1, 0.8, 0.48).inWholeParts()).isEqualTo(new FeedRatio(5, 5, 3));
    assertThat(new FeedRatio(1, 0.6, 0.48).inWholeParts()).isEqualTo(new FeedRatio(10, 5, 4));
  }

  @Test
  void threeFiguresSayEnough() {
    assertThat(new FeedRatio(1, 100.4, 10.04).text()).isEqualTo("1:100:10");
    assertThat(new FeedRatio(1, 99.96, 9.996).text()).isEqualTo("1:100:10");
    assertThat(new FeedRatio(1, 12.34, 1.234).text()).isEqualTo("1:12.3:1.23");
    assertThat(new FeedRatio(1, 123.4, 10.06).text()).isEqualTo("1:123:10.1");
  }

  /** Ripe after four hours and falling after seven: five hours old it has an hour and two. */
  @Test
  void aStarterHasRoomOnBothSides() {
    FeedRatio equal = new FeedRatio(1, 1, 1);
    assertThat(new FeedChoice(5, 10, equal, 4, 7).ageHours()).isEqualTo(5);
    assertThat(new FeedChoice(5, 10, equal, 4, 7).slackHours()).isEqualTo(1);
    assertThat(new FeedChoice(5, 11.5, equal, 4, 7).slackHours()).isEqualTo(0.5);
    assertThat(new FeedChoice(5, 8, equal, 4, 7).slackHours()).isEqualTo(-1);
  }

  /** Of 12.4 g of starter, 37.2 g of flour and as much water 67 g are used and the rest is kept. */
  @Test
  void aScaleOfWholeGramsNeverMakesTooLittle() {
    FeedAmounts amounts = new FeedAmounts(12.4, 37.2, 37.2, 0.7, 20.5);

    assertThat(amounts.totalGrams()).isCloseTo(87.5, within(1e-9));
    assertThat(amounts.useGrams()).isCloseTo(67, within(1e-9));
    FeedAmounts whole = amounts.onScale(1);
    assertThat(whole.starterGrams()).isEqualTo(12);
    assertThat(whole.flourGrams()).isEqualTo(38);
    assertThat(whole.waterGrams()).isEqualTo(38);
    assertThat(whole.useGrams()).isCloseTo(67, within(1e-9));
    assertThat(whole.keepGrams()).isCloseTo(21.7, within(1e-9));
    FeedAmounts fives = amounts.onScale(5);
    assertThat(fives.starterGrams()).isEqualTo(10);
    assertThat(fives.flourGrams()).isEqualTo(40);
    assertThat(new FeedAmounts(0.3, 37.04, 30, 0, 10).onScale(1).starterGrams()).isEqualTo(1);
    assertThat(new FeedAmounts(0.3, 37.04, 30, 0, 10).onScale(1).flourGrams()).isEqualTo(37);
  }
}
