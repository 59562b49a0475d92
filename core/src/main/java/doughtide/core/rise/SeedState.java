package doughtide.core.rise;

import doughtide.core.Internal;
import doughtide.core.quantity.Checks;
import java.io.Serializable;

/**
 * A starter as the model left it, in the place of what is assumed of a starter by its condition:
 * its cells, how awake they are, and the acid and gas it brings along.
 *
 * @param yeast living yeast against a ripe population, 0…1
 * @param bacteria lactic bacteria against a ripe population, 0…1
 * @param lnReadiness ln q of Baranyi &amp; Roberts 1994
 * @param acidMol lactic and acetic acid, mol per kg of the starter's flour
 * @param gasMol CO2 dissolved in its water, mol per kg of the starter's flour
 */
@Internal
public record SeedState(
    double yeast, double bacteria, double lnReadiness, double acidMol, double gasMol)
    implements Serializable {

  /**
   * @throws doughtide.core.quantity.InputException if a number is outside its range
   */
  public SeedState {
    Checks.inRange("yeast of the seed", yeast, 1e-9, 1, "");
    Checks.inRange("bacteria of the seed", bacteria, 1e-9, 1, "");
    Checks.inRange("acid of the seed", acidMol, 0, 5, "mol/kg");
    Checks.inRange("gas of the seed", gasMol, 0, 5, "mol/kg");
  }
}
