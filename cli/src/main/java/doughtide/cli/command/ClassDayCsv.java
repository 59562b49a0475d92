package doughtide.cli.command;

import doughtide.cli.answer.CsvOutput;
import doughtide.cli.args.ClockTimes;
import doughtide.core.day.SharedAnswer;
import doughtide.core.day.SharedStep;
import java.io.OutputStreamWriter;
import java.io.PrintStream;
import java.nio.charset.StandardCharsets;

/** A day of several doughs as CSV: one row for each step. */
public final class ClassDayCsv {

  private ClassDayCsv() {}

  public static void write(SharedAnswer answer, ClassDayOptions options, PrintStream out) {
    ClockTimes times = options.clock().times();
    CsvOutput csv = new CsvOutput(new OutputStreamWriter(out, StandardCharsets.UTF_8));
    csv.header("step", "doughs", "person", "from", "to", "hands_on", "detail");
    for (SharedStep step : answer.steps()) {
      csv.text(ClassDayWords.words(step))
          .text(ClassDayWords.doughs(step.doughs(), options))
          .text(ClassDayWords.person(step))
          .text(times.iso(step.step().fromHour()))
          .text(times.iso(step.step().toHour()))
          .text(step.step().kind().handsOn() ? "yes" : "no")
          .text(ClassDayWords.detail(answer, step))
          .endRow();
    }
    csv.flush();
  }
}
