package doughtide.core.rise;

import doughtide.core.dough.DoughFormula;
import doughtide.core.dough.DoughProperties;
import doughtide.core.dough.Flour;
import doughtide.core.dough.Starter;
import doughtide.core.dough.StarterCondition;
import doughtide.core.gas.CarbonDioxide;
import doughtide.core.gas.GasCells;
import doughtide.core.kinetics.AcidBuffer;
import doughtide.core.kinetics.RateCurve;
import doughtide.core.quantity.InputException;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;

/**
 * What the runs of one dough have in common, whatever the unknowns and the temperature. Immutable,
 * shared by the members of an ensemble.
 */
final class DoughBasis {
  private static final double RIPE_PH = 3.9; // ripe sourdough 3.9–4.1 (Kline et al. 1970)
  private static final double USUAL_WATER_PHASE = 0.86; // h + m at which the salt constants hold
  private static final double USUAL_HYDRATION = 0.70;
  private static final double WHITE_ASH = 0.005;
  private static final double GAS_CONSTANT_KJ = GasCells.GAS_CONSTANT / 1000;
  private static final double SLACK_HYDRATION = 0.90; // where water loosens gluten (starting value)
  private static final double SLACK_WIDTH = 0.06;
  private static final double COLD_SEED_CELSIUS = 5; // a starter straight from the cold

  private final RiseParameters parameters;
  private final AcidBuffer buffer;
  private final DoughProperties properties;
  private final double pressurePa;
  private final double activity;
  private final double freeWater;
  private final double yeastSalt;
  private final double bacteriaSalt;
  private final double retention;
  private final double prefermented;
  private final double vigour;
  private final double lagHours;
  private final double startAcidMol;
  private final double seedCapacity;
  private final boolean coldSeed;
  private final double strengthLoss;
  private final Map<String, Integer> indexes = new HashMap<>();
  private final List<TemperatureTable.Source> sources;

  DoughBasis(DoughFormula formula, RiseParameters parameters) {
    this.parameters = parameters;
    Flour flour = formula.flour();
    double h = formula.hydration().fraction();
    double salt = formula.salt().fraction();
    double waterLitres = h + flour.composition().moisture();
    double phase = salt / waterLitres * USUAL_WATER_PHASE;
    this.buffer = AcidBuffer.of(flour);
    this.properties = DoughProperties.of(formula);
    this.pressurePa = formula.altitude().pressurePa();
    this.activity =
        Math.max(1 + parameters.growth().ashGain() * (flour.composition().ash() - WHITE_ASH), 0.5);
    this.freeWater = saturation(waterLitres) / saturation(USUAL_HYDRATION + 0.14);
    this.yeastSalt = Math.exp(-parameters.growth().yeastSalt() * phase);
    this.bacteriaSalt = inhibited(salt / waterLitres, parameters.growth().bacteriaSaltLimit());
    this.retention = retention(flour, h);
    this.prefermented = formula.prefermentedFlour();
    this.vigour = formula.starter().condition().vigour();
    this.lagHours = formula.starter().condition().lagHours();
    this.startAcidMol = prefermented * AcidBuffer.of(formula.starter().flour()).acidAt(RIPE_PH);
    Starter seed = formula.starter();
    double seedWater = seed.hydration().fraction() + seed.flour().composition().moisture();
    this.seedCapacity = prefermented * seedWater * seed.condition().gasSaturation() / 1000;
    this.coldSeed = seed.condition() == StarterCondition.FROM_COLD;
    double ash = flour.composition().ash() - WHITE_ASH;
    this.strengthLoss =
        parameters.strength().lossPerHour()
            * Math.max(1 + parameters.strength().ashGain() * ash, 0.2);
    for (int i = 0; i < parameters.curves().size(); i++) {
      indexes.put(parameters.curves().get(i).key(), i);
    }
    this.sources = sources(waterLitres, CarbonDioxide.saltFactor(salt / waterLitres));
  }

  /** Inhibitor form 1 − (S/Smax)^a, nothing from the limit on. */
  private static double inhibited(double saltInWater, double limit) {
    double part = saltInWater / limit;
    return Math.max(0, 1 - part * part * part);
  }

  private double saturation(double water) {
    double free = Math.max(water - parameters.growth().boundWater(), 0.02);
    return free / (free + parameters.growth().freeWaterHalf());
  }

