package doughtide.core.day;

import doughtide.core.day.Adjustment.Kind;
import doughtide.core.day.DayAnswer.Remedy;
import doughtide.core.quantity.Temperature;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.ConcurrentHashMap;
import java.util.function.UnaryOperator;
import java.util.stream.IntStream;
import java.util.stream.Stream;

/**
 * Looks for the smallest change that makes a day without plan possible, or the smallest two where
 * no single one does; where no two do, several of which none can be left out. Each is tried on the
 * dough that found no place first: the models of all doughs have been run already, so that a
 * changed day costs little.
 */
final class SmallestChange {
  static final double GRID_HOURS = 1;
  private static final double GRID_OF_ONE_HOURS = 0.5; // as its own day is searched
  private static final double HALF_HOUR = 0.5;
  private static final double COLD_CELSIUS = 4;
  private static final double COLD_COST = 0.7; // as much as so many hours more
  private static final double STARTER_COLD_HOURS = 24;
  private static final double STARTER_IN_COLD_COST = 0.6;
  private static final double HANDS_COST = 0.95;
  private static final double OVEN_COST = 1;
  private static final double LARGER_OVEN_COST = 0.2;
  private static final int MOST_OVENS = 6;
  private static final double EVERY_TIME_COST = 0.4; // beside the hours themselves
  private static final double READY_COST = 0.3;
  private static final double EVENING_COST = 1.2;
  private static final double EVENING_FROM_CLOCK_HOUR = 18;
  private static final double EVENING_HOURS = 4;
  private static final double LEAST_EVENING_HOURS = 1; // of one that has begun

  /** Who is at the bench longer than this before the bread is there on an evening before. */
  private static final double ONE_DAY_HOURS = 30;

  /** What is asked for together, one after the other, where no two changes help. */
  private static final List<Kind> TOGETHER =
      List.of(
          Kind.COLD,
          Kind.EVENING_BEFORE,
          Kind.STARTER_IN_COLD,
          Kind.HANDS,
          Kind.HANDS,
          Kind.OVEN_CAPACITY);

  private static final int MOST_EDGES = 8;
  private static final int MOST_NOT_HELD = 2;
  private static final int MOST_LOAVES = 500;
  private static final int MOST_HANDS = 20;
  private static final double[] EVERY_TIME_HOURS = {0.5, 1, 1.5, 2, 3};
  private static final double[] READY_HOURS = {1, -1, 2, -2, 4, 8};
  private static final int MOST_PAIRS = 60;
  private static final int FEWEST_PAIRS = 8;

  private final List<DoughCandidates> candidates;
  private final int hands;
  private final int dough;
  private final boolean alone;
  private final SearchControl control;
  private final Taken taken;
  private final Map<BakeDay, DayModel> models = new ConcurrentHashMap<>();
  private final Map<BakeDay, DoughCandidates> searched = new HashMap<>();
  private final Map<Asked, Optional<DayPlan>> planned = new HashMap<>();
  private int notHeld; // edges that helped only beside the search of their own day

  /**
   * @param candidates all doughs of the day
   * @param dough the one that found no place
   * @param taken what others than these take
   */
  SmallestChange(
      List<DoughCandidates> candidates, int hands, int dough, SearchControl control, Taken taken) {
    this.candidates = candidates;
    this.hands = hands;
    this.dough = dough;
    this.alone = candidates.size() == 1 || candidates.get(dough).size() == 0;
    this.control = control;
    this.taken = taken;
  }

  /**
   * A changed day that may have a plan.
   *
   * @param days the doughs then
   * @param hands persons then
   * @param changes what is changed
   * @param cost in hours that the baker would rather not give
   */
  private record Trial(List<BakeDay> days, int hands, List<Adjustment> changes, double cost) {
    Kind last() {
      return changes.get(changes.size() - 1).kind();
    }

    /** Whether some dough has more batches than the hours at the bench have room for. */
    boolean isTooMuchForOven() {
      return !OvenRoom.isEnough(days) || !days.stream().allMatch(OvenRoom::hasPlaceFor);
    }
  }

  /** What several trials may come to, one after the other. */
  private record Asked(List<BakeDay> days, int hands) {}

  Optional<Remedy> find() {
    List<BakeDay> days = candidates.stream().map(DoughCandidates::day).toList();
    Trial unchanged = new Trial(days, hands, List.of(), 0);
    List<Trial> single = new ArrayList<>(edges(unchanged));
    single.addAll(general(unchanged));
    return firstPossible(sorted(single))
        .or(() -> firstPossible(pairs(unchanged)))
        .or(() -> several(unchanged));
  }

