package doughtide.core.day.again;

import doughtide.core.day.BakeDay;
import doughtide.core.day.BakePlan;
import doughtide.core.day.BakeStep;
import doughtide.core.day.BakeStep.Kind;
import doughtide.core.day.BenchInterval;
import doughtide.core.day.HandsOnTime;
import doughtide.core.day.ProofKind;
import doughtide.core.day.StepMargin;
import doughtide.core.day.Taken;
import doughtide.core.forecast.RiseForecast;
import doughtide.core.forecast.TimeWindow;
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
import doughtide.core.rise.RiseCurve;
import doughtide.core.thermal.LaterTrace;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.function.DoubleFunction;
import java.util.function.Supplier;
import java.util.stream.DoubleStream;
import java.util.stream.IntStream;
import java.util.stream.Stream;

/**
 * Looks for the best way on for a dough whose day has slipped: as it was mixed it is followed
 * through the model; it is shaped at its shape point, or as near to it as the hours at the bench
 * and the other doughs allow, and baked at the hour nearest to the one that was meant among those
 * that bring nearly the most doughs right.
 */
final class RestSearch {
  /** Doughs that are followed, each with its loaf. */
  private static final int MEMBERS = 64;

  private static final double BULK_HOURS = 48;
  private static final double LONGEST_PROOF_HOURS = 40;
  private static final double LEAST_PROOF_HOURS = 0.25;
  private static final double AFTER_COLD_HOURS = 0.25; // until a tub can be shaped
  private static final int STEPS_AN_HOUR = 12;

  /** A share that is smaller by so little is as good: fewer than one dough in ten (our choice). */
  private static final double AS_GOOD = 0.05;

  /** What is overdue is baked at another hour than meant for more than this only (our choice). */
  private static final double WORTH_MOVING = 0.1;

  private static final LoafSettings SETTINGS = LoafSettings.SEARCH.withMembers(MEMBERS);

  private final BakeDay day;
  private final Slipped slipped;
  private final RiseForecast bulk;
  private final StrengthPlan folds;
  private final Map<ProofKind, Double> points;
  private final Taken taken;
  private final int hands;

  private RestSearch(
      BakeDay day,
      Slipped slipped,
      RiseForecast bulk,
      Map<ProofKind, Double> points,
      Taken taken,
      int hands) {
    this.day = day;
    this.slipped = slipped;
    this.bulk = bulk;
    this.folds = slipped.folds(day.strength());
    this.points = points;
    this.taken = taken;
    this.hands = hands;
  }

  /**
   * @param day as it was planned for, with the loaves and the hours at the bench as they are now
   * @param hands how many persons work
   */
  RestSearch(BakeDay day, Slipped slipped, int hands) {
    this(
        day,
        slipped,
        day.bulk(slipped.route(), MEMBERS, BULK_HOURS),
        new EnumMap<>(ProofKind.class),
        Taken.NOTHING,
        hands);
  }

  /** The same dough beside others. */
  RestSearch beside(Taken others) {
    return new RestSearch(day, slipped, bulk, points, others, hands);
  }

  /**
   * A way on.
   *
   * @param shapeHour when dividing begins or began
   * @param overdue whether it begins then whatever the jar shows
   * @param place where the loaves wait
   * @param ovenHour when the first go into the oven
   * @param loaves those of all doughs
   * @param steps from shaping on
   */
  record Way(
      double shapeHour,
      boolean overdue,
      LoafPlace place,
      double ovenHour,
      Supplier<Loaves> loaves,
      List<BakeStep> steps) {
    double goodShare() {
      return loaves.get().goodShare(ovenHour);
    }
  }

  /** The best way on, if there is any. */
  Optional<Way> bestIfAny() {
    if (bulk.curves().isEmpty()) {
      return Optional.empty();
    }
    return places()
        .flatMap(place -> shapeHours(place.kind()).mapToObj(hour -> after(hour, place)))
        .flatMap(Optional::stream)
        .reduce((a, b) -> b.goodShare() > a.goodShare() + AS_GOOD ? b : a);
  }

