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
 * All steps of the doughs of a day on one clock: one step where a feeding serves several doughs or
 * loaves of several go into the oven together, the oven switched on once for loads that follow each
 * other.
 *
 * @param steps ascending
 * @param loads ascending
 */
record DayTimetable(List<DayStep> steps, List<OvenLoad> loads) {
  private static final double SAME_HOURS = 1e-6;
  private static final double EARLIEST_SWITCH_HOURS = 1;

  DayTimetable {
    steps = List.copyOf(steps);
    loads = List.copyOf(loads);
  }

  /**
   * The timetable of some doughs.
   *
   * @param doughs all doughs of the day
   * @param placed the plans of some of them by number
   * @param hands how many persons work
   * @param taken what others take beside them
   * @return empty if the oven or the hands are not enough
   */
  static Optional<DayTimetable> of(
      List<BakeDay> doughs, SortedMap<Integer, Draft> placed, int hands, Taken taken) {
    List<OvenLoad> loads = loads(doughs, placed, taken);
    if (!fit(loads, doughs.get(0).oven().loaves())) {
      return Optional.empty();
    }
    List<DayStep> steps = ownSteps(doughs, placed);
    addOven(steps, loads);
    BusyHands busy = taken.busy();
    steps.forEach(each -> busy.add(each.step()));
    if (!busy.areEnough(hands) || !addPreheating(steps, busy, loads, doughs.get(0), hands)) {
      return Optional.empty();
    }
    sort(steps);
    return Optional.of(new DayTimetable(assigned(steps, hands), loads));
  }

  /**
   * The rest of a day, whatever of it has happened.
   *
   * @param plans all doughs of the day
   * @param own of each its steps; when its loaves are in the oven is by its plan
   */
  static DayTimetable ofRest(List<BakePlan> plans, List<List<BakeStep>> own, int hands) {
    List<BakeDay> doughs = plans.stream().map(BakePlan::day).toList();
    SortedMap<Integer, Draft> placed = new TreeMap<>();
    plans.forEach(plan -> placed.put(placed.size(), plan.draft()));
    List<OvenLoad> loads = loads(doughs, placed, Taken.NOTHING);
    List<DayStep> steps = new ArrayList<>();
    for (int number : placed.keySet()) {
      own.get(number).forEach(step -> addOwn(steps, step, number, doughs, placed));
    }
    addOven(steps, loads);
    for (int i = 0; i < loads.size(); i++) {
      if (!isHot(loads, i, doughs.get(0).oven())) {
        addSwitch(steps, loads.get(i), own);
      }
    }
    sort(steps);
    return new DayTimetable(assigned(steps, hands), loads);
  }

  /** When one of its doughs is to have it switched on. */
  private static void addSwitch(List<DayStep> steps, OvenLoad load, List<List<BakeStep>> own) {
    List<Integer> doughs = load.portions().stream().map(OvenLoad.Portion::dough).toList();
    doughs.stream()
        .flatMap(number -> own.get(number).stream())
        .filter(step -> step.kind() == Kind.PREHEAT)
        .min(Comparator.comparingDouble(BakeStep::fromHour))
        .ifPresent(step -> steps.add(new DayStep(step, doughs, -1)));
  }

  /** What all but the oven needs hands for. */
  static BusyHands busyBesideOven(
      List<BakeDay> doughs, SortedMap<Integer, Draft> placed, Taken taken) {
    BusyHands busy = taken.busy();
    ownSteps(doughs, placed).forEach(each -> busy.add(each.step()));
    return busy;
  }

  /**
   * Whether oven and hands are enough for one dough more, its feeding left out.
   *
   * @param number the dough
   * @param others what the others have in the oven, ascending
   * @param busy what they need hands for beside the oven
   */
  static boolean fitsUnfed(
      BakeDay day, int number, Draft draft, List<OvenLoad> others, BusyHands busy, int hands) {
    List<OvenLoad> loads = new ArrayList<>(others);
    loads.addAll(batches(day, number, draft.ovenHour()));
    loads = together(loads);
    if (!fit(loads, day.oven().loaves())) {
      return false;
    }
    BusyHands with = busy.copy();
    for (BakeStep step : draft.steps(day)) {
      if (step.kind() != Kind.FEED && !isOven(step.kind())) {
        with.add(step);
      }
    }
    ovenHands(loads).forEach(with::add);
    return with.areEnough(hands);
  }

