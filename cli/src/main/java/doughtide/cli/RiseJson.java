package doughtide.cli;

import doughtide.core.dough.DoughFormula;
import doughtide.core.forecast.RiseForecast;
import doughtide.core.forecast.TimeWindow;
import doughtide.core.forecast.Warning;
import java.util.Locale;
import java.util.Optional;
import java.util.OptionalDouble;

/** The answer as one JSON object of the schema {@code doughtide/rise/1}. */
final class RiseJson {

  private static final int HOUR_DECIMALS = 4;
  private static final int RISE_DECIMALS = 2;

  private final RiseAnswer answer;
  private final Optional<ClockTimes> clock;
  private final JsonWriter json;

  private RiseJson(RiseAnswer answer, Appendable out) {
    this.answer = answer;
    this.clock = answer.clock();
    this.json = new JsonWriter(out);
  }

  static void write(RiseAnswer answer, Appendable out) {
    new RiseJson(answer, out).object();
  }

  private void object() {
    json.beginObject().field("schema", "doughtide/rise/1");
    understood();
    rises();
    json.name("overHours").beginObject();
    window(answer.over());
    json.endObject();
    curve();
    warnings();
    widens();
    json.endObject();
  }

  private void understood() {
    DoughFormula formula = answer.dough().formula();
    json.name("understood").beginObject();
    json.field("flour", formula.flour().name());
    json.field("hydrationPercent", formula.hydration().percent(), 4);
    json.field("doughYield", formula.doughYield(), 4);
    json.field("saltPercent", formula.salt().percent(), 4);
    json.field("starterOfAddedFlourPercent", 100 * formula.starterOfAddedFlour(), 4);
    json.field("prefermentedFlourPercent", 100 * formula.prefermentedFlour(), 4);
    json.field("starterHydrationPercent", formula.starter().hydration().percent(), 4);
    json.field("starterFlour", formula.starter().flour().name());
    json.field("starterCondition", Arguments.word(formula.starter().condition()));
    json.field("altitudeMetres", formula.altitude().metres(), 1);
    json.field("doughTemperature", answer.temperatureWords());
    json.field("members", answer.forecast().ensemble().size());
    clock.ifPresent(
        times ->
            json.field("mixedAt", times.iso(0)).field("zone", times.start().getZone().getId()));
    json.endObject();
  }

  private void rises() {
    json.name("rises").beginArray();
    for (RiseAnswer.Passing passing : answer.passings()) {
      json.beginObject().field("percent", passing.rise().percent(), RISE_DECIMALS);
      window(passing.when());
      json.endObject();
    }
    json.endArray();
  }

  private void window(TimeWindow when) {
    hours("hoursEarly", when.early());
    hours("hoursLikely", when.likely());
    hours("hoursLate", when.late());
    clock("clockEarly", when.early());
    clock("clockLikely", when.likely());
    clock("clockLate", when.late());
  }

  private void hours(String name, OptionalDouble hours) {
    json.field(name, hours, HOUR_DECIMALS);
  }

  private void clock(String name, OptionalDouble hours) {
    if (clock.isEmpty()) {
      return;
    }
    if (hours.isEmpty()) {
      json.nullField(name);
    } else {
      json.field(name, clock.orElseThrow().iso(hours.getAsDouble()));
    }
  }

  private void curve() {
    json.name("curve").beginArray();
    for (RiseForecast.BandPoint point : answer.curve()) {
      json.beginObject()
          .field("hours", point.hours(), HOUR_DECIMALS)
          .field("riseEarlyPercent", point.riseEarlyPercent(), RISE_DECIMALS)
          .field("riseLikelyPercent", point.riseLikelyPercent(), RISE_DECIMALS)
          .field("riseLatePercent", point.riseLatePercent(), RISE_DECIMALS)
          .field("pH", point.ph(), 2)
          .endObject();
    }
    json.endArray();
  }

  private void warnings() {
    json.name("warnings").beginArray();
    for (Warning warning : answer.warnings()) {
      json.beginObject()
          .field("kind", word(warning.kind()))
          .field("text", warning.text())
          .field("remedy", warning.remedy())
          .endObject();
    }
    json.endArray();
  }

  private void widens() {
    json.name("widens").beginArray();
    for (RiseAnswer.Widening each : answer.widens()) {
      json.beginObject()
          .field("unknown", word(each.unknown()))
          .field("share", each.share(), 3)
          .field("risePercent", each.at().percent(), RISE_DECIMALS)
          .field("text", each.unknown().words())
          .field("remedy", each.unknown().remedy())
          .endObject();
    }
    json.endArray();
  }

  private static String word(Enum<?> constant) {
    return constant.name().toLowerCase(Locale.ROOT).replace('_', '-');
  }
}
