package doughtide.core.day;

import doughtide.core.loaf.Proof;
import doughtide.core.loaf.ShapeHour;
import doughtide.core.quantity.Rise;
import doughtide.core.rise.RiseCurve;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.OptionalDouble;
import java.util.concurrent.ConcurrentHashMap;
import java.util.function.DoubleUnaryOperator;

/**
 * The likely dough of a route, and when it must be shaped so that its loaf is right at the oven.
 * Hours count from mixing; to the basket, that is to the end of shaping. What has been found once
 * is kept.
 */
final class LikelyDough {
  private static final double LONGEST_HOURS = 30;
  private static final double LEAST_RISE_PART = 0.2; // of the target, when shaped
  private static final double MOST_RISE_PART = 1.5; // shaping takes some of it out again
  private static final double SLOPE_HOURS = 0.25;

  private final DayModel model;
  private final BakeRoute route;
  private final RiseCurve curve;
  private final double low;
  private final double high;
  private final OptionalDouble lastFold;
  private final Map<Double, OptionalDouble> forCold = new ConcurrentHashMap<>();
  private final List<OptionalDouble> forFullHours = new ArrayList<>(); // to the oven, ascending
  private final Map<Double, OptionalDouble> forRoom = new ConcurrentHashMap<>();

  LikelyDough(DayModel model, BakeRoute route) {
    this.model = model;
    this.route = route;
    this.curve = model.run(route, model.middle(), LONGEST_HOURS);
    double rest = model.day().restHours();
    // Where many loaves are shaped the dough goes on rising meanwhile.
    double part = LEAST_RISE_PART * Math.min(1, Proof.USUAL_REST_HOURS / rest);
    Rise target = model.day().target();
    Rise least = new Rise(target.fraction() * part);
    double early = curve.hoursToRise(least).orElse(Double.POSITIVE_INFINITY);
    Rise most = new Rise(target.fraction() * MOST_RISE_PART);
    double full = curve.hoursToRise(most).orElse(Double.POSITIVE_INFINITY);
    this.low = Math.max(early, route.earliestShapeHours()) + rest;
    this.high = Math.min(full + rest, Math.min(LONGEST_HOURS, curve.endHours()) - SLOPE_HOURS);
    this.lastFold = curve.hoursToRise(FittingFolds.LAST_RISE);
  }

  /** Earliest hour in the basket. */
  double low() {
    return low;
  }

  /** Latest hour in the basket; before {@link #low} where the dough is never fit for shaping. */
  double high() {
    return high;
  }

  /** Hour by which the last fold must be done, if the dough rises as far. */
  OptionalDouble lastFold() {
    return lastFold;
  }

  /** Rise in its tub. */
  double riseAt(double hours) {
    return curve.riseAt(hours).fraction();
  }

  /** How fast it rises in its tub, per hour. */
  double risePerHour(double hours) {
    double before = Math.max(hours - SLOPE_HOURS, 0);
    double after = Math.min(hours + SLOPE_HOURS, curve.endHours());
    return Math.max((riseAt(after) - riseAt(before)) / (after - before), 0.01);
  }

  /**
   * When it is shaped for a proof in the cold, if that can be.
   *
   * @param ovenHours when it is baked
   */
  OptionalDouble shapedForCold(double ovenHours) {
    int before = (int) Math.floor(ovenHours);
    double part = ovenHours - before;
    // A longer night moves the hour smoothly, so that full hours are enough.
    OptionalDouble here = forFullHours(before);
    OptionalDouble next = part < 1e-6 ? here : forFullHours(before + 1);
    if (here.isPresent() && next.isPresent()) {
      return OptionalDouble.of(here.getAsDouble() * (1 - part) + next.getAsDouble() * part);
    }
    return forCold.computeIfAbsent(
        Math.rint(ovenHours * 3600) / 3600, hours -> findForCold(hours, OptionalDouble.empty()));
  }

  /** Shorter nights are looked at first, because each gives the next a good guess. */
  private synchronized OptionalDouble forFullHours(int ovenHours) {
    int first = (int) Math.ceil(low + DraftSearch.SHORTEST_COLD_HOURS);
    while (first + forFullHours.size() <= ovenHours) {
      forFullHours.add(
          isTooLong(forFullHours)
              ? OptionalDouble.empty()
              : findForCold(first + forFullHours.size(), carriedOn(forFullHours)));
    }
    return ovenHours < first ? OptionalDouble.empty() : forFullHours.get(ovenHours - first);
  }

  /** A night that is too long though a shorter one was not: so is each that is longer. */
  private static boolean isTooLong(List<OptionalDouble> found) {
    return !found.isEmpty()
        && found.get(found.size() - 1).isEmpty()
        && found.stream().anyMatch(OptionalDouble::isPresent);
  }

  /** What comes next in a line through the last two. */
  private static OptionalDouble carriedOn(List<OptionalDouble> found) {
    int last = found.size() - 1;
    if (last < 0 || found.get(last).isEmpty()) {
      return OptionalDouble.empty();
    }
    double here = found.get(last).getAsDouble();
    double before = last == 0 ? here : found.get(last - 1).orElse(here);
    return OptionalDouble.of(2 * here - before);
  }

  /** Without a guess the latest hour is tried first: most of such nights are too short for it. */
  private OptionalDouble findForCold(double ovenHours, OptionalDouble guess) {
    double from = Math.max(low, ovenHours - DraftSearch.LONGEST_COLD_HOURS);
    double to = Math.min(high, ovenHours - DraftSearch.SHORTEST_COLD_HOURS);
    return find(from, to, guess.orElse(to), ProofKind.COLD, x -> ovenHours);
  }

  /** When it is shaped for a proof of so many hours in the room, if that can be. */
  OptionalDouble shapedForRoom(double proofHours) {
    return forRoom.computeIfAbsent(
        proofHours, proof -> find(low, high, (low + high) / 2, ProofKind.ROOM, x -> x + proof));
  }

  private OptionalDouble find(
      double from, double to, double guess, ProofKind proof, DoubleUnaryOperator oven) {
    if (!(to > from)) {
      return OptionalDouble.empty();
    }
    DayModel.BulkRun bulk =
        new DayModel.BulkRun(curve, model.middleScores(), model.day().strength());
    OptionalDouble found =
        ShapeHour.find(
            x -> model.riseAtOven(bulk, route.mixHour(), x, proof, oven.applyAsDouble(x)),
            curve,
            model.day().target().fraction(),
            from,
            to,
            guess);
    return found.isPresent() && found.getAsDouble() > from ? found : OptionalDouble.empty();
  }
}
