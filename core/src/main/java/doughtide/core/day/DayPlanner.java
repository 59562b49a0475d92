package doughtide.core.day;

import doughtide.core.Internal;
import doughtide.core.day.DayAnswer.Criterion;
import doughtide.core.day.DayAnswer.Obstacle;
import doughtide.core.day.DayAnswer.Reason;
import doughtide.core.feeding.FeedChoice;
import doughtide.core.quantity.Checks;
import doughtide.core.quantity.InputException;
import java.util.ArrayList;
import java.util.Collections;
import java.util.Comparator;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.SortedMap;
import java.util.TreeMap;
import java.util.concurrent.atomic.AtomicInteger;
import java.util.stream.IntStream;

/**
 * Plans a day backward from the bread, for one dough or for several that share one oven and some
 * pairs of hands: feed, share of starter, dough temperature, bulk in the room or partly in the
 * cold, proof in the room or in the cold, so that every hands-on step falls into the hours at the
 * bench, nobody has to do two things at once, and never more loaves are in the oven than it holds.
 * Loaves of several doughs go into the oven together where they fit, a feeding may serve several
 * doughs, and a starter that is built in stages is built once for all whose stages are the same,
 * where it is ripe for them. Plans are ranked by their least margin: how much later each step may
 * be until one dough in ten more is spoiled, in coarse classes; then by right doughs, by how far
 * the baker is there when the jar may show its mark, by how fresh the bread is, the hours that a
 * person keeps, the length of the day and the ordinary. The same doughs give the same plans, unless
 * a search is stopped.
 *
 * <pre>{@code
 * DayAnswer answer = DayPlanner.plan(List.of(white, rye), 1, SearchControl.none());
 * double hour = answer.days().get(0).plans().get(0).mixHour();
 * }</pre>
 *
 * <p>Everything that fits the hours at the bench is found on the likely path for each dough. Then
 * one dough after the other takes a place, the dough with the fewest plans first; one that finds
 * none goes to the head of the line and the day is begun again. At last each dough chooses the best
 * of its plans beside the others, weighed with 64 members of the belief.
 */
public final class DayPlanner {
  /** Share of doughs, 0…1, of which at least so many come right by a plan (starting value). */
  public static final double LEAST_GOOD_SHARE = 0.15;

  private static final int MOST_DOUGHS = 16;
  private static final int MOST_HANDS = 20;

  private static final int MOST_ORDERS = 6;
  private static final double GRID_HOURS = 0.5;
  private static final double LEAST_GAIN_HOURS = 1.0 / 24;
  private static final double SEARCH_PART = 0.6; // of the work, for progress

  /**
   * So many plans of a dough are compared at least, so that the best does not hang on how many are
   * shown.
   */
  private static final int LEAST_COMPARED = 3;

  private final List<BakeDay> doughs;
  private final List<DoughCandidates> candidates;
  private final int hands;
  private final SearchControl control;
  private final Taken taken;
  private final Map<Integer, FeedChoice> builds; // that doughs must share, by their numbers

  DayPlanner(List<DoughCandidates> candidates, int hands, SearchControl control, Taken taken) {
    this(candidates, hands, control, taken, Map.of());
  }

  private DayPlanner(
      List<DoughCandidates> candidates,
      int hands,
      SearchControl control,
      Taken taken,
      Map<Integer, FeedChoice> builds) {
    this.doughs = candidates.stream().map(DoughCandidates::day).toList();
    this.candidates = candidates;
    this.hands = hands;
    this.control = control;
    this.taken = taken;
    this.builds = builds;
  }

  /**
   * Plans a day.
   *
   * @param doughs 1…16 doughs with the same oven and the same hours at the bench; as many plans are
   *     looked for as the first asks for
   * @param hands how many persons work, 1…20
   * @param control how the search runs
   * @return plans in the order of their worth, or what stands in the way and what would help
   * @throws InputException if oven or hours at the bench differ
   */
  public static DayAnswer plan(List<BakeDay> doughs, int hands, SearchControl control) {
    return plan(doughs, hands, control, Taken.NOTHING);
  }

  /**
   * Plans doughs of a day in which others go on as they are.
   *
   * @param taken what those others take of the oven and of the hands
   */
  @Internal
  public static DayAnswer plan(
      List<BakeDay> doughs, int hands, SearchControl control, Taken taken) {
    check(doughs, hands);
    SearchControl own = control.interruptedWith(Thread.currentThread());
    DayPlanner planner = new DayPlanner(candidates(doughs, own), hands, own, taken);
    DayAnswer answer = planner.answer();
    own.at(1);
    return answer;
  }

