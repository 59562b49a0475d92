package doughtide.core.learning;

import java.io.Serializable;

/**
 * One thing learned, before and after, for the next bake, in units a baker can read.
 *
 * @param kind what it is, and its unit
 * @param before without any reading
 * @param after with the readings
 * @param change how far the middle of {@code after} lies from the usual: per cent of it for times
 *     and rates, K for the thermometer, percentage points of gas for the retention
 * @param isUsual whether the readings say nothing: the middle moved by less than half a standard
 *     deviation
 */
public record LearnedParameter(Kind kind, Range before, Range after, double change, boolean isUsual)
    implements Serializable {

  /** What is learned. */
  public enum Kind {
    /** Vigour of the starter, times that of a typical one. */
    VIGOUR,
    /** Time the starter needs to wake, times the usual. */
    LAG,
    /** Rate of fermentation, times that of the model. */
    RATE,
    /** True dough temperature minus the one noted, K. */
    TEMPERATURE,
    /** Share of gas at which the dough leaks, minus that of the flour. */
    RETENTION,
    /** Share of air after mixing. */
    AIR,
    /** Height read in the jar over the true height. */
    JAR
  }

  /**
   * Eight in ten lie between low and high.
   *
   * @param low 10 % quantile
   * @param middle median
   * @param high 90 % quantile
   */
  public record Range(double low, double middle, double high) implements Serializable {}
}
