package doughtide.core.loaf;

import doughtide.core.dough.DoughFormula;
import doughtide.core.dough.DoughProperties;
import doughtide.core.forecast.Quantiles;
import doughtide.core.forecast.RiseForecast;
import doughtide.core.forecast.TemperatureWarnings;
import doughtide.core.forecast.TimeWindow;
import doughtide.core.forecast.Warning;
import doughtide.core.quantity.Checks;
import doughtide.core.quantity.Rise;
import doughtide.core.quantity.Share;
import doughtide.core.quantity.Temperature;
import doughtide.core.rise.PieceCurve;
import doughtide.core.rise.PieceTemperature;
import doughtide.core.rise.RiseCurve;
import doughtide.core.rise.Unknowns;
import doughtide.core.thermal.Air;
import doughtide.core.thermal.Conduction;
import doughtide.core.thermal.Cover;
import doughtide.core.thermal.DoughHeat;
import doughtide.core.thermal.HeatSource;
import doughtide.core.thermal.PieceGeometry;
import doughtide.core.thermal.TemperatureTrace;
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

  private static final int SHELLS = 8;
  private static final double LIKELY_STEP_HOURS = 0.1;
  private static final double MEMBER_STEP_HOURS = 0.25;
  private static final double FOLLOW_HOURS = 72;
  private static final double WARM_COLD_CELSIUS = 10;
  private static final int NIGHT_MEMBERS = 64;
  private static final double FIRST_GAS_PART = 0.8; // of the target, for a first guess of size

  private final RiseForecast bulk;
  private final Proof proof;
  private final DoughFormula formula;
  private final Rise target;

  private ShapeForecaster(RiseForecast bulk, Proof proof) {
    this.bulk = bulk;
    this.proof = proof;
    this.formula = bulk.typical().formula();
    this.target = proof.target().orElse(formula.flour().targetRise());
  }

  /**
   * For a dough and what happens after its bulk fermentation.
   *
   * @param bulk the dough, forecast as if bulk fermentation went on
   * @param proof what happens after
   */
  public static ShapeForecaster of(RiseForecast bulk, Proof proof) {
    return new ShapeForecaster(bulk, proof);
  }

  /** Solves for the shape point. */
  public ShapeForecast forecast() {
    List<Warning> warnings = new ArrayList<>(ProofWarnings.of(bulk, proof));
    if (!bulk.isPossible()
        || warnings.stream().anyMatch(TemperatureWarnings::forbidsHours)
        || isColdWarmerThanDough()) {
      return impossible(warnings);
    }
    RiseCurve likelyBulk = bulk.typical().runFast(bulk.hours());
    PieceTemperature cooling = cooling(HeatSource.none(), target.fraction() * FIRST_GAS_PART);
    ShapeSearch search = search(likelyBulk, cooling, 0, LIKELY_STEP_HOURS);
    OptionalDouble first = search.find(likelyBulk.hoursToRise(half()).orElse(bulk.hours() / 2));
    if (first.isEmpty()) {
      warnings.add(ProofWarnings.noShapePoint(search.isTooLate(), target, proof));
      return impossible(warnings);
    }
    PieceTemperature refined = refined(likelyBulk, cooling, first.getAsDouble());
    double from =
        search(likelyBulk, refined, 0, LIKELY_STEP_HOURS)
            .find(first.getAsDouble())
            .orElse(first.getAsDouble());
    return solved(likelyBulk, refined, from, warnings);
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
    boolean forbidden =
        ProofWarnings.of(bulk, proof).stream().anyMatch(TemperatureWarnings::forbidsHours);
    if (!bulk.isPossible() || forbidden || isColdWarmerThanDough()) {
      return Optional.empty();
    }
    RiseCurve likelyBulk = bulk.typical().runFast(bulk.hours());
    double from = bulkEndHours + proof.restHours();
    PieceTemperature first = cooling(HeatSource.none(), target.fraction() * FIRST_GAS_PART);
    PieceTemperature refined = refined(likelyBulk, first, from);
    double shown = likelyBulk.riseAt(bulkEndHours).fraction();
    return Optional.of(night(likelyBulk, refined, from, shown));
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

  private Rise half() {
    return new Rise(target.fraction() / 2);
  }

  private ShapeForecast impossible(List<Warning> warnings) {
    return new ShapeForecast(
        TimeWindow.NEVER, ShapeForecast.RiseRange.NONE, target, Optional.empty(), warnings);
  }

  private ShapeSearch search(RiseCurve curve, PieceTemperature cooling, double shift, double step) {
    return new ShapeSearch(curve, proof, cooling, target, shift, step);
  }

  private ShapeForecast solved(
      RiseCurve likelyBulk, PieceTemperature cooling, double from, List<Warning> warnings) {
    double likelyRise = likelyBulk.riseAt(from - proof.restHours()).fraction();
    int size = bulk.curves().size();
    double[] hours = new double[size];
    double[] rises = new double[size];
    int known = 0;
    for (int i = 0; i < size; i++) {
      RiseCurve curve = bulk.curves().get(i);
      double guess =
          curve.hoursToRise(new Rise(likelyRise)).orElse(bulk.hours()) + proof.restHours();
      ShapeSearch search = search(curve, cooling, coldError(i), MEMBER_STEP_HOURS);
      OptionalDouble found = search.find(guess);
      hours[i] = found.isPresent() ? found.getAsDouble() - proof.restHours() : search.missing();
      if (found.isPresent()) {
        rises[known++] = curve.riseAt(hours[i]).percent();
      }
    }
    TimeWindow window = TimeWindow.of(hours);
    ShapeForecast.RiseRange shown = range(Arrays.copyOf(rises, known));
    double bulkEnd = window.likely().orElse(from - proof.restHours());
    double rise = shown.likely().orElse(likelyRise * 100) / 100;
    ShapeForecast.Night night = night(likelyBulk, cooling, bulkEnd + proof.restHours(), rise);
    warnings.addAll(ProofWarnings.ofNight(night, proof));
    return new ShapeForecast(window, shown, target, Optional.of(night), warnings);
  }

  private ShapeForecast.Night night(
      RiseCurve likelyBulk, PieceTemperature cooling, double from, double likelyRise) {
    double toOven = Math.max(proof.hoursToOven(from), 0);
    double follow = Math.min(cooling.hours(), Math.max(toOven, 1) + FOLLOW_HOURS);
    PieceCurve piece = PieceCurve.of(likelyBulk, from, cooling, 0, follow, LIKELY_STEP_HOURS);
    List<Loaf> members = members(cooling, likelyRise, follow);
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
        warmer(likelyBulk, cooling, from, toOven, follow),
        likelyBulk,
        piece);
  }

  private double ovenOf(PieceCurve piece) {
    double from = piece.hours()[0];
    return Math.max(from, from + proof.hoursToOven(from));
  }

  /** The first members of the ensemble, each shaped when its jar shows the likely rise. */
  private List<Loaf> members(PieceTemperature cooling, double likelyRise, double follow) {
    List<Loaf> members = new ArrayList<>();
    for (int i = 0; i < Math.min(NIGHT_MEMBERS, bulk.curves().size()); i++) {
      RiseCurve curve = bulk.curves().get(i);
      OptionalDouble shown = curve.hoursToRise(new Rise(likelyRise));
      double from = shown.orElse(bulk.hours()) + proof.restHours();
      if (from <= curve.endHours()) {
        PieceCurve piece =
            PieceCurve.of(curve, from, cooling, coldError(i), follow, MEMBER_STEP_HOURS);
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
      RiseCurve likelyBulk, PieceTemperature cooling, double from, double toOven, double follow) {
    if (proof.cold().isEmpty()) {
      return Optional.empty();
    }
    PieceCurve warm =
        PieceCurve.of(likelyBulk, from, cooling, WARMER_CELSIUS, follow, LIKELY_STEP_HOURS);
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

  /**
   * The second pass knows how much gas the piece holds and how much heat its fermentation gives.
   */
  private PieceTemperature refined(RiseCurve likelyBulk, PieceTemperature first, double from) {
    double toOven = Math.max(proof.hoursToOven(from), 1);
    PieceCurve piece = PieceCurve.of(likelyBulk, from, first, 0, first.hours(), LIKELY_STEP_HOURS);
    double meanRise = (piece.riseAt(from).fraction() + piece.riseAt(from + toOven).fraction()) / 2;
    return cooling(heat(piece, from, first.hours()), meanRise);
  }

  private HeatSource heat(PieceCurve piece, double from, double length) {
    int steps = (int) Math.ceil(length);
    double[] hours = new double[steps];
    double[] watts = new double[steps];
    for (int i = 0; i < steps; i++) {
      double width = Math.min(1, length - i);
      double made = piece.madeMolAt(from + i + width) - piece.madeMolAt(from + i);
      hours[i] = i;
      watts[i] =
          made * HeatSource.FERMENTATION_J_PER_MOL_CO2 / (width * 3600) / formula.doughPerFlour();
    }
    return HeatSource.steps(hours, watts);
  }

  private PieceTemperature cooling(HeatSource source, double rise) {
    double gas = 1 - (1 - Unknowns.USUAL_STARTING_AIR) / (1 + Math.max(rise, 0));
    Temperature around = proof.cold().or(proof::room).orElseThrow();
    double middle = (bulk.typical().temperature().startCelsius() + around.celsius()) / 2;
    DoughHeat heat =
        DoughHeat.of(
            DoughProperties.of(formula),
            Temperature.ofCelsius(middle),
            Share.ofFraction(Math.min(gas, 0.85)));
    PieceGeometry geometry = proof.form().shape().geometry(proof.mass(), heat.densityKgPerM3());
    Air air = proof.cold().isPresent() ? Air.REFRIGERATOR : Air.STILL_ROOM;
    double coefficient = geometry.surfaceWPerM2K(air, proof.form().wall(), Cover.COVERED);
    Conduction conduction =
        Conduction.of(geometry.form(), geometry.lengthMetres(), heat, coefficient, SHELLS);
    double longest = proof.ovenHour().orElse(proof.roomHours() + proof.holdHours());
    return PieceTemperature.of(
        conduction, surroundings(), proof.roomHours(), source, longest + FOLLOW_HOURS + 1);
  }

  private TemperatureTrace surroundings() {
    Optional<TemperatureTrace> cold = proof.cold().map(TemperatureTrace::steady);
    Optional<TemperatureTrace> room = proof.room().map(TemperatureTrace::steady);
    if (room.isPresent() && cold.isPresent() && proof.roomHours() > 0) {
      return room.get().then(proof.roomHours(), cold.get());
    }
    return cold.or(() -> room).orElseThrow();
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
      return bulk.typical().temperature().highestCelsius(bulk.hours());
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
