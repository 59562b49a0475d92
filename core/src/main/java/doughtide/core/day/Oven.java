package doughtide.core.day;

import doughtide.core.quantity.Checks;
import java.io.Serializable;

/**
 * An oven and what it needs.
 *
 * @param preheatHours from switching on to the first loaf, 0…6 h
 * @param bakeHours one batch, 0.1…4 h
 * @param coolHours from the oven to the first slice, 0…24 h
 * @param loaves how many fit at once, 1…500
 */
public record Oven(double preheatHours, double bakeHours, double coolHours, int loaves)
    implements Serializable {
  /**
   * Checks every range.
   *
   * @param preheatHours from switching on to the first loaf, 0…6 h
   * @param bakeHours one batch, 0.1…4 h
   * @param coolHours from the oven to the first slice, 0…24 h
   * @param loaves how many fit at once, 1…500
   */
  public Oven {
    Checks.inRange("preheating", preheatHours, 0, 6, "h");
    Checks.inRange("baking", bakeHours, 0.1, 4, "h");
    Checks.inRange("cooling", coolHours, 0, 24, "h");
    Checks.inRange("loaves in the oven", loaves, 1, 500, "");
  }

  /**
   * Preheated 45 min, a batch of two baked 45 min, cooled 90 min (common practice for loaves near
   * 850 g, no source).
   *
   * @return an oven for two loaves
   */
  public static Oven usual() {
    return new Oven(0.75, 0.75, 1.5, 2);
  }

  /**
   * {@return the same with room for another number of loaves}
   *
   * @param number loaves in one batch
   */
  public Oven withLoaves(int number) {
    return new Oven(preheatHours, bakeHours, coolHours, number);
  }

  /**
   * {@return batches for some loaves}
   *
   * @param number loaves to bake
   */
  public int batches(int number) {
    return (number + loaves - 1) / loaves;
  }
}
