package doughtide.cli.command;

import doughtide.cli.answer.JsonWriter;
import doughtide.cli.args.Arguments;
import doughtide.cli.options.WaterOptions;
import doughtide.core.dough.Ingredients;
import doughtide.core.thermal.WaterTerm;

/** The temperature of water as JSON. */
public final class WaterJson {

  private static final int DECIMALS = 4;

  private final JsonWriter json;

  private WaterJson(JsonWriter json) {
    this.json = json;
  }

  public static void write(WaterAnswers answers, Appendable out) {
    new WaterJson(new JsonWriter(out)).write(answers);
  }

  private void write(WaterAnswers answers) {
    WaterOptions options = answers.options();
    json.beginObject().field("schema", "doughtide/water/1");
    Ingredients weighed = options.ingredients();
    json.name("ingredients")
        .beginObject()
        .field("flourGrams", weighed.flourGrams(), 2)
        .field("waterGrams", weighed.waterGrams(), 2)
        .field("starterGrams", weighed.starterGrams(), 2)
        .field("saltGrams", weighed.saltGrams(), 2)
        .endObject();
    json.field("flourCelsius", options.flour().celsius(), DECIMALS)
        .field("starterCelsius", options.starter().celsius(), DECIMALS)
        .field("roomCelsius", options.room().celsius(), DECIMALS)
        .field("factors", options.factors().factors());
    WaterAnswers.Question question = answers.question();
    if (question instanceof WaterAnswers.Water water) {
      water(options, water);
    } else if (question instanceof WaterAnswers.Dough dough) {
      json.field("waterCelsius", dough.pour().celsius(), DECIMALS)
          .field("doughCelsius", dough.balanceCelsius(), DECIMALS);
      json.name("rule")
          .beginObject()
          .field("doughCelsius", dough.ruleCelsius(), DECIMALS)
          .endObject();
    } else if (question instanceof WaterAnswers.Mixed mixed) {
      mixed(mixed);
    }
    json.name("cautions").beginArray();
    WaterCommand.CAUTIONS.forEach(json::value);
    json.endArray().endObject();
  }

  private void water(WaterOptions options, WaterAnswers.Water water) {
    json.field("doughCelsius", water.wanted().celsius(), DECIMALS)
        .field("mixingKelvin", options.warming().kelvin(), DECIMALS)
        .field("waterCelsius", water.answer().waterCelsius(), DECIMALS)
        .field("waterFahrenheit", water.answer().waterFahrenheit(), DECIMALS);
    water
        .answer()
        .ice()
        .ifPresent(
            ice ->
                json.name("ice")
                    .beginObject()
                    .field("tapGrams", ice.tapGrams(), 2)
                    .field("iceGrams", ice.iceGrams(), 2)
                    .endObject());
    json.name("rule")
        .beginObject()
        .field("frictionOnceCelsius", water.frictionOnceCelsius(), DECIMALS)
        .field("warmingFirstCelsius", water.warmingFirstCelsius(), DECIMALS)
        .field("frictionKelvin", options.friction().kelvin(), DECIMALS)
        .field("warmingKelvin", options.warming().kelvin(), DECIMALS)
        .endObject();
    json.name("terms").beginArray();
    for (WaterTerm term : water.terms()) {
      json.beginObject()
          .field("kind", Arguments.word(term.kind()))
          .field("balanceKelvin", term.balanceKelvin(), DECIMALS)
          .field("ruleKelvin", term.ruleKelvin(), DECIMALS)
          .field("explanation", term.kind().explanation())
          .endObject();
    }
    json.endArray().name("warnings").beginArray();
    water.answer().warnings().forEach(json::value);
    json.endArray();
  }

  private void mixed(WaterAnswers.Mixed mixed) {
    json.field("waterCelsius", mixed.pour().celsius(), DECIMALS)
        .field("doughCelsius", mixed.got().celsius(), DECIMALS)
        .field("mixingKelvin", mixed.mixing().kelvin(), DECIMALS);
    json.name("rule")
        .beginObject()
        .field("frictionKelvin", mixed.friction().kelvin(), DECIMALS)
        .field("warmingKelvin", mixed.warming().kelvin(), DECIMALS)
        .endObject();
  }
}
