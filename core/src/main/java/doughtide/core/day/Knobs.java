package doughtide.core.day;

import doughtide.core.feeding.FeedChoice;
import doughtide.core.quantity.Checks;
import doughtide.core.rise.Unknowns;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/** Tries one change at a time and says which gives the tightest step of a plan more room. */
final class Knobs {
  private static final double WORTH_HOURS = 0.1;
  private static final double SAME_OVEN_HOURS = 1.01;

  private final DraftSearch search;
  private final PlanScales scales;

  Knobs(DayModel model, DraftSearch search, List<Unknowns> members) {
    this.search = search;
    this.scales = new PlanScales(model, search.feeds(), members);
  }

  Optional<String> loosen(Draft draft, StepMargin tightest) {
    BakeStep.Kind tight = tightest.kind();
    if (tightest.limit() == StepMargin.Limit.BENCH) {
      return Optional.of("more time at the bench after it");
    }
    if (tight == BakeStep.Kind.FEED) {
      return Optional.of("feed earlier, or keep the starter warmer");
    }
    BakePlan.Weighed now = scales.weigh(draft);
    double best = now.margin(tight) + WORTH_HOURS;
    Optional<String> words = Optional.empty();
    for (Map.Entry<String, BakeRoute> change : changes(draft.route()).entrySet()) {
      Optional<Draft> other = like(draft, change.getValue());
      double margin = other.map(scales::weigh).map(w -> w.margin(tight)).orElse(-1.0);
      if (margin > best) {
        best = margin;
        words = Optional.of(change.getKey());
      }
    }
    return words;
  }

  private Map<String, BakeRoute> changes(BakeRoute route) {
    Map<String, BakeRoute> changes = new LinkedHashMap<>();
    double percent = route.starterPercent();
    double less = weighable(percent * 0.8);
    double more = weighable(percent * 1.25);
    double cooler = route.doughCelsius() - 1;
    double warmer = route.doughCelsius() + 1;
    changes.put(Checks.plain(less) + " % starter", route.withStarter(less));
    changes.put(Checks.plain(more) + " % starter", route.withStarter(more));
    changes.put("a dough of " + Checks.plain(cooler) + " °C", route.withDough(cooler));
    changes.put("a dough of " + Checks.plain(warmer) + " °C", route.withDough(warmer));
    changes.put("mixing half an hour earlier", route.withMixHour(route.mixHour() - 0.5));
    changes.put("mixing half an hour later", route.withMixHour(route.mixHour() + 0.5));
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
    return search.drafts(route, feed).stream()
        .filter(
            other ->
                other.proof() == draft.proof()
                    && Math.abs(other.ovenHour() - draft.ovenHour()) <= SAME_OVEN_HOURS
                    && search.miss(other) == 0)
        .min(Comparator.comparingDouble(o -> Math.abs(o.ovenHour() - draft.ovenHour())));
  }
}
