package doughtide.core.rise;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Test;

/** Against the exponential function of the language. */
class ExponentialTest {
  @Test
  void itIsTheExponentialFunctionToFourteenDigits() {
    for (double x = -699.9; x < 700; x += 0.0371) {
      assertThat(Exponential.of(x) / Math.exp(x)).as("e^%s", x).isCloseTo(1, within(1e-13));
    }
    for (double x = -30; x < 30; x += 0.00173) {
      assertThat(Exponential.of(x) / Math.exp(x)).as("e^%s", x).isCloseTo(1, within(1e-14));
    }
    assertThat(Exponential.of(0)).isEqualTo(1);
  }

  @Test
  void whereADoubleEndsSoDoesIt() {
    for (double x : new double[] {-800, -745, -700, 700, 709, 800}) {
      assertThat(Exponential.of(x)).isEqualTo(Math.exp(x));
    }
    assertThat(Exponential.of(Double.NEGATIVE_INFINITY)).isZero();
    assertThat(Exponential.of(Double.POSITIVE_INFINITY)).isInfinite();
    assertThat(Exponential.of(Double.NaN)).isNaN();
  }
}
