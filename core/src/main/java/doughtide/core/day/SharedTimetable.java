package doughtide.core.day;

import doughtide.core.day.BakeStep.Kind;
import doughtide.core.feeding.FeedChoice;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.SortedMap;
import java.util.TreeMap;

/**
 * All steps of several doughs on one clock: one step where a feeding serves several doughs or
 * loaves of several go into the oven together, the oven switched on once for loads that follow each
 * other.
 *
 * @param steps ascending
 * @param loads ascending
 */
record SharedTimetable(List<SharedStep> steps, List<OvenLoad> loads) {
  private static final double SAME_HOURS = 1e-6;
  private static final double EARLIEST_SWITCH_HOURS = 1;

  SharedTimetable {
    steps = List.copyOf(steps);
    loads = List.copyOf(loads);
  }

  /**
   * The timetable of some doughs.
   *
   * @param doughs all doughs of the day
   * @param placed the plans of some of them by number
   * @param hands how many persons work
   * @return empty if the oven or the hands are not enough
   */
  static Optional<SharedTimetable> of(
      List<BakeDay> doughs, SortedMap<Integer, Draft> placed, int hands) {
    List<OvenLoad> loads = loads(doughs, placed);
    if (!fit(loads, doughs.get(0).oven().loaves())) {
      return Optional.empty();
    }
    List<SharedStep> steps = ownSteps(doughs, placed);
    addOven(steps, loads);
    sort(steps);
    if (!enough(steps, hands)) {
      return Optional.empty();
    }
    if (!addPreheating(steps, loads, doughs.get(0), hands)) {
      return Optional.empty();
    }
    return Optional.of(new SharedTimetable(assigned(steps, hands), loads));
  }

  /** Whether oven and hands are enough, one dough's feeding left out. */
  static boolean fitsUnfed(
      List<BakeDay> doughs, SortedMap<Integer, Draft> placed, int hands, int unfed) {
    List<OvenLoad> loads = loads(doughs, placed);
    if (!fit(loads, doughs.get(0).oven().loaves())) {
      return false;
    }
    List<SharedStep> steps = ownSteps(doughs, placed);
    steps.removeIf(each -> each.step().kind() == Kind.FEED && each.doughs().equals(List.of(unfed)));
    addOven(steps, loads);
    sort(steps);
    return enough(steps, hands);
  }

  private static List<OvenLoad> loads(List<BakeDay> doughs, SortedMap<Integer, Draft> placed) {
    TreeMap<Long, OvenLoad> byHour = new TreeMap<>();
    for (Map.Entry<Integer, Draft> each : placed.entrySet()) {
      BakeDay day = doughs.get(each.getKey());
      int batches = day.oven().batches(day.loaves());
      double length = day.oven().bakeHours() + Work.LOAD_HOURS;
      int left = day.loaves();
      for (int i = 0; i < batches; i++) {
        double from = each.getValue().ovenHour() + i * length;
        int loaves = Math.min(left, day.oven().loaves());
        left -= loaves;
        OvenLoad.Portion portion = new OvenLoad.Portion(each.getKey(), i + 1, loaves);
        OvenLoad load = new OvenLoad(from, from + length, List.of(portion));
        byHour.merge(Math.round(from * 3600), load, SharedTimetable::together);
      }
    }
    return new ArrayList<>(byHour.values());
  }

  private static OvenLoad together(OvenLoad first, OvenLoad second) {
    List<OvenLoad.Portion> portions = new ArrayList<>(first.portions());
    portions.addAll(second.portions());
    return new OvenLoad(first.fromHour(), first.toHour(), portions);
  }

  private static boolean fit(List<OvenLoad> loads, int capacity) {
    for (int i = 0; i < loads.size(); i++) {
      boolean tooMany = loads.get(i).loaves() > capacity;
      boolean tooSoon = i > 0 && loads.get(i).fromHour() < loads.get(i - 1).toHour() - SAME_HOURS;
      if (tooMany || tooSoon) {
        return false;
      }
    }
    return true;
  }

  private static List<SharedStep> ownSteps(List<BakeDay> doughs, SortedMap<Integer, Draft> placed) {
    List<SharedStep> steps = new ArrayList<>();
    for (Map.Entry<Integer, Draft> each : placed.entrySet()) {
      int number = each.getKey();
      for (BakeStep step : each.getValue().steps(doughs.get(number))) {
        boolean oven =
            step.kind() == Kind.PREHEAT || step.kind() == Kind.BAKE || step.kind() == Kind.COOL;
        if (step.kind() == Kind.FEED) {
          addFeed(steps, step, number, doughs, placed);
        } else if (!oven) {
          steps.add(new SharedStep(step, List.of(number), -1));
        }
      }
    }
    return steps;
  }

  private static void addFeed(
      List<SharedStep> steps,
      BakeStep step,
      int number,
      List<BakeDay> doughs,
      SortedMap<Integer, Draft> placed) {
    for (int i = 0; i < steps.size(); i++) {
      SharedStep other = steps.get(i);
      if (other.step().kind() == Kind.FEED
          && sameFeed(number, other.doughs().get(0), doughs, placed)) {
        List<Integer> all = new ArrayList<>(other.doughs());
        all.add(number);
        steps.set(i, new SharedStep(other.step(), all, -1));
        return;
      }
    }
    steps.add(new SharedStep(step, List.of(number), -1));
  }

