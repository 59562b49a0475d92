package doughtide.core.day;

import doughtide.core.day.BakeDayAnswer.Change;
import doughtide.core.day.BakeDayAnswer.Hindrance;
import doughtide.core.day.BakeDayAnswer.Why;
import doughtide.core.quantity.Temperature;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;

/**
 * Says why a day has no plan and looks for the smallest change that makes one, or the smallest two
 * where no single one does: each is tried by planning the changed day.
 */
final class Hindrances {
  private static final double HALF_HOUR = 0.5;
  private static final double REFRIGERATOR_COST = 0.7; // as much as so many hours more
  private static final int MOST_EDGES = 8;
  private static final double[] EVERY_TIME_HOURS = {0.5, 1, 1.5, 2, 3};
  private static final double[] READY_HOURS = {1, -1, 2, -2, 4, 8};
  private static final int MOST_PAIRS = 60;

  private Hindrances() {}

  /**
   * A changed day that may have a plan.
   *
   * @param kind what is changed, by {@code hours}, to {@code at}
   * @param cost of the change, in hours that the baker would rather not give
   * @param before the change this one is added to
   */
  private record Trial(
      BakeDay day, Change.Kind kind, double hours, double at, double cost, Optional<Trial> before) {
    Trial(BakeDay day, Change.Kind kind, double hours, double at, double cost) {
      this(day, kind, hours, at, cost, Optional.empty());
    }

    Trial after(Trial other) {
      return new Trial(day, kind, hours, at, cost + other.cost, Optional.of(other));
    }

    Change with(BakePlan plan) {
      return new Change(kind, hours, at, plan, before.map(each -> each.with(plan)));
    }
  }

  static Hindrance of(BakeDay day, DraftSearch.Found found) {
    List<Trial> trials = new ArrayList<>(edges(day, found.near()));
    trials.addAll(general(day));
    Optional<Change> change = firstPossible(sorted(trials), found);
    return new Hindrance(
        why(found), change.isPresent() ? change : firstPossible(pairs(day), found));
  }

  private static List<Trial> general(BakeDay day) {
    List<Trial> trials = new ArrayList<>();
    addRefrigerator(trials, day);
    addEveryTime(trials, day);
    addReady(trials, day);
    addDough(trials, day);
    return trials;
  }

  private static List<Trial> sorted(List<Trial> trials) {
    return trials.stream().sorted(Comparator.comparingDouble(Trial::cost)).toList();
  }

  /** Two changes of different kinds, the cheapest first. */
  private static List<Trial> pairs(BakeDay day) {
    List<Trial> pairs = new ArrayList<>();
    for (Trial first : general(day)) {
      for (Trial second : general(first.day())) {
        if (first.kind().compareTo(second.kind()) < 0) {
          pairs.add(second.after(first));
        }
      }
    }
    return sorted(pairs).stream().limit(MOST_PAIRS).toList();
  }

  private static Why why(DraftSearch.Found found) {
    if (!found.fitting().isEmpty()) {
      return Why.DOUGH;
    }
    return found.fed() == 0 ? Why.STARTER : Why.BENCH;
  }

  private static Optional<Change> firstPossible(List<Trial> trials, DraftSearch.Found found) {
    for (Trial trial : trials) {
      boolean bench =
          trial.kind() == Change.Kind.BENCH_EARLIER || trial.kind() == Change.Kind.BENCH_LONGER;
      List<BakePlan> plans =
          bench
              ? BakeDayPlanner.plansFrom(trial.day(), found)
              : BakeDayPlanner.plansOnly(trial.day());
      if (!plans.isEmpty()) {
        return Optional.of(trial.with(plans.get(0)));
      }
    }
    return Optional.empty();
  }

