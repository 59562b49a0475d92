package doughtide.cli.command;

import doughtide.cli.answer.JsonWriter;
import doughtide.core.dough.Ingredients;
import doughtide.core.forecast.Warning;
import doughtide.report.words.Advice;
import java.util.List;
import java.util.Locale;

/** What several answers say in the same way. */
public final class JsonParts {

  private JsonParts() {}

  /** A constant as a word: lower case, with dashes. */
  public static String word(Enum<?> constant) {
    return constant.name().toLowerCase(Locale.ROOT).replace('_', '-');
  }

  /** The field {@code ingredients}. */
  public static void ingredients(JsonWriter json, Ingredients weigh) {
    json.name("ingredients")
        .beginObject()
        .field("flourGrams", weigh.flourGrams(), 1)
        .field("waterGrams", weigh.waterGrams(), 1)
        .field("starterGrams", weigh.starterGrams(), 1)
        .field("saltGrams", weigh.saltGrams(), 1)
        .endObject();
  }

  /** The field {@code widens}. */
  public static void widens(JsonWriter json, List<RiseAnswer.Widening> widens) {
    json.name("widens").beginArray();
    for (RiseAnswer.Widening each : widens) {
      json.beginObject()
          .field("unknown", word(each.unknown()))
          .field("share", each.share(), 3)
          .field("risePercent", each.at().percent(), 2)
          .field("text", Advice.english(each.unknown()).text())
          .field("remedy", Advice.english(each.unknown()).remedy())
          .endObject();
    }
    json.endArray();
  }

  /** The field {@code warnings}. */
  public static void warnings(JsonWriter json, List<Warning> warnings) {
    json.name("warnings").beginArray();
    for (Warning warning : warnings) {
      json.beginObject()
          .field("kind", word(warning.kind()))
          .field("text", Advice.english(warning).text())
          .field("remedy", Advice.english(warning).remedy())
          .endObject();
    }
    json.endArray();
  }
}
