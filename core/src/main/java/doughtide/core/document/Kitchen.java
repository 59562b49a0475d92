package doughtide.core.document;

import doughtide.core.Internal;
import doughtide.core.document.DocumentReader.Entry;
import doughtide.core.document.DocumentReader.Use;
import doughtide.core.dough.Flour;
import doughtide.core.loaf.Shaping;
import doughtide.core.quantity.Altitude;
import doughtide.core.quantity.InputException;
import doughtide.core.quantity.Mass;
import doughtide.core.quantity.Quantities;
import doughtide.core.quantity.Share;
import doughtide.core.quantity.Temperature;
import java.io.Serializable;
import java.time.ZoneId;
import java.util.Arrays;
import java.util.Collections;
import java.util.Iterator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.BiConsumer;
import java.util.function.BiFunction;

/**
 * What stays the same in a baker's kitchen from one dough to the next, each value by its key and as
 * typed; every value has been read once, so that it can be used. A key is the name of the option
 * that it stands for.
 *
 * <pre>{@code
 * Kitchen kitchen = Kitchen.read("room: 19C\npiece: 850g".lines().iterator(), Catalogue.standard());
 * double celsius = kitchen.room().orElseThrow().celsius(); // 19
 * String text = kitchen.with("cold", "4C", Catalogue.standard()).text();
 * }</pre>
 *
 * @param values by key, in the order in which they are written
 */
@Internal
public record Kitchen(Map<String, String> values) implements Serializable {

  private static final int LONGEST_TEXT = 200;
  private static final int MOST_LOAVES = 1000;

  /** Reads a value; gives it back in the form in which it is kept. */
  private interface Rule {
    String kept(String name, String text, Catalogue catalogue);
  }

  private static final Map<String, Rule> RULES = rules();

  /** Copies the values. */
  public Kitchen {
    values = Collections.unmodifiableMap(new LinkedHashMap<>(values));
  }

  private static Map<String, Rule> rules() {
    Map<String, Rule> rules = new LinkedHashMap<>();
    rules.put("room", asTyped(Quantities::temperature));
    rules.put("vessel", (name, text, known) -> known.vessel(name, text).key());
    rules.put("vessel-material", oneOf(RoomText.materials()));
    rules.put("cold", asTyped(Quantities::temperature));
    rules.put("cold-measured", Kitchen::coldMeasured);
    rules.put("cold-air", oneOf("still", "fan"));
    rules.put("cold-file", Kitchen::words);
    rules.put("altitude", asTyped(Quantities::altitude));
    rules.put("zone", (name, text, known) -> Quantities.zone(name, text).getId());
    rules.put("language", Kitchen::language);
    rules.put("degrees", Kitchen::degrees);
    rules.put("paper", oneOf("A4", "A5", "letter"));
    rules.put("flour", Kitchen::flour);
    rules.put("flour-file", Kitchen::words);
    rules.put("starter-file", Kitchen::words);
    rules.put("starter-hydration", asTyped(Quantities::share));
    rules.put(
        "starter-condition",
        (name, text, known) -> Vocabulary.plain(known.condition(name, text).name()));
    rules.put("starter-routine", oneOf("kept", "irregular", "unknown"));
    rules.put("piece", asTyped(Quantities::mass));
    rules.put("form", (name, text, known) -> known.form(name, text).key());
    rules.put(
        "shaping", oneOf(Arrays.stream(Shaping.values()).map(Shaping::key).toArray(String[]::new)));
    rules.put("target", asTyped(Quantities::rise));
    rules.put(
        "oven-capacity", asTyped((name, text) -> Quantities.count(name, text, 1, MOST_LOAVES)));
    rules.put("at-the-bench", Kitchen::words);
    rules.put("mixer", Kitchen::words);
    rules.put("warming", asTyped(Quantities::temperature));
    rules.put("scale", asTyped(Quantities::mass));
    return Collections.unmodifiableMap(rules);
  }

  private static Rule asTyped(BiConsumer<String, String> reader) {
    return (name, text, known) -> {
      reader.accept(name, text);
      return Quantities.clean(text);
    };
  }

  private static Rule oneOf(String... words) {
    return (name, text, known) ->
        known
            .vocabulary()
            .meant(Vocabulary.Kind.VALUE, text, List.of(words))
            .orElseThrow(
                () ->
                    new InputException(
                        "kitchen.word-unknown",
                        Quantities.shown(name, text)
                            + " is not known: use "
                            + String.join(", ", words)));
  }

  /** Whether the cold was measured; people type what they measured. */
  private static String coldMeasured(String name, String text, Catalogue known) {
    if (Quantities.clean(text).matches("-?[0-9].*")) {
      throw new InputException(
          "kitchen.cold-measured",
          Quantities.shown(name, text)
              + " is yes or no, the temperature belongs to cold: write cold "
              + Quantities.clean(text)
              + ", and cold-measured yes if a thermometer on that shelf said it, no if the dial"
              + " did");
    }
    return oneOf("yes", "no").kept(name, text, known);
  }

  private static String words(String name, String text, Catalogue known) {
    String clean = text.strip();
    if (clean.isEmpty() || clean.length() > LONGEST_TEXT) {
      throw new InputException(
          "kitchen.length",
          name + " must have 1 to " + LONGEST_TEXT + " characters, it has " + clean.length());
    }
    return clean;
  }

