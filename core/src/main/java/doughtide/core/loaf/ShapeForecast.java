package doughtide.core.loaf;

import doughtide.core.Internal;
import doughtide.core.forecast.Distribution;
import doughtide.core.forecast.TimeWindow;
import doughtide.core.forecast.Warning;
import doughtide.core.quantity.Checks;
import doughtide.core.quantity.Rise;
import doughtide.core.quantity.SentRecord;
import doughtide.core.quantity.Temperature;
import doughtide.core.rise.PieceCurve;
import doughtide.core.rise.RiseCurve;
import java.io.Serializable;
import java.util.Arrays;
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
 * @param bulkEnd end of bulk fermentation, hours: when the jar of a dough shows the likely rise;
 *     never for members whose jar does not
 * @param bulkEndOfMembers when the loaf of each member would come out right, in the order of the
 *     ensemble, whatever its jar shows then; positive infinity for a member that has none
 * @param rise the rise that shows it in a sample jar kept with the dough, which nobody folds or
 *     shapes: of a slow dough, the likely, of a quick one, in the order of their heights
 * @param loafRise rise of the loaf just shaped, over the dough after mixing: less than the jar's by
 *     what hands took out
 * @param target rise of the loaf wanted at the oven
 * @param likely the likely night, empty if there is none to tell of
 * @param spoils what spoils it first
 * @param rule what to do at an hour and a height of the jar
 * @param warnings what the user should know
 */
