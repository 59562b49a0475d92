package doughtide.core.learning;

import java.io.Serializable;
import java.util.List;

/**
 * A bake that does not fit the others.
 *
 * @param bake its name
 * @param reason the likeliest
 * @param amount how far off, in the unit of the reason: °C the dough was warmer than noted; per
 *     cent of the usual vigour; per cent by which heights were read too high; 0 if unexplained
 * @param alsoPossible other reasons that explain it nearly as well (odds of less than 5 to 1)
 * @param logGain how much better the readings are explained with the reason than without, as a
 *     natural logarithm of odds; 3 is 20 to 1
 */
public record Outlier(
    String bake,
    OutlierReason reason,
    double amount,
    List<OutlierReason> alsoPossible,
    double logGain)
    implements Serializable {
  /**
   * Keeps the list as it is now.
   *
   * @param bake its name
   * @param reason the likeliest
   * @param amount how far off, in the unit of the reason: °C the dough was warmer than noted
   * @param alsoPossible other reasons that explain it nearly as well (odds of less than 5 to 1)
   * @param logGain how much better the readings are explained with the reason than without, as a
   *     natural logarithm of odds
   */
  public Outlier {
    alsoPossible = List.copyOf(alsoPossible);
  }
}
