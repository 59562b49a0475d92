package doughtide.core.loaf;

import doughtide.core.dough.DoughFormula;
import doughtide.core.dough.DoughProperties;
import doughtide.core.quantity.Rise;
import doughtide.core.quantity.Share;
import doughtide.core.quantity.Temperature;
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

/**
 * The one model of a piece of dough between the bench and the oven: it cools from its surface
 * inward, its own fermentation warms it, and every shell goes on rising at its own temperature. All
 * commands ask this one. Immutable.
 */
public final class LoafModel {
  /** Mean rise of the loaf while it waits, as part of the target: its size (starting value). */
  private static final double MEAN_PART = 0.6;

  /** The dough's properties are taken halfway between this and the air (starting value). */
  private static final double SHAPED_CELSIUS = 24;

  private static final double LARGEST_GAS_SHARE = 0.85;

  private final Rise target;
  private final PieceBody body;
  private final LoafSettings settings;

  private LoafModel(Rise target, PieceBody body, LoafSettings settings) {
    this.target = target;
    this.body = body;
    this.settings = settings;
  }

  /**
   * The loaf of a dough.
   *
   * @param formula the dough
   * @param proof its mass and form, where it waits, and the rise wanted
   * @param settings how finely
   */
  public static LoafModel of(DoughFormula formula, Proof proof, LoafSettings settings) {
    Rise target = proof.target().orElse(formula.flour().targetRise());
    Conduction conduction = conduction(formula, proof, target, settings);
    PieceBody body =
        new PieceBody(conduction, around(proof), proof.roomHours(), formula.doughPerFlour());
    return new LoafModel(target, body, settings);
  }

  private static Conduction conduction(
      DoughFormula formula, Proof proof, Rise target, LoafSettings settings) {
    double gas = 1 - (1 - Unknowns.USUAL_STARTING_AIR) / (1 + MEAN_PART * target.fraction());
    double air = proof.cold().or(proof::room).orElseThrow().celsius();
    DoughHeat heat =
        DoughHeat.of(
            DoughProperties.of(formula),
            Temperature.ofCelsius((SHAPED_CELSIUS + air) / 2),
            Share.ofFraction(Math.min(gas, LARGEST_GAS_SHARE)));
    PieceGeometry geometry = proof.form().shape().geometry(proof.mass(), heat.densityKgPerM3());
    Air moved = proof.cold().isPresent() ? Air.REFRIGERATOR : Air.STILL_ROOM;
    double coefficient = geometry.surfaceWPerM2K(moved, proof.form().wall(), Cover.COVERED);
    return Conduction.of(
        geometry.form(), geometry.lengthMetres(), heat, coefficient, settings.shells());
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
    PieceBody there =
        new PieceBody(body.conduction(), air, body.changesFromHours(), body.doughPerFlour());
    return new LoafModel(target, there, settings);
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
   * @param warmerCelsius how much warmer the cold is than stated, K
   * @param hours how long it is followed, more than 0
   */
  public PieceCurve run(RiseCurve bulk, double fromHours, double warmerCelsius, double hours) {
    return PieceCurve.of(bulk, fromHours, body, warmerCelsius, hours, settings.stepHours());
  }
}
