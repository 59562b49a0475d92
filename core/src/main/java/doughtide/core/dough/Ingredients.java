package doughtide.core.dough;

import java.io.Serializable;

/**
 * What to weigh, in grams.
 *
 * @param flourGrams flour to add (the starter's flour not counted)
 * @param waterGrams water to pour (the starter's water not counted)
 * @param starterGrams starter
 * @param saltGrams salt
 */
public record Ingredients(
    double flourGrams, double waterGrams, double starterGrams, double saltGrams)
    implements Serializable {
  /** Mass of the dough, grams. */
  public double doughGrams() {
    return flourGrams + waterGrams + starterGrams + saltGrams;
  }
}
