package doughtide.cli.command;

import doughtide.cli.answer.TextPage;
import doughtide.cli.args.Arguments;
import doughtide.cli.args.Words;
import doughtide.cli.options.WaterOptions;
import doughtide.cli.text.Understood;
import doughtide.core.dough.Ingredients;
import doughtide.core.thermal.BaseTemperature;
import doughtide.core.thermal.FactorRule;
import doughtide.core.thermal.Warming;
import doughtide.core.thermal.WaterTerm;
import java.util.ArrayList;
import java.util.List;

/** The temperature of water as a page of text. */
public final class WaterPage {

  private final WaterOptions options;
  private final TextPage page = new TextPage();

  private WaterPage(WaterOptions options) {
    this.options = options;
  }

  public static List<String> of(WaterAnswers answers) {
    WaterPage page = new WaterPage(answers.options());
    page.understood();
    page.page.gap();
    WaterAnswers.Question question = answers.question();
    if (question instanceof WaterAnswers.Water water) {
      page.water(water);
    } else if (question instanceof WaterAnswers.Dough dough) {
      page.dough(dough);
    } else if (question instanceof WaterAnswers.Mixed mixed) {
      page.mixed(mixed);
    }
    page.page.gap();
    WaterCommand.CAUTIONS.forEach(caution -> page.page.sentence("Caution: " + caution));
    return page.page.lines();
  }

  private void understood() {
    Ingredients weighed = options.ingredients();
    Understood understood = new Understood();
    understood.add(
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
    understood.add("Flour, salt", Words.temperature(options.flour()));
    understood.add("Starter", Words.temperature(options.starter()));
    understood.add("Room", Words.temperature(options.room()));
    options
        .vessel()
        .ifPresent(
            bowl ->
                understood.add(
                    "Bowl",
                    Arguments.word(bowl.material())
                        + ", "
                        + Words.grams(bowl.mass().grams())
                        + ", as the room"));
    understood.add("Mixing", mixing());
    page.understood(understood);
  }

  private String mixing() {
    if (options.mixing().said() == WaterOptions.Said.NOTHING) {
      return "no warming given";
    }
    return "warms the dough by "
        + degrees(options.warming())
        + "; as a friction factor "
        + degrees(options.friction());
  }

  private void water(WaterAnswers.Water water) {
    page.sentence("Water for a dough of " + Words.temperature(water.wanted()) + ":");
    List<List<String>> rows = new ArrayList<>();
    rows.add(List.of("  balance of heat", temperature(water.answer().waterCelsius())));
    rows.add(
        List.of(
            "  rule of " + options.factors().factors() + " factors, friction subtracted once",
            temperature(water.frictionOnceCelsius())));
    rows.add(
        List.of(
            "  rule of " + options.factors().factors() + " factors, warming subtracted first",
            temperature(water.warmingFirstCelsius())));
    if (options.starterFactor() == WaterOptions.StarterFactor.LEFT_OUT) {
      rows.add(List.of("  base temperature of that rule", base(water)));
    }
    page.table(rows);
    water
        .answer()
        .ice()
        .ifPresent(
            ice ->
                page.gap()
                    .sentence(
                        "The tap is too warm. Pour "
                            + Words.grams(ice.tapGrams())
                            + " of tap water and "
                            + Words.grams(ice.iceGrams())
                            + " of ice, crushed."));
    water.answer().warnings().forEach(warning -> page.gap().sentence("Note: " + warning + "."));
    terms(water.terms());
    conventions(water);
  }

  private String base(WaterAnswers.Water water) {
    double base =
        options.room().celsius() + options.flour().celsius() + water.frictionOnceCelsius();
    return base >= 0 && base <= 150
        ? Words.rounded(BaseTemperature.ofCelsius(base).sumCelsius(), 1)
            + " °C (room + flour + water)"
        : "outside 0…150 °C";
  }

  private void terms(List<WaterTerm> terms) {
    page.gap()
        .sentence(
            "Why they differ: what each adds to the water's temperature, starting from the dough's, °C");
    List<List<String>> rows = new ArrayList<>();
    rows.add(List.of("", "balance", "rule", ""));
    for (WaterTerm term : terms) {
      rows.add(
          List.of(
              "  " + Arguments.word(term.kind()),
              signed(term.balanceKelvin()),
              signed(term.ruleKelvin()),
              term.kind().explanation()));
    }
    page.table(rows);
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
    page.gap()
        .sentence(
            "The two conventions agree when the friction factor is "
                + factors.factors()
                + " times the warming. "
                + degrees(given)
                + " were read as "
                + (once ? "a friction factor" : "a warming")
                + "; read as "
                + (once ? "a warming" : "a friction factor")
                + " the rule would give "
                + temperature(other)
                + ".");
  }

  private void dough(WaterAnswers.Dough dough) {
    page.sentence("Water of " + Words.temperature(dough.pour()) + " gives a dough of:");
    page.table(
        List.of(
            List.of("  balance of heat", temperature(dough.balanceCelsius())),
            List.of(
                "  rule of " + options.factors().factors() + " factors",
                temperature(dough.ruleCelsius()))));
  }

  private void mixed(WaterAnswers.Mixed mixed) {
    page.sentence(
        "Water of "
            + Words.temperature(mixed.pour())
            + " gave a dough of "
            + Words.temperature(mixed.got())
            + ". Mixing accounts for:");
    page.table(
        List.of(
            List.of("  balance of heat", degrees(mixed.mixing()), "write --warming next time"),
            List.of(
                "  rule, friction factor subtracted once",
                degrees(mixed.friction()),
                "only for the rule"),
            List.of(
                "  rule, warming subtracted first",
                degrees(mixed.warming()),
                "only for the rule")));
    page.sentence(
        "Keep the first for this mixer and this mixing time. A negative number means that the dough"
            + " lost heat to bowl and air.");
  }

  private static String degrees(Warming warming) {
    return Words.rounded(warming.kelvin(), 1)
        + " °C ("
        + Words.rounded(warming.fahrenheitDegrees(), 1)
        + " °F)";
  }

  private static String signed(double kelvin) {
    String text = Words.rounded(kelvin, 1);
    return text.startsWith("-") || text.equals("0") ? text : "+" + text;
  }

  /** Also below freezing, where ice is meant. */
  private static String temperature(double celsius) {
    return Words.rounded(celsius, 1) + " °C (" + Words.rounded(celsius * 1.8 + 32, 0) + " °F)";
  }
}
