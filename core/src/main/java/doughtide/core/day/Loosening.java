package doughtide.core.day;

import doughtide.core.feeding.FeedChoice;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Optional;

/** Tries one change at a time and says which gives the tightest step of a plan more room. */
final class Loosening {
  private static final double WORTH_HOURS = 0.1;
  private static final double SAME_OVEN_HOURS = 1.01;

  private final DraftSearch search;
  private final PlanWeigher weigher;
  private final int dough;

  Loosening(DraftSearch search, PlanWeigher weigher, int dough) {
    this.search = search;
    this.weigher = weigher;
    this.dough = dough;
  }

  Optional<Adjustment> of(Draft draft, StepMargin tightest) {
    BakeStep.Kind tight = tightest.kind();
    if (tightest.limit() == StepMargin.Limit.BENCH) {
      return Optional.of(adjustment(Adjustment.Kind.BENCH_LONGER, 0));
    }
    if (tight == BakeStep.Kind.FEED) {
      return Optional.of(adjustment(Adjustment.Kind.FEED, 0));
    }
    double best = weigher.weigh(draft).margin(tight) + WORTH_HOURS;
    Optional<Adjustment> loosest = Optional.empty();
    for (Map.Entry<Adjustment, BakeRoute> change : changes(draft.route()).entrySet()) {
      double margin =
          like(draft, change.getValue())
              .map(other -> weigher.weigh(other).margin(tight))
              .orElse(-1.0);
      if (margin > best) {
        best = margin;
        loosest = Optional.of(change.getKey());
      }
    }
    return loosest;
  }

  private Adjustment adjustment(Adjustment.Kind kind, double value) {
    return new Adjustment(kind, value, 0, dough);
  }

  private Map<Adjustment, BakeRoute> changes(BakeRoute route) {
    Map<Adjustment, BakeRoute> changes = new LinkedHashMap<>();
    for (double times : new double[] {0.8, 1.25}) {
      double percent = weighable(route.starterPercent() * times);
      changes.put(adjustment(Adjustment.Kind.STARTER_SHARE, percent), route.withStarter(percent));
    }
    for (double by : new double[] {-1, 1}) {
      double celsius = route.doughCelsius() + by;
      changes.put(adjustment(Adjustment.Kind.DOUGH_TEMPERATURE, celsius), route.withDough(celsius));
    }
    for (double by : new double[] {-0.5, 0.5}) {
      changes.put(adjustment(Adjustment.Kind.MIX, by), route.withMixHour(route.mixHour() + by));
    }
    return changes;
  }

  /** Whole per cent, and halves below five. */
  private static double weighable(double percent) {
    return percent < 5 ? Math.max(0.5, Math.rint(percent * 2) / 2) : Math.rint(percent);
  }

  /** The same plan on another route, if it fits. */
  private Optional<Draft> like(Draft draft, BakeRoute route) {
    Optional<FeedChoice> feed =
        route.mixHour() == draft.mixHour()
            ? Optional.of(draft.feed())
            : search.feeds().best(route.mixHour());
    return feed.flatMap(
        fed ->
            search.drafts(route, fed).stream()
                .filter(other -> isLike(other, draft) && search.miss(other) == 0)
                .min(Comparator.comparingDouble(o -> Math.abs(o.ovenHour() - draft.ovenHour()))));
  }

  private static boolean isLike(Draft other, Draft draft) {
    return other.proof() == draft.proof()
        && Math.abs(other.ovenHour() - draft.ovenHour()) <= SAME_OVEN_HOURS;
  }
}
