package doughtide.core.day;

import doughtide.core.feeding.FeedChoice;
import doughtide.core.rise.Unknowns;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;

/**
 * What can be done with one dough of a day that is shared: its plans on the likely path, each of
 * which can be moved by minutes, baked with the loaves of another dough, and fed with its starter.
 */
final class DoughChoices {
  private static final double GRID_HOURS = 0.5;
  private static final int FEW_MEMBERS = 16;
  private static final int MOST_DRAFTS = 400;
  private static final int DRAFTS_OF_A_HOUR = 6;
  private static final int WEIGHED = 3;
  private static final int MOST_WEIGHED = 12;
  private static final int MOST_TESTS_OF_A_DRAFT = 60;
  private static final double LEAST_GOOD_SHARE = 0.5; // as for a day alone
  private static final double FIVE_MINUTES = 1.0 / 12;
  private static final int[] MOVES = {0, 1, -1, 2, -2, 3, -3, 4, -4, 5, -5};
  private static final int[] FEED_MOVES = {0, -1, 1, -2, 2, -4, 4};
  private static final double LARGEST_OVEN_MOVE_HOURS = 4;
  private static final double LARGEST_MOVE_HOURS = 1.5;
  private static final double SHORTEST_COLD_HOURS = 5;
  private static final double LONGEST_COLD_HOURS = 20;

  /** Whether a plan goes with those of the other doughs. */
  interface Fits {
    /** All of it. */
    boolean fed(Draft draft);

    /** All but its feeding. */
    boolean unfed(Draft draft);
  }

  private final BakeDay day;
  private final DraftSearch search;
  private final DayModel model;
  private final PlanScales few;
  private final PlanScales many;
  private final List<DraftSearch.Scored> drafts;
  private final Map<Draft, BakePlan.Weighed> weighed = new HashMap<>();
  private final Map<Draft, BakePlan.Weighed> weighedByMany = new HashMap<>();
  private final Map<Draft, Draft> atPoint = new HashMap<>();

  DoughChoices(BakeDay day) {
    this.day = day;
    this.model = new DayModel(day);
    this.search = new DraftSearch(model);
    List<Unknowns> members =
        day.forecaster().withMembers(BakeDayPlanner.MEMBERS).ensemble().members();
    this.many = new PlanScales(model, search.feeds(), members);
    this.few = new PlanScales(model, search.feeds(), members.subList(0, FEW_MEMBERS));
    this.drafts =
        diverse(search.search(search.routes(GRID_HOURS), SearchProgress.none()).fitting());
  }

  private static List<DraftSearch.Scored> diverse(List<DraftSearch.Scored> fitting) {
    Map<String, Integer> counts = new HashMap<>();
    List<DraftSearch.Scored> some = new ArrayList<>();
    for (DraftSearch.Scored each : fitting) {
      Draft draft = each.draft();
      String kind = draft.proof() + " " + draft.route().coldFrom() + " " + draft.mixHour();
      if (some.size() < MOST_DRAFTS && counts.merge(kind, 1, Integer::sum) <= DRAFTS_OF_A_HOUR) {
        some.add(each);
      }
    }
    return some;
  }

  /** How many plans there are before the other doughs are looked at. */
  int size() {
    return drafts.size();
  }

  /**
   * The best plan that goes with the others.
   *
   * @param loads what the oven bakes already
   * @param feedings of the same starter that are done anyway
   * @param fits whether a plan goes with the others
   */
  Optional<Draft> best(List<OvenLoad> loads, List<FeedChoice> feedings, Fits fits) {
    List<Draft> good = new ArrayList<>();
    Set<Draft> tried = new LinkedHashSet<>();
    for (DraftSearch.Scored each : drafts) {
      Optional<Draft> moved = moved(each.draft(), loads, feedings, fits);
      if (moved.isEmpty()) {
        continue;
      }
      Draft middle = middle(moved.get(), fits);
      if (tried.add(middle) && isGood(middle)) {
        good.add(middle);
      }
      if (good.size() >= WEIGHED || tried.size() >= MOST_WEIGHED) {
        break;
      }
    }
    good.sort(
        Comparator.comparingDouble((Draft each) -> -fiveMinutes(each))
            .thenComparingDouble(each -> -weigh(each).goodShare()));
    return good.stream().filter(this::isGoodForMany).findFirst();
  }

  private Draft middle(Draft draft, Fits fits) {
    Draft moved = atPoint.computeIfAbsent(draft, many::atShapePoint);
    return search.miss(moved) == 0 && fits.fed(moved) ? moved : draft;
  }

  private boolean isGood(Draft draft) {
    return weigh(draft).goodShare() >= LEAST_GOOD_SHARE;
  }

  private boolean isGoodForMany(Draft draft) {
    return weighMany(draft).goodShare() >= LEAST_GOOD_SHARE;
  }