  /** Why there is no way on: it is too cold to say anything, or there is no time to bake. */
  InputException whyNone() {
    return bulk.curves().isEmpty()
        ? new InputException("day.again", "the model gives no hours for a dough so cold")
        : new InputException(
            RestPlanner.NO_TIME,
            "the hours at the bench leave no time to bake the rest: give more of them");
  }

  /** As meant, and in the cold too where there is one and the loaves are not in the room or it. */
  private Stream<LoafPlace> places() {
    if (slipped.shapedHour().isPresent()) {
      return placesOfShaped(slipped.shapedHour().getAsDouble() + day.restHours());
    }
    Stream<ProofKind> kinds =
        day.cold().isPresent()
            ? Stream.of(slipped.proof(), ProofKind.COLD).distinct()
            : Stream.of(slipped.proof());
    return kinds.map(LoafPlace::fromBench);
  }

  /** Loaves in the cold stay there; those in the room stay, or go there when somebody can. */
  private Stream<LoafPlace> placesOfShaped(double basketHour) {
    DoubleStream into =
        slipped.intoColdHour().isPresent()
            ? slipped.intoColdHour().stream()
            : intoColdHours(Math.max(basketHour, slipped.nowHour()));
    Stream<LoafPlace> cold =
        into.mapToObj(hour -> new LoafPlace(ProofKind.COLD, Math.max(0, hour - basketHour)));
    if (slipped.intoColdHour().isPresent()) {
      return cold;
    }
    Stream<LoafPlace> room = Stream.of(LoafPlace.fromBench(ProofKind.ROOM));
    return slipped.proof() == ProofKind.COLD
        ? Stream.concat(cold, room)
        : Stream.concat(room, cold);
  }

  private DoubleStream intoColdHours(double soonest) {
    boolean possible = day.cold().isPresent() && slipped.bakedHour().isEmpty();
    return possible
        ? new CarryHours(day.bench(), taken, hands).someSoon(soonest)
        : DoubleStream.empty();
  }

  /** When it was shaped, or the last possible moment before its shape point and the first after. */
  private DoubleStream shapeHours(ProofKind kind) {
    if (slipped.shapedHour().isPresent()) {
      return slipped.shapedHour().stream();
    }
    double point = point(kind);
    List<Double> possible = possibleHours(kind).boxed().toList();
    OptionalDouble before =
        possible.stream().mapToDouble(hour -> hour).filter(hour -> hour <= point).max();
    OptionalDouble after =
        possible.stream().mapToDouble(hour -> hour).filter(hour -> hour > point).min();
    return DoubleStream.concat(before.stream(), after.stream());
  }

  private DoubleStream possibleHours(ProofKind kind) {
    return grid(earliestShape(), slipped.nowHour() + 24).filter(hour -> isPossible(hour, kind));
  }

  /** Whether the dough is likely ready before it can be shaped, so that no jar is waited for. */
  private boolean isOverdue(ProofKind kind) {
    return slipped.shapedHour().isEmpty()
        && possibleHours(kind).limit(1).anyMatch(first -> point(kind) <= first + 1e-6);
  }

  private boolean isPossible(double hour, ProofKind kind) {
    double carry = kind == ProofKind.COLD ? HandsOnTime.CARRY_HOURS : 0;
    double end = hour + day.restHours() + carry;
    return taken.leavesHands(day.bench(), hour, end, hands);
  }

  private double earliestShape() {
    return slipped.route().coldTo().stream()
        .map(out -> Math.max(out + AFTER_COLD_HOURS, slipped.nowHour()))
        .findFirst()
        .orElse(slipped.nowHour());
  }

  /** The shape point; now where the dough is past it or has none. */
  private double point(ProofKind kind) {
    return points.computeIfAbsent(kind, this::newPoint);
  }

  private double newPoint(ProofKind kind) {
    double mixed = slipped.route().mixHour();
    OptionalDouble likely =
        ShapeForecaster.of(bulk, proof(LoafPlace.fromBench(kind), slipped.nowHour()))
            .folded(folds)
            .with(SETTINGS)
            .point()
            .hours()
            .likely();
    return likely.isEmpty() ? slipped.nowHour() : mixed + likely.getAsDouble();
  }

