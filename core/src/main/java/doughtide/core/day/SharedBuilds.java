package doughtide.core.day;

import doughtide.core.feeding.FeedChoice;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.OptionalInt;
import java.util.stream.IntStream;

/**
 * Builds of a starter in stages that serve all doughs whose stages are the same: made once, and
 * ripe when each of them is mixed. Those that leave the doughs most room come first.
 */
final class SharedBuilds {
  private static final int MOST_TRIED = 6;
  private static final double APART_HOURS = 1;

  private final List<DoughCandidates> candidates;

  private SharedBuilds(List<DoughCandidates> candidates) {
    this.candidates = candidates;
  }

  /**
   * Some ways to build the starters once: of each dough that shares one, by its number, which.
   *
   * @param candidates all doughs of the day
   * @return empty if no two doughs have the same stages, or no build serves them all
   */
  static List<Map<Integer, FeedChoice>> of(List<DoughCandidates> candidates) {
    SharedBuilds shared = new SharedBuilds(candidates);
    Map<List<Integer>, List<FeedChoice>> builds = new HashMap<>();
    for (List<Integer> group : shared.groups()) {
      List<FeedChoice> roomiest = shared.roomiest(group);
      if (!roomiest.isEmpty()) {
        builds.put(group, roomiest);
      }
    }
    int ways = builds.values().stream().mapToInt(List::size).max().orElse(0);
    return IntStream.range(0, ways).mapToObj(i -> way(builds, i)).toList();
  }

  private static Map<Integer, FeedChoice> way(
      Map<List<Integer>, List<FeedChoice>> builds, int place) {
    Map<Integer, FeedChoice> way = new HashMap<>();
    builds.forEach(
        (group, roomiest) ->
            group.forEach(
                number -> way.put(number, roomiest.get(Math.min(place, roomiest.size() - 1)))));
    return way;
  }

  /** The doughs of each build, by their numbers, where there are two or more. */
  private List<List<Integer>> groups() {
    List<List<Integer>> groups = new ArrayList<>();
    for (int number = 0; number < candidates.size(); number++) {
      BakeDay day = candidates.get(number).day();
      if (day.stages().isPresent()) {
        groupOf(day, groups).add(number);
      }
    }
    return groups.stream().filter(group -> group.size() > 1).toList();
  }

  private List<Integer> groupOf(BakeDay day, List<List<Integer>> groups) {
    return groups.stream()
        .filter(group -> isSame(candidates.get(group.get(0)).day(), day))
        .findFirst()
        .orElseGet(
            () -> {
              List<Integer> group = new ArrayList<>();
              groups.add(group);
              return group;
            });
  }

  private static boolean isSame(BakeDay first, BakeDay second) {
    return first.stages().equals(second.stages())
        && first.dough().starter().equals(second.dough().starter());
  }

  /** A build, and how many roomier plans the dough has that is served worst by it. */
  private record Rated(FeedChoice build, int roomier) {}

  private List<FeedChoice> roomiest(List<Integer> group) {
    List<FeedChoice> some = new ArrayList<>();
    group.stream()
        .flatMap(number -> candidates.get(number).builds().stream())
        .flatMap(build -> rated(build, group).stream())
        .sorted(
            Comparator.comparingInt(Rated::roomier)
                .thenComparingDouble(each -> each.build().feedHour()))
        .map(Rated::build)
        .filter(build -> some.stream().allMatch(other -> areApart(build, other)))
        .limit(MOST_TRIED)
        .forEachOrdered(some::add);
    return some;
  }

  private static boolean areApart(FeedChoice build, FeedChoice other) {
    return Math.abs(build.feedHour() - other.feedHour()) > APART_HOURS;
  }

  private List<Rated> rated(FeedChoice build, List<Integer> group) {
    List<OptionalInt> roomier =
        group.stream().map(number -> candidates.get(number).roomierThanOf(build)).toList();
    return roomier.stream().allMatch(OptionalInt::isPresent)
        ? List.of(
            new Rated(build, roomier.stream().mapToInt(OptionalInt::getAsInt).max().orElseThrow()))
        : List.of();
  }
}
