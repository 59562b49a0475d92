package doughtide.core.loaf;

import doughtide.core.Internal;
import doughtide.core.forecast.Distribution;
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
import java.util.function.ToDoubleFunction;
import java.util.stream.IntStream;

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

  private static final int CHOOSING_MEMBERS = 64;
  private static final int IN_A_ROW = 64;
  private static final double FOLLOW_HOURS = 72;
  private static final double WARMER_STEP_CELSIUS = 0.5;
  private static final int WARMER_STEPS = 8;
  private static final double LATER_STEP_HOURS = 1.0 / 6;
  private static final int LATER_STEPS = 18;

  private final RiseForecast bulk;
  private final Proof proof;
  private final LoafSettings settings;
  private final StrengthPlan strength;
  private final LoafModel loaf;
  private final Rise target;

  private ShapeForecaster(
      RiseForecast bulk, Proof proof, LoafSettings settings, StrengthPlan strength) {
    this.bulk = bulk;
    this.proof = proof;
    this.settings = settings;
    this.strength = strength;
    this.loaf = LoafModel.of(bulk.formula(), proof, settings).folded(strength);
    this.target = loaf.target();
  }

  /**
   * {@return a forecaster, for a dough and what happens after its bulk fermentation}
   *
   * @param bulk the dough, forecast as if bulk fermentation went on
   * @param proof what happens after
   */
  public static ShapeForecaster of(RiseForecast bulk, Proof proof) {
    return new ShapeForecaster(bulk, proof, LoafSettings.FULL, StrengthPlan.of(bulk.formula()));
  }

  /**
   * {@return the same, worked out more coarsely or more finely}
   *
   * @param newSettings shells, steps and members
   * @hidden
   */
  @Internal
  public ShapeForecaster with(LoafSettings newSettings) {
    return new ShapeForecaster(bulk, proof, newSettings, strength);
  }

  /**
   * {@return the same for a dough that is folded otherwise than is usual for it}
   *
   * @param folds when it is folded and how
   */
  public ShapeForecaster folded(StrengthPlan folds) {
    return new ShapeForecaster(bulk, proof, settings, Checks.given("folds", folds));
  }

  /**
   * The end of bulk fermentation.
   *
   * @param hours from mixing at which the jars of such doughs show the likely rise
   * @param rise that the jar shows then
   */
  public record Point(TimeWindow hours, ShapeForecast.RiseRange rise) implements Serializable {
    /** No shape point. */
    static final Point NONE = new Point(TimeWindow.NEVER, ShapeForecast.RiseRange.NONE);
  }

  /**
   * {@return the shape point alone, without the night after it; empty windows where there is none}
   */
  public Point point() {
    return isForbidden() ? Point.NONE : solvedAtOnce().point(bulk);
  }

  Proof proof() {
    return proof;
  }

  /** Whether no hours can be given at these temperatures. */
  boolean isForbidden() {
    return forbids(ProofWarnings.of(bulk, proof));
  }

  /**
   * {@return whether half of such doughs have a shape point, worked out coarsely: for a choice
   * among proofs}
   */
  public boolean isPossible() {
    return with(LoafSettings.SEARCH.withMembers(CHOOSING_MEMBERS))
        .point()
        .hours()
        .likely()
        .isPresent();
  }

  /** {@return the rise wanted at the oven} */
  public Rise target() {
    return target;
  }

  /**
   * Solves for the shape point.
   *
   * @return when to shape, and how the loaf then stands at the oven
   */
  public ShapeForecast forecast() {
    List<Warning> warnings = new ArrayList<>(ProofWarnings.of(bulk, proof));
    if (forbids(warnings)) {
      return impossible(warnings);
    }
    MemberShapes solved = solved();
    return forecast(solved, bulk, solved.each(MemberShape::hours), warnings);
  }

  /**
   * The same where it is known when the members are shaped. This forecaster follows doughs that
   * count alike.
   *
   * @param known of weighted members
   * @param weighted their forecast
   * @param ends when the doughs of this forecaster are shaped, one a member
   */
  ShapeForecast forecast(MemberShapes known, RiseForecast weighted, double[] ends) {
    List<Warning> warnings = new ArrayList<>(ProofWarnings.of(bulk, proof));
    return forbids(warnings) ? impossible(warnings) : forecast(known, weighted, ends, warnings);
  }

  private ShapeForecast forecast(
      MemberShapes solved, RiseForecast weighted, double[] ends, List<Warning> warnings) {
    if (solved.whyMissing() != ShapeSearch.Missing.NOTHING) {
      warnings.add(ProofWarnings.noShapePoint(solved.whyMissing(), target, proof));
      return impossible(warnings);
    }
    Point point = solved.point(weighted);
    ShapeForecast.RiseRange shown = point.rise();
    double bulkEnd = point.hours().likely().orElseThrow();
    Rise jar = Rise.ofPercent(shown.likely().orElseThrow());
    ShapeForecast.Night night =
        night(bulkEnd + proof.restHours(), jar, curve -> shapedWhen(curve, jar));
    warnings.addAll(ProofWarnings.ofNight(night, target, proof));
    return new ShapeForecast(
        solved.shownBy(weighted, shown),
        Arrays.stream(ends).boxed().toList(),
        shown,
        ShapeForecast.RiseRange.of(solved.over(MemberShape::loafPercent)),
        target,
        Optional.of(night),
        spoils(jar),
        JarRule.of(bulk.curves(), bulk.ensemble().weights(), ends, bulkEnd),
        warnings);
  }

  /** What the first members of the ensemble say, each with its weight. */
  private Distribution weighted(double[] ofMembers) {
    return Distribution.of(ofMembers, Arrays.copyOf(bulk.ensemble().weights(), ofMembers.length));
  }

  private MemberShapes solved() {
    return shapes(solved(0, solving()));
  }

  /** Some members after the other on each thread; within the accuracy of the search the same. */
  private MemberShapes solvedAtOnce() {
    int all = solving();
    List<Integer> firsts =
        IntStream.iterate(0, first -> first < all, first -> first + IN_A_ROW).boxed().toList();
    return shapes(
        bulk
            .ofMembers(firsts, (first, curve) -> solved(first, Math.min(first + IN_A_ROW, all)))
            .stream()
            .flatMap(List::stream)
            .toList());
  }

  private int solving() {
    return Math.min(bulk.curves().size(), settings.members());
  }

  private MemberShapes shapes(List<MemberShape> members) {
    return new MemberShapes(members, Arrays.copyOf(bulk.ensemble().weights(), members.size()));
  }

  private List<MemberShape> solved(int from, int to) {
    List<MemberShape> shapes = new ArrayList<>();
    Rise jar = firstGuess();
    for (int i = from; i < to; i++) {
      MemberShape shape = MemberShape.of(bulk.curves().get(i), proof, loaf, LoafScores.of(i), jar);
      shapes.add(shape);
      // The next member's first guess: the jar of the one before.
      jar = shape.isFound() ? Rise.ofPercent(shape.jarPercent()) : jar;
    }
    return shapes;
  }

  private Rise firstGuess() {
    return new Rise(target.fraction() / 2);
  }

  /** When a member is shaped. */
  MemberShape ofMember(int member, RiseCurve curve) {
    return MemberShape.of(curve, proof, loaf, LoafScores.of(member), firstGuess());
  }

  /** The last end of bulk fermentation of which a loaf can be looked at. */
  double lastBulkEnd(RiseCurve curve) {
    double beforeOven = proof.ovenHour().orElse(Double.POSITIVE_INFINITY) - proof.roomHours();
    return Math.max(Math.min(curve.endHours(), beforeOven) - proof.restHours(), 0);
  }

  /** What the loaf of a member has risen at the oven if its bulk fermentation ends at an hour. */
  double ovenPercent(int member, RiseCurve curve, double bulkEndHours) {
    double from = bulkEndHours + proof.restHours();
    double hours = Math.max(proof.hoursToOven(from), settings.stepHours() / 10);
    return loaf.riseAtEnd(curve, from, LoafScores.of(member), hours).percent();
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
    return nightIfShaped(bulkEndHours, jar -> curve -> shapedWhen(curve, jar));
  }

  /**
   * What becomes of a loaf whose bulk fermentation has ended at an hour of the clock, whatever its
   * jar showed: every member of the ensemble is shaped then, as far as it has risen.
   *
   * @param bulkEndHours 0 to the end of the forecast less the bench rest
   * @return the night; empty if no hours can be given at these temperatures, or if the cold is
   *     never colder than the dough and so holds nothing back
   */
  public Optional<ShapeForecast.Night> nightIfShapedByClock(double bulkEndHours) {
    return nightIfShaped(bulkEndHours, jar -> curve -> bulkEndHours + proof.restHours());
  }

  /** Each member is in its basket at an hour that its jar's likely rise may tell. */
  private Optional<ShapeForecast.Night> nightIfShaped(
      double bulkEndHours, Function<Rise, ToDoubleFunction<RiseCurve>> basket) {
    Checks.inRange(
        "end of bulk fermentation", bulkEndHours, 0, bulk.hours() - proof.restHours(), "h");
    if (forbids(ProofWarnings.of(bulk, proof))) {
      return Optional.empty();
    }
    Rise likely = Rise.ofPercent(bulk.likelyPercentAt(bulkEndHours));
    return Optional.of(night(bulkEndHours + proof.restHours(), likely, basket.apply(likely)));
  }

  /**
   * Until when the likely dough is too early, right and late to be shaped.
   *
   * @param shape what this forecaster gave
   * @return the hours; empty if there is no shape point
   * @hidden
   */
  @Internal
  public Optional<ShapeStages> stages(ShapeForecast shape) {
    return shape
        .likely()
        .map(
            night ->
                new StageSearch(bulk.formula(), proof, settings, night.bulk(), night.scores())
                    .stages(night.bulkEndHours(), shape.target()));
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

  private ShapeForecast impossible(List<Warning> warnings) {
    return new ShapeForecast(
        Distribution.NEVER,
        List.of(),
        ShapeForecast.RiseRange.NONE,
        ShapeForecast.RiseRange.NONE,
        target,
        Optional.empty(),
        ShapeForecast.Spoils.NOTHING,
        new JarRule(List.of()),
        warnings);
  }

  private ShapeForecast.Spoils spoils(Rise jar) {
    OptionalDouble warmer =
        proof.cold().isEmpty()
            ? OptionalDouble.empty()
            : SpoilSearch.smallest(
                (member, kelvin) -> isTooFar(loaf.warmer(kelvin), member, jar, 0),
                followed(),
                WARMER_STEP_CELSIUS,
                WARMER_STEPS);
    OptionalDouble later =
        SpoilSearch.smallest(
            (member, hours) -> isTooFar(loaf, member, jar, hours),
            followed(),
            LATER_STEP_HOURS,
            LATER_STEPS);
    return new ShapeForecast.Spoils(warmer, later);
  }

  private int followed() {
    return Math.min(settings.followed(), bulk.curves().size());
  }

  private boolean isTooFar(LoafModel model, int member, Rise jar, double later) {
    RiseCurve curve = bulk.curves().get(member);
    double from = Math.min(shapedWhen(curve, jar) + later, curve.endHours());
    double hours = proof.hoursToOven(from);
    LoafLimits right = LoafLimits.right(target);
    return hours <= 0
        || right.until(model.run(curve, from, LoafScores.of(member), hours)).isPresent();
  }

  /** When a member is shaped that waits for its jar to show a rise. */
  private double shapedWhen(RiseCurve curve, Rise jar) {
    return curve.hoursToRise(jar).orElse(bulk.hours()) + proof.restHours();
  }

  private ShapeForecast.Night night(double from, Rise jar, ToDoubleFunction<RiseCurve> basket) {
    double toOven = Math.max(proof.hoursToOven(from), 0);
    double follow = toOven + FOLLOW_HOURS;
    List<PieceCurve> members = members(loaf, basket, follow);
    LoafLimits usable = LoafLimits.usable(target);
    ShapeForecast.RiseRange baked = ShapeForecast.RiseRange.of(atOven(members));
    int typical = nearest(from, toOven, jar, baked.likely().orElse(target.percent()));
    RiseCurve likelyBulk = bulk.curves().get(typical);
    LoafScores scores = LoafScores.of(typical);
    return new ShapeForecast.Night(
        from - proof.restHours(),
        from,
        proof.cold().isPresent()
            ? OptionalDouble.of(from + proof.roomHours())
            : OptionalDouble.empty(),
        from + toOven,
        baked,
        when(members, usable::from),
        when(members, usable::until),
        when(members, PieceCurve::hoursToOver),
        warmer(basket, follow),
        likelyBulk,
        scores,
        loaf.run(likelyBulk, from, scores, follow),
        members,
        Arrays.stream(bulk.ensemble().weights()).limit(members.size()).boxed().toList());
  }

  /**
   * The member that stands for all: its jar when shaped and its loaf at the oven are likely ones.
   */
  private int nearest(double from, double toOven, Rise jar, double likelyPercent) {
    int best = 0;
    double least = Double.POSITIVE_INFINITY;
    for (int i = 0; i < followed(); i++) {
      RiseCurve curve = bulk.curves().get(i);
      double hours = Math.max(toOven, settings.stepHours());
      double off =
          Math.abs(curve.riseAt(from - proof.restHours()).percent() - jar.percent())
              + Math.abs(
                  loaf.riseAtEnd(curve, from, LoafScores.of(i), hours).percent() - likelyPercent);
      if (off < least) {
        least = off;
        best = i;
      }
    }
    return best;
  }

  private double ovenOf(PieceCurve piece) {
    double from = piece.hours()[0];
    return Math.max(from, from + proof.hoursToOven(from));
  }

  /** The first members of the ensemble, each put into its basket at an hour of its own. */
  private List<PieceCurve> members(
      LoafModel model, ToDoubleFunction<RiseCurve> basket, double follow) {
    List<PieceCurve> members = new ArrayList<>();
    for (int i = 0; i < followed(); i++) {
      RiseCurve curve = bulk.curves().get(i);
      double from = Math.min(basket.applyAsDouble(curve), curve.endHours());
      members.add(model.run(curve, from, LoafScores.of(i), follow));
    }
    return members;
  }

  /** Rises at the oven, percent. */
  private Distribution atOven(List<PieceCurve> members) {
    return weighted(
        members.stream().mapToDouble(each -> each.riseAt(ovenOf(each)).percent()).toArray());
  }

  private Distribution when(List<PieceCurve> members, Function<PieceCurve, OptionalDouble> event) {
    return weighted(
        members.stream()
            .mapToDouble(each -> event.apply(each).orElse(Double.POSITIVE_INFINITY))
            .toArray());
  }

  private Optional<ShapeForecast.WarmerCold> warmer(
      ToDoubleFunction<RiseCurve> basket, double follow) {
    if (proof.cold().isEmpty()) {
      return Optional.empty();
    }
    List<PieceCurve> warm = members(loaf.warmer(WARMER_CELSIUS), basket, follow);
    LoafLimits usable = LoafLimits.usable(target);
    return Optional.of(
        new ShapeForecast.WarmerCold(
            WARMER_CELSIUS,
            atOven(warm).quantile(0.5).orElseThrow(),
            when(warm, usable::until).quantile(0.5)));
  }
}
