package doughtide.core.learning;

import doughtide.core.Internal;
import doughtide.core.quantity.Rise;
import doughtide.core.quantity.SentRecord;
import java.io.Serializable;
import java.util.List;
import org.apache.commons.math3.distribution.NormalDistribution;

/**
 * How a baker's own target rise lies against the one that was used, as her loaves tell: who finds
 * them under wants more. Bayes' rule on a grid of the logarithm; one loaf moves it by little.
 *
 * <pre>{@code
 * TargetBelief belief = TargetBelief.of(List.of(LoafResult.UNDER, LoafResult.UNDER));
 * double percent = belief.of(Rise.ofPercent(90)).percent(); // somewhat more than 90
 * }</pre>
 *
 * @param factor her target over the one used, 0.5…2
 * @param loaves how many told it
 */
@Internal
public record TargetBelief(double factor, int loaves) implements Serializable {
  private static final double DEVIATION =
      0.15; // of the logarithm, from baker to baker: start value
  private static final double LOAF = 0.3; // of the logarithm, from loaf to loaf: starting value
  private static final double UNDER = Math.log(0.85); // of the target, as for a right loaf
  private static final double OVER = Math.log(1.2);
  private static final double WIDEST = 0.6;
  private static final int STEPS = 240;

  /**
   * What results tell.
   *
   * @param results of loaves that were to reach the target, may be none
   */
  public static TargetBelief of(List<LoafResult> results) {
    double sum = 0;
    double mean = 0;
    for (int i = 0; i <= STEPS; i++) {
      double shift = WIDEST * (2.0 * i / STEPS - 1);
      double weight = Math.exp(-shift * shift / (2 * DEVIATION * DEVIATION));
      for (LoafResult result : results) {
        weight *= chance(result, shift);
      }
      sum += weight;
      mean += weight * shift;
    }
    return new TargetBelief(Math.exp(mean / sum), results.size());
  }

  private static double chance(LoafResult result, double shift) {
    NormalDistribution loaf = new NormalDistribution(null, 0, LOAF);
    double under = loaf.cumulativeProbability(UNDER + shift);
    double notOver = loaf.cumulativeProbability(OVER + shift);
    return switch (result) {
      case UNDER -> under;
      case RIGHT -> notOver - under;
      case OVER -> 1 - notOver;
    };
  }

  /** Her target, where this one was used. */
  public Rise of(Rise used) {
    return Rise.ofPercent(used.percent() * factor);
  }

  private Object writeReplace() {
    return SentRecord.of(this);
  }
}
