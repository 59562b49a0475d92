package doughtide.core.day;

import doughtide.core.Internal;
import java.util.ArrayList;
import java.util.List;

/** What of a day others have taken already: hands, and room in the oven. Immutable. */
@Internal
public final class Taken {
  /** Nothing at all. */
  public static final Taken NOTHING = new Taken(List.of(), List.of());

  /** Stands in a load for a dough that is not among those planned. */
  private static final int OTHERS = -1;

  private static final double SAME_HOURS = 1.0 / 3600;

  private final List<BakeStep> steps;
  private final List<OvenLoad> loads;

  private Taken(List<BakeStep> steps, List<OvenLoad> loads) {
    this.steps = List.copyOf(steps);
    this.loads = DayTimetable.together(loads);
  }

  /**
   * The same, and steps more.
   *
   * @param more what hands are needed for; loading and unloading the oven do not count
   */
  public Taken with(List<BakeStep> more) {
    List<BakeStep> all = new ArrayList<>(steps);
    more.stream().filter(step -> !isOven(step)).forEach(all::add);
    return new Taken(all, loads);
  }

  private static boolean isOven(BakeStep step) {
    return step.kind() == BakeStep.Kind.BAKE || step.kind() == BakeStep.Kind.COOL;
  }

  /**
   * The same, and the loaves of a dough more.
   *
   * @param ovenHour when the first go into the oven
   */
  public Taken with(BakeDay day, double ovenHour) {
    List<OvenLoad> all = new ArrayList<>(loads);
    all.addAll(DayTimetable.batches(day, OTHERS, ovenHour));
    return new Taken(steps, all);
  }

  boolean isNothing() {
    return steps.isEmpty() && loads.isEmpty();
  }

  /** Whether some of a load belong to others. */
  static boolean hasSome(OvenLoad load) {
    return load.portions().stream().anyMatch(each -> each.dough() == OTHERS);
  }

  List<OvenLoad> loads() {
    return loads;
  }

  /** What all but the oven needs hands for. */
  BusyHands busy() {
    BusyHands busy = new BusyHands();
    steps.forEach(busy::add);
    return busy;
  }

  /**
   * Whether the oven is hot at an hour, or will be: for a load of others then or shortly before.
   */
  public boolean isHotAt(double hour, Oven oven) {
    return loads.stream()
        .anyMatch(
            load ->
                isSame(load.fromHour(), hour)
                    || (load.toHour() <= hour + SAME_HOURS
                        && hour - load.toHour() <= oven.preheatHours() + SAME_HOURS));
  }

  private static boolean isSame(double hour, double other) {
    return Math.abs(hour - other) < SAME_HOURS;
  }

  /** Whether a pair of hands is free from one hour to another. */
  private boolean leavesHands(double from, double to, int hands) {
    BusyHands busy = all(loads);
    int enough = enough(busy, hands);
    busy.add(from, to);
    return busy.areEnough(enough);
  }

  /** Whether somebody is at the bench from one hour to another, with a pair of free hands. */
  public boolean leavesHands(BenchHours bench, double from, double to, int hands) {
    return bench.contains(from, to) && leavesHands(from, to, hands);
  }

  /** What has happened may have needed more hands than there are said to be. */
  private static int enough(BusyHands busy, int hands) {
    int enough = hands;
    while (!busy.areEnough(enough)) {
      enough++;
    }
    return enough;
  }

  private BusyHands all(List<OvenLoad> ofAll) {
    BusyHands busy = busy();
    DayTimetable.ovenHands(ofAll).forEach(busy::add);
    return busy;
  }

  /**
   * Whether hands and oven are enough for a dough more.
   *
   * @param own its steps that are still to be done
   * @param ovenHour when its first loaves go into the oven
   */
  public boolean leavesRoom(BakeDay day, List<BakeStep> own, double ovenHour, int hands) {
    List<OvenLoad> batches = DayTimetable.batches(day, 0, ovenHour);
    if (!batches.stream().allMatch(batch -> fits(batch, day.oven().loaves()))) {
      return false;
    }
    List<OvenLoad> all = new ArrayList<>(loads);
    all.addAll(batches);
    BusyHands busy = all(DayTimetable.together(all));
    own.stream().filter(step -> !isOven(step)).forEach(busy::add);
    return busy.areEnough(enough(all(loads), hands));
  }

  private boolean fits(OvenLoad batch, int capacity) {
    return loads.stream()
        .allMatch(
            load ->
                isSame(load.fromHour(), batch.fromHour())
                    ? load.loaves() + batch.loaves() <= capacity
                    : batch.fromHour() >= load.toHour() - SAME_HOURS
                        || batch.toHour() <= load.fromHour() + SAME_HOURS);
  }
}
