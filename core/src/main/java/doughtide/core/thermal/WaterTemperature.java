package doughtide.core.thermal;

import doughtide.core.Internal;
import doughtide.core.dough.DoughFormula;
import doughtide.core.dough.Ingredients;
import doughtide.core.quantity.Checks;
import doughtide.core.quantity.InputException;
import doughtide.core.quantity.Mass;
import doughtide.core.quantity.Share;
import doughtide.core.quantity.Temperature;
import doughtide.core.quantity.Value;
import java.io.Serializable;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;

/**
 * The temperature of the water for a wanted dough temperature, by a balance of heat: what flour,
 * starter, salt and bowl take up or give off, the heat of wetting and the work of mixing are made
 * good by the water. Immutable; every method that changes something returns a new balance.
 *
 * <pre>{@code
 * WaterTemperature balance =
 *     WaterTemperature.of(Mass.ofGrams(1000), Temperature.ofCelsius(20), Mass.ofGrams(700))
 *         .starter(Mass.ofGrams(200), Share.ofPercent(100), Temperature.ofCelsius(25))
 *         .mixing(Warming.ofCelsiusDegrees(1));
 * double celsius = balance.waterFor(Temperature.ofCelsius(26)).waterCelsius(); // 22.847
 * }</pre>
 */
@Internal
public final class WaterTemperature extends Value {
  private static final long serialVersionUID = 1;

  /**
   * Heat that dry flour sets free when it is wetted, J/kg (Winkler &amp; Geddes 1931, from memory).
   */
  private static final double DRY_WETTING_J_PER_KG = 105_000;

  /** The same at {@link #KNOWN_MOISTURE} (trade dictionary). */
  private static final double KNOWN_WETTING_J_PER_KG = 15_100;

  private static final double KNOWN_MOISTURE = 0.115; // 11 to 12 %

  /** How far a thermometer and the stated moisture may be off, 8 times in 10 (starting values). */
  private static final double THERMOMETER_KELVIN = 0.5;

  private static final double MOISTURE_PLUS_MINUS = 0.01;

  /**
   * Above this no yeast or bacterium of a sourdough grows (M. Gänzle: none at 41 °C); common
   * practice as a limit.
   */
  private static final double HOT_CELSIUS = 45;

  private static final double BOILING_CELSIUS = 100;

  private final HeatCapacities capacities;
  private final Part flour;
  private final double waterKg;
  private final Part starter;
  private final double starterHydration;
  private final Part salt;
  private final Part additions;
  private final double additionsJPerKgK;
  private final Part vessel;
  private final double vesselJPerKgK;
  private final double wettingJPerKg;
  private final Mixing mixing;

  /** A mass at a temperature. */
  private record Part(double kg, double celsius) implements Serializable {
    static final Part NONE = new Part(0, 0);
  }

  private WaterTemperature(Draft draft) {
    this.capacities = draft.capacities;
    this.flour = draft.flour;
    this.waterKg = draft.waterKg;
    this.starter = draft.starter;
    this.starterHydration = draft.starterHydration;
    this.salt = draft.salt;
    this.additions = draft.additions;
    this.additionsJPerKgK = draft.additionsJPerKgK;
    this.vessel = draft.vessel;
    this.vesselJPerKgK = draft.vesselJPerKgK;
    this.wettingJPerKg = draft.wettingJPerKg;
    this.mixing = draft.mixing;
  }

  /**
   * Flour and water, with the heat of wetting at 11–12 % moisture and the published heat
   * capacities.
   *
   * @param flour flour added
   * @param flourAt its temperature
   * @param water all water poured, ice included
   */
  public static WaterTemperature of(Mass flour, Temperature flourAt, Mass water) {
    return new WaterTemperature(
        new Draft(new Part(flour.kilograms(), flourAt.celsius()), water.kilograms()));
  }

