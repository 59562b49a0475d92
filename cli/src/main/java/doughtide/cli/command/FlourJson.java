package doughtide.cli.command;

import doughtide.cli.answer.JsonWriter;
import doughtide.core.flourtrial.Absorption;
import doughtide.core.flourtrial.AbsorptionFit;
import doughtide.core.flourtrial.BowlPlan;
import doughtide.core.flourtrial.Experience;
import doughtide.core.flourtrial.FlourRecord;
import doughtide.core.flourtrial.HydrationEstimate;
import doughtide.core.flourtrial.HydrationRange;
import doughtide.core.quantity.Share;
import doughtide.report.words.TrialWords;

/** A flour's trial as JSON. */
public final class FlourJson {

  private static final int DECIMALS = 3;

  private FlourJson() {}

  private static JsonWriter begin(FlourRecord record, Appendable out) {
    JsonWriter json = new JsonWriter(out);
    return json.beginObject().field("schema", "doughtide/flour/1").field("name", record.name());
  }

  public static void plan(FlourRecord record, BowlPlan plan, Appendable out) {
    JsonWriter json = begin(record, out);
    estimate(json, "expectedLimit", record.prior().limit());
    json.field("restMinutes", plan.restMinutes(), 2)
        .field("scaleGrams", plan.scale().resolutionGrams(), 2)
        .name("bowls")
        .beginArray();
    for (BowlPlan.Bowl bowl : plan.bowls()) {
      json.beginObject()
          .field("number", bowl.number())
          .field("wantedPercent", bowl.wantedPercent(), DECIMALS)
          .field("flourGrams", bowl.flourGrams(), DECIMALS)
          .field("waterGrams", bowl.waterGrams(), DECIMALS)
          .field("truePercent", bowl.truePercent(), DECIMALS)
          .endObject();
    }
    json.endArray().name("cautions").beginArray();
    plan.cautions().forEach(json::value);
    json.endArray().endObject();
  }

  public static void read(
      FlourRecord record, AbsorptionFit fit, Experience experience, Appendable out) {
    JsonWriter json = begin(record, out);
    json.field("grades", fit.bowls().size());
    estimate(json, "limit", fit.limit());
    range(json, "comfortable", fit.comfortable());
    range(json, "demanding", fit.demanding());
    json.field("tooWetFromPercent", fit.tooWetFromPercent(), DECIMALS)
        .field("experience", experience.words())
        .field("workingHydrationPercent", fit.workingHydration(experience).percent(), DECIMALS)
        .field("priorWeight", fit.priorWeight(), DECIMALS);
    estimate(json, "expectedLimit", record.prior().limit());
    if (record.moisturePercent().isPresent()) {
      Share moisture = Share.ofPercent(record.moisturePercent().getAsDouble());
      Share limit = Share.ofPercent(fit.limit().likelyPercent());
      json.field(
          "limitAt14PercentMoisture",
          Absorption.to14PercentBasis(limit, moisture).percent(),
          DECIMALS);
    }
    json.name("people").beginArray();
    for (String person : fit.people()) {
      json.beginObject().field("name", person);
      estimate(json, "limit", fit.limitOf(person));
      json.endObject();
    }
    json.endArray().name("notes").beginArray();
    record.notes().forEach(note -> json.value(TrialWords.english(note)));
    json.endArray().name("cautions").beginArray();
    FlourCommand.CAUTIONS.forEach(json::value);
    json.endArray().endObject();
  }

  public static void saved(FlourRecord record, String file, Appendable out) {
    begin(record, out)
        .field("file", file)
        .field("hydrationPercent", record.hydrationPercent(), DECIMALS)
        .endObject();
  }

  private static void estimate(JsonWriter json, String name, HydrationEstimate at) {
    json.name(name)
        .beginObject()
        .field("lowPercent", at.lowPercent(), DECIMALS)
        .field("likelyPercent", at.likelyPercent(), DECIMALS)
        .field("highPercent", at.highPercent(), DECIMALS)
        .endObject();
  }

  private static void range(JsonWriter json, String name, HydrationRange range) {
    json.name(name)
        .beginObject()
        .field("fromPercent", range.fromPercent(), DECIMALS)
        .field("toPercent", range.toPercent(), DECIMALS)
        .endObject();
  }
}