  private BakePlan.Weighed weighMany(Draft draft) {
    return weighedByMany.computeIfAbsent(draft, many::weigh);
  }

  /** The least margin of a plan, hours. */
  double marginHours(Draft draft) {
    return weighMany(draft).marginHours();
  }

  private BakePlan.Weighed weigh(Draft draft) {
    return weighed.computeIfAbsent(draft, few::weigh);
  }

  private double fiveMinutes(Draft draft) {
    return Math.rint(weigh(draft).marginHours() * 12);
  }

  private Optional<Draft> moved(
      Draft draft, List<OvenLoad> loads, List<FeedChoice> feedings, Fits fits) {
    int tests = 0;
    for (double by : moves(draft, loads)) {
      for (double oven : ovenHours(draft, by, loads)) {
        Draft moved = moved(draft, by, oven);
        if (tests++ > MOST_TESTS_OF_A_DRAFT) {
          return Optional.empty();
        }
        if (!fits.unfed(moved)) {
          continue;
        }
        for (FeedChoice feed : feedings(moved, by, feedings)) {
          Draft fed = with(moved, feed);
          if (search.miss(fed) == 0 && fits.fed(fed)) {
            return Optional.of(fed);
          }
        }
      }
    }
    return Optional.empty();
  }

  /** Hours by which the whole dough is moved; where it stands partly in the cold it stays. */
  private List<Double> moves(Draft draft, List<OvenLoad> loads) {
    List<Double> moves = new ArrayList<>();
    if (draft.proof() == ProofKind.ROOM && draft.route().coldFrom().isEmpty()) {
      for (double hour : besides(loads)) {
        double by = hour - draft.ovenHour();
        if (Math.abs(by) <= LARGEST_MOVE_HOURS) {
          moves.add(by);
        }
      }
    }
    for (int move : MOVES) {
      if (move == 0 || draft.route().coldFrom().isEmpty()) {
        moves.add(move * FIVE_MINUTES);
      }
    }
    return moves;
  }

  /** After a night in the cold the hour of the oven is free within limits. */
  private List<Double> ovenHours(Draft draft, double by, List<OvenLoad> loads) {
    if (draft.proof() == ProofKind.ROOM) {
      return List.of(draft.ovenHour() + by);
    }
    List<Double> hours = new ArrayList<>();
    for (double hour : besides(loads)) {
      if (Math.abs(hour - draft.ovenHour()) <= LARGEST_OVEN_MOVE_HOURS) {
        hours.add(hour);
      }
    }
    hours.add(draft.ovenHour());
    double basket = draft.basketHour() + by;
    hours.removeIf(
        hour -> hour - basket < SHORTEST_COLD_HOURS || hour - basket > LONGEST_COLD_HOURS);
    return hours;
  }

  /** With another load, right after one, right before one. */
  private List<Double> besides(List<OvenLoad> loads) {
    Set<Double> hours = new LinkedHashSet<>();
    double busy = Draft.ovenBusyHours(day);
    for (OvenLoad load : loads) {
      if (load.loaves() + Math.min(day.loaves(), day.oven().loaves()) <= day.oven().loaves()) {
        hours.add(load.fromHour());
      }
    }
    for (OvenLoad load : loads) {
      hours.add(load.toHour());
      hours.add(load.fromHour() - busy);
    }
    return List.copyOf(hours);
  }

  private static Draft moved(Draft draft, double by, double oven) {
    BakeRoute route = draft.route();
    return new Draft(
        by == 0 ? route : route.withMixHour(route.mixHour() + by),
        draft.feed(),
        draft.strength(),
        draft.proof(),
        draft.shapedHours(),
        oven,
        draft.shapeRise(),
        draft.risePerHour());
  }

  private static Draft with(Draft draft, FeedChoice feed) {
    return new Draft(
        draft.route(),
        feed,
        draft.strength(),
        draft.proof(),
        draft.shapedHours(),
        draft.ovenHour(),
        draft.shapeRise(),
        draft.risePerHour());
  }

  private List<FeedChoice> feedings(Draft draft, double by, List<FeedChoice> others) {
    List<FeedChoice> feedings = new ArrayList<>();
    search.feeds().sharedWith(draft.mixHour(), others).ifPresent(feedings::add);
    for (int move : FEED_MOVES) {
      double hour = draft.feed().feedHour() + by + move * FIVE_MINUTES;
      FeedChoice choice = search.feeds().at(hour, draft.mixHour(), draft.feed().ratio());
      if (choice.slackHours() > 0) {
        feedings.add(choice);
      }
    }
    return feedings;
  }

  BakePlan plan(Draft draft) {
    return new BakePlan(
        day, draft, weighMany(draft), model.temperature(draft.route()), Optional.empty());
  }
}
