package doughtide.core.learning;

import doughtide.core.forecast.Belief;
import doughtide.core.forecast.Unknown;
import doughtide.core.rise.Unknowns;
import java.util.List;
import java.util.function.DoubleUnaryOperator;

/** Puts what was learned into a baker's units. */
final class ParameterTable {
  private static final double NORMAL_90_PERCENT = 1.2815515655446004;

  /** A change of less than half a standard deviation says nothing. */
  private static final double LEAST_CHANGE = 0.5;

  private final Belief before;
  private final Belief after;

  private ParameterTable(Belief before, Belief after) {
    this.before = before;
    this.after = after;
  }

  static List<LearnedParameter> of(
      Belief before, Belief after, JarError jarBefore, JarError jarAfter) {
    ParameterTable table = new ParameterTable(before, after);
    DoubleUnaryOperator percent = factor -> 100 * (factor - 1);
    return List.of(
        table.row(Unknown.VIGOUR, LearnedParameter.Kind.VIGOUR, percent),
        table.row(Unknown.LAG, LearnedParameter.Kind.LAG, percent),
        table.row(Unknown.RATE, LearnedParameter.Kind.RATE, percent),
        table.row(Unknown.TEMPERATURE, LearnedParameter.Kind.TEMPERATURE, kelvin -> kelvin),
        table.row(Unknown.RETENTION, LearnedParameter.Kind.RETENTION, share -> 100 * share),
        table.row(
            Unknown.AIR,
            LearnedParameter.Kind.AIR,
            air -> percent.applyAsDouble(air / Unknowns.USUAL_STARTING_AIR)),
        jar(jarBefore, jarAfter));
  }

  private LearnedParameter row(
      Unknown unknown, LearnedParameter.Kind kind, DoubleUnaryOperator change) {
    double first = before.mean()[unknown.ordinal()];
    double mean = after.mean()[unknown.ordinal()];
    double deviation = after.standardDeviation(unknown);
    return new LearnedParameter(
        kind,
        range(first, before.standardDeviation(unknown), unknown::value),
        range(mean, deviation, unknown::value),
        change.applyAsDouble(unknown.value(mean)),
        Math.abs(mean - first) < LEAST_CHANGE * deviation);
  }

  private static LearnedParameter jar(JarError before, JarError after) {
    return new LearnedParameter(
        LearnedParameter.Kind.JAR,
        range(before.mean(), before.deviation(), Math::exp),
        range(after.mean(), after.deviation(), Math::exp),
        100 * Math.expm1(after.mean()),
        Math.abs(after.mean()) < LEAST_CHANGE * after.deviation());
  }

  private static LearnedParameter.Range range(
      double mean, double deviation, DoubleUnaryOperator natural) {
    return new LearnedParameter.Range(
        natural.applyAsDouble(mean - NORMAL_90_PERCENT * deviation),
        natural.applyAsDouble(mean),
        natural.applyAsDouble(mean + NORMAL_90_PERCENT * deviation));
  }
}
