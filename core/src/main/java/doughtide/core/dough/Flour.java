package doughtide.core.dough;

import doughtide.core.quantity.Checks;
import doughtide.core.quantity.InputException;
import doughtide.core.quantity.Rise;
import doughtide.core.quantity.Share;
import java.io.Serializable;
import java.util.ArrayList;
import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
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
 * @param parts the classes it consists of, each by its key with its share; the shares add up to 1
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
    Map<String, Share> parts,
    Composition composition,
    double retention,
    double gluten,
    Rise targetRise,
    List<String> cereals)
    implements Serializable {

  private static final double SHARES_TOLERANCE = 1e-3;
  private static final int LONGEST_NAME = 200;

  /**
   * @param name as printed
   * @param parts the classes it consists of, each by its key with its share; the shares add up to 1
   * @param composition mass fractions as sold
   * @param retention gas share of the volume above which a well-made dough of this flour begins to
   *     leak, 0.2…0.8
   * @param gluten share of the flour that forms gluten, 0 (rye) … 1 (wheat)
   * @param targetRise jar-equivalent rise at which a loaf of this flour is usually baked
   * @param cereals the cereals in it by name, for allergen lines, in alphabetical order
   * @throws InputException if a value is outside its range
   */
  public Flour {
    Checks.given("name", name);
    Checks.given("cereals", cereals);
    Checks.given("composition", composition);
    Checks.given("target rise", targetRise);
    if (name.isBlank() || name.length() > LONGEST_NAME) {
      throw new InputException(
          "flour-name.length",
          "flour name must have 1 to " + LONGEST_NAME + " characters, it has " + name.length());
    }
    Checks.inRange("gas retention of the flour", retention, 0.2, 0.8, "");
    Checks.inRange("gluten share of the flour", gluten, 0, 1, "");
    if (parts.isEmpty()) {
      throw new InputException(
          "flour.no-parts", "flour '" + name + "' has no parts: give the key of its class");
    }
    parts = Collections.unmodifiableMap(new LinkedHashMap<>(parts));
    cereals = List.copyOf(new TreeSet<>(cereals));
  }

  /**
   * A class of flour, which is its own only part; its name is its key in options and documents.
   *
   * @param name in English, small letters, for example {@code "wholemeal wheat"}
   * @param composition mass fractions as sold
   * @param retention 0.2…0.8
   * @param gluten 0…1
   * @param targetRise usual rise at the oven
   * @param cereals for allergen lines
   * @throws InputException if a value is outside its range
   */
  public Flour(
      String name,
      Composition composition,
      double retention,
      double gluten,
      Rise targetRise,
      List<String> cereals) {
    this(
        name,
        Map.of(name, Share.ofFraction(1)),
        composition,
        retention,
        gluten,
        targetRise,
        cereals);
  }

  /**
   * One flour of a mix.
   *
   * @param flour the flour
   * @param share its share of the mix
   */
  public record Part(Flour flour, Share share) implements Serializable {
    /**
     * Refuses nothing where something is needed.
     *
     * @param flour the flour
     * @param share its share of the mix
     */
    public Part {
      Checks.given("flour", flour);
      Checks.given("share", share);
    }
  }

  /**
   * A mix; every property adds up linearly by share, and so do the classes it consists of.
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
    Map<String, Share> classes = classes(parts);
    boolean own = parts.stream().anyMatch(part -> part.flour().hasOwnName());
    return mixed.named(own ? nameOf(parts) : nameOf(classes), classes);
  }

  private static Map<String, Share> classes(List<Part> parts) {
    Map<String, Share> classes = new LinkedHashMap<>();
    for (Part part : parts) {
      part.flour()
          .parts()
          .forEach(
              (key, share) ->
                  classes.merge(
                      key,
                      Share.ofFraction(share.fraction() * part.share().fraction()),
                      (one, other) -> Share.ofFraction(one.fraction() + other.fraction())));
    }
    return classes;
  }

  private static String nameOf(List<Part> parts) {
    return joined(parts.stream().map(part -> percent(part.share()) + part.flour().name()).toList());
  }

  private static String nameOf(Map<String, Share> classes) {
    if (classes.size() == 1) {
      return classes.keySet().iterator().next();
    }
    List<String> names = new ArrayList<>();
    classes.forEach((key, share) -> names.add(percent(share) + key));
    return joined(names);
  }

  private static String percent(Share share) {
    return Checks.plain(share.percent()) + " % ";
  }

  private static String joined(List<String> names) {
    String joined = String.join(", ", names);
    return joined.length() <= LONGEST_NAME ? joined : names.size() + " flours";
  }

  /**
   * {@return whether somebody has named it, as the bag it came in; else its name only tells its
   * {@link #parts}}
   */
  public boolean hasOwnName() {
    return !name.equals(nameOf(parts));
  }

  private Flour mixedWith(Flour other, double share) {
    double own = 1 - share;
    TreeSet<String> both = new TreeSet<>(cereals);
    both.addAll(other.cereals);
    return new Flour(
        name,
        parts,
        composition.mixedWith(other.composition, share),
        own * retention + share * other.retention,
        own * gluten + share * other.gluten,
        new Rise(own * targetRise.fraction() + share * other.targetRise.fraction()),
        List.copyOf(both));
  }

  /**
   * {@return the same flour under another name}
   *
   * @param newName as printed, not blank
   */
  public Flour withName(String newName) {
    return named(newName, parts);
  }

  private Flour named(String newName, Map<String, Share> newParts) {
    return new Flour(newName, newParts, composition, retention, gluten, targetRise, cereals);
  }

  /**
   * {@return the same flour with another moisture, 0…20 %}
   *
   * @param moisture 0…20 % of the flour as sold
   */
  public Flour withMoisture(Share moisture) {
    Checks.inRange("flour moisture", moisture.percent(), 0, 20, "%");
    return withComposition(composition.withMoisture(moisture.fraction()));
  }

  /**
   * {@return the same flour with another protein content, 0…50 %}
   *
   * @param protein 0…50 % of the flour as sold
   */
  public Flour withProtein(Share protein) {
    return withComposition(composition.withProtein(protein.fraction()));
  }

  /**
   * {@return the same flour with another composition}
   *
   * @param newComposition mass fractions of the flour as sold
   */
  public Flour withComposition(Composition newComposition) {
    return new Flour(name, parts, newComposition, retention, gluten, targetRise, cereals);
  }
}
