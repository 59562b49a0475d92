package doughtide.core.thermal;

import java.util.List;
import java.util.Optional;

/**
 * How warm the water has to be.
 *
 * @param waterCelsius temperature of the water, °C; below 0 it stands for ice that melts in the
 *     dough
 * @param ice tap water and ice to weigh, where the tap is too warm
 * @param warnings what to look out for, one line each
 */
public record WaterAnswer(double waterCelsius, Optional<Ice> ice, List<String> warnings) {
  /** Keeps its own copy of the warnings. */
  public WaterAnswer {
    warnings = List.copyOf(warnings);
  }

  /** Temperature of the water, °F. */
  public double waterFahrenheit() {
    return waterCelsius * 1.8 + 32;
  }
}
