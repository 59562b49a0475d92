package doughtide.core.loaf;

import doughtide.core.forecast.Quantiles;
import doughtide.core.forecast.RiseForecast;
import doughtide.core.forecast.TemperatureWarnings;
import doughtide.core.forecast.TimeWindow;
import doughtide.core.forecast.Warning;
import doughtide.core.quantity.Checks;
import doughtide.core.quantity.Rise;
import doughtide.core.rise.PieceCurve;
import doughtide.core.rise.RiseCurve;
import java.io.Serializable;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.function.Function;

/**
 * Finds the end of bulk fermentation from which the loaf meets its target at the oven, on the
 * likely path and for every member of a forecast.
 *
 * <pre>{@code
 * ShapeForecast shape = ShapeForecaster.of(forecast, Proof.inCold(Temperature.ofCelsius(4), 12)).forecast();
 * }</pre>
 */
public final class ShapeForecaster {
  /** How much warmer than believed a cold is tried, K. */
  public static final double WARMER_CELSIUS = 2;

  private static final double FOLLOW_HOURS = 72;
  private static final double WARM_COLD_CELSIUS = 10;

  private final RiseForecast bulk;
  private final Proof proof;
  private final LoafSettings settings;
  private final LoafModel loaf;
  private final Rise target;

  private ShapeForecaster(RiseForecast bulk, Proof proof, LoafSettings settings) {
    this.bulk = bulk;
    this.proof = proof;
    this.settings = settings;
    this.loaf = LoafModel.of(bulk.formula(), proof, settings);
    this.target = loaf.target();
  }

  /**
   * For a dough and what happens after its bulk fermentation.
   *
   * @param bulk the dough, forecast as if bulk fermentation went on
   * @param proof what happens after
   */
  public static ShapeForecaster of(RiseForecast bulk, Proof proof) {
    return new ShapeForecaster(bulk, proof, LoafSettings.FULL);
  }

  /** The same, worked out more coarsely or more finely. */
  public ShapeForecaster with(LoafSettings newSettings) {
    return new ShapeForecaster(bulk, proof, newSettings);
  }

  /**
   * The end of bulk fermentation.
   *
   * @param hours from mixing
   * @param rise that the dough shows then
   */
  public record Point(TimeWindow hours, ShapeForecast.RiseRange rise) implements Serializable {
    private static final Point NONE = new Point(TimeWindow.NEVER, ShapeForecast.RiseRange.NONE);
  }

  /** The shape point alone, without the night after it; empty windows where there is none. */
  public Point point() {
    if (forbids(ProofWarnings.of(bulk, proof))) {
      return Point.NONE;
    }
    RiseCurve likelyBulk = bulk.typical().runFast(bulk.hours());
    OptionalDouble from = search(likelyBulk, 0).find(firstGuess(likelyBulk));
    return from.isEmpty() ? Point.NONE : point(likelyBulk, from.getAsDouble());
  }

  /** Solves for the shape point. */
  public ShapeForecast forecast() {
    List<Warning> warnings = new ArrayList<>(ProofWarnings.of(bulk, proof));
    if (forbids(warnings)) {
      return impossible(warnings);
    }
    RiseCurve likelyBulk = bulk.typical().runFast(bulk.hours());
    ShapeSearch search = search(likelyBulk, 0);
    OptionalDouble from = search.find(firstGuess(likelyBulk));
    if (from.isEmpty()) {
      warnings.add(ProofWarnings.noShapePoint(search.isTooLate(), target, proof));
      return impossible(warnings);
    }
    return solved(likelyBulk, from.getAsDouble(), warnings);
  }

  private boolean forbids(List<Warning> warnings) {
    return !bulk.isPossible()
        || warnings.stream().anyMatch(TemperatureWarnings::forbidsHours)
        || isColdWarmerThanDough();
  }

  /**
   * What becomes of the loaf if bulk fermentation ends at an hour, whatever the target asks for;
   * the members of the ensemble are shaped at the same rise as the likely dough.
   *
   * @param bulkEndHours 0 to the end of the forecast less the bench rest
   * @return the night; empty if no hours can be given at these temperatures, or if the cold is
   *     never colder than the dough and so holds nothing back
   */
  public Optional<ShapeForecast.Night> nightIfShapedAt(double bulkEndHours) {
    Checks.inRange(
        "end of bulk fermentation", bulkEndHours, 0, bulk.hours() - proof.restHours(), "h");
    if (forbids(ProofWarnings.of(bulk, proof))) {
      return Optional.empty();
    }
    RiseCurve likelyBulk = bulk.typical().runFast(bulk.hours());
    double shown = likelyBulk.riseAt(bulkEndHours).fraction();
    return Optional.of(night(likelyBulk, bulkEndHours + proof.restHours(), shown));
  }