  /** One change more until there is a plan; then what it does not need is left out. */
  private Optional<Remedy> several(Trial unchanged) {
    List<Kind> kinds = new ArrayList<>();
    for (Kind kind : TOGETHER) {
      kinds.add(kind);
      Trial trial = with(unchanged, kinds);
      boolean further = trial.changes().size() > 2 && trial.last() == kind;
      Optional<Remedy> remedy = further ? firstPossible(List.of(trial)) : Optional.empty();
      if (remedy.isPresent()) {
        return Optional.of(without(unchanged, kinds, remedy.get()));
      }
    }
    return Optional.empty();
  }

  private Remedy without(Trial unchanged, List<Kind> kinds, Remedy found) {
    Remedy best = found;
    List<Kind> needed = kinds;
    for (Kind kind : new LinkedHashSet<>(kinds)) {
      for (List<Kind> fewer : fewer(needed, kind)) {
        Trial trial = with(unchanged, fewer);
        Optional<Remedy> remedy =
            isLess(trial, best) ? firstPossible(List.of(trial)) : Optional.empty();
        if (remedy.isPresent()) {
          best = remedy.get();
          needed = fewer;
          break;
        }
      }
    }
    return best;
  }

  /** Without a kind, and with one of it less: one person more instead of two. */
  private static List<List<Kind>> fewer(List<Kind> kinds, Kind kind) {
    List<Kind> none = kinds.stream().filter(each -> each != kind).toList();
    List<Kind> oneLess = new ArrayList<>(kinds);
    oneLess.remove(kind);
    return Stream.of(none, oneLess).distinct().toList();
  }

  private static boolean isLess(Trial trial, Remedy than) {
    int left = trial.changes().size();
    boolean fewer = left < than.adjustments().size() || trial.hands() < than.day().hands();
    return left > 0 && fewer;
  }

  /** The cheapest change of each kind that there is. */
  private Trial with(Trial unchanged, List<Kind> kinds) {
    Trial trial = unchanged;
    for (Kind kind : kinds) {
      Trial before = trial;
      trial =
          general(before).stream().filter(each -> each.last() == kind).findFirst().orElse(before);
    }
    return trial;
  }

  private static List<Trial> sorted(List<Trial> trials) {
    return trials.stream().sorted(Comparator.comparingDouble(Trial::cost)).toList();
  }

  /** Two changes of different kinds, the cheapest first. */
  private List<Trial> pairs(Trial unchanged) {
    List<Trial> pairs = new ArrayList<>();
    for (Trial first : general(unchanged)) {
      for (Trial second : general(first)) {
        if (first.last().compareTo(second.last()) < 0) {
          pairs.add(second);
        }
      }
    }
    return sorted(pairs).stream()
        .limit(Math.max(FEWEST_PAIRS, MOST_PAIRS / candidates.size()))
        .toList();
  }

  /** One after the other, each on all cores: most days change by one of the first. */
  private Optional<Remedy> firstPossible(List<Trial> trials) {
    for (Trial trial : trials) {
      Optional<Remedy> remedy = control.stopped() ? Optional.empty() : remedy(trial);
      if (remedy.isPresent()) {
        return remedy;
      }
    }
    return Optional.empty();
  }

  private Optional<Remedy> remedy(Trial trial) {
    if (trial.isTooMuchForOven()) {
      return Optional.empty();
    }
    Optional<DayPlan> plan =
        isEdge(trial)
            ? plan(trial)
            : planned.computeIfAbsent(new Asked(trial.days(), trial.hands()), asked -> plan(trial));
    return plan.filter(found -> holdsByItself(trial))
        .map(found -> new Remedy(trial.changes(), found));
  }

  private Optional<DayPlan> plan(Trial trial) {
    DoughCandidates own = changed(trial);
    return own.size() == 0
        ? Optional.empty()
        : new DayPlanner(changed(trial, own), trial.hands(), control.silently(), taken).quickly();
  }

