package doughtide.core.feeding;

import doughtide.core.Internal;
import doughtide.core.quantity.Checks;
import doughtide.core.quantity.InputException;
import doughtide.core.quantity.Share;
import java.io.Serializable;

/**
 * A feed in parts by mass, always in this order: starter kept, flour given, water given. The trade
 * writes the three numbers in more than one order.
 *
 * @param starter parts of starter kept, 0.001…1000
 * @param flour parts of flour given, 0.001…1000
 * @param water parts of water given, 0…3000
 */
@Internal
public record FeedRatio(double starter, double flour, double water) implements Serializable {
  private static final int MOST_STARTER_PARTS = 10;
  private static final double NEAR_FLOUR = 0.1;
  private static final double NEAR_WATER = 0.05;
  private static final double HALF = 0.5;

  /**
   * @throws InputException if a part is outside its range or not a number
   */
  public FeedRatio {
    Checks.inRange("parts of starter", starter, 0.001, 1000, "");
    Checks.inRange("parts of flour", flour, 0.001, 1000, "");
    Checks.inRange("parts of water", water, 0, 3000, "");
  }

  /**
   * One part of starter to some parts of flour, with the water that keeps a hydration.
   *
   * @param flourParts parts of flour to one of starter
   * @param hydration water over flour in the feed
   */
  public static FeedRatio oneTo(double flourParts, Share hydration) {
    return new FeedRatio(1, flourParts, flourParts * hydration.fraction());
  }

  /**
   * The feed in the fewest whole parts that come near it: flour to starter within a tenth, water to
   * flour within a twentieth (starting values); with ten parts of starter as near as that gets.
   * Less flour than starter is fed as half of it or as much, whichever is nearer, as bakers do
   * (common practice, no source).
   */
  public FeedRatio inWholeParts() {
    double given = flourPerStarter();
    if (given <= HALF * (1 - NEAR_FLOUR) || given >= 1) {
      return whole();
    }
    double fed = given < (HALF + 1) / 2 ? HALF : 1;
    return new FeedRatio(1, fed, fed * waterPerFlour()).whole();
  }

  private FeedRatio whole() {
    for (int kept = 1; kept < MOST_STARTER_PARTS; kept++) {
      double given = Math.rint(kept * flourPerStarter());
      double poured = Math.rint(given * waterPerFlour());
      boolean near =
          Math.abs(given / kept / flourPerStarter() - 1) <= NEAR_FLOUR
              && Math.abs(poured - given * waterPerFlour()) <= NEAR_WATER * poured;
      if (near && given > 0) {
        return new FeedRatio(kept, given, poured);
      }
    }
    double given = Math.max(1, Math.rint(MOST_STARTER_PARTS * flourPerStarter()));
    return new FeedRatio(MOST_STARTER_PARTS, given, Math.rint(given * waterPerFlour()));
  }

  /** The same feed with 1 part of starter. */
  public FeedRatio perPartOfStarter() {
    return new FeedRatio(1, flourPerStarter(), water / starter);
  }

  /** Flour given over starter kept. */
  public double flourPerStarter() {
    return flour / starter;
  }

  /** Water given over flour given. */
  public double waterPerFlour() {
    return water / flour;
  }

  /** Parts in all over parts of starter: how many times the starter becomes more. */
  public double growth() {
    return (starter + flour + water) / starter;
  }

  /** With colons, for example {@code 1:5:5}. */
  public String text() {
    return plain(starter) + ":" + plain(flour) + ":" + plain(water);
  }

  /** Three figures say enough. */
  private static String plain(double value) {
    double unit = value >= 100 ? 1 : value >= 10 ? 10 : 100;
    return Checks.plain(Math.rint(value * unit) / unit);
  }
}
