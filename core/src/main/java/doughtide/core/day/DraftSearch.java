package doughtide.core.day;

import doughtide.core.feeding.FeedChoice;
import doughtide.core.loaf.StrengthPlan;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.concurrent.atomic.AtomicInteger;
import java.util.stream.DoubleStream;

/**
 * Goes through feed, share, dough temperature, mixing hour, cold and proof on the likely path, and
 * keeps what fits the hours at the bench, or nearly fits.
 */
final class DraftSearch {
  /** A plan that misses the bench hours by no more than this may be one small change away. */
  static final double NEAR_MISS_HOURS = 3;

  /** Bread older than this when it is wanted is not planned (starting value). */
  static final double OLDEST_BREAD_HOURS = 12;

  /** Loaves wait in the cold for so long at least, and at most from one evening to the next. */
  static final double SHORTEST_COLD_HOURS = 5;

  static final double LONGEST_COLD_HOURS = 24; // common practice, no source

  private static final double ENOUGH_MARGIN_HOURS = 1.5;
  private static final double MORE_MARGIN_WEIGHT = 0.2;
  private static final double TROUBLE_WEIGHT = 0.06; // rough margin given up for an hour of trouble
  private static final double LOOK_BACK_HOURS = 56;
  private static final double FIVE_MINUTES = 1.0 / 12;
  private static final double[] ROOM_PROOF_HOURS = {1, 1.5, 2, 3, 4};
  private static final double[] COLD_BULK_AFTER_HOURS = {1.5, 3, 4.5};

  /** From evening to evening; a night or a day of work is shorter. */
  private static final double LONG_ABSENCE_HOURS = 12;

  private final BakeDay day;
  private final DayModel model;
  private final FeedSearch feeds;
  private final double[] ovenHours;

  DraftSearch(DayModel model, BakeDay day) {
    this.model = model;
    this.day = day;
    this.feeds = new FeedSearch(model, day);
    this.ovenHours = OvenHours.of(day);
  }

  /**
   * What the search found.
   *
   * @param fitting drafts inside the bench hours, the best first
   * @param near drafts that miss them, the least first
   * @param fed mixing hours at which a starter can be ripe
   */
  record Found(List<Scored> fitting, List<Miss> near, long fed) {}

  /**
   * A draft with its rough worth: more is better.
   *
   * @param margin rough margin, hours
   * @param score that margin and what a baker keeps
   */
  record Scored(Draft draft, double margin, double score) {}

  /** A draft that does not fit, and by how much. */
  record Miss(Draft draft, double hours) {}

  FeedSearch feeds() {
    return feeds;
  }

  /**
   * Searches.
   *
   * @param gridHours between the hours of mixing that are tried
   */
  Found search(double gridHours, SearchControl control) {
    List<Double> mixHours = mixHours(gridHours);
    AtomicInteger done = new AtomicInteger();
    List<List<Draft>> drafts =
        control.map(
            mixHours,
            mix -> {
              List<Draft> some = control.stopped() ? List.of() : mixedAt(mix);
              control.at((double) done.incrementAndGet() / mixHours.size());
              return some;
            });
    long fed = mixHours.stream().filter(mix -> feeds.best(mix).isPresent()).count();
    return sorted(drafts.stream().flatMap(List::stream).toList(), fed);
  }

  private Found sorted(List<Draft> drafts, long fed) {
    List<Scored> fitting = new ArrayList<>();
    List<Miss> near = new ArrayList<>();
    for (Draft draft : drafts) {
      double miss = miss(draft);
      if (miss == 0) {
        fitting.add(scored(draft));
      } else if (miss <= NEAR_MISS_HOURS) {
        near.add(new Miss(draft, miss));
      }
    }
    // Stable: equals keep the order in which they were found.
    fitting.sort(Comparator.comparingDouble((Scored each) -> -each.score()));
    near.sort(Comparator.comparingDouble(Miss::hours));
    return new Found(fitting, near, fed);
  }

  /** What was found for another day and fits this one, the best first. */
  List<Scored> fitting(List<Draft> others) {
    return sorted(others, 1).fitting();
  }

