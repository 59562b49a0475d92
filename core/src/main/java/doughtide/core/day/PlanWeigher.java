package doughtide.core.day;

import doughtide.core.day.BakeStep.Kind;
import doughtide.core.forecast.TimeWindow;
import doughtide.core.loaf.LoafLimits;
import doughtide.core.loaf.LoafScores;
import doughtide.core.quantity.Rise;
import doughtide.core.rise.PieceCurve;
import doughtide.core.rise.RiseCurve;
import doughtide.core.rise.Unknowns;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.function.Predicate;
import java.util.function.ToDoubleFunction;
import java.util.stream.IntStream;
import org.jspecify.annotations.Nullable;

/**
 * Weighs a draft with members of the belief: how many doughs come out right, and how much later
 * each step may be while all others keep to the clock. A margin is found by replaying the members
 * with the one step late; it never goes past the next step that needs it.
 */
final class PlanWeigher {
  /** From the basket to the oven at least: a loaf that is just shaped is not baked. */
  static final double LEAST_PROOF_HOURS = 0.25;

  private final DayModel model;
  private final BakeDay day;
  private final List<Unknowns> members;
  private final List<Integer> numbers; // of the members
  private final SearchControl control;

  /**
   * @param members what weighs
   * @param control the threads that follow them
   */
  PlanWeigher(DayModel model, BakeDay day, List<Unknowns> members, SearchControl control) {
    this.model = model;
    this.day = day;
    this.members = members;
    this.numbers = IntStream.range(0, members.size()).boxed().toList();
    this.control = control;
  }

  /** All of it; margins only where enough doughs come out right. */
  BakePlan.Weighed weigh(Draft draft) {
    return weighing(draft).weighed();
  }

  /** How the doughs come out; the margins as far as they are asked for. */
  Weighing weighing(Draft draft) {
    Replay replay = new Replay(draft);
    return new Weighing(replay, replay.outcomes(StepMargin.LONGEST_HOURS));
  }

  /** A draft that is weighed: its least margin, which parts it from others, costs less than all. */
  final class Weighing {
    private final double goodShare;
    private final TimeWindow shape;
    private final Optional<Margins> margins; // none where too few doughs come out right
    private volatile double leastMargin = Double.NaN;
    private volatile BakePlan.@Nullable Weighed weighed;

    private Weighing(Replay replay, List<Outcome> outcomes) {
      this.goodShare = share(outcomes, each -> each.isGood(0));
      this.shape = window(outcomes, Outcome::bulkEndByJar);
      this.margins =
          goodShare < DayPlanner.LEAST_GOOD_SHARE
              ? Optional.empty()
              : Optional.of(new Margins(replay, outcomes));
    }

    /** Share of doughs that come out right if all goes by the plan. */
    double goodShare() {
      return goodShare;
    }

    /** When the jar shows the moment. */
    TimeWindow shape() {
      return shape;
    }

    /** The least of the margins of {@link #weighed}, hours. */
    double leastMarginHours() {
      if (Double.isNaN(leastMargin)) {
        leastMargin = margins.map(Margins::least).orElse(0.0);
      }
      return leastMargin;
    }

    /** With all margins. */
    BakePlan.Weighed weighed() {
      BakePlan.Weighed all = weighed;
      if (all == null) {
        all = new BakePlan.Weighed(goodShare, shape, margins.map(Margins::all).orElse(List.of()));
        weighed = all;
      }
      return all;
    }
  }

  /** Whether at least some share of doughs comes out right; no more are run than tell it. */
  boolean isGood(Draft draft, double share) {
    Replay replay = new Replay(draft);
    int least = (int) Math.ceil(share * members.size() - 1e-9);
    int good = 0;
    for (int i = 0; i < members.size() && good < least; i++) {
      if (good + members.size() - i < least) {
        return false;
      }
      good += replay.outcome(i, 0).isGood(0) ? 1 : 0;
    }
    return good >= least;
  }

  /** Share of doughs that come out right if all goes by the plan. */
  double goodShare(Draft draft) {
    return share(new Replay(draft).outcomes(0), each -> each.isGood(0));
  }

  private static TimeWindow window(List<Outcome> outcomes, ToDoubleFunction<Outcome> hour) {
    return TimeWindow.of(outcomes.stream().mapToDouble(hour).toArray());
  }

