package doughtide.core.day;

import doughtide.core.feeding.BuildTimes;
import doughtide.core.feeding.FeedChoice;
import doughtide.core.feeding.FeedRatio;
import doughtide.core.quantity.Share;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * Finds when and how to feed so that the starter is ripe at mixing. Where the baker was long away
 * before mixing, as from one evening to the next, and no usual feed is ripe then, a thin one is
 * looked for: with so little old starter it is long on its way (common practice, no source).
 */
final class FeedSearch {
  private static final List<Double> PARTS = List.of(1.0, 2.0, 3.0, 4.0, 5.0, 7.0, 10.0, 15.0, 20.0);

  static final double MOST_USUAL_PARTS = 20;

  /** Of these the least thin that is well inside its time is taken. */
  private static final List<Double> THIN_PARTS = List.of(30.0, 50.0, 100.0);

  private static final double LONG_ABSENCE_HOURS = 14; // starting value
  private static final double WELL_INSIDE_HOURS = 1;
  private static final double BEFORE_LEAVING_HOURS = 0.5; // so that it may be late
  private static final double SOONEST_HOURS = 2.5;
  private static final double LATEST_HOURS = 26;
  private static final double GRID_HOURS = 0.5;
  private static final double WELL_RIPE_HOURS = 0.25;
  private static final double STAGE_GRID_HOURS = 1.0 / 12;
  private static final double SAME_HOURS = 1e-6;

  /** A starter that is fed already is used so long before it is ripe or after it begins to fall. */
  private static final double NEARLY_RIPE_HOURS = 1.5; // starting value

  /** The same of one that is built once for several doughs (starting value). */
  private static final double SHARED_BUILD_HOURS = 1;

  private final BenchHours bench;
  private final RipeTimes times;
  private final OptionalDouble inColdHours;
  private final Optional<BakeDay.Fed> fed;
  private final Optional<BuildTimes> stages;

  FeedSearch(DayModel model, BakeDay day) {
    this.bench = day.bench();
    this.times = model.ripeTimes();
    this.inColdHours = day.starterInColdHours();
    this.fed = day.fed();
    this.stages = day.stages();
  }

  /** The feeding with most room on both sides of the mixing hour. */
  Optional<FeedChoice> best(double mixHour) {
    if (inColdHours.isPresent()) {
      return Optional.of(fromCold(mixHour));
    }
    if (fed.isPresent()) {
      return Optional.of(asFed(mixHour)).filter(this::isRipe);
    }
    if (stages.isPresent()) {
      return built(mixHour, stages.get());
    }
    List<FeedChoice> all = new ArrayList<>();
    for (BenchInterval at : bench.intervals()) {
      double last = Math.min(at.toHour() - HandsOnTime.FEED_HOURS, mixHour - SOONEST_HOURS);
      double from = Math.max(at.fromHour(), mixHour - LATEST_HOURS);
      for (int i = 0; from + i * GRID_HOURS <= last + 1e-9; i++) {
        addBestRatio(all, from + i * GRID_HOURS, mixHour);
      }
    }
    return roomiest(all, 0).or(() -> thin(mixHour));
  }

  /** Fed just before the baker left for long. */
  private Optional<FeedChoice> thin(double mixHour) {
    Optional<Double> feedHour = beforeLongAbsence(mixHour);
    List<FeedChoice> all =
        feedHour.stream()
            .flatMap(hour -> THIN_PARTS.stream().map(p -> times.choice(hour, mixHour, p)))
            .toList();
    return all.stream()
        .filter(choice -> choice.slackHours() >= WELL_INSIDE_HOURS)
        .findFirst()
        .or(() -> roomiest(all, 0));
  }

  private Optional<Double> beforeLongAbsence(double mixHour) {
    List<BenchInterval> before =
        bench.intervals().stream().filter(at -> at.fromHour() <= mixHour + SAME_HOURS).toList();
    if (before.size() < 2) {
      return Optional.empty();
    }
    double left = before.get(before.size() - 2).toHour();
    double away = before.get(before.size() - 1).fromHour() - left;
    return Optional.of(left - BEFORE_LEAVING_HOURS)
        .filter(hour -> away >= LONG_ABSENCE_HOURS && mixHour - hour <= LATEST_HOURS);
  }

  /** Ripe whenever it is wanted: how weak the cold has made it is in its condition. */
  private FeedChoice fromCold(double mixHour) {
    double age = inColdHours.orElseThrow();
    return new FeedChoice(
        mixHour - age, mixHour, FeedRatio.oneTo(1, Share.ofPercent(100)), 0, 2 * age);
  }

  /** The last stage is as old as makes all stages fall into the hours at the bench. */
  private Optional<FeedChoice> built(double mixHour, BuildTimes times) {
    List<FeedChoice> all = new ArrayList<>();
    for (double age = times.ripeHours(); age <= times.fallingHours(); age += STAGE_GRID_HOURS) {
      double first = mixHour - age;
      boolean atBench =
          times.stages().stream()
              .map(stage -> first + stage.fromHours())
              .allMatch(hour -> bench.contains(hour, hour + HandsOnTime.FEED_HOURS));
      if (atBench) {
        all.add(built(first, mixHour, times));
      }
    }
    return roomiest(all, -SAME_HOURS);
  }

  private static FeedChoice built(double firstHour, double mixHour, BuildTimes times) {
    return new FeedChoice(
        firstHour,
        mixHour,
        times.build().feedings().get(0).ratio(),
        times.ripeHours(),
        times.fallingHours());
  }

  private FeedChoice asFed(double mixHour) {
    BakeDay.Fed done = fed.orElseThrow();
    if (stages.isPresent()) {
      return built(done.hour(), mixHour, stages.get());
    }
    return times.choice(done.hour(), mixHour, done.ratio().flourPerStarter());
  }

  /** Whether a starter can be used; one that is fed already need not be just right. */
  boolean isRipe(FeedChoice choice) {
    double least = fed.isPresent() ? -NEARLY_RIPE_HOURS : stages.isPresent() ? -SAME_HOURS : 0;
    return choice.slackHours() > least;
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
        stages.isPresent() ? -SAME_HOURS : WELL_RIPE_HOURS);
  }

  /** A build in stages that serves other doughs too, if its starter can be used then. */
  Optional<FeedChoice> ofBuild(FeedChoice build, double mixHour) {
    return Optional.of(at(build.feedHour(), mixHour, build.ratio()))
        .filter(choice -> choice.slackHours() > -SHARED_BUILD_HOURS);
  }

  private static Optional<FeedChoice> roomiest(List<FeedChoice> choices, double leastHours) {
    return choices.stream()
        .filter(choice -> choice.slackHours() > leastHours)
        .max(Comparator.comparingDouble(FeedChoice::slackHours));
  }

  /** A feeding at an hour with a ratio. */
  FeedChoice at(double feedHour, double mixHour, FeedRatio ratio) {
    if (fed.isPresent()) {
      return asFed(mixHour);
    }
    if (stages.isPresent()) {
      return built(feedHour, mixHour, stages.get());
    }
    return inColdHours.isPresent()
        ? fromCold(mixHour)
        : times.choice(feedHour, mixHour, ratio.flourPerStarter());
  }
}
