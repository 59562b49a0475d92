package doughtide.core.dough;

import doughtide.core.quantity.Checks;
import doughtide.core.quantity.InputException;
import doughtide.core.quantity.Share;
import java.io.Serializable;

/**
 * A starter as it is when used.
 *
 * @param hydration water over flour, 40…300 %
 * @param flour the flour it is kept on
 * @param condition how ripe it is
 */
public record Starter(Share hydration, Flour flour, StarterCondition condition)
    implements Serializable {
  /**
   * @param hydration water over flour, 40…300 %
   * @param flour the flour it is kept on
   * @param condition how ripe it is
   * @throws InputException if the hydration is outside 40…300 %
   */
  public Starter {
    Checks.given("condition", condition);
    Checks.given("flour", flour);
    Checks.inRange("starter hydration", hydration.percent(), 40, 300, "%");
  }

  /** {@return a ripe white starter of 100 % hydration} */
  public static Starter ripe() {
    return ripe(Share.ofPercent(100));
  }

  /**
   * {@return a ripe white starter}
   *
   * @param hydration water over flour, 40…300 %
   */
  public static Starter ripe(Share hydration) {
    return new Starter(hydration, FlourClass.WHITE.flour(), StarterCondition.RIPE);
  }

  /**
   * {@return the same starter in another condition}
   *
   * @param newCondition how ripe it is
   */
  public Starter in(StarterCondition newCondition) {
    return new Starter(hydration, flour, newCondition);
  }
}
