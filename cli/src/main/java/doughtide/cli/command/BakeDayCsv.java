package doughtide.cli.command;

import doughtide.cli.answer.CsvOutput;
import doughtide.cli.args.ClockTimes;
import doughtide.core.day.BakeDayAnswer;
import doughtide.core.day.BakePlan;
import doughtide.core.day.BakeStep;
import java.io.OutputStreamWriter;
import java.io.PrintStream;
import java.nio.charset.StandardCharsets;

/** The plans as CSV: one row for each step of each plan. */
public final class BakeDayCsv {

  private BakeDayCsv() {}

  public static void write(BakeDayAnswer answer, BakeDayOptions options, PrintStream out) {
    ClockTimes times = options.clock().times();
    CsvOutput csv = new CsvOutput(new OutputStreamWriter(out, StandardCharsets.UTF_8));
    csv.header("plan", "step", "from", "to", "hands_on", "detail");
    int number = 1;
    for (BakePlan plan : answer.plans()) {
      for (BakeStep step : plan.steps()) {
        csv.number(number, 0)
            .text(step.words())
            .text(times.iso(step.fromHour()))
            .text(times.iso(step.toHour()))
            .text(step.kind().handsOn() ? "yes" : "no")
            .text(BakeDayWords.detail(plan, step))
            .endRow();
      }
      number++;
    }
    csv.flush();
  }
}
