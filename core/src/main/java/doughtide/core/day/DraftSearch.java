package doughtide.core.day;

import doughtide.core.feeding.FeedChoice;
import doughtide.core.loaf.Proof;
import doughtide.core.loaf.StrengthPlan;
import doughtide.core.rise.RiseCurve;
import doughtide.core.rise.Unknowns;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.TreeMap;
import java.util.concurrent.atomic.AtomicInteger;
import java.util.stream.Collectors;

/**
 * Goes through feed, share, dough temperature, mixing hour, cold and proof on the likely path, and
 * keeps what fits the hours at the bench, or nearly fits.
 */
final class DraftSearch {
  /** A plan that misses the bench hours by no more than this may be one small change away. */
  static final double NEAR_MISS_HOURS = 3;

  /** Bread older than this when it is wanted is not planned (starting value). */
  static final double OLDEST_BREAD_HOURS = 12;

  private static final double LOOK_BACK_HOURS = 56;
  private static final double LONGEST_RUN_HOURS = 30;
  private static final double FIVE_MINUTES = 1.0 / 12;
  private static final double SHORTEST_COLD_HOURS = 5;
  private static final double LONGEST_COLD_HOURS = 20;
  private static final double[] ROOM_PROOF_HOURS = {1, 1.5, 2, 3, 4};
  private static final double[] COLD_BULK_AFTER_HOURS = {1.5, 3};
  private static final double LEAST_RISE_PART = 0.2; // of the target, when shaped

  private final BakeDay day;
  private final DayModel model;
  private final FeedSearch feeds;
  private final double[] ovenHours;

  DraftSearch(DayModel model) {
    this.model = model;
    this.day = model.day();
    this.feeds = new FeedSearch(model);
    this.ovenHours = OvenHours.of(day);
  }

  /**
   * What the search found.
   *
   * @param fitting drafts inside the bench hours
   * @param near drafts that miss them by little
   * @param fed mixing hours at which a starter can be ripe
   */
  record Found(List<Scored> fitting, List<Miss> near, long fed) {
    /** The drafts that just miss and would fit another day, in their order. */
    List<Scored> nearFor(DraftSearch other) {
      return near.stream()
          .filter(each -> other.miss(each.draft()) == 0)
          .map(each -> new Scored(each.draft(), other.score(each.draft())))
          .sorted(Comparator.comparingDouble((Scored each) -> -each.score()))
          .toList();
    }
  }

  /** A draft with its rough worth: more is better. */
  record Scored(Draft draft, double score) {}

  /** A draft that does not fit, and by how much. */
  record Miss(Draft draft, double hours) {}

  FeedSearch feeds() {
    return feeds;
  }

  Found search(List<BakeRoute> routes, SearchProgress progress) {
    Map<Double, Optional<FeedChoice>> byMix = feedings(routes);
    AtomicInteger done = new AtomicInteger();
    List<List<Draft>> drafts =
        routes.parallelStream()
            .map(
                route -> {
                  List<Draft> some =
                      drafts(route, byMix.getOrDefault(route.mixHour(), Optional.empty()));
                  progress.at((double) done.incrementAndGet() / routes.size());
                  return some;
                })
            .toList();
    return sorted(drafts, byMix.values().stream().filter(Optional::isPresent).count());
  }

  private Found sorted(List<List<Draft>> drafts, long fed) {
    List<Scored> fitting = new ArrayList<>();
    List<Miss> near = new ArrayList<>();
    for (List<Draft> some : drafts) {
      for (Draft draft : some) {
        double miss = miss(draft);
        if (miss == 0) {
          fitting.add(new Scored(draft, score(draft)));
        } else if (miss <= NEAR_MISS_HOURS) {
          near.add(new Miss(draft, miss));
        }
      }
    }
    // Stable: equals keep the order in which they were found.
    fitting.sort(Comparator.comparingDouble((Scored each) -> -each.score()));
    near.sort(Comparator.comparingDouble(Miss::hours));
    return new Found(fitting, near, fed);
  }

  private Map<Double, Optional<FeedChoice>> feedings(List<BakeRoute> routes) {
    List<Double> hours = routes.stream().map(BakeRoute::mixHour).distinct().toList();
    List<Optional<FeedChoice>> found = hours.parallelStream().map(feeds::best).toList();
    Map<Double, Optional<FeedChoice>> byMix = new TreeMap<>();
    for (int i = 0; i < hours.size(); i++) {
      byMix.put(hours.get(i), found.get(i));
    }
    return byMix;
  }

