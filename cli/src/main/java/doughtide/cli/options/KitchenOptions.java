package doughtide.cli.options;

import doughtide.cli.args.Arguments;
import doughtide.cli.args.CommandSpec;
import doughtide.cli.args.OptionSpec;
import doughtide.cli.args.Speech;
import doughtide.cli.args.TemperatureSteps;
import doughtide.cli.file.KitchenFile;
import doughtide.cli.session.Environment;
import doughtide.cli.text.OneLine;
import doughtide.core.document.Catalogue;
import doughtide.core.document.Kitchen;
import java.io.PrintStream;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;

/**
 * The baker's kitchen as values of options that were not given. A value stands in only where the
 * option could have been given beside the others.
 */
public final class KitchenOptions {

  static final String NO_KITCHEN = "no-kitchen";

  /** These read none: a file of many doughs means the same everywhere. */
  private static final Set<String> WITHOUT = Set.of("batch", "kitchen");

  /**
   * A new flour is not the one that is usually used; of the kitchen the plan of its trial needs the
   * scale, and its chart, which shows neither temperatures nor hours, the language.
   */
  private static final Set<String> OF_A_FLOUR = Set.of("scale", "language");

  /** These answer in the language of the kitchen, whether they draw or not. */
  private static final Set<String> SPOKEN = Set.of("start", "note", "now");

  /** What a file of readings tells itself. */
  private static final Set<String> TOLD_BY_READINGS =
      Set.of(
          "starter-hydration",
          "flour",
          "flour-file",
          "altitude",
          "room",
          "vessel",
          "vessel-material",
          "zone");

  private static final Set<String> FILES = Set.of("flour-file", "starter-file", "cold-file");
  private static final List<String> CLOCKS =
      List.of("mixed-at", "ready-at", "fed-at", "shape-at", "leave-at");

  private final CommandSpec spec;
  private final Kitchen kitchen;
  private final Catalogue catalogue;
  private final Map<String, List<String>> given;
  private final Map<String, List<String>> added = new LinkedHashMap<>();

  private KitchenOptions(
      CommandSpec spec, Kitchen kitchen, Catalogue catalogue, Map<String, List<String>> given) {
    this.catalogue = catalogue;
    this.spec = spec;
    this.kitchen = kitchen;
    this.given = given;
  }

  /** The command with the options about the kitchen, if it uses one. */
  public static CommandSpec added(CommandSpec spec) {
    return WITHOUT.contains(spec.name()) ? spec : spec.with(specs());
  }

  private static List<OptionSpec> specs() {
    return List.of(
        file(),
        OptionSpec.flag(NO_KITCHEN, "Leaves out what a kitchen file says (doughtide kitchen)."));
  }

  /** The option that names the file. */
  public static OptionSpec file() {
    return OptionSpec.value(
            KitchenFile.OPTION, "FILE", "kitchen.txt", "The file with what your kitchen is like.")
        .withDefault("as doughtide kitchen shows");
  }

  /**
   * What the kitchen adds.
   *
   * @param spec of a command, with the options about the kitchen
   * @param given by option
   */
  public static Map<String, List<String>> besides(
      CommandSpec spec, Map<String, List<String>> given, Environment environment) {
    if (WITHOUT.contains(spec.name()) || given.containsKey(NO_KITCHEN)) {
      return Map.of();
    }
    Optional<String> named =
        Optional.ofNullable(given.get(KitchenFile.OPTION)).map(each -> each.get(0));
    Optional<KitchenFile> file = KitchenFile.of(named, environment);
    return file.isEmpty() || file.get().isAbsent()
        ? Map.of()
        : new KitchenOptions(spec, file.get().read(environment), environment.catalogue(), given)
            .added(file.get());
  }

  /**
   * What was given together with what a document says, and what the kitchen adds to both.
   *
   * @param document values by key; an option that was given wins
   */
  public static Arguments beside(
      Arguments arguments, Map<String, String> document, Environment environment) {
    return arguments.beside(document, (spec, given) -> besides(spec, given, environment));
  }

  private Map<String, List<String>> added(KitchenFile file) {
    for (String key : Kitchen.keys()) {
      Optional<String> value = kitchen.text(key);
      if (value.isPresent() && takes(key) && !given.containsKey(key) && fits(key)) {
        add(key, FILES.contains(key) ? file.beside(value.get()) : value.get());
      }
    }
    if (spec.name().equals("feed") && !has("starter-temp") && !has("stage") && !has("stages")) {
      kitchen.text("room").ifPresent(room -> add("starter-temp", room));
    }
    return added;
  }

  private void add(String key, String value) {
    if (spec.option(key).takesValue()) {
      added.put(key, List.of(value));
    } else if (value.equals("yes")) {
      added.put(key, List.of(""));
    }
  }

