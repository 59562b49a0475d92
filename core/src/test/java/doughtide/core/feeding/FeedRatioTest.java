package doughtide.core.feeding;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

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
}
