package doughtide.core.loaf;

import doughtide.core.rise.RiseCurve;
import java.util.OptionalDouble;
import org.apache.commons.math3.analysis.solvers.BrentSolver;

/**
 * Looks for the hour at which shaping must be done so that one dough meets its target at the oven.
 */
final class ShapeSearch {
  private static final double RISE_ACCURACY = 0.001;
  private static final double HOURS_ACCURACY = 0.002;
  private static final double LEAST_SLOPE = 0.02; // rise per hour
  private static final int SECANT_STEPS = 6;
  private static final int BRENT_STEPS = 60;

  private final RiseCurve bulk;
  private final Proof proof;
  private final LoafModel loaf;
  private final LoafScores scores;
  private final double low;
  private final double high;
  private final double latestForOven;
  private Missing missing = Missing.NOTHING;

  ShapeSearch(RiseCurve bulk, Proof proof, LoafModel loaf, LoafScores scores) {
    this.bulk = bulk;
    this.proof = proof;
    this.loaf = loaf;
    this.scores = scores;
    this.low = proof.restHours();
    double last = Math.min(bulk.endHours(), bulk.hoursToOver().orElse(bulk.endHours()));
    double oven = proof.ovenHour().orElse(Double.POSITIVE_INFINITY);
    this.latestForOven = oven - proof.roomHours() - LoafModel.SHORTEST_PROOF_HOURS;
    this.high = Math.min(last, latestForOven);
  }

  /** Why a search found nothing. */
  enum Missing {
    /** It did. */
    NOTHING,
    /** Even shaped at once, the loaf is past its target at the oven. */
    PAST_TARGET,
    /** Even shaped at once, the loaf has peaked and fallen or become weak by then. */
    PAST_BEST,
    /** The target is out of reach. */
    OUT_OF_REACH
  }

  /** Why the last search found nothing. */
  Missing missing() {
    return missing;
  }

  /** What stands for a missing shape point: bulk end at hour 0 if too late, never otherwise. */
  double missingHours() {
    return missing == Missing.OUT_OF_REACH ? Double.POSITIVE_INFINITY : 0;
  }

  /**
   * Finds the hour at which shaping is done.
   *
   * @param guess a first guess
   * @return the hour, or empty if the target cannot be met
   */
  OptionalDouble find(double guess) {
    missing = Missing.NOTHING;
    if (high <= low) {
      return none(low >= latestForOven ? Missing.PAST_TARGET : Missing.PAST_BEST);
    }
    OptionalDouble quick = secant(Math.min(Math.max(guess, low), high));
    return quick.isPresent() ? quick : bracketed();
  }

  private double miss(double from) {
    return loaf.riseAtEnd(bulk, from, scores, hoursToOven(from)).fraction()
        - loaf.target().fraction();
  }

  private double hoursToOven(double from) {
    return Math.max(proof.hoursToOven(from), LoafModel.SHORTEST_PROOF_HOURS);
  }

  private boolean isOverByOven(double from) {
    return loaf.run(bulk, from, scores, hoursToOven(from)).hoursToOver().isPresent();
  }

  private OptionalDouble none(Missing why) {
    missing = why;
    return OptionalDouble.empty();
  }

  private OptionalDouble secant(double guess) {
    double x = guess;
    double f = miss(x);
    double slope = Math.max(slopeAt(x), LEAST_SLOPE);
    for (int i = 0; i < SECANT_STEPS; i++) {
      if (Math.abs(f) < RISE_ACCURACY) {
        return OptionalDouble.of(x);
      }
      double next = x - f / slope;
      if (!(next > low && next < high)) {
        return OptionalDouble.empty();
      }
      double fNext = miss(next);
      slope = Math.max((fNext - f) / (next - x), LEAST_SLOPE);
      x = next;
      f = fNext;
    }
    return OptionalDouble.empty();
  }

  private double slopeAt(double x) {
    double width = Math.min(0.2, (high - low) / 4);
    double left = Math.max(x - width, low);
    double right = Math.min(left + 2 * width, high);
    return (bulk.riseAt(right).fraction() - bulk.riseAt(left).fraction()) / (right - left);
  }

  private OptionalDouble bracketed() {
    if (miss(low) >= 0) {
      return none(Missing.PAST_TARGET);
    }
    if (miss(high) < 0) {
      return none(isOverByOven(low) ? Missing.PAST_BEST : Missing.OUT_OF_REACH);
    }
    return OptionalDouble.of(
        new BrentSolver(HOURS_ACCURACY).solve(BRENT_STEPS, this::miss, low, high));
  }
}
