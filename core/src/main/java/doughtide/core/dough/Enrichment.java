package doughtide.core.dough;

import doughtide.core.quantity.Checks;
import java.io.Serializable;

/**
 * An ingredient whose effect on the fermentation is not modelled: its mass, its water and its
 * volume count, and a forecast of the dough carries a warning.
 *
 * @param kind what it is
 * @param share its mass over all flour, 0…1.5
 */
public record Enrichment(Kind kind, double share) implements Serializable {

  /** What it is, with its water and the density of the rest (from memory). */
  public enum Kind {
    /** Sugar, honey, syrup. */
    SUGAR("sugar", 0, 1.59),
    /** Butter, oil, lard. */
    FAT("fat", 0, 0.92),
    /** Milk and what is made of it; 87 % water. */
    MILK("milk", 0.87, 1.2),
    /** Egg; 75 % water. */
    EGG("egg", 0.75, 1.2),
    /** Baker's yeast, another organism than a sourdough's. */
    YEAST("yeast", 0, 1.1);

    private final String key;
    private final double water;
    private final double solidsKgPerLitre;

    Kind(String key, double water, double solidsKgPerLitre) {
      this.key = key;
      this.water = water;
      this.solidsKgPerLitre = solidsKgPerLitre;
    }

    /** {@return its key in options and documents} */
    public String key() {
      return key;
    }
  }

  /**
   * @param kind what it is
   * @param share its mass over all flour, 0…1.5
   * @throws doughtide.core.quantity.InputException if the share is out of range
   */
  public Enrichment {
    Checks.inRange("enrichment", kind.key, 100 * share, 0, 150, "%");
  }

  /** Its water over all flour. */
  double waterPerFlour() {
    return share * kind.water;
  }

  /** Its mass without its water, over all flour. */
  double solidsPerFlour() {
    return share - waterPerFlour();
  }

  double litresPerKgFlour() {
    return solidsPerFlour() / kind.solidsKgPerLitre;
  }
}
