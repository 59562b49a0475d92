package doughtide.report.chart;

import doughtide.core.forecast.Distribution;
import doughtide.core.forecast.LikelyLine;
import doughtide.core.forecast.RiseForecast;
import doughtide.core.forecast.RiseForecast.BandPoint;
import doughtide.core.forecast.TimeWindow;
import doughtide.core.loaf.Proof;
import doughtide.core.loaf.ShapeForecast;
import doughtide.core.loaf.ShapeStages;
import doughtide.core.quantity.Rise;
import doughtide.core.rise.PieceCurve;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.function.DoubleUnaryOperator;
import java.util.function.ToDoubleFunction;

/** Turns forecasts into the plain numbers of a chart. */
final class ForecastChart {

  /** One every 1/192 of the time, dense enough to draw. */
  private static final int POINTS = 193;

  private static final int LOAF_POINTS = 61;

  /** A chart may show a small part of the time: straight lines between points must not show. */
  private static final double BAND_STEP_HOURS = 0.1;

  private static final int MOST_POINTS = 721;

  private static final double STEADY_CELSIUS = 0.5;

  private static final double USUAL_MARK_PERCENT = 50;

  private ForecastChart() {}

  static RiseChartData.Builder of(RiseForecast forecast, double... marks) {
    LikelyLine line = LikelyLine.of(forecast);
    List<BandPoint> band = band(forecast, line.endHours());
    double[] hours = column(band, BandPoint::hours);
    List<PassingPoint> passing = new ArrayList<>();
    for (double percent : marks) {
      TimeWindow when = forecast.hoursToRise(Rise.ofPercent(percent));
      passing.add(new PassingPoint(percent, when.early(), when.likely(), when.late()));
    }
    RiseChartData.Builder chart =
        RiseChartData.of(
                hours,
                Series.smooth(column(band, BandPoint::riseEarlyPercent)),
                Arrays.stream(hours).map(line::percentAt).toArray(),
                Series.smooth(column(band, BandPoint::riseLatePercent)))
            .passing(passing)
            .pastBest(new RiseChartData.PastBest(forecast.pastBest().quantile(0.5)))
            .temperature(temperature(forecast));
    return marks.length == 0 ? chart : asked(chart, forecast, USUAL_MARK_PERCENT);
  }

  /** What was asked where no loaf is: when the dough has risen so far. */
  private static RiseChartData.Builder asked(
      RiseChartData.Builder chart, RiseForecast forecast, double percent) {
    Distribution when = forecast.passes(Rise.ofPercent(percent));
    OptionalDouble past = forecast.pastBest().quantile(0.5);
    return chart
        .twenty(RiseChartData.Twenty.of(when))
        .stages(
            when.quantile(0.5).stream()
                .filter(at -> at <= past.orElse(at))
                .mapToObj(
                    at ->
                        new RiseChartData.Stages(at, OptionalDouble.empty(), past, false, percent))
                .findFirst());
  }

  /** Of a forecast as far as its likely line is known. */
  static List<BandPoint> band(RiseForecast forecast, double end) {
    int points = (int) Math.ceil(forecast.hours() / BAND_STEP_HOURS) + 1;
    return forecast.band(Math.max(POINTS, Math.min(MOST_POINTS, points))).stream()
        .filter(point -> point.hours() <= end)
        .toList();
  }

  private static double[] column(List<BandPoint> band, ToDoubleFunction<BandPoint> value) {
    return band.stream().mapToDouble(value).toArray();
  }

  /** Only where the dough does not stay at one temperature. */
  private static Optional<RiseChartData.TemperatureSeries> temperature(RiseForecast forecast) {
    return temperature(Series.evenly(forecast.hours(), POINTS), forecast.likelyCelsius());
  }

  private static Optional<RiseChartData.TemperatureSeries> temperature(
      double[] hours, DoubleUnaryOperator celsiusAt) {
    double[] celsius = Arrays.stream(hours).map(celsiusAt).toArray();
    double low = Arrays.stream(celsius).min().orElseThrow();
    double high = Arrays.stream(celsius).max().orElseThrow();
    return high - low < STEADY_CELSIUS
        ? Optional.empty()
        : Optional.of(new RiseChartData.TemperatureSeries(hours, celsius));
  }

