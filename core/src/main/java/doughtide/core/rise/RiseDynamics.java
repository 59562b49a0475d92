package doughtide.core.rise;

import doughtide.core.dough.DoughFormula;
import doughtide.core.gas.GasCells;
import doughtide.core.kinetics.AcidBuffer;
import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * The state of a dough and its derivatives, per kg of all flour. Not thread-safe: what depends on
 * temperature alone is kept until the temperature changes.
 */
final class RiseDynamics {
  static final int YEAST = 0; // ln of the yeast, 1 = ripe population
  static final int READINESS = 1; // ln q of Baranyi & Roberts
  static final int BACTERIA = 2; // ln of the lactic bacteria, same scale
  static final int MADE = 3; // CO2 made, mol
  static final int LOST = 4; // CO2 lost, mol
  static final int ACID = 5; // lactic and acetic acid, mol
  static final int STRENGTH = 6; // ln of the strength index
  static final int CELSIUS = 7; // dough temperature where it is computed
  static final int SIZE = 8;

  private static final double LN_10 = Math.log(10);
  private static final double LOWEST_GROWTH_PH = 3.8; // Gänzle 1998
  private static final double BEST_GROWTH_PH = 5.25; // middle of the range (starting value)
  private static final double HIGHEST_GROWTH_PH = 6.7; // Gänzle et al. 1998
  private static final double LOWEST_ACID_PH = 3.6; // acid is made down to 3.6 (Gänzle)
  private static final double PROTEASE_PH = 4.2; // wheat's own proteases work in acid (from memory)
  private static final double HEAT_J_PER_MOL_CO2 = 50_200; // Colombié et al. 2007
  private static final double LOWEST_RETENTION = 0.15;
  private static final double HIGHEST_RETENTION = 0.86; // seven times the height, starting value

  private final RiseParameters.Gas gas;
  private final RiseParameters.Acid acids;
  private final RiseParameters.Retention leak;
  private final double acidGain;
  private final double strengthScale;
  private final double lagRatePerHour;
  private final TemperatureTable.Source byTemperature;
  private final AcidBuffer buffer;
  private final double yeastScale;
  private final double bacteriaScale;
  private final double restingScale;
  private final double acidScale;
  private final double ceilingMol;
  private final double startAirMol;
  private double airMol; // less where hands have taken some out
  private final double doughLitres;
  private final double inertLitres; // what does not ferment
  private final double startLitres;
  private final double retention;
  private final double temperatureError;
  private final double[] start;

  // what depends on temperature alone
  private final double[] row = new double[TemperatureTable.COLUMNS];
  private double cachedCelsius = Double.NaN;
  private double yeastRate;
  private double bacteriaRate;
  private double restingRate;
  private double acidRate;
  private double proteaseRate;
  private double capacityMol;
  private double litresPerMol;

  /** The dynamics with everything computed at each temperature. */
  RiseDynamics(
      DoughFormula formula, RiseParameters parameters, Unknowns unknowns, double startCelsius) {
    this(new DoughBasis(formula, parameters), unknowns, startCelsius, null);
  }

  /** The same for one of many runs of a dough. */
  RiseDynamics(DoughBasis basis, Unknowns unknowns, double startCelsius, @Nullable SeedState seed) {
    this(basis, unknowns, startCelsius, basis.sources().get(formOf(basis, unknowns)), seed);
  }

  /**
   * The dynamics with tables made from the sources of {@code basis}, for temperatures that change
   * all the time.
   */
  RiseDynamics(
      DoughBasis basis,
      Unknowns unknowns,
      double startCelsius,
      List<TemperatureTable> tables,
      @Nullable SeedState seed) {
    this(basis, unknowns, startCelsius, tables.get(formOf(basis, unknowns))::at, seed);
  }

