package doughtide.core.forecast;

import doughtide.core.dough.DoughFormula;
import doughtide.core.dough.StarterCondition;
import doughtide.core.quantity.Checks;
import java.util.ArrayList;
import java.util.List;

/** What has to be said about the dough itself. */
final class DoughWarnings {
  private static final double LITTLE_STARTER = 0.01;
  private static final double MUCH_STARTER = 0.35;
  private static final double MUCH_SALT = 0.03;

  private DoughWarnings() {}

  static List<Warning> of(DoughFormula formula) {
    List<Warning> warnings = new ArrayList<>();
    if (formula.starter().condition() != StarterCondition.RIPE) {
      warnings.add(
          new Warning(
              Warning.Kind.STARTER,
              "The starter is not at its best, so it wakes later and its strength is uncertain.",
              "Refresh it and use it near its greatest height."));
    }
    double p = formula.prefermentedFlour();
    if (p < LITTLE_STARTER || p > MUCH_STARTER) {
      warnings.add(unusual("prefermented flour", p, LITTLE_STARTER, MUCH_STARTER));
    }
    if (formula.salt().fraction() > MUCH_SALT) {
      warnings.add(unusual("salt", formula.salt().fraction(), 0, MUCH_SALT));
    }
    return warnings;
  }

  private static Warning unusual(String name, double value, double low, double high) {
    return new Warning(
        Warning.Kind.UNUSUAL,
        Checks.plain(Math.rint(value * 1000) / 10)
            + " % "
            + name
            + " lies outside the usual "
            + Checks.plain(low * 100)
            + " to "
            + Checks.plain(high * 100)
            + " %; the hours are less certain.",
        "Check the figure, or note your readings.");
  }
}