  private static double share(List<Outcome> outcomes, Predicate<Outcome> condition) {
    return (double) outcomes.stream().filter(condition).count() / outcomes.size();
  }

  /**
   * What becomes of one member; hours on the axis.
   *
   * @param bulkEndByJar when its jar is there
   * @param bulkEnd when its bulk fermentation ends, in the hours at the bench
   * @param oven when its first batch is baked
   * @param lastOven when its last batch is baked
   * @param from when it becomes good to bake
   * @param until until when it is right
   */
  private record Outcome(
      double bulkEndByJar,
      double bulkEnd,
      double oven,
      double lastOven,
      double from,
      double until) {
    /** Whether all batches are good if the oven is late. */
    boolean isGood(double late) {
      return from <= oven + late && until >= lastOven + late;
    }
  }

  /** One draft gone through by the members. */
  private final class Replay {
    private final Draft draft;
    private final BenchInterval shaping;
    private final double firstOven;
    private final double lastOven;
    private final double laterBatches;

    Replay(Draft draft) {
      this.draft = draft;
      this.shaping =
          day.bench()
              .around(draft.basketHour() - day.restHours(), draft.basketHour())
              .orElseThrow();
      double busy = Draft.ovenBusyHours(day);
      this.laterBatches = busy - day.oven().bakeHours() - HandsOnTime.LOAD_HOURS;
      BenchInterval baking =
          day.bench()
              .around(draft.ovenHour(), draft.ovenHour() + HandsOnTime.LOAD_HOURS)
              .orElseThrow();
      double bench = baking.toHour() - busy - HandsOnTime.UNLOAD_HOURS;
      double ready = day.readyHour() - day.oven().coolHours() - busy;
      boolean cold = draft.proof() == ProofKind.COLD;
      double first = baking.fromHour() + day.oven().preheatHours();
      this.firstOven = cold ? draft.ovenHour() : Math.min(first, draft.ovenHour());
      this.lastOven = cold ? draft.ovenHour() : Math.max(Math.min(bench, ready), draft.ovenHour());
    }

    List<Outcome> outcomes(double followHours) {
      return control.mapLarge(numbers, member -> outcome(member, followHours));
    }

    /** If all goes by the plan. */
    private Outcome outcome(int member, double followHours) {
      RiseCurve curve = curve(draft.route(), member);
      double bulkEnd = bulkEnd(curve, draft.route(), lastOven);
      double basket = bulkEnd + day.restHours();
      double oven = ovenFor(basket);
      PieceCurve piece =
          piece(curve, draft.route(), member, basket, oven + laterBatches + followHours);
      LoafLimits right = LoafLimits.right(day.target());
      double mix = draft.mixHour();
      return new Outcome(
          mix + jarHours(curve),
          bulkEnd,
          oven,
          oven + laterBatches,
          mix + right.from(piece).orElse(Double.POSITIVE_INFINITY),
          mix + right.until(piece).orElse(piece.endHours()));
    }

    /**
     * Whether a member comes out right where something is late and the oven keeps to its clock.
     *
     * @param route with what is late before the loaf is shaped
     * @param shapeLate how much later it is shaped than it would be
     */
    boolean isGood(int member, Outcome planned, BakeRoute route, double shapeLate) {
      RiseCurve curve = curve(route, member);
      double basket = bulkEnd(curve, route, planned.oven()) + shapeLate + day.restHours();
      if (basket > planned.oven() - LEAST_PROOF_HOURS + 1e-9) {
        return false;
      }
      PieceCurve piece = piece(curve, route, member, basket, planned.lastOven());
      LoafLimits right = LoafLimits.right(day.target());
      double from = right.from(piece).orElse(Double.POSITIVE_INFINITY);
      return route.mixHour() + from <= planned.oven() && right.until(piece).isEmpty();
    }

    private RiseCurve curve(BakeRoute route, int member) {
      return model.run(route, members.get(member), lastOven - route.mixHour() + 1);
    }

    private double jarHours(RiseCurve curve) {
      return curve.hoursToRise(new Rise(draft.shapeRise())).orElse(curve.endHours());
    }

