package doughtide.core.day;

import java.util.ArrayList;
import java.util.List;

/** Whether the loads of a day can be baked at all between the hours at the bench. */
final class OvenRoom {
  private static final double SAME_HOURS = 1e-6;

  private OvenRoom() {}

  /** False only where no plan can be; the doughs share one oven and the hours at the bench. */
  static boolean isEnough(List<BakeDay> doughs) {
    BakeDay first = doughs.get(0);
    double cool = first.oven().coolHours();
    double last = doughs.stream().mapToDouble(BakeDay::readyHour).max().orElseThrow() - cool;
    double earliest =
        doughs.stream()
            .mapToDouble(day -> day.readyHour() - cool - Draft.ovenBusyHours(day))
            .min()
            .orElseThrow();
    double oldest = earliest - DraftSearch.OLDEST_BREAD_HOURS;
    long possible =
        first.bench().intervals().stream().mapToLong(at -> loads(at, oldest, last, first)).sum();
    return possible >= first.oven().batches(doughs.stream().mapToInt(BakeDay::loaves).sum());
  }

  private static long loads(BenchInterval at, double oldest, double last, BakeDay day) {
    double each = day.oven().bakeHours() + HandsOnTime.LOAD_HOURS;
    double hours = Math.min(at.toHour(), last) - Math.max(at.fromHour(), oldest);
    return Math.max(0, (long) Math.floor(hours / each + SAME_HOURS));
  }

  /**
   * Whether all batches of a dough can be baked without a pause while somebody is at the bench, in
   * time and not too long before. False only where no plan can be.
   */
  static boolean hasPlaceFor(BakeDay day) {
    double busy = Draft.ovenBusyHours(day);
    double last = day.readyHour() - day.oven().coolHours();
    double oldest = last - DraftSearch.OLDEST_BREAD_HOURS;
    return joined(day).stream()
        .anyMatch(
            at -> {
              double first = Math.max(at.fromHour() + busy, oldest);
              return first <= Math.min(at.toHour() - HandsOnTime.UNLOAD_HOURS, last) + SAME_HOURS;
            });
  }

  /** Stretches at the bench, as one where a batch bakes while nobody is there. */
  private static List<BenchInterval> joined(BakeDay day) {
    List<BenchInterval> joined = new ArrayList<>();
    for (BenchInterval each : day.bench().intervals()) {
      int end = joined.size() - 1;
      if (end >= 0 && each.fromHour() - joined.get(end).toHour() <= day.oven().bakeHours()) {
        joined.set(end, new BenchInterval(joined.get(end).fromHour(), each.toHour()));
      } else {
        joined.add(each);
      }
    }
    return joined;
  }
}
