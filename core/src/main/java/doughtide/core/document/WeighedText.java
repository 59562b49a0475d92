package doughtide.core.document;

import doughtide.core.dough.Additions;
import doughtide.core.dough.Enrichment;
import doughtide.core.dough.Inclusion;
import doughtide.core.dough.WeighedDough;
import doughtide.core.quantity.Checks;
import doughtide.core.quantity.InputException;
import doughtide.core.quantity.Quantities;
import doughtide.core.quantity.Shorten;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * A dough as a list of ingredients and masses: {@code flour 900, water 640, starter 200, salt 18},
 * and what is kneaded in: {@code seeds 80, soaker 120 with 70 water}.
 */
final class WeighedText {

  private static final String FLOUR = "flour";
  private static final String WATER = "water";
  private static final String STARTER = "starter";
  private static final String SALT = "salt";
  private static final List<String> PLAIN = List.of(FLOUR, WATER, STARTER, SALT);
  private static final int LONGEST = 500;

  /** One without its shell (common practice, no source). */
  private static final int EGG_GRAMS = 50;

  private static final int MOST_ITEMS = 30;
  private static final String AMOUNT = "[0-9][0-9.,]* ?(?:g|kg|oz|lb|%)?";

  /** A name and an amount, the name first; behind it the water poured on it. */
  private static final Pattern NAME_FIRST =
      Pattern.compile("(.*[^0-9.,: ]) ?:? (" + AMOUNT + ")(?: (?:with|\\+) (.*))?");

  private static final Pattern AMOUNT_FIRST =
      Pattern.compile("(" + AMOUNT + ") (?:of )?([^0-9]*[^0-9 ])(?: (?:with|\\+) (.*))?");

  /** The water on an inclusion: an amount, and perhaps the word. */
  private static final Pattern SOAK = Pattern.compile("(" + AMOUNT + ")(?: (?:of )?(\\S+))?");

  /** One ingredient as typed. */
  private record Item(String name, String amount, Optional<String> soak) {}

  private WeighedText() {}

  /**
   * Reads a dough in grams.
   *
   * @throws InputException if it cannot be used
   */
  static WeighedDough dough(String label, String text, Catalogue catalogue) {
    Map<String, Double> plain = new LinkedHashMap<>();
    List<WeighedDough.Part> flours = new ArrayList<>();
    List<WeighedDough.Enriched> enrichments = new ArrayList<>();
    for (Item item : items(label, text, "flour 900, water 640, starter 200, salt 18")) {
      double grams = grams(label, text, item.amount());
      String key = ingredient(item.name(), catalogue);
      refuseCountOfEggs(label, text, item, key);
      if (item.soak().isPresent()) {
        throw new InputException(
            "grams.soaker",
            Quantities.shown(label, text) + ": what has its own water goes into --inclusions");
      } else if (key.equals(FLOUR)) {
        flours.add(WeighedDough.Part.of(grams));
      } else if (PLAIN.contains(key)) {
        plain.merge(key, grams, Double::sum);
      } else if (enrichment(key).isPresent()) {
        enrichments.add(new WeighedDough.Enriched(enrichment(key).get(), grams));
      } else {
        flours.add(flour(label, text, item, grams, catalogue));
      }
    }
    return Quantities.named(
        label,
        text,
        () ->
            new WeighedDough(
                flours,
                plain.getOrDefault(WATER, 0.0),
                plain.getOrDefault(STARTER, 0.0),
                plain.getOrDefault(SALT, 0.0),
                enrichments,
                List.of()));
  }

  /** A small number without a unit is taken for eggs, not for grams. */
  private static void refuseCountOfEggs(String label, String text, Item item, String key) {
    if (key.equals(Enrichment.Kind.EGG.key()) && item.amount().matches("[1-9]|1[0-2]")) {
      throw new InputException(
          "grams.eggs",
          Quantities.shown(label, text)
              + ": '"
              + item.name()
              + " "
              + item.amount()
              + "' may be eggs or grams: give grams without the shell, as egg "
              + EGG_GRAMS * Integer.parseInt(item.amount())
              + ", or egg "
              + item.amount()
              + "g");
    }
  }

  private static WeighedDough.Part flour(
      String label, String text, Item item, double grams, Catalogue catalogue) {
    try {
      return new WeighedDough.Part(Optional.of(catalogue.flourClass(label, item.name())), grams);
    } catch (InputException e) {
      throw new InputException(
          "grams.unknown",
          Quantities.shown(label, text)
              + ": '"
              + Shorten.to(item.name(), 40)
              + "' is not known: "
              + (item.name().matches(".*[0-9].*") ? "put a comma between ingredients, and " : "")
              + "use "
              + String.join(", ", words())
              + ", or the name of a flour; seeds and the like go into inclusions");
    }
  }

  private static List<String> words() {
    List<String> words = new ArrayList<>(PLAIN);
    Arrays.stream(Enrichment.Kind.values()).map(Enrichment.Kind::key).forEach(words::add);
    return words;
  }

