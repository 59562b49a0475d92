package doughtide.cli.command;

import doughtide.cli.answer.JsonWriter;
import doughtide.cli.args.ClockTimes;
import doughtide.core.day.BakePlan;
import doughtide.core.day.OvenLoad;
import doughtide.core.day.SharedAnswer;
import doughtide.core.day.SharedStep;
import doughtide.core.day.StepMargin;
import doughtide.core.dough.Ingredients;
import java.io.PrintStream;
import java.util.List;
import java.util.Locale;

/** A day of several doughs as JSON; times in ISO 8601 with offset, durations in hours. */
public final class ClassDayJson {

  private final SharedAnswer answer;
  private final ClassDayOptions options;
  private final ClockTimes times;
  private final JsonWriter json;

  private ClassDayJson(SharedAnswer answer, ClassDayOptions options, JsonWriter json) {
    this.answer = answer;
    this.options = options;
    this.times = options.clock().times();
    this.json = json;
  }

  public static void write(SharedAnswer answer, ClassDayOptions options, PrintStream out) {
    new ClassDayJson(answer, options, new JsonWriter(out)).object();
  }

  private void object() {
    json.beginObject()
        .field("schema", "doughtide/class-day/1")
        .field("readyAt", times.iso(options.clock().readyHour()))
        .field("zone", options.clock().readyAt().getZone().getId())
        .field("hands", options.hands())
        .field("ovenCapacity", options.days().get(0).oven().loaves())
        .field("marginHours", answer.marginHours(), 3);
    json.name("cautions").beginArray();
    json.value(BakeDayCommand.CAUTION.replaceFirst("^Caution: ", "")).endArray();
    json.name("doughs").beginArray();
    for (int i = 0; i < answer.plans().size(); i++) {
      dough(options.names().get(i), answer.plans().get(i));
    }
    json.endArray();
    steps();
    loads();
    json.endObject();
  }

  private void dough(String name, BakePlan plan) {
    json.beginObject()
        .field("name", name)
        .field("flour", plan.dough().flour().name())
        .field("hydrationPercent", plan.dough().hydration().percent(), 2)
        .field("loaves", plan.day().loaves())
        .field("pieceGrams", plan.day().piece().grams(), 1)
        .field("doughCelsius", plan.doughTemperature().celsius(), 1)
        .field("waterCelsius", BakeDayWords.waterAnswer(plan).waterCelsius(), 1)
        .field("starterOfAddedFlourPercent", plan.starterPercent(), 2)
        .field("prefermentedFlourPercent", 100 * plan.dough().prefermentedFlour(), 2)
        .field("mixedAt", times.iso(plan.mixHour()))
        .field("shapeRisePercent", plan.shapeRise().percent(), 1)
        .field("proof", plan.proofKind().name().toLowerCase(Locale.ROOT))
        .field("proofHours", plan.proofHours(), 3)
        .field("ovenAt", times.iso(plan.ovenHour()))
        .field("goodShare", plan.goodShare(), 3)
        .field("marginHours", plan.marginHours(), 3)
        .field("tightStep", plan.tight().kind().words());
    Ingredients weigh = plan.ingredients();
    json.name("ingredients")
        .beginObject()
        .field("flourGrams", weigh.flourGrams(), 1)
        .field("waterGrams", weigh.waterGrams(), 1)
        .field("starterGrams", weigh.starterGrams(), 1)
        .field("saltGrams", weigh.saltGrams(), 1)
        .endObject();
    json.name("margins").beginArray();
    for (StepMargin margin : plan.margins()) {
      json.beginObject()
          .field("step", margin.kind().words())
          .field("hours", margin.hours(), 3)
          .field("limit", margin.limit().words())
          .endObject();
    }
    json.endArray().endObject();
  }

  private void steps() {
    json.name("steps").beginArray();
    for (SharedStep step : answer.steps()) {
      json.beginObject().field("step", ClassDayWords.words(step));
      names(step.doughs());
      if (step.person() < 0) {
        json.nullField("person");
      } else {
        json.field("person", ClassDayWords.person(step));
      }
      json.field("from", times.iso(step.step().fromHour()))
          .field("to", times.iso(step.step().toHour()))
          .field("handsOn", step.step().kind().handsOn())
          .field("detail", ClassDayWords.detail(answer, step))
          .endObject();
    }
    json.endArray();
  }

  private void names(List<Integer> doughs) {
    json.name("doughs").beginArray();
    doughs.forEach(each -> json.value(options.names().get(each)));
    json.endArray();
  }

  private void loads() {
    json.name("ovenLoads").beginArray();
    for (OvenLoad load : answer.loads()) {
      json.beginObject()
          .field("from", times.iso(load.fromHour()))
          .field("to", times.iso(load.toHour()))
          .field("loaves", load.loaves());
      json.name("portions").beginArray();
      for (OvenLoad.Portion each : load.portions()) {
        json.beginObject()
            .field("dough", options.names().get(each.dough()))
            .field("loaves", each.loaves())
            .endObject();
      }
      json.endArray().endObject();
    }
    json.endArray();
  }
}