  private List<Double> mixHours(double gridHours) {
    double last = day.readyHour() - day.oven().coolHours() - Draft.ovenBusyHours(day) - 2.5;
    double first = day.readyHour() - LOOK_BACK_HOURS;
    List<Double> hours = new ArrayList<>();
    for (BenchInterval at : day.bench().intervals()) {
      double end = Math.min(at.toHour() - day.mixHours(), last);
      double from = at.fromHour();
      for (int i = 0; from + i * gridHours <= end + 1e-9; i++) {
        if (from + i * gridHours >= first) {
          hours.add(from + i * gridHours);
        }
      }
    }
    return hours.stream().distinct().toList();
  }

  /** The tub into the cold after some hours, out when the baker is next at the bench. */
  private void addPartlyCold(List<BakeRoute> routes, BakeRoute route) {
    if (day.cold().isEmpty() || route.doughCelsius() < 23 || route.starterPercent() < 7) {
      return;
    }
    intoCold(route.mixHour()).forEach(from -> addPartlyCold(routes, route, from));
  }

  private void addPartlyCold(List<BakeRoute> routes, BakeRoute route, double from) {
    day.bench().intervals().stream()
        .filter(at -> BakeRoute.mayStayInCold(from, at.fromHour()))
        .findFirst()
        .ifPresent(at -> routes.add(route.partlyCold(from, at.fromHour())));
  }

  /** After some hours at the bench; before a long absence also as late as the baker is there. */
  private DoubleStream intoCold(double mixHour) {
    DoubleStream after =
        DoubleStream.of(COLD_BULK_AFTER_HOURS)
            .map(hours -> mixHour + hours)
            .filter(from -> day.bench().contains(from, from + HandsOnTime.CARRY_HOURS));
    DoubleStream atLast =
        day.bench().intervals().stream()
            .filter(at -> at.fromHour() <= mixHour && mixHour < at.toHour())
            .mapToDouble(at -> at.toHour() - HandsOnTime.CARRY_HOURS)
            .filter(from -> from - mixHour > COLD_BULK_AFTER_HOURS[0] && isBeforeLongAbsence(from));
    return DoubleStream.concat(after, atLast).distinct();
  }

  private boolean isBeforeLongAbsence(double hour) {
    return day.bench().intervals().stream()
        .noneMatch(at -> at.fromHour() > hour && at.fromHour() < hour + LONG_ABSENCE_HOURS);
  }

  private List<Draft> mixedAt(double mixHour) {
    Optional<FeedChoice> feed = feeds.best(mixHour);
    if (feed.isEmpty()) {
      return List.of();
    }
    List<BakeRoute> routes = new ArrayList<>();
    for (double celsius : day.doughCelsius()) {
      for (double percent : day.starterPercents()) {
        BakeRoute route = BakeRoute.inRoom(percent, celsius, mixHour);
        routes.add(route);
        addPartlyCold(routes, route);
      }
    }
    return routes.stream().flatMap(route -> drafts(route, feed.get()).stream()).toList();
  }

  /** All ways on from a route: the loaves in the cold or in the room. */
  List<Draft> drafts(BakeRoute route, FeedChoice feed) {
    LikelyDough dough = model.likely(route);
    if (!(dough.high() > dough.low()) || !mayBeAtBench(route, dough)) {
      return List.of();
    }
    Optional<StrengthPlan> strength =
        FittingFolds.of(day.strength(route), day.bench(), route, dough.lastFold(), day.mixHours());
    return strength.map(folds -> drafts(new Start(route, feed, folds, dough))).orElse(List.of());
  }

  /** What is decided before the proof. */
  private record Start(BakeRoute route, FeedChoice feed, StrengthPlan strength, LikelyDough dough) {
    double mixHour() {
      return route.mixHour();
    }
  }