  /** Every combination that is tried. */
  List<BakeRoute> routes(double gridHours) {
    List<BakeRoute> routes = new ArrayList<>();
    for (double mix : mixHours(gridHours)) {
      for (double celsius : day.doughCelsius()) {
        for (double percent : day.starterPercents()) {
          BakeRoute route = BakeRoute.inRoom(percent, celsius, mix);
          routes.add(route);
          addPartlyCold(routes, route);
        }
      }
    }
    return routes;
  }

  private List<Double> mixHours(double gridHours) {
    double last = day.readyHour() - day.oven().coolHours() - Draft.ovenBusyHours(day) - 2.5;
    double first = day.readyHour() - LOOK_BACK_HOURS;
    List<Double> hours = new ArrayList<>();
    for (BenchInterval at : day.bench().intervals()) {
      double end = Math.min(at.toHour() - Work.MIX_HOURS, last);
      double from = at.fromHour();
      for (int i = 0; from + i * gridHours <= end + 1e-9; i++) {
        if (from + i * gridHours >= first) {
          hours.add(from + i * gridHours);
        }
      }
    }
    return hours.stream().distinct().collect(Collectors.toList());
  }

  /** The tub into the cold after some hours, out when the baker is next at the bench. */
  private void addPartlyCold(List<BakeRoute> routes, BakeRoute route) {
    if (day.fridge().isEmpty() || route.doughCelsius() < 23 || route.starterPercent() < 7) {
      return;
    }
    for (double after : COLD_BULK_AFTER_HOURS) {
      double from = route.mixHour() + after;
      if (!day.bench().contains(from, from + Work.CARRY_HOURS)) {
        continue;
      }
      day.bench().intervals().stream()
          .filter(at -> at.fromHour() - from > 5 && at.fromHour() - from < 20)
          .findFirst()
          .ifPresent(at -> routes.add(route.partlyCold(from, at.fromHour())));
    }
  }

  List<Draft> drafts(BakeRoute route, Optional<FeedChoice> feed) {
    if (feed.isEmpty()) {
      return List.of();
    }
    double hours = Math.min(day.readyHour() - route.mixHour(), LONGEST_RUN_HOURS);
    Unknowns middle = day.forecaster().middle();
    RiseCurve curve = model.run(route, middle, hours);
    double rest = day.restHours();
    // Where many loaves are shaped the dough goes on rising meanwhile.
    double leastPart = LEAST_RISE_PART * Math.min(1, Proof.USUAL_REST_HOURS / rest);
    OptionalDouble early = curve.hoursToRise(model.partOfTarget(leastPart));
    if (early.isEmpty()) {
      return List.of();
    }
    double from = Math.max(early.getAsDouble(), route.earliestShapeHours());
    double full = curve.hoursToRise(day.target()).orElse(hours);
    double to = Math.min(full, hours - 0.5) + rest;
    if (!mayBeAtBench(route, from, to) || to <= from) {
      return List.of();
    }
    Optional<StrengthPlan> strength = strength(route, curve);
    if (strength.isEmpty()) {
      return List.of();
    }
    Given given =
        new Given(route, feed.get(), strength.get(), curve, from + rest, Math.max(to, from + rest));
    List<Draft> drafts = new ArrayList<>();
    addCold(drafts, given);
    addRoom(drafts, given);
    return drafts;
  }

  /** What is known of a route before its proof. */
  private record Given(
      BakeRoute route,
      FeedChoice feed,
      StrengthPlan strength,
      RiseCurve curve,
      double low,
      double high) {
    DayModel.Grown grown() {
      return new DayModel.Grown(curve, 0);
    }
  }

  private boolean mayBeAtBench(BakeRoute route, double from, double to) {
    double first = route.mixHour() + from - NEAR_MISS_HOURS / 2;
    double last = route.mixHour() + to + NEAR_MISS_HOURS / 2;
    return day.bench().intervals().stream()
        .anyMatch(at -> at.toHour() >= first && at.fromHour() <= last);
  }

  private Optional<StrengthPlan> strength(BakeRoute route, RiseCurve curve) {
    return FittingFolds.of(
        day.strength(), day.bench(), route, curve.hoursToRise(FittingFolds.LAST_RISE));
  }

  private void addCold(List<Draft> drafts, Given given) {
    if (day.fridge().isEmpty()) {
      return;
    }
    for (double oven : ovenHours) {
      double ovenAfter = oven - given.route().mixHour();
      double high = Math.min(given.high(), ovenAfter - SHORTEST_COLD_HOURS);
      double low = Math.max(given.low(), ovenAfter - LONGEST_COLD_HOURS);
      if (high <= low) {
        continue;
      }
      OptionalDouble found =
          ShapeHour.find(
              x -> model.riseAtOven(given.grown(), given.route(), x, ProofKind.COLD, ovenAfter),
              given.curve(),
              day.target().fraction(),
              low,
              high,
              low + 0.6 * (high - low));
      if (found.isPresent() && found.getAsDouble() > low) {
        drafts.add(draft(given, ProofKind.COLD, found.getAsDouble(), oven));
      }
    }
  }

