package doughtide.core.learning;

import doughtide.core.Internal;
import doughtide.core.dough.DoughFormula;
import doughtide.core.forecast.Belief;
import doughtide.core.forecast.RiseForecaster;
import doughtide.core.forecast.TimeWindow;
import doughtide.core.quantity.Rise;
import doughtide.core.rise.DoughTemperature;
import java.io.Serializable;
import java.util.List;
import java.util.OptionalDouble;

/**
 * What was learned.
 *
 * @param prior what was believed before
 * @param belief what is believed of the next bake, its own spread around the baker's mean included
 * @param jar how the baker's jar misreads at the next bake
 * @param outliers bakes that do not fit the others, the worst first; they were used with the reason
 *     allowed for
 * @param bakes number of bakes
 * @param readings number of readings
 * @param dataDigest SHA-256 of the bakes, 64 hexadecimal digits
 */
public record Learned(
    @Internal LearningPrior prior,
    Belief belief,
    JarError jar,
    List<Outlier> outliers,
    int bakes,
    int readings,
    String dataDigest)
    implements Serializable {

  /**
   * Keeps the list as it is now.
   *
   * @param prior what was believed before
   * @param belief what is believed of the next bake, its own spread around the baker's mean
   *     included
   * @param jar how the baker's jar misreads at the next bake
   * @param outliers bakes that do not fit the others, the worst first
   * @param bakes number of bakes
   * @param readings number of readings
   * @param dataDigest SHA-256 of the bakes, 64 hexadecimal digits
   */
  public Learned {
    outliers = List.copyOf(outliers);
  }

  /** In a line, for logs: from how much it was learned, and what is believed. */
  @Override
  public String toString() {
    return "bakes " + bakes + ", readings " + readings + ", outliers " + outliers + ": " + belief;
  }

  /** {@return each parameter before and after, with its meaning} */
  public List<LearnedParameter> parameters() {
    return ParameterTable.of(prior.nextBake(), belief, prior.nextJar(), jar);
  }

  /**
   * {@return the window of a time with and without what was learned}
   *
   * @param formula the dough
   * @param temperature its temperature
   * @param rise the rise whose time is looked at
   */
  public Narrowing narrowing(DoughFormula formula, DoughTemperature temperature, Rise rise) {
    return new Narrowing(
        window(prior.nextBake(), formula, temperature, rise),
        window(belief, formula, temperature, rise));
  }

  private static TimeWindow window(
      Belief belief, DoughFormula formula, DoughTemperature temperature, Rise rise) {
    return RiseForecaster.standard().with(belief).forecast(formula, temperature).hoursToRise(rise);
  }

  /**
   * A window before and after learning.
   *
   * @param before without what was learned
   * @param after with it
   */
  public record Narrowing(TimeWindow before, TimeWindow after) implements Serializable {
    /**
     * {@return how much narrower it has become: 0.4 if it is 40 % narrower, negative if it is
     * wider; empty where one of the windows is open}
     */
    public OptionalDouble share() {
      OptionalDouble wide = before.widthHours();
      OptionalDouble narrow = after.widthHours();
      return wide.isEmpty() || narrow.isEmpty() || wide.getAsDouble() <= 0
          ? OptionalDouble.empty()
          : OptionalDouble.of(1 - narrow.getAsDouble() / wide.getAsDouble());
    }
  }

  /**
   * {@return what to keep for later bakes}
   *
   * @param programVersion the version that learned it
   */
  public LearnedStarter starter(String programVersion) {
    return LearnedStarter.of(this, programVersion);
  }
}
