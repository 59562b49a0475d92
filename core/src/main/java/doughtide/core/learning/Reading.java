package doughtide.core.learning;

import doughtide.core.quantity.Checks;
import doughtide.core.quantity.Rise;
import doughtide.core.quantity.SentRecord;
import doughtide.core.rise.DoughTemperature;
import doughtide.core.rise.RiseModel;
import java.io.Serializable;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * What a baker read off one dough at one moment. At least one of rise, temperature and pH.
 *
 * @param hours since mixing, 0…240 h
 * @param rise rise in the sample jar over its starting height
 * @param celsius dough temperature, −2…45 °C
 * @param ph pH, 3…7.5
 */
public record Reading(double hours, Optional<Rise> rise, OptionalDouble celsius, OptionalDouble ph)
    implements Serializable {

  /**
   * Checks every range.
   *
   * @param hours since mixing, 0…240 h
   * @param rise rise in the sample jar over its starting height
   * @param celsius dough temperature, −2…45 °C
   * @param ph pH, 3…7.5
   */
  public Reading {
    Checks.given("rise", rise);
    Checks.inRange("time of a reading", hours, 0, RiseModel.LONGEST_HOURS, "h");
    celsius.ifPresent(
        value ->
            Checks.inRange(
                "dough temperature",
                value,
                DoughTemperature.LOWEST_CELSIUS,
                DoughTemperature.HIGHEST_CELSIUS,
                "°C"));
    ph.ifPresent(value -> Checks.inRange("pH", value, 3, 7.5, ""));
  }

  /**
   * {@return a reading of the rise alone}
   *
   * @param hours since mixing, 0 or more
   * @param rise over the volume after mixing
   */
  public static Reading ofRise(double hours, Rise rise) {
    return new Reading(hours, Optional.of(rise), OptionalDouble.empty(), OptionalDouble.empty());
  }

  /**
   * {@return the same reading at another time}
   *
   * @param other since mixing, 0…240 h
   */
  public Reading at(double other) {
    return new Reading(other, rise, celsius, ph);
  }

  /**
   * {@return the same reading with the dough's temperature}
   *
   * @param degrees −2…45 °C
   */
  public Reading withCelsius(double degrees) {
    return new Reading(hours, rise, OptionalDouble.of(degrees), ph);
  }

  /**
   * {@return the same reading with a pH}
   *
   * @param value 3…7.5
   */
  public Reading withPh(double value) {
    return new Reading(hours, rise, celsius, OptionalDouble.of(value));
  }

  private Object writeReplace() {
    return SentRecord.of(this);
  }
}