    /** When the jar is there, as near to that as the hours at the bench and the oven allow. */
    private double bulkEnd(RiseCurve curve, BakeRoute route, double oven) {
      double rest = day.restHours();
      double afterCold = route.coldTo().orElse(Double.NEGATIVE_INFINITY) + 0.25;
      double from = Math.max(Math.max(shaping.fromHour(), afterCold), route.mixHour());
      double over = route.mixHour() + curve.hoursToOver().orElse(curve.endHours());
      double beforeOven = oven - LEAST_PROOF_HOURS;
      double to = Math.min(Math.min(shaping.toHour(), beforeOven), over) - rest;
      return Math.max(from, Math.min(route.mixHour() + jarHours(curve), to));
    }

    /**
     * By the clock after a night in the cold; after the planned length of a proof in the room, as
     * far as the hours at the bench allow.
     */
    private double ovenFor(double basket) {
      double planned = basket + draft.ovenHour() - draft.basketHour();
      return draft.proof() == ProofKind.COLD
          ? draft.ovenHour()
          : Math.min(Math.max(planned, firstOven), lastOven);
    }

    private PieceCurve piece(
        RiseCurve curve, BakeRoute route, int member, double basket, double until) {
      DayModel.BulkRun bulk = new DayModel.BulkRun(curve, LoafScores.of(member), draft.strength());
      double shaped = Math.min(basket - route.mixHour(), curve.endHours());
      return model.loaf(bulk, shaped, draft.proof(), basket, until - basket);
    }
  }

  /** How many doughs come out right when a step is late; counting may end when there are enough. */
  private interface Counted {
    int when(double late, int enough);
  }

  /**
   * A step whose margin is looked for.
   *
   * @param most hours that the bench, or the next step that needs it, leaves
   * @param limit which of these
   * @param least how many doughs must come out right
   * @param good how many do
   */
  private record Late(Kind kind, double most, StepMargin.Limit limit, int least, Counted good) {
    boolean needsRuns() {
      return kind == Kind.MIX || kind == Kind.SHAPE;
    }

    private boolean holds(double late) {
      return good.when(late, least) >= least;
    }

    StepMargin margin() {
      return most == 0 || holds(most)
          ? new StepMargin(kind, most, limit)
          : new StepMargin(kind, StepMargin.longest(most, this::holds), StepMargin.Limit.DOUGH);
    }

    /** The margin, or some hours, no more than the most, where it is no shorter than they. */
    double marginUpTo(double hours) {
      return hours == 0 || holds(most)
          ? hours
          : Math.min(hours, StepMargin.longest(most, hours, this::holds));
    }
  }

  /** How much later each step that matters to the dough may be. */
  private final class Margins {
    private final Replay replay;
    private final Draft draft;
    private final List<Outcome> outcomes;
    private final List<BakeStep> steps;
    private final int[] likeliest; // members that are right by the plan come first

    Margins(Replay replay, List<Outcome> outcomes) {
      this.replay = replay;
      this.draft = replay.draft;
      this.outcomes = outcomes;
      this.steps = draft.steps(day);
      this.likeliest =
          numbers.stream()
              .sorted(Comparator.comparing(i -> !outcomes.get(i).isGood(0)))
              .mapToInt(Integer::intValue)
              .toArray();
    }

    List<StepMargin> all() {
      List<StepMargin> margins = new ArrayList<>();
      for (StepMargin margin : control.mapLarge(late(), Late::margin)) {
        margins.add(margin);
        if (margin.kind() == Kind.SHAPE && draft.proof() == ProofKind.COLD) {
          margins.add(intoCold(margin));
        }
      }
      return margins;
    }

    /** Until it is in the cold the loaf goes on as it did in the tub. */
    private StepMargin intoCold(StepMargin shaped) {
      double bench = slackIntoCold();
      return bench < shaped.hours()
          ? new StepMargin(Kind.LOAVES_INTO_COLD, bench, StepMargin.Limit.BENCH)
          : new StepMargin(Kind.LOAVES_INTO_COLD, shaped.hours(), shaped.limit());
    }

    private double slackIntoCold() {
      BakeStep cold = step(Kind.LOAVES_INTO_COLD);
      return day.bench().slackHours(cold.fromHour(), cold.toHour());
    }

    /** No step is followed further than is known of another. */
    double least() {
      List<Late> late = late();
      double least = late.stream().mapToDouble(Late::most).min().orElse(0);
      if (draft.proof() == ProofKind.COLD) {
        least = Math.min(least, slackIntoCold());
      }
      late.sort(Comparator.comparing(Late::needsRuns));
      for (Late each : late) {
        least = each.marginUpTo(least);
      }
      return least;
    }