  private void addRoom(List<Draft> drafts, Given given) {
    for (double proof : ROOM_PROOF_HOURS) {
      double last = day.readyHour() - day.oven().coolHours() - Draft.ovenBusyHours(day);
      double high = Math.min(given.high(), last - given.route().mixHour() - proof);
      if (high <= given.low()) {
        continue;
      }
      OptionalDouble found =
          ShapeHour.find(
              x -> model.riseAtOven(given.grown(), given.route(), x, ProofKind.ROOM, x + proof),
              given.curve(),
              day.target().fraction(),
              given.low(),
              high,
              given.low() + 0.5 * (high - given.low()));
      if (found.isPresent() && found.getAsDouble() > given.low()) {
        double basket = rounded(given.route().mixHour() + found.getAsDouble());
        double oven = rounded(basket + proof);
        drafts.add(draft(given, ProofKind.ROOM, basket - given.route().mixHour(), oven));
      }
    }
  }

  private Draft draft(Given given, ProofKind proof, double shaped, double oven) {
    double mix = given.route().mixHour();
    double basket = rounded(mix + shaped);
    double bulkEnd = basket - mix - day.restHours();
    RiseCurve curve = given.curve();
    double before = Math.max(bulkEnd - 0.25, 0);
    double after = Math.min(bulkEnd + 0.25, curve.endHours());
    double slope =
        (curve.riseAt(after).fraction() - curve.riseAt(before).fraction()) / (after - before);
    return new Draft(
            given.route(),
            given.feed(),
            given.strength(),
            proof,
            basket - mix,
            oven,
            curve.riseAt(bulkEnd).fraction(),
            Math.max(slope, 0.01))
        .withFoldsBeforeShaping(day.restHours());
  }

  private static double rounded(double hour) {
    return Math.rint(hour / FIVE_MINUTES) * FIVE_MINUTES;
  }

  /** By how many hours in all the steps miss the bench and the bread its hour. */
  double miss(Draft draft) {
    double miss = 0;
    List<BakeStep> steps = draft.steps(day);
    for (BakeStep step : steps) {
      if (step.kind().handsOn() && !isDoneAnyway(step)) {
        int at = day.bench().nearest(step.fromHour(), step.toHour());
        miss += day.bench().miss(at, step.fromHour(), step.toHour());
      }
    }
    double ready = steps.get(steps.size() - 1).toHour();
    miss += Math.max(0, ready - day.readyHour());
    miss += Math.max(0, day.readyHour() - OLDEST_BREAD_HOURS - ready);
    boolean possible =
        OvenHours.isFree(day, draft.ovenTime(day))
            && !draft.foldsTooLate(day.restHours())
            && !draft.overlaps(day);
    return possible ? miss : miss + 2 * NEAR_MISS_HOURS;
  }

  /** Feeding for another dough of the day. */
  private boolean isDoneAnyway(BakeStep step) {
    return step.kind() == BakeStep.Kind.FEED
        && day.otherFeedings().stream().anyMatch(feed -> feed.feedHour() == step.fromHour());
  }

  /**
   * Rough margin in hours: room at the bench around the likely moment of shaping less the spread to
   * be expected, the pace of the dough then, and the room for mixing, feeding and baking.
   */
  double score(Draft draft) {
    double rest = day.restHours();
    double bulkEnd = draft.basketHour() - rest;
    double spread = 0.16 * draft.shapedHours();
    BenchInterval at = day.bench().around(bulkEnd, draft.basketHour()).orElseThrow();
    double late = at.toHour() - draft.basketHour() - spread;
    double early = bulkEnd - at.fromHour() - spread;
    double pace = 0.25 * day.target().fraction() / draft.risePerHour();
    double mix = day.bench().slackHours(draft.mixHour(), draft.mixHour() + Work.MIX_HOURS);
    double bake =
        day.bench()
            .slackHours(
                draft.ovenHour(), draft.ovenHour() + Draft.ovenBusyHours(day) + Work.UNLOAD_HOURS);
    double feed = draft.feed().slackHours() * 0.5;
    double least = Math.min(Math.min(late, early + 0.5 * spread + 1), Math.min(pace, mix));
    return Math.min(least, Math.min(bake + 0.5, feed)) + 0.02 * pace;
  }
}
