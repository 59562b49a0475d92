package doughtide.core.day;

import doughtide.core.day.SharedAnswer.Change;
import doughtide.core.feeding.FeedChoice;
import doughtide.core.quantity.Checks;
import doughtide.core.quantity.InputException;
import java.util.ArrayList;
import java.util.Collections;
import java.util.Comparator;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import java.util.SortedMap;
import java.util.TreeMap;
import java.util.stream.IntStream;

/**
 * Several doughs on one day that share one oven and some pairs of hands: nobody has to do two
 * things at once, and never more loaves are in the oven than it holds. Loaves of several doughs go
 * into the oven together where they fit, and a feeding may serve several doughs. The same doughs
 * give the same plan.
 *
 * <pre>{@code
 * SharedAnswer answer = SharedDay.plan(List.of(white, rye), 1, SearchProgress.none());
 * }</pre>
 *
 * <p>Each dough's own plans are found first; then one dough after the other takes the best of its
 * plans that goes with the others, the dough with the fewest first. A dough that finds no place
 * goes to the head of the line and the day is begun again; at last each dough may choose once more.
 */
public final class SharedDay {
  private static final int MOST_DOUGHS = 16;
  private static final int MOST_HANDS = 20;
  private static final double[] LONGER_HOURS = {0.5, 1, 2, 3};
  private static final double[] LATER_HOURS = {1, 2, 4};

  private final List<BakeDay> doughs;
  private final int hands;

  private SharedDay(List<BakeDay> doughs, int hands) {
    this.doughs = doughs;
    this.hands = hands;
  }

  /**
   * Plans all doughs.
   *
   * @param doughs 1…16 doughs with the same oven and the same hours at the bench
   * @param hands how many persons work, 1…20
   * @param progress is told how far the search has come
   * @throws InputException if oven or hours at the bench differ
   */
  public static SharedAnswer plan(List<BakeDay> doughs, int hands, SearchProgress progress) {
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
    return new SharedDay(List.copyOf(doughs), hands).plan(progress);
  }

  private SharedAnswer plan(SearchProgress progress) {
    List<DoughChoices> choices = choices(doughs, progress);
    Tried tried = place(choices, hands);
    if (tried.misfit().isEmpty()) {
      progress.at(1);
      return answer(choices, tried.placed(), hands, Optional.empty());
    }
    int misfit = tried.misfit().get();
    SharedAnswer.Misfit why =
        new SharedAnswer.Misfit(
            misfit, choices.get(misfit).size() == 0, change(choices, misfit, progress));
    progress.at(1);
    return new SharedAnswer(List.of(), List.of(), List.of(), hands, Optional.of(why));
  }

  private static List<DoughChoices> choices(List<BakeDay> days, SearchProgress progress) {
    List<DoughChoices> choices = new ArrayList<>();
    for (BakeDay day : days) {
      choices.add(new DoughChoices(day));
      progress.at(0.7 * choices.size() / days.size());
    }
    return choices;
  }

  private SharedAnswer answer(
      List<DoughChoices> choices,
      SortedMap<Integer, Draft> placed,
      int persons,
      Optional<SharedAnswer.Misfit> misfit) {
    SharedTimetable table = SharedTimetable.of(doughs, placed, persons).orElseThrow();
    List<BakePlan> plans =
        placed.entrySet().stream()
            .map(each -> choices.get(each.getKey()).plan(each.getValue()))
            .toList();
    return new SharedAnswer(plans, table.steps(), table.loads(), persons, misfit);
  }

  /**
   * An attempt.
   *
   * @param placed the plan of each dough
   * @param misfit the dough that found no place
   */
  private record Tried(SortedMap<Integer, Draft> placed, Optional<Integer> misfit) {}

  private Tried place(List<DoughChoices> choices, int persons) {
    List<Integer> order = new ArrayList<>(IntStream.range(0, doughs.size()).boxed().toList());
    order.sort(Comparator.comparingInt(number -> choices.get(number).size()));
    Tried tried = new Tried(Collections.emptySortedMap(), Optional.empty());
    for (int attempt = 0; attempt <= doughs.size(); attempt++) {
      tried = placeInOrder(order, choices, persons);
      if (tried.misfit().isEmpty()) {
        return new Tried(again(tried.placed(), choices, persons), Optional.empty());
      }
      Integer hard = tried.misfit().get();
      if (order.get(0).equals(hard)) {
        return tried;
      }
      order.remove(hard);
      order.add(0, hard);
    }
    return tried;
  }

  private Tried placeInOrder(List<Integer> order, List<DoughChoices> choices, int persons) {
    SortedMap<Integer, Draft> placed = new TreeMap<>();
    for (int number : order) {
      Optional<Draft> draft = beside(number, placed, choices, persons);
      if (draft.isEmpty()) {
        return new Tried(placed, Optional.of(number));
      }
      placed.put(number, draft.get());
    }
    return new Tried(placed, Optional.empty());
  }

