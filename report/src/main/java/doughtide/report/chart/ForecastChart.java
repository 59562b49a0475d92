package doughtide.report.chart;

import doughtide.core.forecast.LikelyLine;
import doughtide.core.forecast.RiseForecast;
import doughtide.core.forecast.RiseForecast.BandPoint;
import doughtide.core.forecast.TimeWindow;
import doughtide.core.loaf.ShapeForecast;
import doughtide.core.quantity.Rise;
import doughtide.core.rise.RiseCurve;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.function.DoubleUnaryOperator;
import java.util.function.ToDoubleFunction;

/** Turns forecasts into the plain numbers of a chart. */
public final class ForecastChart {

  /** One every 1/192 of the time, dense enough to draw. */
  private static final int POINTS = 193;

  /** A chart may show a small part of the time: straight lines between points must not show. */
  private static final double BAND_STEP_HOURS = 0.1;

  private static final int MOST_POINTS = 721;

  private static final double STEADY_CELSIUS = 0.5;

  /** Gains smaller than this are not stretched, % of the volume. */
  private static final double LEAST_GAIN = 5;

  private ForecastChart() {}

  static RiseChartData of(RiseForecast forecast, double... marks) {
    LikelyLine line = LikelyLine.of(forecast);
    List<BandPoint> band = band(forecast, line.endHours());
    double[] hours = column(band, BandPoint::hours);
    List<PassingPoint> passing = new ArrayList<>();
    for (double percent : marks) {
      TimeWindow when = forecast.hoursToRise(Rise.ofPercent(percent));
      passing.add(new PassingPoint(percent, when.early(), when.likely(), when.late()));
    }
    return new RiseChartData(
        "",
        List.of(),
        hours,
        Series.smooth(column(band, BandPoint::riseEarlyPercent)),
        Arrays.stream(hours).map(line::percentAt).toArray(),
        Series.smooth(column(band, BandPoint::riseLatePercent)),
        passing,
        Optional.empty(),
        temperature(forecast),
        Optional.empty(),
        Optional.empty(),
        List.of());
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
    RiseCurve likely = forecast.typical().runFast(forecast.hours());
    return temperature(Series.evenly(forecast.hours(), POINTS), likely::celsiusAt);
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

  static RiseChartData with(RiseChartData bulk, ShapeForecast shape) {
    if (shape.likely().isEmpty()) {
      return bulk;
    }
    ShapeForecast.Night night = shape.likely().get();
    return new RiseChartData(
        bulk.title(),
        bulk.subtitle(),
        bulk.hours(),
        bulk.earlyPercent(),
        bulk.likelyPercent(),
        bulk.latePercent(),
        bulk.passing(),
        bulk.mixedAt(),
        temperature(Series.evenly(night.ovenHours(), POINTS), at -> celsius(night, at)),
        shapePoint(shape),
        cold(night),
        loaf(night),
        bulk.warnings(),
        bulk.readings());
  }

  /** The dough's own temperature, then the middle of the loaf. */
  private static double celsius(ShapeForecast.Night night, double at) {
    return at > night.proofFromHours()
        ? night.piece().coreCelsiusAt(Math.min(at, night.piece().endHours()))
        : night.bulk().celsiusAt(at);
  }

  /**
   * The likely loaf from the end of bulk fermentation to the oven. What it gains is drawn so that
   * it ends at the likely rise of the forecast, the middle of many doughs, of which this dough is
   * but one.
   */
  private static Optional<RiseChartData.LoafSeries> loaf(ShapeForecast.Night night) {
    double from = night.bulkEndHours();
    if (!(night.ovenHours() > from)) {
      return Optional.empty();
    }
    double[] hours =
        Arrays.stream(Series.evenly(night.ovenHours() - from, POINTS))
            .map(after -> Math.min(from + after, night.ovenHours()))
            .toArray();
    double[] percent = Arrays.stream(hours).map(at -> rise(night, at)).toArray();
    double gain = percent[percent.length - 1] - percent[0];
    double first = percent[0];
    double wanted = night.riseAtBake().likely().orElse(percent[percent.length - 1]) - first;
    double stretch = gain > LEAST_GAIN && wanted > LEAST_GAIN ? wanted / gain : 1;
    double[] drawn = Arrays.stream(percent).map(p -> first + stretch * (p - first)).toArray();
    return Optional.of(new RiseChartData.LoafSeries(hours, drawn));
  }

  private static double rise(ShapeForecast.Night night, double at) {
    return at < night.proofFromHours()
        ? night.bulk().riseAt(at).percent()
        : night.piece().riseAt(Math.min(at, night.piece().endHours())).percent();
  }

  private static Optional<RiseChartData.ShapePoint> shapePoint(ShapeForecast shape) {
    TimeWindow hours = shape.hours();
    if (hours.late().isEmpty() || shape.rise().likely().isEmpty()) {
      return Optional.empty();
    }
    return Optional.of(
        new RiseChartData.ShapePoint(
            hours.early().orElseThrow(),
            hours.likely().orElseThrow(),
            hours.late().getAsDouble(),
            shape.rise().likely().getAsDouble()));
  }

  private static Optional<RiseChartData.ColdStretch> cold(ShapeForecast.Night night) {
    return night.coldFromHours().isPresent()
            && night.ovenHours() > night.coldFromHours().getAsDouble()
        ? Optional.of(
            new RiseChartData.ColdStretch(night.coldFromHours().getAsDouble(), night.ovenHours()))
        : Optional.empty();
  }
}
