package doughtide.core.day.again;

import doughtide.core.Internal;
import doughtide.core.day.BakeDay;
import doughtide.core.day.BakePlan;
import doughtide.core.day.BakeStep;
import doughtide.core.day.BakeStep.Kind;
import doughtide.core.day.HandsOnTime;
import doughtide.core.day.ProofKind;
import doughtide.core.day.StepMargin;
import doughtide.core.forecast.RiseForecast;
import doughtide.core.loaf.LoafLimits;
import doughtide.core.loaf.LoafModel;
import doughtide.core.loaf.LoafScores;
import doughtide.core.loaf.LoafSettings;
import doughtide.core.loaf.Proof;
import doughtide.core.loaf.ShapeForecaster;
import doughtide.core.loaf.StrengthPlan;
import doughtide.core.quantity.InputException;
import doughtide.core.quantity.Rise;
import doughtide.core.quantity.Temperature;
import doughtide.core.rise.PieceCurve;
import doughtide.core.thermal.LaterTrace;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.function.DoubleFunction;
import java.util.function.Supplier;
import java.util.stream.DoubleStream;
import java.util.stream.IntStream;
import java.util.stream.Stream;

/**
 * Plans the rest of a day that has slipped: the dough as it was mixed is followed through the
 * model; it is shaped at its shape point, or as near to it as the hours at the bench allow, and
 * baked at the hour nearest to the one that was meant among those that bring nearly the most doughs
 * right.
 */
@Internal
public final class RestPlanner {
  /** Doughs that are followed, each with its loaf. */
  private static final int MEMBERS = 64;

  private static final double BULK_HOURS = 48;
  private static final double LONGEST_PROOF_HOURS = 40;
  private static final double LEAST_PROOF_HOURS = 0.25;
  private static final double AFTER_COLD_HOURS = 0.25; // until a tub can be shaped
  private static final int STEPS_AN_HOUR = 12;

  /** A share that is smaller by so little is as good: fewer than one dough in ten (our choice). */
  private static final double AS_GOOD = 0.05;

  private static final LoafSettings SETTINGS = LoafSettings.SEARCH.withMembers(MEMBERS);

  private final BakeDay day;
  private final Slipped slipped;
  private final RiseForecast bulk;
  private final StrengthPlan folds;

  private RestPlanner(BakeDay day, Slipped slipped, RiseForecast bulk) {
    this.day = day;
    this.slipped = slipped;
    this.bulk = bulk;
    this.folds = day.strength().withFolds(slipped.folds());
  }

  /**
   * Plans the rest.
   *
   * @param day as it was planned for, with the loaves and the hours at the bench as they are now
   * @throws InputException if it is too cold to say anything, or the hours at the bench leave no
   *     time to bake
   */
  public static RestOfDay plan(BakeDay day, Slipped slipped) {
    return new RestPlanner(day, slipped, day.bulk(slipped.route(), MEMBERS, BULK_HOURS)).best();
  }

  /**
   * A way on.
   *
   * @param shapeHour when dividing begins or began
   * @param kind where the loaves wait
   * @param ovenHour when the first go into the oven
   * @param loaves those of all doughs
   * @param steps from shaping on
   */
  private record Way(
      double shapeHour,
      ProofKind kind,
      double ovenHour,
      Supplier<Loaves> loaves,
      List<BakeStep> steps) {
    double goodShare() {
      return loaves.get().goodShare(ovenHour);
    }
  }

  private RestOfDay best() {
    if (bulk.curves().isEmpty()) {
      throw new InputException("day.again", "the model gives no hours for a dough so cold");
    }
    return kinds()
        .flatMap(kind -> shapeHours(kind).mapToObj(hour -> after(hour, kind)))
        .flatMap(Optional::stream)
        .reduce((a, b) -> b.goodShare() > a.goodShare() + AS_GOOD ? b : a)
        .map(this::rest)
        .orElseThrow(
            () ->
                new InputException(
                    "day.again",
                    "the hours at the bench leave no time to bake the rest: give more of them"));
  }

  /** As meant, and in the cold too where the loaves are not shaped yet. */
  private Stream<ProofKind> kinds() {
    boolean free = slipped.shapedHour().isEmpty() && day.cold().isPresent();
    return free
        ? Stream.of(slipped.proof(), ProofKind.COLD).distinct()
        : Stream.of(slipped.proof());
  }

