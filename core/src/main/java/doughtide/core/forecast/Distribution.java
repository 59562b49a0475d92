package doughtide.core.forecast;

import doughtide.core.quantity.Checks;
import doughtide.core.quantity.InnerFault;
import doughtide.core.quantity.Value;
import java.util.Arrays;
import java.util.List;
import java.util.OptionalDouble;
import java.util.stream.IntStream;

/**
 * When something happens, as the weighted members of an ensemble have it: hours since mixing (or
 * feeding), positive infinity for members in which it never happens or not within the time looked
 * at. Serves other numbers of the members as well, where infinity stands for none. Immutable.
 *
 * <pre>{@code
 * Distribution half = forecast.passes(Rise.ofPercent(50));
 * double byNoon = half.probabilityBy(4.5); // 0…1
 * OptionalDouble quarter = half.quantile(0.25);
 * TimeWindow window = half.window();
 * }</pre>
 */
public final class Distribution extends Value {
  private static final long serialVersionUID = 1;

  /** The distribution of something that happens in no member. */
  public static final Distribution NEVER =
      new Distribution(new double[] {Double.POSITIVE_INFINITY}, new double[] {1});

  private static final double LEAST_SHARE = 1e-9; // of a quantile; less is rounding

  private final double[] sorted;
  private final double[] upTo; // share of the weight of members up to this one, the last is 1

  private final double stretch; // share of the weight that a quantile is the mean of

  private Distribution(double[] sorted, double[] upTo) {
    this.sorted = sorted;
    this.upTo = upTo;
    double squares = 0;
    for (int i = 0; i < upTo.length; i++) {
      double weight = upTo[i] - below(i);
      squares += weight * weight;
    }
    this.stretch = squares;
  }

  /**
   * {@return the distribution over members of equal weight}
   *
   * @param hours one value a member, positive infinity for never; one or more
   */
  public static Distribution of(double[] hours) {
    if (hours.length == 0 || Arrays.stream(hours).anyMatch(Double::isNaN)) {
      throw new InnerFault("a distribution needs members, and a number of each");
    }
    double[] sorted = hours.clone();
    Arrays.sort(sorted);
    double[] upTo = new double[sorted.length];
    Arrays.setAll(upTo, i -> (i + 1.0) / sorted.length);
    return new Distribution(sorted, upTo);
  }

  /**
   * {@return the distribution over weighted members}
   *
   * @param hours one value a member, positive infinity for never; one or more
   * @param weights as many, 0 or more, not all 0; scaled to a sum of 1
   * @throws InnerFault if there is no member, the numbers differ, an hour is not a number or a
   *     weight is negative
   */
  public static Distribution of(double[] hours, double[] weights) {
    if (hours.length == 0 || hours.length != weights.length) {
      throw new InnerFault("a distribution needs members and one weight for each of them");
    }
    if (weights[0] > 0 && Arrays.stream(weights).allMatch(each -> each == weights[0])) {
      return of(hours); // numbers alone are sorted in a tenth of the time
    }
    int[] order =
        IntStream.range(0, hours.length)
            .filter(i -> isMember(hours[i], weights[i]))
            .boxed()
            .sorted((a, b) -> Double.compare(hours[a], hours[b]))
            .mapToInt(Integer::intValue)
            .toArray();
    double[] sorted = Arrays.stream(order).mapToDouble(i -> hours[i]).toArray();
    double[] upTo = Arrays.stream(order).mapToDouble(i -> weights[i]).toArray();
    Arrays.parallelPrefix(upTo, Double::sum);
    double sum = upTo.length == 0 ? 0 : upTo[upTo.length - 1];
    Checks.inside("sum of the weights of the members", sum, 1e-300, 1e300, "");
    return new Distribution(sorted, Arrays.stream(upTo).map(each -> each / sum).toArray());
  }

  private static boolean isMember(double hours, double weight) {
    if (Double.isNaN(hours)) {
      throw new InnerFault("the hour of a member must be a number, or infinite for never");
    }
    return Checks.inside("weight of a member", weight, 0, 1e300, "") > 0;
  }

  /** {@return the share of members in which it happens within the time looked at, 0…1} */
  public double reached() {
    return probabilityBy(Double.MAX_VALUE);
  }

  /**
   * {@return the probability that it has happened by an hour, 0…1}
   *
   * @param hours since mixing
   */
  public double probabilityBy(double hours) {
    int members = 0;
    int end = sorted.length;
    while (members < end) {
      int middle = (members + end) >>> 1;
      if (sorted[middle] <= hours) {
        members = middle + 1;
      } else {
        end = middle;
      }
    }
    return members == 0 ? 0 : upTo[members - 1];
  }

  /**
   * {@return the hour by which a share of the members is there; empty if that many never are} The
   * mean over a stretch of the members' weight, as long as the weight of one of so many equal
   * members as these are worth (their effective number by Kish): type 7 of the weighted quantiles
   * of Akinshin 2023, arXiv 2304.07265 (from memory), which with equal weights is type 7 of Hyndman
   * &amp; Fan 1996, Am Stat 50:361.
   *
   * @param level 0…1
   */
  public OptionalDouble quantile(double level) {
    Checks.inside("quantile", level, 0, 1, "");
    double low = level * (1 - stretch);
    double high = low + stretch;
    int first = firstAbove(low);
    double mean = sorted[first];
    for (int i = first + 1; i < sorted.length && upTo[i - 1] < high; i++) {
      double share = (Math.min(upTo[i], high) - Math.max(upTo[i - 1], low)) / stretch;
      mean += share > LEAST_SHARE ? share * (sorted[i] - sorted[first]) : 0;
    }
    return finite(mean);
  }

  private int firstAbove(double weight) {
    int found = Arrays.binarySearch(upTo, weight + LEAST_SHARE * stretch);
    return Math.min(found >= 0 ? found + 1 : -found - 1, sorted.length - 1);
  }

  private double below(int member) {
    return member == 0 ? 0 : upTo[member - 1];
  }

  private static OptionalDouble finite(double hours) {
    return Double.isFinite(hours) ? OptionalDouble.of(hours) : OptionalDouble.empty();
  }

  /** {@return the hours by which one member in ten, half and nine in ten are there} */
  public TimeWindow window() {
    return new TimeWindow(quantile(0.1), quantile(0.5), quantile(0.9), reached());
  }

  /**
   * {@return the same moved by some hours}
   *
   * @param hours to add to every member, negative for earlier
   */
  public Distribution plus(double hours) {
    return new Distribution(Arrays.stream(sorted).map(each -> each + hours).toArray(), upTo);
  }

  @Override
  protected List<?> parts() {
    return List.of(list(sorted), list(upTo));
  }

  /** In a line, for logs: the window, and the share that is there at all. */
  @Override
  public String toString() {
    return window() + ", reached in " + Checks.plain(Math.rint(reached() * 1000) / 10) + " %";
  }
}