    private List<Late> late() {
      int all = members.size();
      List<Late> late = new ArrayList<>();
      BakeStep mix = step(Kind.MIX);
      BakeStep shape = step(Kind.SHAPE);
      BakeStep bake = step(Kind.BAKE);
      if (day.needsFeeding() && day.stages().isEmpty()) {
        late.add(late(step(Kind.FEED), mix.fromHour(), fedLate(0, all), this::fedLate));
      }
      BakeRoute route = draft.route();
      double afterMixing = route.coldFrom().orElse(shape.fromHour());
      double lastFold =
          steps.stream()
              .filter(Margins::isFold)
              .mapToDouble(BakeStep::toHour)
              .max()
              .orElse(mix.toHour());
      int inTime = inTime(route);
      late.add(
          late(
              mix,
              afterMixing - (lastFold - mix.toHour()),
              inTime,
              (by, enough) -> replayed(route.withMixHour(route.mixHour() + by), 0, enough)));
      late.add(
          late(
              shape,
              bake.fromHour() - LEAST_PROOF_HOURS,
              inTime,
              (by, enough) -> replayed(route, by, enough)));
      double ready = draft.ovenHour() + Draft.ovenBusyHours(day) + day.oven().coolHours();
      late.add(
          late(
              bake,
              bake.toHour() + Math.max(0, day.readyHour() - ready),
              bakedLate(0),
              (by, enough) -> bakedLate(by)));
      return late;
    }

    private int bakedLate(double late) {
      return (int) outcomes.stream().filter(each -> each.isGood(late)).count();
    }

    private static boolean isFold(BakeStep step) {
      return step.kind() == Kind.FOLD;
    }

    private BakeStep step(Kind kind) {
      return steps.stream().filter(each -> each.kind() == kind).findFirst().orElseThrow();
    }

    /**
     * A step whose margin is looked for.
     *
     * @param next when the next thing that needs it begins
     * @param inTime how many doughs come out right when it is not late
     * @param good number of doughs, or of those looked at until it is clear whether they are
     *     enough, that come out right when it is so much late
     */
    private Late late(BakeStep step, double next, int inTime, Counted good) {
      double bench = benchSlack(step.kind());
      double most =
          Math.max(0, Math.min(Math.min(bench, next - step.toHour()), StepMargin.LONGEST_HOURS));
      StepMargin.Limit limit =
          next - step.toHour() < bench ? StepMargin.Limit.NEXT_STEP : StepMargin.Limit.BENCH;
      int least = (int) Math.ceil(inTime - StepMargin.SPOILED_SHARE * members.size() - 1e-9);
      return new Late(step.kind(), most, limit, least, good);
    }

    /** Folds move with mixing, and what is taken out of the oven with baking. */
    private double benchSlack(Kind kind) {
      return steps.stream()
          .filter(
              step ->
                  step.kind() == kind
                      || kind == Kind.MIX && step.kind() == Kind.FOLD
                      || kind == Kind.BAKE && step.kind() == Kind.COOL)
          .mapToDouble(step -> day.bench().slackHours(step.fromHour(), step.toHour()))
          .min()
          .orElse(0);
    }

    /** How many doughs come out right when nothing is late and the oven keeps to its clock. */
    private int inTime(BakeRoute route) {
      return (int)
          numbers.stream().filter(i -> replay.isGood(i, outcomes.get(i), route, 0)).count();
    }

    private int replayed(BakeRoute route, double shapeLate, int enough) {
      int good = 0;
      for (int i = 0; i < likeliest.length && good < enough; i++) {
        if (good + likeliest.length - i < enough) {
          break;
        }
        int member = likeliest[i];
        good += replay.isGood(member, outcomes.get(member), route, shapeLate) ? 1 : 0;
      }
      return good;
    }

    /** Starters that are ripe at mixing. */
    private int fedLate(double late, int enough) {
      double age = draft.feed().ageHours() - late;
      return (int)
          model.ripeTimes().members(draft.feed(), members).stream()
              .filter(time -> age >= time.ripe() && age <= time.fallen())
              .limit(enough)
              .count();
    }
  }
}