  /**
   * What a formula weighs, with the heat of wetting by the moisture of its flour; salt and what
   * else is in it at the flour's temperature.
   *
   * @param formula flour, and hydration of the starter
   * @param ingredients flour, water, starter and salt
   * @param flourAt temperature of flour and salt
   * @param starterAt temperature of the starter
   * @throws InputException if there is no flour or no water to pour
   */
  public static WaterTemperature of(
      DoughFormula formula, Ingredients ingredients, Temperature flourAt, Temperature starterAt) {
    Mass water =
        Mass.ofGrams(Checks.inRange("water to pour", ingredients.waterGrams(), 0.1, 1e7, "g"));
    WaterTemperature balance =
        of(Mass.ofGrams(ingredients.flourGrams()), flourAt, water)
            .moisture(Share.ofFraction(formula.flour().composition().moisture()));
    if (ingredients.starterGrams() >= Mass.LEAST_GRAMS) {
      balance =
          balance.starter(
              Mass.ofGrams(ingredients.starterGrams()), formula.starter().hydration(), starterAt);
    }
    if (ingredients.additionGrams() > 0) {
      balance = balance.additions(ingredients, flourAt);
    }
    return ingredients.saltGrams() >= Mass.LEAST_GRAMS
        ? balance.salt(Mass.ofGrams(ingredients.saltGrams()), flourAt)
        : balance;
  }

  /**
   * Seeds, sugar and the like hold about as much heat as flour (starting value), the water of a
   * soaker as water; milk and egg are counted as flour, which is too little.
   */
  private WaterTemperature additions(Ingredients ingredients, Temperature at) {
    double dry = ingredients.additions().stream().mapToDouble(each -> each.grams()).sum();
    double all = ingredients.additionGrams();
    Draft draft = new Draft(this);
    draft.additions = new Part(all / 1000, at.celsius());
    draft.additionsJPerKgK =
        (dry * capacities.flourJPerKgK() + (all - dry) * capacities.waterJPerKgK()) / all;
    return new WaterTemperature(draft);
  }

  /**
   * With a starter.
   *
   * @param mass starter added
   * @param hydration water over flour in it
   * @param at its temperature
   */
  public WaterTemperature starter(Mass mass, Share hydration, Temperature at) {
    Draft draft = new Draft(this);
    draft.starter = new Part(mass.kilograms(), at.celsius());
    draft.starterHydration = hydration.fraction();
    return new WaterTemperature(draft);
  }

  /**
   * With salt.
   *
   * @param mass salt added
   * @param at its temperature
   */
  public WaterTemperature salt(Mass mass, Temperature at) {
    Draft draft = new Draft(this);
    draft.salt = new Part(mass.kilograms(), at.celsius());
    return new WaterTemperature(draft);
  }

  /**
   * With a bowl that takes the dough's temperature.
   *
   * @param mass mass of the part that touches the dough
   * @param material what it is made of
   * @param at its temperature
   */
  public WaterTemperature vessel(Mass mass, Material material, Temperature at) {
    Draft draft = new Draft(this);
    draft.vessel = new Part(mass.kilograms(), at.celsius());
    draft.vesselJPerKgK = material.heatCapacityJPerKgK();
    return new WaterTemperature(draft);
  }

  /** With what mixing does to the temperature of the dough. */
  public WaterTemperature mixing(Mixing how) {
    Draft draft = new Draft(this);
    draft.mixing = how;
    return new WaterTemperature(draft);
  }

  /**
   * With a warming by mixing that is known for certain.
   *
   * @param warming how much the work alone warms dough and bowl
   */
  public WaterTemperature mixing(Warming warming) {
    return mixing(new Mixing(warming, 0));
  }

  /** With the heat of wetting of a flour of this moisture, see {@link #heatOfWettingJPerKg}. */
  public WaterTemperature moisture(Share moisture) {
    return heatOfWetting(heatOfWettingJPerKg(moisture));
  }

