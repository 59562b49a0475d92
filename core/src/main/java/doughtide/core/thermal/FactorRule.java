package doughtide.core.thermal;

import doughtide.core.Internal;
import doughtide.core.quantity.Checks;
import doughtide.core.quantity.InputException;
import doughtide.core.quantity.Temperature;
import doughtide.core.quantity.Value;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import org.jspecify.annotations.Nullable;

/**
 * The trade's rule for the pouring temperature of water: the wanted temperature times the number of
 * factors, less the factors that are known. Factors are flour, room and water, and the starter
 * where there is one.
 *
 * <p>Two conventions are in use, and they mean different things by "warming": see {@link
 * Convention}. The rule gives the same answer in °F and °C. It takes every factor as equally heavy;
 * {@link WaterTemperature} weighs them.
 *
 * <pre>{@code
 * FactorRule rule =
 *     FactorRule.of(Temperature.ofFahrenheit(65), Temperature.ofFahrenheit(65))
 *         .friction(Warming.ofFahrenheitDegrees(8));
 * double fahrenheit = rule.waterFahrenheit(Temperature.ofFahrenheit(75)); // 87
 * }</pre>
 */
@Internal
public final class FactorRule extends Value {
  private static final long serialVersionUID = 1;

  /** Where the warming by the mixer enters. */
  enum Convention {
    /**
     * Wanted times factors, less the known factors, less a <em>friction factor</em> once. The
     * friction factor is as many times the dough's real warming as there are factors.
     */
    FRICTION_ONCE,
    /** The dough's real warming is taken from the wanted temperature before it is multiplied. */
    WARMING_FIRST
  }

  private final Temperature flour;
  private final Temperature room;
  private final @Nullable Temperature starter;
  private final Convention convention;
  private final Warming warming;

  private FactorRule(
      Temperature flour,
      Temperature room,
      @Nullable Temperature starter,
      Convention convention,
      Warming warming) {
    this.flour = flour;
    this.room = room;
    this.starter = starter;
    this.convention = convention;
    this.warming = warming;
  }

  /**
   * Three factors: flour, room and water; no warming.
   *
   * @param flour temperature of the flour
   * @param room temperature of the room
   */
  public static FactorRule of(Temperature flour, Temperature room) {
    Checks.given("flour temperature", flour);
    Checks.given("room temperature", room);
    return new FactorRule(flour, room, null, Convention.FRICTION_ONCE, Warming.NONE);
  }

  /**
   * The same with the starter as a fourth factor.
   *
   * @param temperature temperature of the starter
   */
  public FactorRule starter(Temperature temperature) {
    return new FactorRule(flour, room, temperature, convention, warming);
  }

  /**
   * The same with a friction factor, subtracted once.
   *
   * @param factor the friction factor of the mixer
   */
  public FactorRule friction(Warming factor) {
    return new FactorRule(flour, room, starter, Convention.FRICTION_ONCE, factor);
  }

  /**
   * The same with the dough's warming in the mixer, subtracted before multiplying.
   *
   * @param byMixing how much warmer the dough leaves the mixer
   */
  public FactorRule warmingFirst(Warming byMixing) {
    return new FactorRule(flour, room, starter, Convention.WARMING_FIRST, byMixing);
  }

  /** Number of factors: 3, or 4 with a starter. */
  public int factors() {
    return starter == null ? 3 : 4;
  }

  /** Temperature of the flour. */
  public Temperature flour() {
    return flour;
  }

  /** Temperature of the room. */
  public Temperature room() {
    return room;
  }

  /** Temperature of the starter, if it is a factor. */
  public Optional<Temperature> starter() {
    return Optional.ofNullable(starter);
  }

  /** What the rule takes off for mixing in all, K of water. */
  public double mixingKelvin() {
    double times = convention == Convention.FRICTION_ONCE ? 1 : factors();
    return times * warming.kelvin();
  }

  /**
   * Temperature of the water, °C; below 0 the rule asks for ice.
   *
   * @param wanted wanted temperature of the dough
   */
  public double waterCelsius(Temperature wanted) {
    return factors() * wanted.celsius() - known() - mixingKelvin();
  }

  /**
   * Temperature of the water, °F; below 32 the rule asks for ice.
   *
   * @param wanted wanted temperature of the dough
   */
  public double waterFahrenheit(Temperature wanted) {
    return waterCelsius(wanted) * 1.8 + 32;
  }

  /**
   * Temperature of the dough that a water gives, °C.
   *
   * @param water temperature of the water
   */
  public double doughCelsius(Temperature water) {
    return (water.celsius() + known() + mixingKelvin()) / factors();
  }

  /**
   * The friction factor or warming that explains a dough as it was measured.
   *
   * @param water temperature of the water that was used
   * @param measured temperature of the dough after mixing
   * @throws InputException if it comes out outside −30…60 K
   */
  public Warming warmingFrom(Temperature water, Temperature measured) {
    double excess = factors() * measured.celsius() - known() - water.celsius();
    return new Warming(convention == Convention.FRICTION_ONCE ? excess : excess / factors());
  }

  private double known() {
    return flour.celsius() + room.celsius() + (starter == null ? 0 : starter.celsius());
  }

  @Override
  protected List<?> parts() {
    return Arrays.asList(flour, room, starter, convention, warming);
  }

  /** In a line, for logs: the factors and the warming. */
  @Override
  public String toString() {
    return "flour "
        + StepTrace.degrees(flour.celsius())
        + ", room "
        + StepTrace.degrees(room.celsius())
        + (starter == null ? "" : ", starter " + StepTrace.degrees(starter.celsius()))
        + ", warming "
        + Checks.plain(warming.kelvin())
        + " K, "
        + convention;
  }
}
