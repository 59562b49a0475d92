package doughtide.core.day;

import doughtide.core.dough.DoughFormula;
import doughtide.core.loaf.LoafModel;
import doughtide.core.loaf.LoafSettings;
import doughtide.core.loaf.Proof;
import doughtide.core.quantity.Mass;
import doughtide.core.quantity.Rise;
import doughtide.core.quantity.Temperature;
import doughtide.core.rise.DoughTemperature;
import doughtide.core.rise.PieceCurve;
import doughtide.core.rise.RiseCurve;
import doughtide.core.rise.RiseModel;
import doughtide.core.rise.Unknowns;
import doughtide.core.thermal.Air;
import doughtide.core.thermal.LaterTrace;
import doughtide.core.thermal.Material;
import doughtide.core.thermal.RoomCooling;
import doughtide.core.thermal.TemperatureTrace;
import doughtide.core.thermal.Vessel;
import java.util.Map;
import java.util.concurrent.ConcurrentHashMap;

/** Runs of the rise model for one day: the dough in its tub, the loaf in its basket. */
final class DayModel {
  /** Dough in one tub: more is kept in several tubs (starting value). */
  private static final double LARGEST_TUB_GRAMS = 10_000;

  private static final double LONGEST_PROOF_HOURS = 40;
  private final BakeDay day;
  private final RoomCooling room;
  private final RoomCooling cold;
  private final Map<Double, RiseModel> models = new ConcurrentHashMap<>();
  private final Map<ProofKind, LoafModel> loaves = new ConcurrentHashMap<>();

  DayModel(BakeDay day) {
    this.day = day;
    DoughFormula formula = day.dough();
    double tubs = Math.ceil(day.allDough().grams() / LARGEST_TUB_GRAMS);
    Mass inTub = Mass.ofGrams(day.allDough().grams() / tubs);
    Vessel tub = Vessel.tub(Material.POLYPROPYLENE);
    this.room = RoomCooling.of(formula, inTub, tub, Air.STILL_ROOM);
    this.cold = RoomCooling.of(formula, inTub, tub, Air.REFRIGERATOR);
  }

  BakeDay day() {
    return day;
  }

  /** The dough of a route with every unknown at its middle. */
  RiseModel typical(BakeRoute route) {
    RiseModel model =
        models.computeIfAbsent(
            route.starterPercent(),
            percent ->
                day.forecaster()
                    .typical(day.dough(percent), DoughTemperature.following(day.kitchen())));
    return model.with(temperature(route));
  }

  /**
   * The dough of a route.
   *
   * @param hours from mixing
   */
  RiseCurve run(BakeRoute route, Unknowns unknowns, double hours) {
    return typical(route).with(unknowns).runFast(hours);
  }

  DoughTemperature temperature(BakeRoute route) {
    Temperature start = Temperature.ofCelsius(route.doughCelsius());
    DoughTemperature tub =
        day.bulkPlace() == BakeDay.BulkPlace.HELD
            ? DoughTemperature.steady(start)
            : DoughTemperature.inRoom(start, kitchenFrom(route.mixHour()), tau(room), heat(room));
    if (route.coldFrom().isEmpty()) {
      return tub;
    }
    double from = route.coldFrom().getAsDouble();
    double to = route.coldTo().orElseThrow();
    TemperatureTrace fridge = TemperatureTrace.steady(day.fridge().orElseThrow());
    return tub.then(from - route.mixHour(), fridge, tau(cold), heat(cold))
        .then(to - route.mixHour(), kitchenFrom(to), tau(room), heat(room));
  }

  private static double tau(RoomCooling cooling) {
    return cooling.tauHours();
  }

  private static double heat(RoomCooling cooling) {
    return cooling.heatCapacityPerKgFlourJPerK();
  }

  TemperatureTrace kitchenFrom(double hour) {
    return new LaterTrace(day.kitchen(), hour);
  }

  /** Whether the kitchen keeps one temperature. */
  boolean steadyKitchen() {
    return day.kitchen().breakpoints().length == 0;
  }

  /**
   * The loaf from its basket to some hours later.
   *
   * @param curve its dough
   * @param shapedHours from mixing to the basket
   * @param proof cold or kitchen
   * @param basketHour when it gets into the basket, on the axis
   * @param hours how long it is followed
   */
  PieceCurve loaf(
      Grown curve, double shapedHours, ProofKind proof, double basketHour, double hours) {
    return loaf(proof, basketHour)
        .run(curve.curve(), shapedHours, curve.coldError(), Math.max(hours, 0.05));
  }

  /**
   * A dough that has been run.
   *
   * @param curve the run
   * @param coldError how much warmer the refrigerator is than stated, K
   */
  record Grown(RiseCurve curve, double coldError) {}

  private LoafModel loaf(ProofKind proof, double basketHour) {
    LoafModel loaf = loaves.computeIfAbsent(proof, this::loaf);
    return proof == ProofKind.COLD || steadyKitchen() ? loaf : loaf.in(kitchenFrom(basketHour));
  }

  private LoafModel loaf(ProofKind kind) {
    Temperature kitchen = Temperature.ofCelsius(day.kitchen().celsius(0));
    Proof proof =
        kind == ProofKind.COLD
            ? Proof.inCold(day.fridge().orElseThrow(), 0)
            : Proof.inRoom(kitchen, 0);
    return LoafModel.of(day.dough(), piece(proof), LoafSettings.SEARCH);
  }

  private Proof piece(Proof proof) {
    return proof.withPiece(day.piece(), day.form()).withTarget(day.target());
  }

  /** Jar-equivalent rise at the oven. */
  double riseAtOven(
      Grown grown, BakeRoute route, double shapedHours, ProofKind proof, double ovenHours) {
    return loaf(
            grown,
            shapedHours,
            proof,
            route.mixHour() + shapedHours,
            Math.min(ovenHours - shapedHours, LONGEST_PROOF_HOURS))
        .riseAtEnd()
        .fraction();
  }

  /** Part of the target. */
  Rise partOfTarget(double part) {
    return new Rise(day.target().fraction() * part);
  }
}
