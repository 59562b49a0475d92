package doughtide.core.day.again;

import doughtide.core.Internal;
import doughtide.core.day.BakeDay;
import doughtide.core.day.BakePlan;
import doughtide.core.day.BakeStep;
import doughtide.core.day.BakeStep.Kind;
import doughtide.core.day.DayAnswer;
import doughtide.core.day.DayPlan;
import doughtide.core.day.DayPlanner;
import doughtide.core.day.DayStep;
import doughtide.core.day.SearchControl;
import doughtide.core.day.Taken;
import doughtide.core.feeding.BuildTimes;
import doughtide.core.quantity.InputException;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.TreeMap;
import java.util.function.Function;
import java.util.stream.IntStream;

/**
 * Plans the rest of a day that has slipped, of one dough or of several. Those that are mixed go
 * first, the one that was to be baked first before the others, each beside those before it; then
 * those that are not mixed yet are planned anew beside them.
 */
@Internal
public final class RestPlanner {
  /** The key of the refusal of hours at the bench that are too few. */
  public static final String NO_TIME = "day.again.bench";

  /** What was not meant must bring more than one dough in ten right (our choice). */
  private static final double ONE_IN_TEN = 0.1;

  /** A dough that is overdue is not shaped later than this for a greater share (our choice). */
  private static final double LATE_HOURS = 1;

  /** At which doughs that are not mixed may be mixed where none is possible as meant, °C. */
  private static final List<Double> OTHER_CELSIUS = List.of(20.0, 22.0, 24.0, 26.0, 28.0);

  private final List<Dough> doughs;
  private final int hands;
  private final SearchControl control;
  private final Map<Integer, RestSearch> searches = new TreeMap<>();
  private final Map<Integer, RestSearch.Way> ways = new TreeMap<>();
  private final Map<Integer, Slipped> slipped = new TreeMap<>();
  private Optional<DayPlan> unmixed = Optional.empty();

  private RestPlanner(List<Dough> doughs, int hands, double nowHour) {
    this.doughs = doughs;
    this.hands = hands;
    this.control = SearchControl.none().changingFrom(nowHour);
  }

  /**
   * A dough of the day.
   *
   * @param name what it is called; empty where it is the only one
   * @param day as it was planned for, with what has changed; the hours at the bench from now on
   * @param slipped how far it has come; empty if it is not mixed yet
   * @param stages how far its starter has come, where it is not mixed yet and stages are done
   */
  @Internal
  public record Dough(
      String name, BakeDay day, Optional<Slipped> slipped, Optional<StagesBegun> stages) {}

  /**
   * Plans the rest.
   *
   * @param doughs 1…16 with the same oven and the same hours at the bench
   * @param hands how many persons work, 1…20
   * @param nowHour what the clock says, on the axis of the day
   * @param obstacle what is said where those that are not mixed have no plan
   * @return the day with what is left of it, and what was done from shaping on
   * @throws InputException if it is too cold to say anything, the hours at the bench leave no time
   *     to bake, or by {@code obstacle}
   */
  public static DayPlan plan(
      List<Dough> doughs, int hands, double nowHour, Function<DayAnswer, InputException> obstacle) {
    RestPlanner planner = new RestPlanner(doughs, hands, nowHour);
    planner.placeMixed();
    planner.placeUnmixed(obstacle);
    return planner.day();
  }

  private List<Integer> numbers(boolean mixed) {
    return IntStream.range(0, doughs.size())
        .filter(number -> doughs.get(number).slipped().isPresent() == mixed)
        .boxed()
        .toList();
  }

  private void placeMixed() {
    List<Integer> mixed = numbers(true);
    List<Slipped> settled =
        OpenSteps.settled(
            mixed.stream().map(number -> begun(doughs.get(number))).toList(),
            doughs.get(0).day().bench(),
            hands);
    for (int i = 0; i < settled.size(); i++) {
      int number = mixed.get(i);
      slipped.put(number, settled.get(i));
      searches.put(number, new RestSearch(doughs.get(number).day(), settled.get(i), hands));
    }
    mixed.stream()
        .sorted(Comparator.comparingDouble(number -> bakedOrMeant(known(slipped, number))))
        .forEach(this::place);
  }

  private static Slipped begun(Dough dough) {
    return LateFolds.spaced(dough.day(), dough.slipped().orElseThrow());
  }

  /** What is in the oven is there before all others. */
  private static double bakedOrMeant(Slipped dough) {
    return dough.bakedHour().orElse(dough.ovenHour());
  }

  /**
   * As it was meant; with its tub in the cold where that is no plan, and at other hours or not at
   * all where it is still to go there, if more come right so.
   */
  private void place(int number) {
    Taken others = besideMixed(number);
    RestSearch meant = known(searches, number).beside(others);
    meant.bestIfAny().ifPresent(found -> ways.put(number, found));
    BakeDay day = doughs.get(number).day();
    RestSearch.Way usual = ways.get(number);
    boolean comesRight = usual != null && usual.goodShare() >= DayPlanner.LEAST_GOOD_SHARE;
    boolean mayMove = !comesRight || TubIntoCold.isMeant(known(slipped, number));
    if (day.cold().isPresent() && mayMove) {
      TubIntoCold.ways(known(slipped, number), day.bench(), others, hands)
          .forEach(way -> placeIfBetter(number, way, others));
    }
    if (!ways.containsKey(number)) {
      throw named(doughs.get(number).name(), meant.whyNone());
    }
  }

