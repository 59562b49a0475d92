package doughtide.core.loaf;

import doughtide.core.Internal;
import doughtide.core.forecast.Distribution;
import doughtide.core.forecast.RiseForecast;
import doughtide.core.quantity.Checks;
import doughtide.core.quantity.Rise;
import doughtide.core.quantity.SentRecord;
import doughtide.core.rise.RiseCurve;
import doughtide.core.rise.Unknowns;
import java.io.Serializable;
import java.util.Arrays;
import java.util.Comparator;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.stream.IntStream;
import org.apache.commons.math3.stat.regression.OLSMultipleLinearRegression;

/**
 * Why a loaf came to the oven with too little rise, or with too much. Every member of a forecast is
 * shaped at the same hour; of those that come out as the loaf did, each is explained by the unknown
 * that a linear fit of the rise over all members says has moved it most.
 *
 * <pre>{@code
 * List<LoafCauses.Likely> why = LoafCauses.ofUnder(forecast, proof, 5.5);
 * }</pre>
 */
@Internal
public final class LoafCauses {
  private static final double TAIL = 0.1; // where fewer came out so, this share of the members
  private static final double LEAST_HEIGHT = 0.05;
  private static final int FEWEST_DIFFERENT = 40; // for a fit of ten slopes
  private static final double TOO_FAR = 1.2; // of the target, starting value as for a right loaf

  private LoafCauses() {}

  /** What may have been otherwise than believed. */
  @Internal
  public enum Cause {
    /** How lively the starter was, how soon and how fast its culture worked. */
    STARTER,
    /** The dough's temperature against what was noted. */
    DOUGH_TEMPERATURE,
    /** How well the dough held its gas. */
    RETENTION,
    /** How much gas hands took out. */
    HANDS,
    /** How cold the cold was, and how fast it cooled the loaf. */
    COLD
  }

  /**
   * A cause.
   *
   * @param cause what was otherwise than believed
   * @param share of the doughs that come out so and that it explains, 0…1
   */
  @Internal
  public record Likely(Cause cause, double share) implements Serializable {
    /** Checks that the cause is given. */
    public Likely {
      Checks.given("cause", cause);
    }

    private Object writeReplace() {
      return SentRecord.of(this);
    }
  }

  /**
   * Why it may have risen too little.
   *
   * @param bulk the dough, with its readings, by members that count alike
   * @param proof what came after bulk fermentation
   * @param shapedHours when bulk fermentation ended, hours since mixing
   * @return the likeliest first; none if no hours can be given, or too few different doughs explain
   *     its readings
   */
  public static List<Likely> ofUnder(RiseForecast bulk, Proof proof, double shapedHours) {
    return of(bulk, proof, shapedHours, -1);
  }

  /** Why it may have risen too far; the parameters are those of {@link #ofUnder}. */
  public static List<Likely> ofOver(RiseForecast bulk, Proof proof, double shapedHours) {
    return of(bulk, proof, shapedHours, 1);
  }

  private static List<Likely> of(
      RiseForecast bulk, Proof proof, double shapedHours, int direction) {
    double from = shapedHours + proof.restHours();
    double toOven = proof.hoursToOven(from);
    long different = bulk.ensemble().members().stream().distinct().count();
    if (!bulk.isPossible()
        || from > bulk.hours()
        || !(toOven > 0)
        || different < FEWEST_DIFFERENT) {
      return List.of();
    }
    LoafModel loaf = LoafModel.of(bulk.formula(), proof, LoafSettings.SEARCH);
    boolean isCold = proof.cold().isPresent();
    double[] logHeight =
        IntStream.range(0, bulk.curves().size())
            .mapToDouble(i -> logHeight(bulk.curves().get(i), loaf, i, from, toOven))
            .toArray();
    double[][] unknowns =
        IntStream.range(0, logHeight.length)
            .mapToObj(i -> unknowns(bulk.ensemble().members().get(i), LoafScores.of(i), isCold))
            .toArray(double[][]::new);
    return counted(logHeight, unknowns, limit(logHeight, loaf.target(), direction), direction);
  }

