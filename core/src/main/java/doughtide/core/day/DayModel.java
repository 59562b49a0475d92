package doughtide.core.day;

import doughtide.core.dough.DoughFormula;
import doughtide.core.forecast.RiseForecaster;
import doughtide.core.loaf.Cold;
import doughtide.core.loaf.LoafModel;
import doughtide.core.loaf.LoafScores;
import doughtide.core.loaf.LoafSettings;
import doughtide.core.loaf.Proof;
import doughtide.core.loaf.StrengthPlan;
import doughtide.core.quantity.Mass;
import doughtide.core.quantity.Temperature;
import doughtide.core.rise.DoughTemperature;
import doughtide.core.rise.PieceCurve;
import doughtide.core.rise.RiseCurve;
import doughtide.core.rise.RiseModel;
import doughtide.core.rise.Unknowns;
import doughtide.core.thermal.Air;
import doughtide.core.thermal.LaterTrace;
import doughtide.core.thermal.RoomCooling;
import doughtide.core.thermal.TemperatureTrace;
import java.util.Collection;
import java.util.List;
import java.util.Map;
import java.util.concurrent.ConcurrentHashMap;
import org.jspecify.annotations.Nullable;

/**
 * Runs of the rise model for one dough: in its tub, and as a loaf in its basket. Only the dough,
 * the room, the cold and the loaves of the day matter here, not its hours at the bench, its oven or
 * when the bread is wanted; so one model serves all days that differ in these. What has been run
 * once is kept.
 */
final class DayModel {
  /** Dough in one tub: more is kept in several tubs (starting value). */
  private static final double LARGEST_TUB_GRAMS = 10_000;

  private static final double LONGEST_PROOF_HOURS = 40;

  /** A dough is followed for so long at least: past its greatest height. */
  private static final double USUAL_RUN_HOURS = 48;

  private static final double LONG_RUN_HOURS = 96;
  private static final int LIKELY_MEMBERS = 32;

  /** Each is some ten kilobytes. */
  private static final int MOST_RUNS_KEPT = 2000;

  private final BakeDay day;
  private final RoomCooling tubInRoom;
  private final RoomCooling tubInCold;
  private final Map<Double, RiseModel> models = new ConcurrentHashMap<>();
  private final Map<Waiting, LoafModel> loaves = new ConcurrentHashMap<>();
  private final Map<Run, RiseCurve> runs = new ConcurrentHashMap<>();
  private final Map<BakeRoute, LikelyDough> likely = new ConcurrentHashMap<>();
  private final RipeTimes ripeTimes;
  private final ShapePoint shapePoint = new ShapePoint(this);
  private volatile @Nullable Middle middle; // found when first asked for

  /** A run of a route, at hour 0 where the room keeps one temperature. */
  private record Run(BakeRoute route, Unknowns unknowns, double hours) {}

  /** The dough that stands for all, what is not known of its loaf, and the starter that does. */
  record Middle(Unknowns unknowns, LoafScores scores, Unknowns starter) {}

  /** A loaf of a dough that was folded so, and where it waits. */
  private record Waiting(ProofKind proof, StrengthPlan folds) {}

  DayModel(BakeDay day) {
    this(day, List.of());
  }

  /**
   * The model of a dough of a day.
   *
   * @param others models of doughs of the same day; what has been run of their starters is shared
   *     where it is the same starter
   */
  DayModel(BakeDay day, Collection<DayModel> others) {
    this.day = day;
    this.ripeTimes =
        others.stream()
            .filter(other -> RipeTimes.areThoseOf(other.day, day))
            .findFirst()
            .map(other -> new RipeTimes(this, other.ripeTimes))
            .orElseGet(() -> new RipeTimes(this));
    DoughFormula formula = day.dough();
    double tubs = Math.ceil(day.allDough().grams() / LARGEST_TUB_GRAMS);
    Mass inTub = Mass.ofGrams(day.allDough().grams() / tubs);
    this.tubInRoom = RoomCooling.of(formula, inTub, day.vessel(), Air.STILL_ROOM);
    this.tubInCold =
        RoomCooling.of(
            formula, inTub, day.vessel(), day.cold().map(Cold::air).orElse(Air.STILL_COLD));
  }

  BakeDay day() {
    return day;
  }

  /** So many members of the belief; no more than the forecaster of the day has. */
  List<Unknowns> members(int most) {
    int number = Math.min(most, day.forecaster().ensemble().size());
    return day.forecaster().withMembers(number).ensemble().members();
  }

  /**
   * What finds the shape point that is printed: always of as many members, unless the forecaster of
   * the day has fewer than weigh a plan.
   */
  RiseForecaster printing() {
    RiseForecaster own = day.forecaster();
    return own.ensemble().size() < DoughCandidates.MEMBERS
        ? own
        : own.withMembers(DoughCandidates.POINT_MEMBERS);
  }

  /** Unknowns of a dough that stands for all: the middle of the belief is no median. */
  Unknowns middle() {
    return likeliest().unknowns();
  }

  /** Unknowns of a starter that stands for all. */
  Unknowns likelyStarter() {
    return likeliest().starter();
  }

  /** What is not known of the loaf of the dough that stands for all. */
  LoafScores middleScores() {
    return likeliest().scores();
  }

  private Middle likeliest() {
    Middle found = middle;
    return found != null ? found : likeliest(SearchControl.none().on(Runnable::run));
  }

  /**
   * Finds what stands for all, if nobody has; other threads wait.
   *
   * @param control the threads that find it
   */
  synchronized Middle likeliest(SearchControl control) {
    Middle found = middle;
    if (found == null) {
      List<Unknowns> members = members(LIKELY_MEMBERS);
      int number = new LikelyMember(this, usualRoute()).of(members, control);
      found = new Middle(members.get(number), LoafScores.of(number), ripeTimes.likely(members));
      middle = found;
    }
    return found;
  }

