package doughtide.cli.command;

import doughtide.cli.answer.JsonWriter;
import doughtide.cli.args.Arguments;
import doughtide.cli.args.ClockTimes;
import doughtide.cli.options.ProofOptions;
import doughtide.core.dough.DoughFormula;
import doughtide.core.forecast.RiseForecast;
import doughtide.core.forecast.TimeWindow;
import doughtide.core.loaf.SampleJar;
import doughtide.core.loaf.ShapeForecast;
import doughtide.core.quantity.Temperature;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.function.Function;

/** The answer as one JSON object of the schema {@code doughtide/rise/1}. */
public final class RiseJson {

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

  public static void write(RiseAnswer answer, Appendable out) {
    new RiseJson(answer, out).object();
  }

  private void object() {
    json.beginObject().field("schema", "doughtide/rise/1");
    understood();
    rises();
    json.name("pastBest").beginObject();
    window(answer.over());
    json.endObject();
    curve();
    JsonParts.warnings(json, answer.warnings());
    JsonParts.widens(json, answer.widens());
    warmth();
    loaf();
    jar();
    json.name("cautions").beginArray().value(RiseCommand.CAUTION).endArray();
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
    json.field("doughTemperature", answer.temperature().words());
    json.field("members", answer.forecast().ensemble().size());
    answer.temperature().vessel().ifPresent(vessel -> json.field("vessel", vessel));
    answer.proof().ifPresent(loaf -> json.field("loaf", ProofOptions.words(loaf.proof())));
    clock.ifPresent(
        times ->
            json.field("mixedAt", times.iso(0)).field("zone", times.start().getZone().getId()));
    json.endObject();
  }

  private void rises() {
    json.name("rises").beginArray();
    for (RiseAnswer.Passing passing : answer.passings()) {
      json.beginObject().field("risePercent", passing.rise().percent(), RISE_DECIMALS);
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

  /** Only where the temperature changes. */
  private void warmth() {
    if (!answer.drifts()) {
      return;
    }
    json.name("doughTemperatures").beginArray();
    for (RiseAnswer.Warmth each : answer.warmth()) {
      json.beginObject()
          .field("hours", each.hours(), HOUR_DECIMALS)
          .field("celsius", each.celsius(), 2)
          .endObject();
    }
    json.endArray();
  }

  private void loaf() {
    if (answer.proof().isEmpty()) {
      return;
    }
    RiseAnswer.Loaf loaf = answer.proof().get();
    shape(loaf.shape());
    if (loaf.proof().cold().isPresent()) {
      cold();
    } else {
      proof();
    }
  }

  private void shape(ShapeForecast shape) {
    json.name("shape").beginObject();
    hours("hoursEarly", shape.hours().early());
    hours("hoursLikely", shape.hours().likely());
    hours("hoursLate", shape.hours().late());
    percent("risePercent", shape.rise().likely());
    percent("riseLowPercent", shape.rise().low());
    percent("riseHighPercent", shape.rise().high());
    json.field("targetPercent", shape.target().percent(), RISE_DECIMALS);
    clock("clockEarly", shape.hours().early());
    clock("clockLikely", shape.hours().likely());
    clock("clockLate", shape.hours().late());
    json.endObject();
  }

  private void cold() {
    Optional<ShapeForecast.Night> night = answer.night();
    json.name("cold").beginObject();
    OptionalDouble into = number(night, each -> each.coldFromHours());
    hours("intoColdHours", into);
    hours("coreAt10CHours", number(night, each -> each.coreAt(Temperature.ofCelsius(10))));
    hours("coreAt7CHours", number(night, each -> each.coreAt(Temperature.ofCelsius(7))));
    hours("coreAt5CHours", number(night, each -> each.coreAt(Temperature.ofCelsius(5))));
    bake(night);
    clock("intoColdClock", into);
    bakeClocks(night);
    night.flatMap(ShapeForecast.Night::warmer).ifPresent(this::warmer);
    json.endObject();
  }

  private void proof() {
    Optional<ShapeForecast.Night> night = answer.night();
    json.name("proof").beginObject();
    OptionalDouble into = number(night, each -> OptionalDouble.of(each.proofFromHours()));
    hours("intoProofHours", into);
    bake(night);
    clock("intoProofClock", into);
    bakeClocks(night);
    json.endObject();
  }

  private void bake(Optional<ShapeForecast.Night> night) {
    hours("bakeFromHours", number(night, each -> each.bakeFrom().likely()));
    hours("bakeUntilHours", number(night, each -> each.bakeUntil().likely()));
    percent("riseAtBakePercent", number(night, each -> each.riseAtBake().likely()));
    hours("ovenHours", number(night, each -> OptionalDouble.of(each.ovenHours())));
    hours("pastBestHours", number(night, each -> each.over().likely()));
  }

  private void bakeClocks(Optional<ShapeForecast.Night> night) {
    clock("bakeFromClock", number(night, each -> each.bakeFrom().likely()));
    clock("bakeUntilClock", number(night, each -> each.bakeUntil().likely()));
    clock("ovenClock", number(night, each -> OptionalDouble.of(each.ovenHours())));
  }

  private void warmer(ShapeForecast.WarmerCold warmer) {
    json.name("warmerCold").beginObject();
    json.field("byCelsius", warmer.byCelsius(), 1);
    json.field("riseAtBakePercent", warmer.riseAtBakePercent(), RISE_DECIMALS);
    hours("bakeUntilHours", warmer.bakeUntil());
    json.endObject();
  }

  private void jar() {
    if (answer.temperature().jar().isEmpty()) {
      return;
    }
    Optional<SampleJar> jar = answer.jar();
    json.name("jar").beginObject();
    percent("riseReadsPercent", number(jar, each -> each.reads().likely()));
    json.field(
        "doughWarmerKelvin", number(jar, each -> OptionalDouble.of(each.doughWarmerKelvin())), 2);
    percent("riseReadsLowPercent", number(jar, each -> each.reads().low()));
    percent("riseReadsHighPercent", number(jar, each -> each.reads().high()));
    percent("doughRisePercent", number(jar, each -> OptionalDouble.of(each.point().percent())));
    hours("hours", number(jar, each -> OptionalDouble.of(each.hours())));
    json.endObject();
  }

  private void percent(String name, OptionalDouble percent) {
    json.field(name, percent, RISE_DECIMALS);
  }

  private static <T> OptionalDouble number(Optional<T> from, Function<T, OptionalDouble> number) {
    return from.map(number).orElse(OptionalDouble.empty());
  }
}
