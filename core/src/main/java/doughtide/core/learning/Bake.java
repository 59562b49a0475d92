package doughtide.core.learning;

import doughtide.core.dough.DoughFormula;
import doughtide.core.quantity.Checks;
import doughtide.core.quantity.InputException;
import doughtide.core.quantity.Temperature;
import doughtide.core.rise.DoughTemperature;
import doughtide.core.thermal.TemperatureTrace;
import java.io.Serializable;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/**
 * One dough and what was read off it.
 *
 * <pre>{@code
 * List<Reading> readings = List.of(
 *     Reading.ofRise(2, Rise.ofPercent(8)).withCelsius(25), Reading.ofRise(4, Rise.ofPercent(38)));
 * Bake bake = Bake.measured(
 *     "Saturday", formula, Optional.of(Temperature.ofCelsius(25.5)), readings);
 * }</pre>
 *
 * @param name as printed
 * @param formula the dough
 * @param temperature its own temperature over time
 * @param readings in ascending order of time, may be none
 * @param occasion doughs of one occasion share what differs from bake to bake, for example jars fed
 *     from one starter in one evening; empty for a bake of its own
 */
public record Bake(
    String name,
    DoughFormula formula,
    DoughTemperature temperature,
    List<Reading> readings,
    String occasion)
    implements Serializable {

  /**
   * @param name as printed
   * @param formula the dough
   * @param temperature its own temperature over time
   * @param readings in ascending order of time, may be none
   * @param occasion doughs of one occasion share what differs from bake to bake, for example jars
   *     fed from one starter in one evening
   * @throws InputException if the name is blank or the readings are not in ascending order
   */
  public Bake {
    Checks.given("formula", formula);
    Checks.given("occasion", occasion);
    Checks.given("temperature", temperature);
    if (name.isBlank()) {
      throw new InputException("bake.name", "a bake needs a name, for example its date");
    }
    readings = List.copyOf(readings);
    for (int i = 1; i < readings.size(); i++) {
      if (!(readings.get(i).hours() > readings.get(i - 1).hours())) {
        throw new InputException(
            "bake.reading-order",
            "bake '" + name + "': each reading must be later than the one before it");
      }
    }
  }

  /**
   * A bake of its own.
   *
   * @param name as printed
   * @param formula what was in the dough
   * @param temperature the dough's own temperature from mixing on
   * @param readings of the jar, in any order
   */
  public Bake(
      String name, DoughFormula formula, DoughTemperature temperature, List<Reading> readings) {
    this(name, formula, temperature, readings, "");
  }

  /**
   * {@return a bake whose temperature is known from its readings}
   *
   * @param name as printed
   * @param formula the dough
   * @param afterMixing dough temperature right after mixing, if it was measured
   * @param readings in ascending order of time
   * @throws InputException if no temperature is known at all
   */
  public static Bake measured(
      String name,
      DoughFormula formula,
      Optional<Temperature> afterMixing,
      List<Reading> readings) {
    return new Bake(name, formula, temperature(name, afterMixing, readings), readings);
  }

  private static DoughTemperature temperature(
      String name, Optional<Temperature> afterMixing, List<Reading> readings) {
    List<Double> hours = new ArrayList<>();
    List<Double> celsius = new ArrayList<>();
    boolean readAtStart =
        readings.stream().anyMatch(each -> each.hours() == 0 && each.celsius().isPresent());
    if (afterMixing.isPresent() && !readAtStart) {
      hours.add(0.0);
      celsius.add(afterMixing.get().celsius());
    }
    for (Reading each : readings) {
      each.celsius()
          .ifPresent(
              value -> {
                hours.add(each.hours());
                celsius.add(value);
              });
    }
    if (hours.isEmpty()) {
      throw new InputException(
          "bake.dough-temperature",
          "bake '" + name + "' has no dough temperature: give the one after mixing, or read it");
    }
    return hours.size() == 1
        ? DoughTemperature.steady(Temperature.ofCelsius(celsius.get(0)))
        : DoughTemperature.following(TemperatureTrace.logged(array(hours), array(celsius)));
  }

  private static double[] array(List<Double> values) {
    return values.stream().mapToDouble(Double::doubleValue).toArray();
  }

  /**
   * {@return the same bake as one of an occasion; empty for a bake of its own}
   *
   * @param newOccasion day or bake session; bakes of one occasion share what their day does to them
   */
  public Bake of(String newOccasion) {
    return new Bake(name, formula, temperature, readings, newOccasion);
  }

  /** {@return time of the last reading, hours; 0 if there is none} */
  public double lastHours() {
    return readings.isEmpty() ? 0 : readings.get(readings.size() - 1).hours();
  }

  /** {@return readings of the rise} */
  public int riseReadings() {
    return (int) readings.stream().filter(each -> each.rise().isPresent()).count();
  }

  /**
   * {@return the same bake without the readings after an hour}
   *
   * @param hours since mixing
   */
  public Bake until(double hours) {
    return new Bake(
        name,
        formula,
        temperature,
        readings.stream().filter(each -> each.hours() <= hours).toList(),
        occasion);
  }
}