  private RiseDynamics(
      DoughBasis basis,
      Unknowns unknowns,
      double startCelsius,
      TemperatureTable.Source byTemperature,
      @Nullable SeedState seed) {
    RiseParameters parameters = basis.parameters();
    this.gas = parameters.gas();
    this.acids = parameters.acid();
    this.leak = parameters.retention();
    this.acidGain = parameters.strength().acidGain();
    this.strengthScale = basis.strengthLossPerHour() * unknowns.strengthLoss();
    this.lagRatePerHour = parameters.growth().yeastPerHour();
    this.byTemperature = byTemperature;
    this.buffer = basis.buffer();
    double common = unknowns.rateScale() * basis.activity() * basis.freeWater();
    this.yeastScale = lagRatePerHour * common * basis.yeastSalt();
    this.bacteriaScale = parameters.growth().bacteriaPerHour() * common * basis.bacteriaSalt();
    this.restingScale = gas.restingMolPerHour() * common * basis.yeastSalt();
    this.acidScale = acids.restingMolPerHour() * common * basis.bacteriaSalt();
    this.ceilingMol = gas.ceilingMol();
    this.temperatureError = unknowns.temperatureErrorCelsius();
    this.retention = Math.min(basis.retention() + unknowns.retentionShift(), HIGHEST_RETENTION);
    double celsius = startCelsius + temperatureError;
    this.doughLitres = basis.litresPerKgFlour(celsius);
    this.inertLitres = basis.inertLitresPerKgFlour();
    double air = unknowns.startingAir();
    double airLitres = doughLitres * air / (1 - air);
    this.startAirMol = airLitres / GasCells.litresPerMol(celsius, basis.pressurePa());
    this.airMol = startAirMol;
    this.start =
        seed == null
            ? startState(basis, unknowns, celsius)
            : startState(basis, unknowns, celsius, seed);
    this.startLitres = litres(celsius, start);
  }

  private static int formOf(DoughBasis basis, Unknowns unknowns) {
    return basis.indexOf(unknowns.curves());
  }

  private double[] startState(DoughBasis basis, Unknowns unknowns, double celsius) {
    double population = Math.min(basis.prefermented() * unknowns.vigour() * basis.vigour(), 0.999);
    double lag = basis.lagHours() * unknowns.lagFactor();
    double[] state = new double[SIZE];
    state[YEAST] = Math.log(population);
    state[READINESS] = -Math.log(Math.expm1(lagRatePerHour * lag));
    state[BACTERIA] = state[YEAST];
    state[MADE] = basis.startGasMol(celsius);
    state[ACID] = basis.startAcidMol();
    state[CELSIUS] = celsius;
    return state;
  }

  /**
   * The starter brings what the run before has left in it. It is never more awake than it was
   * there, nor than a ripe starter is after being fed.
   */
  private double[] startState(DoughBasis basis, Unknowns unknowns, double celsius, SeedState seed) {
    double[] state = startState(basis, unknowns, celsius);
    double share = basis.prefermented();
    state[YEAST] = Math.log(Math.min(share * unknowns.vigour() * seed.yeast(), 0.999));
    state[BACTERIA] = Math.log(Math.min(share * unknowns.vigour() * seed.bacteria(), 0.999));
    state[READINESS] = Math.min(state[READINESS], seed.lnReadiness());
    state[MADE] = share * seed.gasMol();
    state[ACID] = share * seed.acidMol();
    return state;
  }

  double[] startState() {
    return start.clone();
  }

  double temperatureError() {
    return temperatureError;
  }

  private void atTemperature(double celsius) {
    if (celsius == cachedCelsius) {
      return;
    }
    cachedCelsius = celsius;
    byTemperature.at(celsius, row);
    yeastRate = yeastScale * row[TemperatureTable.YEAST];
    bacteriaRate = bacteriaScale * row[TemperatureTable.BACTERIA];
    acidRate = acidScale * row[TemperatureTable.BACTERIA];
    restingRate = restingScale * row[TemperatureTable.RESTING];
    proteaseRate = strengthScale * row[TemperatureTable.PROTEASE];
    litresPerMol = row[TemperatureTable.LITRES_PER_MOL];
    capacityMol = row[TemperatureTable.CAPACITY];
  }