  private static boolean sameFeed(
      int a, int b, List<BakeDay> doughs, SortedMap<Integer, Draft> placed) {
    FeedChoice first = Objects.requireNonNull(placed.get(a)).feed();
    FeedChoice second = Objects.requireNonNull(placed.get(b)).feed();
    return Math.abs(first.feedHour() - second.feedHour()) < SAME_HOURS
        && first.ratio().equals(second.ratio())
        && doughs.get(a).dough().starter().equals(doughs.get(b).dough().starter());
  }

  private static void addOven(List<SharedStep> steps, List<OvenLoad> loads) {
    for (int i = 0; i < loads.size(); i++) {
      OvenLoad load = loads.get(i);
      List<Integer> doughs =
          load.portions().stream().map(OvenLoad.Portion::dough).sorted().toList();
      int number = loads.size() == 1 ? 0 : i + 1;
      double in = load.fromHour();
      steps.add(
          new SharedStep(new BakeStep(Kind.BAKE, in, in + Work.LOAD_HOURS, number), doughs, -1));
      // The next load goes in while the one before is put down to cool.
      boolean next =
          i + 1 < loads.size() && loads.get(i + 1).fromHour() - load.toHour() < SAME_HOURS;
      double out = load.toHour();
      double free = out + (next ? 0 : Work.UNLOAD_HOURS);
      steps.add(new SharedStep(new BakeStep(Kind.COOL, out, free, number), doughs, -1));
    }
  }

  private static void sort(List<SharedStep> steps) {
    steps.sort(
        Comparator.comparingDouble((SharedStep each) -> each.step().fromHour())
            .thenComparingDouble(each -> each.step().toHour())
            .thenComparing(each -> each.step().kind())
            .thenComparing(each -> each.doughs().get(0)));
  }

  /** Whether never more hands are busy than there are; the steps are sorted. */
  private static boolean enough(List<SharedStep> steps, int hands) {
    double[] free = new double[hands];
    Arrays.fill(free, Double.NEGATIVE_INFINITY);
    for (SharedStep each : steps) {
      if (each.needsHands()) {
        int person = earliest(free);
        if (free[person] > each.step().fromHour() + SAME_HOURS) {
          return false;
        }
        free[person] = each.step().toHour();
      }
    }
    return true;
  }

  private static int earliest(double[] free) {
    int best = 0;
    for (int i = 1; i < free.length; i++) {
      if (free[i] < free[best] - SAME_HOURS) {
        best = i;
      }
    }
    return best;
  }

  /** The oven is switched on before every load that does not follow another closely. */
  private static boolean addPreheating(
      List<SharedStep> steps, List<OvenLoad> loads, BakeDay day, int hands) {
    double preheat = day.oven().preheatHours();
    for (int i = 0; i < loads.size(); i++) {
      double from = loads.get(i).fromHour();
      boolean hot = i > 0 && from - loads.get(i - 1).toHour() <= preheat + SAME_HOURS;
      if (!hot && !addSwitch(steps, loads.get(i), day, hands)) {
        return false;
      }
    }
    return true;
  }

  /** As late as a pair of hands is free for it, and not more than an hour too early. */
  private static boolean addSwitch(List<SharedStep> steps, OvenLoad load, BakeDay day, int hands) {
    double latest = load.fromHour() - day.oven().preheatHours();
    List<Double> hours = new ArrayList<>(List.of(latest));
    steps.stream()
        .map(each -> each.step().fromHour() - Work.SWITCH_HOURS)
        .filter(hour -> hour < latest && hour > latest - EARLIEST_SWITCH_HOURS)
        .forEach(hours::add);
    hours.sort(Comparator.reverseOrder());
    List<Integer> doughs = load.portions().stream().map(OvenLoad.Portion::dough).toList();
    for (double hour : hours) {
      if (!day.bench().contains(hour, hour + Work.SWITCH_HOURS)) {
        continue;
      }
      SharedStep step =
          new SharedStep(new BakeStep(Kind.PREHEAT, hour, hour + Work.SWITCH_HOURS, 0), doughs, -1);
      steps.add(step);
      sort(steps);
      if (enough(steps, hands)) {
        return true;
      }
      steps.remove(step);
    }
    return false;
  }

  /** Everybody goes on with what is next; whoever was free first takes it. */
  private static List<SharedStep> assigned(List<SharedStep> steps, int hands) {
    double[] free = new double[hands];
    Arrays.fill(free, Double.NEGATIVE_INFINITY);
    List<SharedStep> assigned = new ArrayList<>();
    for (SharedStep each : steps) {
      if (each.needsHands()) {
        int person = firstFree(free, each.step().fromHour());
        free[person] = each.step().toHour();
        assigned.add(each.by(person));
      } else {
        assigned.add(each);
      }
    }
    return assigned;
  }

  private static int firstFree(double[] free, double hour) {
    for (int i = 0; i < free.length; i++) {
      if (free[i] <= hour + SAME_HOURS) {
        return i;
      }
    }
    return earliest(free);
  }
}
