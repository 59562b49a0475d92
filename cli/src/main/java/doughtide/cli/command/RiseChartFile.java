package doughtide.cli.command;

import doughtide.cli.file.OutputFile;
import doughtide.cli.hand.PlannedLoaf;
import doughtide.cli.options.OutputOptions;
import doughtide.core.forecast.Warning;
import doughtide.report.chart.ChartFormat;
import doughtide.report.chart.ChartOutput;
import doughtide.report.chart.ChartSize;
import doughtide.report.chart.RiseChart;
import doughtide.report.chart.RiseChartData;
import doughtide.report.handout.FormulaWords;
import doughtide.report.words.Advice;
import doughtide.report.words.Words;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/** The answer as a chart in a file. */
final class RiseChartFile {

  private RiseChartFile() {}

  public static void write(
      RiseAnswer answer, Words words, OutputFile file, OutputOptions.Paper paper) {
    write(data(answer, words), words, file, paper);
  }

  /** Writes any rise chart. */
  public static void write(
      RiseChartData data, Words words, OutputFile file, OutputOptions.Paper paper) {
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

  private static RiseChartData data(RiseAnswer answer, Words words) {
    double[] marks = answer.passings().stream().mapToDouble(p -> p.rise().percent()).toArray();
    List<Warning> warnings = new ArrayList<>(answer.warnings());
    RiseChartData.Builder chart =
        RiseChartData.of(answer.forecast(), marks)
            .title(answer.title().orElseGet(() -> words.say("chart.title.rise")))
            .subtitle(subtitle(answer, words))
            .mixedAt(answer.clock().map(clock -> clock.start()));
    answer.proof().ifPresent(loaf -> addLoaf(chart, answer, loaf, warnings, words));
    return chart
        .warnings(warnings.stream().map(each -> Advice.of(words, each).sentences()).toList())
        .build();
  }

  /** With its shape point, or with the reason why it has none, which then is no mere warning. */
  private static void addLoaf(
      RiseChartData.Builder chart,
      RiseAnswer answer,
      PlannedLoaf loaf,
      List<Warning> warnings,
      Words words) {
    chart.shape(answer.forecast(), loaf.proof(), loaf.shape());
    if (!loaf.shape().isPossible()) {
      List<Warning> why = loaf.shape().warnings();
      Warning last = why.get(why.size() - 1);
      chart.whyNoShape(Advice.of(words, last).sentences());
      warnings.remove(last);
    }
  }

  private static List<String> subtitle(RiseAnswer answer, Words words) {
    FormulaWords say = new FormulaWords(words);
    List<String> said = new ArrayList<>();
    said.add(say.formula(answer.dough().formula()));
    temperature(answer, say).ifPresent(said::add);
    say.altitude(answer.dough().formula()).ifPresent(said::add);
    answer.clock().map(clock -> say.mixed(clock.start())).ifPresent(said::add);
    return List.of(String.join(" ", said));
  }

  /** Where it changes, the chart shows it over time. */
  private static Optional<String> temperature(RiseAnswer answer, FormulaWords say) {
    return answer.drifts()
        ? Optional.empty()
        : Optional.of(say.temperatureLine(answer.forecast().temperature().startCelsius()));
  }
}
