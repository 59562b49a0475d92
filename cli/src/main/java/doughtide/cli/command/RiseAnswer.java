package doughtide.cli.command;

import doughtide.cli.args.ClockTimes;
import doughtide.cli.hand.PlannedLoaf;
import doughtide.cli.options.DoughOptions;
import doughtide.cli.options.TemperatureOptions;
import doughtide.core.dough.Ingredients;
import doughtide.core.forecast.RiseForecast;
import doughtide.core.forecast.TimeWindow;
import doughtide.core.forecast.Unknown;
import doughtide.core.forecast.Warning;
import doughtide.core.learning.JarError;
import doughtide.core.loaf.Proof;
import doughtide.core.loaf.SampleJar;
import doughtide.core.loaf.ShapeForecast;
import doughtide.core.loaf.ShapeForecaster;
import doughtide.core.quantity.Rise;
import doughtide.report.phone.PhoneDough;
import doughtide.report.phone.PhonePage;
import doughtide.report.words.Words;
import java.time.ZonedDateTime;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.SortedSet;
import java.util.function.DoubleUnaryOperator;
import java.util.stream.IntStream;

/**
 * What the rise command found out, before it is printed.
 *
 * @param dough the dough as described
 * @param title heading of the chart, if one was given
 * @param temperature where the dough's temperature comes from
 * @param clock clock times, if the time of mixing was given
 * @param forecast the rise with its uncertainty
 * @param passings when each rise is passed, ascending
 * @param over from when the dough is past its best
 * @param widens what makes the window wide, largest first
 * @param warmth the likely dough's own temperature at round hours
 * @param proof what happens after bulk fermentation, if that was asked
 * @param jar what the sample jar reads, if one was asked for and there is a reading
 * @param weigh what to weigh, if the mass of the dough is known
 * @param warnings what the baker should know
 */
