package doughtide.core.day;

import doughtide.core.feeding.FeedChoice;
import doughtide.core.forecast.Ensemble;
import doughtide.core.rise.Unknowns;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.HashSet;
import java.util.IdentityHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.Set;
import java.util.concurrent.ConcurrentHashMap;
import java.util.stream.DoubleStream;
import java.util.stream.IntStream;
import java.util.stream.Stream;

/**
 * What can be done with one dough of a day: its plans on the likely path, each of which can be
 * moved by minutes, baked with the loaves of another dough and fed with its starter, and the best
 * of them weighed with members of the belief.
 */
final class DoughCandidates {
  /** Members that weigh the last plans, where the forecaster of the day has as many. */
  static final int MEMBERS = 64;

  /** Members that find the shape point of the last plans, which is printed. */
  static final int POINT_MEMBERS = Ensemble.USUAL_SIZE;

  private static final int FEW_MEMBERS = 16;
  private static final int FEWEST_MEMBERS = 8;
  private static final int MOST_OF_AN_HOUR = 6;
  private static final int MOST_DRAFTS = 400;
  private static final int MOST_OF_A_KIND = 4;
  private static final int MOST_CHOSEN = 24;
  private static final int MOST_CHOSEN_OF_MANY = 12;
  private static final int MOST_WHEN_STOPPED = 3;
  private static final int MOST_QUICK = 6;

  /** Of everything that was found so many are weighed before a day has no plan. */
  private static final int MOST_WEIGHED = 80;

  /** A dough alone is not shaped further from its point than this (starting value). */
  private static final double MOST_OFF_POINT_HOURS = 0.5;

  private static final double AT_POINT_HOURS = 5.0 / 60;
  private static final int MOST_MOVED = 150;
  private static final int SPARE_PLANS = 4;

  /** By so much the loaves may be baked earlier, so that the oven may be late (starting values). */
  static final double[] EARLIER_OVEN_HOURS = {0.25, 0.5, 1};

  private final BakeDay day;
  private final DayModel model;
  private final DraftSearch search;
  private final ShapePoint point;
  private final SearchControl control;
  private final boolean alone;
  private final DraftSearch.Found found;
  private final List<Draft> drafts; // by rough worth
  private final List<Draft> roomiest; // by rough margin: they part doughs of a full day better
  private final List<Unknowns> members;
  private final Map<Draft, PlanWeigher.Weighing> weighedByFew = new ConcurrentHashMap<>();
  private final Map<Draft, PlanWeigher.Weighing> weighedByMany = new ConcurrentHashMap<>();
  private final Map<Draft, Optional<Draft>> goodQuickly = new ConcurrentHashMap<>();
  private final Map<Draft, Draft> atPointOfFew = new ConcurrentHashMap<>();

  private DoughCandidates(
      DayModel model,
      BakeDay day,
      DraftSearch search,
      DraftSearch.Found found,
      boolean alone,
      SearchControl control) {
    this.alone = alone;
    this.model = model;
    this.day = day;
    this.search = search;
    this.point = model.shapePoint();
    this.control = control;
    this.found = found;
    this.drafts = diverse(found.fitting());
    this.roomiest =
        diverse(
            found.fitting().stream()
                .sorted(Comparator.comparingDouble(each -> -each.margin()))
                .toList());
    this.members = model.members(MEMBERS);
  }

  /**
   * By a search over hours of mixing that are so far apart.
   *
   * @param alone whether it is the only dough of its day
   */
  static DoughCandidates of(
      DayModel model, BakeDay day, double gridHours, boolean alone, SearchControl control) {
    model.likeliest(control);
    DraftSearch search = new DraftSearch(model, day);
    DraftSearch.Found found = search.search(gridHours, control);
    return new DoughCandidates(model, day, search, found, alone, control);
  }

  /** The same dough by a search over fewer hours of mixing; its runs are kept. */
  DoughCandidates coarser(SearchControl own) {
    return of(model, day, SmallestChange.GRID_HOURS, alone, own);
  }

  /** For another day with this dough: what only just missed this one. */
  DoughCandidates nearMissesOn(BakeDay other, SearchControl own) {
    DraftSearch theirs = new DraftSearch(model, other);
    List<Draft> near = found.near().stream().map(DraftSearch.Miss::draft).toList();
    DraftSearch.Found fitting = new DraftSearch.Found(theirs.fitting(near), List.of(), found.fed());
    return new DoughCandidates(model, other, theirs, fitting, alone, own);
  }