  /**
   * A near miss may hold where the search of its own day looks at other plans: so that is asked.
   */
  private boolean holdsByItself(Trial trial) {
    if (candidates.size() > 1 || !isEdge(trial)) {
      return true;
    }
    if (notHeld >= MOST_NOT_HELD) {
      return false;
    }
    BakeDay then = trial.days().get(dough).toBuilder().plans(1).build();
    DoughCandidates own =
        DoughCandidates.of(
            candidates.get(dough).model(), then, GRID_OF_ONE_HOURS, true, control.silently());
    boolean holds =
        new DayPlanner(List.of(own), trial.hands(), control.silently(), taken)
            .quickly()
            .isPresent();
    notHeld += holds ? 0 : 1;
    return holds;
  }

  private static boolean isEdge(Trial trial) {
    return trial.last() == Kind.BENCH_EARLIER || trial.last() == Kind.BENCH_LONGER;
  }

  /** All doughs then. */
  private List<DoughCandidates> changed(Trial trial, DoughCandidates own) {
    List<Integer> others =
        IntStream.range(0, candidates.size()).filter(number -> number != dough).boxed().toList();
    Map<BakeDay, Integer> open = new LinkedHashMap<>();
    others.stream()
        .filter(number -> known(number, trial).isEmpty())
        .forEach(number -> open.putIfAbsent(then(number, trial), number));
    control
        .mapLarge(List.copyOf(open.values()), number -> search(number, trial))
        .forEach(found -> searched.put(found.day(), found));
    return IntStream.range(0, candidates.size())
        .mapToObj(number -> number == dough ? own : known(number, trial).orElseThrow())
        .toList();
  }

  /** The candidates of the dough that found no place. */
  private DoughCandidates changed(Trial trial) {
    if (isEdge(trial)) {
      return candidates.get(dough).nearMissesOn(then(dough, trial), control.silently());
    }
    return known(dough, trial)
        .orElseGet(
            () -> {
              DoughCandidates found = search(dough, trial);
              searched.put(found.day(), found);
              return found;
            });
  }

  /** Those of now where nothing is changed for a dough; what a trial before has left alike. */
  private Optional<DoughCandidates> known(int number, Trial trial) {
    DoughCandidates now = candidates.get(number);
    BakeDay then = then(number, trial);
    return then.equals(now.day().toBuilder().plans(1).build())
        ? Optional.of(now)
        : Optional.ofNullable(searched.get(then));
  }

  private static BakeDay then(int number, Trial trial) {
    return trial.days().get(number).toBuilder().plans(1).build();
  }

  private DoughCandidates search(int number, Trial trial) {
    BakeDay then = then(number, trial);
    boolean one = candidates.size() == 1;
    double grid = one ? GRID_OF_ONE_HOURS : GRID_HOURS;
    return DoughCandidates.of(
        model(then, candidates.get(number)), then, grid, one, control.silently());
  }

  /** One model serves all changes of the hours and of the oven. */
  private DayModel model(BakeDay then, DoughCandidates now) {
    BakeDay before = now.day();
    return isSameDough(then, before)
        ? now.model()
        : models.computeIfAbsent(
            then.toBuilder()
                .bench(before.bench())
                .readyAt(before.readyHour())
                .oven(before.oven())
                .build(),
            DayModel::new);
  }

  private static boolean isSameDough(BakeDay then, BakeDay now) {
    return then.cold().equals(now.cold())
        && then.starterInColdHours().equals(now.starterInColdHours());
  }

  /** Where one edge of the bench hours alone is in the way, that edge moved by half hours. */
  private List<Trial> edges(Trial unchanged) {
    List<Trial> trials = new ArrayList<>();
    if (!alone) {
      return trials;
    }
    for (DraftSearch.Miss miss : candidates.get(dough).found().near()) {
      edge(unchanged, miss.draft())
          .filter(
              trial -> trials.stream().noneMatch(other -> other.changes().equals(trial.changes())))
          .ifPresent(trials::add);
      if (trials.size() >= MOST_EDGES) {
        break;
      }
    }
    return trials;
  }

  private Optional<Trial> edge(Trial from, Draft draft) {
    BakeDay day = from.days().get(dough);
    BenchHours bench = day.bench();
    int interval = -1;
    double early = 0;
    double late = 0;
    for (BakeStep step : draft.steps(day)) {
      int at = bench.nearest(step.fromHour(), step.toHour());
      if (!step.kind().handsOn() || bench.miss(at, step.fromHour(), step.toHour()) == 0) {
        continue;
      }
      if (interval >= 0 && at != interval) {
        return Optional.empty();
      }
      interval = at;
      early = Math.max(early, bench.intervals().get(at).fromHour() - step.fromHour());
      late = Math.max(late, step.toHour() - bench.intervals().get(at).toHour());
    }
    if (interval < 0 || (early > 0) == (late > 0)) {
      return Optional.empty();
    }
    double by = Math.ceil(Math.max(early, late) / HALF_HOUR - 1e-6) * HALF_HOUR;
    BenchInterval at = bench.intervals().get(interval);
    if (early > 0 && at.fromHour() - by < control.changesFromHour() - 1e-6) {
      return Optional.empty();
    }
    return Optional.of(
        early > 0 ? earlier(from, interval, at, by) : longer(from, interval, at, by));
  }

