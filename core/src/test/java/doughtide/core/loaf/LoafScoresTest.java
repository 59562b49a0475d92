package doughtide.core.loaf;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class LoafScoresTest {
  @ParameterizedTest
  @CsvSource({"0, 0.3333333", "1, 0.6666667", "2, 0.1111111", "3, 0.4444444", "4, 0.7777778"})
  void errorsOfTheColdFillTheirRangeEvenly(int member, double rank) {
    // Abramowitz & Stegun 7.1.26 turns the score back into its rank, within 1.5e-7.
    double x = LoafScores.of(member).air() / Math.sqrt(2);
    double t = 1 / (1 + 0.3275911 * Math.abs(x));
    double series =
        t
            * (0.254829592
                + t * (-0.284496736 + t * (1.421413741 + t * (-1.453152027 + t * 1.061405429))));
    double error = Math.signum(x) * (1 - series * Math.exp(-x * x));

    assertThat((1 + error) / 2).isCloseTo(rank, within(1e-6));
  }

  @Test
  void errorsOfTheColdHaveNoLean() {
    double sum = 0;
    double squares = 0;
    for (int member = 0; member < 728; member++) {
      sum += LoafScores.of(member).air();
      squares += LoafScores.of(member).air() * LoafScores.of(member).air();
    }
    assertThat(sum).isCloseTo(0, within(1e-6));
    assertThat(squares / 728).isCloseTo(1, within(0.02));
  }
}
