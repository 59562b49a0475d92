package doughtide.core.rise;

import doughtide.core.quantity.Temperature;
import doughtide.core.thermal.Conduction;
import doughtide.core.thermal.CoolingPiece;
import doughtide.core.thermal.HeatSource;
import doughtide.core.thermal.TemperatureTrace;
import java.util.Arrays;

/**
 * Temperature in every shell of a piece of dough for any temperature at which it starts. Conduction
 * is linear, so what the surroundings do, what the start leaves behind, and what a change of the
 * surroundings would do are tabulated once and added up. Immutable.
 */
public final class PieceTemperature {
  private static final double STEP_HOURS = 0.1;

  private final double[] fractions;
  private final double hours;
  private final double[][] surroundings;
  private final double[][] start;
  private final double[][] change;

  private PieceTemperature(
      Conduction conduction,
      double hours,
      double[][] surroundings,
      double[][] start,
      double[][] change) {
    this.fractions = conduction.volumeFractions();
    this.hours = hours;
    this.surroundings = surroundings;
    this.start = start;
    this.change = change;
  }

  /**
   * Tabulates a piece.
   *
   * @param conduction the body
   * @param around temperature of the air around it; hour 0 is when the piece gets there
   * @param changesFromHours a shift of the surroundings acts from this hour on (when it goes into
   *     the cold)
   * @param source heat of fermentation in the dough
   * @param hours how far to tabulate
   */
  public static PieceTemperature of(
      Conduction conduction,
      TemperatureTrace around,
      double changesFromHours,
      HeatSource source,
      double hours) {
    TemperatureTrace nothing = TemperatureTrace.steady(Temperature.ofCelsius(0));
    TemperatureTrace one = TemperatureTrace.steady(Temperature.ofCelsius(1));
    TemperatureTrace shift = changesFromHours > 0 ? nothing.then(changesFromHours, one) : one;
    double[] zero = new double[conduction.shells()];
    double[] ones = zero.clone();
    Arrays.fill(ones, 1);
    return new PieceTemperature(
        conduction,
        hours,
        tabulate(CoolingPiece.start(conduction, zero, around, source), hours),
        tabulate(CoolingPiece.start(conduction, ones, nothing, HeatSource.none()), hours),
        tabulate(CoolingPiece.start(conduction, zero, shift, HeatSource.none()), hours));
  }

  private static double[][] tabulate(CoolingPiece piece, double hours) {
    int rows = (int) Math.ceil(hours / STEP_HOURS) + 2;
    int shells = piece.conduction().shells();
    double[][] table = new double[rows][];
    for (int i = 0; i < rows; i++) {
      double[] row = Arrays.copyOf(piece.shellCelsius(i * STEP_HOURS), shells + 1);
      row[shells] = piece.coreCelsius(i * STEP_HOURS);
      table[i] = row;
    }
    return table;
  }

  /** Share of the dough in each shell, from the centre outward. */
  public double[] fractions() {
    return fractions.clone();
  }

  /** Number of shells. */
  public int shells() {
    return fractions.length;
  }

  /** How far the table goes, hours. */
  public double hours() {
    return hours;
  }

  /**
   * Temperature of a shell, °C.
   *
   * @param shell 0 at the centre
   * @param after hours since the piece got there
   * @param startCelsius temperature of the dough then
   * @param shiftCelsius how much warmer the surroundings are than stated
   */
  public double celsius(int shell, double after, double startCelsius, double shiftCelsius) {
    double place = Math.min(Math.max(after, 0), hours) / STEP_HOURS;
    int low = (int) place;
    double part = place - low;
    return startCelsius * between(start, shell, low, part)
        + between(surroundings, shell, low, part)
        + shiftCelsius * between(change, shell, low, part);
  }

  private static double between(double[][] table, int shell, int low, double part) {
    double value = table[low][shell];
    return value + part * (table[low + 1][shell] - value);
  }

  /** Temperature at the very centre, °C. */
  public double coreCelsius(double after, double startCelsius, double shiftCelsius) {
    return celsius(fractions.length, after, startCelsius, shiftCelsius);
  }
}
