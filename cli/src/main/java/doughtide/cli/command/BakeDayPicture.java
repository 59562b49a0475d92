package doughtide.cli.command;

import doughtide.cli.file.OutputFile;
import doughtide.cli.options.OutputOptions;
import doughtide.core.day.BakeDayAnswer;
import doughtide.core.day.BakePlan;
import doughtide.report.chart.BakeDayChart;
import doughtide.report.chart.ChartFormat;
import doughtide.report.chart.ChartOutput;
import doughtide.report.chart.ChartSize;
import doughtide.report.words.Language;

/** The best plan as a chart in a file. */
public final class BakeDayPicture {

  private BakeDayPicture() {}

  public static void write(
      BakeDayAnswer answer, BakeDayOptions options, OutputFile file, OutputOptions.Paper paper) {
    BakePlan plan = answer.plans().get(0);
    doughtide.report.words.Words words = doughtide.report.words.Words.in(Language.ENGLISH);
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