  private static String ingredient(String name, Catalogue catalogue) {
    return catalogue.vocabulary().meant(Vocabulary.Kind.INGREDIENT, name, words()).orElse("");
  }

  private static Optional<Enrichment.Kind> enrichment(String key) {
    return Arrays.stream(Enrichment.Kind.values())
        .filter(kind -> kind.key().equals(key))
        .findFirst();
  }

  /**
   * What is kneaded in: sugar and the like by their names, all else as what does not ferment.
   *
   * @param flourGrams all flour, where it is known: then an amount without a unit is grams
   */
  static Additions additions(
      String label, String text, Optional<Double> flourGrams, Catalogue catalogue) {
    List<Inclusion> inclusions = new ArrayList<>();
    List<Enrichment> enrichments = new ArrayList<>();
    String example =
        flourGrams.isPresent()
            ? "seeds 80, soaker 120 with 70 water"
            : "seeds 8%, soaker 12% with 7% water";
    for (Item item : items(label, text, example)) {
      String key = ingredient(item.name(), catalogue);
      if (PLAIN.contains(key)) {
        throw new InputException(
            "inclusions.dough",
            Quantities.shown(label, text)
                + ": "
                + key
                + " ferments or is the dough's own: leave it out");
      }
      double share = share(label, text, item.amount(), flourGrams);
      double soak =
          item.soak().map(each -> soak(label, text, each, flourGrams, catalogue)).orElse(0.0);
      Quantities.named(
          label,
          text,
          () ->
              enrichment(key).isPresent()
                  ? enrichments.add(new Enrichment(enrichment(key).get(), share))
                  : inclusions.add(new Inclusion(item.name(), share, soak)));
    }
    return new Additions(inclusions, enrichments);
  }

  private static double soak(
      String label, String text, String soak, Optional<Double> flourGrams, Catalogue catalogue) {
    Matcher parts = SOAK.matcher(soak);
    boolean water =
        parts.matches()
            && (parts.group(2) == null || ingredient(parts.group(2), catalogue).equals(WATER));
    if (!water) {
      throw new InputException(
          "inclusions.soak",
          Quantities.shown(label, text) + ": write the water of a soaker as with 70 water");
    }
    return share(label, text, parts.group(1), flourGrams);
  }

  private static double share(
      String label, String text, String amount, Optional<Double> flourGrams) {
    if (amount.endsWith("%")) {
      return Quantities.share(label, amount).fraction();
    }
    double grams = grams(label, text, amount);
    return grams
        / flourGrams.orElseThrow(
            () ->
                new InputException(
                    "inclusions.no-flour",
                    Quantities.shown(label, text)
                        + ": without the grams of the dough give per cent of all flour, for example"
                        + " seeds 8%"));
  }

  private static double grams(String label, String text, String amount) {
    if (amount.endsWith("%")) {
      throw new InputException(
          "grams.no-mass",
          Quantities.shown(label, text) + ": " + amount + " is no mass: write for example 900g");
    }
    boolean bare = Character.isDigit(amount.charAt(amount.length() - 1));
    String withUnit = bare ? amount + "g" : amount;
    return withUnit.matches("[0.,]+ ?[a-z]+") ? 0 : Quantities.mass(label, withUnit).grams();
  }

  /** Additions as {@link #additions} reads them, to a ten-thousandth of a per cent. */
  static String text(Additions additions) {
    List<String> items = new ArrayList<>();
    for (Inclusion each : additions.inclusions()) {
      String soak = each.waterShare() > 0 ? " with " + percent(each.waterShare()) + " water" : "";
      items.add(each.name() + " " + percent(each.share()) + soak);
    }
    for (Enrichment each : additions.enrichments()) {
      items.add(each.kind().key() + " " + percent(each.share()));
    }
    return String.join(", ", items);
  }

  private static String percent(double fraction) {
    return Checks.plain(100 * fraction) + "%";
  }

  private static List<Item> items(String label, String text, String example) {
    String clean = Quantities.clean(text);
    Checks.inRange("length of " + label, clean.length(), 1, LONGEST, "characters");
    String[] pieces = clean.split("; ?|, |,(?![0-9])", -1);
    Checks.inRange("ingredients of " + label, pieces.length, 1, MOST_ITEMS, "");
    List<Item> items = new ArrayList<>();
    for (String piece : pieces) {
      items.add(item(label, text, piece.strip(), example));
    }
    return items;
  }

  private static Item item(String label, String text, String piece, String example) {
    Matcher name = NAME_FIRST.matcher(piece);
    if (name.matches()) {
      return new Item(name.group(1), name.group(2), Optional.ofNullable(name.group(3)));
    }
    Matcher amount = AMOUNT_FIRST.matcher(piece);
    if (amount.matches()) {
      return new Item(amount.group(2), amount.group(1), Optional.ofNullable(amount.group(3)));
    }
    throw new InputException(
        "grams.item",
        Quantities.shown(label, text)
            + ": '"
            + Shorten.to(piece, 40)
            + "' is no ingredient with its amount: write for example "
            + label
            + " \""
            + example
            + "\"");
  }
}
