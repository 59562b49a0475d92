package doughtide.core.forecast;

import static org.assertj.core.api.Assertions.assertThat;

import org.apache.commons.math3.random.SobolSequenceGenerator;
import org.junit.jupiter.api.Test;

class EnsembleTest {
  /** Our lines are those of the library's file. */
  @Test
  void drawsTheSobolSequenceOfCommonsMath() {
    SobolSequenceGenerator ours = Ensemble.sobol();
    SobolSequenceGenerator theirs = new SobolSequenceGenerator(Unknown.values().length);
    for (int i = 0; i < 2 * Ensemble.USUAL_SIZE; i++) {
      assertThat(ours.nextVector()).isEqualTo(theirs.nextVector());
    }
  }
}
