package doughtide.core.day;

import java.util.ArrayList;
import java.util.List;

/** Hours at which the first batch can go into the oven. */
final class OvenHours {
  private static final double GRID_HOURS = 0.25;

  private OvenHours() {}

  /**
   * The first, a middle and the last hour of every stretch at the bench that is late enough,
   * ascending.
   */
  static double[] of(BakeDay day) {
    List<Double> hours = new ArrayList<>();
    double busy = Draft.ovenBusyHours(day);
    double last = day.readyHour() - day.oven().coolHours() - busy;
    for (BenchInterval at : day.bench().intervals()) {
      List<Double> possible = new ArrayList<>();
      double from = at.fromHour() + day.oven().preheatHours() + HandsOnTime.SWITCH_HOURS;
      double oldest = last - DraftSearch.OLDEST_BREAD_HOURS;
      double to = at.toHour() - busy - HandsOnTime.UNLOAD_HOURS;
      for (double hour = fiveMinutesUp(from); hour <= to + 1e-9; hour += GRID_HOURS) {
        if (hour <= last + 1e-9 && hour >= oldest) {
          possible.add(hour);
        }
      }
      addSome(hours, possible);
    }
    if (hours.isEmpty()) {
      addMissed(hours, day, last);
    }
    return hours.stream().mapToDouble(Double::doubleValue).sorted().distinct().toArray();
  }

  /**
   * Where nothing fits: the last hour of all, and the first of every stretch, which a longer stay
   * would make possible.
   */
  private static void addMissed(List<Double> hours, BakeDay day, double last) {
    hours.add(last);
    for (BenchInterval at : day.bench().intervals()) {
      double from =
          fiveMinutesUp(at.fromHour() + day.oven().preheatHours() + HandsOnTime.SWITCH_HOURS);
      if (from <= last && from >= last - DraftSearch.OLDEST_BREAD_HOURS) {
        hours.add(from);
      }
    }
  }

  private static double fiveMinutesUp(double hour) {
    return Math.ceil(hour * 12 - 1e-6) / 12;
  }

  private static void addSome(List<Double> hours, List<Double> possible) {
    if (!possible.isEmpty()) {
      hours.add(possible.get(0));
      hours.add(possible.get(possible.size() / 2));
      hours.add(possible.get(possible.size() - 1));
    }
  }
}