  /**
   * Heat that flour sets free when it is wetted, J per kg: an exponential through the heat of dry
   * flour and that at 11–12 % moisture (the form is a starting value); about 10 kJ/kg at 14 %.
   *
   * @param moisture water in the flour as sold, 0…20 %
   */
  public static double heatOfWettingJPerKg(Share moisture) {
    Checks.inRange("moisture of the flour", moisture.percent(), 0, 20, "%");
    return DRY_WETTING_J_PER_KG
        * Math.pow(
            KNOWN_WETTING_J_PER_KG / DRY_WETTING_J_PER_KG, moisture.fraction() / KNOWN_MOISTURE);
  }

  /**
   * With another heat of wetting.
   *
   * @param joulePerKg per kg of flour added, 0…110 000 J
   */
  public WaterTemperature heatOfWetting(double joulePerKg) {
    Draft draft = new Draft(this);
    draft.wettingJPerKg = Checks.inRange("heat of wetting", joulePerKg, 0, 1.1e5, "J/kg");
    return new WaterTemperature(draft);
  }

  /**
   * With other heat capacities.
   *
   * @param values heat capacities of flour, water and salt
   */
  public WaterTemperature heatCapacities(HeatCapacities values) {
    Draft draft = new Draft(this);
    draft.capacities = values;
    return new WaterTemperature(draft);
  }

  /**
   * Temperature of the water for a wanted dough temperature.
   *
   * @param wanted wanted temperature of the dough after mixing, 0…50 °C
   * @return the answer without ice; see {@link #waterFor(Temperature, Temperature)} for a tap
   * @throws InputException if the water would have to boil
   */
  public WaterAnswer waterFor(Temperature wanted) {
    double celsius = waterCelsius(wanted);
    return new WaterAnswer(celsius, plusMinusKelvin(), Optional.empty(), cautions(celsius));
  }

  /**
   * Temperature of the water for a wanted dough temperature, with ice where the tap is too warm.
   *
   * @param wanted wanted temperature of the dough after mixing, 0…50 °C
   * @param tap the coldest water at hand, 0…50 °C
   * @throws InputException if the water would have to boil, or if ice alone is not cold enough
   */
  public WaterAnswer waterFor(Temperature wanted, Temperature tap) {
    double celsius = waterCelsius(wanted);
    double tapCelsius = Checks.inRange("tap water", tap.celsius(), 0, 50, "°C");
    if (celsius >= tapCelsius) {
      return waterFor(wanted);
    }
    double share = Ice.share(tapCelsius, celsius, capacities.waterJPerKgK());
    if (share > 1) {
      throw new InputException(
          "water.too-warm-for-ice",
          "a dough of "
              + Checks.plain(wanted.celsius())
              + " °C cannot be reached even if all water is ice: cool the flour or mix less");
    }
    double grams = waterKg * 1000;
    Ice ice = new Ice(grams * (1 - share), grams * share);
    return new WaterAnswer(celsius, plusMinusKelvin(), Optional.of(ice), List.of());
  }

  /**
   * Temperature of the dough that a water gives, °C.
   *
   * @param water temperature of the water, 0…100 °C
   */
  public double doughCelsius(Temperature water) {
    return withoutMixing(water) + mixing.warming().kelvin();
  }

  /**
   * How far off the dough may be from what is not known exactly, K: half the width of the range
   * that holds 8 doughs in 10.
   */
  public double doughPlusMinusKelvin() {
    return plusMinusKelvin() * waterHeat() / allHeat();
  }

