package doughtide.cli;

import doughtide.core.dough.DoughFormula;
import doughtide.core.forecast.RiseForecast.BandPoint;
import doughtide.core.forecast.ShapeForecast;
import doughtide.core.forecast.Warning;
import doughtide.core.rise.RiseCurve;
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

  private static final int TEMPERATURE_POINTS = 241;
  private static final int LOAF_POINTS = 121;

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
        temperature(answer),
        shape(answer),
        cold(answer),
        loaf(answer),
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
    String temperature = "dough temperature " + answer.temperature().words();
    lines.add(
        answer
            .clock()
            .map(times -> temperature + "; mixed " + times.startInWords())
            .orElse(temperature));
    return lines;
  }

  /** The dough's own temperature, then the middle of the loaf. */
  private static Optional<RiseChartData.TemperatureSeries> temperature(RiseAnswer answer) {
    Optional<ShapeForecast.Night> night = answer.night();
    if (!answer.drifts() && night.flatMap(each -> cold(answer)).isEmpty()) {
      return Optional.empty();
    }
    double end = end(answer);
    double[] hours = new double[TEMPERATURE_POINTS];
    double[] celsius = new double[TEMPERATURE_POINTS];
    RiseCurve bulk = answer.forecast().typical().runFast(answer.forecast().hours());
    for (int i = 0; i < TEMPERATURE_POINTS; i++) {
      hours[i] = Math.min(end, end * i / (TEMPERATURE_POINTS - 1));
      double at = hours[i];
      celsius[i] =
          night
              .filter(each -> at > each.proofFromHours())
              .map(each -> each.piece().coreCelsiusAt(at))
              .orElseGet(() -> bulk.celsiusAt(at));
    }
    return Optional.of(new RiseChartData.TemperatureSeries(hours, celsius));
  }

  private static double end(RiseAnswer answer) {
    double last = answer.forecast().hours();
    return answer
        .night()
        .map(each -> Math.max(Math.min(last, each.piece().endHours()), each.ovenHours()))
        .orElse(last);
  }

  private static Optional<RiseChartData.ShapePoint> shape(RiseAnswer answer) {
    return answer
        .proof()
        .map(RiseAnswer.Loaf::shape)
        .filter(shape -> shape.hours().late().isPresent() && shape.rise().likely().isPresent())
        .map(
            shape ->
                new RiseChartData.ShapePoint(
                    shape.hours().early().orElseThrow(),
                    shape.hours().likely().orElseThrow(),
                    shape.hours().late().getAsDouble(),
                    shape.rise().likely().getAsDouble()));
  }

  private static Optional<RiseChartData.ColdStretch> cold(RiseAnswer answer) {
    return answer
        .night()
        .filter(each -> each.coldFromHours().isPresent())
        .filter(each -> each.ovenHours() > each.coldFromHours().getAsDouble())
        .map(
            each ->
                new RiseChartData.ColdStretch(
                    each.coldFromHours().getAsDouble(), each.ovenHours()));
  }

  /** The likely loaf from the end of bulk fermentation to the oven. */
  private static Optional<RiseChartData.LoafSeries> loaf(RiseAnswer answer) {
    return answer
        .night()
        .filter(night -> night.ovenHours() > night.bulkEndHours())
        .map(RiseChartFile::loaf);
  }

  private static RiseChartData.LoafSeries loaf(ShapeForecast.Night night) {
    double[] hours = new double[LOAF_POINTS];
    double[] percent = new double[LOAF_POINTS];
    double from = night.bulkEndHours();
    for (int i = 0; i < LOAF_POINTS; i++) {
      double part = (double) i / (LOAF_POINTS - 1);
      hours[i] = from + part * (night.ovenHours() - from);
      percent[i] =
          hours[i] < night.proofFromHours()
              ? night.bulk().riseAt(hours[i]).percent()
              : night.piece().riseAt(Math.min(hours[i], night.piece().endHours())).percent();
    }
    return new RiseChartData.LoafSeries(hours, percent);
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