  /**
   * A cold that warms the dough holds nothing back, so no shape point is made up for it. A dough
   * that was in the cold before is as cold as it at most.
   */
  private boolean isColdWarmerThanDough() {
    return proof
        .cold()
        .filter(cold -> cold.celsius() >= ProofWarnings.warmestDough(bulk))
        .isPresent();
  }

  private double firstGuess(RiseCurve likelyBulk) {
    return likelyBulk.hoursToRise(new Rise(target.fraction() / 2)).orElse(bulk.hours() / 2);
  }

  private ShapeForecast impossible(List<Warning> warnings) {
    return new ShapeForecast(
        TimeWindow.NEVER, ShapeForecast.RiseRange.NONE, target, Optional.empty(), warnings);
  }

  private ShapeSearch search(RiseCurve curve, double shift) {
    return new ShapeSearch(curve, proof, loaf, shift);
  }

  private Point point(RiseCurve likelyBulk, double from) {
    Rise likelyRise = likelyBulk.riseAt(from - proof.restHours());
    int size = Math.min(bulk.curves().size(), settings.members());
    double[] hours = new double[size];
    double[] rises = new double[size];
    int known = 0;
    for (int i = 0; i < size; i++) {
      RiseCurve curve = bulk.curves().get(i);
      double guess = curve.hoursToRise(likelyRise).orElse(bulk.hours()) + proof.restHours();
      ShapeSearch search = search(curve, coldError(i));
      OptionalDouble found = search.find(guess);
      hours[i] = found.isPresent() ? found.getAsDouble() - proof.restHours() : search.missing();
      if (found.isPresent()) {
        rises[known++] = curve.riseAt(hours[i]).percent();
      }
    }
    TimeWindow window = TimeWindow.of(hours);
    return new Point(window, onLikelyLine(range(Arrays.copyOf(rises, known)), window));
  }

  /** The likely rise is the one that the likely jar shows at the likely hour. */
  private ShapeForecast.RiseRange onLikelyLine(ShapeForecast.RiseRange rises, TimeWindow hours) {
    if (rises.likely().isEmpty() || hours.likely().isEmpty()) {
      return rises;
    }
    double likely = bulk.likelyPercentAt(Math.min(hours.likely().getAsDouble(), bulk.hours()));
    double low = Math.min(rises.low().orElse(likely), likely);
    double high = Math.max(rises.high().orElse(likely), likely);
    return new ShapeForecast.RiseRange(
        OptionalDouble.of(low), OptionalDouble.of(likely), OptionalDouble.of(high));
  }

  private ShapeForecast solved(RiseCurve likelyBulk, double from, List<Warning> warnings) {
    double likelyRise = likelyBulk.riseAt(from - proof.restHours()).fraction();
    Point point = point(likelyBulk, from);
    double bulkEnd = point.hours().likely().orElse(from - proof.restHours());
    double rise = point.rise().likely().orElse(likelyRise * 100) / 100;
    ShapeForecast.Night night = night(likelyBulk, bulkEnd + proof.restHours(), rise);
    warnings.addAll(ProofWarnings.ofNight(night, proof));
    return new ShapeForecast(point.hours(), point.rise(), target, Optional.of(night), warnings);
  }

  private ShapeForecast.Night night(RiseCurve likelyBulk, double from, double likelyRise) {
    double toOven = Math.max(proof.hoursToOven(from), 0);
    double follow = toOven + FOLLOW_HOURS;
    PieceCurve piece = loaf.run(likelyBulk, from, 0, follow);
    List<Loaf> members = members(likelyRise, follow);
    double[] atOven =
        members.stream()
            .map(Loaf::piece)
            .mapToDouble(each -> each.riseAt(ovenOf(each)).percent())
            .toArray();
    return new ShapeForecast.Night(
        from - proof.restHours(),
        from,
        proof.cold().isPresent()
            ? OptionalDouble.of(from + proof.roomHours())
            : OptionalDouble.empty(),
        from + toOven,
        range(atOven),
        when(members, Loaf::bakeFrom),
        when(members, Loaf::bakeUntil),
        when(members, Loaf::over),
        warmer(likelyBulk, from, toOven, follow),
        likelyBulk,
        piece);
  }

  private double ovenOf(PieceCurve piece) {
    double from = piece.hours()[0];
    return Math.max(from, from + proof.hoursToOven(from));
  }

