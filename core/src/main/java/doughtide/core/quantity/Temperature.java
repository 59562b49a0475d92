package doughtide.core.quantity;

import java.io.Serializable;

/**
 * A temperature.
 *
 * <pre>{@code
 * Temperature dough = Temperature.ofFahrenheit(76);
 * double celsius = dough.celsius(); // 24.44
 * }</pre>
 *
 * @param celsius degrees Celsius, −60…300 (dough, rooms, freezers and ovens; each use narrows it)
 */
public record Temperature(double celsius) implements Comparable<Temperature>, Serializable {
  private static final double ZERO_CELSIUS_K = 273.15;

  /**
   * @param celsius degrees Celsius, −60…300
   * @throws InputException outside −60…300 °C or not a number
   */
  public Temperature {
    Checks.inRange("temperature", celsius, -60, 300, "°C");
  }

  /**
   * @param celsius degrees Celsius, −60…300
   * @return the temperature
   */
  public static Temperature ofCelsius(double celsius) {
    return new Temperature(celsius);
  }

  /**
   * @param fahrenheit degrees Fahrenheit, −76…572
   * @return the temperature
   */
  public static Temperature ofFahrenheit(double fahrenheit) {
    Checks.inRange("temperature", fahrenheit, -76, 572, "°F");
    return new Temperature((fahrenheit - 32) / 1.8);
  }

  /** {@return degrees Fahrenheit} */
  public double fahrenheit() {
    return celsius * 1.8 + 32;
  }

  /** {@return kelvin} */
  public double kelvin() {
    return celsius + ZERO_CELSIUS_K;
  }

  @Override
  public int compareTo(Temperature other) {
    return Double.compare(celsius, other.celsius);
  }
}
