package doughtide.core.learning;

import doughtide.core.forecast.Belief;
import doughtide.core.forecast.Unknown;
import doughtide.core.quantity.Checks;
import doughtide.core.rise.Unknowns;
import java.util.ArrayList;
import java.util.List;
import java.util.function.DoubleUnaryOperator;

/** Puts what was learned into a baker's units and words. */
final class ParameterTable {
  private static final double TENTH =
      1.2815515655446004; // 90 % quantile of the normal distribution
  private static final double ODDS_OF_CHANCE = 0.5; // a change below half a deviation says nothing

  private final Belief before;
  private final Belief after;
  private final List<LearnedParameter> rows = new ArrayList<>();

  private ParameterTable(Belief before, Belief after) {
    this.before = before;
    this.after = after;
  }

  static List<LearnedParameter> of(Belief before, Belief after, Jar jarBefore, Jar jarAfter) {
    ParameterTable table = new ParameterTable(before, after);
    table.add(Unknown.VIGOUR, "vigour", "× typical", Math::exp, "livelier", "weaker", "starter");
    table.add(
        Unknown.LAG,
        "time to wake",
        "× usual",
        Math::exp,
        "slower to wake",
        "quicker to wake",
        "starter");
    table.add(Unknown.RATE, "rate", "× model", Math::exp, "faster", "slower", "fermentation");
    table.add(Unknown.TEMPERATURE, "thermometer", "°C true - noted", x -> x, "", "", "");
    table.add(Unknown.RETENTION, "gas retention", "gas share", x -> x, "", "", "");
    table.add(
        Unknown.AIR,
        "air mixed in",
        "gas share",
        x -> Unknowns.USUAL_STARTING_AIR * Math.exp(x),
        "more air than usual",
        "less air than usual",
        "mixing");
    table.addJar(jarBefore, jarAfter);
    return List.copyOf(table.rows);
  }

  private void add(
      Unknown unknown,
      String name,
      String unit,
      DoubleUnaryOperator natural,
      String more,
      String less,
      String subject) {
    int i = unknown.ordinal();
    double mean = after.mean()[i];
    double moved = mean - before.mean()[i];
    boolean nothing = Math.abs(moved) < ODDS_OF_CHANCE * after.standardDeviation(unknown);
    String meaning =
        switch (unknown) {
          case TEMPERATURE -> temperature(mean);
          case RETENTION -> retention(mean);
          case AIR -> mean >= 0 ? "your mixing leaves " + more : "your mixing leaves " + less;
          default -> "your " + subject + " is " + percent(mean) + (mean >= 0 ? more : less);
        };
    rows.add(
        new LearnedParameter(
            name,
            unit,
            range(before.mean()[i], before.standardDeviation(unknown), natural),
            range(mean, after.standardDeviation(unknown), natural),
            nothing ? "typical, as far as your readings tell" : meaning));
  }

  private void addJar(Jar jarBefore, Jar jarAfter) {
    double mean = jarAfter.mean();
    boolean nothing = Math.abs(mean) < ODDS_OF_CHANCE * jarAfter.deviation();
    rows.add(
        new LearnedParameter(
            "jar",
            "read over true height",
            range(jarBefore.mean(), jarBefore.deviation(), Math::exp),
            range(mean, jarAfter.deviation(), Math::exp),
            nothing
                ? "reads true, as far as your readings tell"
                : "your jar reads " + percent(mean) + (mean >= 0 ? "too high" : "too low")));
  }

  private static LearnedParameter.Range range(
      double mean, double deviation, DoubleUnaryOperator natural) {
    return new LearnedParameter.Range(
        natural.applyAsDouble(mean - TENTH * deviation),
        natural.applyAsDouble(mean),
        natural.applyAsDouble(mean + TENTH * deviation));
  }

  private static String percent(double log) {
    double off = Math.abs(Math.expm1(log)) * 100;
    return Checks.plain(Math.rint(off)) + " % ";
  }

  private static String temperature(double kelvin) {
    return "your doughs are "
        + Checks.plain(Math.rint(Math.abs(kelvin) * 10) / 10)
        + " °C "
        + (kelvin >= 0 ? "warmer" : "colder")
        + " than you note";
  }

  private static String retention(double share) {
    return "your doughs hold gas up to "
        + Checks.plain(Math.rint(Math.abs(share) * 1000) / 10)
        + " % of their volume "
        + (share >= 0 ? "longer" : "less")
        + " than the flour's usual";
  }
}
