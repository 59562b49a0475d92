package doughtide.cli.command;

import doughtide.cli.answer.CsvOutput;
import doughtide.core.forecast.RiseForecast;
import java.io.PrintStream;
import java.io.PrintWriter;
import java.nio.charset.StandardCharsets;

/** The curve of an answer as CSV. */
public final class RiseTable {

  private RiseTable() {}

  public static void write(RiseAnswer answer, PrintStream out) {
    CsvOutput csv = new CsvOutput(new PrintWriter(out, false, StandardCharsets.UTF_8));
    String[] names = {
      "hours", "rise_early_percent", "rise_likely_percent", "rise_late_percent", "ph", "clock"
    };
    csv.header(answer.clock().isPresent() ? names : java.util.Arrays.copyOf(names, 5));
    for (RiseForecast.BandPoint point : answer.curve()) {
      csv.number(point.hours(), 4)
          .number(point.riseEarlyPercent(), 2)
          .number(point.riseLikelyPercent(), 2)
          .number(point.riseLatePercent(), 2)
          .number(point.ph(), 2);
      answer.clock().ifPresent(times -> csv.text(times.iso(point.hours())));
      csv.endRow();
    }
    csv.flush();
  }
}
