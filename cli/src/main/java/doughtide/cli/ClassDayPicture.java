package doughtide.cli;

import doughtide.core.planning.SharedAnswer;
import doughtide.report.ChartFormat;
import doughtide.report.ChartOutput;
import doughtide.report.ChartSize;
import doughtide.report.Language;
import doughtide.report.SharedDayChart;

/** A day of several doughs as a chart in a file. */
final class ClassDayPicture {

  private ClassDayPicture() {}

  static void write(
      SharedAnswer answer, ClassDayOptions options, OutputFile file, OutputOptions.Paper paper) {
    doughtide.report.Words words = doughtide.report.Words.in(Language.ENGLISH);
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
