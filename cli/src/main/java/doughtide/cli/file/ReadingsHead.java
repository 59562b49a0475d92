package doughtide.cli.file;

import doughtide.cli.args.Arguments;
import doughtide.cli.args.CommandSpec;
import doughtide.cli.args.OptionSpec;
import doughtide.cli.options.DoughOptions;
import doughtide.cli.session.Environment;
import doughtide.core.dough.DoughFormula;
import doughtide.core.quantity.Checks;
import doughtide.core.quantity.InputException;
import doughtide.core.quantity.Measure;
import doughtide.core.quantity.Nearest;
import doughtide.core.quantity.Quantities;
import doughtide.core.quantity.Shorten;
import doughtide.core.quantity.Temperature;
import doughtide.core.rise.DoughTemperature;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.stream.Collectors;

/**
 * The lines above the table of a file of readings, one {@code key: value} each. The keys of the
 * dough are the options of the command line without dashes.
 */
public final class ReadingsHead {

  private static final String DOUGH_TEMP = "dough temp";
  private static final String MIXED_AT = "mixed at";
  private static final String ZONE = "zone";
  private static final String START_HEIGHT = "start height";
  private static final List<String> FREE_TEXT = List.of("dough", "note");
  private static final List<String> OWN = List.of(DOUGH_TEMP, MIXED_AT, ZONE, START_HEIGHT);
  private static final double LOWEST_MM = 5;
  private static final double HIGHEST_MM = 1000;
  private static final CommandSpec SPEC =
      CommandSpec.named("readings", "a file of readings").options(DoughOptions.specs()).build();

  private final Map<String, List<String>> options = new LinkedHashMap<>();
  private final Environment environment;
  private final Map<String, String> own = new LinkedHashMap<>();

  public ReadingsHead(Environment environment) {
    this.environment = environment;
  }

  /** Whether a line looks like a line of the head. */
  public static boolean isHeadLine(String line) {
    int colon = line.indexOf(':');
    return colon > 0 && Character.isLetter(line.charAt(0)) && line.charAt(0) != '#';
  }

  /**
   * Takes one line.
   *
   * @throws InputException if the key is not known or given twice, or its value cannot be used
   */
  public void add(String line) {
    int colon = line.indexOf(':');
    String key =
        line.substring(0, colon).strip().toLowerCase(Locale.ROOT).replaceAll("[\\s_-]+", " ");
    String value = value(line.substring(colon + 1));
    if (FREE_TEXT.contains(key)) {
      return;
    }
    if (value.isEmpty()) {
      throw new InputException(
          "'" + Shorten.to(key, 40) + ":' has no value: give one or leave the line out");
    }
    if (OWN.contains(key)) {
      checkOwn(key, value);
      refuseSecond(key, own.put(key, value));
    } else {
      addOption(key, value);
    }
  }

  /** A spreadsheet writes the empty cells of a line, too, and quotes a cell that holds a comma. */
  private static String value(String text) {
    String bare = text.replaceAll("^[;,\\s]+|[;,\\s]+$", "");
    boolean quoted = bare.length() > 1 && bare.startsWith("\"") && bare.endsWith("\"");
    return quoted ? bare.substring(1, bare.length() - 1).strip() : bare;
  }

  private void addOption(String key, String value) {
    String name = key.replace(' ', '-');
    boolean known = SPEC.options().stream().anyMatch(option -> option.name().equals(name));
    if (!known) {
      throw unknown(key);
    }
    try {
      DoughOptions.read(arguments(Map.of(name, List.of(value))), environment);
    } catch (InputException e) {
      throw e.inWords(inWordsOfTheFile(String.valueOf(e.getMessage())));
    }
    refuseSecond(key, options.put(name, List.of(value)) == null ? null : value);
  }

  private Arguments arguments(Map<String, List<String>> values) {
    return new Arguments(SPEC, values, List.of(), environment.catalogue());
  }

