package doughtide.core.loaf;

import doughtide.core.Internal;
import doughtide.core.quantity.Checks;
import doughtide.core.quantity.Rise;
import doughtide.core.quantity.SentRecord;
import doughtide.core.rise.PieceCurve;
import java.io.Serializable;
import java.util.OptionalDouble;

/**
 * Between which heights a loaf is good at the oven. <em>Right</em> is from 85 to 120 % of its
 * target; <em>usable</em> from 85 % until nine tenths of the greatest height it can hold, because a
 * loaf that holds all the gas it can has nothing left to spring with. Neither has fallen or become
 * too weak to hold a cut. The shares are starting values.
 *
 * @param from rise from which it is good
 * @param until rise until which it is good; empty where its own greatest height decides
 */
@Internal
public record LoafLimits(Rise from, OptionalDouble until) implements Serializable {
  /** Refuses nothing where something is needed. */
  public LoafLimits {
    Checks.given("from", from);
    Checks.given("until", until);
  }

  private static final double READY_SHARE = 0.85;
  private static final double FAR_SHARE = 1.2;
  private static final double HEIGHT_SHARE = 0.9;

  /** Right for a target. */
  public static LoafLimits right(Rise target) {
    return new LoafLimits(
        new Rise(READY_SHARE * target.fraction()),
        OptionalDouble.of(FAR_SHARE * target.fraction()));
  }

  /** Usable for a target. */
  public static LoafLimits usable(Rise target) {
    return new LoafLimits(new Rise(READY_SHARE * target.fraction()), OptionalDouble.empty());
  }

  /** Hour from which a piece is good to bake; empty if it does not become so. */
  public OptionalDouble from(PieceCurve piece) {
    return piece.hoursToRise(from);
  }

  /** Hour until which a piece is good to bake; empty if that lies beyond its time. */
  public OptionalDouble until(PieceCurve piece) {
    OptionalDouble far =
        until.isPresent()
            ? piece.hoursToRise(new Rise(until.getAsDouble()))
            : piece.hoursToFull(HEIGHT_SHARE);
    double end =
        Math.min(
            far.orElse(Double.POSITIVE_INFINITY),
            piece.hoursToOver().orElse(Double.POSITIVE_INFINITY));
    return Double.isFinite(end) ? OptionalDouble.of(end) : OptionalDouble.empty();
  }

  /** Whether a piece is good at an hour. */
  public boolean isGood(PieceCurve piece, double hour) {
    return from(piece).orElse(Double.POSITIVE_INFINITY) <= hour
        && until(piece).orElse(Double.POSITIVE_INFINITY) >= hour;
  }

  private Object writeReplace() {
    return SentRecord.of(this);
  }
}
