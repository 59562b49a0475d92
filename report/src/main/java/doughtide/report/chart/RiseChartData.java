package doughtide.report.chart;

import doughtide.core.forecast.RiseForecast;
import doughtide.core.loaf.ShapeForecast;
import java.time.ZonedDateTime;
import java.util.List;
import java.util.Optional;

/**
 * What a chart of a rise forecast shows, as plain numbers.
 *
 * @param title what dough it is
 * @param subtitle further lines under the title
 * @param hours times after mixing, ascending, at least two
 * @param earlyPercent rise of an early dough at these times, in percent of the volume after mixing
 * @param likelyPercent rise of a likely dough
 * @param latePercent rise of a late dough
 * @param passing marks to show, ascending by percent
 * @param mixedAt when the dough was mixed; adds a row of clock times
 * @param temperature dough temperature over time, shown in a strip of its own
 * @param shape when to shape
 * @param cold a stretch in the cold
 * @param loaf the likely loaf from the end of bulk fermentation on; the band then ends there
 * @param warnings lines for the foot of the chart
 * @param readings what was read in the jar, ascending by hours
 */
@SuppressWarnings("ArrayRecordComponent") // long number series, copied on the way in
public record RiseChartData(
    String title,
    List<String> subtitle,
    double[] hours,
    double[] earlyPercent,
    double[] likelyPercent,
    double[] latePercent,
    List<PassingPoint> passing,
    Optional<ZonedDateTime> mixedAt,
    Optional<TemperatureSeries> temperature,
    Optional<ShapePoint> shape,
    Optional<ColdStretch> cold,
    Optional<LoafSeries> loaf,
    List<String> warnings,
    List<JarReading> readings) {

  /** Checks lengths, order and that every number is finite; copies what could change. */
  public RiseChartData {
    subtitle = List.copyOf(subtitle);
    passing = List.copyOf(passing);
    warnings = List.copyOf(warnings);
    readings = List.copyOf(readings);
    hours = Series.ascending("hours", hours);
    earlyPercent = Series.finite("earlyPercent", earlyPercent, hours.length);
    likelyPercent = Series.finite("likelyPercent", likelyPercent, hours.length);
    latePercent = Series.finite("latePercent", latePercent, hours.length);
  }

  /** A chart of the dough alone. */
  public RiseChartData(
      String title,
      List<String> subtitle,
      double[] hours,
      double[] earlyPercent,
      double[] likelyPercent,
      double[] latePercent,
      List<PassingPoint> passing,
      Optional<ZonedDateTime> mixedAt,
      Optional<TemperatureSeries> temperature,
      Optional<ShapePoint> shape,
      Optional<ColdStretch> cold,
      List<String> warnings) {
    this(
        title,
        subtitle,
        hours,
        earlyPercent,
        likelyPercent,
        latePercent,
        passing,
        mixedAt,
        temperature,
        shape,
        cold,
        Optional.empty(),
        warnings,
        List.of());
  }

  /**
   * Rise of the loaf over time, as an undisturbed jar would show it.
   *
   * @param hours ascending
   * @param percent of the volume after mixing
   */
  @SuppressWarnings("ArrayRecordComponent") // copied on the way in
  public record LoafSeries(double[] hours, double[] percent) {
    /** Checks lengths and that every number is finite. */
    public LoafSeries {
      hours = Series.ascending("hours", hours);
      percent = Series.finite("percent", percent, hours.length);
    }
  }

  /**
   * A forecast as a chart shows it, without title, clock, shape point and cold.
   *
   * @param forecast of one dough; must be possible
   * @param marks rises whose times are shown, in percent, ascending
   */
  public static RiseChartData of(RiseForecast forecast, double... marks) {
    return ForecastChart.of(forecast, marks);
  }

  /**
   * The same with the end of bulk fermentation, the time in the cold and the loaf's likely rise
   * from shaping to the oven.
   *
   * @param shape the shape point; without one, nothing changes
   */
  public RiseChartData with(ShapeForecast shape) {
    return ForecastChart.with(this, shape);
  }

  /** The same under a title, with further lines under it. */
  public RiseChartData titled(String newTitle, List<String> newSubtitle) {
    return new RiseChartData(
        newTitle,
        newSubtitle,
        hours,
        earlyPercent,
        likelyPercent,
        latePercent,
        passing,
        mixedAt,
        temperature,
        shape,
        cold,
        loaf,
        warnings,
        readings);
  }

  /** The same with clock times. */
  public RiseChartData mixedAt(ZonedDateTime time) {
    return new RiseChartData(
        title,
        subtitle,
        hours,
        earlyPercent,
        likelyPercent,
        latePercent,
        passing,
        Optional.of(time),
        temperature,
        shape,
        cold,
        loaf,
        warnings,
        readings);
  }

  /** The same with lines for the foot of the chart. */
  public RiseChartData withWarnings(List<String> lines) {
    return new RiseChartData(
        title,
        subtitle,
        hours,
        earlyPercent,
        likelyPercent,
        latePercent,
        passing,
        mixedAt,
        temperature,
        shape,
        cold,
        loaf,
        lines,
        readings);
  }

  /** The same with what was read in the jar. */
  public RiseChartData withReadings(List<JarReading> read) {
    return new RiseChartData(
        title,
        subtitle,
        hours,
        earlyPercent,
        likelyPercent,
        latePercent,
        passing,
        mixedAt,
        temperature,
        shape,
        cold,
        loaf,
        warnings,
        read);
  }

  /**
   * A reading of the jar.
   *
   * @param hours after mixing, 0 or more
   * @param percent rise, % of the volume after mixing
   */
  public record JarReading(double hours, double percent) {
    /** Checks that both are finite. */
    public JarReading {
      if (!(hours >= 0) || Double.isInfinite(hours) || !Double.isFinite(percent)) {
        throw new IllegalArgumentException("a reading needs hours from 0 on and a rise");
      }
    }
  }

  /**
   * Dough temperature over time.
   *
   * @param hours ascending
   * @param celsius °C
   */
  @SuppressWarnings("ArrayRecordComponent") // copied on the way in
  public record TemperatureSeries(double[] hours, double[] celsius) {
    /** Checks lengths and that every number is finite. */
    public TemperatureSeries {
      hours = Series.ascending("hours", hours);
      celsius = Series.finite("celsius", celsius, hours.length);
    }
  }

  /**
   * When to shape, as hours after mixing, and at which rise.
   *
   * @param risePercent likely rise at that time
   */
  public record ShapePoint(
      double earlyHours, double likelyHours, double lateHours, double risePercent) {
    /** Checks the order. */
    public ShapePoint {
      if (!(earlyHours >= 0)
          || !(likelyHours >= earlyHours)
          || !(lateHours >= likelyHours)
          || Double.isInfinite(lateHours)
          || !Double.isFinite(risePercent)) {
        throw new IllegalArgumentException(
            "hours of the shape point must be finite and in order early, likely, late");
      }
    }
  }

  /** A stretch in the cold, in hours after mixing. */
  public record ColdStretch(double fromHours, double toHours) {
    /** Checks the order. */
    public ColdStretch {
      if (!(fromHours >= 0) || !(toHours > fromHours) || Double.isInfinite(toHours)) {
        throw new IllegalArgumentException("the cold must end after it begins");
      }
    }
  }
}