  private static String language(String name, String text, Catalogue known) {
    String tag = Vocabulary.plain(text);
    if (!tag.matches("[a-z]{2}")) {
      throw new InputException(
          "kitchen.language",
          Quantities.shown(name, text) + " is no language: write its two letters, for example en");
    }
    return tag;
  }

  private static String degrees(String name, String text, Catalogue known) {
    return switch (Vocabulary.plain(text)) {
      case "c", "°c" -> "celsius";
      case "f", "°f" -> "fahrenheit";
      default -> oneOf("celsius", "fahrenheit").kept(name, text, known);
    };
  }

  private static String flour(String name, String text, Catalogue known) {
    known.flour(name, text);
    return Quantities.clean(text);
  }

  /** A kitchen of which nothing is known. */
  public static Kitchen empty() {
    return new Kitchen(Map.of());
  }

  /** All keys, in the order in which messages name them. */
  public static List<String> keys() {
    return List.copyOf(RULES.keySet());
  }

  /**
   * Reads a kitchen: one {@code key: value} a line, lines that begin with # are remarks.
   *
   * @param lines the text, without line endings
   * @param catalogue what words may mean
   * @throws LineException for a key that is not known or given twice, or a value that cannot be
   *     used
   */
  public static Kitchen read(Iterator<String> lines, Catalogue catalogue) {
    Map<String, Use> uses = new LinkedHashMap<>();
    RULES.keySet().forEach(key -> uses.put(key, Use.ONCE));
    uses.put("note", Use.REMARK);
    DocumentReader reader = new DocumentReader(lines, uses, catalogue.vocabulary()).whole();
    Map<String, String> values = new LinkedHashMap<>();
    for (String key : reader.given()) {
      Entry entry = reader.entry(key).orElseThrow();
      values.put(key, entry.read(text -> kept(key, text, catalogue)));
    }
    return new Kitchen(values);
  }

  private static String kept(String key, String text, Catalogue catalogue) {
    Rule rule = RULES.get(key);
    if (rule == null) {
      throw new InputException(
          "kitchen.key-unknown",
          "a kitchen has no '" + key + "': its keys are " + String.join(", ", RULES.keySet()));
    }
    return rule.kept(DocumentReader.label(key), text, catalogue);
  }

  /** The kitchen as text, which {@link #read} reads back. */
  public String text() {
    DocumentText text = new DocumentText("kitchen");
    values.forEach(text::line);
    return text.toString();
  }

  /**
   * The text of a kitchen with another value for one key; everything else stays as it was written,
   * remarks as well.
   *
   * @param lines the text, without line endings
   * @param key one of {@link #keys()}
   * @param value as typed; empty takes the line out
   * @throws InputException if the text cannot be read, there is no such key, or the value cannot be
   *     used
   */
  public static String changed(
      List<String> lines, String key, Optional<String> value, Catalogue catalogue) {
    Vocabulary vocabulary = catalogue.vocabulary();
    String meant = vocabulary.meant(Vocabulary.Kind.KEY, key, RULES.keySet()).orElse(key);
    Optional<String> kept = value.map(text -> kept(meant, text, catalogue));
    if (read(lines.iterator(), catalogue).text(meant).isEmpty() && kept.isEmpty()) {
      throw new InputException(
          "kitchen.line-missing", "there is no line '" + DocumentReader.words(meant) + ": …'");
    }
    String line = kept.map(text -> DocumentText.line(meant, text, "")).orElse("");
    StringBuilder text = new StringBuilder();
    boolean found = false;
    for (String each : lines) {
      boolean same = DocumentReader.keyOf(each, vocabulary, RULES.keySet()).equals(meant);
      text.append(same ? line : each).append(same && kept.isEmpty() ? "" : "\n");
      found |= same;
    }
    return found ? text.toString() : text.append(line).append('\n').toString();
  }

  /** A value as typed. */
  public Optional<String> text(String key) {
    return Optional.ofNullable(values.get(key));
  }

  /**
   * The same kitchen with another value.
   *
   * @param key one of {@link #keys()}
   * @param value as typed
   * @throws InputException if there is no such key or the value cannot be used
   */
  public Kitchen with(String key, String value, Catalogue catalogue) {
    Map<String, String> changed = new LinkedHashMap<>(values);
    changed.put(key, kept(key, value, catalogue));
    return new Kitchen(changed);
  }

  /** The same kitchen without a value. */
  public Kitchen without(String key) {
    Map<String, String> changed = new LinkedHashMap<>(values);
    changed.remove(key);
    return new Kitchen(changed);
  }

  /** Temperature of the room. */
  public Optional<Temperature> room() {
    return value("room", Quantities::temperature);
  }

  /** Temperature of the refrigerator, as its dial or a thermometer says. */
  public Optional<Temperature> cold() {
    return value("cold", Quantities::temperature);
  }

  /** Height above the sea. */
  public Optional<Altitude> altitude() {
    return value("altitude", Quantities::altitude);
  }

  /** The place whose clock is meant. */
  public Optional<ZoneId> zone() {
    return value("zone", Quantities::zone);
  }

  /** The flour usually used. */
  public Optional<Flour> flour(Catalogue catalogue) {
    return value("flour", catalogue::flour);
  }

  /** Water over flour in the starter. */
  public Optional<Share> starterHydration() {
    return value("starter-hydration", Quantities::share);
  }

  /** Mass of one loaf. */
  public Optional<Mass> piece() {
    return value("piece", Quantities::mass);
  }

  private <T> Optional<T> value(String key, BiFunction<String, String, T> reader) {
    return text(key).map(text -> reader.apply(DocumentReader.label(key), text));
  }
}
