package doughtide.report.handout;

import doughtide.core.Internal;
import doughtide.core.dough.DoughFormula;
import doughtide.core.dough.Flour;
import doughtide.core.dough.Inclusion;
import doughtide.core.dough.Starter;
import doughtide.core.loaf.Proof;
import doughtide.core.quantity.Temperature;
import doughtide.core.thermal.TemperatureTrace;
import doughtide.report.words.Words;
import java.time.ZonedDateTime;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Collectors;

/** A dough in the words of a language. */
@Internal
public final class FormulaWords {

  private static final double FEET_PER_METRE = 1 / 0.3048; // exact, international foot

  private final Words words;

  public FormulaWords(Words words) {
    this.words = words;
  }

  /** The lines that tell what a page is for: formula, temperature, altitude if it matters. */
  public List<String> notes(HandoutDough dough) {
    List<String> notes = new ArrayList<>();
    notes.add(formula(dough.formula()));
    additions(dough.formula()).ifPresent(notes::add);
    notes.add(temperatureLine(dough));
    altitude(dough.formula()).ifPresent(notes::add);
    return notes;
  }

  /** What to shape for: a night in a cold, or the final proof. */
  public String title(Proof proof) {
    if (proof.cold().isEmpty()) {
      return words.say("night.titleProof");
    }
    String howLong =
        proof.ovenHour().isPresent()
            ? words.say("night.oven", Map.of("hours", words.hours(proof.ovenHour().getAsDouble())))
            : words.hours(proof.holdHours());
    return words.say(
        "night.title", Map.of("temperature", temperature(proof.cold().get()), "hours", howLong));
  }

  public String temperatureLine(HandoutDough dough) {
    return words.say(
        "formula.temperature", Map.of("temperature", temperature(dough.temperature())));
  }

  /** What is kneaded in beside flour, water, starter and salt. */
  public Optional<String> additions(DoughFormula formula) {
    if (formula.additions().isEmpty()) {
      return Optional.empty();
    }
    List<String> parts = new ArrayList<>();
    formula.additions().inclusions().forEach(each -> parts.add(inclusion(each)));
    formula
        .additions()
        .enrichments()
        .forEach(
            each ->
                parts.add(
                    words.say(
                        "formula.addition",
                        Map.of(
                            "name", words.say("ingredient." + each.kind().name()),
                            "percent", percent(100 * each.share())))));
    return Optional.of(words.say("formula.additions", Map.of("list", String.join(", ", parts))));
  }

  private String inclusion(Inclusion each) {
    return words.say(
        each.waterShare() > 0 ? "formula.additionSoaked" : "formula.addition",
        Map.of(
            "name", each.name(),
            "percent", percent(100 * each.share()),
            "soak", percent(100 * each.waterShare())));
  }

  /** Of a dough that keeps its temperature. */
  public String temperatureLine(double celsius) {
    Temperature temperature = Temperature.ofCelsius(celsius);
    return words.say("formula.temperature", Map.of("temperature", temperature(temperature)));
  }

  /** When it was mixed, to the minute that was given. */
  public String mixed(ZonedDateTime time) {
    return words.say(
        "formula.mixed",
        Map.of("date", words.date(time.toLocalDate()), "time", words.clockToTheMinute(time)));
  }

  public Optional<String> altitude(DoughFormula formula) {
    double metres = formula.altitude().metres();
    return metres == 0
        ? Optional.empty()
        : Optional.of(
            words.say(
                "formula.altitude",
                Map.of(
                    "metres", words.number(metres, 0),
                    "feet", words.number(metres * FEET_PER_METRE, 0))));
  }

  /** The mass and form of a loaf. */
  public String piece(Proof proof) {
    return words.say(
        "sheet.piece",
        Map.of(
            "grams", words.number(proof.mass().grams(), 0),
            "form", words.named("form", proof.form().key())));
  }

  /** Everything in one line, which begins with a capital letter. */
  public String formula(DoughFormula formula) {
    return words.capitalized(formulaWithin(formula));
  }

