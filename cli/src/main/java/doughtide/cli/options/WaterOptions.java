package doughtide.cli.options;

import doughtide.cli.args.Arguments;
import doughtide.cli.args.OptionSpec;
import doughtide.cli.file.FlourFile;
import doughtide.cli.session.Environment;
import doughtide.core.dough.DoughFormula;
import doughtide.core.dough.Ingredients;
import doughtide.core.flourtrial.FlourRecord;
import doughtide.core.quantity.InputException;
import doughtide.core.quantity.Mass;
import doughtide.core.quantity.Measure;
import doughtide.core.quantity.Quantities;
import doughtide.core.quantity.Temperature;
import doughtide.core.thermal.FactorRule;
import doughtide.core.thermal.Material;
import doughtide.core.thermal.Mixing;
import doughtide.core.thermal.Warming;
import doughtide.core.thermal.WaterTemperature;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Optional;

/**
 * What is mixed, at which temperatures.
 *
 * @param flourName the flour, where a record was given
 * @param formula the dough
 * @param ingredients what is weighed
 * @param room temperature of the room and of the bowl
 * @param flour temperature of flour and salt
 * @param starter temperature of the starter
 * @param starterFactor whether the rule counts the starter
 * @param mixing how much mixing warms the dough, and how that was said
 * @param vessel the bowl
 */
