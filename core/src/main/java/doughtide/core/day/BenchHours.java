package doughtide.core.day;

import doughtide.core.quantity.InputException;
import java.io.Serializable;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;

/**
 * All hours at the bench, ascending and without overlap. Immutable.
 *
 * @param intervals one or more; those that touch or overlap are joined
 */
public record BenchHours(List<BenchInterval> intervals) implements Serializable {
  private static final double SAME_HOURS = 1e-6;

  /**
   * @param intervals one or more; those that touch or overlap are joined
   * @throws InputException if there is no interval
   */
  public BenchHours {
    if (intervals.isEmpty()) {
      throw new InputException(
          "bench-hours.none", "no hours at the bench are given: give at least one interval");
    }
    intervals = joined(intervals);
  }

  private static List<BenchInterval> joined(List<BenchInterval> given) {
    List<BenchInterval> sorted = new ArrayList<>(given);
    sorted.sort(Comparator.comparingDouble(BenchInterval::fromHour));
    List<BenchInterval> joined = new ArrayList<>();
    for (BenchInterval each : sorted) {
      int last = joined.size() - 1;
      if (last >= 0 && each.fromHour() <= joined.get(last).toHour() + SAME_HOURS) {
        BenchInterval before = joined.get(last);
        double end = Math.max(before.toHour(), each.toHour());
        joined.set(last, new BenchInterval(before.fromHour(), end));
      } else {
        joined.add(each);
      }
    }
    return List.copyOf(joined);
  }

  /** {@return first hour at the bench} */
  public double firstHour() {
    return intervals.get(0).fromHour();
  }

  /**
   * {@return whether work from one hour to another lies within one interval}
   *
   * @param from when the work begins, an hour on the axis of the day
   * @param to when the work ends, an hour on the axis of the day
   */
  public boolean contains(double from, double to) {
    return around(from, to).isPresent();
  }

  /**
   * {@return the interval that holds work from one hour to another}
   *
   * @param from when the work begins, an hour on the axis of the day
   * @param to when the work ends, an hour on the axis of the day
   */
  public Optional<BenchInterval> around(double from, double to) {
    return intervals.stream()
        .filter(i -> from >= i.fromHour() - SAME_HOURS && to <= i.toHour() + SAME_HOURS)
        .findFirst();
  }

  /**
   * {@return how much later work can be and still be done before the baker leaves; 0 outside}
   *
   * @param from when the work begins, an hour on the axis of the day
   * @param to when the work ends, an hour on the axis of the day
   */
  public double slackHours(double from, double to) {
    return around(from, to).map(i -> Math.max(0, i.toHour() - to)).orElse(0.0);
  }

  /**
   * The interval that work from one hour to another misses by least.
   *
   * @return its place in {@link #intervals}
   */
  int nearest(double from, double to) {
    int best = 0;
    for (int i = 1; i < intervals.size(); i++) {
      if (miss(i, from, to) < miss(best, from, to)) {
        best = i;
      }
    }
    return best;
  }

  /** By how many hours work from one hour to another does not fit an interval, 0 if it fits. */
  double miss(int interval, double from, double to) {
    BenchInterval it = intervals.get(interval);
    double miss = Math.max(0, it.fromHour() - from) + Math.max(0, to - it.toHour());
    return miss <= SAME_HOURS ? 0 : miss;
  }

  /** The same with one interval replaced. */
  BenchHours with(int interval, BenchInterval changed) {
    List<BenchInterval> all = new ArrayList<>(intervals);
    all.set(interval, changed);
    return new BenchHours(all);
  }
}