  private static void check(List<BakeDay> doughs, int hands) {
    Checks.inRange("doughs", doughs.size(), 1, MOST_DOUGHS, "");
    Checks.inRange("persons", hands, 1, MOST_HANDS, "");
    BakeDay first = doughs.get(0);
    for (BakeDay each : doughs) {
      if (!each.oven().equals(first.oven()) || !each.bench().equals(first.bench())) {
        throw new InputException(
            "day.one-bench",
            "the doughs of one day share one oven and the hours at the bench: give all the same");
      }
    }
  }

  /** Equal doughs are searched once, several at once. */
  private static List<DoughCandidates> candidates(List<BakeDay> doughs, SearchControl control) {
    Map<BakeDay, DayModel> models = models(doughs);
    if (doughs.size() == 1) {
      SearchControl part = control.withProgress(share -> control.at(SEARCH_PART * share));
      return List.of(candidates(models, doughs.get(0), true, part));
    }
    List<BakeDay> different = List.copyOf(models.keySet());
    AtomicInteger done = new AtomicInteger();
    List<DoughCandidates> found =
        control.mapLarge(
            different,
            day -> {
              DoughCandidates own = candidates(models, day, false, control.silently());
              control.at(SEARCH_PART * done.incrementAndGet() / different.size());
              return own;
            });
    return doughs.stream().map(day -> found.get(different.indexOf(day))).toList();
  }

  private static DoughCandidates candidates(
      Map<BakeDay, DayModel> models, BakeDay day, boolean alone, SearchControl control) {
    DayModel model = Objects.requireNonNull(models.get(day));
    return DoughCandidates.of(model, day, GRID_HOURS, alone, control);
  }

  private static Map<BakeDay, DayModel> models(List<BakeDay> doughs) {
    Map<BakeDay, DayModel> models = new LinkedHashMap<>();
    doughs.stream()
        .distinct()
        .forEach(day -> models.put(day, new DayModel(day, List.copyOf(models.values()))));
    return models;
  }

  private DayAnswer answer() {
    List<DayPlan> shared = withOneBuild();
    Attempt attempt = shared.isEmpty() ? place() : Attempt.NONE;
    List<DayPlan> found = attempt.isComplete() ? days(attempt.placed()) : shared;
    List<DayPlan> days = found.isEmpty() ? coarsely() : found;
    boolean stopped = control.stopped();
    if (!days.isEmpty()) {
      List<DayPlan> wanted = days.subList(0, Math.min(days.size(), doughs.get(0).plans()));
      return new DayAnswer(wanted, Optional.empty(), Optional.of(choice(days)), !stopped);
    }
    int dough = attempt.withoutPlace().orElse(0);
    Optional<DayAnswer.Remedy> remedy =
        control.looksForChange()
            ? new SmallestChange(candidates, hands, dough, control, taken).find()
            : Optional.empty();
    return new DayAnswer(
        List.of(),
        Optional.of(new Obstacle(reason(dough, attempt), dough, remedy)),
        Optional.empty(),
        !control.stopped());
  }

  /**
   * Days on which doughs whose starter is built in the same stages take it from one build: a baker
   * wants that wherever it is ripe for all of them. Empty if no two are, or none is possible.
   */
  private List<DayPlan> withOneBuild() {
    for (Map<Integer, FeedChoice> shared : SharedBuilds.of(candidates)) {
      DayPlanner planner = new DayPlanner(candidates, hands, control, taken, shared);
      Attempt attempt = planner.place();
      List<DayPlan> days = attempt.isComplete() ? planner.days(attempt.placed()) : List.of();
      if (!days.isEmpty() || control.stopped()) {
        return days;
      }
    }
    return List.of();
  }

  /**
   * With fewer hours of mixing for each dough, by which several doughs may find places that they
   * take from each other otherwise; the smallest change is looked for by the same.
   */
  private List<DayPlan> coarsely() {
    boolean hopeless =
        doughs.size() == 1
            || control.stopped()
            || candidates.stream().anyMatch(each -> each.size() == 0)
            || !OvenRoom.isEnough(doughs);
    if (hopeless) {
      return List.of();
    }
    Map<BakeDay, DoughCandidates> coarse = new HashMap<>();
    candidates.forEach(
        each -> coarse.computeIfAbsent(each.day(), day -> each.coarser(control.silently())));
    List<DoughCandidates> all =
        doughs.stream().map(day -> Objects.requireNonNull(coarse.get(day))).toList();
    return new DayPlanner(all, hands, control, taken).quickly().stream().toList();
  }