  /** Each dough chooses once more, now that all others have a place. */
  private SortedMap<Integer, Draft> again(
      SortedMap<Integer, Draft> first, List<DoughChoices> choices, int persons) {
    SortedMap<Integer, Draft> placed = new TreeMap<>(first);
    for (int number = 0; number < doughs.size(); number++) {
      Draft before = Objects.requireNonNull(placed.remove(number));
      Draft now = beside(number, placed, choices, persons).orElse(before);
      DoughChoices own = choices.get(number);
      placed.put(number, own.marginHours(now) > own.marginHours(before) ? now : before);
    }
    return placed;
  }

  private Optional<Draft> beside(
      int number, SortedMap<Integer, Draft> placed, List<DoughChoices> choices, int persons) {
    List<OvenLoad> loads =
        SharedTimetable.of(doughs, placed, persons).map(SharedTimetable::loads).orElse(List.of());
    List<FeedChoice> feedings =
        placed.entrySet().stream()
            .filter(
                each ->
                    doughs
                        .get(each.getKey())
                        .dough()
                        .starter()
                        .equals(doughs.get(number).dough().starter()))
            .map(each -> each.getValue().feed())
            .toList();
    SortedMap<Integer, Draft> with = new TreeMap<>(placed);
    return choices
        .get(number)
        .best(
            loads,
            feedings,
            new DoughChoices.Fits() {
              @Override
              public boolean fed(Draft draft) {
                with.put(number, draft);
                return SharedTimetable.of(doughs, with, persons).isPresent();
              }

              @Override
              public boolean unfed(Draft draft) {
                with.put(number, draft);
                return SharedTimetable.fitsUnfed(doughs, with, persons, number);
              }
            });
  }

  /** The smallest change tried that makes the day possible, the smallest first. */
  private Optional<Change> change(List<DoughChoices> choices, int misfit, SearchProgress progress) {
    boolean alone = choices.get(misfit).size() == 0;
    Optional<Change> soon = longer(LONGER_HOURS[0], misfit, progress);
    if (soon.isPresent()) {
      return soon;
    }
    if (!alone && hands < MOST_HANDS && place(choices, hands + 1).misfit().isEmpty()) {
      return Optional.of(new Change(Change.Kind.HANDS, hands + 1, -1));
    }
    Optional<Change> oven = largerOven(misfit);
    if (oven.isPresent()) {
      return oven;
    }
    for (int i = 1; i < LONGER_HOURS.length; i++) {
      Optional<Change> longer = longer(LONGER_HOURS[i], misfit, progress);
      if (longer.isPresent()) {
        return longer;
      }
    }
    return later(misfit);
  }

  private Optional<Change> longer(double hours, int misfit, SearchProgress progress) {
    List<BenchInterval> longer =
        doughs.get(0).bench().intervals().stream()
            .map(at -> new BenchInterval(at.fromHour(), at.toHour() + hours))
            .toList();
    BenchHours bench = new BenchHours(longer);
    progress.at(0.8);
    return possible(
            doughs.stream().map(each -> each.toBuilder().bench(bench).build()).toList(), misfit)
        ? Optional.of(new Change(Change.Kind.EVERY_TIME_LONGER, hours, -1))
        : Optional.empty();
  }

  private Optional<Change> largerOven(int misfit) {
    int loaves = doughs.get(0).oven().loaves() * 2;
    Oven larger = doughs.get(0).oven().withLoaves(Math.min(loaves, 500));
    return possible(
            doughs.stream().map(each -> each.toBuilder().oven(larger).build()).toList(), misfit)
        ? Optional.of(new Change(Change.Kind.OVEN_CAPACITY, larger.loaves(), -1))
        : Optional.empty();
  }

  /** The dough that found no place, wanted later. */
  private Optional<Change> later(int misfit) {
    for (double hours : LATER_HOURS) {
      List<BakeDay> changed = new ArrayList<>(doughs);
      BakeDay day = doughs.get(misfit);
      changed.set(misfit, day.toBuilder().readyAt(day.readyHour() + hours).build());
      if (possible(changed, misfit)) {
        return Optional.of(new Change(Change.Kind.READY_LATER, hours, misfit));
      }
    }
    return Optional.empty();
  }

  private boolean possible(List<BakeDay> changed, int misfit) {
    if (new DoughChoices(changed.get(misfit)).size() == 0) {
      return false;
    }
    SharedDay day = new SharedDay(changed, hands);
    return day.place(choices(changed, SearchProgress.none()), hands).misfit().isEmpty();
  }
}