  private static List<Draft> diverse(List<DraftSearch.Scored> fitting) {
    Map<String, Integer> counts = new HashMap<>();
    List<Draft> some = new ArrayList<>();
    for (DraftSearch.Scored each : fitting) {
      Draft draft = each.draft();
      String kind = draft.proof() + " " + draft.route().coldFrom() + " " + draft.mixHour();
      if (some.size() < MOST_DRAFTS && counts.merge(kind, 1, Integer::sum) <= MOST_OF_AN_HOUR) {
        some.add(draft);
      }
    }
    return some;
  }

  BakeDay day() {
    return day;
  }

  DayModel model() {
    return model;
  }

  DraftSearch.Found found() {
    return found;
  }

  /** How many plans there are before the other doughs are looked at. */
  int size() {
    return drafts.size();
  }

  /** The builds of its starter from which its roomiest plans take it, the roomiest first. */
  List<FeedChoice> builds() {
    Set<Double> hours = new HashSet<>();
    return roomiest.stream().map(Draft::feed).filter(each -> hours.add(each.feedHour())).toList();
  }

  /** How many plans have more room than the first that can take its starter from a build. */
  OptionalInt roomierThanOf(FeedChoice build) {
    return IntStream.range(0, roomiest.size())
        .filter(i -> search.feeds().ofBuild(build, roomiest.get(i).mixHour()).isPresent())
        .findFirst();
  }

  /** A plan that goes with the other doughs, found quickly. */
  Optional<Draft> first(OtherDoughs others) {
    Set<Draft> tried = new LinkedHashSet<>();
    List<Draft> possible =
        roomiest.stream()
            .filter(draft -> others.mayShareBuild(draft, search.feeds()))
            .limit(MOST_MOVED)
            .toList();
    for (Draft draft : possible) {
      Optional<Draft> moved = others.moved(draft, search);
      if (moved.isPresent() && tried.add(moved.get())) {
        Optional<Draft> good = goodQuickly(moved.get()).filter(others::fit);
        if (good.isPresent()) {
          return good;
        }
      }
      if (tried.size() >= (others.isEmpty() ? MOST_CHOSEN : MOST_QUICK)
          || control.stopped() && !tried.isEmpty()) {
        break;
      }
    }
    return Optional.empty();
  }

  /** The draft as it is or at its shape point, if enough doughs come out right. */
  private Optional<Draft> goodQuickly(Draft draft) {
    return goodQuickly.computeIfAbsent(
        draft,
        each -> {
          PlanWeigher weigher = weigher(MEMBERS);
          if (weigher.isGood(each, DayPlanner.LEAST_GOOD_SHARE)) {
            return Optional.of(each);
          }
          Draft moved = point.quickly(each, first(FEW_MEMBERS));
          boolean good =
              search.miss(moved) == 0 && weigher.isGood(moved, DayPlanner.LEAST_GOOD_SHARE);
          return good ? Optional.of(moved) : Optional.empty();
        });
  }

  /**
   * The best plans that go with the other doughs, best first; fewer where a search is stopped.
   *
   * @param number how many
   */
  List<Draft> best(OtherDoughs others, int number) {
    List<Draft> few = good(atShapePoint(chosen(others), FEW_MEMBERS, others), FEW_MEMBERS);
    List<Draft> some = different(few, number + SPARE_PLANS, FEW_MEMBERS);
    List<Draft> finalists = good(others.isEmpty() ? bakedInGoodTime(some) : some, MEMBERS);
    List<Draft> last = atShapePoint(different(finalists, number, MEMBERS), POINT_MEMBERS, others);
    List<Draft> found = different(good(last, MEMBERS), number, MEMBERS);
    if (others.isEmpty()) {
      return atTheirPointFirst(found.isEmpty() ? ofAll(number) : found);
    }
    if (!found.isEmpty()) {
      return found;
    }
    // Beside others a dough may be shaped off its printed point.
    List<Draft> byClock = different(finalists, number, MEMBERS);
    return good(byClock.stream().map(point::atClock).toList(), MEMBERS);
  }

  /**
   * Where none of the few that stand for all holds: of everything that was found what comes right
   * most often, at its printed shape point, or mixed so that this is at the hour found.
   */
  private List<Draft> ofAll(int number) {
    List<Draft> some = drafts.subList(0, Math.min(drafts.size(), MOST_WEIGHED));
    List<Draft> likeliest =
        control
            .map(some, draft -> Map.entry(draft, control.stopped() ? 0 : goodShare(draft)))
            .stream()
            .filter(each -> each.getValue() >= DayPlanner.LEAST_GOOD_SHARE)
            .sorted(Map.Entry.<Draft, Double>comparingByValue().reversed())
            .limit(MOST_CHOSEN_OF_MANY)
            .map(Map.Entry::getKey)
            .toList();
    List<Draft> moved =
        control.map(likeliest, this::atPrintedPoint).stream().flatMap(List::stream).toList();
    return different(good(moved, MEMBERS), number, MEMBERS);
  }