  private static double logHeight(
      RiseCurve curve, LoafModel loaf, int member, double from, double toOven) {
    double rise = loaf.riseAtEnd(curve, from, LoafScores.of(member), toOven).fraction();
    return Math.log(Math.max(rise, LEAST_HEIGHT));
  }

  /** In the order of {@link #causeOf}; without a cold nothing is unknown of it. */
  private static double[] unknowns(Unknowns member, LoafScores scores, boolean isCold) {
    return new double[] {
      Math.log(member.vigour()),
      Math.log(member.lagFactor()),
      Math.log(member.rateScale()),
      member.curves().startsWith("humilis") ? 1 : 0,
      member.temperatureErrorCelsius(),
      member.retentionShift(),
      Math.log(member.startingAir()),
      scores.hands(),
      isCold ? scores.air() : 0,
      isCold ? scores.film() : 0
    };
  }

  private static Cause causeOf(int unknown) {
    return switch (unknown) {
      case 0, 1, 2, 3 -> Cause.STARTER;
      case 4 -> Cause.DOUGH_TEMPERATURE;
      case 5, 6 -> Cause.RETENTION;
      case 7 -> Cause.HANDS;
      default -> Cause.COLD;
    };
  }

  /** The rise at which right ends; nearer where too few are beyond. */
  static double limit(double[] logHeight, Rise target, int direction) {
    LoafLimits right = LoafLimits.right(target);
    double end = direction < 0 ? right.from().fraction() : TOO_FAR * target.fraction();
    double tail =
        Distribution.of(logHeight).quantile(direction < 0 ? TAIL : 1 - TAIL).orElse(Math.log(end));
    return direction < 0 ? Math.max(Math.log(end), tail) : Math.min(Math.log(end), tail);
  }

  /**
   * Counts causes.
   *
   * @param logHeight of each member's loaf
   * @param unknowns of each member, in the order of {@link #causeOf}
   * @param limit from which members count
   * @param direction −1 for those under it, 1 for those over
   */
  static List<Likely> counted(
      double[] logHeight, double[][] unknowns, double limit, int direction) {
    int[] moving = IntStream.range(0, unknowns[0].length).filter(k -> moves(unknowns, k)).toArray();
    double[][] x =
        Arrays.stream(unknowns)
            .map(row -> Arrays.stream(moving).mapToDouble(k -> row[k]).toArray())
            .toArray(double[][]::new);
    OLSMultipleLinearRegression fit = new OLSMultipleLinearRegression();
    fit.newSampleData(logHeight, x);
    double[] slopes = fit.estimateRegressionParameters();
    double[] means =
        IntStream.range(0, moving.length)
            .mapToDouble(k -> Arrays.stream(x).mapToDouble(row -> row[k]).average().orElse(0))
            .toArray();
    Map<Cause, Integer> counts = new EnumMap<>(Cause.class);
    int all = 0;
    for (int i = 0; i < x.length; i++) {
      if (direction * (logHeight[i] - limit) >= 0) {
        counts.merge(cause(x[i], means, slopes, moving, direction), 1, Integer::sum);
        all++;
      }
    }
    double members = all;
    return counts.entrySet().stream()
        .map(each -> new Likely(each.getKey(), each.getValue() / members))
        .sorted(Comparator.comparingDouble(Likely::share).reversed())
        .toList();
  }

  private static boolean moves(double[][] unknowns, int k) {
    double first = unknowns[0][k];
    return Arrays.stream(unknowns).anyMatch(row -> Math.abs(row[k] - first) > 1e-9);
  }

  private static Cause cause(
      double[] x, double[] means, double[] slopes, int[] moving, int direction) {
    Map<Cause, Double> moved = new EnumMap<>(Cause.class);
    for (int k = 0; k < moving.length; k++) {
      moved.merge(causeOf(moving[k]), direction * slopes[k + 1] * (x[k] - means[k]), Double::sum);
    }
    return moved.entrySet().stream()
        .max(Map.Entry.comparingByValue())
        .map(Map.Entry::getKey)
        .orElse(Cause.STARTER);
  }
}
