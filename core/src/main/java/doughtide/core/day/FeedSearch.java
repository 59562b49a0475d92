package doughtide.core.day;

import doughtide.core.dough.Starter;
import doughtide.core.feeding.FeedChoice;
import doughtide.core.feeding.FeedRatio;
import doughtide.core.feeding.Feeding;
import doughtide.core.quantity.Share;
import doughtide.core.rise.DoughTemperature;
import doughtide.core.rise.RiseCurve;
import doughtide.core.rise.RiseModel;
import doughtide.core.rise.Unknowns;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.ConcurrentHashMap;

/** Finds when and how to feed so that the starter is ripe at mixing. */
final class FeedSearch {
  private static final List<Double> PARTS = List.of(1.0, 2.0, 3.0, 4.0, 5.0, 7.0, 10.0, 15.0, 20.0);
  private static final double SOONEST_HOURS = 2.5;
  private static final double LATEST_HOURS = 26;
  private static final double RUN_HOURS = 60;
  private static final double GRID_HOURS = 0.5;
  private static final double WELL_RIPE_HOURS = 0.25;

  private final DayModel model;
  private final Map<Long, RipeTime> times = new ConcurrentHashMap<>();
  private final Map<Double, RiseModel> models = new ConcurrentHashMap<>();

  /** Hours from feeding: ripe from, beginning to fall, fallen by 5 %. */
  record RipeTime(double ripe, double falling, double fallen) {}

  FeedSearch(DayModel model) {
    this.model = model;
  }

  /** The feeding with most room on both sides of the mixing hour. */
  Optional<FeedChoice> best(double mixHour) {
    Optional<FeedChoice> shared = shared(mixHour);
    if (shared.isPresent()) {
      return shared;
    }
    List<FeedChoice> all = new ArrayList<>();
    for (BenchInterval at : model.day().bench().intervals()) {
      double last = Math.min(at.toHour() - Work.FEED_HOURS, mixHour - SOONEST_HOURS);
      double from = Math.max(at.fromHour(), mixHour - LATEST_HOURS);
      for (int i = 0; from + i * GRID_HOURS <= last + 1e-9; i++) {
        addBestRatio(all, from + i * GRID_HOURS, mixHour);
      }
    }
    return all.stream()
        .filter(choice -> choice.slackHours() > 0)
        .max(Comparator.comparingDouble(FeedChoice::slackHours));
  }

  private Optional<FeedChoice> shared(double mixHour) {
    return sharedWith(mixHour, model.day().otherFeedings());
  }

  /** A feeding that is done for another dough anyway, if its starter is well ripe then. */
  Optional<FeedChoice> sharedWith(double mixHour, List<FeedChoice> others) {
    return others.stream()
        .map(other -> at(other.feedHour(), mixHour, other.ratio()))
        .filter(choice -> choice.slackHours() > WELL_RIPE_HOURS)
        .max(Comparator.comparingDouble(FeedChoice::slackHours));
  }

  /** A feeding at an hour with a ratio. */
  FeedChoice at(double feedHour, double mixHour, FeedRatio ratio) {
    return choice(feedHour, mixHour, ratio.flourPerStarter());
  }

  private void addBestRatio(List<FeedChoice> all, double feedHour, double mixHour) {
    PARTS.stream()
        .map(parts -> choice(feedHour, mixHour, parts))
        .max(Comparator.comparingDouble(FeedChoice::slackHours))
        .ifPresent(all::add);
  }

  private FeedChoice choice(double feedHour, double mixHour, double parts) {
    RipeTime time = ripeTime(feedHour, parts);
    return new FeedChoice(feedHour, mixHour, ratio(parts), time.ripe(), time.falling());
  }

  private FeedRatio ratio(double parts) {
    return FeedRatio.oneTo(parts, starter().hydration());
  }

  private Starter starter() {
    return model.day().dough().starter();
  }

  private RipeTime ripeTime(double feedHour, double parts) {
    long slot = model.steadyKitchen() ? 0 : Math.round(feedHour * 4);
    long key = slot * 1000 + Math.round(parts);
    return times.computeIfAbsent(
        key, k -> ripeTime(parts, feedHour, model.day().forecaster().middle()));
  }

  private RipeTime ripeTime(double parts, double feedHour, Unknowns unknowns) {
    DoughTemperature temperature = DoughTemperature.following(model.kitchenFrom(feedHour));
    RiseCurve curve = jar(parts).with(temperature).with(unknowns).runFast(RUN_HOURS);
    double never = RUN_HOURS * 2;
    return new RipeTime(
        curve.hoursToRipe().orElse(never),
        curve.hoursToPeak().orElse(never),
        curve.hoursToFallen().orElse(never));
  }

  private RiseModel jar(double parts) {
    return models.computeIfAbsent(
        parts,
        p ->
            model
                .day()
                .forecaster()
                .typical(feeding(p).formula(), DoughTemperature.following(model.kitchenFrom(0))));
  }

  private Feeding feeding(double parts) {
    return new Feeding(
        starter(),
        ratio(parts),
        starter().flour(),
        Share.ofPercent(0),
        model.day().dough().altitude());
  }

  /** Ripe times of many members, in their order. */
  List<RipeTime> members(FeedChoice choice, List<Unknowns> members) {
    double parts = choice.ratio().flourPerStarter();
    return members.stream().map(u -> ripeTime(parts, choice.feedHour(), u)).toList();
  }
}
