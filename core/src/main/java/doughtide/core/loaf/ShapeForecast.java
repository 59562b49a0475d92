package doughtide.core.loaf;

import doughtide.core.forecast.TimeWindow;
import doughtide.core.forecast.Warning;
import doughtide.core.quantity.Rise;
import doughtide.core.quantity.SentRecord;
import doughtide.core.quantity.Temperature;
import doughtide.core.rise.PieceCurve;
import doughtide.core.rise.RiseCurve;
import java.io.Serializable;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * When to end bulk fermentation so that the loaf is right at the oven, and what happens to it until
 * then.
 *
 * <p>The loaf goes on rising after it is shaped: through the bench rest, through the proof, and in
 * the cold for as long as its middle stays warm. So the bulk must stop early enough to leave room
 * for that. A warm dough has more rising ahead of it than a cool one, because it is livelier and
 * takes longer to cool down; it has to be shaped at a lower rise. Hours count from mixing.
 *
 * @param hours end of bulk fermentation
 * @param rise the rise that shows it in a sample jar kept with the dough: at the late end of its
 *     spread, middle, early end
 * @param target jar-equivalent rise wanted at the oven
 * @param likely the likely night, empty if there is none to tell of
 * @param warnings what the user should know
 */
public record ShapeForecast(
    TimeWindow hours, RiseRange rise, Rise target, Optional<Night> likely, List<Warning> warnings) {

  /** Copies the list. */
  public ShapeForecast {
    warnings = List.copyOf(warnings);
  }

  /** Whether a shape point exists. */
  public boolean isPossible() {
    return likely.isPresent();
  }

  /**
   * A rise with its uncertainty, per cent; empty where there is none.
   *
   * @param low 10 % quantile
   * @param likely median
   * @param high 90 % quantile
   */
  public record RiseRange(OptionalDouble low, OptionalDouble likely, OptionalDouble high)
      implements Serializable {
    /** No rise. */
    public static final RiseRange NONE =
        new RiseRange(OptionalDouble.empty(), OptionalDouble.empty(), OptionalDouble.empty());

    private Object writeReplace() {
      return SentRecord.of(this);
    }
  }

  /**
   * From the end of bulk fermentation to the oven, for a baker who shapes when the jar shows the
   * likely rise.
   *
   * @param bulkEndHours likely end of bulk fermentation
   * @param proofFromHours shaping done, into the basket
   * @param coldFromHours into the cold, if there is one
   * @param ovenHours into the oven
   * @param riseAtBake rise at the oven, with its uncertainty
   * @param bakeFrom when the loaf becomes good to bake, see {@link UsableRise}
   * @param bakeUntil until when it is good to bake, see {@link UsableRise}
   * @param over when it falls back or has become weak
   * @param warmer the same night in a cold 2 °C warmer than believed, if there is a cold
   * @param bulk the dough on the likely path
   * @param piece the loaf on the likely path, from {@code proofFromHours} on
   */
  public record Night(
      double bulkEndHours,
      double proofFromHours,
      OptionalDouble coldFromHours,
      double ovenHours,
      RiseRange riseAtBake,
      TimeWindow bakeFrom,
      TimeWindow bakeUntil,
      TimeWindow over,
      Optional<WarmerCold> warmer,
      RiseCurve bulk,
      PieceCurve piece) {

    /**
     * Hour at which the centre has cooled to a temperature; empty if it does not or there is no
     * cold.
     */
    public OptionalDouble coreAt(Temperature temperature) {
      return coldFromHours.isEmpty()
          ? OptionalDouble.empty()
          : piece.hoursUntilCoreIsAt(temperature);
    }
  }

  /**
   * What a cold that is warmer than believed does to the likely loaf.
   *
   * @param byCelsius how much warmer, K
   * @param riseAtBakePercent rise at the oven
   * @param bakeUntil until when it is good to bake, empty for beyond the time looked at
   */
  public record WarmerCold(double byCelsius, double riseAtBakePercent, OptionalDouble bakeUntil)
      implements Serializable {
    private Object writeReplace() {
      return SentRecord.of(this);
    }
  }
}
