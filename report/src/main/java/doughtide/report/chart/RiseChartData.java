package doughtide.report.chart;

import doughtide.core.Internal;
import doughtide.core.forecast.Distribution;
import doughtide.core.forecast.RiseForecast;
import doughtide.core.learning.Reading;
import doughtide.core.loaf.Proof;
import doughtide.core.loaf.ShapeForecast;
import doughtide.core.loaf.ShapeForecaster;
import java.time.ZonedDateTime;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * What a chart of a rise forecast shows, as plain numbers. Hours count from mixing, rises are per
 * cent of the volume after mixing.
 *
 * <pre>{@code
 * RiseChartData data =
 *     RiseChartData.of(forecast, 50, 100).title("Saturday's dough").mixedAt(time).build();
 * }</pre>
 *
 * @param title what dough it is
 * @param subtitle further lines under the title
 * @param hours ascending, at least two
 * @param earlyPercent rise of an early dough at these times
 * @param likelyPercent rise of a likely dough
 * @param latePercent rise of a late dough
 * @param passing marks to show, ascending by percent
 * @param pastBest from when the dough is past its best, if it was looked at
 * @param mixedAt when the dough was mixed; adds clock times
 * @param temperature dough temperature over time, shown in a strip of its own
 * @param shape when to shape
 * @param whyNoShape why no hour is right to shape, where a loaf was asked for and there is none
 * @param stages until when it is too early, right and late
 * @param twenty when twenty doughs are ready, each one in twenty
 * @param cold a stretch in the cold
 * @param loaf the loaf from shaping to the oven; the band of the dough then ends where it is late
 * @param warnings lines for the foot of the chart
 * @param readings what was read in the jar, ascending by hours
 * @param today how far the dough in hand is
 */
