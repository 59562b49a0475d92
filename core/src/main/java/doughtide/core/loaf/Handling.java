package doughtide.core.loaf;

import doughtide.core.quantity.Checks;
import java.io.Serializable;

/**
 * What hands take out of a dough: a share of the gas in its cells, air and carbon dioxide alike;
 * none of what is dissolved in its water. The shares are starting values, common practice without a
 * source; of all carbon dioxide made, 60 % was lost by the oven where a yeasted pan loaf was
 * punched, moulded and proofed (cereal science text, second hand), which bounds the firmest.
 *
 * @param leastShare of the gas in the cells that the lightest hands take, 0…1
 * @param mostShare that the heaviest hands take, {@code leastShare}…1
 */
public record Handling(double leastShare, double mostShare) implements Serializable {
  /** One fold. */
  public static final Handling FOLD = new Handling(0, 0.05);

  /**
   * Checks the shares.
   *
   * @param leastShare of the gas in the cells that the lightest hands take, 0…1
   * @param mostShare that the heaviest hands take, {@code leastShare}…1
   */
  public Handling {
    Checks.inRange("least share of the gas", leastShare, 0, 1, "");
    Checks.inRange("most share of the gas", mostShare, leastShare, 1, "");
  }

  /**
   * {@return the share that some hands take}
   *
   * @param rank of these hands among all, lightest 0 … heaviest 1
   */
  public double share(double rank) {
    return leastShare + rank * (mostShare - leastShare);
  }
}