  /** Loading and unloading. */
  static List<BakeStep> ovenHands(List<OvenLoad> loads) {
    List<BakeStep> steps = new ArrayList<>();
    for (int i = 0; i < loads.size(); i++) {
      double in = loads.get(i).fromHour();
      int number = loads.size() == 1 ? 0 : i + 1;
      steps.add(new BakeStep(Kind.BAKE, in, in + HandsOnTime.LOAD_HOURS, number));
      steps.add(new BakeStep(Kind.COOL, loads.get(i).toHour(), unloaded(loads, i), number));
    }
    return steps;
  }

  private static boolean isOven(Kind kind) {
    return kind == Kind.PREHEAT || kind == Kind.BAKE || kind == Kind.COOL;
  }

  /** When hands are free again; the next load goes in while the one before is put down to cool. */
  private static double unloaded(List<OvenLoad> loads, int number) {
    double out = loads.get(number).toHour();
    boolean next = number + 1 < loads.size() && loads.get(number + 1).fromHour() - out < SAME_HOURS;
    return out + (next ? 0 : HandsOnTime.UNLOAD_HOURS);
  }

  /** What is in the oven together, whether it fits or not. */
  static List<OvenLoad> loads(List<BakeDay> doughs, SortedMap<Integer, Draft> placed, Taken taken) {
    List<OvenLoad> all = new ArrayList<>();
    placed.forEach(
        (number, draft) -> all.addAll(batches(doughs.get(number), number, draft.ovenHour())));
    all.addAll(taken.loads());
    return together(all);
  }

  /** The loaves of one dough, one load after the other. */
  static List<OvenLoad> batches(BakeDay day, int number, double ovenHour) {
    List<OvenLoad> batches = new ArrayList<>();
    double length = day.oven().bakeHours() + HandsOnTime.LOAD_HOURS;
    int left = day.loaves();
    for (int i = 0; left > 0; i++) {
      double from = ovenHour + i * length;
      int loaves = Math.min(left, day.oven().loaves());
      left -= loaves;
      OvenLoad.Portion portion = new OvenLoad.Portion(number, i + 1, loaves);
      batches.add(new OvenLoad(from, from + length, List.of(portion)));
    }
    return batches;
  }

