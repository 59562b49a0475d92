package doughtide.cli.command;

import doughtide.cli.answer.JsonWriter;
import doughtide.cli.args.ClockTimes;
import doughtide.core.day.BakeDayAnswer;
import doughtide.core.day.BakePlan;
import doughtide.core.day.BakeStep;
import doughtide.core.day.StepMargin;
import doughtide.core.feeding.FeedAmounts;
import java.io.PrintStream;
import java.util.Locale;
import java.util.OptionalDouble;

/** The plans as JSON; times in ISO 8601 with offset, durations in hours. */
public final class BakeDayJson {

  private final JsonWriter json;
  private final ClockTimes times;

  private BakeDayJson(JsonWriter json, ClockTimes times) {
    this.json = json;
    this.times = times;
  }

  public static void write(BakeDayAnswer answer, BakeDayOptions options, PrintStream out) {
    JsonWriter json = new JsonWriter(out);
    BakeDayJson writer = new BakeDayJson(json, options.clock().times());
    json.beginObject()
        .field("schema", "doughtide/bake-day/1")
        .field("readyAt", options.clock().times().iso(options.day().readyHour()))
        .field("zone", options.clock().readyAt().getZone().getId());
    json.name("cautions").beginArray();
    json.value(BakeDayCommand.CAUTION.replaceFirst("^Caution: ", "")).endArray();
    json.name("plans").beginArray();
    answer.plans().forEach(writer::plan);
    json.endArray().endObject();
  }

  private void plan(BakePlan plan) {
    json.beginObject()
        .field("bulkPartlyCold", plan.bulkColdFrom().isPresent())
        .field("proof", plan.proofKind().name().toLowerCase(Locale.ROOT))
        .field("proofHours", plan.proofHours(), 3)
        .field("marginHours", plan.marginHours(), 3)
        .field("goodShare", plan.goodShare(), 3)
        .field("tightStep", plan.tight().kind().words());
    plan.knob().ifPresentOrElse(k -> json.field("knob", k), () -> json.nullField("knob"));
    json.field("doughCelsius", plan.doughTemperature().celsius(), 1)
        .field("waterCelsius", BakeDayWords.waterAnswer(plan).waterCelsius(), 1)
        .field("starterOfAddedFlourPercent", plan.starterPercent(), 2)
        .field("prefermentedFlourPercent", 100 * plan.dough().prefermentedFlour(), 2)
        .field("shapeRisePercent", plan.shapeRise().percent(), 1);
    time("jarEarly", plan.shapeWindow().early());
    time("jarLikely", plan.shapeWindow().likely());
    time("jarLate", plan.shapeWindow().late());
    amounts(plan);
    steps(plan);
    margins(plan);
    json.endObject();
  }

  private void time(String name, OptionalDouble hour) {
    if (hour.isPresent()) {
      json.field(name, times.iso(hour.getAsDouble()));
    } else {
      json.nullField(name);
    }
  }

  private void amounts(BakePlan plan) {
    JsonParts.ingredients(json, plan.ingredients());
    FeedAmounts feed = plan.feedAmounts();
    json.name("feed")
        .beginObject()
        .name("ratio")
        .beginObject()
        .field("starter", plan.feed().ratio().starter(), 3)
        .field("flour", plan.feed().ratio().flour(), 3)
        .field("water", plan.feed().ratio().water(), 3)
        .endObject()
        .field("ratioInWords", plan.feed().ratio().words())
        .field("starterGrams", feed.starterGrams(), 1)
        .field("flourGrams", feed.flourGrams(), 1)
        .field("waterGrams", feed.waterGrams(), 1)
        .endObject();
  }

  private void steps(BakePlan plan) {
    json.name("steps").beginArray();
    for (BakeStep step : plan.steps()) {
      json.beginObject()
          .field("step", step.words())
          .field("from", times.iso(step.fromHour()))
          .field("to", times.iso(step.toHour()))
          .field("handsOn", step.kind().handsOn())
          .field("detail", BakeDayWords.detail(plan, step))
          .endObject();
    }
    json.endArray();
  }

  private void margins(BakePlan plan) {
    json.name("margins").beginArray();
    for (StepMargin margin : plan.margins()) {
      json.beginObject()
          .field("step", margin.kind().words())
          .field("hours", margin.hours(), 3)
          .field("limit", margin.limit().words())
          .endObject();
    }
    json.endArray();
  }
}
