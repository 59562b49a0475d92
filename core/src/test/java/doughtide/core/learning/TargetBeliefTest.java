package doughtide.core.learning;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import doughtide.core.quantity.Rise;
import java.util.Collections;
import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;

class TargetBeliefTest {
  private static double factor(LoafResult... results) {
    return TargetBelief.of(Stream.of(results).map(each -> loaf(each, 1)).toList()).factor();
  }

  private static TargetBelief.Loaf loaf(LoafResult result, double ofTarget) {
    return new TargetBelief.Loaf(result, ofTarget);
  }

  private static double factor(LoafResult result, double ofTarget) {
    return TargetBelief.of(List.of(loaf(result, ofTarget))).factor();
  }

  @Test
  void movesSlowlyTowardsWhatTheLoavesTell() {
    assertThat(factor()).isCloseTo(1, within(1e-9));
    double one = factor(LoafResult.UNDER);
    assertThat(one).isBetween(1.01, 1.1);
    assertThat(factor(LoafResult.UNDER, LoafResult.UNDER)).isGreaterThan(one);
    assertThat(factor(LoafResult.UNDER, LoafResult.RIGHT)).isBetween(1.0, one);
    assertThat(factor(LoafResult.OVER)).isLessThan(1);
    List<TargetBelief.Loaf> many = Collections.nCopies(200, loaf(LoafResult.OVER, 1));
    assertThat(TargetBelief.of(many).factor()).isBetween(0.5, 0.9);
  }

  /** What was shaped late and came out over tells of the hour, not of the target. */
  @Test
  void aLoafShapedAtAnotherHourTellsLessIfThatExplainsIt() {
    assertThat(factor(LoafResult.OVER, 1.5)).isBetween(factor(LoafResult.OVER), 1.0);
    assertThat(factor(LoafResult.UNDER, 0.7)).isBetween(1.0, factor(LoafResult.UNDER));
    assertThat(factor(LoafResult.RIGHT, 1.5)).isGreaterThan(1.05);
    assertThat(factor(LoafResult.OVER, 0.7)).isLessThan(factor(LoafResult.OVER));
  }

  @Test
  void aRiseFarFromItsTargetCountsAsTheFarthest() {
    Rise target = Rise.ofPercent(85);
    TargetBelief.Loaf flat = TargetBelief.Loaf.of(LoafResult.UNDER, Rise.ofPercent(2), target);
    TargetBelief.Loaf high = TargetBelief.Loaf.of(LoafResult.OVER, Rise.ofPercent(102), target);
    assertThat(flat.ofTarget()).isEqualTo(0.6);
    assertThat(high.ofTarget()).isCloseTo(1.2, within(1e-9));
  }

  @Test
  void isHersOfAnyTarget() {
    TargetBelief belief = TargetBelief.of(List.of(loaf(LoafResult.UNDER, 1)));
    assertThat(belief.of(Rise.ofPercent(90)).percent())
        .isCloseTo(90 * belief.factor(), within(1e-9));
    assertThat(belief.loaves()).isEqualTo(1);
  }
}
