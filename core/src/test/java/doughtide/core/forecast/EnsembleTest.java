package doughtide.core.forecast;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.Arrays;
import org.apache.commons.math3.distribution.NormalDistribution;
import org.apache.commons.math3.random.SobolSequenceGenerator;
import org.apache.commons.math3.random.Well19937c;
import org.junit.jupiter.api.Test;

class EnsembleTest {
  @Test
  void drawsTheSobolSequenceOfCommonsMath() {
    assertThat(Unknown.values()).hasSize(SobolPoints.DIMENSIONS);
    SobolPoints ours = new SobolPoints();
    SobolSequenceGenerator theirs = new SobolSequenceGenerator(SobolPoints.DIMENSIONS);
    for (int i = 0; i < 65_536; i++) {
      double[] point = Arrays.stream(ours.next()).mapToDouble(bits -> bits * 0x1p-52).toArray();
      assertThat(point).isEqualTo(theirs.nextVector());
    }
  }

  @Test
  void shiftsByFixedRandomDigits() {
    Well19937c random = new Well19937c(20_260_301);
    for (long shift : Ensemble.shift()) {
      assertThat(shift).isEqualTo(random.nextLong() & ((1L << 52) - 1));
    }
  }

  @Test
  void normalScoresAreThoseOfCommonsMath() {
    NormalDistribution normal = new NormalDistribution(null, 0, 1);
    for (int i = 0; i < 4096; i++) {
      double rank = (i + 0.5) / 4096;
      assertThat(Ensemble.normalScore(rank)).isEqualTo(normal.inverseCumulativeProbability(rank));
    }
  }
}
