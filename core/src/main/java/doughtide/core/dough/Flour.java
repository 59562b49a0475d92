package doughtide.core.dough;

import doughtide.core.quantity.Checks;
import doughtide.core.quantity.InputException;
import doughtide.core.quantity.Rise;
import doughtide.core.quantity.Share;
import java.io.Serializable;
import java.util.ArrayList;
import java.util.List;
import java.util.TreeSet;

/**
 * A flour or a mix of flours, immutable.
 *
 * <pre>{@code
 * Flour flour = Flour.mix(List.of(
 *     new Flour.Part(FlourClass.STRONG_WHITE.flour(), Share.ofPercent(80)),
 *     new Flour.Part(FlourClass.WHOLEMEAL_WHEAT.flour(), Share.ofPercent(20))));
 * }</pre>
 *
 * @param name as printed
 * @param composition mass fractions as sold
 * @param retention gas share of the volume above which a well-made dough of this flour begins to
 *     leak, 0.2…0.8
 * @param gluten share of the flour that forms gluten, 0 (rye) … 1 (wheat); it decides how far water
 *     slackens the dough
 * @param targetRise jar-equivalent rise at which a loaf of this flour is usually baked (common
 *     practice, no source)
 * @param cereals the cereals in it by name, for allergen lines, in alphabetical order
 */
public record Flour(
    String name,
    Composition composition,
    double retention,
    double gluten,
    Rise targetRise,
    List<String> cereals)
    implements Serializable {

  private static final double SHARES_TOLERANCE = 1e-3;
  private static final int LONGEST_NAME = 200;

  /**
   * @throws InputException if a value is outside its range
   */
  public Flour {
    if (name.isBlank() || name.length() > LONGEST_NAME) {
      throw new InputException(
          "flour-name.length",
          "flour name must have 1 to " + LONGEST_NAME + " characters, it has " + name.length());
    }
    Checks.inRange("gas retention of the flour", retention, 0.2, 0.8, "");
    Checks.inRange("gluten share of the flour", gluten, 0, 1, "");
    cereals = List.copyOf(new TreeSet<>(cereals));
  }

  /**
   * One flour of a mix.
   *
   * @param flour the flour
   * @param share its share of the mix
   */
  public record Part(Flour flour, Share share) implements Serializable {}

  /**
   * A mix; every property adds up linearly by share.
   *
   * @param parts one or more flours whose shares add up to 100 %
   * @return the mix, named after its parts
   * @throws InputException if there is no part or the shares do not add up to 100 %
   */
  public static Flour mix(List<Part> parts) {
    if (parts.isEmpty()) {
      throw new InputException(
          "flour-mix.empty", "a flour mix needs at least one flour, for example white:100%");
    }
    double sum = parts.stream().mapToDouble(part -> part.share().fraction()).sum();
    if (Math.abs(sum - 1) > SHARES_TOLERANCE) {
      throw new InputException(
          "flour-mix.sum",
          "flour shares add up to "
              + Checks.plain(sum * 100)
              + " %, they must add up to 100 %: change one of them");
    }
    if (parts.size() == 1) {
      return parts.get(0).flour();
    }
    Flour mixed = parts.get(0).flour();
    double soFar = parts.get(0).share().fraction();
    for (Part part : parts.subList(1, parts.size())) {
      soFar += part.share().fraction();
      double share = soFar > 0 ? part.share().fraction() / soFar : 0;
      mixed = mixed.mixedWith(part.flour(), share);
    }
    return mixed.withName(nameOf(parts));
  }

  private static String nameOf(List<Part> parts) {
    List<String> names = new ArrayList<>();
    for (Part part : parts) {
      names.add(Checks.plain(part.share().percent()) + " % " + part.flour().name());
    }
    String joined = String.join(", ", names);
    return joined.length() <= LONGEST_NAME ? joined : parts.size() + " flours";
  }

  private Flour mixedWith(Flour other, double share) {
    double own = 1 - share;
    TreeSet<String> both = new TreeSet<>(cereals);
    both.addAll(other.cereals);
    return new Flour(
        name,
        composition.mixedWith(other.composition, share),
        own * retention + share * other.retention,
        own * gluten + share * other.gluten,
        new Rise(own * targetRise.fraction() + share * other.targetRise.fraction()),
        List.copyOf(both));
  }

  /** The same flour under another name. */
  public Flour withName(String newName) {
    return new Flour(newName, composition, retention, gluten, targetRise, cereals);
  }

  /** The same flour with another moisture, 0…20 %. */
  public Flour withMoisture(Share moisture) {
    return withComposition(composition.withMoisture(moisture.fraction()));
  }

  /** The same flour with another protein content, 0…50 %. */
  public Flour withProtein(Share protein) {
    return withComposition(composition.withProtein(protein.fraction()));
  }

  /** The same flour with another composition. */
  public Flour withComposition(Composition newComposition) {
    return new Flour(name, newComposition, retention, gluten, targetRise, cereals);
  }

  /** The same flour with another target rise at the oven. */
  public Flour withTargetRise(Rise rise) {
    return new Flour(name, composition, retention, gluten, rise, cereals);
  }
}