record RiseAnswer(
    DoughOptions dough,
    Optional<String> title,
    TemperatureOptions temperature,
    Optional<ClockTimes> clock,
    RiseForecast forecast,
    List<Passing> passings,
    TimeWindow over,
    List<Widening> widens,
    List<Warmth> warmth,
    Optional<PlannedLoaf> proof,
    Optional<SampleJar> jar,
    Optional<Ingredients> weigh,
    List<Warning> warnings) {

  /** Points of the curve: one every 1/192 of the time, dense enough to draw. */
  private static final int CURVE_POINTS = 193;

  private static final double USUAL_POINT_PERCENT = 50;

  public RiseAnswer {
    passings = List.copyOf(passings);
    widens = List.copyOf(widens);
    warmth = List.copyOf(warmth);
    warnings = List.copyOf(warnings);
  }

  /**
   * When a rise is passed.
   *
   * @param rise the rise
   * @param when early, likely, late
   */
  record Passing(Rise rise, TimeWindow when) {}

  /**
   * What makes a window wide.
   *
   * @param unknown what is not known
   * @param share of the variance of the time to {@code at}, 0…1
   * @param at the rise whose time is meant
   */
  record Widening(Unknown unknown, double share, Rise at) {}

  /**
   * The dough's temperature at an hour.
   *
   * @param hours since mixing
   * @param celsius °C
   */
  record Warmth(double hours, double celsius) {}

  /** Asks the forecast everything the answer needs. */
  public static RiseAnswer of(
      DoughOptions dough,
      Optional<String> title,
      TemperatureOptions temperature,
      Optional<ClockTimes> clock,
      RiseForecast forecast,
      SortedSet<Rise> rises,
      Optional<Proof> proof,
      Optional<Ingredients> weigh) {
    List<Passing> passings =
        rises.stream().map(rise -> new Passing(rise, forecast.hoursToRise(rise))).toList();
    Optional<PlannedLoaf> loaf =
        proof.map(each -> new PlannedLoaf(each, ShapeForecaster.of(forecast, each).forecast()));
    List<Warning> warnings = new ArrayList<>(forecast.warnings());
    warnings.addAll(temperature.warnings());
    loaf.ifPresent(each -> addNew(warnings, each.shape().warnings()));
    return new RiseAnswer(
        dough,
        title,
        temperature,
        clock,
        forecast,
        passings,
        forecast.hoursToOver(),
        widens(forecast),
        warmth(forecast),
        loaf,
        jar(forecast, temperature, loaf),
        weigh,
        warnings);
  }

  private static void addNew(List<Warning> warnings, List<Warning> more) {
    more.stream().filter(each -> !warnings.contains(each)).forEach(warnings::add);
  }

  /** Nothing where one temperature was stated: there is no course to tell. */
  private static List<Warmth> warmth(RiseForecast forecast) {
    if (!forecast.isPossible() || forecast.temperature().isSteady(forecast.hours())) {
      return List.of();
    }
    DoubleUnaryOperator likely = forecast.likelyCelsius();
    return IntStream.rangeClosed(0, (int) forecast.hours())
        .mapToObj(hour -> new Warmth(hour, likely.applyAsDouble(hour)))
        .toList();
  }

  /** The jar is read at the shape point, or at half as much again where no loaf is planned. */
  private static Optional<SampleJar> jar(
      RiseForecast forecast, TemperatureOptions temperature, Optional<PlannedLoaf> loaf) {
    if (loaf.isPresent() && loaf.get().shape().rise().likely().isEmpty()) {
      return Optional.empty();
    }
    Rise point =
        loaf.map(each -> Rise.ofPercent(each.shape().rise().likely().orElseThrow()))
            .orElse(Rise.ofPercent(USUAL_POINT_PERCENT));
    return temperature.jar().flatMap(jar -> SampleJar.when(forecast, jar.temperature(), point));
  }

  private static List<Widening> widens(RiseForecast forecast) {
    for (double percent : new double[] {50, 30, 25}) {
      Rise at = Rise.ofPercent(percent);
      List<Widening> widens = Narrowing.of(forecast, at);
      if (!widens.isEmpty()) {
        return widens;
      }
    }
    return List.of();
  }

  /**
   * The band over time, worked out when asked for, which a page of text does not; no points if no
   * hours can be given.
   */
  public List<RiseForecast.BandPoint> curve() {
    return forecast.band(CURVE_POINTS);
  }

  /** Whether the dough's temperature changes. */
  public boolean drifts() {
    return warmth.stream().anyMatch(each -> each.celsius() != warmth.get(0).celsius());
  }

  /** The likely night, if a proof was asked for and a shape point exists. */
  public Optional<ShapeForecast.Night> night() {
    return proof.flatMap(each -> each.shape().likely());
  }

  /** The rise the answer begins with: the first that was asked for besides the usual ones. */
  public Passing asked() {
    Passing asked = passings.get(0);
    for (Passing each : passings) {
      if (!RiseCommand.isUsual(each.rise())) {
        return each;
      }
      asked = each.rise().percent() == USUAL_POINT_PERCENT ? each : asked;
    }
    return asked;
  }

  /** Whether hours can be given at all. */
  public boolean isPossible() {
    return forecast.isPossible();
  }

  /**
   * The same for the telephone; clock times must be known.
   *
   * @param jar how the sample jar misreads
   * @param words of the page's language
   */
  public PhoneDough forPhone(JarError jar, Words words) {
    ZonedDateTime mixedAt = clock.orElseThrow().start();
    return new PhoneDough(
        title.orElseGet(() -> PhonePage.usualName(mixedAt, words)),
        mixedAt,
        forecast,
        jar,
        asked().rise(),
        passings.stream().map(Passing::rise).toList(),
        proof.map(each -> new PhoneDough.Loaf(each.proof(), each.shape())),
        Optional.empty(),
        Optional.empty(),
        widens.stream().filter(each -> each.share() > 0).map(Widening::unknown).toList(),
        warnings);
  }
}
