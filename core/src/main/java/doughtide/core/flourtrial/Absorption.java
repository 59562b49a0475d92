package doughtide.core.flourtrial;

import doughtide.core.Internal;
import doughtide.core.quantity.Checks;
import doughtide.core.quantity.InputException;
import doughtide.core.quantity.Share;

/**
 * Water absorption of a flour, referred to flour of 14 % moisture so that two lots can be compared.
 * All water of the dough, the flour's own included, is kept the same on the dry matter (the basis
 * of ICC Standard 115/1): WA14 = 86·(WA + 100)/(100 − M) − 100, everything in per cent.
 */
@Internal
public final class Absorption {
  private static final double BASIS_DRY_PERCENT = 86;

  private Absorption() {}

  /**
   * Absorption the flour would have at 14 % moisture.
   *
   * @param absorption water added over flour as sold
   * @param moisture water in the flour as sold, 0…20 %
   * @throws InputException if a value, or the result, is out of range
   */
  public static Share to14PercentBasis(Share absorption, Share moisture) {
    double dryPercent = dryPercent(moisture);
    return Share.ofPercent(BASIS_DRY_PERCENT * (absorption.percent() + 100) / dryPercent - 100);
  }

  /**
   * Water to add to the flour as it is, from its absorption at 14 % moisture: the inverse of {@link
   * #to14PercentBasis}.
   *
   * @param absorptionAt14 water over flour of 14 % moisture
   * @param moisture water in the flour as sold, 0…20 %
   * @throws InputException if a value, or the result, is out of range
   */
  public static Share from14PercentBasis(Share absorptionAt14, Share moisture) {
    double dryPercent = dryPercent(moisture);
    return Share.ofPercent((absorptionAt14.percent() + 100) * dryPercent / BASIS_DRY_PERCENT - 100);
  }

  private static double dryPercent(Share moisture) {
    return 100 - Checks.inRange("flour moisture", moisture.percent(), 0, 20, "%");
  }
}
