package doughtide.core.dough;

import doughtide.core.Internal;
import doughtide.core.quantity.Checks;
import doughtide.core.quantity.InputException;
import doughtide.core.quantity.Share;
import java.io.Serializable;

/**
 * Dough yield (Teigausbeute): parts of flour and water on 100 parts of flour, 100 + hydration in
 * per cent (a definition of the trade). A dough yield of 165 is a hydration of 65 %.
 *
 * @param value 100…600
 */
@Internal
public record DoughYield(double value) implements Serializable {
  /**
   * @throws InputException outside 100…600 or not a number
   */
  public DoughYield {
    Checks.inRange("dough yield", value, 100, 600, "");
  }

  /**
   * @param hydration water over flour, 0…500 %
   */
  public static DoughYield ofHydration(Share hydration) {
    return new DoughYield(100 + hydration.percent());
  }

  /** Water over flour. */
  public Share hydration() {
    return Share.ofPercent(value - 100);
  }
}