  private BakeRoute usualRoute() {
    List<Double> percents = day.starterPercents();
    List<Double> celsius = day.doughCelsius();
    return BakeRoute.inRoom(
        percents.get(percents.size() / 2),
        celsius.get(celsius.size() / 2),
        day.bench().firstHour());
  }

  /** When starters are ripe in this room. */
  RipeTimes ripeTimes() {
    return ripeTimes;
  }

  /** When a draft is best shaped. */
  ShapePoint shapePoint() {
    return shapePoint;
  }

  /** The likely dough of a route. */
  LikelyDough likely(BakeRoute route) {
    return likely.computeIfAbsent(atAnyHour(route), each -> new LikelyDough(this, each));
  }

  /** Where the room keeps one temperature the hour of mixing does not matter. */
  BakeRoute atAnyHour(BakeRoute route) {
    return steadyRoom() ? route.mixedAtZero() : route;
  }

  private RiseModel typical(BakeRoute route) {
    RiseModel model =
        models.computeIfAbsent(
            route.starterPercent(),
            percent ->
                day.forecaster()
                    .typical(day.dough(percent), DoughTemperature.following(day.room())));
    return model.with(temperature(route));
  }

  /**
   * The dough of a route.
   *
   * @param hours from mixing, at least, up to 96
   */
  RiseCurve run(BakeRoute route, Unknowns unknowns, double hours) {
    if (runs.size() > MOST_RUNS_KEPT) {
      runs.clear();
    }
    double length = hours <= USUAL_RUN_HOURS ? USUAL_RUN_HOURS : LONG_RUN_HOURS;
    return runs.computeIfAbsent(
        new Run(atAnyHour(route), unknowns, length),
        run -> typical(run.route()).with(unknowns).runFast(length));
  }

  DoughTemperature temperature(BakeRoute route) {
    Temperature start = Temperature.ofCelsius(route.doughCelsius());
    DoughTemperature tub =
        day.bulkPlace() == BakeDay.BulkPlace.HELD
            ? DoughTemperature.steady(start)
            : DoughTemperature.inRoom(
                start, roomFrom(route.mixHour()), tau(tubInRoom), heat(tubInRoom));
    if (route.coldFrom().isEmpty()) {
      return tub;
    }
    double from = route.coldFrom().getAsDouble();
    double to = route.coldTo().orElseThrow();
    TemperatureTrace air = TemperatureTrace.steady(day.cold().orElseThrow().likelyAir());
    return tub.then(from - route.mixHour(), air, tau(tubInCold), heat(tubInCold))
        .then(to - route.mixHour(), roomFrom(to), tau(tubInRoom), heat(tubInRoom));
  }

  /**
   * What is left of a difference to the room when something has stood in the tub, 0…1; all where
   * the dough's temperature is held.
   *
   * @param hours how long
   */
  double keptInRoom(double hours) {
    return day.bulkPlace() == BakeDay.BulkPlace.HELD ? 1 : Math.exp(-hours / tau(tubInRoom));
  }

  private static double tau(RoomCooling cooling) {
    return cooling.tauHours();
  }

  private static double heat(RoomCooling cooling) {
    return cooling.heatCapacityPerKgFlourJPerK();
  }

  TemperatureTrace roomFrom(double hour) {
    return new LaterTrace(day.room(), hour);
  }

  /** Whether the room keeps one temperature. */
  boolean steadyRoom() {
    return day.room().breakpoints().length == 0;
  }

  /**
   * The loaf from its basket to some hours later.
   *
   * @param bulk its dough
   * @param shapedHours from mixing to the basket
   * @param proof cold or room
   * @param basketHour when it gets into the basket, on the axis
   * @param hours how long it is followed
   */
  PieceCurve loaf(
      BulkRun bulk, double shapedHours, ProofKind proof, double basketHour, double hours) {
    return loaf(new Waiting(proof, bulk.folds()), basketHour)
        .run(
            bulk.curve(),
            shapedHours,
            bulk.scores(),
            Math.max(hours, LoafModel.SHORTEST_PROOF_HOURS));
  }

  /**
   * A dough that has been followed in its tub.
   *
   * @param curve the run
   * @param scores what is not known of its loaf
   * @param folds what is done to it
   */
  record BulkRun(RiseCurve curve, LoafScores scores, StrengthPlan folds) {}

  private LoafModel loaf(Waiting waiting, double basketHour) {
    LoafModel loaf = loaves.computeIfAbsent(waiting, this::loaf);
    return waiting.proof() == ProofKind.COLD || steadyRoom() ? loaf : loaf.in(roomFrom(basketHour));
  }

  private LoafModel loaf(Waiting waiting) {
    Temperature room = Temperature.ofCelsius(day.room().celsius(0));
    Proof proof =
        waiting.proof() == ProofKind.COLD
            ? Proof.inCold(day.cold().orElseThrow(), 0)
            : Proof.inRoom(room, 0);
    return LoafModel.of(day.dough(), day.ofItsLoaves(proof), LoafSettings.SEARCH)
        .folded(waiting.folds());
  }

  /** Jar-equivalent rise at the oven, both hours from mixing. */
  double riseAtOven(
      BulkRun bulk, double mixHour, double shapedHours, ProofKind proof, double ovenHours) {
    double proofHours = Math.min(ovenHours - shapedHours, LONGEST_PROOF_HOURS);
    return loaf(new Waiting(proof, bulk.folds()), mixHour + shapedHours)
        .riseAtEnd(
            bulk.curve(),
            shapedHours,
            bulk.scores(),
            Math.max(proofHours, LoafModel.SHORTEST_PROOF_HOURS))
        .fraction();
  }
}