  private List<Draft> atPrintedPoint(Draft draft) {
    Draft moved = point.printed(draft);
    Draft shifted = point.printed(shifted(moved, draft.basketHour() - moved.basketHour()));
    return Stream.of(moved, shifted)
        .distinct()
        .filter(each -> search.miss(each) == 0 && search.feeds().isRipe(each.feed()))
        .toList();
  }

  private double goodShare(Draft draft) {
    return weigher(MEMBERS).goodShare(draft);
  }

  /**
   * After a night in the cold the loaves may be baked earlier, so that the oven may be late; where
   * they proof in the room, all of the dough may be earlier.
   */
  private List<Draft> bakedInGoodTime(List<Draft> plans) {
    return control.map(plans, this::bakedInGoodTime).stream().distinct().toList();
  }

  private Draft bakedInGoodTime(Draft plan) {
    Stream<Draft> earlier =
        DoubleStream.of(EARLIER_OVEN_HOURS)
            .mapToObj(
                by -> plan.movedBy(plan.proof() == ProofKind.COLD ? 0 : -by, plan.ovenHour() - by));
    return Stream.concat(
            Stream.of(plan),
            earlier
                .filter(each -> search.miss(each) == 0 && search.feeds().isRipe(each.feed()))
                .map(each -> atShapePoint(each, FEW_MEMBERS))
                .filter(each -> search.miss(each) == 0 && isGood(each, FEW_MEMBERS)))
        .min(Comparator.comparing(each -> worth(each, FEW_MEMBERS)))
        .orElse(plan);
  }

  /** Where the bench asks for another hour than the shape point, a plan comes last. */
  private List<Draft> atTheirPointFirst(List<Draft> plans) {
    return plans.stream().sorted(Comparator.comparing(draft -> !isAtItsPoint(draft))).toList();
  }

  private boolean isAtItsPoint(Draft draft) {
    return offPointHours(draft) <= AT_POINT_HOURS;
  }

  private double offPointHours(Draft draft) {
    double point = atShapePoint(draft, POINT_MEMBERS).shapedHours();
    return Math.abs(point - draft.shapedHours());
  }

  /** Each at its shape point, or as near to it as the hours at the bench and the others allow. */
  private List<Draft> atShapePoint(List<Draft> drafts, int fromMembers, OtherDoughs others) {
    return control.map(drafts, draft -> atShapePoint(draft, fromMembers, others)).stream()
        .flatMap(Optional::stream)
        .distinct()
        .toList();
  }

  private Optional<Draft> atShapePoint(Draft draft, int fromMembers, OtherDoughs others) {
    Draft moved = atShapePoint(draft, fromMembers);
    if (fits(moved, others)) {
      return Optional.of(moved);
    }
    if (draft.route().coldFrom().isEmpty()) {
      // Mixed earlier or later instead, so that it is shaped by the clock of before.
      Draft shifted = shifted(moved, draft.basketHour() - moved.basketHour());
      Draft again = atShapePoint(shifted, fromMembers);
      if (fits(again, others)) {
        return Optional.of(again);
      }
    }
    if (fromMembers == FEW_MEMBERS) {
      return Optional.of(draft);
    }
    double off = Math.abs(moved.shapedHours() - draft.shapedHours());
    return others.isEmpty() && off > MOST_OFF_POINT_HOURS
        ? Optional.empty()
        : Optional.of(point.atClock(draft));
  }

  /** The same by the clock, with the rise that the likely dough shows then where that is good. */
  Draft asItIs(Draft draft) {
    Draft clock = point.atClock(draft);
    return isGood(clock) ? clock : draft;
  }

  /**
   * Whether its steps are in the hours at the bench, its starter ripe, and the others go with it.
   */
  boolean fits(Draft draft, OtherDoughs others) {
    return search.miss(draft) == 0
        && others.isRipe(draft.feed(), search.feeds())
        && others.fit(draft);
  }

  private Draft shifted(Draft draft, double by) {
    double oven = draft.proof() == ProofKind.COLD ? draft.ovenHour() : draft.ovenHour() + by;
    Draft moved = draft.movedBy(by, oven);
    FeedChoice feed = draft.feed();
    return moved.withFeed(search.feeds().at(feed.feedHour() + by, moved.mixHour(), feed.ratio()));
  }

  private Draft atShapePoint(Draft draft, int fromMembers) {
    return fromMembers == FEW_MEMBERS
        ? atPointOfFew.computeIfAbsent(draft, each -> point.quickly(each, first(FEW_MEMBERS)))
        : point.printed(draft);
  }