  /** When it was shaped, or the last possible moment before its shape point and the first after. */
  private DoubleStream shapeHours(ProofKind kind) {
    if (slipped.shapedHour().isPresent()) {
      return slipped.shapedHour().stream();
    }
    double point = point(kind);
    List<Double> possible =
        grid(earliestShape(), slipped.nowHour() + 24)
            .filter(hour -> isAtTheBench(hour, kind))
            .boxed()
            .toList();
    OptionalDouble before =
        possible.stream().mapToDouble(hour -> hour).filter(hour -> hour <= point).max();
    OptionalDouble after =
        possible.stream().mapToDouble(hour -> hour).filter(hour -> hour > point).min();
    return DoubleStream.concat(before.stream(), after.stream());
  }

  private boolean isAtTheBench(double hour, ProofKind kind) {
    double carry = kind == ProofKind.COLD ? HandsOnTime.CARRY_HOURS : 0;
    return day.bench().contains(hour, hour + day.restHours() + carry);
  }

  private double earliestShape() {
    return slipped.route().coldTo().stream()
        .map(out -> Math.max(out + AFTER_COLD_HOURS, slipped.nowHour()))
        .findFirst()
        .orElse(slipped.nowHour());
  }

  /** The shape point; now where the dough is past it or has none. */
  private double point(ProofKind kind) {
    double mixed = slipped.route().mixHour();
    OptionalDouble likely =
        ShapeForecaster.of(bulk, proof(kind, slipped.nowHour()))
            .folded(folds)
            .with(SETTINGS)
            .point()
            .hours()
            .likely();
    return likely.isEmpty() ? slipped.nowHour() : mixed + likely.getAsDouble();
  }

  private Proof proof(ProofKind kind, double atHour) {
    double soonest = slipped.nowHour() + day.restHours() + 1;
    Proof plain =
        kind == ProofKind.COLD
            ? Proof.inColdUntil(
                day.cold().orElseThrow(),
                Math.max(slipped.ovenHour(), soonest) - slipped.route().mixHour())
            : Proof.inRoom(Temperature.ofCelsius(day.room().celsius(atHour)), slipped.proofHours());
    return day.ofItsLoaves(plain);
  }

  /** The best way with dividing begun at an hour. */
  private Optional<Way> after(double shapeHour, ProofKind kind) {
    double basket = shapeHour + day.restHours();
    Loaves loaves = loaves(basket, kind);
    if (slipped.bakedHour().isPresent()) {
      double oven = slipped.bakedHour().getAsDouble();
      return day.stepsAfterBulk(kind, basket, oven)
          .map(steps -> new Way(shapeHour, kind, oven, () -> loaves, steps));
    }
    List<Way> possible = new ArrayList<>();
    double last = Math.max(basket, slipped.nowHour()) + LONGEST_PROOF_HOURS;
    grid(Math.max(Math.max(basket + LEAST_PROOF_HOURS, slipped.nowHour()), hotHour()), last)
        .forEach(
            oven ->
                day.stepsAfterBulk(kind, basket, oven)
                    .filter(this::canBeDone)
                    .map(steps -> new Way(shapeHour, kind, oven, () -> loaves, steps))
                    .ifPresent(possible::add));
    double most = possible.stream().mapToDouble(Way::goodShare).max().orElse(0);
    return possible.stream()
        .filter(each -> each.goodShare() >= most - AS_GOOD)
        .min(Comparator.comparingDouble(each -> Math.abs(each.ovenHour() - slipped.ovenHour())));
  }

  /** When an oven that is on is hot. */
  private double hotHour() {
    OptionalDouble on = slipped.preheatedHour();
    return on.isPresent() ? on.getAsDouble() + day.oven().preheatHours() : 0;
  }

  private RestOfDay rest(Way way) {
    double mixed = slipped.route().mixHour();
    double rise = bulk.bandAt(way.shapeHour() - mixed).riseLikelyPercent();
    BakePlan.Begun begun =
        new BakePlan.Begun(
            slipped.route(),
            slipped.feed(),
            folds,
            way.kind(),
            way.shapeHour() + day.restHours(),
            way.ovenHour(),
            Rise.ofPercent(rise));
    BakePlan.Weighed weighed =
        new BakePlan.Weighed(
            way.goodShare(), bulk.hoursToRise(begun.shapeRise()).plus(mixed), margins(way));
    return new RestOfDay(BakePlan.of(day, begun, weighed), way.steps());
  }

  /** How much later what is not done may be. */
  private List<StepMargin> margins(Way way) {
    List<StepMargin> margins = new ArrayList<>();
    double least = way.goodShare() - StepMargin.SPOILED_SHARE;
    if (slipped.shapedHour().isEmpty()) {
      margins.add(margin(Kind.SHAPE, least, late -> shapedLate(way, late)));
    }
    if (slipped.bakedHour().isEmpty()) {
      margins.add(margin(Kind.BAKE, least, late -> bakedLate(way, late)));
    }
    return margins;
  }