  /** The same behind other words. */
  String formulaWithin(DoughFormula formula) {
    return words.say(
        "formula.line",
        Map.of(
            "flour", flour(formula.flour()),
            "water", water(formula),
            "starter", starter(formula),
            "salt", percent(formula.salt().percent())));
  }

  /** Without the starter, for pages that vary it. */
  public String withoutStarter(DoughFormula formula) {
    return words.capitalized(
        words.say(
            "formula.withoutStarter",
            Map.of(
                "flour", flour(formula.flour()),
                "water", water(formula),
                "salt", percent(formula.salt().percent()),
                "kept", kept(formula.starter()))));
  }

  public String water(DoughFormula formula) {
    return words.say(
        "formula.water",
        Map.of(
            "hydration", percent(formula.hydration().percent()),
            "yield", words.number(formula.doughYield(), 0)));
  }

  /** Both conventions side by side. */
  public String starter(DoughFormula formula) {
    return words.say(
        "formula.starter",
        Map.of(
            "share", percent(100 * formula.starterOfAddedFlour()),
            "prefermented", percent(100 * formula.prefermentedFlour()),
            "kept", kept(formula.starter())));
  }

  /** Hydration and condition of a starter. */
  public String kept(Starter starter) {
    return words.say(
        "formula.kept",
        Map.of(
            "hydration", percent(starter.hydration().percent()),
            "condition", words.say("condition." + starter.condition().name())));
  }

  /** What to be careful with where a dough is read in a jar, mixed and baked by hand. */
  List<String> cautions(DoughFormula formula) {
    return List.of(
        words.say("caution.rawDough")
            + " "
            + words.say("caution.jar")
            + " "
            + words.say("caution.steam")
            + " "
            + allergens(formula.flour(), formula.starter().flour()));
  }

  /** The cereals of flours for those who must avoid them. */
  String allergens(Flour... flours) {
    String names =
        Arrays.stream(flours)
            .flatMap(flour -> flour.cereals().stream())
            .distinct()
            .map(each -> words.named("cereal", each))
            .collect(Collectors.joining(", "));
    String cereals = names.isEmpty() ? "" : words.say("caution.cereals", Map.of("names", names));
    return words.say("caution.allergens", Map.of("cereals", cereals));
  }

  /** A flour by its classes in the words of the language, or by its own name if it has one. */
  public String flour(Flour flour) {
    if (flour.hasOwnName()) {
      return flour.name();
    }
    List<String> names = new ArrayList<>();
    flour
        .parts()
        .forEach(
            (key, share) -> names.add(percent(share.percent()) + " " + words.named("flour", key)));
    return names.size() == 1
        ? words.named("flour", flour.parts().keySet().iterator().next())
        : String.join(", ", names);
  }

  public String temperature(List<TemperatureTrace.Step> steps) {
    List<String> parts = new ArrayList<>();
    for (TemperatureTrace.Step step : steps) {
      String degrees = words.temperature(tenth(step.temperature()));
      parts.add(
          step.hours() == 0
              ? degrees
              : words.say(
                  "formula.step",
                  Map.of("hours", words.hours(step.hours()), "temperature", degrees)));
    }
    return String.join(", ", parts);
  }

  /** A temperature on both scales. */
  public String temperature(Temperature temperature) {
    return words.temperature(tenth(temperature));
  }

  private static double tenth(Temperature temperature) {
    return Math.rint(temperature.celsius() * 10) / 10;
  }

  /** To a tenth where it is not whole. */
  public String percent(double percent) {
    double tenths = Math.rint(percent * 10) / 10;
    return words.percent(tenths, tenths == Math.rint(tenths) ? 0 : 1);
  }

  /** As percent of volume gained, early to late; a tilde is never needed for a range. */
  public String range(double lowPercent, double highPercent) {
    String low = words.number(lowPercent, 0);
    String high = words.percent(highPercent, 0);
    return words.percent(lowPercent, 0).equals(high) ? high : low + "–" + high;
  }
}
