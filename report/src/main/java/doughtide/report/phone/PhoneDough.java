package doughtide.report.phone;

import doughtide.core.Internal;
import doughtide.core.forecast.RiseForecast;
import doughtide.core.forecast.TimeWindow;
import doughtide.core.forecast.Unknown;
import doughtide.core.forecast.Warning;
import doughtide.core.learning.JarError;
import doughtide.core.learning.Reading;
import doughtide.core.loaf.Proof;
import doughtide.core.loaf.ShapeForecast;
import doughtide.core.quantity.Rise;
import java.time.ZonedDateTime;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * A dough as a page for the telephone tells it.
 *
 * <pre>{@code
 * RiseForecast forecast = RiseForecaster.standard().forecast(formula, temperature);
 * PhoneDough dough = PhoneDough.of("Saturday", mixedAt, forecast, Rise.ofPercent(50));
 * String html = PhonePage.of(dough, Words.in(Language.ENGLISH)).html();
 * }</pre>
 *
 * @param name as printed; anything, it stays text
 * @param mixedAt when flour, water and starter came together; its zone is the one of all times
 * @param forecast before any reading, with equal weights; hours must be possible
 * @param jar how the sample jar misreads
 * @param asked the rise the page answers for where no loaf is planned
 * @param rises whose times are shown, ascending
 * @param loaf what comes after bulk fermentation, if that was asked
 * @param plan what was planned by the clock, if it was
 * @param told what the program says with the readings it knows, for a dough in hand
 * @param widens what makes the window wide, largest first
 * @param warnings what the baker should know
 */
@Internal
public record PhoneDough(
    String name,
    ZonedDateTime mixedAt,
    RiseForecast forecast,
    JarError jar,
    Rise asked,
    List<Rise> rises,
    Optional<Loaf> loaf,
    Optional<Plan> plan,
    Optional<Told> told,
    List<Unknown> widens,
    List<Warning> warnings) {

  private static final List<Rise> USUAL =
      List.of(Rise.ofPercent(30), Rise.ofPercent(50), Rise.ofPercent(75), Rise.ofPercent(100));

  /** Copies the lists. */
  public PhoneDough {
    rises = List.copyOf(rises);
    widens = List.copyOf(widens);
    warnings = List.copyOf(warnings);
  }

  /**
   * After bulk fermentation.
   *
   * @param proof what was asked
   * @param shape when to shape for it
   */
  @Internal
  public record Loaf(Proof proof, ShapeForecast shape) {
    /** Whether there is an hour to shape. */
    boolean hasPoint() {
      return shape.hours().likely().isPresent() && shape.rise().likely().isPresent();
    }
  }

  /**
   * What the program says of a dough in hand. The page says the same as long as its readings are
   * these.
   *
   * @param readings known when the page is made, ascending
   * @param forecast with them
   * @param shape when to shape by this forecast, if a loaf is planned
   * @param expectedHours when the answer of the page was likely before any reading, hours since
   *     mixing
   * @param nextLookHours when to look next, hours since mixing; empty for now
   */
  @Internal
  public record Told(
      List<Reading> readings,
      RiseForecast forecast,
      Optional<ShapeForecast> shape,
      OptionalDouble expectedHours,
      OptionalDouble nextLookHours) {
    /** Copies the list. */
    public Told {
      readings = List.copyOf(readings);
    }
  }

  /**
   * A plan by the clock for a dough that is shaped when the jar shows {@link #asked}.
   *
   * @param shape when the jar is likely to show it, hours since mixing
   * @param steps of the day, ascending
   */
  record Plan(TimeWindow shape, List<Step> steps) {
    /** Copies the list. */
    public Plan {
      steps = List.copyOf(steps);
    }
  }

  /**
   * A step of a plan.
   *
   * @param name what to do
   * @param hours since mixing, negative before
   * @param detail what it needs; may be empty
   * @param atShape whether it waits for the jar
   */
  record Step(String name, double hours, String detail, boolean atShape) {}

  /**
   * A dough whose rise alone is asked for, in a jar that nobody knows, without readings.
   *
   * @param name as printed
   * @param mixedAt when it was mixed
   * @param forecast of its rise
   * @param asked the rise whose time is the answer
   */
  public static PhoneDough of(
      String name, ZonedDateTime mixedAt, RiseForecast forecast, Rise asked) {
    List<Rise> rises = new ArrayList<>(USUAL);
    if (!rises.contains(asked)) {
      rises.add(asked);
    }
    rises.sort((one, other) -> Double.compare(one.fraction(), other.fraction()));
    return new PhoneDough(
        name,
        mixedAt,
        forecast,
        JarError.standard(),
        asked,
        rises,
        Optional.empty(),
        Optional.empty(),
        Optional.empty(),
        List.of(),
        forecast.warnings());
  }

  /** The same with what comes after bulk fermentation. */
  public PhoneDough with(Loaf newLoaf) {
    return with(Optional.of(newLoaf), plan, told);
  }

  /** The same with what was read in the jar already, and what the program says of it. */
  public PhoneDough with(Told newTold) {
    return with(loaf, plan, Optional.of(newTold));
  }

  /** The same by a plan: it is shaped when the jar shows the rise asked for. */
  PhoneDough with(Plan newPlan) {
    return with(loaf, Optional.of(newPlan), told);
  }

  private PhoneDough with(Optional<Loaf> newLoaf, Optional<Plan> newPlan, Optional<Told> newTold) {
    return new PhoneDough(
        name, mixedAt, forecast, jar, asked, rises, newLoaf, newPlan, newTold, widens, warnings);
  }

  /** The forecast that the page tells when it is opened. */
  RiseForecast now() {
    return told.map(Told::forecast).orElse(forecast);
  }

  /** The loaf as the page tells it when it is opened, if there is an hour to shape it. */
  Optional<Loaf> shaped() {
    return loaf.filter(Loaf::hasPoint).map(this::told).filter(Loaf::hasPoint);
  }

  private Loaf told(Loaf before) {
    return new Loaf(before.proof(), told.flatMap(Told::shape).orElse(before.shape()));
  }
}
