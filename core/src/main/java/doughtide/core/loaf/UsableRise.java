package doughtide.core.loaf;

import doughtide.core.quantity.Rise;
import doughtide.core.rise.PieceCurve;
import doughtide.core.rise.RiseCurve;
import java.io.Serializable;
import java.util.OptionalDouble;

/**
 * The rises between which a loaf is good to bake: from 85 % of its target, until nine tenths of the
 * greatest height its dough can reach, because a loaf that holds all the gas it can has nothing
 * left to spring with. Both shares are starting values.
 *
 * @param from rise from which it is good
 * @param until rise until which it is good
 */
public record UsableRise(Rise from, Rise until) implements Serializable {
  private static final double READY_SHARE = 0.85;
  private static final double HEIGHT_SHARE = 0.9;

  /**
   * For a target and the dough's own greatest height.
   *
   * @param target jar-equivalent rise wanted at the oven
   * @param bulk the dough, followed past its greatest height if it has one
   */
  public static UsableRise of(Rise target, RiseCurve bulk) {
    Rise greatest = bulk.riseAt(bulk.hoursToPeak().orElse(bulk.endHours()));
    double until = HEIGHT_SHARE * greatest.heightTimes() - 1;
    return new UsableRise(
        new Rise(READY_SHARE * target.fraction()), new Rise(Math.max(until, target.fraction())));
  }

  /** Hour from which a piece is good to bake; empty if it does not become so. */
  public OptionalDouble from(PieceCurve piece) {
    return piece.hoursToRise(from);
  }

  /**
   * Hour until which a piece is good to bake: risen too far, fallen back or weak; empty if not in
   * its time.
   */
  public OptionalDouble until(PieceCurve piece) {
    double far = piece.hoursToRise(until).orElse(Double.POSITIVE_INFINITY);
    double over = piece.hoursToOver().orElse(Double.POSITIVE_INFINITY);
    double end = Math.min(far, over);
    return Double.isFinite(end) ? OptionalDouble.of(end) : OptionalDouble.empty();
  }
}
