package doughtide.core.day.question;

import doughtide.core.Internal;
import doughtide.core.dough.DoughFormula;
import doughtide.core.forecast.RiseForecast;
import doughtide.core.forecast.RiseForecaster;
import doughtide.core.forecast.TimeWindow;
import doughtide.core.loaf.Proof;
import doughtide.core.loaf.ShapeForecast;
import doughtide.core.loaf.ShapeForecaster;
import doughtide.core.quantity.Checks;
import doughtide.core.quantity.Rise;
import doughtide.core.quantity.Value;
import doughtide.core.rise.DoughTemperature;
import java.io.Serializable;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import org.jspecify.annotations.Nullable;

/**
 * What ends bulk fermentation: a rise that the sample jar shows, or the moment from which the loaf
 * is right at the oven after its proof. Immutable.
 *
 * <pre>{@code
 * BulkEnd half = BulkEnd.atRise(Rise.ofPercent(50));
 * BulkEnd night = BulkEnd.before(Proof.inCold(Temperature.ofCelsius(4), 12));
 * }</pre>
 */
@Internal
public final class BulkEnd extends Value {
  private static final long serialVersionUID = 1;

  private static final int LIKELY_MEMBERS = 16;
  private static final double LONGEST_HOURS = 96;

  /** Stands for a bulk fermentation that never ends. */
  static final double NEVER_HOURS = 2 * LONGEST_HOURS;

  private final @Nullable Rise rise;
  private final @Nullable Proof proof;

  private BulkEnd(@Nullable Rise rise, @Nullable Proof proof) {
    this.rise = rise;
    this.proof = proof;
  }

  /** At a rise of the sample jar. */
  public static BulkEnd atRise(Rise rise) {
    return new BulkEnd(Checks.given("rise", rise), null);
  }

  /** In time for a proof: the shape point. */
  public static BulkEnd before(Proof proof) {
    return new BulkEnd(null, Checks.given("proof", proof));
  }

  /** The rise asked for; empty where the proof decides. */
  public Optional<Rise> rise() {
    return Optional.ofNullable(rise);
  }

  /** The proof that decides; empty where a rise was asked for. */
  public Optional<Proof> proof() {
    return Optional.ofNullable(proof);
  }

  /** When it comes, hours since mixing, and the rise that shows it. */
  public Moment in(RiseForecast forecast) {
    if (proof != null) {
      ShapeForecaster.Point shape = ShapeForecaster.of(forecast, proof).point();
      return new Moment(shape.hours(), shape.rise());
    }
    OptionalDouble percent = OptionalDouble.of(rise().orElseThrow().percent());
    return new Moment(
        forecast.hoursToRise(rise().orElseThrow()),
        new ShapeForecast.RiseRange(percent, percent, percent));
  }

  /**
   * The end of bulk fermentation.
   *
   * @param hours since mixing
   * @param rise that the sample jar shows then
   */
  @Internal
  public record Moment(TimeWindow hours, ShapeForecast.RiseRange rise) implements Serializable {}

  /** A forecaster for what is printed. */
  RiseForecaster printed(RiseForecaster forecaster) {
    return proof != null ? forecaster.keepingCurves() : forecaster;
  }

  /**
   * Likely hours from mixing: 0 where even shaping at once is too late, or what stands for never.
   */
  double likelyHours(
      RiseForecaster forecaster, DoughFormula formula, DoughTemperature temperature) {
    if (rise != null) {
      return forecaster
          .typical(formula, temperature)
          .runFast(LONGEST_HOURS)
          .hoursToRise(rise().orElseThrow())
          .orElse(NEVER_HOURS);
    }
    RiseForecast few =
        forecaster.keepingCurves().withMembers(LIKELY_MEMBERS).forecast(formula, temperature);
    ShapeForecaster shaper = ShapeForecaster.of(few, proof().orElseThrow());
    OptionalDouble likely = shaper.point().hours().likely();
    return likely.isPresent()
        ? likely.getAsDouble()
        : shaper.nightIfShapedAt(0).filter(night -> isTooFar(night, shaper.target())).isPresent()
            ? 0
            : NEVER_HOURS;
  }

  private static boolean isTooFar(ShapeForecast.Night night, Rise target) {
    double reached = night.riseAtBake().likely().orElse(0);
    boolean over = night.over().window().likely().orElse(NEVER_HOURS) <= night.ovenHours();
    return over || reached >= target.percent();
  }

  @Override
  protected List<?> parts() {
    return Arrays.asList(rise, proof);
  }

  @Override
  public String toString() {
    return proof == null
        ? "at a rise of " + Checks.plain(rise().orElseThrow().percent()) + " %"
        : "before a proof: " + proof;
  }
}
