package doughtide.core.day;

import doughtide.core.feeding.FeedChoice;
import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.SortedMap;
import java.util.TreeMap;

/**
 * The other doughs of a day that have a place already, for one that looks for one: its plans are
 * moved by minutes, baked together with other loaves, or right before or after them, and fed with
 * another dough's starter where it is ripe.
 */
final class OtherDoughs {
  private static final int MOST_TESTS_OF_A_DRAFT = 60;
  private static final double SAME_LOAD_HOURS = 1.0 / 3600;
  private static final double FIVE_MINUTES = 1.0 / 12;
  private static final int[] MOVES = {0, 1, -1, 2, -2, 3, -3, 4, -4, 5, -5};
  private static final int[] FEED_MOVES = {0, -1, 1, -2, 2, -4, 4};
  private static final double LARGEST_OVEN_MOVE_HOURS = 4;
  private static final double LARGEST_MOVE_HOURS = 1.5;

  private final List<BakeDay> doughs;
  private final int number;
  private final SortedMap<Integer, Draft> placed;
  private final int hands;
  private final Taken taken;
  private final List<OvenLoad> loads;
  private final List<FeedChoice> feedings;
  private final BusyHands busy;
  private final Optional<FeedChoice> build;

  /**
   * @param doughs all doughs of the day
   * @param number of the dough that looks for a place
   * @param placed the plans of those that have one, without it
   * @param hands how many persons work
   * @param taken what others than these doughs take
   * @param build of its starter in stages, which the dough must share with others
   */
  OtherDoughs(
      List<BakeDay> doughs,
      int number,
      SortedMap<Integer, Draft> placed,
      int hands,
      Taken taken,
      Optional<FeedChoice> build) {
    this.doughs = doughs;
    this.number = number;
    this.placed = placed;
    this.hands = hands;
    this.taken = taken;
    this.build = build;
    this.loads = DayTimetable.loads(doughs, placed, taken);
    this.busy = DayTimetable.busyBesideOven(doughs, placed, taken);
    this.feedings =
        placed.entrySet().stream()
            .filter(each -> starter(each.getKey()).equals(starter(number)))
            .map(each -> each.getValue().feed())
            .toList();
  }

  private Object starter(int dough) {
    return doughs.get(dough).dough().starter();
  }

  /** Whether there are none. */
  boolean isEmpty() {
    return placed.isEmpty() && taken.isNothing();
  }

  /** Whether a plan goes with them. */
  boolean fit(Draft draft) {
    return sharesBuild(draft.feed())
        && DayTimetable.of(doughs, with(draft), hands, taken).isPresent();
  }

  /** Whether a plan takes its starter from the build that it must share, or is free. */
  private boolean sharesBuild(FeedChoice feed) {
    return build.isEmpty() || Math.abs(build.get().feedHour() - feed.feedHour()) < SAME_LOAD_HOURS;
  }

  /** Whether the starter can be used, of the build that must be shared or of its own feeding. */
  boolean isRipe(FeedChoice feed, FeedSearch feeds) {
    return build.isEmpty()
        ? feeds.isRipe(feed)
        : feeds.ofBuild(build.get(), feed.mixHour()).isPresent();
  }

  /** Whether the build that must be shared can be used, if the plan is moved by minutes. */
  boolean mayShareBuild(Draft draft, FeedSearch feeds) {
    return build.isEmpty()
        || moves(draft).stream()
            .anyMatch(by -> feeds.ofBuild(build.get(), draft.mixHour() + by).isPresent());
  }

  private boolean fitUnfed(Draft draft) {
    return fitsOven(draft.ovenHour())
        && DayTimetable.fitsUnfed(doughs.get(number), number, draft, loads, busy, hands);
  }

  /** Whether every batch goes into a load of the others or between two of them. */
  private boolean fitsOven(double ovenHour) {
    BakeDay day = doughs.get(number);
    double length = day.oven().bakeHours() + HandsOnTime.LOAD_HOURS;
    int left = day.loaves();
    for (int batch = 0; left > 0; batch++) {
      int loaves = Math.min(left, day.oven().loaves());
      double from = ovenHour + batch * length;
      if (!loads.stream().allMatch(load -> fits(load, from, from + length, loaves))) {
        return false;
      }
      left -= loaves;
    }
    return true;
  }