  /** The first members of the ensemble, each shaped when its jar shows the likely rise. */
  private List<Loaf> members(double likelyRise, double follow) {
    List<Loaf> members = new ArrayList<>();
    for (int i = 0; i < Math.min(settings.followed(), bulk.curves().size()); i++) {
      RiseCurve curve = bulk.curves().get(i);
      OptionalDouble shown = curve.hoursToRise(new Rise(likelyRise));
      double from = shown.orElse(bulk.hours()) + proof.restHours();
      if (from <= curve.endHours()) {
        PieceCurve piece = loaf.run(curve, from, coldError(i), follow);
        members.add(new Loaf(piece, UsableRise.of(target, curve)));
      }
    }
    return members;
  }

  /** A loaf and the rises between which it is good to bake. */
  private record Loaf(PieceCurve piece, UsableRise usable) {
    OptionalDouble bakeFrom() {
      return usable.from(piece);
    }

    OptionalDouble bakeUntil() {
      return usable.until(piece);
    }

    OptionalDouble over() {
      return piece.hoursToOver();
    }
  }

  private static TimeWindow when(List<Loaf> members, Function<Loaf, OptionalDouble> event) {
    return TimeWindow.of(
        members.stream()
            .mapToDouble(each -> event.apply(each).orElse(Double.POSITIVE_INFINITY))
            .toArray());
  }

  private Optional<ShapeForecast.WarmerCold> warmer(
      RiseCurve likelyBulk, double from, double toOven, double follow) {
    if (proof.cold().isEmpty()) {
      return Optional.empty();
    }
    PieceCurve warm = loaf.run(likelyBulk, from, WARMER_CELSIUS, follow);
    return Optional.of(
        new ShapeForecast.WarmerCold(
            WARMER_CELSIUS,
            warm.riseAt(from + toOven).percent(),
            UsableRise.of(target, likelyBulk).until(warm)));
  }

  private static ShapeForecast.RiseRange range(double[] percents) {
    if (percents.length == 0) {
      return ShapeForecast.RiseRange.NONE;
    }
    double[] sorted = percents.clone();
    Arrays.sort(sorted);
    return new ShapeForecast.RiseRange(
        Quantiles.finite(sorted, 0.1),
        Quantiles.finite(sorted, 0.5),
        Quantiles.finite(sorted, 0.9));
  }

  /**
   * Error of the cold's temperature for a member: normal scores of a van der Corput sequence in
   * base 3.
   */
  private double coldError(int member) {
    return proof.cold().isEmpty() ? 0 : ColdScores.celsius(member);
  }

  /** What the proof brings along to be said. */
  private static final class ProofWarnings {
    private ProofWarnings() {}

    static List<Warning> of(RiseForecast bulk, Proof proof) {
      List<Warning> warnings = new ArrayList<>();
      proof
          .room()
          .filter(room -> room.celsius() >= TemperatureWarnings.WARMEST_GROWTH_CELSIUS)
          .ifPresent(room -> warnings.add(TemperatureWarnings.tooWarm(room.celsius())));
      proof.cold().ifPresent(cold -> addCold(warnings, bulk, cold.celsius()));
      return warnings;
    }

    static double warmestDough(RiseForecast bulk) {
      return bulk.temperature().highestCelsius(bulk.hours());
    }

    private static void addCold(List<Warning> warnings, RiseForecast bulk, double cold) {
      if (cold <= TemperatureWarnings.FREEZING_CELSIUS) {
        warnings.add(TemperatureWarnings.freezing(cold));
        return;
      }
      double dough = warmestDough(bulk);
      if (cold >= dough) {
        warnings.add(Warning.Kind.NOT_COOLING.with(cold, dough));
      } else if (cold > WARM_COLD_CELSIUS) {
        warnings.add(Warning.Kind.BARELY_COOLING.with(cold));
      }
    }

    static Warning noShapePoint(boolean tooLate, Rise target, Proof proof) {
      if (!tooLate) {
        return Warning.Kind.NOT_REACHED.with(Math.rint(target.percent()));
      }
      Warning.Kind past =
          proof.cold().isPresent()
              ? Warning.Kind.PAST_TARGET_IN_COLD
              : Warning.Kind.PAST_TARGET_IN_ROOM;
      return past.with(Math.rint(target.percent()));
    }

    static List<Warning> ofNight(ShapeForecast.Night night, Proof proof) {
      OptionalDouble until = night.bakeUntil().early();
      if (until.isEmpty() || until.getAsDouble() >= night.ovenHours()) {
        return List.of();
      }
      return List.of(
          proof.cold().isPresent()
              ? Warning.Kind.SOME_TOO_FAR_IN_COLD.with()
              : Warning.Kind.SOME_TOO_FAR_IN_ROOM.with());
    }
  }
}
