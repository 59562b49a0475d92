package doughtide.core.forecast;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import doughtide.core.quantity.InnerFault;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class DistributionTest {
  private static final double NEVER = Double.POSITIVE_INFINITY;

  @ParameterizedTest
  @CsvSource({"0, 1", "0.25, 1.5", "0.5, 2", "0.75, 3", "0.9, 3.6", "1, 4"})
  void isLinearBetweenMembersThatCountAlike(double level, double hours) {
    Distribution three = Distribution.of(new double[] {4, 1, 2});

    assertThat(three.quantile(level).orElseThrow()).isCloseTo(hours, within(1e-9));
    Distribution weighted = Distribution.of(new double[] {4, 1, 2}, new double[] {5, 5, 5});
    assertThat(weighted.quantile(level).orElseThrow()).isCloseTo(hours, within(1e-9));
  }

  @Test
  void aMemberOfDoubleWeightDrawsTheMiddleToItself() {
    double[] hours = {1, 2, 3};

    assertThat(Distribution.of(hours, new double[] {1, 1, 8}).quantile(0.5).orElseThrow())
        .isGreaterThan(2.5);
    assertThat(Distribution.of(hours, new double[] {1, 8, 1}).quantile(0.5)).hasValue(2);
    assertThat(Distribution.of(hours, new double[] {0, 4, 0}).window())
        .isEqualTo(Distribution.of(new double[] {2}).window());
  }

  @Test
  void probabilityIsTheWeightOfThoseThatAreThere() {
    Distribution some = Distribution.of(new double[] {NEVER, 3, 5}, new double[] {2, 1, 1});

    assertThat(some.probabilityBy(2.9)).isZero();
    assertThat(some.probabilityBy(3)).isEqualTo(0.25);
    assertThat(some.probabilityBy(1e6)).isEqualTo(0.5);
    assertThat(some.reached()).isEqualTo(0.5);
    assertThat(some.plus(2).probabilityBy(5)).isEqualTo(0.25);
  }

  @Test
  void thoseThatNeverArriveOpenTheWindow() {
    Distribution some = Distribution.of(new double[] {1, 2, 3, NEVER, NEVER});

    assertThat(some.quantile(0.5)).hasValue(3);
    assertThat(some.window().late()).isEmpty();
    assertThat(Distribution.NEVER.window()).isEqualTo(TimeWindow.NEVER);
    assertThat(Distribution.NEVER.reached()).isZero();
  }

  @Test
  void everyQuantileIsThereWithItsProbability() {
    double[] hours = new double[101];
    for (int i = 0; i < hours.length; i++) {
      hours[i] = i * i / 100.0;
    }
    Distribution square = Distribution.of(hours);
    for (int i = 0; i <= 100; i++) {
      double at = square.quantile(i / 100.0).orElseThrow();
      assertThat(at).isCloseTo(i * i / 100.0, within(1e-9));
      assertThat(square.probabilityBy(at + 1e-9)).isCloseTo(i / 100.0, within(0.011));
    }
  }

  @Test
  void refusesWhatIsNoDistribution() {
    assertThatThrownBy(() -> Distribution.of(new double[0])).isInstanceOf(InnerFault.class);
    assertThatThrownBy(() -> Distribution.of(new double[] {Double.NaN}))
        .isInstanceOf(InnerFault.class);
    assertThatThrownBy(() -> Distribution.of(new double[] {1}, new double[] {-1}))
        .isInstanceOf(InnerFault.class)
        .hasMessageContaining("weight");
    assertThatThrownBy(() -> Distribution.of(new double[] {1, 2}, new double[] {0, 0}))
        .isInstanceOf(InnerFault.class);
    assertThatThrownBy(() -> Distribution.of(new double[] {1, 2}, new double[] {1}))
        .isInstanceOf(InnerFault.class);
    assertThatThrownBy(() -> Distribution.of(new double[] {1, 2}).quantile(1.1))
        .isInstanceOf(InnerFault.class);
  }
}
