package doughtide.core.document;

import doughtide.core.Internal;
import doughtide.core.dough.DoughFormula;
import doughtide.core.quantity.InputException;
import doughtide.core.quantity.Mass;
import doughtide.core.quantity.Quantities;
import doughtide.core.thermal.Air;
import doughtide.core.thermal.Material;
import doughtide.core.thermal.RoomCooling;
import doughtide.core.thermal.Vessel;
import doughtide.core.thermal.VesselForm;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;

/** What a dough stands in as typed, one value a key, in options and in the head of readings. */
@Internal
public final class RoomText {

  /** The temperature around the dough. */
  public static final String ROOM = "room";

  /** Bowl, tub or jar. */
  public static final String VESSEL = "vessel";

  /** What the vessel is made of. */
  public static final String MATERIAL = "vessel-material";

  /** Covered or open. */
  public static final String COVER = "cover";

  /** All the dough in the vessel. */
  public static final String MASS = "dough-mass";

  private static final String OPEN = "open";
  private static final Map<String, Material> MATERIALS = materialsByWord();

  private RoomText() {}

  private static Map<String, Material> materialsByWord() {
    Map<String, Material> materials = new LinkedHashMap<>();
    materials.put("plastic", Material.POLYPROPYLENE);
    materials.put("metal", Material.STEEL);
    materials.put("wood", Material.OAK);
    materials.put("glass", Material.GLASS);
    materials.put("stoneware", Material.STONEWARE);
    return materials;
  }

  /** The keys. */
  public static List<String> keys() {
    return List.of(ROOM, VESSEL, MATERIAL, COVER, MASS);
  }

  /** What a vessel may be made of, in a baker's words. */
  static String[] materials() {
    return MATERIALS.keySet().toArray(String[]::new);
  }

  /** The form of the vessel; a tub unless said. */
  public static VesselForm form(TypedValues values, Catalogue catalogue) {
    return values
        .text(VESSEL)
        .map(text -> catalogue.vessel(values.label(VESSEL), text))
        .orElse(VesselForm.TUB);
  }

  /** What the vessel is made of, in a word; plastic unless said. */
  public static String material(TypedValues values, Catalogue catalogue) {
    return word(values, MATERIAL, catalogue, List.copyOf(MATERIALS.keySet()));
  }

  /** Whether the vessel is covered or open, in a word; covered unless said. */
  public static String cover(TypedValues values, Catalogue catalogue) {
    return word(values, COVER, catalogue, List.of("covered", OPEN));
  }

  /** The first word is what holds where nothing is said. */
  private static String word(
      TypedValues values, String key, Catalogue catalogue, List<String> words) {
    Optional<String> typed = values.text(key);
    return typed.isEmpty()
        ? words.get(0)
        : catalogue
            .vocabulary()
            .meant(Vocabulary.Kind.VALUE, typed.get(), words)
            .orElseThrow(
                () ->
                    new InputException(
                        "room.word-unknown",
                        Quantities.shown(values.label(key), typed.get())
                            + " is not known: use "
                            + String.join(", ", words)));
  }

  /** The vessel, covered. */
  public static Vessel covered(TypedValues values, Catalogue catalogue) {
    String word = material(values, catalogue);
    return form(values, catalogue).of(Objects.requireNonNull(MATERIALS.get(word)));
  }

  /** All the dough in the vessel; a kilogram unless said. */
  public static Mass mass(TypedValues values) {
    return values
        .text(MASS)
        .map(text -> Quantities.mass(values.label(MASS), text))
        .orElse(Mass.ofKilograms(1));
  }

  /**
   * How a dough cools or warms in its vessel.
   *
   * @throws InputException if a value cannot be used
   */
  public static RoomCooling cooling(TypedValues values, Catalogue catalogue, DoughFormula formula) {
    Vessel covered = covered(values, catalogue);
    boolean open = cover(values, catalogue).equals(OPEN);
    Mass mass = mass(values);
    return Quantities.named(
        values.label(MASS),
        Long.toString(Math.round(mass.grams())) + " g",
        () -> RoomCooling.of(formula, mass, open ? covered.open() : covered, Air.STILL_ROOM));
  }
}
