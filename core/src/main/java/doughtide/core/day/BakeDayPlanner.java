package doughtide.core.day;

import doughtide.core.rise.Unknowns;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.IdentityHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/**
 * Plans a day backward from the bread: feed, share of starter, dough temperature, bulk in the
 * kitchen or partly in the cold, proof in the kitchen or in the cold, so that every hands-on step
 * falls into the hours at the bench. Plans are ranked by their least margin: how much later each
 * step may be until one dough in ten more is spoiled. The same day gives the same plans.
 *
 * <pre>{@code
 * BakeDayAnswer answer = BakeDayPlanner.plan(day, SearchProgress.none());
 * double hour = answer.plans().get(0).mixHour();
 * }</pre>
 *
 * <p>Everything that fits is found on the likely path; the best of each kind are then weighed with
 * 16 and at last 64 members of the belief.
 */
public final class BakeDayPlanner {
  /** Members that weigh the last plans. */
  static final int MEMBERS = 64;

  /** Members that weigh the drafts. */
  private static final int FEW_MEMBERS = 16;

  private static final int KNOB_MEMBERS = 8;
  private static final int DRAFTS = 24;
  private static final int DRAFTS_OF_A_KIND = 4;
  private static final int SPARE_PLANS = 2;
  private static final double GRID_HOURS = 0.5;

  /** Fewer good doughs than this are no plan (starting value). */
  private static final double LEAST_GOOD_SHARE = 0.5;

  private static final double SEARCH_PART = 0.6; // of the work, for progress

  private final BakeDay day;
  private final DayModel model;
  private final DraftSearch search;
  private final List<Unknowns> members;

  private BakeDayPlanner(BakeDay day) {
    this.day = day;
    this.model = new DayModel(day);
    this.search = new DraftSearch(model);
    this.members = day.forecaster().withMembers(MEMBERS).ensemble().members();
  }

  /**
   * Plans a day.
   *
   * @param day what is given
   * @param progress is told how far the search has come
   */
  public static BakeDayAnswer plan(BakeDay day, SearchProgress progress) {
    BakeDayPlanner planner = new BakeDayPlanner(day);
    DraftSearch.Found found =
        planner.search.search(
            planner.search.routes(GRID_HOURS), share -> progress.at(share * SEARCH_PART));
    List<BakePlan> plans = planner.best(found.fitting(), progress);
    progress.at(1);
    return plans.isEmpty()
        ? new BakeDayAnswer(plans, Optional.of(Hindrances.of(day, found)))
        : new BakeDayAnswer(plans, Optional.empty());
  }

  /** The plans of a changed day, over a coarser grid. */
  static List<BakePlan> plansOnly(BakeDay day) {
    BakeDayPlanner planner = new BakeDayPlanner(day);
    DraftSearch.Found found =
        planner.search.search(planner.search.routes(2 * GRID_HOURS), SearchProgress.none());
    return planner.best(found.fitting(), SearchProgress.none());
  }

  /** The plans of a day with other bench hours, from drafts that only just missed the old ones. */
  static List<BakePlan> plansFrom(BakeDay day, DraftSearch.Found found) {
    BakeDayPlanner planner = new BakeDayPlanner(day);
    return planner.best(found.nearFor(planner.search), SearchProgress.none());
  }

  private record Candidate(Draft draft, BakePlan.Weighed weighed) {}

  private List<BakePlan> best(List<DraftSearch.Scored> fitting, SearchProgress progress) {
    List<Candidate> few = weighed(atShapePoint(diverse(fitting), FEW_MEMBERS), FEW_MEMBERS);
    progress.at(SEARCH_PART + 0.2);
    List<Candidate> good = few.stream().filter(BakeDayPlanner::isGood).toList();
    List<Draft> finalists =
        different(good, day.plans() + SPARE_PLANS).stream().map(Candidate::draft).toList();
    List<Candidate> all =
        different(
            weighed(atShapePoint(finalists, MEMBERS), MEMBERS).stream()
                .filter(BakeDayPlanner::isGood)
                .toList(),
            day.plans());
    progress.at(SEARCH_PART + 0.3);
    return all.parallelStream().map(this::plan).toList();
  }

  private static boolean isGood(Candidate candidate) {
    return candidate.weighed().goodShare() >= LEAST_GOOD_SHARE;
  }

  /** The best of every kind first, then the next best; at last all by worth. */
  private List<Candidate> different(List<Candidate> candidates, int number) {
    List<Candidate> sorted = candidates.stream().sorted(BakeDayPlanner::byWorth).toList();
    Map<String, Integer> counts = new HashMap<>();
    Map<Candidate, Integer> place = new IdentityHashMap<>();
    sorted.forEach(each -> place.put(each, counts.merge(kind(each.draft()), 1, Integer::sum)));
    return sorted.stream()
        .sorted(Comparator.comparingInt(place::get))
        .limit(number)
        .sorted(BakeDayPlanner::byWorth)
        .toList();
  }

  /** Each at its shape point, where that fits the hours at the bench too. */
  private List<Draft> atShapePoint(List<Draft> drafts, int number) {
    PlanScales scales = new PlanScales(model, search.feeds(), members.subList(0, number));
    return drafts.parallelStream()
        .map(
            draft -> {
              Draft moved = scales.atShapePoint(draft);
              return search.miss(moved) == 0 ? moved : draft;
            })
        .toList();
  }

  /** Margins that differ by less are equal for a baker. */
  private static double inFiveMinutes(Candidate candidate) {
    return Math.rint(candidate.weighed().marginHours() * 12);
  }

  private static int byWorth(Candidate a, Candidate b) {
    return Comparator.comparingDouble((Candidate each) -> -inFiveMinutes(each))
        .thenComparingDouble(each -> -each.weighed().goodShare())
        .compare(a, b);
  }

  private List<Candidate> weighed(List<Draft> drafts, int number) {
    PlanScales scales = new PlanScales(model, search.feeds(), members.subList(0, number));
    return drafts.parallelStream().map(draft -> new Candidate(draft, scales.weigh(draft))).toList();
  }

  /** The best few of each kind, so that the plans shown really differ. */
  private List<Draft> diverse(List<DraftSearch.Scored> fitting) {
    Map<String, Integer> counts = new HashMap<>();
    List<Draft> chosen = new ArrayList<>();
    for (DraftSearch.Scored each : fitting) {
      int count = counts.merge(kind(each.draft()), 1, Integer::sum);
      if (count <= DRAFTS_OF_A_KIND && chosen.size() < DRAFTS) {
        chosen.add(each.draft());
      }
    }
    return chosen;
  }

  private String kind(Draft draft) {
    int interval = day.bench().nearest(draft.mixHour(), draft.mixHour());
    return draft.proof() + " " + draft.route().coldFrom().isPresent() + " " + interval;
  }

  private BakePlan plan(Candidate candidate) {
    Knobs knobs = new Knobs(model, search, members.subList(0, KNOB_MEMBERS));
    return new BakePlan(
        day,
        candidate.draft(),
        candidate.weighed(),
        model.temperature(candidate.draft().route()),
        knobs.loosen(candidate.draft(), candidate.weighed().tight()));
  }
}
