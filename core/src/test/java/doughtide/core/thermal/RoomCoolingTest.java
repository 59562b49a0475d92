package doughtide.core.thermal;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import doughtide.core.dough.DoughFormula;
import doughtide.core.dough.DoughProperties;
import doughtide.core.quantity.InputException;
import doughtide.core.quantity.Mass;
import doughtide.core.quantity.Share;
import doughtide.core.quantity.Temperature;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;

class RoomCoolingTest {
  private static final DoughFormula FORMULA = DoughFormula.builder().build();
  private static final Vessel TUB = Vessel.tub(Material.POLYPROPYLENE);

  private static RoomCooling cooling(double kilograms, Vessel vessel, Air air) {
    return RoomCooling.of(FORMULA, Mass.ofKilograms(kilograms), vessel, air);
  }

  @Test
  void aHouseholdDoughTakesHours() {
    assertThat(cooling(1.8, TUB, Air.STILL_ROOM).tauHours()).isBetween(2.0, 6.0);
  }

  @ParameterizedTest
  @EnumSource(Material.class)
  void moreDoughCoverAndStillerAirSlowItDown(Material material) {
    Vessel bowl = Vessel.bowl(material);
    double usual = cooling(1, bowl, Air.STILL_ROOM).tauHours();
    assertThat(cooling(2, bowl, Air.STILL_ROOM).tauHours()).isGreaterThan(usual);
    assertThat(cooling(1, bowl.open(), Air.STILL_ROOM).tauHours()).isLessThan(usual);
    assertThat(cooling(1, bowl, Air.MOVING).tauHours()).isLessThan(usual);
  }

  @Test
  void woodInsulatesAndSteelDoesNot() {
    double steel = cooling(1, Vessel.bowl(Material.STEEL), Air.STILL_ROOM).tauHours();
    double wood = cooling(1, Vessel.bowl(Material.OAK), Air.STILL_ROOM).tauHours();
    assertThat(wood).isGreaterThan(1.2 * steel);
  }

  /**
   * Without a wall the mean of the conduction model and this one fall together once the first hours
   * are over.
   */
  @Test
  void agreesWithConductionInTheLongRun() {
    Vessel free = new Vessel(PieceShape.round(), Wall.NONE, Cover.OPEN);
    RoomCooling simple = cooling(0.9, free, Air.STILL_ROOM);
    DoughHeat heat =
        DoughHeat.of(DoughProperties.of(FORMULA), Temperature.ofCelsius(25), Share.ofPercent(30));
    PieceGeometry piece = PieceShape.round().geometry(Mass.ofGrams(900), heat.densityKgPerM3());
    double coefficient = piece.surfaceWPerM2K(Air.STILL_ROOM, Wall.NONE, Cover.OPEN);
    Temperature start = Temperature.ofCelsius(28);
    Temperature room = Temperature.ofCelsius(18);
    CoolingPiece full =
        CoolingPiece.start(
            piece.conduction(heat, coefficient), start, TemperatureTrace.steady(room));
    for (double hours : new double[] {0.5, 1, 2, 4, 8}) {
      assertThat(simple.celsiusAfter(start, room, hours))
          .isCloseTo(full.meanCelsius(hours), within(1.0));
    }
  }

  @Test
  void heatCapacityIsThatOfDoughAndVessel() {
    double dough = FORMULA.doughPerFlour() * DoughProperties.of(FORMULA).heatCapacityJPerKgK(25);
    Vessel free = new Vessel(PieceShape.round(), Wall.NONE, Cover.OPEN);
    assertThat(cooling(1, free, Air.STILL_ROOM).heatCapacityPerKgFlourJPerK())
        .isCloseTo(dough, within(1e-6));
    assertThat(cooling(1, TUB, Air.STILL_ROOM).heatCapacityPerKgFlourJPerK())
        .isBetween(dough, 1.2 * dough);
  }

  /**
   * In a steady fall the wall's temperature is a straight line from the dough to its outer face:
   * its mean stands at (R/2 + 1/h) / (R + 1/h) of the dough's excess over the air.
   */
  @Test
  void theWallFollowsByItsMeanTemperature() {
    Vessel crock = Vessel.bowl(Material.OAK);
    DoughHeat heat =
        DoughHeat.of(DoughProperties.of(FORMULA), Temperature.ofCelsius(25), Share.ofPercent(30));
    PieceGeometry piece = crock.shape().geometry(Mass.ofKilograms(1), heat.densityKgPerM3());
    double inside = crock.wall().resistanceM2KPerW();
    double outside = 1 / Air.STILL_ROOM.sideWPerM2K();
    double full = (piece.sideM2() + piece.bottomM2()) * crock.wall().heatCapacityJPerM2K();
    double follows =
        cooling(1, crock, Air.STILL_ROOM).heatCapacityPerKgFlourJPerK() / FORMULA.doughPerFlour()
            - heat.heatCapacityJPerKgK();

    assertThat(follows / full)
        .isCloseTo((inside / 2 + outside) / (inside + outside), within(1e-6))
        .isLessThan(0.9);
  }

  @Test
  void fermentationWarmsAndTheRoomPulls() {
    RoomCooling cooling = new RoomCooling(4, 5000);
    assertThat(cooling.kelvinPerHour(26, 20, 0)).isCloseTo(-1.5, within(1e-12));
    assertThat(cooling.kelvinPerHour(20, 20, 0.05)).isCloseTo(0.502, within(1e-12));
    assertThat(cooling.lossPerKgFlourWPerK()).isCloseTo(5000 / 4.0 / 3600, within(1e-12));
  }

  @Test
  void warmerRoomNeverCoolsSooner() {
    RoomCooling cooling = cooling(1, TUB, Air.STILL_ROOM);
    Temperature start = Temperature.ofCelsius(26);
    for (double hours = 0; hours < 24; hours += 0.7) {
      double cool = cooling.celsiusAfter(start, Temperature.ofCelsius(18), hours);
      double warm = cooling.celsiusAfter(start, Temperature.ofCelsius(21), hours);
      assertThat(warm).isGreaterThanOrEqualTo(cool);
    }
  }

  @Test
  void refusesImpossibleValues() {
    assertThatThrownBy(() -> new RoomCooling(0, 5000)).isInstanceOf(InputException.class);
    assertThatThrownBy(() -> new RoomCooling(4, Double.NaN)).isInstanceOf(InputException.class);
  }
}