public record ShapeForecast(
    Distribution bulkEnd,
    List<Double> bulkEndOfMembers,
    RiseRange rise,
    RiseRange loafRise,
    Rise target,
    Optional<Night> likely,
    Spoils spoils,
    @Internal JarRule rule,
    List<Warning> warnings) {

  /**
   * Copies the lists.
   *
   * @param bulkEnd end of bulk fermentation, hours; never for members that have none
   * @param bulkEndOfMembers the same, one value a member in the order of the ensemble
   * @param rise the rise that shows it in a sample jar kept with the dough, which nobody folds or
   *     shapes: of a slow dough, the likely, of a quick one, in the order of their heights
   * @param loafRise rise of the loaf just shaped, over the dough after mixing: less than the jar's
   *     by what hands took out
   * @param target rise of the loaf wanted at the oven
   * @param likely the likely night, empty if there is none to tell of
   * @param spoils what spoils it first
   * @param rule what to do at an hour and a height of the jar
   * @param warnings what the user should know
   */
  public ShapeForecast {
    bulkEndOfMembers = List.copyOf(bulkEndOfMembers);
    warnings = List.copyOf(warnings);
  }

  /** {@return the end of bulk fermentation as early, likely and late} */
  public TimeWindow hours() {
    return bulkEnd.window();
  }

  /**
   * {@return the same with the hours of other members}
   *
   * @param hoursOfMembers when the loaf of each would come out right
   * @hidden
   */
  @Internal
  public ShapeForecast withEndsOfMembers(double[] hoursOfMembers) {
    return new ShapeForecast(
        bulkEnd,
        Arrays.stream(hoursOfMembers).boxed().toList(),
        rise,
        loafRise,
        target,
        likely,
        spoils,
        rule,
        warnings);
  }

  /** {@return whether a shape point exists} */
  public boolean isPossible() {
    return likely.isPresent();
  }

  /** In a line, for logs: the hours to shape at, and what the jar shows then. */
  @Override
  public String toString() {
    TimeWindow hours = hours();
    return isPossible()
        ? "shape after "
            + Checks.line(hours.early(), hours.likely(), hours.late())
            + " h when the jar shows "
            + rise
        : "no hour to shape at";
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

    @Override
    public String toString() {
      return Checks.line(low, likely, high) + " %";
    }

    /**
     * {@return a range, of a distribution of percents}
     *
     * @param percents rises, per cent of the volume after mixing
     */
    public static RiseRange of(Distribution percents) {
      return new RiseRange(percents.quantile(0.1), percents.quantile(0.5), percents.quantile(0.9));
    }
  }

  /**
   * The smallest change with which one loaf in ten more is too far at the oven: past 120 % of its
   * target, fallen or weak.
   *
   * @param warmerCelsius a cold so much warmer than believed; empty if even 4 °C does not, or there
   *     is no cold
   * @param laterHours shaping so much later; empty if even three hours do not
   */
  public record Spoils(OptionalDouble warmerCelsius, OptionalDouble laterHours)
      implements Serializable {
    /** Nothing known of it. */
    public static final Spoils NOTHING = new Spoils(OptionalDouble.empty(), OptionalDouble.empty());

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
   * @param bakeFrom when the loaf becomes good to bake, see {@link LoafLimits}
   * @param bakeUntil until when it is good to bake, see {@link LoafLimits}
   * @param over when it falls back or has become weak
   * @param warmer the same night in a cold 2 °C warmer than believed, if there is a cold
   * @param bulk the dough on the likely path
   * @param scores what is not known of its loaf
   * @param piece the loaf on the likely path, from {@code proofFromHours} on
   * @param members loaves of members of the ensemble, each from its own hour on
   * @param weights of the members
   */
  public record Night(
      double bulkEndHours,
      double proofFromHours,
      OptionalDouble coldFromHours,
      double ovenHours,
      RiseRange riseAtBake,
      Distribution bakeFrom,
      Distribution bakeUntil,
      Distribution over,
      Optional<WarmerCold> warmer,
      @Internal RiseCurve bulk,
      @Internal LoafScores scores,
      @Internal PieceCurve piece,
      @Internal List<PieceCurve> members,
      List<Double> weights) {

    /**
     * Copies the list.
     *
     * @param bulkEndHours likely end of bulk fermentation
     * @param proofFromHours shaping done, into the basket
     * @param coldFromHours into the cold, if there is one
     * @param ovenHours into the oven
     * @param riseAtBake rise at the oven, with its uncertainty
     * @param bakeFrom when the loaf becomes good to bake, see {@link LoafLimits}
     * @param bakeUntil until when it is good to bake, see {@link LoafLimits}
     * @param over when it falls back or has become weak
     * @param warmer the same night in a cold 2 °C warmer than believed, if there is a cold
     * @param bulk the dough on the likely path
     * @param scores what is not known of its loaf
     * @param piece the loaf on the likely path, from {@code proofFromHours} on
     * @param members loaves of members of the ensemble, each from its own hour on
     * @param weights of the members
     */
    public Night {
      members = List.copyOf(members);
      weights = List.copyOf(weights);
    }

    /** In a line, for logs: shaping, oven, and the rise there. */
    @Override
    public String toString() {
      return "bulk to hour "
          + Checks.line(OptionalDouble.of(bulkEndHours))
          + ", oven at hour "
          + Checks.line(OptionalDouble.of(ovenHours))
          + " risen "
          + riseAtBake;
    }

    /**
     * {@return when the centre has cooled to a temperature, as if every loaf went into the cold at
     * the likely hour; nothing where there is no cold}
     *
     * @param temperature of the centre
     */
    public Distribution coreAt(Temperature temperature) {
      if (coldFromHours.isEmpty()) {
        return Distribution.NEVER;
      }
      return Distribution.of(
          members.stream()
              .mapToDouble(
                  each ->
                      proofFromHours
                          - each.hours()[0]
                          + each.hoursUntilCoreIsAt(temperature).orElse(Double.POSITIVE_INFINITY))
              .toArray(),
          weights.stream().mapToDouble(each -> each).toArray());
    }
  }

  /**
   * What a cold that is warmer than believed does to half of the loaves.
   *
   * @param byCelsius how much warmer, K
   * @param riseAtBakePercent likely rise at the oven
   * @param bakeUntil until when the likely loaf is good to bake, empty for beyond the time looked
   *     at
   */
  public record WarmerCold(double byCelsius, double riseAtBakePercent, OptionalDouble bakeUntil)
      implements Serializable {
    private Object writeReplace() {
      return SentRecord.of(this);
    }
  }
}
