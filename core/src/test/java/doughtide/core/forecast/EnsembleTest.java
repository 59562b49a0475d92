package doughtide.core.forecast;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import doughtide.core.dough.DoughFormula;
import doughtide.core.quantity.Rise;
import doughtide.core.quantity.Temperature;
import doughtide.core.rise.DoughTemperature;
import java.util.OptionalDouble;
import java.util.stream.IntStream;
import org.apache.commons.math3.distribution.NormalDistribution;
import org.apache.commons.math3.random.SobolSequenceGenerator;
import org.apache.commons.math3.random.Well19937c;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class EnsembleTest {
  @Test
  void drawsTheSobolSequenceOfCommonsMath() {
    SobolSequenceGenerator theirs = new SobolSequenceGenerator(SobolPoints.DIMENSIONS);
    for (int i = 0; i < 65_536; i++) {
      int number = i;
      double[] point =
          IntStream.range(0, SobolPoints.DIMENSIONS)
              .mapToDouble(d -> SobolPoints.rank(number, d, 0) - 0x1p-53)
              .toArray();
      assertThat(point).isEqualTo(theirs.nextVector());
    }
  }

  @Test
  void shiftsByFixedRandomDigits() {
    Well19937c random = new Well19937c(20_260_301);
    for (int passedOver = 0; passedOver < 18 * Unknown.values().length; passedOver++) {
      random.nextLong();
    }
    for (long shift : Ensemble.shift()) {
      assertThat(shift).isEqualTo(random.nextLong() >>> 12);
    }
  }

  @ParameterizedTest
  @ValueSource(doubles = {20, 30})
  void windowsOfTheUsualSizeAreThoseOfVeryManyMembers(double celsius) {
    TimeWindow usual = hoursTo50(celsius, Ensemble.USUAL_SIZE);
    TimeWindow many = hoursTo50(celsius, 16_384);

    assertThat(ratio(usual.early(), many.early())).isCloseTo(1, within(0.025));
    assertThat(ratio(usual.likely(), many.likely())).isCloseTo(1, within(0.01));
    assertThat(ratio(usual.late(), many.late())).isCloseTo(1, within(0.025));
  }

  private static double ratio(OptionalDouble one, OptionalDouble other) {
    return one.orElseThrow() / other.orElseThrow();
  }

  private static TimeWindow hoursTo50(double celsius, int members) {
    return RiseForecaster.standard()
        .withMembers(members)
        .forecast(
            DoughFormula.builder().build(),
            DoughTemperature.steady(Temperature.ofCelsius(celsius)),
            24)
        .hoursToRise(Rise.ofPercent(50));
  }

  @Test
  void normalScoresAreThoseOfCommonsMath() {
    NormalDistribution normal = new NormalDistribution(null, 0, 1);
    for (int i = 0; i < 4096; i++) {
      double rank = (i + 0.5) / 4096;
      assertThat(SobolPoints.normalScore(rank))
          .isEqualTo(normal.inverseCumulativeProbability(rank));
    }
  }
}
