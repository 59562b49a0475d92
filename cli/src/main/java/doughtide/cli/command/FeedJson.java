package doughtide.cli.command;

import doughtide.cli.answer.JsonWriter;
import doughtide.cli.args.Arguments;
import doughtide.cli.args.ClockTimes;
import doughtide.core.feeding.FeedAmounts;
import doughtide.core.feeding.FeedRatio;
import doughtide.core.feeding.Feeding;
import doughtide.core.feeding.FeedingForecast;
import doughtide.core.feeding.Heights;
import doughtide.core.feeding.RefreshmentPlan;
import doughtide.core.feeding.StarterPhase;
import doughtide.core.forecast.TimeWindow;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;

/** Feeding as JSON. Hours at the top level count from the first feeding. */
public final class FeedJson {

  private static final int HOUR_DECIMALS = 4;

  private final JsonWriter json;
  private final FeedResult result;

  private FeedJson(JsonWriter json, FeedResult result) {
    this.json = json;
    this.result = result;
  }

  public static void write(FeedResult result, Appendable out) {
    new FeedJson(new JsonWriter(out), result).write();
  }

  private void write() {
    RefreshmentPlan plan = result.plan();
    RefreshmentPlan.Step last = plan.last();
    json.beginObject().field("schema", "doughtide/feed/1");
    feeding(plan.steps().get(0).forecast().feeding());
    reach();
    forecast(last.forecast(), last.fromHours());
    json.field("readyHours", plan.readyHours(), HOUR_DECIMALS);
    times(plan);
    wanted(last);
    refreshments(plan.steps());
    amounts();
    warnings(plan);
    json.name("remarks").beginArray();
    result.remarks().forEach(json::value);
    json.endArray().name("cautions").beginArray();
    FeedResult.CAUTIONS.forEach(json::value);
    json.endArray().endObject();
  }

  private void feeding(Feeding feeding) {
    FeedRatio ratio = feeding.ratio();
    json.name("ratio")
        .beginObject()
        .field("starter", ratio.starter(), 4)
        .field("flour", ratio.flour(), 4)
        .field("water", ratio.water(), 4)
        .endObject()
        .field("ratioInWords", ratio.words());
    json.name("starter")
        .beginObject()
        .field("condition", Arguments.word(feeding.starter().condition()))
        .field("flour", feeding.starter().flour().name())
        .field("hydrationPercent", feeding.starter().hydration().percent(), 4)
        .endObject();
    json.field("flour", feeding.flour().name())
        .field("hydrationAfterFeedingPercent", feeding.hydration().percent(), 4)
        .field("saltPercent", feeding.salt().percent(), 4);
    json.name("temperature").beginArray();
    result
        .options()
        .temperature()
        .steps()
        .forEach(
            step ->
                json.beginObject()
                    .field("fromHours", step.hours(), HOUR_DECIMALS)
                    .field("celsius", step.temperature().celsius(), 4)
                    .endObject());
    json.endArray();
  }

  private void reach() {
    result
        .answer()
        .ifPresent(
            answer ->
                json.field("wantedHours", answer.wantedHours(), HOUR_DECIMALS)
                    .field("reach", Arguments.word(answer.reach())));
  }

  private void forecast(FeedingForecast forecast, double from) {
    window("ripe", forecast.ripe().plus(from));
    window("beginsToFall", forecast.falling().plus(from));
    window("fallen", forecast.fallen().plus(from));
    json.field("ripeForHours", forecast.ripeFor().likely(), HOUR_DECIMALS);
    window("ripeForRange", forecast.ripeFor());
    Optional<Heights> heights = forecast.heights();
    json.field("heightTimes", heights(heights.map(Heights::likely)), 3);
    json.name("heightTimesRange")
        .beginObject()
        .field("low", heights(heights.map(Heights::low)), 3)
        .field("likely", heights(heights.map(Heights::likely)), 3)
        .field("high", heights(heights.map(Heights::high)), 3)
        .endObject();
  }

  private static OptionalDouble heights(Optional<Double> height) {
    return height.map(OptionalDouble::of).orElse(OptionalDouble.empty());
  }

  private void window(String name, TimeWindow window) {
    json.name(name)
        .beginObject()
        .field("hoursEarly", window.early(), HOUR_DECIMALS)
        .field("hoursLikely", window.likely(), HOUR_DECIMALS)
        .field("hoursLate", window.late(), HOUR_DECIMALS)
        .endObject();
  }

  private void times(RefreshmentPlan plan) {
    result
        .clock()
        .ifPresent(
            clock -> {
              json.field("zone", clock.start().getZone().getId()).field("fedAt", clock.iso(0));
              if (plan.readyHours().isPresent()) {
                json.field("readyAt", clock.iso(plan.readyHours().getAsDouble()));
              } else {
                json.nullField("readyAt");
              }
            });
  }

  private void wanted(RefreshmentPlan.Step last) {
    if (result.clock().isEmpty() || result.readyAt().isEmpty()) {
      return;
    }
    ClockTimes clock = result.clock().get();
    double hours = FeedClock.hoursBetween(clock.start(), result.readyAt().get());
    json.name("atWantedTime").beginObject().field("at", clock.iso(hours));
    double since = hours - last.fromHours();
    if (since >= 0 && since <= 240) {
      for (StarterPhase phase : StarterPhase.values()) {
        json.field(phase.words(), last.forecast().shareIn(phase, since), 3);
      }
    }
    json.endObject();
  }

  private void refreshments(List<RefreshmentPlan.Step> steps) {
    json.name("refreshments").beginArray();
    for (RefreshmentPlan.Step step : steps) {
      json.beginObject().field("fedHours", step.fromHours(), HOUR_DECIMALS);
      result.clock().ifPresent(clock -> json.field("fedAt", clock.iso(step.fromHours())));
      forecast(step.forecast(), step.fromHours());
      json.field("readyHours", step.readyHours(), HOUR_DECIMALS).endObject();
    }
    json.endArray();
  }

  private void amounts() {
    if (result.amounts().isEmpty()) {
      return;
    }
    json.name("amounts").beginArray();
    for (FeedAmounts each : result.amounts()) {
      json.beginObject()
          .field("starterGrams", each.starterGrams(), 2)
          .field("flourGrams", each.flourGrams(), 2)
          .field("waterGrams", each.waterGrams(), 2)
          .field("saltGrams", each.saltGrams(), 2)
          .field("useGrams", each.useGrams(), 2)
          .field("keepGrams", each.keepGrams(), 2)
          .endObject();
    }
    json.endArray();
  }

  private void warnings(RefreshmentPlan plan) {
    JsonParts.warnings(
        json,
        plan.steps().stream()
            .flatMap(step -> step.forecast().warnings().stream())
            .distinct()
            .toList());
  }
}