  /** The best few of each kind, so that the plans shown really differ. */
  private List<Draft> chosen(OtherDoughs others) {
    Map<String, Integer> counts = new HashMap<>();
    Set<Draft> chosen = new LinkedHashSet<>();
    int most = others.isEmpty() ? MOST_CHOSEN : MOST_CHOSEN_OF_MANY;
    for (Draft draft : drafts) {
      if (counts.getOrDefault(kind(draft), 0) >= MOST_OF_A_KIND) {
        continue;
      }
      others
          .moved(draft, search)
          .filter(chosen::add)
          .ifPresent(moved -> counts.merge(kind(moved), 1, Integer::sum));
      if (chosen.size() >= (control.stopped() ? MOST_WHEN_STOPPED : most)) {
        break;
      }
    }
    return List.copyOf(chosen);
  }

  private List<Draft> good(List<Draft> all, int fromMembers) {
    return control.map(all, draft -> ifGood(draft, fromMembers)).stream()
        .flatMap(Optional::stream)
        .toList();
  }

  private Optional<Draft> ifGood(Draft draft, int fromMembers) {
    PlanWeigher.Weighing weighing = weighing(draft, fromMembers);
    if (weighing.goodShare() < DayPlanner.LEAST_GOOD_SHARE) {
      return Optional.empty();
    }
    weighing.leastMarginHours(); // which ranks it: found here, on one of several threads
    return Optional.of(draft);
  }

  private boolean isGood(Draft draft, int fromMembers) {
    return weighing(draft, fromMembers).goodShare() >= DayPlanner.LEAST_GOOD_SHARE;
  }

  private PlanWeigher.Weighing weighing(Draft draft, int fromMembers) {
    return (fromMembers == MEMBERS ? weighedByMany : weighedByFew)
        .computeIfAbsent(draft, each -> weigher(fromMembers).weighing(each));
  }

  private BakePlan.Weighed weighed(Draft draft) {
    return weighing(draft, MEMBERS).weighed();
  }

  private List<Unknowns> first(int number) {
    return members.subList(0, Math.min(number, members.size()));
  }

  private PlanWeigher weigher(int number) {
    return new PlanWeigher(model, day, first(number), control);
  }

  /** The best of every kind first, then the next best; at last all by worth. */
  private List<Draft> different(List<Draft> candidates, int number, int fromMembers) {
    Comparator<Draft> byWorth = Comparator.comparing(draft -> worth(draft, fromMembers));
    Map<String, Integer> counts = new HashMap<>();
    Map<Draft, Integer> place = new IdentityHashMap<>();
    List<Draft> sorted = candidates.stream().sorted(byWorth).toList();
    sorted.forEach(each -> place.put(each, counts.merge(kind(each), 1, Integer::sum)));
    return sorted.stream()
        .sorted(Comparator.comparingInt(place::get))
        .limit(number)
        .sorted(byWorth)
        .toList();
  }

  private String kind(Draft draft) {
    int interval = day.bench().nearest(draft.mixHour(), draft.mixHour());
    return draft.proof() + " " + draft.route().coldFrom().isPresent() + " " + interval;
  }

  /** Whether a plan is worth more than another. */
  boolean isBetter(Draft draft, Draft other) {
    return worth(draft, MEMBERS).compareTo(worth(other, MEMBERS)) < 0;
  }

  /** What put a plan of a dough alone before another. */
  DayAnswer.Choice choice(Draft draft, Draft other) {
    return isAtItsPoint(draft) && !isAtItsPoint(other)
        ? new DayAnswer.Choice(DayAnswer.Criterion.POINT, 0, offPointHours(other))
        : told(draft).over(told(other));
  }

  private PlanWorth worth(Draft draft, int fromMembers) {
    return new PlanWorth(day, draft, weighing(draft, fromMembers), alone);
  }

  private PlanWorth told(Draft draft) {
    return new PlanWorth(day, draft, weighed(draft), alone);
  }

  /** The least margin of a plan, hours. */
  double marginHours(Draft draft) {
    return weighing(draft, MEMBERS).leastMarginHours();
  }

  /** Whether enough of all members come out right. */
  boolean isGood(Draft draft) {
    return isGood(draft, MEMBERS);
  }

  BakePlan plan(Draft draft) {
    return new BakePlan(day, draft, weighed(draft), model.temperature(draft.route()));
  }

  /** The single change that gives the tightest step of a plan most room. */
  Optional<Adjustment> loosening(Draft draft, int dough) {
    StepMargin tight = weighed(draft).tight();
    return new Loosening(search, weigher(FEWEST_MEMBERS), dough).of(draft, tight);
  }
}
