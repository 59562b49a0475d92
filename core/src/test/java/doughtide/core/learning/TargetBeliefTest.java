package doughtide.core.learning;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import doughtide.core.quantity.Rise;
import java.util.Collections;
import java.util.List;
import org.junit.jupiter.api.Test;

class TargetBeliefTest {
  private static double factor(LoafResult... results) {
    return TargetBelief.of(List.of(results)).factor();
  }

  @Test
  void movesSlowlyTowardsWhatTheLoavesTell() {
    assertThat(factor()).isCloseTo(1, within(1e-9));
    double one = factor(LoafResult.UNDER);
    assertThat(one).isBetween(1.01, 1.1);
    assertThat(factor(LoafResult.UNDER, LoafResult.UNDER)).isGreaterThan(one);
    assertThat(factor(LoafResult.UNDER, LoafResult.RIGHT)).isBetween(1.0, one);
    assertThat(factor(LoafResult.OVER)).isLessThan(1);
    List<LoafResult> many = Collections.nCopies(200, LoafResult.OVER);
    assertThat(TargetBelief.of(many).factor()).isBetween(0.5, 0.9);
  }

  @Test
  void isHersOfAnyTarget() {
    TargetBelief belief = TargetBelief.of(List.of(LoafResult.UNDER));
    assertThat(belief.of(Rise.ofPercent(90)).percent())
        .isCloseTo(90 * belief.factor(), within(1e-9));
    assertThat(belief.loaves()).isEqualTo(1);
  }
}