public record WaterOptions(
    Optional<String> flourName,
    DoughFormula formula,
    Ingredients ingredients,
    Temperature room,
    Temperature flour,
    Temperature starter,
    StarterFactor starterFactor,
    SaidMixing mixing,
    Optional<Bowl> vessel) {

  public static final String DOUGH_TEMP = "dough-temp";
  public static final String POUR = "pour";
  public static final String GOT = "got";
  public static final String TAP = "tap";
  private static final String ROOM = "room";
  private static final String FLOUR_TEMP = "flour-temp";
  private static final String STARTER_TEMP = "starter-temp";
  private static final String FRICTION = "friction";
  static final String WARMING = "warming";
  private static final String ALL_FLOUR = "all-flour";
  private static final String DOUGH_MASS = "dough-mass";
  private static final String HYDRATION = "hydration";
  private static final String STARTER = "starter";
  private static final String STARTER_HYDRATION = "starter-hydration";
  private static final String SALT = "salt";
  private static final String BOWL = "bowl";
  private static final String MOISTURE = "moisture";

  /** Whether the rule has the starter as a factor of its own. */
  public enum StarterFactor {
    COUNTED,
    LEFT_OUT
  }

  /** How the warming by mixing was said. */
  public enum Said {
    NOTHING,
    FRICTION_ONCE,
    WARMING
  }

  /**
   * The warming by mixing.
   *
   * @param said in which convention
   * @param warming the number as given
   * @param how what mixes, for a sentence
   */
  public record SaidMixing(Said said, Warming warming, String how) {}

  /**
   * The bowl.
   *
   * @param material of its wall
   * @param mass of what touches the dough
   */
  public record Bowl(Material material, Mass mass) {}

  public static List<OptionSpec> specs() {
    List<OptionSpec> all = new ArrayList<>(own());
    all.addAll(FormulaOptions.specs());
    return all;
  }

  private static List<OptionSpec> own() {
    return List.of(
        OptionSpec.value(
            DOUGH_TEMP,
            "TEMP",
            "25C",
            "The dough temperature wanted after mixing: asks for water."),
        OptionSpec.value(
            POUR, "TEMP", "30C", "Instead: the water as it is poured: asks for the dough."),
        OptionSpec.value(
            GOT,
            "TEMP",
            "25.5C",
            "With --pour: the dough as measured after mixing: asks what mixing did."),
        OptionSpec.value(ROOM, "TEMP", "21C", "Temperature of room and bowl.").required(),
        OptionSpec.value(FLOUR_TEMP, "TEMP", "20C", "Temperature of flour and salt.")
            .withDefault("as the room"),
        OptionSpec.value(
                STARTER_TEMP,
                "TEMP",
                "24C",
                "Temperature of the starter; the rule of factors then counts it.")
            .withDefault("as the room, not counted"),
        OptionSpec.value(
            TAP, "TEMP", "18C", "The coldest water at hand: where it is too warm, gives the ice."),
        OptionSpec.value(
            FRICTION,
            "DEGREES",
            "6C",
            "Friction factor of the rule, subtracted once: 6C are six Celsius degrees, 8F eight"
                + " Fahrenheit degrees."),
        OptionSpec.value(
            WARMING,
            "DEGREES",
            "2C",
            "Instead: by how much mixing really warms the dough, subtracted before multiplying."),
        OptionSpec.value(ALL_FLOUR, "MASS", "1000g", "All flour, the starter's included.")
            .withDefault("1000g"),
        OptionSpec.value(DOUGH_MASS, "MASS", "1800g", "Instead of --all-flour: mass of the dough."),
        OptionSpec.value(HYDRATION, "SHARE", "70%", "All water in per cent of all flour.")
            .withDefault("70%"),
        FlourFile.optionForHydration(),
        OptionSpec.value(
                MOISTURE,
                "SHARE",
                "14%",
                "Water in the flour as sold: the drier it is, the more it warms when wetted.")
            .withDefault("as the flour's, 14%"),
        OptionSpec.value(
                STARTER, "SHARE", "20%", "Starter in per cent of the flour added to the dough.")
            .withDefault("20%"),
        OptionSpec.value(STARTER_HYDRATION, "SHARE", "100%", "Water over flour in the starter.")
            .withDefault("100%"),
        OptionSpec.value(SALT, "SHARE", "2%", "Salt in per cent of all flour.").withDefault("2%"),
        OptionSpec.value(
            BOWL,
            "MATERIAL:MASS",
            "steel:600g",
            "The bowl that takes the dough's temperature: " + materials() + "."));
  }

  private static String materials() {
    return String.join(", ", Arrays.stream(Material.values()).map(Arguments::word).toList());
  }

  public static WaterOptions read(Arguments arguments, Environment environment) {
    arguments.exclusive(FRICTION, WARMING);
    arguments.exclusive(ALL_FLOUR, DOUGH_MASS);
    arguments.exclusive(FormulaOptions.GRAMS, ALL_FLOUR);
    Optional<FlourRecord> record = FlourFile.read(arguments, environment);
    DoughFormula described = FormulaOptions.formula(arguments, environment);
    DoughFormula formula =
        arguments
            .share(MOISTURE)
            .map(
                share -> described.toBuilder().flour(described.flour().withMoisture(share)).build())
            .orElse(described);
    Temperature room = atTheBench(arguments, ROOM).orElseThrow();
    return new WaterOptions(
        record.map(FlourRecord::name),
        formula,
        arguments
            .mass(DOUGH_MASS)
            .or(() -> FormulaOptions.weighedMass(arguments, formula))
            .map(formula::forDough)
            .orElseGet(
                () -> formula.forFlour(arguments.mass(ALL_FLOUR).orElse(Mass.ofGrams(1000)))),
        room,
        atTheBench(arguments, FLOUR_TEMP).orElse(room),
        atTheBench(arguments, STARTER_TEMP).orElse(room),
        arguments.has(STARTER_TEMP) ? StarterFactor.COUNTED : StarterFactor.LEFT_OUT,
        mixing(arguments, environment),
        arguments.text(BOWL).map(WaterOptions::bowl));
  }

  private static Optional<Temperature> atTheBench(Arguments arguments, String option) {
    Optional<Temperature> given = arguments.temperature(option);
    given.ifPresent(
        at -> doughtide.core.quantity.Checks.inRange("--" + option, at.celsius(), -30, 60, "°C"));
    return given;
  }

  private static SaidMixing mixing(Arguments arguments, Environment environment) {
    Optional<Warming> friction = arguments.text(FRICTION).map(text -> degrees(FRICTION, text));
    if (friction.isPresent()) {
      return new SaidMixing(Said.FRICTION_ONCE, friction.get(), "with that friction factor");
    }
    return arguments
        .text(WARMING)
        .map(text -> degrees(WARMING, text))
        .map(warming -> new SaidMixing(Said.WARMING, warming, "with that warming by mixing"))
        .or(() -> MixerOptions.known(arguments, environment))
        .orElse(new SaidMixing(Said.NOTHING, Warming.NONE, MixerOptions.BY_HAND));
  }

  /** A difference of temperature: 6C are six Celsius degrees, not the temperature. */
  private static Warming degrees(String option, String text) {
    String name = "--" + option;
    Measure given = Quantities.measure(name, text, "a difference of temperature", "2C (or 4F)");
    String unit = given.unit().replaceAll("[°º˚]", "").strip().toUpperCase(Locale.ROOT);
    return switch (unit) {
      case "C", "K" -> Quantities.named(name, text, () -> new Warming(given.value()));
      case "F" -> Quantities.named(name, text, () -> Warming.ofFahrenheitDegrees(given.value()));
      default ->
          throw new InputException(
              Quantities.shown(name, text)
                  + " needs the unit of its degrees: write "
                  + name
                  + " "
                  + given.number()
                  + "C or "
                  + name
                  + " "
                  + given.number()
                  + "F");
    };
  }

  private static Bowl bowl(String text) {
    String name = "--" + BOWL;
    String clean = Quantities.clean(text).toLowerCase(Locale.ROOT);
    int colon = clean.indexOf(':');
    if (colon < 0) {
      throw new InputException(
          Quantities.shown(name, text)
              + " needs material and mass: write for example "
              + name
              + " steel:600g");
    }
    String wanted = clean.substring(0, colon).strip();
    Material material =
        Arrays.stream(Material.values())
            .filter(each -> Arguments.word(each).equals(wanted))
            .findFirst()
            .orElseThrow(
                () ->
                    new InputException(
                        Quantities.shown(name, text)
                            + ": the material is not known: use one of "
                            + materials()));
    return new Bowl(material, Quantities.mass(name, clean.substring(colon + 1)));
  }

  /** The balance of heat without the work of mixing. */
  public WaterTemperature still() {
    WaterTemperature balance = WaterTemperature.of(formula, ingredients, flour, starter);
    return vessel.map(bowl -> balance.vessel(bowl.mass(), bowl.material(), room)).orElse(balance);
  }

  /** The balance of heat. */
  public WaterTemperature balance() {
    return still().mixing(how());
  }

  /** The rule without mixing. */
  public FactorRule factors() {
    FactorRule rule = FactorRule.of(flour, room);
    return starterFactor == StarterFactor.COUNTED ? rule.starter(starter) : rule;
  }

  /** What mixing does: as it was said or measured, else as hands do. */
  private Mixing how() {
    return mixing.said() == Said.NOTHING ? Mixing.BY_HAND : Mixing.measured(warming());
  }

  /** The dough's real warming by mixing, from either convention. */
  public Warming warming() {
    return mixing.said() == Said.FRICTION_ONCE
        ? new Warming(mixing.warming().kelvin() / factors().factors())
        : mixing.warming();
  }

  /** The friction factor that says the same. */
  public Warming friction() {
    return mixing.said() == Said.FRICTION_ONCE
        ? mixing.warming()
        : new Warming(mixing.warming().kelvin() * factors().factors());
  }
}
