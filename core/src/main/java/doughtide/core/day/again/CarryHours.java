package doughtide.core.day.again;

import doughtide.core.day.BenchHours;
import doughtide.core.day.HandsOnTime;
import doughtide.core.day.Taken;
import java.util.stream.DoubleStream;
import java.util.stream.IntStream;

/**
 * When somebody can carry a tub or loaves into the cold or out of it.
 *
 * @param bench when somebody is there
 * @param others what the other doughs take
 * @param hands how many persons work
 */
record CarryHours(BenchHours bench, Taken others, int hands) {
  private static final int EACH = 12; // of the moments at five minutes, an hour apart

  boolean isFree(double hour) {
    return others.leavesHands(bench, hour, hour + HandsOnTime.CARRY_HOURS, hands);
  }

  /** Every five minutes from one hour to another at which it can be done. */
  double[] free(double from, double to) {
    return IntStream.rangeClosed(0, (int) Math.floor((to - from) / OpenSteps.FIVE_MINUTES))
        .mapToDouble(i -> from + i * OpenSteps.FIVE_MINUTES)
        .filter(this::isFree)
        .toArray();
  }

  /** Some of them: the first, about one an hour, and the last. */
  DoubleStream some(double from, double to) {
    double[] free = free(from, to);
    return IntStream.range(0, free.length)
        .filter(i -> i % EACH == 0 || i == free.length - 1)
        .mapToDouble(i -> free[i]);
  }

  /** The same in the first hours at the bench that are not over before an hour. */
  DoubleStream someSoon(double hour) {
    return bench.intervals().stream()
        .filter(at -> at.toHour() >= hour + HandsOnTime.CARRY_HOURS)
        .limit(1)
        .flatMapToDouble(at -> some(Math.max(at.fromHour(), hour), at.toHour()));
  }
}
