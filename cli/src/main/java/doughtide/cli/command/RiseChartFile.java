package doughtide.cli.command;

import doughtide.cli.args.Words;
import doughtide.cli.file.OutputFile;
import doughtide.cli.options.OutputOptions;
import doughtide.core.dough.DoughFormula;
import doughtide.report.chart.ChartFormat;
import doughtide.report.chart.ChartOutput;
import doughtide.report.chart.ChartSize;
import doughtide.report.chart.RiseChart;
import doughtide.report.chart.RiseChartData;
import doughtide.report.words.Advice;
import doughtide.report.words.Language;
import java.util.ArrayList;
import java.util.List;

/** The answer as a chart in a file. */
public final class RiseChartFile {

  private RiseChartFile() {}

  public static void write(RiseAnswer answer, OutputFile file, OutputOptions.Paper paper) {
    write(data(answer), file, paper);
  }

  public static void write(RiseChartData data, OutputFile file, OutputOptions.Paper paper) {
    doughtide.report.words.Words words = doughtide.report.words.Words.in(Language.ENGLISH);
    ChartSize size =
        paper == OutputOptions.Paper.A4 ? ChartSize.A4_LANDSCAPE : ChartSize.A5_LANDSCAPE;
    byte[] bytes =
        ChartOutput.bytes(
            RiseChart.of(data, words),
            ChartFormat.ofFileName(file.shown()),
            size,
            RiseChart.caption(data, words));
    file.write(out -> out.write(bytes));
  }

  private static RiseChartData data(RiseAnswer answer) {
    double[] marks = answer.passings().stream().mapToDouble(p -> p.rise().percent()).toArray();
    RiseChartData dough =
        RiseChartData.of(answer.forecast(), marks)
            .titled(answer.title().orElse("When is this dough ready?"), subtitle(answer))
            .withWarnings(
                answer.warnings().stream().map(each -> Advice.english(each).text()).toList());
    RiseChartData loaf = answer.proof().map(proof -> dough.with(proof.shape())).orElse(dough);
    return answer.clock().map(clock -> loaf.mixedAt(clock.start())).orElse(loaf);
  }

  private static List<String> subtitle(RiseAnswer answer) {
    List<String> lines = new ArrayList<>();
    lines.add(dough(answer.dough().formula()));
    String temperature = "dough temperature " + answer.temperature().words();
    lines.add(
        answer
            .clock()
            .map(times -> temperature + "; mixed " + times.startInWords())
            .orElse(temperature));
    return lines;
  }

  /** What it is made of, in a line. */
  public static String dough(DoughFormula formula) {
    return formula.flour().name()
        + "; hydration "
        + Words.percent(formula.hydration())
        + ", starter "
        + Words.percent(100 * formula.starterOfAddedFlour())
        + " of the flour added ("
        + Words.percent(100 * formula.prefermentedFlour())
        + " prefermented flour), salt "
        + Words.percent(formula.salt());
  }
}
