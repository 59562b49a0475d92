package doughtide.cli.command;

import doughtide.cli.answer.Answer;
import doughtide.cli.answer.Listing;
import doughtide.cli.answer.Section;
import doughtide.cli.answer.Timeline;
import doughtide.cli.answer.Unit;
import doughtide.cli.args.Arguments;
import doughtide.cli.args.Words;
import doughtide.cli.options.WaterOptions;
import doughtide.core.dough.Ingredients;
import doughtide.core.thermal.BaseTemperature;
import doughtide.core.thermal.FactorRule;
import doughtide.core.thermal.Warming;
import doughtide.core.thermal.WaterTerm;
import java.util.Optional;

/** The temperature of water as an answer. */
public final class WaterSections {

  private static final int VERSION = 2;

  private final WaterOptions options;
  private final Section.Builder body = Section.loose(Timeline.sinceMixing(Optional.empty()));

  private WaterSections(WaterOptions options) {
    this.options = options;
  }

  public static Answer of(WaterAnswers answers) {
    WaterSections sections = new WaterSections(answers.options());
    String headline = sections.question(answers.question());
    sections.understood(sections.body.section("", "Understood"));
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
        .number("mixingKelvin", "", options.warming().kelvin(), Unit.KELVIN)
        .number("waterFahrenheit", "", water.answer().waterFahrenheit(), Unit.NONE);
    Section.Builder table =
        body.section("", "Water for a dough of " + Words.temperature(water.wanted()));
    String rule = "rule of " + options.factors().factors() + " factors, ";
    table.number("waterCelsius", "balance of heat", celsius, Unit.CELSIUS);
    table
        .section("rule", "")
        .number(
            "frictionOnceCelsius",
            rule + "friction once",
            water.frictionOnceCelsius(),
            Unit.CELSIUS)
        .number(
            "warmingFirstCelsius",
            rule + "warming first",
            water.warmingFirstCelsius(),
            Unit.CELSIUS)
        .number("frictionKelvin", "", options.friction().kelvin(), Unit.KELVIN)
        .number("warmingKelvin", "", options.warming().kelvin(), Unit.KELVIN);
    if (options.starterFactor() == WaterOptions.StarterFactor.LEFT_OUT) {
      table.say("base temperature of that", base(water));
    }
    body.paragraph().texts("warnings", "! ", water.answer().warnings());
    terms(water);
    conventions(water);
    String pour =
        "Pour water of "
            + Unit.CELSIUS.text(celsius)
            + " for a dough of "
            + Words.temperature(water.wanted())
            + ".";
    return water
        .answer()
        .ice()
        .map(
            ice -> {
              body.section("ice", "")
                  .number("tapGrams", "", ice.tapGrams(), Unit.GRAMS)
                  .number("iceGrams", "", ice.iceGrams(), Unit.GRAMS);
              return pour
                  + " The tap is too warm. Pour "
                  + Words.grams(ice.tapGrams())
                  + " of tap water and "
                  + Words.grams(ice.iceGrams())
                  + " of ice, crushed.";
            })
        .orElse(pour);
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
            "Why they differ: what each adds to the water's temperature, starting from the"
                + " dough's, °C");
    for (WaterTerm term : water.terms()) {
      terms
          .row()
          .word("kind", "from", Arguments.word(term.kind()))
          .number("balanceKelvin", "", term.balanceKelvin(), Unit.KELVIN)
          .say("balance", signed(term.balanceKelvin()))
          .number("ruleKelvin", "", term.ruleKelvin(), Unit.KELVIN)
          .say("rule", signed(term.ruleKelvin()))
          .word("explanation", "why", term.kind().explanation());
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
    Section.Builder table =
        body.section("", "Water of " + Words.temperature(dough.pour()) + " gives a dough of");
    table
        .number("waterCelsius", "", dough.pour().celsius(), Unit.CELSIUS)
        .number("doughCelsius", "balance of heat", dough.balanceCelsius(), Unit.CELSIUS);
    table
        .section("rule", "")
        .number(
            "doughCelsius",
            "rule of " + options.factors().factors() + " factors",
            dough.ruleCelsius(),
            Unit.CELSIUS);
    return "Water of "
        + Words.temperature(dough.pour())
        + " gives a dough of "
        + Unit.CELSIUS.text(dough.balanceCelsius())
        + ".";
  }

  private String mixed(WaterAnswers.Mixed mixed) {
    body.number("waterCelsius", "", mixed.pour().celsius(), Unit.CELSIUS)
        .number("doughCelsius", "", mixed.got().celsius(), Unit.CELSIUS);
    Section.Builder table = body.section("", "Mixing accounts for");
    table
        .number("mixingKelvin", "balance of heat", mixed.mixing().kelvin(), Unit.KELVIN)
        .section("rule", "")
        .number("frictionKelvin", "rule, friction once", mixed.friction().kelvin(), Unit.KELVIN)
        .number("warmingKelvin", "rule, warming first", mixed.warming().kelvin(), Unit.KELVIN);
    body.paragraph()
        .say(
            "Keep the first for this mixer and this mixing time: write --warming next time. The"
                + " other two are for the rule only. A negative number means that the dough lost"
                + " heat to bowl and air.");
    double kelvin = mixed.mixing().kelvin();
    return (kelvin < 0 ? "In mixing the dough lost " : "Mixing warmed the dough by ")
        + Unit.KELVIN.text(Math.abs(kelvin))
        + ": water of "
        + Words.temperature(mixed.pour())
        + " gave a dough of "
        + Words.temperature(mixed.got())
        + ".";
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
            + Words.grams(weighed.saltGrams()));
    ingredients(weighed, to);
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
    to.say(
        "Mixing",
        options.mixing().said() == WaterOptions.Said.NOTHING
            ? "no warming given"
            : "warms the dough by "
                + degrees(options.warming())
                + "; as a friction factor "
                + degrees(options.friction()));
  }

  /** What to weigh, for other programs. */
  public static void ingredients(Ingredients weigh, Section.Builder to) {
    to.section("ingredients", "")
        .number("flourGrams", "", weigh.flourGrams(), Unit.GRAMS)
        .number("waterGrams", "", weigh.waterGrams(), Unit.GRAMS)
        .number("starterGrams", "", weigh.starterGrams(), Unit.GRAMS)
        .number("saltGrams", "", weigh.saltGrams(), Unit.GRAMS);
  }

  private static String degrees(Warming warming) {
    return Unit.KELVIN.text(warming.kelvin());
  }

  private static String signed(double kelvin) {
    String text = Words.rounded(kelvin, 1);
    return text.startsWith("-") || text.equals("0") ? text : "+" + text;
  }
}
