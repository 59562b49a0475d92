package doughtide.core.feeding;

import doughtide.core.Internal;
import doughtide.core.dough.DoughFormula;
import doughtide.core.dough.Flour;
import doughtide.core.dough.FlourClass;
import doughtide.core.dough.Starter;
import doughtide.core.dough.StarterCondition;
import doughtide.core.quantity.Altitude;
import doughtide.core.quantity.Checks;
import doughtide.core.quantity.InputException;
import doughtide.core.quantity.Mass;
import doughtide.core.quantity.Share;
import java.io.Serializable;
import java.util.List;

/**
 * A starter and what it is fed. Immutable.
 *
 * <pre>{@code
 * Feeding feeding = Feeding.of(new FeedRatio(1, 5, 5));
 * FeedingForecast forecast = FeedingPlanner.with(RiseForecaster.standard())
 *     .forecast(feeding, DoughTemperature.steady(Temperature.ofCelsius(22)));
 * double hours = forecast.ripe().likely().orElseThrow();
 * }</pre>
 *
 * @param starter the starter that is fed
 * @param ratio parts of starter, flour and water
 * @param flour the flour given
 * @param salt salt over the flour given, 0…4 %; the starter kept is taken as unsalted
 * @param altitude height of the kitchen
 */
@Internal
public record Feeding(Starter starter, FeedRatio ratio, Flour flour, Share salt, Altitude altitude)
    implements Serializable {
  private static final double LOWEST_HYDRATION_PERCENT = 45;
  private static final double HIGHEST_HYDRATION_PERCENT = 200;

  /**
   * @throws InputException if the salt is outside 0…4 %, the fed starter would have less than 45 or
   *     more than 200 % hydration, or its flour would come from the old starter by less than 0.1 or
   *     more than 60 %
   */
  public Feeding {
    Checks.given("altitude", altitude);
    Checks.given("flour", flour);
    Checks.inRange("salt", salt.percent(), 0, 4, "%");
    double hydration = 100 * hydration(starter, ratio);
    Checks.inRange(
        "hydration of the starter after feeding " + ratio.text(),
        hydration,
        LOWEST_HYDRATION_PERCENT,
        HIGHEST_HYDRATION_PERCENT,
        "%");
    checkFlourFromStarter(100 * prefermented(starter, ratio), ratio);
  }

  private static void checkFlourFromStarter(double percent, FeedRatio ratio) {
    if (percent < 0.1 || percent > 60) {
      throw new InputException(
          "feeding.old-starter",
          "after feeding "
              + ratio.text()
              + " (starter, flour, water) "
              + Checks.plain(percent)
              + " % of the flour comes from the old starter, it must be 0.1…60 %: give "
              + (percent > 60 ? "more" : "less")
              + " flour");
    }
  }

  /** A ripe white starter of 100 % hydration fed with white flour, unsalted, at sea level. */
  public static Feeding of(FeedRatio ratio) {
    return new Feeding(
        Starter.ripe(), ratio, FlourClass.WHITE.flour(), Share.ofPercent(0), Altitude.SEA_LEVEL);
  }

  /** The same with another starter. */
  public Feeding withStarter(Starter newStarter) {
    return new Feeding(newStarter, ratio, flour, salt, altitude);
  }

  /** The same with another ratio. */
  public Feeding withRatio(FeedRatio newRatio) {
    return new Feeding(starter, newRatio, flour, salt, altitude);
  }

  /** The same with another flour given. */
  public Feeding withFlour(Flour newFlour) {
    return new Feeding(starter, ratio, newFlour, salt, altitude);
  }

  /** The same with salt over the flour given, 0…4 %. */
  public Feeding withSalt(Share newSalt) {
    return new Feeding(starter, ratio, flour, newSalt, altitude);
  }

  /** The same at another height. */
  public Feeding withAltitude(Altitude newAltitude) {
    return new Feeding(starter, ratio, flour, salt, newAltitude);
  }

  /** The mixture in the jar, which the rise model takes as a dough. */
  public DoughFormula formula() {
    double old = oldFlour(starter, ratio);
    double added = ratio.flour();
    DoughFormula mixture =
        DoughFormula.feed(starter, ratio.starter(), added, ratio.water(), flourInJar());
    return mixture.toBuilder()
        .salt(Share.ofFraction(salt.fraction() * added / (old + added)))
        .altitude(altitude)
        .build();
  }

  /** The flour in the jar: the old starter's and the one given. */
  public Flour flourInJar() {
    if (starter.flour().equals(flour)) {
      return flour;
    }
    double old = prefermented(starter, ratio);
    return Flour.mix(
        List.of(
            new Flour.Part(starter.flour(), Share.ofFraction(old)),
            new Flour.Part(flour, Share.ofFraction(1 - old))));
  }

  /** Water over flour in the jar. */
  public Share hydration() {
    return Share.ofFraction(hydration(starter, ratio));
  }

  /** The starter this becomes once it is ripe. */
  public Starter ripened() {
    return new Starter(hydration(), flourInJar(), StarterCondition.RIPE);
  }

  /**
   * What to weigh so that an amount can be used and enough is kept back for the same feed again.
   *
   * @param use what is used when ripe
   */
  public FeedAmounts amounts(Mass use) {
    double perStarter = totalPerStarter();
    double starterGrams = use.grams() / (perStarter - 1);
    return weigh(starterGrams, starterGrams);
  }

  /**
   * What to weigh so that an amount can be used and another is kept back.
   *
   * @param use what is used when ripe
   * @param keep what is kept back
   */
  public FeedAmounts amounts(Mass use, Mass keep) {
    return weigh((use.grams() + keep.grams()) / totalPerStarter(), keep.grams());
  }

  /** At least this much in the jar, from at least this much starter, nothing kept back. */
  FeedAmounts making(double totalGrams, double leastStarterGrams) {
    return weigh(Math.max(totalGrams / totalPerStarter(), leastStarterGrams), 0);
  }

  private double totalPerStarter() {
    return ratio.growth() + salt.fraction() * ratio.flourPerStarter();
  }

  private FeedAmounts weigh(double starterGrams, double keepGrams) {
    double flourGrams = starterGrams * ratio.flourPerStarter();
    double waterGrams = flourGrams * ratio.waterPerFlour();
    return new FeedAmounts(
        starterGrams, flourGrams, waterGrams, flourGrams * salt.fraction(), keepGrams);
  }

  private static double oldFlour(Starter starter, FeedRatio ratio) {
    return ratio.starter() / (1 + starter.hydration().fraction());
  }

  private static double prefermented(Starter starter, FeedRatio ratio) {
    double old = oldFlour(starter, ratio);
    return old / (old + ratio.flour());
  }

  private static double hydration(Starter starter, FeedRatio ratio) {
    double old = oldFlour(starter, ratio);
    double water = old * starter.hydration().fraction() + ratio.water();
    return water / (old + ratio.flour());
  }
}