  static void addLoaf(
      RiseChartData.Builder chart,
      double stated,
      Proof proof,
      ShapeForecast shape,
      Optional<ShapeStages> stages) {
    if (shape.likely().isEmpty()) {
      return;
    }
    ShapeForecast.Night night = shape.likely().get();
    chart
        .temperature(temperature(Series.evenly(night.ovenHours(), POINTS), celsius(night, stated)))
        .shape(shapePoint(shape))
        .stages(stages.map(ForecastChart::stages))
        .twenty(RiseChartData.Twenty.of(shape.bulkEnd()))
        .cold(cold(night))
        .loaf(loaf(night, proof, shape.target()));
  }

  private static RiseChartData.Stages stages(ShapeStages stages) {
    return new RiseChartData.Stages(
        stages.rightFrom(), stages.rightUntil(), stages.pastBest(), true, USUAL_MARK_PERCENT);
  }

  /**
   * The dough's own temperature, then the middle of the loaf, of a dough that begins as stated: it
   * keeps its part of the way to the coldest, which is not its own.
   */
  private static DoubleUnaryOperator celsius(ShapeForecast.Night night, double stated) {
    double start = ownCelsius(night, 0);
    double last = ownCelsius(night, night.ovenHours());
    boolean cools = start - last > STEADY_CELSIUS;
    double stretch = cools ? (stated - last) / (start - last) : 1;
    double off = cools ? last - stretch * last : stated - start;
    return at -> off + stretch * ownCelsius(night, at);
  }

  private static double ownCelsius(ShapeForecast.Night night, double at) {
    return at > night.proofFromHours()
        ? night.piece().coreCelsiusAt(Math.min(at, night.piece().endHours()))
        : night.bulk().celsiusAt(at);
  }

  /**
   * The loaves from shaping to the oven: at each part of the way the middle and the tenths of all,
   * so that they end at the rise of the forecast.
   */
  private static Optional<RiseChartData.LoafSeries> loaf(
      ShapeForecast.Night night, Proof proof, Rise target) {
    double from = night.proofFromHours();
    if (!(night.ovenHours() > from) || night.members().isEmpty()) {
      return Optional.empty();
    }
    double[] parts = Series.evenly(1, LOAF_POINTS);
    double[][] rises = new double[3][LOAF_POINTS];
    for (int i = 0; i < LOAF_POINTS; i++) {
      Distribution at = risesAt(night, proof, parts[i]);
      rises[0][i] = at.quantile(0.9).orElseThrow();
      rises[1][i] = at.quantile(0.5).orElseThrow();
      rises[2][i] = at.quantile(0.1).orElseThrow();
    }
    double[] hours = new double[LOAF_POINTS];
    Arrays.setAll(hours, i -> from + parts[i] * (night.ovenHours() - from));
    return Optional.of(
        new RiseChartData.LoafSeries(hours, rises[0], rises[1], rises[2], target.percent()));
  }

  /** Rises of all loaves, each at the same part of its own way to the oven. */
  private static Distribution risesAt(ShapeForecast.Night night, Proof proof, double part) {
    double[] rises =
        night.members().stream().mapToDouble(each -> riseAt(each, night, proof, part)).toArray();
    double[] weights = night.weights().stream().mapToDouble(each -> each).toArray();
    return Distribution.of(rises, weights);
  }

  private static double riseAt(
      PieceCurve piece, ShapeForecast.Night night, Proof proof, double part) {
    double from = piece.hours()[0];
    double oven =
        Math.max(from, proof.ovenHour().orElse(from + night.ovenHours() - night.proofFromHours()));
    return piece.riseAt(from + part * (oven - from)).percent();
  }

  private static RiseChartData.ShapePoint shapePoint(ShapeForecast shape) {
    TimeWindow hours = shape.hours();
    return new RiseChartData.ShapePoint(
        hours.early().orElseThrow(),
        hours.likely().orElseThrow(),
        hours.late(),
        shape.rise().likely().orElseThrow());
  }

  private static Optional<RiseChartData.ColdStretch> cold(ShapeForecast.Night night) {
    return night.coldFromHours().isPresent()
            && night.ovenHours() > night.coldFromHours().getAsDouble()
        ? Optional.of(
            new RiseChartData.ColdStretch(night.coldFromHours().getAsDouble(), night.ovenHours()))
        : Optional.empty();
  }
}
