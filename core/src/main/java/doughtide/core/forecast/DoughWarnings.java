package doughtide.core.forecast;

import doughtide.core.dough.DoughFormula;
import doughtide.core.dough.StarterCondition;
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
      warnings.add(Warning.Kind.STARTER.with());
    }
    double p = formula.prefermentedFlour();
    if (p < LITTLE_STARTER || p > MUCH_STARTER) {
      warnings.add(unusual(Warning.Kind.UNUSUAL_STARTER, p, LITTLE_STARTER, MUCH_STARTER));
    }
    double salt = formula.salt().fraction();
    if (salt > MUCH_SALT) {
      warnings.add(unusual(Warning.Kind.UNUSUAL_SALT, salt, 0, MUCH_SALT));
    }
    return warnings;
  }

  private static Warning unusual(Warning.Kind kind, double value, double low, double high) {
    return kind.with(Math.rint(value * 1000) / 10, low * 100, high * 100);
  }
}
