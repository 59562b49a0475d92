package doughtide.cli.command;

import doughtide.cli.answer.Answer;
import doughtide.cli.answer.IngredientItems;
import doughtide.cli.answer.Listing;
import doughtide.cli.answer.Section;
import doughtide.cli.answer.Timeline;
import doughtide.cli.answer.Unit;
import doughtide.cli.args.Arguments;
import doughtide.cli.args.Words;
import doughtide.cli.options.WaterOptions;
import doughtide.core.dough.Ingredients;
import doughtide.core.forecast.DoughWarnings;
import doughtide.core.thermal.BaseTemperature;
import doughtide.core.thermal.FactorRule;
import doughtide.core.thermal.Warming;
import doughtide.core.thermal.WaterAnswer;
import doughtide.core.thermal.WaterTerm;
import doughtide.report.words.Advice;
import doughtide.report.words.WaterWords;
import java.util.List;
import java.util.Optional;

/** The temperature of water as an answer. */
final class WaterSections {

  private static final int VERSION = 2;

  private final WaterOptions options;
  private final boolean rules;
  private final Section.Builder body = Section.loose(Timeline.sinceMixing(Optional.empty()));

  private WaterSections(WaterOptions options, boolean rules) {
    this.options = options;
    this.rules = rules;
  }

  /**
   * The answer.
   *
   * @param rules whether a page shows the trade's rules, too; data always hold them
   */
  public static Answer of(WaterAnswers answers, boolean rules) {
    WaterSections sections = new WaterSections(answers.options(), rules);
    String headline = sections.question(answers.question());
    sections.additions();
    Section.Builder understood = sections.body.section("", "Understood");
    sections.understood(understood);
    if (!(answers.question() instanceof WaterAnswers.Mixed)) {
      understood.say("Mixing", sections.mixing());
    }
    sections.body.cautions(WaterCommand.CAUTIONS);
    return Answer.of("water", VERSION, headline, sections.body);
  }

  private String question(WaterAnswers.Question question) {
    if (question instanceof WaterAnswers.Water water) {
      return water(water);
    }
    return question instanceof WaterAnswers.Dough dough
        ? dough(dough)
        : mixed((WaterAnswers.Mixed) question);
  }

  private String water(WaterAnswers.Water water) {
    double celsius = water.answer().waterCelsius();
    body.number("doughCelsius", "", water.wanted().celsius(), Unit.CELSIUS)
        .number("doughPlusMinusKelvin", "", options.balance().doughPlusMinusKelvin(), Unit.KELVIN)
        .number("mixingKelvin", "", options.warming().kelvin(), Unit.KELVIN)
        .number("waterPlusMinusKelvin", "", water.answer().plusMinusKelvin(), Unit.KELVIN)
        .number("waterFahrenheit", "", water.answer().waterFahrenheit(), Unit.NONE);
    body.paragraph().texts("warnings", "! ", WaterWords.english().cautions(water.answer()));
    unsure();
    rule(water, celsius);
    terms(water);
    if (rules) {
      conventions(water);
    }
    water
        .answer()
        .ice()
        .ifPresent(
            ice ->
                body.section("ice", "")
                    .number("tapGrams", "", ice.tapGrams(), Unit.GRAMS)
                    .number("iceGrams", "", ice.iceGrams(), Unit.GRAMS));
    return pour(water.answer())
        + " for a dough of "
        + Words.temperature(water.wanted())
        + " mixed "
        + options.mixing().how()
        + ".";
  }

  private static String pour(WaterAnswer answer) {
    String water =
        "water of "
            + Unit.CELSIUS.text(answer.waterCelsius())
            + ", ± "
            + Words.rounded(answer.plusMinusKelvin(), 1)
            + " °C,";
    return answer
        .ice()
        .map(
            ice ->
                "The tap is too warm. Pour "
                    + Words.grams(ice.tapGrams())
                    + " of tap water and "
                    + Words.grams(ice.iceGrams())
                    + " of ice, crushed, as "
                    + water)
        .orElse("Pour " + water);
  }