  /** Where one edge of the bench hours alone is in the way, that edge moved by half hours. */
  private static List<Trial> edges(BakeDay day, List<DraftSearch.Miss> near) {
    List<Trial> trials = new ArrayList<>();
    for (DraftSearch.Miss miss : near) {
      edge(day, miss.draft())
          .filter(trial -> trials.stream().noneMatch(other -> same(other, trial)))
          .ifPresent(trials::add);
      if (trials.size() >= MOST_EDGES) {
        break;
      }
    }
    return trials;
  }

  private static boolean same(Trial a, Trial b) {
    return a.kind() == b.kind() && a.hours() == b.hours() && a.at() == b.at();
  }

  private static Optional<Trial> edge(BakeDay day, Draft draft) {
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
    return Optional.of(early > 0 ? earlier(day, interval, by) : longer(day, interval, by));
  }

  private static Trial earlier(BakeDay day, int interval, double by) {
    BenchInterval at = day.bench().intervals().get(interval);
    BenchInterval wider = new BenchInterval(at.fromHour() - by, at.toHour());
    BakeDay changed = day.toBuilder().bench(day.bench().with(interval, wider)).build();
    return new Trial(changed, Change.Kind.BENCH_EARLIER, by, at.fromHour(), by);
  }

  private static Trial longer(BakeDay day, int interval, double by) {
    BenchInterval at = day.bench().intervals().get(interval);
    BenchInterval wider = new BenchInterval(at.fromHour(), at.toHour() + by);
    BakeDay changed = day.toBuilder().bench(day.bench().with(interval, wider)).build();
    return new Trial(changed, Change.Kind.BENCH_LONGER, by, at.toHour(), by);
  }

  private static void addRefrigerator(List<Trial> trials, BakeDay day) {
    if (day.fridge().isEmpty()) {
      BakeDay changed = day.toBuilder().fridge(Temperature.ofCelsius(4)).build();
      trials.add(new Trial(changed, Change.Kind.REFRIGERATOR, 0, 4, REFRIGERATOR_COST));
    }
  }

  private static void addEveryTime(List<Trial> trials, BakeDay day) {
    for (double by : EVERY_TIME_HOURS) {
      List<BenchInterval> longer =
          day.bench().intervals().stream()
              .map(at -> new BenchInterval(at.fromHour(), at.toHour() + by))
              .toList();
      BakeDay changed = day.toBuilder().bench(new BenchHours(longer)).build();
      double first = day.bench().intervals().get(0).toHour();
      trials.add(new Trial(changed, Change.Kind.EVERY_TIME_LONGER, by, first, by + 0.4));
    }
  }

  private static void addReady(List<Trial> trials, BakeDay day) {
    for (double by : READY_HOURS) {
      BakeDay changed = day.toBuilder().readyAt(day.readyHour() + by).build();
      trials.add(
          new Trial(changed, Change.Kind.READY, by, changed.readyHour(), Math.abs(by) + 0.3));
    }
  }

  /** Where share or temperature were narrowed, their neighbours. */
  private static void addDough(List<Trial> trials, BakeDay day) {
    if (day.doughCelsius().size() == 1) {
      double given = day.doughCelsius().get(0);
      for (double by : new double[] {-1, 1, -2, 2, -3, 3}) {
        double celsius = given + by;
        if (celsius >= 10 && celsius <= 32) {
          BakeDay changed = day.toBuilder().doughCelsius(List.of(celsius)).build();
          trials.add(
              new Trial(changed, Change.Kind.DOUGH_TEMPERATURE, by, celsius, Math.abs(by) * 0.2));
        }
      }
    }
    if (day.starterPercents().size() == 1) {
      double given = day.starterPercents().get(0);
      for (double times : new double[] {0.8, 1.25, 0.6, 1.6, 0.4, 2}) {
        double percent = Math.min(100, Math.max(0.5, Math.rint(given * times)));
        BakeDay changed = day.toBuilder().starterPercents(List.of(percent)).build();
        double cost = Math.abs(Math.log(times)) * 0.8;
        trials.add(new Trial(changed, Change.Kind.STARTER_SHARE, 0, percent, cost));
      }
    }
  }
}
