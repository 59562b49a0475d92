package doughtide.cli.command;

import doughtide.cli.answer.CsvOutput;
import doughtide.core.feeding.RefreshmentPlan;
import doughtide.core.forecast.TimeWindow;
import java.io.OutputStreamWriter;
import java.io.PrintStream;
import java.nio.charset.StandardCharsets;
import java.util.List;

/** Feeding as CSV: one row for each feed and event, hours since the first feeding. */
public final class FeedCsv {

  private static final int HOUR_DECIMALS = 4;

  private FeedCsv() {}

  public static void write(FeedResult result, PrintStream out) {
    CsvOutput csv = new CsvOutput(new OutputStreamWriter(out, StandardCharsets.UTF_8));
    csv.header("feed", "event", "hours_early", "hours_likely", "hours_late");
    List<RefreshmentPlan.Step> steps = result.plan().steps();
    for (int i = 0; i < steps.size(); i++) {
      RefreshmentPlan.Step step = steps.get(i);
      double from = step.fromHours();
      row(csv, i + 1, "ripe", step.forecast().ripe().plus(from));
      row(csv, i + 1, "begins to fall", step.forecast().falling().plus(from));
      row(csv, i + 1, "fallen", step.forecast().fallen().plus(from));
    }
    csv.flush();
  }

  private static void row(CsvOutput csv, int feed, String event, TimeWindow window) {
    csv.number(feed, 0)
        .text(event)
        .number(window.early().orElse(Double.NaN), HOUR_DECIMALS)
        .number(window.likely().orElse(Double.NaN), HOUR_DECIMALS)
        .number(window.late().orElse(Double.NaN), HOUR_DECIMALS)
        .endRow();
  }
}