  private boolean fits(OvenLoad load, double from, double to, int loaves) {
    boolean together = Math.abs(load.fromHour() - from) < SAME_LOAD_HOURS;
    return together
        ? load.loaves() + loaves <= doughs.get(number).oven().loaves()
        : from >= load.toHour() - SAME_LOAD_HOURS || to <= load.fromHour() + SAME_LOAD_HOURS;
  }

  private SortedMap<Integer, Draft> with(Draft draft) {
    SortedMap<Integer, Draft> all = new TreeMap<>(placed);
    all.put(number, draft);
    return all;
  }

  /** A plan, moved so that it goes with them. */
  Optional<Draft> moved(Draft draft, DraftSearch search) {
    if (!mayShareBuild(draft, search.feeds())) {
      return Optional.empty();
    }
    int tests = 0;
    for (double by : moves(draft)) {
      for (double oven : ovenHours(draft, by)) {
        Draft moved = draft.movedBy(by, oven);
        if (tests++ > MOST_TESTS_OF_A_DRAFT) {
          return Optional.empty();
        }
        if (!fitUnfed(moved)) {
          continue;
        }
        for (FeedChoice feed : feedings(moved, by, search.feeds())) {
          Draft fed = moved.withFeed(feed);
          if (search.miss(fed) == 0 && fit(fed)) {
            return Optional.of(fed);
          }
        }
      }
    }
    return Optional.empty();
  }

  /** Hours by which the whole dough is moved; where it stands partly in the cold it stays. */
  private List<Double> moves(Draft draft) {
    if (isEmpty() && build.isEmpty() || draft.route().coldFrom().isPresent()) {
      return List.of(0.0);
    }
    List<Double> moves = new ArrayList<>();
    if (draft.proof() == ProofKind.ROOM) {
      for (double hour : besides()) {
        double by = hour - draft.ovenHour();
        if (Math.abs(by) <= LARGEST_MOVE_HOURS) {
          moves.add(by);
        }
      }
    }
    for (int move : MOVES) {
      moves.add(move * FIVE_MINUTES);
    }
    return moves;
  }

  /** After a night in the cold the hour of the oven is free within limits. */
  private List<Double> ovenHours(Draft draft, double by) {
    if (draft.proof() == ProofKind.ROOM) {
      return List.of(draft.ovenHour() + by);
    }
    List<Double> hours = new ArrayList<>();
    for (double hour : besides()) {
      if (Math.abs(hour - draft.ovenHour()) <= LARGEST_OVEN_MOVE_HOURS) {
        hours.add(hour);
      }
    }
    hours.add(draft.ovenHour());
    double basket = draft.basketHour() + by;
    hours.removeIf(
        hour ->
            hour - basket < DraftSearch.SHORTEST_COLD_HOURS
                || hour - basket > DraftSearch.LONGEST_COLD_HOURS);
    return hours;
  }

  /** With another load, right after one, right before one. */
  private List<Double> besides() {
    Set<Double> hours = new LinkedHashSet<>();
    BakeDay day = doughs.get(number);
    int room = day.oven().loaves();
    for (OvenLoad load : loads) {
      if (load.loaves() + Math.min(day.loaves(), room) <= room) {
        hours.add(load.fromHour());
      }
    }
    double busy = Draft.ovenBusyHours(day);
    for (OvenLoad load : loads) {
      hours.add(load.toHour());
      hours.add(load.fromHour() - busy);
    }
    return List.copyOf(hours);
  }

  private List<FeedChoice> feedings(Draft draft, double by, FeedSearch feeds) {
    if (isEmpty() && build.isEmpty()) {
      return List.of(draft.feed());
    }
    if (build.isPresent()) {
      return feeds.ofBuild(build.get(), draft.mixHour()).stream().toList();
    }
    List<FeedChoice> some = new ArrayList<>();
    feeds.sharedWith(draft.mixHour(), feedings).ifPresent(some::add);
    for (int move : FEED_MOVES) {
      double hour = draft.feed().feedHour() + by + move * FIVE_MINUTES;
      FeedChoice choice = feeds.at(hour, draft.mixHour(), draft.feed().ratio());
      if (feeds.isRipe(choice)) {
        some.add(choice);
      }
    }
    return some;
  }
}
