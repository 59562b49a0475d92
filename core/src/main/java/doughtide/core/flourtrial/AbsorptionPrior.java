package doughtide.core.flourtrial;

import doughtide.core.Internal;
import doughtide.core.dough.Composition;
import doughtide.core.dough.Flour;
import doughtide.core.quantity.Checks;
import doughtide.core.quantity.InputException;
import doughtide.core.quantity.Share;
import java.io.Serializable;

/**
 * What is expected of a flour's limit before any bowl was mixed. It is a prior, weak on purpose: a
 * few good bowls outweigh it.
 *
 * @param limitPercent expected limit, 40…130 %
 * @param sdPoints standard deviation, 0.5…30 points
 */
@Internal
public record AbsorptionPrior(double limitPercent, double sdPoints) implements Serializable {
  /**
   * Limit of a soft white flour of 9 % protein, 66 %: its comfortable range then begins near 56 %,
   * inside the 50–60 % that the American Institute of Baking gives as the absorption of soft wheat
   * flour. Starting value.
   */
  private static final double SOFT_LIMIT_PERCENT = 66;

  private static final double SOFT_PROTEIN_PERCENT = 9;
  private static final double WHITE_FIBRE_PERCENT = 2.7;

  /**
   * Points of water per point of protein. Starting value; at 12 % protein hard wheat is above 60 %
   * as published.
   */
  private static final double POINTS_PER_PROTEIN = 2.0;

  /**
   * Points of water per point of bran fibre: a wholemeal wheat of 13 % protein then takes 77.5 %
   * (common practice, no source: 75–80 %).
   */
  private static final double POINTS_PER_FIBRE = 0.44;

  /**
   * Points that rye and other flours with little gluten take more than their protein and bran
   * explain, for what swells in them is not gluten: puts the limit of rye inside the 80–100 % in
   * which its bowls are mixed (common practice, no source). Starting value.
   */
  private static final double PASTE_POINTS = 25;

  private static final double WHEAT_SD_POINTS = 5;
  private static final double EXTRA_SD_WITHOUT_GLUTEN = 3;

  /**
   * @throws InputException if a value is out of range or not a number
   */
  public AbsorptionPrior {
    Checks.inRange("expected limit", limitPercent, 40, 130, "%");
    Checks.inRange("standard deviation of the expected limit", sdPoints, 0.5, 30, "points");
  }

  /**
   * The prior for a flour: more protein and more bran take more water, and so does a drier flour. A
   * flour with little gluten is judged as a paste, which takes more, and its prior is wider
   * (starting value).
   *
   * @param flour the flour as sold
   */
  public static AbsorptionPrior of(Flour flour) {
    Composition at14 = flour.composition().withMoisture(0.14);
    double limitAt14 =
        SOFT_LIMIT_PERCENT
            + POINTS_PER_PROTEIN * (at14.protein() * 100 - SOFT_PROTEIN_PERCENT)
            + POINTS_PER_FIBRE * (at14.fibre() * 100 - WHITE_FIBRE_PERCENT);
    Share moisture = Share.ofFraction(flour.composition().moisture());
    if (BowlTest.of(flour) == BowlTest.PASTE) {
      limitAt14 += PASTE_POINTS;
    }
    double limit = Absorption.from14PercentBasis(Share.ofPercent(limitAt14), moisture).percent();
    double sd = WHEAT_SD_POINTS + EXTRA_SD_WITHOUT_GLUTEN * (1 - flour.gluten());
    return new AbsorptionPrior(Math.min(130, Math.max(40, limit)), sd);
  }

  /** The expected limit with its 80 % interval. */
  public HydrationEstimate limit() {
    double reach = Quantiles.NINETY_PERCENT * sdPoints;
    return new HydrationEstimate(limitPercent - reach, limitPercent, limitPercent + reach);
  }
}