  /**
   * Derivatives per hour.
   *
   * @param celsius dough temperature
   * @param s state
   * @param d receives the derivatives; the temperature's own part is the warming by fermentation
   *     times the heat capacity
   */
  void derivatives(double celsius, double[] s, double[] d) {
    atTemperature(celsius);
    double yeast = Exponential.of(s[YEAST]);
    double bacteria = Exponential.of(s[BACTERIA]);
    double ready = 1 / (1 + Exponential.of(-s[READINESS]));
    double ph = buffer.phAt(s[ACID]);
    double yeastGrowth = yeastRate * ready * (1 - yeast);
    double bacteriaGrowth = bacteriaRate * ready * (1 - bacteria) * growthAtPh(ph);
    double made =
        (gas.growthMol() * yeastGrowth * yeast
                + restingRate * ready * yeast
                + gas.bacteriaMol() * bacteriaGrowth * bacteria)
            * (1 - s[MADE] / ceilingMol);
    double cells = inCellsMol(s);
    double open = openShare(cells, s[ACID]);
    double acidAllowed =
        Math.max(0, 1 - Exponential.of(LN_10 * (LOWEST_ACID_PH - ph))); // gamma form
    d[YEAST] = yeastGrowth;
    d[READINESS] = yeastRate;
    d[BACTERIA] = bacteriaGrowth;
    d[MADE] = made;
    d[LOST] = open * made + leak.leakPerHour() * cells * open * open;
    d[ACID] =
        acids.growthMol() * bacteriaGrowth * bacteria + acidRate * ready * bacteria * acidAllowed;
    d[STRENGTH] = -proteaseRate * (1 + acidGain / (1 + Exponential.of((ph - PROTEASE_PH) * 5)));
    d[CELSIUS] = HEAT_J_PER_MOL_CO2 * made;
  }

  /** Cardinal pH model of Rosso et al. 1995 (Appl Environ Microbiol 61:610–616). */
  private static double growthAtPh(double ph) {
    if (ph <= LOWEST_GROWTH_PH || ph >= HIGHEST_GROWTH_PH) {
      return 0;
    }
    double product = (ph - LOWEST_GROWTH_PH) * (ph - HIGHEST_GROWTH_PH);
    double off = ph - BEST_GROWTH_PH;
    return product / (product - off * off);
  }

  /** CO2 in the gas cells, mol; the temperature must have been set. */
  private double inCellsMol(double[] s) {
    double free = Math.max(s[MADE] - s[LOST], 0);
    return GasCells.inCellsMol(free, airMol, capacityMol);
  }

  private double openShare(double cellsMol, double acid) {
    double gasLitres = (cellsMol + airMol) * litresPerMol;
    double gasShare = gasLitres / (gasLitres + doughLitres);
    return 1 / (1 + Exponential.of(-(gasShare - threshold(acid)) / leak.leakWidth()));
  }

  private double threshold(double acid) {
    double weakening = leak.acidWeakening() * Math.max(acid - leak.acidTolerated(), 0);
    return Math.max(retention - weakening, LOWEST_RETENTION);
  }

  /** Rise as a fraction of the starting volume. */
  double rise(double celsius, double[] s) {
    return litres(celsius, s) / startLitres - 1;
  }

  private double litres(double celsius, double[] s) {
    atTemperature(celsius);
    return doughLitres + inertLitres + (inCellsMol(s) + airMol) * litresPerMol;
  }

  /** Gas over total volume. */
  double gasShare(double celsius, double[] s) {
    atTemperature(celsius);
    double gas = (inCellsMol(s) + airMol) * litresPerMol;
    return gas / (gas + doughLitres + inertLitres);
  }

  /** CO2 in the gas cells, mol/kg flour. */
  double inCellsMol(double celsius, double[] s) {
    atTemperature(celsius);
    return inCellsMol(s);
  }

  /**
   * Hands take the same share of air and CO2 out of the cells; what is dissolved stays. From now on
   * these dynamics are those of the handled dough.
   */
  void takeOut(double share, double celsius, double[] s) {
    s[LOST] += share * inCellsMol(celsius, s);
    airMol *= 1 - share;
  }

  /** The greatest height, as a rise, that the dough can hold: the gas share at which it leaks. */
  double fullRise(double[] s) {
    return (inertLitres + doughLitres / (1 - threshold(s[ACID]))) / startLitres - 1;
  }

  AirBalance air() {
    return new AirBalance(startAirMol, airMol, startAirMol - airMol);
  }

  double ph(double[] s) {
    return buffer.phAt(s[ACID]);
  }

  double startLitres() {
    return startLitres;
  }
}
