package doughtide.core.thermal;

import doughtide.core.Internal;
import doughtide.core.quantity.SentRecord;
import java.io.Serializable;
import java.util.List;
import java.util.Optional;

/**
 * How warm the water has to be.
 *
 * @param waterCelsius temperature of the water, °C; below 0 it stands for ice that melts in the
 *     dough
 * @param plusMinusKelvin how far off it may be from what is not known exactly: half the width of
 *     the range that holds 8 in 10, K
 * @param ice tap water and ice to weigh, where the tap is too warm
 * @param cautions what to look out for
 */
@Internal
public record WaterAnswer(
    double waterCelsius, double plusMinusKelvin, Optional<Ice> ice, List<Caution> cautions)
    implements Serializable {

  /** What to look out for; the sentences stand in the language bundles of {@code report}. */
  @Internal
  public enum Caution {
    /** Above 45 °C: it kills the starter where they meet, and can scald. */
    HOT,
    /** Below 0 °C: only ice gives it. */
    BELOW_FREEZING
  }

  /** Keeps its own copy of the cautions. */
  public WaterAnswer {
    cautions = List.copyOf(cautions);
  }

  /** Temperature of the water, °F. */
  public double waterFahrenheit() {
    return waterCelsius * 1.8 + 32;
  }

  private Object writeReplace() {
    return SentRecord.of(this);
  }
}
