package doughtide.cli.command;

import doughtide.cli.answer.CsvOutput;
import java.io.OutputStreamWriter;
import java.io.PrintStream;
import java.nio.charset.StandardCharsets;
import java.util.OptionalDouble;

/** The answer as CSV: one row for half of the doughs, for nine in ten and for one in ten. */
public final class WantedCsv {

  private WantedCsv() {}

  public static void write(WantedAnswer answer, PrintStream out) {
    WantedOptions options = answer.options();
    CsvOutput csv = new CsvOutput(new OutputStreamWriter(out, StandardCharsets.UTF_8));
    String value =
        switch (options.question()) {
          case STARTER -> "starter_of_added_flour_percent";
          case DOUGH_TEMP -> "dough_celsius";
          case MIX_AT -> "mix_at";
        };
    csv.header("doughs_in_time", value, "reach", "hours_early", "hours_likely", "hours_late");
    for (WantedAnswer.Row row : answer.rows()) {
      csv.text(JsonParts.word(row.doughs()));
      if (options.question() == WantedOptions.Question.MIX_AT) {
        csv.text(
            row.value().isPresent()
                ? options.clock().orElseThrow().iso(row.value().getAsDouble())
                : "");
      } else {
        number(csv, row.value());
      }
      csv.text(JsonParts.word(row.reach()));
      number(csv, row.window().early());
      number(csv, row.window().likely());
      number(csv, row.window().late());
      csv.endRow();
    }
    csv.flush();
  }

  private static void number(CsvOutput csv, OptionalDouble number) {
    csv.number(number.orElse(Double.NaN), 4);
  }
}
