package doughtide.core.loaf;

import doughtide.core.dough.DoughFormula;
import doughtide.core.dough.Flour;
import doughtide.core.flourtrial.AbsorptionPrior;
import doughtide.core.forecast.RiseForecast;
import doughtide.core.forecast.TimeWindow;
import doughtide.core.quantity.Checks;
import doughtide.core.quantity.Rise;
import doughtide.core.quantity.SentRecord;
import doughtide.core.quantity.Share;
import java.io.Serializable;
import java.util.ArrayList;
import java.util.List;
import java.util.OptionalDouble;

/**
 * How a dough gets its strength: autolyse and folds. All rules are common practice, no source; the
 * figures are starting values. The wetter a dough against the limit of its flour, the more folds it
 * needs; a dough that is at least half of flour without gluten, such as rye, needs none.
 *
 * @param autolyseHours flour and water alone before mixing, 0…4 h
 * @param folds folds wanted, 0…12
 * @param leastFolds folds it cannot do without, 0…{@code folds}
 * @param spacingHours from mixing to the first fold and from fold to fold, 0.25…3 h: between two
 *     folds a dough must slacken
 * @param pointsBelowLimit points of water below the limit of the flour, negative above it; empty
 *     where there is too little gluten to fold
 */
public record StrengthPlan(
    double autolyseHours,
    int folds,
    int leastFolds,
    double spacingHours,
    OptionalDouble pointsBelowLimit)
    implements Serializable {
  /**
   * Rise by which the last fold must be done, so that what a jar or tub shows afterwards is the
   * dough's own rise and not what folding left of it.
   */
  public static final double LAST_FOLD_RISE = 0.15;

  private static final double LEAST_GLUTEN = 0.5;
  private static final double MUCH_BRAN = 0.06;
  private static final double USUAL_SPACING_HOURS = 0.5;
  private static final double CLOSEST_HOURS = 20.0 / 60;
  private static final double WIDEST_HOURS = 1;
  private static final double FIRM_POINTS = 8;
  private static final double SLACK_POINTS = 2;

  /**
   * Checks every range.
   *
   * @param autolyseHours flour and water alone before mixing, 0…4 h
   * @param folds folds wanted, 0…12
   * @param leastFolds folds it cannot do without, 0…{@code folds}
   * @param spacingHours from mixing to the first fold and from fold to fold, 0.25…3 h: between two
   *     folds a dough must slacken
   * @param pointsBelowLimit points of water below the limit of the flour, negative above it
   */
  public StrengthPlan {
    Checks.given("points below limit", pointsBelowLimit);
    Checks.inRange("autolyse", autolyseHours, 0, 4, "h");
    Checks.inRange("folds", folds, 0, 12, "");
    Checks.inRange("folds it cannot do without", leastFolds, 0, folds, "");
    Checks.inRange("time between folds", spacingHours, 0.25, 3, "h");
  }

  /**
   * {@return a plan of folds, by the limit that graded bowls gave, else by the one that is expected
   * of the flour}
   *
   * @param dough its flour and hydration
   */
  public static StrengthPlan of(DoughFormula dough) {
    Share limit =
        dough
            .gradedLimit()
            .orElseGet(() -> Share.ofPercent(AbsorptionPrior.of(dough.flour()).limitPercent()));
    return of(dough.flour(), dough.hydration(), limit);
  }

  /**
   * {@return a plan of folds, by the limit of the flour}
   *
   * @param flour the flour of the dough
   * @param hydration all water over all flour
   * @param limit hydration from which the flour's dough tears, as graded bowls gave it
   */
  public static StrengthPlan of(Flour flour, Share hydration, Share limit) {
    if (flour.gluten() < LEAST_GLUTEN) {
      return new StrengthPlan(0, 0, 0, USUAL_SPACING_HOURS, OptionalDouble.empty());
    }
    double below = limit.percent() - hydration.percent();
    int folds = below > FIRM_POINTS ? 2 : below > SLACK_POINTS ? 3 : 4;
    double autolyse = flour.composition().fibre() > MUCH_BRAN ? 1.0 : 0.5;
    return new StrengthPlan(
        autolyse, folds, folds - 1, USUAL_SPACING_HOURS, OptionalDouble.of(below));
  }

  /**
   * One fold.
   *
   * @param hours after mixing
   * @param kind how
   */
  public record Fold(double hours, FoldKind kind) implements Serializable {
    /**
     * Refuses nothing where something is needed.
     *
     * @param hours after mixing
     * @param kind how
     */
    public Fold {
      Checks.given("kind", kind);
    }
  }

  /** {@return all folds in order} */
  public List<Fold> steps() {
    List<Fold> steps = new ArrayList<>();
    for (int number = 1; number <= folds; number++) {
      steps.add(new Fold(number * spacingHours, kind(number)));
    }
    return List.copyOf(steps);
  }

  /** A slack dough is slapped first; later folds are gentle, for they must not press out gas. */
  private FoldKind kind(int number) {
    double below = pointsBelowLimit.orElse(FIRM_POINTS);
    if (number == 1) {
      return below > SLACK_POINTS ? FoldKind.STRETCH : FoldKind.SLAP;
    }
    if (below > FIRM_POINTS) {
      return FoldKind.STRETCH;
    }
    return number == 2 && below > SLACK_POINTS ? FoldKind.LAMINATION : FoldKind.COIL;
  }

  /**
   * {@return points of water to add until the dough needs one fold more; empty at the most folds}
   */
  public OptionalDouble pointsToOneMore() {
    double below = pointsBelowLimit.orElse(SLACK_POINTS);
    return below <= SLACK_POINTS
        ? OptionalDouble.empty()
        : OptionalDouble.of(below - (below > FIRM_POINTS ? FIRM_POINTS : SLACK_POINTS));
  }

  /**
   * {@return points of water to leave out until one fold less is enough; empty at the fewest folds}
   */
  public OptionalDouble pointsToOneFewer() {
    double below = pointsBelowLimit.orElse(Double.POSITIVE_INFINITY);
    return below > FIRM_POINTS
        ? OptionalDouble.empty()
        : OptionalDouble.of((below > SLACK_POINTS ? FIRM_POINTS : SLACK_POINTS) - below);
  }

  /**
   * {@return the same in the time that the dough leaves: closer together in a quick one, down to 20
   * minutes, then fewer; up to an hour apart in a slow one, where the last fold comes half-way to
   * that hour}
   *
   * @param latestHours hour after mixing by which the last fold must be done
   */
  public StrengthPlan within(double latestHours) {
    if (lastFoldHours() > latestHours) {
      int fitting = (int) Math.floor(latestHours / CLOSEST_HOURS + 1e-9);
      int number = Math.max(0, Math.min(folds, fitting));
      double spacing = number == 0 ? CLOSEST_HOURS : latestHours / number;
      return new StrengthPlan(
          autolyseHours,
          number,
          Math.min(leastFolds, number),
          Math.max(CLOSEST_HOURS, Math.min(USUAL_SPACING_HOURS, spacing)),
          pointsBelowLimit);
    }
    return withSpacing(Math.max(spacingHours, Math.min(WIDEST_HOURS, latestHours / 2 / folds)));
  }

  /**
   * {@return the same for a bulk fermentation: the last fold is done before the liveliest of ten
   * doughs has risen by {@link #LAST_FOLD_RISE}, and half an hour before the likely end}
   *
   * @param bulk the dough
   * @param end hours to the likely end of bulk fermentation, if it is known
   */
  public StrengthPlan during(RiseForecast bulk, OptionalDouble end) {
    TimeWindow risen = bulk.hoursToRise(new Rise(LAST_FOLD_RISE));
    double latest = risen.early().orElse(bulk.hours() / 2);
    return within(Math.min(latest, end.orElse(bulk.hours()) - USUAL_SPACING_HOURS));
  }

  /** {@return hours from mixing to the last fold} */
  public double lastFoldHours() {
    return folds * spacingHours;
  }

  /** {@return the same without autolyse, where nobody is there to start it} */
  public StrengthPlan withoutAutolyse() {
    return new StrengthPlan(0, folds, leastFolds, spacingHours, pointsBelowLimit);
  }

  /**
   * {@return the same with folds so far apart}
   *
   * @param hours from one fold to the next, more than 0
   */
  public StrengthPlan withSpacing(double hours) {
    return new StrengthPlan(autolyseHours, folds, leastFolds, hours, pointsBelowLimit);
  }

  /**
   * {@return the same with fewer folds, not fewer than it needs}
   *
   * @param number how many, at least those that it needs
   */
  public StrengthPlan withFolds(int number) {
    return new StrengthPlan(
        autolyseHours, Math.max(number, leastFolds), leastFolds, spacingHours, pointsBelowLimit);
  }

  private Object writeReplace() {
    return SentRecord.of(this);
  }
}