  private boolean mayBeAtBench(BakeRoute route, LikelyDough dough) {
    double rest = day.restHours();
    double first = route.mixHour() + dough.low() - rest - NEAR_MISS_HOURS / 2;
    double last = route.mixHour() + dough.high() + NEAR_MISS_HOURS / 2;
    return day.bench().intervals().stream()
        .anyMatch(at -> at.toHour() >= first && at.fromHour() <= last);
  }

  private List<Draft> drafts(Start start) {
    List<Draft> drafts = new ArrayList<>();
    if (day.cold().isPresent()) {
      for (double oven : ovenHours) {
        start
            .dough()
            .shapedForCold(oven - start.mixHour())
            .ifPresent(shaped -> drafts.add(draft(start, ProofKind.COLD, shaped, oven)));
      }
    }
    double last = day.readyHour() - day.oven().coolHours() - Draft.ovenBusyHours(day);
    for (double proof : ROOM_PROOF_HOURS) {
      OptionalDouble shaped = start.dough().shapedForRoom(proof);
      if (shaped.isPresent() && start.mixHour() + shaped.getAsDouble() + proof < last) {
        double basket = rounded(start.mixHour() + shaped.getAsDouble());
        drafts.add(draft(start, ProofKind.ROOM, shaped.getAsDouble(), rounded(basket + proof)));
      }
    }
    return drafts;
  }

  private Draft draft(Start start, ProofKind proof, double shaped, double oven) {
    double inBasket = rounded(start.mixHour() + shaped) - start.mixHour();
    double bulkEnd = inBasket - day.restHours();
    return new Draft(
            start.route(),
            start.feed(),
            start.strength(),
            proof,
            inBasket,
            oven,
            start.dough().riseAt(bulkEnd),
            start.dough().risePerHour(bulkEnd))
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
      if (step.kind().handsOn()) {
        int at = day.bench().nearest(step.fromHour(), step.toHour());
        miss += day.bench().miss(at, step.fromHour(), step.toHour());
      }
    }
    double ready = steps.get(steps.size() - 1).toHour();
    miss += Math.max(0, ready - day.readyHour());
    miss += Math.max(0, day.readyHour() - OLDEST_BREAD_HOURS - ready);
    boolean possible =
        !draft.isShapedTooSoon(day.restHours())
            && !draft.foldsTooLate(day.restHours())
            && !Draft.overlap(steps);
    return possible ? miss : miss + 2 * NEAR_MISS_HOURS;
  }

  /** Rough worth: a margin counts less once it is long enough, then what a baker keeps counts. */
  private Scored scored(Draft draft) {
    double margin = roughMargin(draft);
    double enough = Math.min(margin, ENOUGH_MARGIN_HOURS);
    double score =
        enough
            + MORE_MARGIN_WEIGHT * (margin - enough)
            - TROUBLE_WEIGHT * PlanWorth.troubleHours(day, draft);
    return new Scored(draft, margin, score);
  }

  /**
   * Rough margin in hours: room at the bench around the likely moment of shaping less the spread to
   * be expected, the pace of the dough then, and the room for mixing, feeding and baking.
   */
  private double roughMargin(Draft draft) {
    double rest = day.restHours();
    double bulkEnd = draft.basketHour() - rest;
    double spread = 0.16 * draft.shapedHours();
    BenchInterval at = day.bench().around(bulkEnd, draft.basketHour()).orElseThrow();
    double late = at.toHour() - draft.basketHour() - spread;
    double early = bulkEnd - at.fromHour() - spread;
    double pace = 0.25 * day.target().fraction() / draft.risePerHour();
    double mix = day.bench().slackHours(draft.mixHour(), draft.mixHour() + day.mixHours());
    double unloaded = draft.ovenHour() + Draft.ovenBusyHours(day) + HandsOnTime.UNLOAD_HOURS;
    double bake =
        Math.min(
            day.bench().slackHours(draft.ovenHour(), unloaded), PlanWorth.ageHours(day, draft));
    double feed = draft.feed().slackHours() * 0.5;
    double least = Math.min(Math.min(late, early + 0.5 * spread + 1), Math.min(pace, mix));
    return Math.min(least, Math.min(bake + 0.5, feed)) + 0.02 * pace;
  }
}
