package doughtide.cli.command;

import doughtide.cli.answer.JsonWriter;
import doughtide.cli.file.ReadingsFile;
import doughtide.core.forecast.TimeWindow;
import doughtide.core.learning.Learned;
import doughtide.core.learning.LearnedParameter;
import doughtide.core.learning.Misfit;
import doughtide.core.learning.MisfitReason;
import doughtide.core.quantity.Rise;
import doughtide.report.words.Advice;
import doughtide.report.words.LearnedWords;
import java.util.List;
import java.util.Locale;

/** What was learned as one JSON object of the schema {@code doughtide/learn/1}. */
public final class LearnJson {

  private static final int DECIMALS = 4;

  private final JsonWriter json;

  private LearnJson(JsonWriter json) {
    this.json = json;
  }

  /**
   * Writes it.
   *
   * @param files the bakes read
   * @param windows the hours to a rise for a dough like the last bake
   * @param rise that rise
   */
  public static void write(
      Learned learned,
      List<ReadingsFile> files,
      Learned.Narrowing windows,
      Rise rise,
      Appendable out) {
    LearnJson writer = new LearnJson(new JsonWriter(out));
    writer.object(learned, files, windows, rise);
  }

  private void object(
      Learned learned, List<ReadingsFile> files, Learned.Narrowing windows, Rise rise) {
    json.beginObject().field("schema", "doughtide/learn/1");
    json.name("bakes").beginArray();
    for (ReadingsFile file : files) {
      json.beginObject().field("bake", file.bake().name()).field("readings", file.given());
      json.field("linesLeftOut", file.leftOut()).endObject();
    }
    json.endArray();
    json.name("parameters").beginArray();
    learned.parameters().forEach(this::parameter);
    json.endArray();
    json.name("misfits").beginArray();
    learned.misfits().forEach(this::misfit);
    json.endArray();
    json.name("likeTheLastBake").beginObject().field("risePercent", rise.percent(), 2);
    json.name("before");
    window(windows.before());
    json.name("after");
    window(windows.after());
    json.field("narrowerShare", windows.share(), 3).endObject();
    json.endObject();
  }

  private void parameter(LearnedParameter each) {
    LearnedWords words = LearnedWords.english(each);
    json.beginObject().field("name", words.name()).field("unit", words.unit());
    json.name("before");
    range(each.before());
    json.name("after");
    range(each.after());
    json.field("meaning", words.meaning()).endObject();
  }

  private void range(LearnedParameter.Range range) {
    json.beginObject()
        .field("low", range.low(), DECIMALS)
        .field("likely", range.middle(), DECIMALS)
        .field("high", range.high(), DECIMALS)
        .endObject();
  }

  private void misfit(Misfit misfit) {
    json.beginObject().field("bake", misfit.bake()).field("reason", word(misfit.reason()));
    switch (misfit.reason()) {
      case TEMPERATURE_OFF -> json.field("doughWarmerKelvin", misfit.amount(), 2);
      case STARTER_PAST_RIPE, STARTER_LIVELIER ->
          json.field("vigourPercentOfUsual", misfit.amount(), 1);
      case START_HEIGHT_WRONG -> json.field("heightsTooHighPercent", misfit.amount(), 1);
      case UNEXPLAINED -> json.nullField("amount");
    }
    Advice advice = Advice.english(misfit.reason());
    json.field("text", advice.text()).field("remedy", advice.remedy());
    json.name("alsoPossible").beginArray();
    misfit.alsoPossible().forEach(reason -> json.value(word(reason)));
    json.endArray().endObject();
  }

  private static String word(MisfitReason reason) {
    return reason.name().toLowerCase(Locale.ROOT).replace('_', '-');
  }

  private void window(TimeWindow window) {
    json.beginObject()
        .field("hoursEarly", window.early(), DECIMALS)
        .field("hoursLikely", window.likely(), DECIMALS)
        .field("hoursLate", window.late(), DECIMALS)
        .endObject();
  }
}
