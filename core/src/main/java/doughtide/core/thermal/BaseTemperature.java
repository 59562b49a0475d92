package doughtide.core.thermal;

import doughtide.core.Internal;
import doughtide.core.quantity.Checks;
import doughtide.core.quantity.Temperature;
import java.io.Serializable;

/**
 * The base temperature of a recipe and mixer: room plus flour plus water, in °C. What is left when
 * room and flour are taken off is the water. The base holds the mixer's warming in itself.
 *
 * @param sumCelsius sum of the three temperatures in °C, 0…150
 */
@Internal
public record BaseTemperature(double sumCelsius) implements Serializable {
  private static final double THREE_ZEROS_FAHRENHEIT = 96;

  /**
   * Checks the range.
   *
   * @throws doughtide.core.quantity.InputException outside 0…150 or not a number
   */
  public BaseTemperature {
    Checks.inRange("base temperature", sumCelsius, 0, 150, "°C");
  }

  /**
   * From a base in °C.
   *
   * @param sum 0…150
   */
  public static BaseTemperature ofCelsius(double sum) {
    return new BaseTemperature(sum);
  }

  /**
   * From a base that is the sum of three temperatures in °F.
   *
   * @param sum 96…366
   */
  public static BaseTemperature ofFahrenheit(double sum) {
    return new BaseTemperature((sum - THREE_ZEROS_FAHRENHEIT) / 1.8);
  }

  /**
   * The base that three temperatures make.
   *
   * @param room temperature of the room
   * @param flour temperature of the flour
   * @param water temperature of the water
   */
  public static BaseTemperature of(Temperature room, Temperature flour, Temperature water) {
    return new BaseTemperature(room.celsius() + flour.celsius() + water.celsius());
  }

  /**
   * Temperature of the water, °C; below 0 the base asks for ice.
   *
   * @param room temperature of the room
   * @param flour temperature of the flour
   */
  public double waterCelsius(Temperature room, Temperature flour) {
    return sumCelsius - room.celsius() - flour.celsius();
  }
}
