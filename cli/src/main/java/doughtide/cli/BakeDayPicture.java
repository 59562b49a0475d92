package doughtide.cli;

import doughtide.core.planning.BakeDayAnswer;
import doughtide.core.planning.BakePlan;
import doughtide.report.BakeDayChart;
import doughtide.report.ChartFormat;
import doughtide.report.ChartOutput;
import doughtide.report.ChartSize;
import doughtide.report.Language;

/** The best plan as a chart in a file. */
final class BakeDayPicture {

  private BakeDayPicture() {}

  static void write(
      BakeDayAnswer answer, BakeDayOptions options, OutputFile file, OutputOptions.Paper paper) {
    BakePlan plan = answer.plans().get(0);
    doughtide.report.Words words = doughtide.report.Words.in(Language.ENGLISH);
    ChartSize size =
        paper == OutputOptions.Paper.A4 ? ChartSize.A4_LANDSCAPE : ChartSize.A5_LANDSCAPE;
    String title = "Bread ready by " + options.clock().times().at(options.day().readyHour());
    byte[] bytes =
        ChartOutput.bytes(
            BakeDayChart.of(title, plan, options.clock().times().start(), words),
            ChartFormat.ofFileName(file.shown()),
            size,
            BakeDayChart.caption(title, plan, options.clock().times().start(), words));
    file.write(out -> out.write(bytes));
  }
}
