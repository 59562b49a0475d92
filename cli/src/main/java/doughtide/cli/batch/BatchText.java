package doughtide.cli.batch;

import doughtide.cli.answer.CsvOutput;
import doughtide.cli.answer.JsonWriter;
import doughtide.cli.text.OneLine;
import doughtide.core.forecast.TimeWindow;
import doughtide.core.quantity.InputException;
import java.io.StringWriter;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/** Turns answers into lines of CSV or JSON. Each answer is one line, whatever stands in the row. */
record BatchText(BatchFormat format) {

  private static final int HOUR_DECIMALS = 3;
  private static final Pattern NUMBER = Pattern.compile("[0-9]{1,18}");

  /** What stands before the first answer; empty for JSON. */
  public byte[] header() {
    if (format == BatchFormat.JSONL) {
      return new byte[0];
    }
    List<String> names = new ArrayList<>(List.of("line", "id"));
    BatchAnswer.RISES.forEach(
        rise -> addWindow(names, "rise_" + JsonWriter.number(rise.percent(), 0)));
    addWindow(names, "past_best");
    names.add("warnings");
    names.add("error");
    StringWriter text = new StringWriter();
    new CsvOutput(text).header(names.toArray(String[]::new)).flush();
    return text.toString().getBytes(StandardCharsets.UTF_8);
  }

  private static void addWindow(List<String> names, String what) {
    names.add(what + "_hours_early");
    names.add(what + "_hours_likely");
    names.add(what + "_hours_late");
    names.add(what + "_reached_share");
  }

  /** One line with its ending. */
  public byte[] line(BatchAnswer answer) {
    StringWriter text = new StringWriter();
    switch (format) {
      case CSV -> csv(answer, new CsvOutput(text));
      case JSONL -> json(answer, JsonWriter.oneLine(text));
    }
    return text.toString().getBytes(StandardCharsets.UTF_8);
  }

  /** How a line ends that has no error: an empty cell, or the end of the warnings. */
  byte[] goodEnding() {
    String ending =
        switch (format) {
          case CSV -> ",\n";
          case JSONL -> "]}\n";
        };
    return ending.getBytes(StandardCharsets.UTF_8);
  }

  /** The number of the row that a line answers, which stands first in it. */
  static long number(String line) {
    Matcher digits = NUMBER.matcher(line);
    if (!digits.find()) {
      throw new InputException(
          "the unfinished output has a line without the number of its row: start again with"
              + " --overwrite and without --resume");
    }
    return Long.parseLong(digits.group());
  }

  private static void csv(BatchAnswer answer, CsvOutput csv) {
    csv.number(answer.row().line(), 0).text(OneLine.of(answer.row().id()));
    answer.rises().forEach(window -> csvWindow(csv, window, answer));
    csvWindow(csv, answer.over(), answer);
    csv.text(OneLine.of(String.join(" ", answer.warnings())));
    csv.text(OneLine.of(answer.error())).endRow().flush();
  }

  private static void csvWindow(CsvOutput csv, TimeWindow window, BatchAnswer answer) {
    csv.number(window.early().orElse(Double.NaN), HOUR_DECIMALS)
        .number(window.likely().orElse(Double.NaN), HOUR_DECIMALS)
        .number(window.late().orElse(Double.NaN), HOUR_DECIMALS)
        .number(reached(window, answer), HOUR_DECIMALS);
  }

  private static void json(BatchAnswer answer, JsonWriter json) {
    json.beginObject().field("line", answer.row().line()).field("id", answer.row().id());
    json.name("rises").beginArray();
    for (int i = 0; i < BatchAnswer.RISES.size(); i++) {
      json.beginObject().field("risePercent", BatchAnswer.RISES.get(i).percent(), 0);
      jsonWindow(json, answer.rises().get(i), answer).endObject();
    }
    json.endArray().name("pastBest").beginObject();
    jsonWindow(json, answer.over(), answer).endObject().name("warnings").beginArray();
    answer.warnings().forEach(json::value);
    json.endArray();
    if (answer.isBad()) {
      json.field("error", answer.error());
    }
    json.endObject();
  }

  private static JsonWriter jsonWindow(JsonWriter json, TimeWindow window, BatchAnswer answer) {
    return json.field("hoursEarly", window.early(), HOUR_DECIMALS)
        .field("hoursLikely", window.likely(), HOUR_DECIMALS)
        .field("hoursLate", window.late(), HOUR_DECIMALS)
        .field("reachedShare", reached(window, answer), HOUR_DECIMALS);
  }

  /** Of a row that was refused nothing is known. */
  private static double reached(TimeWindow window, BatchAnswer answer) {
    return answer.isBad() ? Double.NaN : window.reachedShare();
  }
}
