package doughtide.core.rise;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import doughtide.core.quantity.Temperature;
import doughtide.core.thermal.BodyForm;
import doughtide.core.thermal.Conduction;
import doughtide.core.thermal.DoughHeat;
import doughtide.core.thermal.TemperatureTrace;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;

/** Air and carbon dioxide are conserved, each by its own ledger, whatever hands do. */
class HandlingPropertyTest {
  private static final double TINY = 1e-9;
  private static final Conduction BALL =
      Conduction.of(BodyForm.SPHERE, 0.06, new DoughHeat(700, 2880, 0.25), 5, 8);

  @Test
  void handsTakeTheSameShareOfBothGasesAndNothingDissolved() {
    Random random = new Random(20260301);
    for (int i = 0; i < 200; i++) {
      RiseModel model = RandomDough.steady(random.nextLong());
      RiseCurve bulk = model.run(8);
      double at = 1 + 6 * random.nextDouble();
      double share = random.nextDouble();
      PieceCurve piece = piece(bulk, at, new GasLosses(List.of(), 0, share));
      GasBalance before = bulk.gasAt(at);
      GasBalance after = piece.gasAt(at);

      assertThat(after.dissolvedMol()).isCloseTo(before.dissolvedMol(), within(TINY));
      assertThat(after.inCellsMol()).isCloseTo((1 - share) * before.inCellsMol(), within(TINY));
      assertThat(after.lostMol())
          .isCloseTo(before.lostMol() + share * before.inCellsMol(), within(TINY));
      assertThat(after.madeMol()).isCloseTo(before.madeMol(), within(TINY));
      AirBalance air = piece.air();
      assertThat(air.inCellsMol()).isCloseTo((1 - share) * air.mixedInMol(), within(TINY));
      assertThat(air.inCellsMol() + air.lostMol()).isCloseTo(air.mixedInMol(), within(TINY));
    }
  }

  @Test
  void foldsAndShapingAddUpAndTheLoafKeepsItsBooks() {
    Random random = new Random(20260302);
    for (int i = 0; i < 100; i++) {
      RiseCurve bulk = RandomDough.steady(random.nextLong()).run(8);
      double fold = random.nextDouble() * 0.3;
      double shape = random.nextDouble();
      PieceCurve piece = piece(bulk, 5, new GasLosses(List.of(1.0, 2.0), fold, shape));
      GasBalance shaped = piece.gasAt(5);
      AirBalance air = piece.air();
      double keptAir = (1 - fold) * (1 - fold) * (1 - shape);

      assertThat(air.inCellsMol()).isCloseTo(keptAir * air.mixedInMol(), within(TINY));
      for (double hour : piece.hours()) {
        GasBalance now = piece.gasAt(hour);
        assertThat(now.dissolvedMol() + now.inCellsMol() + now.lostMol())
            .isCloseTo(now.madeMol(), within(TINY));
        assertThat(now.lostMol()).isGreaterThanOrEqualTo(shaped.lostMol() - TINY);
        assertThat(now.dissolvedMol()).isPositive();
      }
    }
  }

  private static PieceCurve piece(RiseCurve bulk, double at, GasLosses losses) {
    TemperatureTrace cold = TemperatureTrace.steady(Temperature.ofCelsius(4));
    PieceBody body = new PieceBody(BALL, cold, 0, 1.8);
    return PieceCurve.of(bulk, at, body, 0, losses, 6, 0.25);
  }
}