  private Proof proof(LoafPlace place, double atHour) {
    Temperature room = Temperature.ofCelsius(day.room().celsius(atHour));
    Proof plain = place.isCold() ? inCold() : Proof.inRoom(room, slipped.proofHours());
    return day.ofItsLoaves(
        place.roomHours() > 0 ? plain.afterRoom(room, place.roomHours()) : plain);
  }

  private Proof inCold() {
    double soonest = slipped.nowHour() + day.restHours() + 1;
    return Proof.inColdUntil(
        day.cold().orElseThrow(),
        Math.max(slipped.ovenHour(), soonest) - slipped.route().mixHour());
  }

  /** The best way with dividing begun at an hour. */
  private Optional<Way> after(double shapeHour, LoafPlace place) {
    double basket = shapeHour + day.restHours();
    boolean overdue = isOverdue(place.kind());
    Loaves loaves = loaves(shapeHour, overdue, place, 0);
    if (slipped.bakedHour().isPresent()) {
      double oven = slipped.bakedHour().getAsDouble();
      return steps(place, basket, oven)
          .map(steps -> new Way(shapeHour, overdue, place, oven, () -> loaves, steps));
    }
    List<Way> possible = new ArrayList<>();
    double last = Math.max(basket, slipped.nowHour()) + LONGEST_PROOF_HOURS;
    double first = Math.max(basket + place.roomHours() + LEAST_PROOF_HOURS, slipped.nowHour());
    grid(Math.max(first, hotHour()), last)
        .forEach(
            oven ->
                possibleSteps(place, basket, oven)
                    .map(steps -> new Way(shapeHour, overdue, place, oven, () -> loaves, steps))
                    .ifPresent(possible::add));
    double most = possible.stream().mapToDouble(Way::goodShare).max().orElse(0);
    return possible.stream()
        .filter(each -> each.goodShare() >= most - (overdue ? WORTH_MOVING : AS_GOOD))
        .min(Comparator.comparingDouble(each -> Math.abs(each.ovenHour() - slipped.ovenHour())));
  }

  /** When an oven that is on is hot. */
  private double hotHour() {
    OptionalDouble on = slipped.preheatedHour();
    return on.isPresent() ? on.getAsDouble() + day.oven().preheatHours() : 0;
  }

  /** The plan of a way. */
  BakePlan plan(Way way) {
    double then = likelyPercent(way.shapeHour());
    Rise rise = Rise.ofPercent(way.overdue() ? Math.min(then, passedPercent(way)) : then);
    BakePlan.Begun begun =
        new BakePlan.Begun(
            slipped.route(),
            slipped.feed(),
            folds,
            way.place().kind(),
            way.shapeHour() + day.restHours(),
            way.ovenHour(),
            rise,
            way.overdue() ? Optional.of(Rise.ofPercent(then)) : Optional.empty());
    BakePlan.Weighed weighed =
        new BakePlan.Weighed(way.goodShare(), shapeWindow(begun.shapeRise()), margins(way));
    return BakePlan.of(day, begun, weighed);
  }

  /** What the jar has shown when it was time to shape. */
  private double passedPercent(Way way) {
    return likelyPercent(point(way.place().kind()));
  }

  private double likelyPercent(double hour) {
    return bulk.bandAt(hour - slipped.route().mixHour()).riseLikelyPercent();
  }

  /** When the jar shows a rise; the hour of dividing alone once that is over. */
  private TimeWindow shapeWindow(Rise rise) {
    return slipped.shapedHour().isPresent()
        ? TimeWindow.of(slipped.shapedHour().stream().toArray())
        : bulk.hoursToRise(rise).plus(slipped.route().mixHour());
  }

  /** What is still to be done of a dough, and what of it was done from shaping on. */
  List<BakeStep> steps(Way way) {
    List<BakeStep> steps = new ArrayList<>();
    slipped.open().stream()
        .filter(step -> step.toHour() <= way.shapeHour() + 1e-6)
        .forEach(steps::add);
    steps.addAll(way.steps());
    return steps;
  }