  private static void refuseSecond(String key, @org.jspecify.annotations.Nullable String before) {
    if (before != null) {
      throw new InputException("'" + key + ":' is given twice: keep one of the lines");
    }
  }

  private static InputException unknown(String key) {
    List<String> keys = new ArrayList<>(FREE_TEXT);
    SPEC.options().forEach(option -> keys.add(option.name().replace('-', ' ')));
    OWN.stream().filter(each -> !keys.contains(each)).forEach(keys::add);
    String hint =
        Nearest.to(key, keys)
            .map(near -> "did you mean '" + near + ":'?")
            .orElse("the keys are " + String.join(", ", keys));
    return new InputException("'" + Shorten.to(key, 40) + ":' is not known here: " + hint);
  }

  private static String inWordsOfTheFile(String message) {
    String words = message;
    for (OptionSpec option : SPEC.options()) {
      words = words.replace(option.typed() + " ", option.name().replace('-', ' ') + ": ");
    }
    return words.replace("--", "");
  }

  private static void checkOwn(String key, String value) {
    if (key.equals(DOUGH_TEMP)) {
      Temperature given = Quantities.temperature(DOUGH_TEMP + ":", value);
      Quantities.named(DOUGH_TEMP + ":", value, () -> DoughTemperature.steady(given));
    } else if (key.equals(START_HEIGHT)) {
      millimetres(START_HEIGHT + ":", value);
    } else if (key.equals(ZONE)) {
      Quantities.zone(ZONE + ":", value);
    }
  }

  /** A height in millimetres: {@code 52 mm}, {@code 5.2 cm}. */
  public static double millimetres(String name, String text) {
    Measure given = Quantities.measure(name, text, "a height", "52 mm");
    double scale =
        switch (given.unit().toLowerCase(Locale.ROOT)) {
          case "mm" -> 1;
          case "cm" -> 10;
          case "in" -> 25.4;
          default ->
              throw new InputException(
                  Quantities.shown(name, text) + " needs mm, cm or in: write for example 52 mm");
        };
    return Checks.inRange(name, given.value() * scale, LOWEST_MM, HIGHEST_MM, "mm");
  }

  /** The dough; what the head does not say is as the options of {@code rise} assume. */
  public DoughFormula formula() {
    try {
      return DoughOptions.read(arguments(options), environment).formula();
    } catch (InputException e) {
      throw e.inWords(inWordsOfTheFile(String.valueOf(e.getMessage())));
    }
  }

  /** Dough temperature after mixing. */
  public Optional<Temperature> doughTemperature() {
    return Optional.ofNullable(own.get(DOUGH_TEMP))
        .map(text -> Quantities.temperature(DOUGH_TEMP + ":", text));
  }

  /** Height of the dough's top in the jar at the start, mm. */
  public OptionalDouble startHeightMm() {
    String text = own.get(START_HEIGHT);
    return text == null
        ? OptionalDouble.empty()
        : OptionalDouble.of(millimetres(START_HEIGHT + ":", text));
  }

  /** When it was mixed, as typed. */
  public Optional<String> mixedAt() {
    return Optional.ofNullable(own.get(MIXED_AT));
  }

  /** The place whose clock is meant, as typed. */
  public Optional<String> zone() {
    return Optional.ofNullable(own.get(ZONE));
  }

  /** What was assumed because the head does not say it. */
  public Optional<String> assumed() {
    List<String> missing = new ArrayList<>();
    boolean share = options.containsKey("starter") || options.containsKey("prefermented");
    if (!share) {
      missing.add("starter 20 %");
    }
    if (!options.containsKey("hydration") && !options.containsKey("dough-yield")) {
      missing.add("hydration 70 %");
    }
    if (!options.containsKey("flour")) {
      missing.add("white flour");
    }
    if (!options.containsKey("salt")) {
      missing.add("salt 2 %");
    }
    return missing.isEmpty()
        ? Optional.empty()
        : Optional.of(missing.stream().collect(Collectors.joining(", ")));
  }
}
