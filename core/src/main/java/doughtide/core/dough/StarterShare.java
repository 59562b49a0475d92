package doughtide.core.dough;

import doughtide.core.quantity.Checks;
import doughtide.core.quantity.InputException;
import doughtide.core.quantity.Share;
import doughtide.core.quantity.Value;
import java.util.List;

/**
 * How much starter a dough gets. Two conventions live side by side in the trade and differ by a
 * factor of about two, so the one meant is always named: <em>starter as a share of the flour
 * added</em>, and <em>prefermented flour</em> (flour in the starter over all flour). 20 % starter
 * at 100 % hydration is 9.1 % prefermented flour.
 */
public final class StarterShare extends Value {
  private static final long serialVersionUID = 1;

  private static final double LOWEST = 0.001;
  private static final double HIGHEST = 0.6;

  private enum Convention {
    OF_ADDED_FLOUR(" % starter on the flour added"),
    PREFERMENTED(" % prefermented flour");

    private final String words;

    Convention(String words) {
      this.words = words;
    }
  }

  private final Convention convention;
  private final Share share;

  private StarterShare(Convention convention, Share share) {
    this.convention = convention;
    this.share = share;
  }

  /**
   * {@return starter mass over the mass of flour added to the dough (the starter's own flour not
   * counted)}
   *
   * @param share for example 20 %
   */
  public static StarterShare ofAddedFlour(Share share) {
    return new StarterShare(Convention.OF_ADDED_FLOUR, Checks.given("share", share));
  }

  /**
   * {@return flour in the starter over all flour in the dough}
   *
   * @param share for example 9.1 %
   */
  public static StarterShare prefermented(Share share) {
    return new StarterShare(Convention.PREFERMENTED, Checks.given("share", share));
  }

  /**
   * Prefermented flour for a starter of the given hydration: S/(1+hs) / (1 + S/(1+hs)).
   *
   * @param starterHydration water over flour in the starter
   * @return fraction of all flour, 0.001…0.6
   * @throws InputException outside 0.1…60 % prefermented flour
   */
  public double prefermentedFlour(Share starterHydration) {
    double p = share.fraction();
    if (convention == Convention.OF_ADDED_FLOUR) {
      double starterFlour = share.fraction() / (1 + starterHydration.fraction());
      p = starterFlour / (1 + starterFlour);
    }
    Checks.inRange("prefermented flour", p * 100, LOWEST * 100, HIGHEST * 100, "%");
    return p;
  }

  /**
   * Starter as a share of the flour added, for a starter of the given hydration: p·(1+hs)/(1 − p).
   *
   * @param starterHydration water over flour in the starter
   * @return fraction of the flour added
   */
  public double starterOfAddedFlour(Share starterHydration) {
    double p = prefermentedFlour(starterHydration);
    return p * (1 + starterHydration.fraction()) / (1 - p);
  }

  @Override
  protected List<?> parts() {
    return List.of(convention, share);
  }

  @Override
  public String toString() {
    return Checks.plain(share.percent()) + convention.words;
  }
}
