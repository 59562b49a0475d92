package doughtide.core.dough;

import doughtide.core.quantity.Altitude;
import doughtide.core.quantity.Checks;
import doughtide.core.quantity.InputException;
import doughtide.core.quantity.Mass;
import doughtide.core.quantity.Rise;
import doughtide.core.quantity.Share;
import doughtide.core.quantity.Value;
import java.util.List;
import java.util.Optional;

/**
 * A dough, or a starter that has just been fed: the same system. Immutable; built with {@link
 * #builder()} or {@link #feed}.
 *
 * <pre>{@code
 * DoughFormula formula = DoughFormula.builder()
 *     .starterShare(StarterShare.ofAddedFlour(Share.ofPercent(20)))
 *     .hydration(Share.ofPercent(72))
 *     .salt(Share.ofPercent(2))
 *     .build();
 * }</pre>
 */
public final class DoughFormula extends Value {
  private static final long serialVersionUID = 1;

  private final Flour flour;
  private final double gradedLimitPercent; // NaN where no bowl was graded
  private final Starter starter;
  private final double prefermentedFlour;
  private final Share hydration;
  private final Share salt;
  private final Altitude altitude;
  private final Additions additions;

  /** Of all flour, the starter's included. */
  static void checkHydration(double percent) {
    Checks.inRange("hydration", percent, 45, 200, "%");
  }

  private DoughFormula(Builder builder, double prefermentedFlour) {
    this.flour = builder.flour;
    this.gradedLimitPercent = builder.gradedLimitPercent;
    this.starter = builder.starter;
    this.prefermentedFlour = prefermentedFlour;
    this.hydration = builder.hydration;
    this.salt = builder.salt;
    this.altitude = builder.altitude;
    this.additions = builder.additions;
  }

  /**
   * {@return a builder with a white flour, a ripe starter at 100 %, 20 % of it on the flour added,
   * 70 % hydration, 2 % salt, at sea level}
   */
  public static Builder builder() {
    return new Builder();
  }

  /**
   * A starter just fed, in parts by mass: starter kept, flour given, water given.
   *
   * @param starter the starter that is fed
   * @param starterParts parts of starter, more than 0
   * @param flourParts parts of flour, more than 0
   * @param waterParts parts of water, 0 or more
   * @param flour the flour given
   * @return the mixture, without salt, at sea level
   * @throws InputException if a part is out of range or the mixture is
   */
  public static DoughFormula feed(
      Starter starter, double starterParts, double flourParts, double waterParts, Flour flour) {
    Checks.given("flour", flour);
    Checks.inRange("parts of starter", starterParts, 1e-6, 1000, "");
    Checks.inRange("parts of flour", flourParts, 1e-6, 1000, "");
    Checks.inRange("parts of water", waterParts, 0, 3000, "");
    double hs = starter.hydration().fraction();
    double oldFlour = starterParts / (1 + hs);
    double allFlour = oldFlour + flourParts;
    double allWater = oldFlour * hs + waterParts;
    return builder()
        .starter(starter)
        .starterShare(StarterShare.prefermented(Share.ofFraction(oldFlour / allFlour)))
        .flour(flour)
        .hydration(Share.ofFraction(allWater / allFlour))
        .salt(Share.ofPercent(0))
        .build();
  }

  /** {@return the flour of the whole dough} */
  public Flour flour() {
    return flour;
  }

  /**
   * {@return the hydration from which the dough of this flour tears, as graded bowls gave it; empty
   * where none were}
   */
  public Optional<Share> gradedLimit() {
    return Double.isNaN(gradedLimitPercent)
        ? Optional.empty()
        : Optional.of(Share.ofPercent(gradedLimitPercent));
  }

  /** {@return the starter used} */
  public Starter starter() {
    return starter;
  }

  /** {@return flour in the starter over all flour, 0.001…0.6} */
  public double prefermentedFlour() {
    return prefermentedFlour;
  }

  /** {@return starter as a fraction of the flour added} */
  public double starterOfAddedFlour() {
    return StarterShare.prefermented(Share.ofFraction(prefermentedFlour))
        .starterOfAddedFlour(starter.hydration());
  }

  /** {@return all water over all flour, the starter's included} */
  public Share hydration() {
    return hydration;
  }

  /** {@return dough yield (Teigausbeute): 100 + hydration in per cent} */
  public double doughYield() {
    return 100 + hydration.percent();
  }

  /** {@return salt over all flour} */
  public Share salt() {
    return salt;
  }

  /** {@return height of the kitchen} */
  public Altitude altitude() {
    return altitude;
  }

  /** {@return what is in it beside flour, water, starter and salt} */
  public Additions additions() {
    return additions;
  }

  /** {@return mass of dough per mass of all flour} */
  public double doughPerFlour() {
    return fermentingPerFlour() + additions.massPerFlour();
  }

  /** The same without what does not ferment. */
  double fermentingPerFlour() {
    return 1 + hydration.fraction() + salt.fraction();
  }

  /**
   * {@return usual rise at the oven: that of the flour, less where much of the dough does not
   * ferment}
   */
  public Rise targetRise() {
    if (additions.isEmpty()) {
      return flour.targetRise();
    }
    return new Rise(
        flour.targetRise().fraction() * (1 - DoughProperties.of(this).inertVolumeShare()));
  }

  /** {@return a builder that starts from this formula} */
  public Builder toBuilder() {
    Builder builder = new Builder();
    builder.flour = flour;
    builder.gradedLimitPercent = gradedLimitPercent;
    builder.starter = starter;
    builder.share = StarterShare.prefermented(Share.ofFraction(prefermentedFlour));
    builder.hydration = hydration;
    builder.salt = salt;
    builder.altitude = altitude;
    builder.additions = additions;
    return builder;
  }

