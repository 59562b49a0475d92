package doughtide.core.thermal;

import doughtide.core.Internal;
import doughtide.core.dough.DoughFormula;
import doughtide.core.dough.DoughProperties;
import doughtide.core.quantity.Checks;
import doughtide.core.quantity.Mass;
import doughtide.core.quantity.Share;
import doughtide.core.quantity.Temperature;
import java.io.Serializable;

/**
 * A dough left in a room, with one temperature for all of it: dT/dt = (room − T)/tau + heat of
 * fermentation / heat capacity.
 *
 * <p>tau is heat capacity times resistance. The resistance at the surface is 1/(U·A) with the mean
 * coefficient of {@link PieceGeometry#surfaceWPerM2K}; the resistance inside the dough is what
 * makes the slowest mode of conduction come out right (its Biot correction, see {@link
 * Conduction#timeConstantHours}). The vessel's wall counts with the part of its heat that follows
 * the dough. Fermentation sets free 50.2 kJ per mol of CO2 (Colombié et al. 2007, second hand). Not
 * counted: water drying from an open surface, a warm or cold shelf below.
 *
 * <pre>{@code
 * RoomCooling cooling =
 *     RoomCooling.of(formula, Mass.ofKilograms(1.8), Vessel.tub(Material.POLYPROPYLENE), Air.STILL_ROOM);
 * double hours = cooling.tauHours();
 * }</pre>
 *
 * @param tauHours time constant, hours, more than 0
 * @param heatCapacityPerKgFlourJPerK heat capacity of dough and vessel per kg of all flour, J/K,
 *     more than 0
 */
@Internal
public record RoomCooling(double tauHours, double heatCapacityPerKgFlourJPerK)
    implements Serializable {
  private static final double SECONDS_PER_HOUR = 3600;
  private static final Temperature PROPERTIES_AT = Temperature.ofCelsius(25);

  /** Gas share halfway through a rise, for the dough's size and conductivity: starting value. */
  private static final Share HALFWAY_GAS = Share.ofPercent(30);

  /**
   * Checks the two values.
   *
   * @throws doughtide.core.quantity.InputException outside 0.01…1000 h or 500…100 000 J/K
   */
  public RoomCooling {
    Checks.inRange("time constant", tauHours, 0.01, 1000, "h");
    Checks.inRange("heat capacity per kg flour", heatCapacityPerKgFlourJPerK, 500, 1e5, "J/K");
  }

  /**
   * From the dough, its vessel and the air, with the gas share of a dough halfway through its rise.
   *
   * @param formula the dough
   * @param dough its mass
   * @param vessel what it stands in
   * @param air the air around
   */
  public static RoomCooling of(DoughFormula formula, Mass dough, Vessel vessel, Air air) {
    return of(formula, dough, vessel, air, HALFWAY_GAS);
  }

  /**
   * From the dough, its vessel and the air.
   *
   * @param formula the dough
   * @param dough its mass
   * @param vessel what it stands in
   * @param air the air around
   * @param gasShare volume of gas over volume of dough, 0…90 %
   */
  public static RoomCooling of(
      DoughFormula formula, Mass dough, Vessel vessel, Air air, Share gasShare) {
    DoughHeat heat = DoughHeat.of(DoughProperties.of(formula), PROPERTIES_AT, gasShare);
    PieceGeometry piece = vessel.shape().geometry(dough, heat.densityKgPerM3());
    double coefficient = piece.surfaceWPerM2K(air, vessel.wall(), vessel.cover());
    Conduction conduction = piece.conduction(heat, coefficient);
    double doughCapacity = dough.kilograms() * heat.heatCapacityJPerKgK();
    double capacity = doughCapacity + wallCapacity(piece, vessel.wall(), air);
    double tau = conduction.timeConstantHours() * capacity / doughCapacity;
    double flourKg = dough.kilograms() / formula.doughPerFlour();
    return new RoomCooling(tau, capacity / flourKg);
  }

  /**
   * The wall's heat capacity times its mean excess over the air, in parts of the dough's excess.
   */
  private static double wallCapacity(PieceGeometry piece, Wall wall, Air air) {
    double inside = wall.resistanceM2KPerW();
    double outside = 1 / air.sideWPerM2K();
    double follows = (inside / 2 + outside) / (inside + outside);
    return (piece.sideM2() + piece.bottomM2()) * wall.heatCapacityJPerM2K() * follows;
  }

  /**
   * Change of the dough's temperature, K per hour.
   *
   * @param doughCelsius the dough's temperature now
   * @param roomCelsius the room's temperature now
   * @param co2MolPerKgFlourHour CO2 made per kg of all flour and hour, mol
   */
  public double kelvinPerHour(
      double doughCelsius, double roomCelsius, double co2MolPerKgFlourHour) {
    double heat = HeatSource.FERMENTATION_J_PER_MOL_CO2 * co2MolPerKgFlourHour;
    return (roomCelsius - doughCelsius) / tauHours + heat / heatCapacityPerKgFlourJPerK;
  }

  /**
   * Temperature after some hours in a steady room, fermentation not counted.
   *
   * @param start the dough's temperature at hour 0
   * @param room the room's temperature
   * @param hours 0 or more
   * @return °C
   */
  public double celsiusAfter(Temperature start, Temperature room, double hours) {
    double excess = start.celsius() - room.celsius();
    return room.celsius() + excess * Math.exp(-Math.max(0, hours) / tauHours);
  }

  /** Hours in which half of the difference to a steady room is gone: tau times ln 2. */
  public double halfwayHours() {
    return tauHours * Math.log(2);
  }

  /** Heat that leaves per kelvin of excess and kg of all flour, W/K. */
  public double lossPerKgFlourWPerK() {
    return heatCapacityPerKgFlourJPerK / (tauHours * SECONDS_PER_HOUR);
  }
}