@Internal
@SuppressWarnings("ArrayRecordComponent") // long number series, copied on the way in
public record RiseChartData(
    String title,
    List<String> subtitle,
    double[] hours,
    double[] earlyPercent,
    double[] likelyPercent,
    double[] latePercent,
    List<PassingPoint> passing,
    Optional<PastBest> pastBest,
    Optional<ZonedDateTime> mixedAt,
    Optional<TemperatureSeries> temperature,
    Optional<ShapePoint> shape,
    Optional<String> whyNoShape,
    Optional<Stages> stages,
    Optional<Twenty> twenty,
    Optional<ColdStretch> cold,
    Optional<LoafSeries> loaf,
    List<String> warnings,
    List<JarReading> readings,
    Optional<Today> today) {

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

  /** The last hour that was computed. */
  public double lastHour() {
    return hours[hours.length - 1];
  }

  /**
   * A forecast as a chart shows it.
   *
   * @param forecast of one dough; must be possible
   * @param marks rises whose times are shown, in percent, ascending
   */
  public static Builder of(RiseForecast forecast, double... marks) {
    return ForecastChart.of(forecast, marks);
  }

  /**
   * Of plain numbers, as the record holds them.
   *
   * @param hours ascending, at least two
   */
  public static Builder of(
      double[] hours, double[] earlyPercent, double[] likelyPercent, double[] latePercent) {
    return new Builder(hours, earlyPercent, likelyPercent, latePercent);
  }

  /** Collects the parts of a chart. */
  @Internal
  public static final class Builder {
    private final double[] hours;
    private final double[] earlyPercent;
    private final double[] likelyPercent;
    private final double[] latePercent;
    private String title = "";
    private List<String> subtitle = List.of();
    private List<PassingPoint> passing = List.of();
    private Optional<PastBest> pastBest = Optional.empty();
    private Optional<ZonedDateTime> mixedAt = Optional.empty();
    private Optional<TemperatureSeries> temperature = Optional.empty();
    private Optional<ShapePoint> shape = Optional.empty();
    private Optional<String> whyNoShape = Optional.empty();
    private Optional<Stages> stages = Optional.empty();
    private Optional<Twenty> twenty = Optional.empty();
    private Optional<ColdStretch> cold = Optional.empty();
    private Optional<LoafSeries> loaf = Optional.empty();
    private List<String> warnings = List.of();
    private List<JarReading> readings = List.of();
    private Optional<Today> today = Optional.empty();

    private Builder(double[] hours, double[] early, double[] likely, double[] late) {
      this.hours = hours;
      this.earlyPercent = early;
      this.likelyPercent = likely;
      this.latePercent = late;
    }

    /** What dough it is. */
    public Builder title(String text) {
      title = text;
      return this;
    }

    /** Further lines under the title. */
    public Builder subtitle(List<String> lines) {
      subtitle = lines;
      return this;
    }

    /** Marks to show, ascending by percent. */
    public Builder passing(List<PassingPoint> marks) {
      passing = marks;
      return this;
    }

    /** From when the dough is past its best. */
    public Builder pastBest(PastBest from) {
      pastBest = Optional.of(from);
      return this;
    }

    /** Adds clock times. */
    public Builder mixedAt(Optional<ZonedDateTime> time) {
      mixedAt = time;
      return this;
    }

    /** Dough temperature over time. */
    public Builder temperature(Optional<TemperatureSeries> series) {
      temperature = series;
      return this;
    }

    /** When to shape. */
    public Builder shape(ShapePoint point) {
      shape = Optional.of(point);
      return this;
    }

    /** Why no hour is right to shape. */
    public Builder whyNoShape(String sentence) {
      whyNoShape = Optional.of(sentence);
      return this;
    }

    /** Until when it is too early, right and late. */
    public Builder stages(Optional<Stages> when) {
      stages = when;
      return this;
    }

    /** When twenty doughs are ready. */
    public Builder twenty(Twenty doughs) {
      twenty = Optional.of(doughs);
      return this;
    }

    /** A stretch in the cold. */
    public Builder cold(Optional<ColdStretch> stretch) {
      cold = stretch;
      return this;
    }

    /** The loaf from shaping to the oven. */
    public Builder loaf(Optional<LoafSeries> series) {
      loaf = series;
      return this;
    }

    /** Lines for the foot of the chart. */
    public Builder warnings(List<String> lines) {
      warnings = lines;
      return this;
    }

    /** What was read in the jar. */
    public Builder readings(List<JarReading> read) {
      readings = read;
      return this;
    }

    /** How far the dough in hand is. */
    public Builder today(Today state) {
      today = Optional.of(state);
      return this;
    }

    /**
     * When to shape for a loaf, the time in the cold and the loaf until the oven; nothing where
     * there is no shape point.
     *
     * @param dough the forecast that the shape point was found for
     * @param proof what was asked
     * @param found when to shape for it
     */
    public Builder shape(RiseForecast dough, Proof proof, ShapeForecast found) {
      ForecastChart.addLoaf(
          this,
          dough.temperature().startCelsius(),
          proof,
          found,
          ShapeForecaster.of(dough, proof).stages(found));
      return this;
    }

    /** The chart's numbers. */
    public RiseChartData build() {
      return new RiseChartData(
          title,
          subtitle,
          hours,
          earlyPercent,
          likelyPercent,
          latePercent,
          passing,
          pastBest,
          mixedAt,
          temperature,
          shape,
          whyNoShape,
          stages,
          twenty,
          cold,
          loaf,
          warnings,
          readings,
          today);
    }
  }

  /**
   * From when a dough is past its best; what is empty lies beyond the time looked at.
   *
   * @param likelyHours half of the doughs are past it
   */
  record PastBest(OptionalDouble likelyHours) {}

  /**
   * Rise of the loaf over time.
   *
   * @param hours ascending
   * @param earlyPercent of a quick loaf
   * @param likelyPercent of the likely loaf
   * @param latePercent of a slow loaf
   * @param targetPercent wanted at the oven
   */
  @Internal
  @SuppressWarnings("ArrayRecordComponent") // copied on the way in
  public record LoafSeries(
      double[] hours,
      double[] earlyPercent,
      double[] likelyPercent,
      double[] latePercent,
      double targetPercent) {
    /** Checks lengths and that every number is finite. */
    public LoafSeries {
      hours = Series.ascending("hours", hours);
      earlyPercent = Series.finite("earlyPercent", earlyPercent, hours.length);
      likelyPercent = Series.finite("likelyPercent", likelyPercent, hours.length);
      latePercent = Series.finite("latePercent", latePercent, hours.length);
    }

    double ovenHours() {
      return hours[hours.length - 1];
    }
  }

  /**
   * What an hour means for what was asked.
   *
   * @param rightFrom too early before
   * @param rightUntil late after; empty for never
   * @param pastBest past its best after; empty for beyond the time looked at
   * @param forShaping whether the loaf's shaping is meant; otherwise whether the dough has risen to
   *     {@code markPercent}
   * @param markPercent the rise asked for, where no loaf is
   */
  @Internal
  public record Stages(
      double rightFrom,
      OptionalDouble rightUntil,
      OptionalDouble pastBest,
      boolean forShaping,
      double markPercent) {}

  /**
   * Twenty doughs, each one in twenty: the hours of the middles of twenty equal parts.
   *
   * @param hours those that get there within the time looked at, ascending
   * @param never how many of twenty do not
   */
  @Internal
  @SuppressWarnings("ArrayRecordComponent") // copied on the way in
  public record Twenty(double[] hours, int never) {
    /** How many dots stand for all doughs. */
    public static final int DOTS = 20;

    /** Checks the number and copies. */
    public Twenty {
      hours = Series.finite("hours", hours, DOTS - never);
    }

    /** Of a distribution. */
    public static Twenty of(Distribution when) {
      double[] at = new double[DOTS];
      for (int i = 0; i < DOTS; i++) {
        at[i] = when.quantile((i + 0.5) / DOTS).orElse(Double.POSITIVE_INFINITY);
      }
      double[] there = Arrays.stream(at).filter(Double::isFinite).toArray();
      return new Twenty(there, DOTS - there.length);
    }
  }

  /**
   * A reading of the jar.
   *
   * @param hours after mixing, 0 or more
   * @param percent rise, % of the volume after mixing
   */
  @Internal
  public record JarReading(double hours, double percent) {
    /** Of a reading that has a rise. */
    public static JarReading of(Reading reading) {
      return new JarReading(reading.hours(), reading.rise().orElseThrow().percent());
    }

    /** Checks that both are finite. */
    public JarReading {
      if (!(hours >= 0) || Double.isInfinite(hours) || !Double.isFinite(percent)) {
        throw new IllegalArgumentException("a reading needs hours from 0 on and a rise");
      }
    }
  }

  /**
   * How far the dough in hand is.
   *
   * @param hours ascending
   * @param expectedPercent likely rise as it was forecast before today's readings
   * @param now the hour of looking
   * @param nextLook when to look again; empty for now
   * @param aheadHours how much earlier than expected the mark is likely reached; negative for
   *     later, empty if it is too early to say
   */
  @Internal
  @SuppressWarnings("ArrayRecordComponent") // copied on the way in
  public record Today(
      double[] hours,
      double[] expectedPercent,
      double now,
      OptionalDouble nextLook,
      OptionalDouble aheadHours) {
    /** Checks lengths and that every number is finite. */
    public Today {
      hours = Series.ascending("hours", hours);
      expectedPercent = Series.finite("expectedPercent", expectedPercent, hours.length);
    }
  }

  /**
   * Dough temperature over time.
   *
   * @param hours ascending
   * @param celsius °C
   */
  @Internal
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
   * @param lateHours empty where one dough in ten is not there within the time looked at
   * @param risePercent likely rise at that time
   */
  @Internal
  public record ShapePoint(
      double earlyHours, double likelyHours, OptionalDouble lateHours, double risePercent) {
    /** Checks the order. */
    public ShapePoint {
      double late = lateHours.orElse(likelyHours);
      if (!(earlyHours >= 0)
          || !(likelyHours >= earlyHours)
          || !(late >= likelyHours)
          || Double.isInfinite(late)
          || !Double.isFinite(risePercent)) {
        throw new IllegalArgumentException(
            "hours of the shape point must be finite and in order early, likely, late");
      }
    }

    /** With all its three hours. */
    public ShapePoint(double earlyHours, double likelyHours, double lateHours, double risePercent) {
      this(earlyHours, likelyHours, OptionalDouble.of(lateHours), risePercent);
    }
  }

  /** A stretch in the cold, in hours after mixing. */
  @Internal
  public record ColdStretch(double fromHours, double toHours) {
    /** Checks the order. */
    public ColdStretch {
      if (!(fromHours >= 0) || !(toHours > fromHours) || Double.isInfinite(toHours)) {
        throw new IllegalArgumentException("the cold must end after it begins");
      }
    }
  }
}
