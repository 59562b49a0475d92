package doughtide.core.loaf;

import doughtide.core.dough.DoughFormula;
import doughtide.core.dough.DoughProperties;
import doughtide.core.quantity.Mass;
import doughtide.core.quantity.Rise;
import doughtide.core.quantity.Share;
import doughtide.core.quantity.Temperature;
import doughtide.core.rise.PieceTemperature;
import doughtide.core.rise.RiseModel;
import doughtide.core.rise.Unknowns;
import doughtide.core.thermal.Air;
import doughtide.core.thermal.Conduction;
import doughtide.core.thermal.Cover;
import doughtide.core.thermal.DoughHeat;
import doughtide.core.thermal.HeatSource;
import doughtide.core.thermal.PieceGeometry;
import doughtide.core.thermal.TemperatureTrace;

/**
 * The temperature inside a loaf while it waits for the oven.
 *
 * @param temperature of its shells
 */
public record LoafProof(PieceTemperature temperature) {
  private static final int SHELLS = 8;
  private static final double MEAN_PART = 0.5; // of the target, for the loaf's size

  /** Heat of fermentation in a lively dough, W per kg of dough (starting value). */
  private static final double LIVELY_WATTS_PER_KG = 0.15;

  /** The heat that dies down as the loaf cools, hour by hour (starting values). */
  private static final HeatSource DYING_DOWN =
      HeatSource.steps(new double[] {0, 1, 2, 4}, new double[] {0.15, 0.105, 0.0525, 0.02});

  private static final HeatSource LIVELY = HeatSource.steady(LIVELY_WATTS_PER_KG);

  /** The loaf of a proof. */
  public static LoafProof of(RiseModel model, Proof proof, double hours) {
    Rise target = proof.target().orElse(model.formula().flour().targetRise());
    Loaf loaf = new Loaf(model.formula(), proof.mass(), proof.form(), target);
    TemperatureTrace room = proof.room().map(TemperatureTrace::steady).orElseGet(() -> cold(proof));
    if (proof.cold().isEmpty()) {
      return loaf.inRoom(room, hours);
    }
    TemperatureTrace around =
        proof.roomHours() > 0 ? room.then(proof.roomHours(), cold(proof)) : cold(proof);
    return loaf.inCold(around, proof.roomHours(), hours);
  }

  private static TemperatureTrace cold(Proof proof) {
    return TemperatureTrace.steady(proof.cold().orElseThrow());
  }

  /** What is known of a loaf before it waits. */
  public record Loaf(DoughFormula formula, Mass mass, PieceForm form, Rise target) {
    public LoafProof inRoom(TemperatureTrace around, double hours) {
      return around(around, Air.STILL_ROOM, LIVELY, 0, hours);
    }

    public LoafProof inCold(TemperatureTrace around, double coldFromHours, double hours) {
      return around(around, Air.REFRIGERATOR, DYING_DOWN, coldFromHours, hours);
    }

    private LoafProof around(
        TemperatureTrace around, Air air, HeatSource source, double changesFrom, double hours) {
      double gas = 1 - (1 - Unknowns.USUAL_STARTING_AIR) / (1 + target.fraction() * MEAN_PART);
      DoughHeat heat =
          DoughHeat.of(
              DoughProperties.of(formula),
              Temperature.ofCelsius((around.celsius(0) + 24) / 2),
              Share.ofFraction(gas));
      PieceGeometry geometry = form.shape().geometry(mass, heat.densityKgPerM3());
      double coefficient = geometry.surfaceWPerM2K(air, form.wall(), Cover.COVERED);
      Conduction conduction =
          Conduction.of(geometry.form(), geometry.lengthMetres(), heat, coefficient, SHELLS);
      return new LoafProof(PieceTemperature.of(conduction, around, changesFrom, source, hours + 1));
    }
  }
}
