package doughtide.core.feeding;

import doughtide.core.Internal;
import doughtide.core.forecast.Distribution;
import doughtide.core.forecast.RiseForecast;
import doughtide.core.forecast.TimeWindow;
import doughtide.core.forecast.Warning;
import doughtide.core.quantity.Checks;
import doughtide.core.quantity.Rise;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * When a fed starter is ripe, how long it stays so and how high it gets. Hours count from feeding.
 */
@Internal
public final class FeedingForecast {
  private final Feeding feeding;
  private final RiseForecast rise;
  private final TimeWindow ripe;
  private final TimeWindow falling;
  private final TimeWindow fallen;

  FeedingForecast(Feeding feeding, RiseForecast rise) {
    this.feeding = feeding;
    this.rise = rise;
    this.ripe = rise.hoursToRipe();
    this.falling = rise.beginsToFall().window();
    this.fallen = rise.hoursToFallen();
  }

  /** What was fed. */
  public Feeding feeding() {
    return feeding;
  }

  /** The whole forecast of the jar, for charts. */
  public RiseForecast rise() {
    return rise;
  }

  /** What the user should know. */
  public List<Warning> warnings() {
    return rise.warnings();
  }

  /** When it has doubled, long before it is ripe; never for starters that rise less. */
  public TimeWindow doubled() {
    return rise.hoursToRise(Rise.ofPercent(100));
  }

  /** From when it is ripe: within 5 % of its greatest height. */
  public TimeWindow ripe() {
    return ripe;
  }

  /** When it begins to fall: its greatest height, the end of the ripe time. */
  public TimeWindow falling() {
    return falling;
  }

  /** When it has fallen 5 % below its greatest height: past its best. */
  public TimeWindow fallen() {
    return fallen;
  }

  /** How long it stays ripe, hours: shortest, likely and longest. */
  public TimeWindow ripeFor() {
    return rise.ripeFor().window();
  }

  /**
   * The hour to plan for: the middle between the likely hour from which it is ripe and the likely
   * hour at which it begins to fall. A starter a little slower or faster than most is then still
   * ripe. Empty if it is not ripe within the time looked at.
   */
  public OptionalDouble readyHours() {
    return ripe.likely().isEmpty() || falling.likely().isEmpty()
        ? OptionalDouble.empty()
        : OptionalDouble.of((ripe.likely().getAsDouble() + falling.likely().getAsDouble()) / 2);
  }

  /** Greatest height over the height after feeding; empty if too few reach it in the time. */
  public Optional<Heights> heights() {
    if (rise.beginsToFall().reached() < 0.5) {
      return Optional.empty();
    }
    Distribution percent = rise.greatestPercent();
    return Optional.of(new Heights(times(percent, 0.1), times(percent, 0.5), times(percent, 0.9)));
  }

  private static double times(Distribution percent, double level) {
    return 1 + percent.quantile(level).orElseThrow() / 100;
  }

  /**
   * The likely phase at an hour, by the likely hours of {@link #ripe}, {@link #falling} and {@link
   * #fallen}.
   *
   * @param hours since feeding, 0…240
   */
  public StarterPhase phaseAt(double hours) {
    Checks.inside("hour", hours, 0, 240, "h");
    return phase(hours, ripe.likely(), falling.likely(), fallen.likely());
  }

  /**
   * Share of the forecast's members that are in a phase at an hour, 0…1; over all phases the shares
   * add up to 1. 0 if no forecast is possible.
   *
   * @param phase the phase
   * @param hours since feeding, 0…240
   */
  public double shareIn(StarterPhase phase, double hours) {
    Checks.inside("hour", hours, 0, 240, "h");
    if (!rise.isPossible()) {
      return 0;
    }
    double isRipe = rise.ripe().probabilityBy(hours);
    double falls = rise.beginsToFall().probabilityBy(hours);
    double hasFallen = rise.fallen().probabilityBy(hours);
    return switch (phase) {
      case YOUNG -> 1 - isRipe;
      case RIPE -> isRipe - falls;
      case LATE -> falls - hasFallen;
      case PAST_BEST -> hasFallen;
    };
  }

  private static StarterPhase phase(
      double hours, OptionalDouble ripe, OptionalDouble falling, OptionalDouble fallen) {
    if (hours >= fallen.orElse(Double.POSITIVE_INFINITY)) {
      return StarterPhase.PAST_BEST;
    }
    if (hours >= falling.orElse(Double.POSITIVE_INFINITY)) {
      return StarterPhase.LATE;
    }
    return hours >= ripe.orElse(Double.POSITIVE_INFINITY) ? StarterPhase.RIPE : StarterPhase.YOUNG;
  }
}
