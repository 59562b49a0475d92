package doughtide.core.day;

import doughtide.core.feeding.FeedChoice;
import doughtide.core.feeding.FeedRatio;
import doughtide.core.quantity.Share;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;

/** Finds when and how to feed so that the starter is ripe at mixing. */
final class FeedSearch {
  private static final List<Double> PARTS = List.of(1.0, 2.0, 3.0, 4.0, 5.0, 7.0, 10.0, 15.0, 20.0);
  private static final double SOONEST_HOURS = 2.5;
  private static final double LATEST_HOURS = 26;
  private static final double GRID_HOURS = 0.5;
  private static final double WELL_RIPE_HOURS = 0.25;

  private final BenchHours bench;
  private final RipeTimes times;
  private final OptionalDouble inColdHours;

  FeedSearch(DayModel model, BakeDay day) {
    this.bench = day.bench();
    this.times = model.ripeTimes();
    this.inColdHours = day.starterInColdHours();
  }

  /** The feeding with most room on both sides of the mixing hour. */
  Optional<FeedChoice> best(double mixHour) {
    if (inColdHours.isPresent()) {
      return Optional.of(fromCold(mixHour));
    }
    List<FeedChoice> all = new ArrayList<>();
    for (BenchInterval at : bench.intervals()) {
      double last = Math.min(at.toHour() - HandsOnTime.FEED_HOURS, mixHour - SOONEST_HOURS);
      double from = Math.max(at.fromHour(), mixHour - LATEST_HOURS);
      for (int i = 0; from + i * GRID_HOURS <= last + 1e-9; i++) {
        addBestRatio(all, from + i * GRID_HOURS, mixHour);
      }
    }
    return roomiest(all, 0);
  }

  /** Ripe whenever it is wanted: how weak the cold has made it is in its condition. */
  private FeedChoice fromCold(double mixHour) {
    double age = inColdHours.orElseThrow();
    return new FeedChoice(
        mixHour - age, mixHour, FeedRatio.oneTo(1, Share.ofPercent(100)), 0, 2 * age);
  }

  private void addBestRatio(List<FeedChoice> all, double feedHour, double mixHour) {
    PARTS.stream()
        .map(parts -> times.choice(feedHour, mixHour, parts))
        .max(Comparator.comparingDouble(FeedChoice::slackHours))
        .ifPresent(all::add);
  }

  /** A feeding that is done for another dough anyway, if its starter is well ripe then. */
  Optional<FeedChoice> sharedWith(double mixHour, List<FeedChoice> others) {
    return roomiest(
        others.stream().map(other -> at(other.feedHour(), mixHour, other.ratio())).toList(),
        WELL_RIPE_HOURS);
  }

  private static Optional<FeedChoice> roomiest(List<FeedChoice> choices, double leastHours) {
    return choices.stream()
        .filter(choice -> choice.slackHours() > leastHours)
        .max(Comparator.comparingDouble(FeedChoice::slackHours));
  }

  /** A feeding at an hour with a ratio. */
  FeedChoice at(double feedHour, double mixHour, FeedRatio ratio) {
    return inColdHours.isPresent()
        ? fromCold(mixHour)
        : times.choice(feedHour, mixHour, ratio.flourPerStarter());
  }
}