  /**
   * The same for the water: mixing, three thermometers and the moisture of the flour, which err
   * apart.
   */
  private double plusMinusKelvin() {
    double drier =
        wettingJPerKg
            * (Math.pow(
                    DRY_WETTING_J_PER_KG / KNOWN_WETTING_J_PER_KG,
                    MOISTURE_PLUS_MINUS / KNOWN_MOISTURE)
                - 1);
    double[] joule = {
      mixing.plusMinusKelvin() * allHeat(),
      THERMOMETER_KELVIN * flour.kg() * capacities.flourJPerKgK(),
      THERMOMETER_KELVIN * starterCapacity(),
      THERMOMETER_KELVIN * vessel.kg() * vesselJPerKgK,
      drier * flour.kg()
    };
    return Math.sqrt(Arrays.stream(joule).map(each -> each * each).sum()) / waterHeat();
  }

  /**
   * The warming by mixing that explains a dough as it was measured; put it into {@link #mixing}
   * next time.
   *
   * @param water temperature of the water that was used, 0…100 °C
   * @param measured temperature of the dough after mixing
   * @throws InputException if it comes out outside −30…60 K
   */
  public Warming mixingFrom(Temperature water, Temperature measured) {
    return new Warming(measured.celsius() - withoutMixing(water));
  }

  /**
   * This balance beside the factor rule, term by term: the wanted temperature plus all {@link
   * WaterTerm#balanceKelvin} is this balance's water, plus all {@link WaterTerm#ruleKelvin} the
   * rule's.
   *
   * @param rule the rule as the baker uses it
   * @param wanted wanted temperature of the dough
   * @return the terms that are not 0 on both sides, in a fixed order
   */
  public List<WaterTerm> compare(FactorRule rule, Temperature wanted) {
    double aim = wanted.celsius();
    double water = waterHeat();
    List<WaterTerm> terms = new ArrayList<>();
    add(terms, WaterTerm.Kind.FLOUR, flourHeat(aim) / water, aim - rule.flour().celsius());
    double starterRule = rule.starter().map(at -> aim - at.celsius()).orElse(0.0);
    add(terms, WaterTerm.Kind.STARTER, starterHeat(aim) / water, starterRule);
    add(terms, WaterTerm.Kind.ROOM, 0, aim - rule.room().celsius());
    add(terms, WaterTerm.Kind.SALT, saltHeat(aim) / water, 0);
    add(terms, WaterTerm.Kind.ADDITIONS, additionsHeat(aim) / water, 0);
    add(terms, WaterTerm.Kind.BOWL, vesselHeat(aim) / water, 0);
    add(terms, WaterTerm.Kind.WETTING, -wettingHeat() / water, 0);
    double work = mixing.warming().kelvin() * allHeat() / water;
    add(terms, WaterTerm.Kind.MIXING, -work, -rule.mixingKelvin());
    return List.copyOf(terms);
  }

  private static void add(
      List<WaterTerm> terms, WaterTerm.Kind kind, double balanceKelvin, double ruleKelvin) {
    if (balanceKelvin != 0 || ruleKelvin != 0) {
      terms.add(new WaterTerm(kind, balanceKelvin, ruleKelvin));
    }
  }

  private double waterCelsius(Temperature wanted) {
    double aim = Checks.inRange("wanted dough temperature", wanted.celsius(), 0, 50, "°C");
    double takenUp = takenUp(aim);
    double setFree = wettingHeat() + mixing.warming().kelvin() * allHeat();
    double celsius = aim + (takenUp - setFree) / waterHeat();
    if (celsius > BOILING_CELSIUS) {
      throw new InputException(
          "water.hotter-than-boiling",
          "a dough of "
              + Checks.plain(aim)
              + " °C would need water of "
              + Checks.plain(Math.round(celsius))
              + " °C, at most 100 °C is possible: warm the flour or want a cooler dough");
    }
    return celsius;
  }

  private static List<WaterAnswer.Caution> cautions(double celsius) {
    if (celsius > HOT_CELSIUS) {
      return List.of(WaterAnswer.Caution.HOT);
    }
    return celsius < 0 ? List.of(WaterAnswer.Caution.BELOW_FREEZING) : List.of();
  }

