package doughtide.core.thermal;

import doughtide.core.quantity.Checks;
import doughtide.core.quantity.Temperature;
import java.io.Serializable;
import java.util.List;

/**
 * A temperature over time. All implementations are immutable, serializable and defined for every
 * finite hour; what lies before the first thing known equals the first value, what lies after the
 * last equals the last.
 *
 * <pre>{@code
 * TemperatureTrace night =
 *     TemperatureTrace.steady(Temperature.ofCelsius(24))
 *         .then(3.5, TemperatureTrace.steady(Temperature.ofCelsius(5)));
 * double celsius = night.celsius(6); // 5.0
 * }</pre>
 */
public interface TemperatureTrace extends Serializable {
  /**
   * Temperature at an hour. At a jump the value after the jump counts.
   *
   * @param hours hours since the start of the trace, any finite number
   * @return degrees Celsius
   */
  double celsius(double hours);

  /**
   * {@return the hours at which the temperature jumps or its slope does, ascending, maybe none} An
   * integrator restarts there; in between the trace is smooth.
   */
  double[] breakpoints();

  /**
   * {@return what a dough makes of this temperature: the same, but of a logger's readings less than
   * a quarter of an hour apart, nothing that lasts only minutes}
   */
  default TemperatureTrace ofDough() {
    return this;
  }

  /**
   * {@return the highest reading that {@link #ofDough} took out as no temperature of the dough, °C;
   * negative infinity for none}
   */
  default double highestSpikeCelsius() {
    return Double.NEGATIVE_INFINITY;
  }

  /**
   * {@return the same temperature all the time}
   *
   * @param temperature the temperature
   */
  static TemperatureTrace steady(Temperature temperature) {
    return new StepTrace(List.of(new Step(0, temperature)));
  }

  /**
   * {@return a trace of steps: each temperature holds from its hour until the next step's; the
   * first also holds before its own hour}
   *
   * @param steps one or more, hours strictly ascending
   * @throws doughtide.core.quantity.InputException if there is none or the hours do not ascend
   */
  static TemperatureTrace steps(List<Step> steps) {
    return new StepTrace(steps);
  }

  /**
   * {@return a smooth line through a logger's readings that never overshoots them (monotone cubic,
   * Fritsch &amp; Carlson 1980, SIAM J Numer Anal 17:238); the first and the last reading hold
   * before and after} The breakpoints are the first and the last reading only: in between the slope
   * is continuous.
   *
   * @param hours two or more, strictly ascending
   * @param celsius as many readings, −60…300 °C
   * @throws doughtide.core.quantity.InputException if the lengths differ, there are fewer than two,
   *     the hours do not ascend, or a value is out of range
   */
  static TemperatureTrace logged(double[] hours, double[] celsius) {
    return new LoggedTrace(hours, celsius);
  }

  /**
   * {@return this trace until an hour, then another one that starts its own hour 0 there}
   *
   * @param hours the hour of the change, 0 or later
   * @param next what follows
   */
  default TemperatureTrace then(double hours, TemperatureTrace next) {
    return new SequenceTrace(this, hours, next);
  }

  /**
   * A temperature that holds from an hour on.
   *
   * @param hours from when, −8760…8760 (a year either way)
   * @param temperature the temperature
   */
  record Step(double hours, Temperature temperature) implements Serializable {
    /**
     * Checks the hour.
     *
     * @param hours from when, −8760…8760 (a year either way)
     * @param temperature the temperature
     * @throws doughtide.core.quantity.InputException if the hour is out of range or not a number
     */
    public Step {
      Checks.given("temperature", temperature);
      TraceHours.check(hours);
    }
  }
}
