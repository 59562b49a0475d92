package doughtide.core.dough;

import java.io.Serializable;
import java.util.List;

/**
 * What to weigh, in grams.
 *
 * @param flourGrams flour to add (the starter's flour not counted)
 * @param waterGrams water to pour (the starter's water not counted, nor that of milk, egg and
 *     soakers)
 * @param starterGrams starter
 * @param saltGrams salt
 * @param additions everything else
 */
public record Ingredients(
    double flourGrams,
    double waterGrams,
    double starterGrams,
    double saltGrams,
    List<Addition> additions)
    implements Serializable {

  /**
   * Something beside flour, water, starter and salt.
   *
   * @param name as typed, or the key of its kind
   * @param grams as bought
   * @param soakGrams water to pour on it before
   */
  public record Addition(String name, double grams, double soakGrams) implements Serializable {}

  /**
   * Copies the list.
   *
   * @param flourGrams flour to add (the starter's flour not counted)
   * @param waterGrams water to pour
   * @param starterGrams starter
   * @param saltGrams salt
   * @param additions everything else
   */
  public Ingredients {
    additions = List.copyOf(additions);
  }

  /**
   * Flour, water, starter and salt alone.
   *
   * @param flourGrams flour to add, g
   * @param waterGrams water to add, g
   * @param starterGrams starter, g
   * @param saltGrams salt, g
   */
  public Ingredients(double flourGrams, double waterGrams, double starterGrams, double saltGrams) {
    this(flourGrams, waterGrams, starterGrams, saltGrams, List.of());
  }

  /**
   * {@return mass of everything beside flour, water, starter and salt, its soaking water included}
   */
  public double additionGrams() {
    return additions.stream().mapToDouble(each -> each.grams() + each.soakGrams()).sum();
  }

  /** {@return mass of the dough, grams} */
  public double doughGrams() {
    return flourGrams + waterGrams + starterGrams + saltGrams + additionGrams();
  }

  /**
   * {@return a part of it, for example one student's}
   *
   * @param part more than 0, where 1 is all of it
   */
  public Ingredients times(double part) {
    return new Ingredients(
        flourGrams * part,
        waterGrams * part,
        starterGrams * part,
        saltGrams * part,
        additions.stream()
            .map(each -> new Addition(each.name(), each.grams() * part, each.soakGrams() * part))
            .toList());
  }
}
