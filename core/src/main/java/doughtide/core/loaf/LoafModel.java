package doughtide.core.loaf;

import doughtide.core.Internal;
import doughtide.core.dough.DoughFormula;
import doughtide.core.dough.DoughProperties;
import doughtide.core.quantity.Checks;
import doughtide.core.quantity.Rise;
import doughtide.core.quantity.Share;
import doughtide.core.quantity.Temperature;
import doughtide.core.rise.GasLosses;
import doughtide.core.rise.PieceBody;
import doughtide.core.rise.PieceCurve;
import doughtide.core.rise.RiseCurve;
import doughtide.core.rise.Unknowns;
import doughtide.core.thermal.Air;
import doughtide.core.thermal.Conduction;
import doughtide.core.thermal.Cover;
import doughtide.core.thermal.DoughHeat;
import doughtide.core.thermal.PieceGeometry;
import doughtide.core.thermal.TemperatureTrace;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.concurrent.ConcurrentHashMap;

/**
 * The one model of a piece of dough between the bench and the oven: it cools from its surface
 * inward, its own fermentation warms it, and every shell goes on rising at its own temperature. All
 * commands ask this one. Immutable.
 */
@Internal
public final class LoafModel {
  /** A shaped loaf is followed for so long at least, hours (starting value). */
  public static final double SHORTEST_PROOF_HOURS = 0.05;

  /** Mean rise of the loaf while it waits, as part of the target: its size (starting value). */
  private static final double MEAN_PART = 0.6;

  /** The dough's properties are taken halfway between this and the air (starting value). */
  private static final double SHAPED_CELSIUS = 24;

  private static final double LARGEST_GAS_SHARE = 0.85;

  private static final double FILM_GRID = 0.05; // in the logarithm: bodies are kept for later runs

  private final DoughFormula formula;
  private final Proof proof;
  private final Rise target;
  private final TemperatureTrace around;
  private final LoafSettings settings;
  private final StrengthPlan strength;
  private final Map<Long, PieceBody> bodies = new ConcurrentHashMap<>();

  private LoafModel(
      DoughFormula formula,
      Proof proof,
      TemperatureTrace around,
      LoafSettings settings,
      StrengthPlan strength) {
    this.formula = formula;
    this.proof = proof;
    this.target = proof.target().orElse(formula.targetRise());
    this.around = around;
    this.settings = settings;
    this.strength = strength;
  }

  /**
   * The loaf of a dough.
   *
   * @param formula the dough
   * @param proof its mass and form, how it is handled, where it waits, and the rise wanted
   * @param settings how finely
   */
  public static LoafModel of(DoughFormula formula, Proof proof, LoafSettings settings) {
    Checks.given("settings", settings);
    return new LoafModel(formula, proof, around(proof), settings, StrengthPlan.of(formula));
  }

  private PieceBody body(double filmFactor) {
    long key = Math.round(Math.log(filmFactor) / FILM_GRID);
    return bodies.computeIfAbsent(key, k -> bodyOf(Math.exp(k * FILM_GRID)));
  }

  private PieceBody bodyOf(double filmFactor) {
    double gas = 1 - (1 - Unknowns.USUAL_STARTING_AIR) / (1 + MEAN_PART * target.fraction());
    double air = proof.cold().or(proof::room).orElseThrow().celsius();
    DoughHeat heat =
        DoughHeat.of(
            DoughProperties.of(formula),
            Temperature.ofCelsius((SHAPED_CELSIUS + air) / 2),
            Share.ofFraction(Math.min(gas, LARGEST_GAS_SHARE)));
    PieceGeometry geometry = proof.form().shape().geometry(proof.mass(), heat.densityKgPerM3());
    double coefficient =
        geometry.surfaceWPerM2K(
            proof.coldPlace().map(Cold::air).orElse(Air.STILL_ROOM),
            filmFactor,
            proof.form().wall(),
            Cover.COVERED);
    Conduction conduction =
        Conduction.of(
            geometry.form(), geometry.lengthMetres(), heat, coefficient, settings.shells());
    return new PieceBody(conduction, around, proof.roomHours(), formula.doughPerFlour());
  }

  private static TemperatureTrace around(Proof proof) {
    TemperatureTrace first =
        TemperatureTrace.steady(
            (proof.roomHours() > 0 ? proof.room() : proof.cold().or(proof::room)).orElseThrow());
    return proof.cold().isPresent() && proof.roomHours() > 0
        ? first.then(proof.roomHours(), TemperatureTrace.steady(proof.cold().get()))
        : first;
  }

  /**
   * The same loaf where the temperature around it changes.
   *
   * @param air around it; hour 0 is when it is shaped
   */
  public LoafModel in(TemperatureTrace air) {
    return new LoafModel(formula, proof, air, settings, strength);
  }

  /** The same loaf of a dough that is folded otherwise than is usual for it. */
  public LoafModel folded(StrengthPlan folds) {
    return new LoafModel(formula, proof, around, settings, folds);
  }

  /** The same loaf in a cold that is warmer than believed. */
  LoafModel warmer(double celsius) {
    Cold cold = proof.coldPlace().orElseThrow().warmer(celsius);
    return new LoafModel(formula, proof.withCold(cold), around, settings, strength);
  }

  /** Rise wanted at the oven. */
  public Rise target() {
    return target;
  }

  /**
   * Follows a loaf.
   *
   * @param bulk the dough it is taken from
   * @param fromHours from mixing until it is shaped
   * @param scores what is not known of it
   * @param hours how long it is followed, more than 0
   */
  public PieceCurve run(RiseCurve bulk, double fromHours, LoafScores scores, double hours) {
    return PieceCurve.of(
        bulk,
        fromHours,
        body(scores),
        shift(scores),
        losses(fromHours, scores),
        hours,
        settings.stepHours());
  }

  /**
   * The rise of such a loaf at the end alone.
   *
   * @param bulk the dough it is taken from
   * @param fromHours from mixing until it is shaped
   * @param scores what is not known of it
   * @param hours how long it is followed, more than 0
   */
  public Rise riseAtEnd(RiseCurve bulk, double fromHours, LoafScores scores, double hours) {
    return PieceCurve.riseAtEnd(
        bulk,
        fromHours,
        body(scores),
        shift(scores),
        losses(fromHours, scores),
        hours,
        settings.stepHours());
  }

  private PieceBody body(LoafScores scores) {
    return body(proof.coldPlace().map(each -> each.filmFactor(scores.film())).orElse(1.0));
  }

  /** How much warmer the cold is than stated, K. */
  private double shift(LoafScores scores) {
    return proof
        .coldPlace()
        .map(each -> each.airCelsius(scores.air()) - each.stated().celsius())
        .orElse(0.0);
  }

  /** The rise of a loaf that is just shaped. */
  Rise justShaped(RiseCurve bulk, double fromHours, LoafScores scores) {
    return run(bulk, fromHours, scores, settings.stepHours()).riseAt(fromHours);
  }

  private GasLosses losses(double fromHours, LoafScores scores) {
    List<Double> folds = new ArrayList<>();
    for (int i = 1; i <= strength.folds(); i++) {
      double hour = i * strength.spacingHours();
      if (hour <= fromHours - proof.restHours()) {
        folds.add(hour);
      }
    }
    double shaped = proof.shapingOf(formula.flour()).handling().share(scores.hands());
    return new GasLosses(folds, Handling.FOLD.share(scores.hands()), shaped);
  }
}