  /** A way with something late, or what is in the way of it. */
  private record Late(Optional<Way> way, StepMargin.Limit limit) {
    boolean isGood(double least) {
      return way.isPresent() && way.get().goodShare() >= least - 1e-9;
    }
  }

  private StepMargin margin(Kind kind, double least, DoubleFunction<Late> late) {
    int most = 0;
    int longest = (int) Math.round(StepMargin.LONGEST_HOURS / StepMargin.GRID_HOURS);
    while (most < longest && late.apply((most + 1) * StepMargin.GRID_HOURS).way().isPresent()) {
      most++;
    }
    double hours = most * StepMargin.GRID_HOURS;
    if (most == 0 || late.apply(hours).isGood(least)) {
      double next = hours + StepMargin.GRID_HOURS;
      return new StepMargin(kind, hours, late.apply(next).limit());
    }
    double kept = StepMargin.longest(hours, by -> late.apply(by).isGood(least));
    return new StepMargin(kind, kept, StepMargin.Limit.DOUGH);
  }

  /** Shaped late, the oven by its clock. */
  private Late shapedLate(Way way, double late) {
    double shape = way.shapeHour() + late;
    double basket = shape + day.restHours();
    Optional<Way> then =
        basket > way.ovenHour() - LEAST_PROOF_HOURS
            ? Optional.empty()
            : day.stepsAfterBulk(way.kind(), basket, way.ovenHour())
                .filter(this::canBeDone)
                .map(
                    steps ->
                        new Way(
                            shape,
                            way.kind(),
                            way.ovenHour(),
                            () -> loaves(basket, way.kind()),
                            steps));
    boolean there = isAtTheBench(shape, way.kind());
    return new Late(then, there ? StepMargin.Limit.NEXT_STEP : StepMargin.Limit.BENCH);
  }

  /** Baked late; bread that is in time stays in time. */
  private Late bakedLate(Way way, double late) {
    double before = way.steps().get(way.steps().size() - 1).toHour();
    boolean inTime = before > day.readyHour() || before + late <= day.readyHour() + 1e-6;
    double oven = way.ovenHour() + late;
    Optional<Way> then =
        day.stepsAfterBulk(way.kind(), way.shapeHour() + day.restHours(), oven)
            .filter(steps -> inTime && canBeDone(steps))
            .map(steps -> new Way(way.shapeHour(), way.kind(), oven, way.loaves(), steps));
    return new Late(then, inTime ? StepMargin.Limit.BENCH : StepMargin.Limit.NEXT_STEP);
  }

  /** Whether every step that is still to be done can be, by the clock and at the bench. */
  private boolean canBeDone(List<BakeStep> steps) {
    return steps.stream()
        .filter(step -> step.kind().handsOn() && !isDone(step))
        .allMatch(
            step ->
                step.fromHour() >= slipped.nowHour() - 1e-6
                    && day.bench().contains(step.fromHour(), step.toHour()));
  }

  private boolean isDone(BakeStep step) {
    return switch (step.kind()) {
      case SHAPE, LOAVES_INTO_COLD -> slipped.shapedHour().isPresent();
      case PREHEAT -> slipped.preheatedHour().isPresent();
      default -> false;
    };
  }

  /**
   * The loaves of all doughs.
   *
   * @param pieces one of each dough
   * @param limits between which heights they are right
   */
  private record Loaves(List<PieceCurve> pieces, LoafLimits limits, double mixHour) {
    double goodShare(double hour) {
      double hours = hour - mixHour;
      long good = pieces.stream().filter(piece -> limits.isGood(piece, hours)).count();
      return (double) good / pieces.size();
    }
  }

  private Loaves loaves(double basketHour, ProofKind kind) {
    LoafModel plain = LoafModel.of(bulk.formula(), proof(kind, basketHour), SETTINGS).folded(folds);
    LoafModel loaf =
        kind == ProofKind.COLD ? plain : plain.in(new LaterTrace(day.room(), basketHour));
    double from = basketHour - slipped.route().mixHour();
    double follow = Math.max(0, slipped.nowHour() - basketHour) + LONGEST_PROOF_HOURS + 1;
    return new Loaves(
        IntStream.range(0, bulk.curves().size())
            .mapToObj(i -> loaf.run(bulk.curves().get(i), from, LoafScores.of(i), follow))
            .toList(),
        LoafLimits.right(day.target()),
        slipped.route().mixHour());
  }

  /** Every five minutes of the clock from one hour to another. */
  private static DoubleStream grid(double from, double to) {
    int first = (int) Math.ceil(from * STEPS_AN_HOUR - 1e-6);
    int last = (int) Math.floor(to * STEPS_AN_HOUR);
    return IntStream.rangeClosed(first, last).mapToDouble(i -> (double) i / STEPS_AN_HOUR);
  }
}
