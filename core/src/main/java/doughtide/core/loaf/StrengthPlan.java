package doughtide.core.loaf;

import doughtide.core.dough.Flour;
import doughtide.core.quantity.Checks;
import doughtide.core.quantity.Share;

/**
 * How a dough gets its strength: autolyse and folds. All rules are common practice, no source; the
 * figures are starting values. The wetter a dough against the limit of its flour, the more folds it
 * needs; a flour without gluten needs none.
 *
 * @param autolyseHours flour and water alone before mixing, 0…4 h
 * @param folds folds wanted, 0…12
 * @param leastFolds folds it cannot do without, 0…{@code folds}
 * @param spacingHours from mixing to the first fold and from fold to fold, 0.1…3 h
 * @param reason why, one sentence
 */
public record StrengthPlan(
    double autolyseHours, int folds, int leastFolds, double spacingHours, String reason) {
  /**
   * Rise by which the last fold must be done, so that what a jar or tub shows afterwards is the
   * dough's own rise and not what folding left of it.
   */
  public static final double LAST_FOLD_RISE = 0.15;

  /** What to look for before bulk fermentation is left alone. */
  public static final String WINDOWPANE =
      "after the last fold pull a piece thin: if light shines through before it tears, leave the"
          + " dough alone; if it tears at once, fold once more (common practice, no source)";

  private static final double NO_GLUTEN = 0.3;
  private static final double MUCH_BRAN = 0.06;
  private static final double SPACING_HOURS = 0.5;

  /** Checks every range. */
  public StrengthPlan {
    Checks.inRange("autolyse", autolyseHours, 0, 4, "h");
    Checks.inRange("folds", folds, 0, 12, "");
    Checks.inRange("folds it cannot do without", leastFolds, 0, folds, "");
    Checks.inRange("time between folds", spacingHours, 0.1, 3, "h");
  }

  /** For a flour whose limit is not known: three folds, none where there is no gluten. */
  public static StrengthPlan usual(Flour flour) {
    return flour.gluten() < NO_GLUTEN
        ? unfolded()
        : new StrengthPlan(autolyseHours(flour), 3, 2, SPACING_HOURS, "as usual");
  }

  /**
   * By the limit of the flour, from graded bowls or as expected of it.
   *
   * @param flour the flour of the dough
   * @param hydration all water over all flour
   * @param limit hydration from which the flour's dough tears
   */
  public static StrengthPlan of(Flour flour, Share hydration, Share limit) {
    if (flour.gluten() < NO_GLUTEN) {
      return unfolded();
    }
    double below = limit.percent() - hydration.percent();
    int folds = below > 8 ? 2 : below > 2 ? 3 : 4;
    return new StrengthPlan(autolyseHours(flour), folds, folds - 1, SPACING_HOURS, reason(below));
  }

  private static StrengthPlan unfolded() {
    return new StrengthPlan(0, 0, 0, SPACING_HOURS, "too little gluten to fold: mix until even");
  }

  private static double autolyseHours(Flour flour) {
    return flour.composition().fibre() > MUCH_BRAN ? 1.0 : 0.5;
  }

  private static String reason(double below) {
    double points = Math.rint(Math.abs(below));
    return Checks.plain(points)
        + (points == 1 ? " point" : " points")
        + " of water "
        + (below >= 0 ? "below" : "above")
        + " the limit of this flour";
  }

  /** Hours from mixing to the last fold. */
  public double lastFoldHours() {
    return folds * spacingHours;
  }

  /** The same without autolyse, where nobody is there to start it. */
  public StrengthPlan withoutAutolyse() {
    return new StrengthPlan(0, folds, leastFolds, spacingHours, reason);
  }

  /** The same with folds so far apart. */
  public StrengthPlan withSpacing(double hours) {
    return new StrengthPlan(autolyseHours, folds, leastFolds, hours, reason);
  }

  /** The same with fewer folds, not fewer than it needs. */
  public StrengthPlan withFolds(int number) {
    return new StrengthPlan(
        autolyseHours, Math.max(number, leastFolds), leastFolds, spacingHours, reason);
  }
}