  private DayAnswer.Choice choice(List<DayPlan> days) {
    if (doughs.size() == 1 && days.size() > 1) {
      return candidates.get(0).choice(draft(days.get(0)), draft(days.get(1)));
    }
    double oldest =
        days.get(0).plans().stream()
            .mapToDouble(plan -> PlanWorth.ageHours(plan.day(), plan.draft()))
            .max()
            .orElseThrow();
    return new DayAnswer.Choice(Criterion.ALONE, days.get(0).marginHours(), oldest);
  }

  private static Draft draft(DayPlan day) {
    return day.plans().get(0).draft();
  }

  private Reason reason(int dough, Attempt attempt) {
    DoughCandidates own = candidates.get(dough);
    if (own.size() == 0) {
      return own.found().fed() == 0 ? Reason.STARTER : Reason.BENCH;
    }
    boolean ovenIsFull = doughs.size() > 1 && !OvenRoom.isEnough(doughs);
    boolean alone =
        !ovenIsFull && (doughs.size() == 1 || attempt.isComplete() || attempt.placed().isEmpty());
    return alone ? Reason.DOUGH : Reason.OTHER_DOUGHS;
  }

  /** A day with these doughs, if there is one. */
  Optional<DayPlan> quickly() {
    if (candidates.stream().anyMatch(each -> each.size() == 0)) {
      return Optional.empty();
    }
    Attempt attempt = place();
    if (!attempt.isComplete()) {
      return Optional.empty();
    }
    SortedMap<Integer, Draft> asPlaced = asTheyAre(attempt.placed());
    // A dough alone must stand as a plan of its own day would: near its shape point.
    return doughs.size() > 1 && isGood(asPlaced)
        ? Optional.of(day(asPlaced))
        : days(attempt.placed()).stream().findFirst();
  }

  private SortedMap<Integer, Draft> asTheyAre(SortedMap<Integer, Draft> placed) {
    List<Integer> numbers = List.copyOf(placed.keySet());
    List<Draft> drafts =
        control.map(
            numbers,
            number -> candidates.get(number).asItIs(Objects.requireNonNull(placed.get(number))));
    SortedMap<Integer, Draft> asTheyAre = new TreeMap<>();
    numbers.forEach(number -> asTheyAre.put(number, drafts.get(asTheyAre.size())));
    return asTheyAre;
  }

  private boolean isGood(SortedMap<Integer, Draft> placed) {
    return placed.entrySet().stream()
        .allMatch(each -> candidates.get(each.getKey()).isGood(each.getValue()));
  }

  /**
   * An attempt to give every dough a place.
   *
   * @param placed the plan of each dough
   * @param withoutPlace the dough that found no place
   */
  private record Attempt(SortedMap<Integer, Draft> placed, Optional<Integer> withoutPlace) {
    static final Attempt NONE = new Attempt(Collections.emptySortedMap(), Optional.of(0));

    boolean isComplete() {
      return withoutPlace.isEmpty();
    }
  }

  private List<Integer> order() {
    return IntStream.range(0, doughs.size())
        .boxed()
        .sorted(Comparator.comparingInt(number -> candidates.get(number).size()))
        .toList();
  }

  private Attempt place() {
    List<Integer> order = new ArrayList<>(order());
    Attempt attempt = new Attempt(Collections.emptySortedMap(), Optional.of(order.get(0)));
    if (doughs.size() > 1 && !OvenRoom.isEnough(doughs)) {
      return new Attempt(Collections.emptySortedMap(), Optional.of(largest()));
    }
    for (int i = 0; i < Math.min(doughs.size() + 1, MOST_ORDERS); i++) {
      attempt = placeInOrder(order);
      if (attempt.isComplete() || order.get(0).equals(attempt.withoutPlace().get())) {
        return attempt;
      }
      Integer hard = attempt.withoutPlace().get();
      order.remove(hard);
      order.add(0, hard);
    }
    return attempt;
  }

  /** The dough that needs most of the oven. */
  private Integer largest() {
    return IntStream.range(0, doughs.size())
        .boxed()
        .max(Comparator.comparingInt(number -> doughs.get(number).loaves()))
        .orElseThrow();
  }

