package doughtide.core.dough;

import doughtide.core.quantity.InputException;
import doughtide.core.quantity.Rise;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;

/**
 * The flours the tool knows by name. A new class is one line here.
 *
 * <p>Compositions are round figures for flours as sold at 14 % moisture, from memory of food
 * composition tables; a bag's own protein figure is better ({@link Flour#withProtein}). Gas
 * retention: 0.70 for strong white dough is a starting value, lower with bran and with less gluten
 * (after Marek &amp; Bushuk 1967, Cereal Chem 44:300, in sign). Target rise: common practice, no
 * source.
 */
public enum FlourClass {
  /** Plain bread or all-purpose wheat flour, about 10–11 % protein. */
  WHITE("white", parts(10.3, 1.0, 2.7, 0.50), 0.75, 1.0, 85, "wheat"),
  /** Strong wheat flour for bread, about 12–13 % protein. */
  STRONG_WHITE("strong white", parts(12.5, 1.3, 2.6, 0.55), 0.77, 1.0, 90, "wheat"),
  /** Wheat ground whole. */
  WHOLEMEAL_WHEAT("wholemeal wheat", parts(12.8, 2.2, 10.7, 1.60), 0.70, 0.85, 65, "wheat"),
  /** Sifted rye. */
  RYE("rye", parts(8.5, 1.5, 8.0, 1.10), 0.60, 0.0, 45, "rye"),
  /** Rye ground whole. */
  WHOLEMEAL_RYE("wholemeal rye", parts(9.5, 1.9, 14.0, 1.60), 0.58, 0.0, 40, "rye"),
  /** Sifted spelt. */
  SPELT("spelt", parts(12.5, 1.7, 3.6, 0.80), 0.72, 0.9, 70, "wheat (spelt)"),
  /** Spelt ground whole. */
  WHOLEMEAL_SPELT("wholemeal spelt", parts(13.5, 2.4, 9.5, 1.70), 0.68, 0.8, 60, "wheat (spelt)");

  private final Flour flour;

  FlourClass(
      String name,
      Composition composition,
      double retention,
      double gluten,
      double targetRisePercent,
      String cereal) {
    Rise target = Rise.ofPercent(targetRisePercent);
    this.flour = new Flour(name, composition, retention, gluten, target, List.of(cereal));
  }

  private static Composition parts(double protein, double fat, double fibre, double ash) {
    return Composition.ofParts(protein / 100, fat / 100, fibre / 100, ash / 100, 0.14);
  }

  /** {@return the flour with the usual properties of its class} */
  public Flour flour() {
    return flour;
  }

  /**
   * Finds a class by its name, upper or lower case.
   *
   * @param name for example {@code "wholemeal wheat"}
   * @return the class
   * @throws InputException if there is no such class; the message lists them
   */
  public static FlourClass named(String name) {
    String wanted = name.strip().toLowerCase(Locale.ROOT).replaceAll("[\\s_-]+", " ");
    return Arrays.stream(values())
        .filter(each -> each.flour.name().equals(wanted))
        .findFirst()
        .orElseThrow(
            () ->
                InputException.unknown(
                    "flour",
                    name,
                    Arrays.stream(values()).map(each -> each.flour.name()).toList()));
  }

  /** {@return all names, separated by commas, in the order of this list} */
  public static String names() {
    return String.join(", ", Arrays.stream(values()).map(each -> each.flour.name()).toList());
  }
}