  /**
   * {@return what to weigh for a dough with this much flour in all, the starter's included}
   *
   * @param allFlour mass of all flour
   */
  public Ingredients forFlour(Mass allFlour) {
    double flourGrams = allFlour.grams();
    double starterFlour = prefermentedFlour * flourGrams;
    double starterWater = starterFlour * starter.hydration().fraction();
    return new Ingredients(
        flourGrams - starterFlour,
        (hydration.fraction() - additions.waterPerFlour()) * flourGrams - starterWater,
        starterFlour + starterWater,
        salt.fraction() * flourGrams,
        additions.forFlour(flourGrams));
  }

  /**
   * {@return what to weigh for this much dough}
   *
   * @param dough mass of the finished dough
   */
  public Ingredients forDough(Mass dough) {
    return forFlour(Mass.ofGrams(dough.grams() / doughPerFlour()));
  }

  @Override
  protected List<?> parts() {
    return List.of(
        flour,
        gradedLimitPercent,
        starter,
        prefermentedFlour,
        hydration,
        salt,
        altitude,
        additions);
  }

  /** In a line, for logs: flour, hydration, starter and salt in baker's per cent, and height. */
  @Override
  public String toString() {
    return flour.name()
        + "; hydration "
        + Checks.plain(hydration.percent())
        + " %, prefermented flour "
        + Checks.plain(100 * prefermentedFlour)
        + " % (starter hydration "
        + Checks.plain(starter.hydration().percent())
        + " %, "
        + starter.flour().name()
        + ", "
        + starter.condition()
        + "), salt "
        + Checks.plain(salt.percent())
        + " %, "
        + Checks.plain(altitude.metres())
        + " m"
        + (additions.isEmpty() ? "" : "; " + additions);
  }

  /** Builds a formula; every call returns the builder. */
  public static final class Builder {
    private Flour flour = FlourClass.WHITE.flour();
    private double gradedLimitPercent = Double.NaN;
    private Starter starter = Starter.ripe();
    private StarterShare share = StarterShare.ofAddedFlour(Share.ofPercent(20));
    private Share hydration = Share.ofPercent(70);
    private Share salt = Share.ofPercent(2);
    private Altitude altitude = Altitude.SEA_LEVEL;
    private Additions additions = Additions.NONE;

    private Builder() {}

    /**
     * The flour of the whole dough, of which no bowl was graded.
     *
     * @param value of the whole dough, the starter's included
     * @return this builder
     */
    public Builder flour(Flour value) {
      this.flour = Checks.given("flour", value);
      this.gradedLimitPercent = Double.NaN;
      return this;
    }

    /**
     * The flour of the whole dough, of which bowls were graded.
     *
     * @param value of the whole dough, the starter's included
     * @param limit hydration from which its dough tears, as the bowls gave it, 30…250 %
     * @return this builder
     * @throws InputException if the limit is outside its range
     */
    public Builder flour(Flour value, Share limit) {
      Checks.inRange("limit of the flour", Checks.given("limit", limit).percent(), 30, 250, "%");
      flour(value).gradedLimitPercent = limit.percent();
      return this;
    }

    /**
     * The starter.
     *
     * @param value its hydration, flour and condition
     * @return this builder
     */
    public Builder starter(Starter value) {
      this.starter = Checks.given("starter", value);
      return this;
    }

    /**
     * How much starter.
     *
     * @param value on the flour added or of all flour
     * @return this builder
     */
    public Builder starterShare(StarterShare value) {
      this.share = Checks.given("starter share", value);
      return this;
    }

    /**
     * All water over all flour, the starter's included, 45…200 %.
     *
     * @param value 45…200 %
     * @return this builder
     */
    public Builder hydration(Share value) {
      this.hydration = Checks.given("hydration", value);
      return this;
    }

    /**
     * Hydration by dough yield (Teigausbeute), 145…300.
     *
     * @param value 100 + hydration in per cent, 145…300
     * @return this builder
     */
    public Builder doughYield(double value) {
      Checks.inRange("dough yield", value, 145, 300, "");
      this.hydration = Share.ofPercent(value - 100);
      return this;
    }

    /**
     * Salt over all flour, 0…4 %.
     *
     * @param value 0…4 % of all flour
     * @return this builder
     */
    public Builder salt(Share value) {
      this.salt = Checks.given("salt", value);
      return this;
    }

    /**
     * Height of the kitchen.
     *
     * @param value above sea level
     * @return this builder
     */
    public Builder altitude(Altitude value) {
      this.altitude = Checks.given("altitude", value);
      return this;
    }

    /**
     * What is in it beside flour, water, starter and salt.
     *
     * @param value inclusions and enrichments
     * @return this builder
     */
    public Builder additions(Additions value) {
      this.additions = Checks.given("additions", value);
      return this;
    }

    /**
     * @return the formula
     * @throws InputException if a value is outside its range, or the starter alone brings more
     *     water than the dough has
     */
    public DoughFormula build() {
      checkHydration(hydration.percent());
      Checks.inRange("salt", salt.percent(), 0, 4, "%");
      double p = share.prefermentedFlour(starter.hydration());
      double starterWater = p * starter.hydration().fraction() + additions.waterPerFlour();
      if (starterWater > hydration.fraction() + 1e-9) {
        throw new InputException(
            "dough.starter-water",
            (additions.waterPerFlour() > 0
                    ? "starter, milk and egg bring "
                    : "the starter alone brings ")
                + Checks.plain(starterWater * 100)
                + " % water, more than the hydration of "
                + Checks.plain(hydration.percent())
                + " %: use less starter, a stiffer one, or more water");
      }
      return new DoughFormula(this, p);
    }
  }
}