  private void placeIfBetter(int number, Slipped way, Taken others) {
    RestSearch search = new RestSearch(doughs.get(number).day(), way, hands);
    Optional<RestSearch.Way> found = search.beside(others).bestIfAny();
    RestSearch.Way usual = ways.get(number);
    if (found.isPresent() && (usual == null || isBetter(found.get(), usual))) {
      slipped.put(number, way);
      searches.put(number, search);
      ways.put(number, found.get());
    }
  }

  /** A dough that is ready now is not kept until it is even further past that. */
  private static boolean isBetter(RestSearch.Way way, RestSearch.Way usual) {
    boolean later = way.shapeHour() > usual.shapeHour() + LATE_HOURS;
    boolean waits = way.overdue() && usual.overdue() && later;
    return !waits && way.goodShare() > usual.goodShare() + ONE_IN_TEN;
  }

  private static InputException named(String name, InputException why) {
    return name.isEmpty()
        ? why
        : new InputException(why.key(), "'" + name + "': " + why.getMessage());
  }

  /** What the other doughs take that are mixed: those without a way yet their folds. */
  private Taken besideMixed(int number) {
    Taken taken = Taken.NOTHING;
    for (int other : numbers(true)) {
      if (other != number) {
        taken =
            ways.containsKey(other)
                ? known(searches, other).taking(known(ways, other), taken)
                : taken.with(known(slipped, other).open());
      }
    }
    return taken;
  }

  private void placeUnmixed(Function<DayAnswer, InputException> obstacle) {
    List<BakeDay> days = unmixedDays();
    if (days.isEmpty()) {
      return;
    }
    DayAnswer found = planned(days, control.withoutChange());
    if (found.days().isEmpty()) {
      // The water can still be warmer or colder than was meant.
      found =
          planned(
              days.stream()
                  .map(day -> day.toBuilder().doughCelsius(OTHER_CELSIUS).build())
                  .toList(),
              control);
    }
    if (found.days().isEmpty()) {
      throw obstacle.apply(found);
    }
    unmixed = Optional.of(found.days().get(0));
  }

  /** Stages of their starters that are begun keep to their hours; doughs may share them. */
  private List<BakeDay> unmixedDays() {
    Map<StagesBegun, BuildTimes> builds = new HashMap<>();
    List<BakeDay> days = new ArrayList<>();
    Taken taken = besideMixed(-1);
    for (int number : numbers(false)) {
      BakeDay day = doughs.get(number).day();
      Optional<StagesBegun> begun = doughs.get(number).stages();
      if (begun.isPresent()) {
        if (!builds.containsKey(begun.get())) {
          BuildTimes times = begun.get().times(day.forecaster(), day.bench(), taken, hands);
          builds.put(begun.get(), times);
          taken = taken.with(begun.get().open(times));
        }
        day = begun.get().in(day, Objects.requireNonNull(builds.get(begun.get())));
      }
      days.add(day);
    }
    return days;
  }

  private DayAnswer planned(List<BakeDay> days, SearchControl how) {
    return DayPlanner.plan(days, hands, how, besideMixed(-1));
  }

  private DayPlan day() {
    List<BakePlan> plans = new ArrayList<>();
    List<List<BakeStep>> own = new ArrayList<>();
    int next = 0;
    for (int number = 0; number < doughs.size(); number++) {
      if (ways.containsKey(number)) {
        RestSearch search = known(searches, number).beside(beside(number));
        plans.add(search.plan(known(ways, number)));
        own.add(search.steps(known(ways, number)));
      } else {
        plans.add(unmixed.orElseThrow().plans().get(next));
        own.add(steps(unmixed.get(), next++));
      }
    }
    return DayPlan.begun(plans, own, hands);
  }

  /** What all others take. */
  private Taken beside(int number) {
    Taken taken = besideMixed(number);
    if (unmixed.isPresent()) {
      DayPlan day = unmixed.get();
      for (int i = 0; i < day.plans().size(); i++) {
        BakePlan plan = day.plans().get(i);
        taken = taken.with(plan.day(), plan.ovenHour());
      }
      taken = taken.with(steps(day));
    }
    return taken;
  }

  /** Each once, for whomever it is done. */
  private static List<BakeStep> steps(DayPlan day) {
    return day.steps().stream().map(DayStep::step).toList();
  }

  private static List<BakeStep> steps(DayPlan day, int number) {
    return day.steps().stream()
        .filter(each -> each.doughs().contains(number))
        .map(DayStep::step)
        .filter(step -> step.kind() != Kind.BAKE && step.kind() != Kind.COOL)
        .toList();
  }

  private static <T> T known(Map<Integer, T> map, int number) {
    return Objects.requireNonNull(map.get(number));
  }
}