  private Trial earlier(Trial from, int interval, BenchInterval at, double by) {
    BenchInterval wider = new BenchInterval(at.fromHour() - by, at.toHour());
    return everywhere(
        from,
        new Adjustment(Kind.BENCH_EARLIER, by, at.fromHour(), Adjustment.EVERY_DOUGH),
        by,
        day -> day.bench(bench(from).with(interval, wider)));
  }

  private Trial longer(Trial from, int interval, BenchInterval at, double by) {
    BenchInterval wider = new BenchInterval(at.fromHour(), at.toHour() + by);
    return everywhere(
        from,
        new Adjustment(Kind.BENCH_LONGER, by, at.toHour(), Adjustment.EVERY_DOUGH),
        by,
        day -> day.bench(bench(from).with(interval, wider)));
  }

  private static BenchHours bench(Trial trial) {
    return trial.days().get(0).bench();
  }

  private List<Trial> general(Trial from) {
    List<Trial> trials = new ArrayList<>();
    addCold(trials, from);
    addStarterInCold(trials, from);
    addEveryTime(trials, from);
    addEvening(trials, from);
    addReady(trials, from);
    addDoughTemperature(trials, from);
    addStarterShare(trials, from);
    addHands(trials, from);
    addOven(trials, from);
    return trials;
  }

  private void addCold(List<Trial> trials, Trial from) {
    if (from.days().get(dough).cold().isEmpty()) {
      trials.add(
          everywhere(
              from,
              new Adjustment(Kind.COLD, COLD_CELSIUS, 0, Adjustment.EVERY_DOUGH),
              COLD_COST,
              day -> day.cold(Temperature.ofCelsius(COLD_CELSIUS))));
    }
  }

  private void addStarterInCold(List<Trial> trials, Trial from) {
    BakeDay day = from.days().get(dough);
    if (day.cold().isPresent() && day.starterInColdHours().isEmpty()) {
      trials.add(
          everywhere(
              from,
              new Adjustment(Kind.STARTER_IN_COLD, STARTER_COLD_HOURS, 0, Adjustment.EVERY_DOUGH),
              STARTER_IN_COLD_COST,
              changed -> changed.starterInCold(STARTER_COLD_HOURS)));
    }
  }

  private void addEveryTime(List<Trial> trials, Trial from) {
    for (double by : EVERY_TIME_HOURS) {
      List<BenchInterval> longer =
          bench(from).intervals().stream()
              .map(at -> new BenchInterval(at.fromHour(), at.toHour() + by))
              .toList();
      double first = longer.get(0).toHour() - by;
      trials.add(
          everywhere(
              from,
              new Adjustment(Kind.EVERY_TIME_LONGER, by, first, Adjustment.EVERY_DOUGH),
              by + EVERY_TIME_COST,
              day -> day.bench(new BenchHours(longer))));
    }
  }

  /** Where only one day is given. */
  private void addEvening(List<Trial> trials, Trial from) {
    double first = bench(from).firstHour();
    if (first > from.days().get(dough).readyHour() - ONE_DAY_HOURS) {
      evening(first).ifPresent(evening -> trials.add(withEvening(from, evening)));
    }
  }

  private Trial withEvening(Trial from, BenchInterval evening) {
    List<BenchInterval> more = new ArrayList<>(bench(from).intervals());
    more.add(evening);
    double hours = evening.toHour() - evening.fromHour();
    return everywhere(
        from,
        new Adjustment(Kind.EVENING_BEFORE, hours, evening.fromHour(), Adjustment.EVERY_DOUGH),
        EVENING_COST,
        day -> day.bench(new BenchHours(more)));
  }

  /** What is left of the evening of the day before, or of the same day where that has passed. */
  private Optional<BenchInterval> evening(double first) {
    double before = 24 * (Math.floor(first / 24) - 1) + EVENING_FROM_CLOCK_HOUR;
    return Stream.of(before, before + 24)
        .filter(evening -> hoursLeft(evening, first) >= LEAST_EVENING_HOURS)
        .map(evening -> new BenchInterval(beginning(evening), end(evening, first)))
        .findFirst();
  }