  /** What a way takes of hands and oven. */
  Taken taking(Way way, Taken others) {
    List<BakeStep> open =
        steps(way).stream()
            .filter(
                step -> step.kind() != Kind.READY && step.fromHour() >= slipped.nowHour() - 1e-6)
            .toList();
    return others.with(open).with(day, way.ovenHour());
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
            : possibleSteps(way.place(), basket, way.ovenHour())
                .map(
                    steps ->
                        new Way(
                            shape,
                            way.overdue(),
                            way.place(),
                            way.ovenHour(),
                            () -> loaves(way.shapeHour(), way.overdue(), way.place(), late),
                            steps));
    boolean there = isPossible(shape, way.place().kind());
    return new Late(then, there ? StepMargin.Limit.NEXT_STEP : StepMargin.Limit.BENCH);
  }

  /** Baked late; bread that is in time stays in time. */
  private Late bakedLate(Way way, double late) {
    double before = way.steps().get(way.steps().size() - 1).toHour();
    boolean inTime = before > day.readyHour() || before + late <= day.readyHour() + 1e-6;
    double oven = way.ovenHour() + late;
    Optional<Way> then =
        possibleSteps(way.place(), way.shapeHour() + day.restHours(), oven)
            .filter(steps -> inTime)
            .map(
                steps ->
                    new Way(
                        way.shapeHour(),
                        way.overdue(),
                        way.place(),
                        oven,
                        () -> way.loaves().get().bakedLate(late),
                        steps));
    return new Late(then, inTime ? StepMargin.Limit.BENCH : StepMargin.Limit.NEXT_STEP);
  }

  /** The steps from shaping on, without switching on an oven that is hot for others. */
  private Optional<List<BakeStep>> steps(LoafPlace place, double basket, double oven) {
    boolean hot = taken.isHotAt(oven, day.oven());
    return day.stepsAfterBulk(place.kind(), basket, oven)
        .map(
            steps ->
                steps.stream()
                    .filter(step -> !hot || step.kind() != Kind.PREHEAT)
                    .map(place::moved)
                    .sorted(Comparator.comparingDouble(BakeStep::fromHour))
                    .toList());
  }

  private Optional<List<BakeStep>> possibleSteps(LoafPlace place, double basket, double oven) {
    return steps(place, basket, oven).filter(steps -> canBeDone(steps, oven));
  }

  /** Whether every step that is still to be done can be: by the clock, the bench and the others. */
  private boolean canBeDone(List<BakeStep> steps, double oven) {
    List<BakeStep> open =
        steps.stream().filter(step -> step.kind().handsOn() && !isDone(step)).toList();
    return open.stream()
            .allMatch(
                step ->
                    step.fromHour() >= slipped.nowHour() - 1e-6
                        && day.bench().contains(step.fromHour(), step.toHour()))
        && taken.leavesRoom(day, open, oven, hands);
  }

  private boolean isDone(BakeStep step) {
    return switch (step.kind()) {
      case SHAPE -> slipped.shapedHour().isPresent();
      case LOAVES_INTO_COLD -> slipped.intoColdHour().isPresent();
      case PREHEAT -> slipped.preheatedHour().isPresent();
      default -> false;
    };
  }

  /**
   * A loaf of one of the doughs; hours on the axis.
   *
   * @param basketHour when it is in its basket, by its jar
   * @param from when it becomes right
   * @param until until when
   */
  private record Loaf(double basketHour, double from, double until) {}

  /**
   * The loaves of all doughs, each shaped when its jar shows it, as near to that as the hours at
   * the bench allow.
   *
   * @param all one of each dough
   * @param basketHour of the likely one
   * @param shapedLate how much later than its jar says each is shaped
   * @param bakedLate how much later than meant the oven is
   */
  private record Loaves(
      RestSearch search,
      LoafPlace place,
      List<Loaf> all,
      double basketHour,
      double shapedLate,
      double bakedLate) {

    double goodShare(double ovenHour) {
      long good = all.stream().filter(loaf -> isGood(loaf, ovenHour - bakedLate)).count();
      return (double) good / all.size();
    }

    private boolean isGood(Loaf loaf, double ovenHour) {
      double oven = place.isCold() ? ovenHour : search.afterProof(this, loaf, ovenHour);
      boolean inTime = loaf.basketHour() + shapedLate <= oven - LEAST_PROOF_HOURS + 1e-9;
      return (inTime || search.slipped.shapedHour().isPresent())
          && loaf.from() <= oven + bakedLate
          && loaf.until() >= oven + bakedLate + search.laterBatches();
    }

    Loaves bakedLate(double late) {
      return new Loaves(search, place, all, basketHour, shapedLate, late);
    }
  }

