package doughtide.core.learning;

import doughtide.core.Internal;
import doughtide.core.quantity.Checks;
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
 * TargetBelief.Loaf under = new TargetBelief.Loaf(LoafResult.UNDER, 1);
 * TargetBelief belief = TargetBelief.of(List.of(under, under));
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
  private static final double LOWEST = 0.6; // farther off, something else was wrong
  private static final double HIGHEST = 1.6; // starting values

  /**
   * A loaf and how it came out. One that was shaped late, and so stood higher than its target, says
   * less about the target if it was over, and more if it was right.
   *
   * @param result how it came out
   * @param ofTarget its likely rise at the oven over the target, as it was shaped, 0.6…1.6; 1 where
   *     the hour of shaping is not known
   */
  public record Loaf(LoafResult result, double ofTarget) implements Serializable {
    /** Checks. */
    public Loaf {
      Checks.given("result", result);
      Checks.inRange("rise over the target", ofTarget, LOWEST, HIGHEST, "");
    }

    /**
     * A loaf whose likely rise at the oven is known.
     *
     * @param result how it came out
     * @param atOven that rise; what lies outside 0.6 to 1.6 times the target counts as that
     * @param target the rise that was wanted
     */
    public static Loaf of(LoafResult result, Rise atOven, Rise target) {
      double over = atOven.percent() / target.percent();
      return new Loaf(result, Math.min(Math.max(over, LOWEST), HIGHEST));
    }
  }

  /**
   * What results tell.
   *
   * @param loaves that were to reach the target, may be none
   */
  public static TargetBelief of(List<Loaf> loaves) {
    double sum = 0;
    double mean = 0;
    for (int i = 0; i <= STEPS; i++) {
      double shift = WIDEST * (2.0 * i / STEPS - 1);
      double weight = Math.exp(-shift * shift / (2 * DEVIATION * DEVIATION));
      for (Loaf loaf : loaves) {
        weight *= chance(loaf.result(), shift - Math.log(loaf.ofTarget()));
      }
      sum += weight;
      mean += weight * shift;
    }
    return new TargetBelief(Math.exp(mean / sum), loaves.size());
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