  private Attempt placeInOrder(List<Integer> order) {
    SortedMap<Integer, Draft> placed = new TreeMap<>();
    for (int number : order) {
      Optional<Draft> draft = candidates.get(number).first(others(number, placed));
      if (draft.isEmpty()) {
        return new Attempt(placed, Optional.of(number));
      }
      placed.put(number, draft.get());
    }
    return new Attempt(placed, Optional.empty());
  }

  private OtherDoughs others(int number, SortedMap<Integer, Draft> placed) {
    SortedMap<Integer, Draft> others = new TreeMap<>(placed);
    others.remove(number);
    Optional<FeedChoice> build = Optional.ofNullable(builds.get(number));
    return new OtherDoughs(doughs, number, others, hands, taken, build);
  }

  /**
   * Each dough chooses once more, now that all others have a place; the last may choose several.
   * Empty if a dough has no good plan.
   */
  private List<DayPlan> days(SortedMap<Integer, Draft> places) {
    SortedMap<Integer, Draft> placed = new TreeMap<>(places);
    List<Integer> order = new ArrayList<>(order());
    Collections.reverse(order);
    int hardest = order.remove(order.size() - 1);
    for (int i = 0; i < order.size(); i++) {
      control.at(SEARCH_PART + (1 - SEARCH_PART) * i / doughs.size());
      int number = order.get(i);
      Draft first = Objects.requireNonNull(placed.get(number));
      placed.put(number, better(number, first, placed));
    }
    List<DayPlan> days = new ArrayList<>();
    int plans = doughs.get(0).plans();
    int wanted = doughs.size() > 1 ? plans : Math.max(LEAST_COMPARED, plans);
    List<Draft> best = candidates.get(hardest).best(others(hardest, placed), wanted);
    Draft before = Objects.requireNonNull(placed.get(hardest));
    boolean keeps = best.isEmpty() && doughs.size() > 1;
    for (Draft each : keeps ? List.of(candidates.get(hardest).asItIs(before)) : best) {
      placed.put(hardest, each);
      if (isGood(placed)) {
        days.add(day(inGoodTime(placed)));
      }
    }
    return days;
  }

  /**
   * Where loaves of several doughs wait in the cold, all of them baked earlier if that makes the
   * least margin of the day longer.
   */
  private SortedMap<Integer, Draft> inGoodTime(SortedMap<Integer, Draft> placed) {
    SortedMap<Integer, Draft> best = placed;
    for (double by : DoughCandidates.EARLIER_OVEN_HOURS) {
      SortedMap<Integer, Draft> earlier = new TreeMap<>(placed);
      earlier.replaceAll((number, draft) -> bakedEarlier(draft, by));
      boolean possible = doughs.size() > 1 && !control.stopped() && fit(earlier) && isGood(earlier);
      if (possible && marginHours(earlier) > marginHours(best) + LEAST_GAIN_HOURS) {
        best = earlier;
      }
    }
    return best;
  }

  private static Draft bakedEarlier(Draft draft, double by) {
    return draft.proof() == ProofKind.COLD ? draft.movedBy(0, draft.ovenHour() - by) : draft;
  }

  private boolean fit(SortedMap<Integer, Draft> placed) {
    return placed.entrySet().stream()
        .allMatch(
            each -> {
              OtherDoughs others = others(each.getKey(), placed);
              return candidates.get(each.getKey()).fits(each.getValue(), others);
            });
  }

  private double marginHours(SortedMap<Integer, Draft> placed) {
    return placed.entrySet().stream()
        .mapToDouble(each -> candidates.get(each.getKey()).marginHours(each.getValue()))
        .min()
        .orElseThrow();
  }

  private Draft better(int number, Draft first, SortedMap<Integer, Draft> placed) {
    DoughCandidates own = candidates.get(number);
    List<Draft> best = control.stopped() ? List.of() : own.best(others(number, placed), 1);
    boolean better = !best.isEmpty() && (!own.isGood(first) || own.isBetter(best.get(0), first));
    return better ? best.get(0) : own.asItIs(first);
  }

  private DayPlan day(SortedMap<Integer, Draft> placed) {
    DayTimetable table = DayTimetable.of(doughs, placed, hands, taken).orElseThrow();
    List<BakePlan> plans =
        control.map(
            List.copyOf(placed.keySet()),
            number -> candidates.get(number).plan(Objects.requireNonNull(placed.get(number))));
    DayPlan day = new DayPlan(plans, table.steps(), table.loads(), hands, Optional.empty());
    int tight = day.tightDough();
    Draft tightest = Objects.requireNonNull(placed.get(tight));
    return day.with(candidates.get(tight).loosening(tightest, tight));
  }
}