  /** What is not known, and what would make it known. */
  private void unsure() {
    String spread = Words.rounded(options.balance().doughPlusMinusKelvin(), 1);
    body.paragraph()
        .say(
            "Eight such doughs in ten come out within "
                + spread
                + " °C of it. "
                + (options.mixing().said() == WaterOptions.Said.NOTHING
                    ? "Least is known of your hands, which may warm or cool a dough by 1 °C:"
                        + " measure the dough once, and give it with --pour and --got."
                    : "Thermometers, the moisture of the flour and the mixing time make the"
                        + " rest."));
    if (!rules) {
      body.paragraph().say("The trade's rules and why they differ: add --rules.");
    }
  }

  /** The label, on a page that shows the rules. */
  private String shown(String label) {
    return rules ? label : "";
  }

  private void rule(WaterAnswers.Water water, double celsius) {
    Section.Builder table = body.section("", shown("The balance of heat beside the rules"));
    String rule = "rule of " + options.factors().factors() + " factors, ";
    table.number("waterCelsius", shown("balance of heat"), celsius, Unit.CELSIUS);
    table
        .section("rule", "")
        .number(
            "frictionOnceCelsius",
            shown(rule + "friction once"),
            water.frictionOnceCelsius(),
            Unit.CELSIUS)
        .number(
            "warmingFirstCelsius",
            shown(rule + "warming first"),
            water.warmingFirstCelsius(),
            Unit.CELSIUS)
        .number("frictionKelvin", "", options.friction().kelvin(), Unit.KELVIN)
        .number("warmingKelvin", "", options.warming().kelvin(), Unit.KELVIN);
    if (rules && options.starterFactor() == WaterOptions.StarterFactor.LEFT_OUT) {
      table.say("base temperature of that", base(water));
    }
  }

  private String base(WaterAnswers.Water water) {
    double base =
        options.room().celsius() + options.flour().celsius() + water.frictionOnceCelsius();
    return base >= 0 && base <= 150
        ? Words.rounded(BaseTemperature.ofCelsius(base).sumCelsius(), 1)
            + " °C (room + flour + water)"
        : "outside 0…150 °C";
  }

  private void terms(WaterAnswers.Water water) {
    Listing.Builder terms =
        body.listing(
            "terms",
            shown(
                "Why they differ: what each adds to the water's temperature, starting from the"
                    + " dough's, °C"));
    for (WaterTerm term : water.terms()) {
      terms
          .row()
          .word("kind", shown("from"), Arguments.word(term.kind()))
          .number("balanceKelvin", "", term.balanceKelvin(), Unit.KELVIN)
          .number("ruleKelvin", "", term.ruleKelvin(), Unit.KELVIN)
          .say(shown("balance"), signed(term.balanceKelvin()))
          .say(shown("rule"), signed(term.ruleKelvin()))
          .word("explanation", shown("why"), WaterWords.english().why(term.kind()));
    }
  }

  private void conventions(WaterAnswers.Water water) {
    if (options.mixing().said() == WaterOptions.Said.NOTHING) {
      return;
    }
    Warming given = options.mixing().warming();
    FactorRule factors = options.factors();
    boolean once = options.mixing().said() == WaterOptions.Said.FRICTION_ONCE;
    double other =
        once
            ? factors.warmingFirst(given).waterCelsius(water.wanted())
            : factors.friction(given).waterCelsius(water.wanted());
    body.paragraph()
        .say(
            "The two conventions agree when the friction factor is "
                + factors.factors()
                + " times the warming. "
                + degrees(given)
                + " were read as "
                + (once ? "a friction factor" : "a warming")
                + "; read as "
                + (once ? "a warming" : "a friction factor")
                + " the rule would give "
                + Unit.CELSIUS.text(other)
                + ".");
  }

