package doughtide.core.thermal;

import doughtide.core.quantity.Checks;
import doughtide.core.quantity.InputException;
import java.util.Arrays;

/**
 * Collects a logger's readings into a trace of at most {@value #MOST_POINTS} points, however many
 * readings there are: where they are more, neighbours are put together by their mean. Not safe for
 * several threads.
 *
 * <pre>{@code
 * LoggedReadings readings = new LoggedReadings();
 * readings.add(0, 25.5);
 * readings.add(0.5, 25.1);
 * TemperatureTrace trace = readings.trace();
 * }</pre>
 */
public final class LoggedReadings {
  /** Most points of a trace, enough for one every two minutes over a week. */
  public static final int MOST_POINTS = 5000;

  private final double[] hours = new double[MOST_POINTS];
  private final double[] celsius = new double[MOST_POINTS];
  private int points;
  private int perPoint = 1;
  private int inLast;
  private long count;
  private double lastHours = Double.NEGATIVE_INFINITY;
  private double lowest = Double.POSITIVE_INFINITY;
  private double highest = Double.NEGATIVE_INFINITY;

  /**
   * Adds a reading.
   *
   * @param atHours later than the reading before, −8760…8760 h
   * @param atCelsius −60…300 °C
   * @throws InputException if a value is out of range or the hours do not ascend
   */
  public void add(double atHours, double atCelsius) {
    TraceHours.check(atHours);
    Checks.inRange("logged temperature", atCelsius, -60, 300, "°C");
    if (!(atHours > lastHours)) {
      throw new InputException(
          "logged-temperature.order",
          "hour "
              + Checks.plain(atHours)
              + " does not come after hour "
              + Checks.plain(lastHours)
              + ": put the readings in order");
    }
    if (points == 0 || inLast == perPoint) {
      begin();
    }
    int i = points - 1;
    inLast++;
    hours[i] += (atHours - hours[i]) / inLast;
    celsius[i] += (atCelsius - celsius[i]) / inLast;
    lastHours = atHours;
    lowest = Math.min(lowest, atCelsius);
    highest = Math.max(highest, atCelsius);
    count++;
  }

  private void begin() {
    if (points == MOST_POINTS) {
      halve();
    }
    hours[points] = 0;
    celsius[points] = 0;
    points++;
    inLast = 0;
  }

  /** Every two points, all full, become one. */
  private void halve() {
    points /= 2;
    for (int i = 0; i < points; i++) {
      hours[i] = (hours[2 * i] + hours[2 * i + 1]) / 2;
      celsius[i] = (celsius[2 * i] + celsius[2 * i + 1]) / 2;
    }
    perPoint *= 2;
  }

  /** {@return number of readings added} */
  public long count() {
    return count;
  }

  /** {@return hour of the last reading; negative infinity before the first} */
  public double lastHours() {
    return lastHours;
  }

  /** {@return lowest reading, °C; infinite before the first} */
  public double lowestCelsius() {
    return lowest;
  }

  /** {@return highest reading, °C; negative infinity before the first} */
  public double highestCelsius() {
    return highest;
  }

  /**
   * {@return the trace through the points, see {@link TemperatureTrace#logged}}
   *
   * @throws InputException if fewer than two readings were added
   */
  public TemperatureTrace trace() {
    return TemperatureTrace.logged(Arrays.copyOf(hours, points), Arrays.copyOf(celsius, points));
  }

  /** In a line, for logs: how many, and between which temperatures. */
  @Override
  public String toString() {
    return count == 0
        ? "no readings"
        : count
            + (count == 1 ? " reading, " : " readings, ")
            + Checks.plain(lowest)
            + "…"
            + Checks.plain(highest)
            + " °C, to hour "
            + Checks.plain(lastHours);
  }
}
