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
import java.util.List;
import java.util.Map;
import java.util.concurrent.ConcurrentHashMap;

/** When a starter is ripe after a feeding; what has been run once is kept. */
final class RipeTimes {
  private static final double RUN_HOURS = 60;
  private static final double NEVER_HOURS = 2 * RUN_HOURS;

  /** A feed for a few hours, one for a night and a thin one for a day. */
  private static final List<Double> LIKELY_PARTS = List.of(2.0, 10.0, 50.0);

  private final DayModel model;
  private final Map<Jar, RipeTime> times;
  private final Map<Double, RiseModel> models;

  /** Hours from feeding: ripe from, beginning to fall, fallen by 5 %. */
  record RipeTime(double ripe, double falling, double fallen) {
    /** Until when it is used: what is long on its way may be a little past its best. */
    double until(double parts) {
      return parts > FeedSearch.MOST_USUAL_PARTS ? fallen : falling;
    }
  }

  /** A jar that is fed with so many parts of flour, in a quarter of an hour of the axis. */
  private record Jar(double parts, long quarter, Unknowns unknowns) {}

  RipeTimes(DayModel model) {
    this.model = model;
    this.times = new ConcurrentHashMap<>();
    this.models = new ConcurrentHashMap<>();
  }

  /** Of the same starter in another dough: what has been run for one is known to both. */
  RipeTimes(DayModel model, RipeTimes other) {
    this.model = model;
    this.times = other.times;
    this.models = other.models;
  }

  /** Whether the starters of two doughs are ripe at the same hours. */
  static boolean areThoseOf(BakeDay day, BakeDay other) {
    return day.dough().starter().equals(other.dough().starter())
        && day.dough().altitude().equals(other.dough().altitude())
        && day.room().equals(other.room())
        && day.forecaster().parameters().equals(other.forecaster().parameters());
  }

  /**
   * The starter that stands for all: it is ripe nearest to the median hours after three feeds. It
   * is seldom the starter of the dough that stands for all.
   */
  Unknowns likely(List<Unknowns> members) {
    double hour = model.day().bench().firstHour();
    List<double[]> logs =
        members.stream()
            .map(
                each ->
                    LIKELY_PARTS.stream()
                        .mapToDouble(parts -> LikelyMember.log(time(parts, hour, each).ripe()))
                        .toArray())
            .toList();
    return members.get(LikelyMember.nearestMedians(logs));
  }

  /** A feeding and when it makes the likely starter ripe. */
  FeedChoice choice(double feedHour, double mixHour, double parts) {
    RipeTime time = time(parts, feedHour, model.likelyStarter());
    return new FeedChoice(feedHour, mixHour, ratio(parts), time.ripe(), time.until(parts));
  }

  /** Ripe times of many members, in their order. */
  List<RipeTime> members(FeedChoice choice, List<Unknowns> members) {
    double parts = choice.ratio().flourPerStarter();
    return members.stream().map(each -> time(parts, choice.feedHour(), each)).toList();
  }

  private RipeTime time(double parts, double feedHour, Unknowns unknowns) {
    long quarter = model.steadyRoom() ? 0 : Math.round(feedHour * 4);
    return times.computeIfAbsent(new Jar(parts, quarter, unknowns), this::run);
  }

  private RipeTime run(Jar fed) {
    DoughTemperature temperature = DoughTemperature.following(model.roomFrom(fed.quarter() / 4.0));
    RiseCurve curve = jar(fed.parts()).with(temperature).with(fed.unknowns()).runFast(RUN_HOURS);
    return new RipeTime(
        curve.hoursToRipe().orElse(NEVER_HOURS),
        curve.hoursToPeak().orElse(NEVER_HOURS),
        curve.hoursToFallen().orElse(NEVER_HOURS));
  }

  private RiseModel jar(double parts) {
    return models.computeIfAbsent(
        parts,
        p ->
            model
                .day()
                .forecaster()
                .typical(feeding(p).formula(), DoughTemperature.following(model.roomFrom(0))));
  }

  private Feeding feeding(double parts) {
    return new Feeding(
        starter(),
        ratio(parts),
        starter().flour(),
        Share.ofPercent(0),
        model.day().dough().altitude());
  }

  private FeedRatio ratio(double parts) {
    return FeedRatio.oneTo(parts, starter().hydration());
  }

  private Starter starter() {
    return model.day().dough().starter();
  }
}