  private String dough(WaterAnswers.Dough dough) {
    double plusMinus = options.balance().doughPlusMinusKelvin();
    Section.Builder table =
        body.section(
            "", shown("Water of " + Words.temperature(dough.pour()) + " gives a dough of"));
    table
        .number("waterCelsius", "", dough.pour().celsius(), Unit.CELSIUS)
        .number("doughCelsius", shown("balance of heat"), dough.balanceCelsius(), Unit.CELSIUS)
        .number("doughPlusMinusKelvin", "", plusMinus, Unit.KELVIN);
    table
        .section("rule", "")
        .number(
            "doughCelsius",
            shown("rule of " + options.factors().factors() + " factors"),
            dough.ruleCelsius(),
            Unit.CELSIUS);
    return "Water of "
        + Words.temperature(dough.pour())
        + " gives a dough of "
        + Unit.CELSIUS.text(dough.balanceCelsius())
        + ", ± "
        + Words.rounded(plusMinus, 1)
        + " °C, mixed "
        + options.mixing().how()
        + ".";
  }

  private String mixed(WaterAnswers.Mixed mixed) {
    body.number("waterCelsius", "", mixed.pour().celsius(), Unit.CELSIUS)
        .number("doughCelsius", "", mixed.got().celsius(), Unit.CELSIUS);
    Section.Builder table = body.section("", shown("Mixing accounts for"));
    table
        .number("mixingKelvin", shown("balance of heat"), mixed.mixing().kelvin(), Unit.KELVIN)
        .section("rule", "")
        .number(
            "frictionKelvin", shown("rule, friction once"), mixed.friction().kelvin(), Unit.KELVIN)
        .number(
            "warmingKelvin", shown("rule, warming first"), mixed.warming().kelvin(), Unit.KELVIN);
    double kelvin = mixed.mixing().kelvin();
    String warming = Words.rounded(kelvin, 1) + "C";
    body.paragraph()
        .say(
            "Write it next time as --warming "
                + warming
                + ", or keep it with --mixer, --starter-file and --save. A"
                + " negative number means that the dough lost heat to hands, bowl and air.");
    return (kelvin < 0 ? "In mixing the dough lost " : "Mixing warmed the dough by ")
        + Unit.KELVIN.text(Math.abs(kelvin))
        + ": water of "
        + Words.temperature(mixed.pour())
        + " gave a dough of "
        + Words.temperature(mixed.got())
        + ".";
  }

  /** What the model does not cover of what is kneaded in. */
  private void additions() {
    List<String> said =
        DoughWarnings.ofContents(options.formula()).stream()
            .map(each -> Advice.english(each).sentences())
            .toList();
    if (!said.isEmpty()) {
      body.paragraph().texts("additionNotes", "! ", said);
    }
  }

  private void understood(Section.Builder to) {
    Ingredients weighed = options.ingredients();
    to.say(
        "Mixed",
        options.flourName().map(name -> name + ": ").orElse("")
            + "flour "
            + Words.grams(weighed.flourGrams())
            + ", water "
            + Words.grams(weighed.waterGrams())
            + ", starter "
            + Words.grams(weighed.starterGrams())
            + ", salt "
            + Words.grams(weighed.saltGrams())
            + Words.additions(weighed));
    IngredientItems.add(weighed, to);
    to.number("flourCelsius", "Flour, salt", options.flour().celsius(), Unit.CELSIUS)
        .number("starterCelsius", "Starter", options.starter().celsius(), Unit.CELSIUS)
        .number("roomCelsius", "Room", options.room().celsius(), Unit.CELSIUS)
        .number("factors", "", options.factors().factors(), Unit.COUNT);
    options
        .vessel()
        .ifPresent(
            bowl ->
                to.say(
                    "Bowl",
                    Arguments.word(bowl.material())
                        + ", "
                        + Words.grams(bowl.mass().grams())
                        + ", as the room"));
  }

  private String mixing() {
    return options.mixing().said() == WaterOptions.Said.NOTHING
        ? "by hand, neither warms nor cools the dough, ± 1 °C"
        : options.mixing().how()
            + ", warms the dough by "
            + degrees(options.warming())
            + (rules ? "; as a friction factor " + degrees(options.friction()) : "");
  }

  private static String degrees(Warming warming) {
    return Unit.KELVIN.text(warming.kelvin());
  }

  private static String signed(double kelvin) {
    String text = Words.rounded(kelvin, 1);
    return text.startsWith("-") || text.equals("0") ? text : "+" + text;
  }
}
