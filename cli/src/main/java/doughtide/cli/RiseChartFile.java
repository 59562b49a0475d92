package doughtide.cli;

import doughtide.core.dough.DoughFormula;
import doughtide.core.forecast.RiseForecast.BandPoint;
import doughtide.core.forecast.Warning;
import doughtide.report.ChartFormat;
import doughtide.report.ChartOutput;
import doughtide.report.ChartSize;
import doughtide.report.Language;
import doughtide.report.PassingPoint;
import doughtide.report.RiseChart;
import doughtide.report.RiseChartData;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.ToDoubleFunction;

/** The answer as a chart in a file. */
final class RiseChartFile {

  private RiseChartFile() {}

  static void write(RiseAnswer answer, OutputFile file, OutputOptions.Paper paper) {
    RiseChartData data = data(answer);
    doughtide.report.Words words = doughtide.report.Words.in(Language.ENGLISH);
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
    return new RiseChartData(
        answer.title().orElse("When is this dough ready?"),
        subtitle(answer),
        column(answer, BandPoint::hours),
        column(answer, BandPoint::riseEarlyPercent),
        column(answer, BandPoint::riseLikelyPercent),
        column(answer, BandPoint::riseLatePercent),
        answer.passings().stream().map(RiseChartFile::point).toList(),
        answer.clock().map(ClockTimes::start),
        Optional.empty(),
        Optional.empty(),
        Optional.empty(),
        answer.warnings().stream().map(Warning::text).toList());
  }

  private static List<String> subtitle(RiseAnswer answer) {
    DoughFormula formula = answer.dough().formula();
    List<String> lines = new ArrayList<>();
    lines.add(
        formula.flour().name()
            + "; hydration "
            + Words.percent(formula.hydration())
            + ", starter "
            + Words.percent(100 * formula.starterOfAddedFlour())
            + " of the flour added ("
            + Words.percent(100 * formula.prefermentedFlour())
            + " prefermented flour), salt "
            + Words.percent(formula.salt()));
    String temperature = "dough temperature " + answer.temperatureWords();
    lines.add(
        answer
            .clock()
            .map(times -> temperature + "; mixed " + times.startInWords())
            .orElse(temperature));
    return lines;
  }

  private static PassingPoint point(RiseAnswer.Passing passing) {
    return new PassingPoint(
        passing.rise().percent(),
        passing.when().early(),
        passing.when().likely(),
        passing.when().late());
  }

  private static double[] column(RiseAnswer answer, ToDoubleFunction<BandPoint> value) {
    return answer.curve().stream().mapToDouble(value).toArray();
  }
}