  /** After the planned length of a proof in the room, as far as the hours at the bench allow. */
  private double afterProof(Loaves loaves, Loaf loaf, double ovenHour) {
    double hour = ovenHour + loaf.basketHour() - loaves.basketHour();
    BenchInterval bench =
        day.bench().around(ovenHour, ovenHour).orElse(new BenchInterval(ovenHour, ovenHour + 0.1));
    double first = Math.min(bench.fromHour() + day.oven().preheatHours(), ovenHour);
    double end = Math.min(bench.toHour() - HandsOnTime.UNLOAD_HOURS, latestOut());
    return Math.min(Math.max(hour, first), Math.max(end - day.bakingHours(), ovenHour));
  }

  /** When the last loaf must be out of the oven to be ready in time. */
  private double latestOut() {
    return day.readyHour() - day.oven().coolHours();
  }

  /** From the first batch to the last. */
  private double laterBatches() {
    int batches = day.oven().batches(day.loaves());
    return day.bakingHours() * (batches - 1) / batches;
  }

  private Loaves loaves(double shapeHour, boolean overdue, LoafPlace place, double late) {
    double basket = shapeHour + day.restHours();
    LoafModel loaf = LoafModel.of(bulk.formula(), proof(place, basket), SETTINGS).folded(folds);
    double mixed = slipped.route().mixHour();
    double rise = likelyPercent(shapeHour);
    LoafLimits right = LoafLimits.right(day.target());
    List<Loaf> all = new ArrayList<>();
    for (int i = 0; i < bulk.curves().size(); i++) {
      RiseCurve curve = bulk.curves().get(i);
      double own =
          slipped.shapedHour().isPresent() || overdue
              ? basket
              : byJar(curve, Rise.ofPercent(rise), shapeHour) + day.restHours();
      double at = own + late;
      double follow = Math.max(0, slipped.nowHour() - at) + LONGEST_PROOF_HOURS + 1;
      PieceCurve piece =
          (place.isCold() ? loaf : loaf.in(new LaterTrace(day.room(), at)))
              .run(curve, Math.min(at - mixed, curve.endHours()), LoafScores.of(i), follow);
      all.add(
          new Loaf(
              own,
              mixed + right.from(piece).orElse(Double.POSITIVE_INFINITY),
              mixed + right.until(piece).orElse(piece.endHours())));
    }
    return new Loaves(this, place, all, basket, late, 0);
  }

  /** When dividing begins: when the jar is there, or as near to that as the bench allows. */
  private double byJar(RiseCurve curve, Rise shown, double shapeHour) {
    double mixed = slipped.route().mixHour();
    double rest = day.restHours();
    BenchInterval bench = day.bench().around(shapeHour, shapeHour + rest).orElseThrow();
    double from = Math.max(bench.fromHour(), earliestShape());
    double over = mixed + curve.hoursToOver().orElse(curve.endHours());
    double to = Math.min(bench.toHour(), over) - rest;
    double jar = mixed + curve.hoursToRise(shown).orElse(curve.endHours());
    return Math.max(from, Math.min(jar, to));
  }

  /** Every five minutes of the clock from one hour to another. */
  private static DoubleStream grid(double from, double to) {
    int first = (int) Math.ceil(from * STEPS_AN_HOUR - 1e-6);
    int last = (int) Math.floor(to * STEPS_AN_HOUR);
    return IntStream.rangeClosed(first, last).mapToDouble(i -> (double) i / STEPS_AN_HOUR);
  }
}