  private double withoutMixing(Temperature water) {
    double celsius = Checks.inRange("water", water.celsius(), 0, BOILING_CELSIUS, "°C");
    // Heat above 0 °C, which cancels: flourHeat(0) is minus the flour's heat above 0 °C.
    double brought = -takenUp(0);
    return (brought + waterHeat() * celsius + wettingHeat()) / allHeat();
  }

  private double takenUp(double aim) {
    return flourHeat(aim) + starterHeat(aim) + saltHeat(aim) + additionsHeat(aim) + vesselHeat(aim);
  }

  private double flourHeat(double aim) {
    return flour.kg() * capacities.flourJPerKgK() * (aim - flour.celsius());
  }

  private double starterHeat(double aim) {
    return starterCapacity() * (aim - starter.celsius());
  }

  private double saltHeat(double aim) {
    return salt.kg() * capacities.saltJPerKgK() * (aim - salt.celsius());
  }

  private double additionsHeat(double aim) {
    return additions.kg() * additionsJPerKgK * (aim - additions.celsius());
  }

  private double vesselHeat(double aim) {
    return vessel.kg() * vesselJPerKgK * (aim - vessel.celsius());
  }

  private double wettingHeat() {
    return flour.kg() * wettingJPerKg;
  }

  private double starterCapacity() {
    return starter.kg() * capacities.starterJPerKgK(starterHydration);
  }

  private double waterHeat() {
    return waterKg * capacities.waterJPerKgK();
  }

  /** Heat capacity of everything, J/K. */
  private double allHeat() {
    return waterHeat()
        + starterCapacity()
        + flour.kg() * capacities.flourJPerKgK()
        + salt.kg() * capacities.saltJPerKgK()
        + additions.kg() * additionsJPerKgK
        + vessel.kg() * vesselJPerKgK;
  }

  /** The fields while a balance is being put together. */
  private static final class Draft {
    private HeatCapacities capacities = HeatCapacities.published();
    private Part flour;
    private double waterKg;
    private Part starter = Part.NONE;
    private double starterHydration = 1;
    private Part salt = Part.NONE;
    private Part additions = Part.NONE;
    private double additionsJPerKgK;
    private Part vessel = Part.NONE;
    private double vesselJPerKgK;
    private double wettingJPerKg = KNOWN_WETTING_J_PER_KG;
    private Mixing mixing = Mixing.NONE;

    Draft(Part flour, double waterKg) {
      this.flour = flour;
      this.waterKg = waterKg;
    }

    Draft(WaterTemperature from) {
      this(from.flour, from.waterKg);
      this.capacities = from.capacities;
      this.starter = from.starter;
      this.starterHydration = from.starterHydration;
      this.salt = from.salt;
      this.additions = from.additions;
      this.additionsJPerKgK = from.additionsJPerKgK;
      this.vessel = from.vessel;
      this.vesselJPerKgK = from.vesselJPerKgK;
      this.wettingJPerKg = from.wettingJPerKg;
      this.mixing = from.mixing;
    }
  }

  @Override
  protected List<?> parts() {
    return List.of(
        capacities,
        flour,
        waterKg,
        starter,
        starterHydration,
        salt,
        additions,
        additionsJPerKgK,
        vessel,
        vesselJPerKgK,
        wettingJPerKg,
        mixing);
  }

  /** In a line, for logs: what goes in, and how warm it is. */
  @Override
  public String toString() {
    return "flour "
        + words(flour)
        + ", water "
        + Checks.plain(waterKg)
        + " kg, starter "
        + words(starter)
        + ", salt "
        + words(salt)
        + (additions.equals(Part.NONE) ? "" : ", additions " + words(additions))
        + ", vessel "
        + words(vessel)
        + ", "
        + mixing;
  }

  private static String words(Part part) {
    return part.equals(Part.NONE)
        ? "none"
        : Checks.plain(part.kg()) + " kg at " + Checks.plain(part.celsius()) + " °C";
  }
}