  private boolean takes(String key) {
    return spec.has(key);
  }

  private boolean has(String key) {
    return given.containsKey(key) || added.containsKey(key);
  }

  /** Whether the value could be given as an option beside what was given. */
  private boolean fits(String key) {
    if (given.containsKey("readings") && TOLD_BY_READINGS.contains(key)) {
      return false;
    }
    if (spec.name().equals("flour") && !OF_A_FLOUR.contains(key)) {
      return false;
    }
    return switch (key) {
      case "room" -> drifts();
      case "vessel", "vessel-material" -> has("room") && !given.containsKey("proofer");
      case "cold" -> !takes("hold") || has("hold") || has("bake-at") || mustWait();
      case "cold-measured", "cold-air", "cold-file" -> has("cold");
      case "zone" ->
          spec.name().equals("start")
              || (takes("mixed-at") && !takes("shape-at") ? has("mixed-at") : hasClock());
      case "language" -> SPOKEN.contains(spec.name()) || hasPicture();
      case "degrees", "clock-12h" -> hasPicture();
      case "paper" -> paper(kitchen.text(key).orElse(""));
      case "piece" -> has("loaves") || !takes("hold") || has("cold") || has("proof-temp");
      case "form", "shaping", "target" -> !takes("hold") || has("cold") || has("proof-temp");
      case "flour" -> !has("flour-file") && kitchen.text("flour-file").isEmpty() && !namesFlours();
      case "flour-file" -> !has("flour") && !namesFlours();
      case "starter-file" -> !spec.name().equals("water") || has("mixer");
      case "starter-hydration" -> !spec.name().equals("water") || has("starter");
      case "starter-condition" -> isFed();
      case "mixer" -> has("got") && (has("save") || has("keep-in-kitchen"));
      case "warming" -> !has("friction") && !has("got") && ofThisMixer();
      default -> true;
    };
  }

  /** Loaves of a dough that is left alone wait in the cold, unless a room is said. */
  private boolean mustWait() {
    return has("leave-at") && !has("proof-temp");
  }

  /** The kitchen tells how its starter is before it is fed, not how it goes into a dough. */
  private boolean isFed() {
    return Set.of("feed", "bake-day", "class-day").contains(spec.name())
        && !given.containsKey("starter-in-cold")
        && !given.containsKey("stages");
  }

  /** The kitchen knows the warming of its own mixer. */
  private boolean ofThisMixer() {
    List<String> mixer = given.getOrDefault("mixer", List.of());
    return mixer.isEmpty() || kitchen.text("mixer").filter(mixer::contains).isPresent();
  }

  /** Whether the grams of the dough name its flours. */
  private boolean namesFlours() {
    return given.getOrDefault(FormulaOptions.GRAMS, List.of()).stream()
        .anyMatch(text -> FormulaOptions.namesFlours(text, catalogue));
  }

  /** A stated temperature drifts only where the kitchen says in what the dough stands. */
  private boolean drifts() {
    if (!takes("dough-temp") || spec.name().equals("water") || takes("at-the-bench")) {
      return true;
    }
    boolean vessel = has("vessel") || kitchen.text("vessel").isPresent();
    return vessel
        && given.containsKey("dough-temp")
        && given.get("dough-temp").stream().noneMatch(TemperatureSteps::isSeveral);
  }

  /** A chart is drawn on A4 or A5, a page on A4 or letter. */
  private boolean paper(String size) {
    return takes("chart") ? has("chart") && !size.equals("letter") : !size.equals("A5");
  }

  private boolean hasPicture() {
    return !takes("chart") && !takes("page") || has("chart") || has("page");
  }

  private boolean hasClock() {
    return CLOCKS.stream().anyMatch(this::has);
  }

  /**
   * The options about the kitchen that were given, as a part of the question takes them; they have
   * been used then, whatever the command asks for.
   */
  public static Map<String, List<String>> choice(Arguments arguments) {
    Map<String, List<String>> choice = new LinkedHashMap<>();
    for (OptionSpec option : specs()) {
      if (arguments.offers(option.name()) && arguments.has(option.name())) {
        choice.put(option.name(), arguments.all(option.name()));
      }
    }
    return choice;
  }

  /** The line that says what came from the kitchen, below an answer in text. */
  public static void say(Arguments arguments, Speech speech, PrintStream out) {
    boolean text =
        !arguments.offers("format")
            || arguments.text("format").map(form -> form.equalsIgnoreCase("text")).orElse(true);
    List<String> used = text ? arguments.tellKitchen() : List.of();
    if (!used.isEmpty()) {
      out.println();
      String values = String.join("; ", used);
      out.println(OneLine.of(Speech.plain(speech.say("text.kitchen", Map.of("values", values)))));
    }
  }
}
