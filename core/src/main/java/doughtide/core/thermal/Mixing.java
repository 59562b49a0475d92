package doughtide.core.thermal;

import doughtide.core.Internal;
import doughtide.core.quantity.Checks;
import java.io.Serializable;

/**
 * How much mixing alone warms dough and bowl, and how far that may be off.
 *
 * @param warming the likely warming; negative where hands, bowl and air cool the dough
 * @param plusMinusKelvin half the width of the range that holds 8 of 10 mixes, 0…10 K
 */
@Internal
public record Mixing(Warming warming, double plusMinusKelvin) implements Serializable {
  /** Nothing is gained or lost, for certain. */
  public static final Mixing NONE = new Mixing(Warming.NONE, 0);

  /**
   * By hand: a bowl and the air take about what the work of hands gives, 0 ± 1 °C (starting value).
   */
  public static final Mixing BY_HAND = new Mixing(Warming.NONE, 1);

  private static final double MEASURED_PLUS_MINUS_KELVIN = 0.5; // starting value

  /** Checks the range. */
  public Mixing {
    Checks.given("warming", warming);
    Checks.inRange("uncertainty of mixing", plusMinusKelvin, 0, 10, "K");
  }

  /** As measured before, with the same mixer or the same hands: ± 0.5 °C (starting value). */
  public static Mixing measured(Warming warming) {
    return new Mixing(warming, MEASURED_PLUS_MINUS_KELVIN);
  }
}
