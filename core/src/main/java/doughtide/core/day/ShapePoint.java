package doughtide.core.day;

import doughtide.core.forecast.RiseForecast;
import doughtide.core.loaf.LoafScores;
import doughtide.core.loaf.LoafSettings;
import doughtide.core.loaf.ShapeForecaster;
import doughtide.core.loaf.ShapeHour;
import doughtide.core.loaf.StrengthPlan;
import doughtide.core.quantity.Rise;
import doughtide.core.rise.RiseCurve;
import doughtide.core.rise.Unknowns;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.OptionalDouble;
import java.util.concurrent.ConcurrentHashMap;

/**
 * When a draft is best shaped, and what the jar shows then: quickly by a few members whose runs are
 * kept, or as the forecaster of shape points finds it, which is printed.
 */
final class ShapePoint {
  /**
   * A bulk is followed for so much longer than the draft's: past the middle of all doughs, which is
   * printed; slower ones count as slower.
   */
  private static final double LONGEST_BULK_TIMES = 1.5;

  private static final double LAST_BULK_HOURS = 3;
  private static final double LONGEST_RUN_HOURS = 48;
  private static final double FOLLOWED_STEP_HOURS = 6;

  /** Moves the shape point of the usual members by no more than 0.1 point of rise (measured). */
  private static final LoafSettings PRINTED =
      LoafSettings.SEARCH.withMembers(DoughCandidates.POINT_MEMBERS);

  private final DayModel model;
  private final Map<Loaf, ShapeForecaster.Point> points = new ConcurrentHashMap<>();
  private final Map<Jar, Double> shown = new ConcurrentHashMap<>(); // per cent

  /**
   * What its point hangs on. Many drafts have the same: moved by minutes in a room of one
   * temperature, or baked on other days that differ in their hours at the bench alone.
   *
   * @param route at any hour where the room keeps one temperature
   * @param hours to the oven from mixing after a night in the cold, else from the basket, to the
   *     second
   * @param room temperature around a proof in the room, °C
   * @param followed how long its bulk is followed, hours
   */
  private record Loaf(
      BakeRoute route,
      ProofKind proof,
      double hours,
      double room,
      StrengthPlan folds,
      double followed) {}

  /** A jar that is looked at some hours after mixing, to the second. */
  private record Jar(BakeRoute route, double hours) {}

  ShapePoint(DayModel model) {
    this.model = model;
  }

  /** The draft at its shape point by some members, where there is one. */
  Draft quickly(Draft draft, List<Unknowns> members) {
    double[] hours = new double[members.size()];
    for (int i = 0; i < hours.length; i++) {
      hours[i] = bulkEnd(draft, members.get(i), i);
    }
    double likely = median(hours);
    return likely > 0 && Double.isFinite(likely)
        ? draft.shapedAt(likely, shown(draft, members, likely), day().restHours())
        : draft;
  }

  /**
   * When bulk fermentation of a member should end; 0 where that is too late, infinity for never.
   */
  private double bulkEnd(Draft draft, Unknowns unknowns, int member) {
    double rest = day().restHours();
    RiseCurve curve = run(draft, unknowns);
    DayModel.BulkRun bulk = new DayModel.BulkRun(curve, LoafScores.of(member), draft.strength());
    boolean cold = draft.proof() == ProofKind.COLD;
    double proof = draft.ovenHours() - draft.shapedHours();
    double over = curve.hoursToOver().orElse(curve.endHours());
    double high = cold ? Math.min(over, draft.ovenHours() - PlanWeigher.LEAST_PROOF_HOURS) : over;
    OptionalDouble found =
        ShapeHour.find(
            x ->
                model.riseAtOven(
                    bulk, draft.mixHour(), x, draft.proof(), cold ? draft.ovenHours() : x + proof),
            curve,
            day().target().fraction(),
            rest
                + draft.route().coldTo().stream()
                    .map(to -> to - draft.mixHour())
                    .findFirst()
                    .orElse(0),
            high,
            draft.shapedHours());
    return found.isPresent() ? found.getAsDouble() - rest : Double.POSITIVE_INFINITY;
  }

  private RiseCurve run(Draft draft, Unknowns unknowns) {
    return model.run(draft.route(), unknowns, LONGEST_RUN_HOURS);
  }

  private Rise shown(Draft draft, List<Unknowns> members, double hours) {
    return new Rise(
        median(
            members.stream()
                .map(each -> run(draft, each))
                .mapToDouble(curve -> curve.riseAt(Math.min(hours, curve.endHours())).fraction())
                .toArray()));
  }

  /** The middle of some numbers, infinite where half of them are. */
  static double median(double[] values) {
    double[] sorted = values.clone();
    Arrays.sort(sorted);
    return (sorted[(sorted.length - 1) / 2] + sorted[sorted.length / 2]) / 2;
  }

  /** The draft at the shape point of its dough as it is printed, where there is one. */
  Draft printed(Draft draft) {
    ShapeForecaster.Point point = points.computeIfAbsent(loaf(draft), each -> point(draft));
    return point.hours().likely().isEmpty()
        ? draft
        : draft.shapedAt(
            point.hours().likely().getAsDouble(),
            Rise.ofPercent(point.rise().likely().orElseThrow()),
            day().restHours());
  }

  private Loaf loaf(Draft draft) {
    boolean cold = draft.proof() == ProofKind.COLD;
    double hours = cold ? draft.ovenHours() : draft.ovenHours() - draft.shapedHours();
    return new Loaf(
        model.atAnyHour(draft.route()),
        draft.proof(),
        Math.rint(hours * 3600) / 3600,
        cold ? 0 : day().room().celsius(draft.basketHour()),
        draft.strength(),
        followedHours(draft));
  }

  private ShapeForecaster.Point point(Draft draft) {
    return ShapeForecaster.of(bulk(draft.route(), followedHours(draft)), draft.proof(day()))
        .folded(draft.strength())
        .with(PRINTED)
        .point();
  }

  /** The draft with the rise that the jar of the likely dough shows when it is shaped. */
  Draft atClock(Draft draft) {
    double bulkEnd = draft.shapedHours() - day().restHours();
    double percent =
        shown.computeIfAbsent(
            new Jar(model.atAnyHour(draft.route()), Math.rint(bulkEnd * 3600) / 3600),
            jar -> bulk(draft.route(), steps(jar.hours())).bandAt(bulkEnd).riseLikelyPercent());
    return draft.shapedAt(bulkEnd, Rise.ofPercent(percent), day().restHours());
  }

  private RiseForecast bulk(BakeRoute route, double hours) {
    return model
        .printing()
        .keepingCurves()
        .forecast(day().dough(route.starterPercent()), model.temperature(route), hours);
  }

  private static double followedHours(Draft draft) {
    double longest = draft.shapedHours() * LONGEST_BULK_TIMES + LAST_BULK_HOURS;
    return steps(draft.proof() == ProofKind.COLD ? Math.min(longest, draft.ovenHours()) : longest);
  }

  /** Longer by less than a step, so that doughs of nearly the same hours are followed alike. */
  private static double steps(double hours) {
    return FOLLOWED_STEP_HOURS * Math.ceil(hours / FOLLOWED_STEP_HOURS);
  }

  private BakeDay day() {
    return model.day();
  }
}