  /** Those that begin in the same second are one; ascending. */
  static List<OvenLoad> together(List<OvenLoad> loads) {
    TreeMap<Long, OvenLoad> byHour = new TreeMap<>();
    loads.forEach(
        load -> byHour.merge(Math.round(load.fromHour() * 3600), load, DayTimetable::together));
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

  private static List<DayStep> ownSteps(List<BakeDay> doughs, SortedMap<Integer, Draft> placed) {
    List<DayStep> steps = new ArrayList<>();
    for (Map.Entry<Integer, Draft> each : placed.entrySet()) {
      int number = each.getKey();
      for (BakeStep step : each.getValue().steps(doughs.get(number))) {
        addOwn(steps, step, number, doughs, placed);
      }
    }
    return steps;
  }

  private static void addOwn(
      List<DayStep> steps,
      BakeStep step,
      int number,
      List<BakeDay> doughs,
      SortedMap<Integer, Draft> placed) {
    if (step.kind() == Kind.FEED) {
      addFeed(steps, step, number, doughs, placed);
    } else if (!isOven(step.kind())) {
      steps.add(new DayStep(step, List.of(number), -1));
    }
  }

  private static void addFeed(
      List<DayStep> steps,
      BakeStep step,
      int number,
      List<BakeDay> doughs,
      SortedMap<Integer, Draft> placed) {
    for (int i = 0; i < steps.size(); i++) {
      DayStep other = steps.get(i);
      if (other.step().kind() == Kind.FEED
          && other.step().number() == step.number()
          && sameFeed(number, other.doughs().get(0), doughs, placed)) {
        List<Integer> all = new ArrayList<>(other.doughs());
        all.add(number);
        steps.set(i, new DayStep(other.step(), all, -1));
        return;
      }
    }
    steps.add(new DayStep(step, List.of(number), -1));
  }

  private static boolean sameFeed(
      int a, int b, List<BakeDay> doughs, SortedMap<Integer, Draft> placed) {
    FeedChoice first = Objects.requireNonNull(placed.get(a)).feed();
    FeedChoice second = Objects.requireNonNull(placed.get(b)).feed();
    return Math.abs(first.feedHour() - second.feedHour()) < SAME_HOURS
        && first.ratio().equals(second.ratio())
        && doughs.get(a).stages().equals(doughs.get(b).stages())
        && doughs.get(a).dough().starter().equals(doughs.get(b).dough().starter());
  }

  private static void addOven(List<DayStep> steps, List<OvenLoad> loads) {
    List<BakeStep> hands = ovenHands(loads);
    for (int i = 0; i < hands.size(); i++) {
      List<Integer> doughs =
          loads.get(i / 2).portions().stream().map(OvenLoad.Portion::dough).sorted().toList();
      steps.add(new DayStep(hands.get(i), doughs, -1));
    }
  }

  private static void sort(List<DayStep> steps) {
    steps.sort(
        Comparator.comparingDouble((DayStep each) -> each.step().fromHour())
            .thenComparingDouble(each -> each.step().toHour())
            .thenComparing(each -> each.step().kind())
            .thenComparing(each -> each.doughs().get(0)));
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
      List<DayStep> steps, BusyHands busy, List<OvenLoad> loads, BakeDay day, int hands) {
    for (int i = 0; i < loads.size(); i++) {
      boolean hot = isHot(loads, i, day.oven()) || Taken.hasSome(loads.get(i));
      if (!hot && !addSwitch(steps, busy, loads.get(i), day, hands)) {
        return false;
      }
    }
    return true;
  }

  private static boolean isHot(List<OvenLoad> loads, int number, Oven oven) {
    double from = loads.get(number).fromHour();
    return number > 0 && from - loads.get(number - 1).toHour() <= oven.preheatHours() + SAME_HOURS;
  }

  /** As late as a pair of hands is free for it, and not more than an hour too early. */
  private static boolean addSwitch(
      List<DayStep> steps, BusyHands busy, OvenLoad load, BakeDay day, int hands) {
    double latest = load.fromHour() - Math.max(day.oven().preheatHours(), HandsOnTime.SWITCH_HOURS);
    List<Double> hours = new ArrayList<>(List.of(latest));
    steps.stream()
        .map(each -> each.step().fromHour() - HandsOnTime.SWITCH_HOURS)
        .filter(hour -> hour < latest && hour > latest - EARLIEST_SWITCH_HOURS)
        .forEach(hours::add);
    hours.sort(Comparator.reverseOrder());
    List<Integer> doughs = load.portions().stream().map(OvenLoad.Portion::dough).toList();
    for (double hour : hours) {
      BakeStep step = new BakeStep(Kind.PREHEAT, hour, hour + HandsOnTime.SWITCH_HOURS, 0);
      BusyHands with = busy.copy();
      with.add(step);
      if (day.bench().contains(step.fromHour(), step.toHour()) && with.areEnough(hands)) {
        steps.add(new DayStep(step, doughs, -1));
        busy.add(step);
        return true;
      }
    }
    return false;
  }

  /** Everybody goes on with what is next; whoever was free first takes it. */
  private static List<DayStep> assigned(List<DayStep> steps, int hands) {
    double[] free = new double[hands];
    Arrays.fill(free, Double.NEGATIVE_INFINITY);
    List<DayStep> assigned = new ArrayList<>();
    for (DayStep each : steps) {
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
