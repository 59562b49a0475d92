package doughtide.cli.options;

import static doughtide.cli.answer.Unit.PERCENT;

import doughtide.cli.answer.Section;
import doughtide.cli.answer.Unit;
import doughtide.cli.args.Arguments;
import doughtide.cli.args.OptionSpec;
import doughtide.cli.args.TemperatureSteps;
import doughtide.cli.args.Words;
import doughtide.cli.file.FlourFile;
import doughtide.cli.session.Environment;
import doughtide.core.dough.DoughFormula;
import doughtide.core.dough.FlourClass;
import doughtide.core.dough.Starter;
import doughtide.core.quantity.InputException;
import doughtide.core.rise.DoughTemperature;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * The options that describe a dough, and the dough they describe.
 *
 * @param formula flour, water, salt, starter, altitude
 * @param temperature the dough's own, if given
 * @param starterWord how the share of the starter was said, for the page
 */
public record DoughOptions(
    DoughFormula formula, Optional<TemperatureSteps> temperature, StarterWord starterWord) {

  public static final String DOUGH_TEMP = "dough-temp";
  public static final String STARTER = "starter";
  public static final String PREFERMENTED = "prefermented";
  private static final String STARTER_HYDRATION = "starter-hydration";
  private static final String STARTER_CONDITION = "starter-condition";
  private static final String STARTER_FLOUR = "starter-flour";
  public static final String FLOUR = "flour";
  private static final String HYDRATION = "hydration";
  public static final String DOUGH_YIELD = "dough-yield";
  private static final String SALT = "salt";
  private static final String ALTITUDE = "altitude";

  /** Whether the share of the starter was said or assumed. */
  enum StarterWord {
    GIVEN,
    ASSUMED
  }

  /** The options, in the order of help. */
  public static List<OptionSpec> specs() {
    List<OptionSpec> all = new ArrayList<>(percentages());
    all.addAll(FormulaOptions.specs());
    return all;
  }

  private static List<OptionSpec> percentages() {
    return List.of(
        OptionSpec.value(
            DOUGH_TEMP,
            "TEMP",
            "25C",
            "The dough's own temperature, °C or °F, measured in the dough. If it changes:"
                + " 25C,3h:22C is 25 °C for three hours after mixing, then 22 °C."),
        OptionSpec.value(
                STARTER, "SHARE", "20%", "Starter in per cent of the flour added to the dough.")
            .withDefault("20%"),
        OptionSpec.value(
            PREFERMENTED,
            "SHARE",
            "9.1%",
            "Instead of --starter: flour in the starter in per cent of all flour."),
        OptionSpec.value(
                STARTER_HYDRATION, "SHARE", "100%", "Water over flour in the starter, 40 to 300%.")
            .withDefault("100%"),
        OptionSpec.value(
                STARTER_CONDITION,
                "WORD",
                "ripe",
                "How the starter is when it goes in: ripe, young, past best or from cold.")
            .withDefault("ripe"),
        OptionSpec.value(STARTER_FLOUR, "FLOUR", "rye", "The flour the starter is kept on.")
            .withDefault("white"),
        OptionSpec.value(
                FLOUR,
                "FLOUR",
                "white:80%,wholemeal wheat:20%",
                "All flour of the dough, the starter's included: " + FlourClass.names() + ".")
            .withDefault("white"),
        FlourFile.option(),
        OptionSpec.value(
                HYDRATION,
                "SHARE",
                "72%",
                "All water in per cent of all flour, the starter's included, 45 to 200%.")
            .withDefault("70%"),
        OptionSpec.value(
            DOUGH_YIELD,
            "NUMBER",
            "170",
            "Instead of --hydration: dough yield, 100 plus the hydration."),
        OptionSpec.value(SALT, "SHARE", "2%", "Salt in per cent of all flour, 0 to 4%.")
            .withDefault("2%"),
        OptionSpec.value(
                ALTITUDE, "HEIGHT", "1500m", "Height of the kitchen above the sea, m or ft.")
            .withDefault("sea level"));
  }

  /** The dough that was described; a flour's record also gives the hydration chosen for it. */
  public static DoughOptions read(Arguments arguments, Environment environment) {
    DoughFormula formula = FormulaOptions.formula(arguments, environment);
    boolean said =
        arguments.has(STARTER)
            || arguments.has(PREFERMENTED)
            || arguments.has(FormulaOptions.GRAMS);
    return new DoughOptions(
        formula,
        arguments.temperatureSteps(DOUGH_TEMP),
        said ? StarterWord.GIVEN : StarterWord.ASSUMED);
  }

  /**
   * The temperature, for commands that cannot do without.
   *
   * @throws InputException if it was not given or no dough has it
   */
  public DoughTemperature doughTemperature(Arguments arguments) {
    return temperature.orElseThrow(() -> arguments.missing(DOUGH_TEMP)).dough("--" + DOUGH_TEMP);
  }

  /**
   * Adds what was understood, both conventions of starter share side by side.
   *
   * @param temperatureWords where the dough's temperature comes from, in words
   */
  public void describe(Section.Builder to, String temperatureWords) {
    describeFlour(to);
    to.say("Starter", share() + "; " + kind());
    to.number("starterOfAddedFlourPercent", "", percent(formula.starterOfAddedFlour()), PERCENT, 4)
        .number("prefermentedFlourPercent", "", percent(formula.prefermentedFlour()), PERCENT, 4);
    describeRest(to, temperatureWords);
    FormulaOptions.describe(formula, to);
  }

  /** The same where the share of starter is what is asked. */
  public void describeWithoutShare(Section.Builder to, String temperatureWords) {
    describeFlour(to);
    to.say("Starter", kind() + "; its share is asked");
    describeRest(to, temperatureWords);
    FormulaOptions.describe(formula, to);
  }

  private static OptionalDouble percent(double fraction) {
    return OptionalDouble.of(100 * fraction);
  }

  private void describeFlour(Section.Builder to) {
    to.say(
        "Dough",
        formula.flour().name()
            + "; hydration "
            + Words.percent(formula.hydration())
            + " (dough yield "
            + Words.rounded(formula.doughYield(), 1)
            + "); salt "
            + Words.percent(formula.salt()));
    to.word("flour", "", formula.flour().name())
        .number(
            "hydrationPercent", "", OptionalDouble.of(formula.hydration().percent()), PERCENT, 4)
        .number("doughYield", "", formula.doughYield(), Unit.NONE)
        .number("saltPercent", "", OptionalDouble.of(formula.salt().percent()), PERCENT, 4);
  }

  private void describeRest(Section.Builder to, String temperatureWords) {
    Starter starter = formula.starter();
    to.number(
            "starterHydrationPercent",
            "",
            OptionalDouble.of(starter.hydration().percent()),
            PERCENT,
            4)
        .word("starterFlour", "", starter.flour().name())
        .word("starterCondition", "", Arguments.word(starter.condition()))
        .word("doughTemperature", "Dough temperature", temperatureWords)
        .say("Kitchen", Words.altitude(formula.altitude()))
        .number("altitudeMetres", "", formula.altitude().metres(), Unit.METRES);
  }

  private String share() {
    return Words.percent(100 * formula.starterOfAddedFlour())
        + " of the flour added = "
        + Words.percent(100 * formula.prefermentedFlour())
        + " prefermented flour"
        + (starterWord == StarterWord.ASSUMED ? " (assumed, say --starter)" : "");
  }

  private String kind() {
    Starter starter = formula.starter();
    return Arguments.word(starter.condition())
        + ", "
        + starter.flour().name()
        + ", hydration "
        + Words.percent(starter.hydration());
  }
}
