package doughtide.cli.command;

import doughtide.cli.answer.JsonWriter;
import doughtide.cli.args.Arguments;
import doughtide.cli.options.ProofOptions;
import doughtide.core.dough.DoughFormula;
import java.io.PrintStream;
import java.util.OptionalDouble;

/** The answer as one JSON object of the schema {@code doughtide/wanted/1}. */
public final class WantedJson {

  private static final int HOUR_DECIMALS = 4;

  private final WantedAnswer answer;
  private final WantedOptions options;
  private final JsonWriter json;

  private WantedJson(WantedAnswer answer, JsonWriter json) {
    this.answer = answer;
    this.options = answer.options();
    this.json = json;
  }

  public static void write(WantedAnswer answer, PrintStream out) {
    new WantedJson(answer, new JsonWriter(out)).object();
  }

  private void object() {
    json.beginObject()
        .field("schema", "doughtide/wanted/1")
        .field("asked", JsonParts.word(options.question()));
    understood();
    json.field("wantedHours", options.bulkHours(), HOUR_DECIMALS);
    json.field("reach", JsonParts.word(answer.half().reach()));
    json.name("answers").beginArray();
    answer.rows().forEach(this::row);
    json.endArray();
    json.field("shapeRisePercent", answer.rise().likely(), 2)
        .field("shapeRiseLowPercent", answer.rise().low(), 2)
        .field("shapeRiseHighPercent", answer.rise().high(), 2);
    weigh();
    JsonParts.widens(json, answer.widens());
    JsonParts.warnings(json, answer.forecast().warnings());
    json.name("cautions").beginArray();
    json.value(WantedCommand.CAUTION.replaceFirst("^Caution: ", "")).endArray().endObject();
  }

  private void understood() {
    DoughFormula formula = options.dough().formula();
    json.name("understood")
        .beginObject()
        .field("flour", formula.flour().name())
        .field("hydrationPercent", formula.hydration().percent(), 4)
        .field("saltPercent", formula.salt().percent(), 4)
        .field("starterHydrationPercent", formula.starter().hydration().percent(), 4)
        .field("starterFlour", formula.starter().flour().name())
        .field("starterCondition", Arguments.word(formula.starter().condition()))
        .field("altitudeMetres", formula.altitude().metres(), 1);
    if (options.question() != WantedOptions.Question.STARTER) {
      json.field("starterOfAddedFlourPercent", 100 * formula.starterOfAddedFlour(), 4);
    }
    options.stated().ifPresent(steps -> json.field("doughTemperature", steps.words()));
    options.room().ifPresent(steps -> json.field("room", steps.words()));
    options.end().rise().ifPresent(rise -> json.field("risePercent", rise.percent(), 2));
    options.end().proof().ifPresent(proof -> json.field("loaf", ProofOptions.words(proof)));
    json.field("members", answer.forecast().ensemble().size());
    options
        .clock()
        .ifPresent(
            times ->
                json.field(
                        options.question() == WantedOptions.Question.MIX_AT ? "shapeAt" : "mixedAt",
                        times.iso(0))
                    .field("zone", times.start().getZone().getId()));
    json.endObject();
  }

  private void row(WantedAnswer.Row row) {
    json.beginObject().field("doughsInTime", JsonParts.word(row.doughs()));
    boolean mixing = options.question() == WantedOptions.Question.MIX_AT;
    switch (options.question()) {
      case STARTER -> {
        json.field("starterOfAddedFlourPercent", row.value(), 3);
        json.field(
            "prefermentedFlourPercent",
            row.value().isPresent()
                ? OptionalDouble.of(100 * answer.formula(row).prefermentedFlour())
                : row.value(),
            3);
      }
      case DOUGH_TEMP -> json.field("doughCelsius", row.value(), 2);
      case MIX_AT -> clock("mixAt", row.value());
    }
    json.field("reach", JsonParts.word(row.reach()))
        .field("hoursEarly", row.window().early(), HOUR_DECIMALS)
        .field("hoursLikely", row.window().likely(), HOUR_DECIMALS)
        .field("hoursLate", row.window().late(), HOUR_DECIMALS);
    if (options.clock().isPresent()) {
      OptionalDouble from = mixing ? row.value() : OptionalDouble.of(0);
      clock("clockEarly", sum(from, row.window().early()));
      clock("clockLikely", sum(from, row.window().likely()));
      clock("clockLate", sum(from, row.window().late()));
    }
    json.endObject();
  }

  private static OptionalDouble sum(OptionalDouble from, OptionalDouble hours) {
    return from.isPresent() && hours.isPresent()
        ? OptionalDouble.of(from.getAsDouble() + hours.getAsDouble())
        : OptionalDouble.empty();
  }

  private void clock(String name, OptionalDouble hours) {
    if (hours.isPresent()) {
      json.field(name, options.clock().orElseThrow().iso(hours.getAsDouble()));
    } else {
      json.nullField(name);
    }
  }

  private void weigh() {
    if (options.amount().isEmpty()) {
      return;
    }
    JsonParts.ingredients(json, options.amount().get().ingredients(answer.formula()));
  }
}
