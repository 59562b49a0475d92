package doughtide.core.loaf;

import doughtide.core.quantity.Checks;
import doughtide.core.quantity.Temperature;
import doughtide.core.thermal.Air;
import java.io.Serializable;

/**
 * The cold a loaf waits in and how well it is known: the temperature of the air on that shelf, and
 * how well that air takes up heat.
 *
 * <pre>{@code
 * Cold cold = Cold.byDial(Temperature.ofCelsius(4)).moved(Air.MOVING);
 * }</pre>
 *
 * @param stated by the dial or a thermometer, −30…25 °C
 * @param offsetCelsius air minus stated, mean, −10…10 °C
 * @param deviationCelsius its standard deviation, 0…10 °C
 * @param air still or moved
 * @param filmLogFactor natural logarithm of the film's coefficient over that of {@code air}, mean
 * @param filmLogDeviation its standard deviation, 0…2
 */
public record Cold(
    Temperature stated,
    double offsetCelsius,
    double deviationCelsius,
    Air air,
    double filmLogFactor,
    double filmLogDeviation)
    implements Serializable {
  /**
   * Standard deviation of the air where only the dial is known, °C: 2.5 among 127 refrigerators
   * (Gilbert et al. 2007, Br Food J, from a summary).
   */
  public static final double DIAL_CELSIUS = 2.5;

  /** The same where a thermometer stood in a glass of water on that shelf (starting value), °C. */
  public static final double MEASURED_CELSIUS = 0.5;

  /** Of the film's logarithm, for where the loaf stands in the air (starting value). */
  public static final double FILM_DEVIATION = 0.3;

  /**
   * Checks every range.
   *
   * @param stated by the dial or a thermometer, −30…25 °C
   * @param offsetCelsius air minus stated, mean, −10…10 °C
   * @param deviationCelsius its standard deviation, 0…10 °C
   * @param air still or moved
   * @param filmLogFactor natural logarithm of the film's coefficient over that of {@code air}, mean
   * @param filmLogDeviation its standard deviation, 0…2
   */
  public Cold {
    Checks.given("air", air);
    Checks.inRange("temperature of the cold", stated.celsius(), -30, 25, "°C");
    Checks.inRange("air of the cold against what is stated", offsetCelsius, -10, 10, "°C");
    Checks.inRange("deviation of the air", deviationCelsius, 0, 10, "°C");
    Checks.inRange("logarithm of the film's factor", filmLogFactor, -2, 2, "");
    Checks.inRange("deviation of the film's factor", filmLogDeviation, 0, 2, "");
  }

  /**
   * {@return a cold of which only the dial is known}
   *
   * @param stated what the dial says
   */
  public static Cold byDial(Temperature stated) {
    return new Cold(stated, 0, DIAL_CELSIUS, Air.STILL_COLD, 0, FILM_DEVIATION);
  }

  /** {@return the same measured in a glass of water on that shelf} */
  public Cold measured() {
    return known(offsetCelsius, MEASURED_CELSIUS, filmLogFactor, filmLogDeviation);
  }

  /**
   * {@return the same with still air or a fan}
   *
   * @param newAir how the air moves
   */
  public Cold moved(Air newAir) {
    return new Cold(
        stated, offsetCelsius, deviationCelsius, newAir, filmLogFactor, filmLogDeviation);
  }

  /**
   * {@return the same after something was learned of it}
   *
   * @param offset how much warmer the air is than stated, K
   * @param deviation standard deviation of that, K
   * @param film natural logarithm of the factor on the film of air round the loaf
   * @param filmDeviation standard deviation of that logarithm
   */
  public Cold known(double offset, double deviation, double film, double filmDeviation) {
    return new Cold(stated, offset, deviation, air, film, filmDeviation);
  }

  /**
   * {@return the same place with what is known of another, stated alike}
   *
   * @param other whose offset, film and their deviations are taken
   */
  public Cold asKnown(Cold other) {
    return known(
        other.offsetCelsius, other.deviationCelsius, other.filmLogFactor, other.filmLogDeviation);
  }

  /**
   * {@return the same, warmer than believed}
   *
   * @param celsius by how much, K; negative for colder
   */
  public Cold warmer(double celsius) {
    return known(
        Math.min(offsetCelsius + celsius, 10), deviationCelsius, filmLogFactor, filmLogDeviation);
  }

  /** {@return what its air likely is} */
  public Temperature likelyAir() {
    return Temperature.ofCelsius(airCelsius(0));
  }

  /**
   * Its air, °C.
   *
   * @param score standard normal
   */
  double airCelsius(double score) {
    return stated.celsius() + offsetCelsius + deviationCelsius * score;
  }

  /**
   * Factor on the coefficient of the air's film.
   *
   * @param score standard normal
   */
  double filmFactor(double score) {
    return Math.exp(filmLogFactor + filmLogDeviation * score);
  }
}