  private double retention(Flour flour, double hydration) {
    double slack = 1 / (1 + Math.exp(-(hydration - SLACK_HYDRATION) / SLACK_WIDTH));
    return flour.retention() - parameters.retention().slackDrop() * flour.gluten() * slack;
  }

  private List<TemperatureTable.Source> sources(double water, double saltFactor) {
    List<TemperatureTable.Source> made = new ArrayList<>();
    for (RiseParameters.RateCurves curves : parameters.curves()) {
      made.add(source(curves, water, saltFactor));
    }
    return List.copyOf(made);
  }

  private TemperatureTable.Source source(
      RiseParameters.RateCurves curves, double water, double saltFactor) {
    return (celsius, row) -> {
      row[TemperatureTable.YEAST] = curves.yeast().rate(celsius);
      row[TemperatureTable.BACTERIA] = curves.bacteria().rate(celsius);
      row[TemperatureTable.RESTING] = resting(celsius);
      row[TemperatureTable.PROTEASE] =
          arrhenius(parameters.strength().activationKJPerMol(), celsius);
      row[TemperatureTable.LITRES_PER_MOL] = GasCells.litresPerMol(celsius, pressurePa);
      double dryPa = pressurePa - CarbonDioxide.waterVapourPa(celsius);
      row[TemperatureTable.CAPACITY] =
          CarbonDioxide.henryMolPerM3Pa(celsius) * saltFactor * dryPa * water / 1000;
    };
  }

  private double resting(double celsius) {
    double minimum = parameters.gas().restingMinimumCelsius();
    double part = Math.max(celsius - minimum, 0) / (RateCurve.REFERENCE_CELSIUS - minimum);
    return part * part;
  }

  private static double arrhenius(double energyKJ, double celsius) {
    return Math.exp(energyKJ / GAS_CONSTANT_KJ * (1 / 298.15 - 1 / (celsius + 273.15)));
  }

  /**
   * Where a pair of rate curves stands in {@link #sources}; a model with one pair only uses that.
   *
   * @throws InputException if this model does not have it
   */
  int indexOf(String key) {
    Integer index = parameters.curves().size() == 1 ? Integer.valueOf(0) : indexes.get(key);
    if (index == null) {
      throw new InputException(
          "model.curves", "this model has no rate curves '" + key + "': " + indexes.keySet());
    }
    return index;
  }

  /** The rates that depend on temperature alone; one for each pair of rate curves. */
  List<TemperatureTable.Source> sources() {
    return sources;
  }

  RiseParameters parameters() {
    return parameters;
  }

  AcidBuffer buffer() {
    return buffer;
  }

  /** Gas-free volume per kg of flour, litres. */
  double litresPerKgFlour(double celsius) {
    return properties.litresPerKgFlour(celsius);
  }

  /** Volume that does not ferment, per kg of flour, litres. */
  double inertLitresPerKgFlour() {
    return properties.inertLitresPerKgFlour();
  }

  double pressurePa() {
    return pressurePa;
  }

  /** Gain of all rates by the flour's ash. */
  double activity() {
    return activity;
  }

  /** Effect of the free water on all rates. */
  double freeWater() {
    return freeWater;
  }

  double yeastSalt() {
    return yeastSalt;
  }

  double bacteriaSalt() {
    return bacteriaSalt;
  }

  /** Gas share at which this dough usually begins to leak. */
  double retention() {
    return retention;
  }

  /** Prefermented flour as a share of all flour. */
  double prefermented() {
    return prefermented;
  }

  /** Living yeast of the starter's condition against a ripe one's. */
  double vigour() {
    return vigour;
  }

  double lagHours() {
    return lagHours;
  }

  /** Acid brought in by the starter, mol per kg of flour. */
  double startAcidMol() {
    return startAcidMol;
  }

  /**
   * CO2 that the seed brings in its water, mol per kg of flour: saturated at the pressure of the
   * place, at the dough's temperature, or at the refrigerator's if the seed comes from there.
   */
  double startGasMol(double celsius) {
    double own = coldSeed ? Math.min(celsius, COLD_SEED_CELSIUS) : celsius;
    double dryPa = pressurePa - CarbonDioxide.waterVapourPa(own);
    return seedCapacity * CarbonDioxide.henryMolPerM3Pa(own) * dryPa;
  }

  /** Loss of strength of this flour at 25 °C far from acid, per h. */
  double strengthLossPerHour() {
    return strengthLoss;
  }
}