  private double hoursLeft(double evening, double first) {
    return end(evening, first) - beginning(evening);
  }

  private static double end(double evening, double first) {
    return Math.min(evening + EVENING_HOURS, first);
  }

  private double beginning(double evening) {
    return Math.max(evening, Math.ceil(control.changesFromHour() / HALF_HOUR - 1e-6) * HALF_HOUR);
  }

  private void addReady(List<Trial> trials, Trial from) {
    double ready = from.days().get(dough).readyHour();
    for (double by : READY_HOURS) {
      trials.add(
          forDough(
              from,
              new Adjustment(Kind.READY, by, ready + by, dough),
              Math.abs(by) + READY_COST,
              day -> day.readyAt(ready + by)));
    }
  }

  /** Where the temperature was narrowed, its neighbours. */
  private void addDoughTemperature(List<Trial> trials, Trial from) {
    List<Double> given = from.days().get(dough).doughCelsius();
    for (double by : new double[] {-1, 1, -2, 2, -3, 3}) {
      double celsius = given.get(0) + by;
      if (given.size() == 1 && celsius >= 10 && celsius <= 32) {
        trials.add(
            forDough(
                from,
                new Adjustment(Kind.DOUGH_TEMPERATURE, celsius, 0, dough),
                Math.abs(by) * 0.2,
                day -> day.doughCelsius(List.of(celsius))));
      }
    }
  }

  /** Where the share was narrowed, its neighbours. */
  private void addStarterShare(List<Trial> trials, Trial from) {
    List<Double> given = from.days().get(dough).starterPercents();
    for (double times : new double[] {0.8, 1.25, 0.6, 1.6, 0.4, 2}) {
      double percent = Math.min(100, Math.max(0.5, Math.rint(given.get(0) * times)));
      if (given.size() == 1) {
        trials.add(
            forDough(
                from,
                new Adjustment(Kind.STARTER_SHARE, percent, 0, dough),
                Math.abs(Math.log(times)) * 0.8,
                day -> day.starterPercents(List.of(percent))));
      }
    }
  }

  /** Whoever works alone on a dough that does not fit alone gains nothing by company only. */
  private void addHands(List<Trial> trials, Trial from) {
    boolean gains = !alone || candidates.size() > 1 && from.changes().size() > 1;
    if (gains && from.hands() < MOST_HANDS) {
      int more = from.hands() + 1;
      Adjustment change = new Adjustment(Kind.HANDS, more, 0, Adjustment.EVERY_DOUGH);
      trials.add(new Trial(from.days(), more, with(from, change), from.cost() + HANDS_COST));
    }
  }

  /** Where the loaves of the day do not all fit at once. */
  private void addOven(List<Trial> trials, Trial from) {
    Oven oven = from.days().get(0).oven();
    int loaves = from.days().stream().mapToInt(BakeDay::loaves).sum();
    for (int times = 2; times <= MOST_OVENS && oven.loaves() * (times - 1) < loaves; times++) {
      Oven larger = oven.withLoaves(Math.min(oven.loaves() * times, MOST_LOAVES));
      trials.add(
          everywhere(
              from,
              new Adjustment(Kind.OVEN_CAPACITY, larger.loaves(), 0, Adjustment.EVERY_DOUGH),
              OVEN_COST + LARGER_OVEN_COST * (times - 2),
              day -> day.oven(larger)));
    }
  }

  private Trial everywhere(
      Trial from, Adjustment change, double cost, UnaryOperator<BakeDay.Builder> by) {
    List<BakeDay> days =
        from.days().stream().map(day -> by.apply(day.toBuilder()).build()).toList();
    return new Trial(days, from.hands(), with(from, change), from.cost() + cost);
  }

  private Trial forDough(
      Trial from, Adjustment change, double cost, UnaryOperator<BakeDay.Builder> by) {
    List<BakeDay> days = new ArrayList<>(from.days());
    days.set(dough, by.apply(days.get(dough).toBuilder()).build());
    return new Trial(days, from.hands(), with(from, change), from.cost() + cost);
  }

  private static List<Adjustment> with(Trial from, Adjustment change) {
    List<Adjustment> all = new ArrayList<>(from.changes());
    all.removeIf(each -> each.kind() == change.kind());
    all.add(change);
    return all;
  }
}
