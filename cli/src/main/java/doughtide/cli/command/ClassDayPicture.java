package doughtide.cli.command;

import doughtide.cli.args.ClockTimes;
import doughtide.cli.file.OutputFile;
import doughtide.cli.options.OutputOptions;
import doughtide.core.day.SharedAnswer;
import doughtide.report.chart.ChartFormat;
import doughtide.report.chart.ChartOutput;
import doughtide.report.chart.ChartSize;
import doughtide.report.chart.SharedDayChart;
import doughtide.report.words.Language;

/** A day of several doughs as a chart in a file. */
public final class ClassDayPicture {

  private ClassDayPicture() {}

  public static void write(
      SharedAnswer answer, ClassDayOptions options, OutputFile file, OutputOptions.Paper paper) {
    doughtide.report.words.Words words = doughtide.report.words.Words.in(Language.ENGLISH);
    ClockTimes times = options.clock().times();
    ChartSize size =
        paper == OutputOptions.Paper.A4 ? ChartSize.A4_LANDSCAPE : ChartSize.A5_LANDSCAPE;
    String title = "Bread ready by " + times.at(options.clock().readyHour());
    byte[] bytes =
        ChartOutput.bytes(
            SharedDayChart.of(title, answer, options.names(), times.start(), words),
            ChartFormat.ofFileName(file.shown()),
            size,
            SharedDayChart.caption(title, options.names(), words));
    file.write(out -> out.write(bytes));
  }
}
