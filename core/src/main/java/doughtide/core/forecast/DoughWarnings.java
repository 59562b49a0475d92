package doughtide.core.forecast;

import doughtide.core.Internal;
import doughtide.core.dough.DoughFormula;
import doughtide.core.dough.DoughProperties;
import doughtide.core.dough.Enrichment;
import doughtide.core.dough.Flour;
import doughtide.core.dough.FlourClass;
import doughtide.core.dough.StarterCondition;
import doughtide.core.quantity.Share;
import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import java.util.stream.Stream;

/** What has to be said about the dough itself. */
@Internal
public final class DoughWarnings {
  private static final double LITTLE_STARTER = 0.01;
  private static final double MUCH_STARTER = 0.35;
  private static final double MUCH_SALT = 0.03;
  private static final double MOSTLY = 0.5; // starting value

  /** All water over all flour above which a dough of wheat pours (common practice, no source). */
  private static final double POURS = 0.95;

  /** The same of flour with the bran in it, which drinks more (common practice, no source). */
  private static final double POURS_WITH_BRAN = 1.05;

  private static final double MUCH_BRAN = 0.06; // fibre over flour, as for folds

  private DoughWarnings() {}

  static List<Warning> of(DoughFormula formula) {
    List<Warning> warnings = new ArrayList<>();
    if (formula.starter().condition() != StarterCondition.RIPE) {
      warnings.add(Warning.Kind.STARTER.with());
    }
    double p = Math.rint(formula.prefermentedFlour() * 1000) / 1000; // as it is said
    if (p < LITTLE_STARTER || p > MUCH_STARTER) {
      warnings.add(unusual(Warning.Kind.UNUSUAL_STARTER, p, LITTLE_STARTER, MUCH_STARTER));
    }
    double salt = formula.salt().fraction();
    if (salt > MUCH_SALT) {
      warnings.add(unusual(Warning.Kind.UNUSUAL_SALT, salt, 0, MUCH_SALT));
    }
    double rye = rye(formula.flour());
    if (rye > MOSTLY && salt > 0) { // without salt it is a starter just fed
      warnings.add(Warning.Kind.RYE.with(Math.rint(rye * 1000) / 10));
    }
    warnings.addAll(ofContents(formula));
    return warnings;
  }

  private static boolean pours(DoughFormula formula) {
    Flour flour = formula.flour();
    double limit = flour.composition().fibre() > MUCH_BRAN ? POURS_WITH_BRAN : POURS;
    boolean isDough = formula.salt().fraction() > 0; // else it is a starter just fed
    return isDough && flour.gluten() > MOSTLY && formula.hydration().fraction() > limit + 1e-9;
  }

  private static double rye(Flour flour) {
    return Stream.of(FlourClass.RYE, FlourClass.WHOLEMEAL_RYE)
        .map(each -> flour.parts().get(each.flour().name()))
        .filter(Objects::nonNull)
        .mapToDouble(Share::fraction)
        .sum();
  }

  /**
   * That it pours, and what is not modelled of what it holds beside flour, water, starter and salt.
   */
  public static List<Warning> ofContents(DoughFormula formula) {
    List<Warning> warnings = new ArrayList<>();
    if (pours(formula)) {
      warnings.add(Warning.Kind.POURS.with(Math.rint(formula.hydration().percent() * 10) / 10));
    }
    if (!formula.additions().inclusions().isEmpty()) {
      double share = DoughProperties.of(formula).inertVolumeShare();
      warnings.add(Warning.Kind.INCLUSIONS.with(Math.rint(share * 1000) / 10));
    }
    for (Enrichment.Kind kind : Enrichment.Kind.values()) {
      double share =
          formula.additions().enrichments().stream()
              .filter(each -> each.kind() == kind)
              .mapToDouble(Enrichment::share)
              .sum();
      if (share > 0) {
        warnings.add(Warning.Kind.valueOf(kind.name()).with(Math.rint(share * 1000) / 10));
      }
    }
    return warnings;
  }

  private static Warning unusual(Warning.Kind kind, double value, double low, double high) {
    return kind.with(Math.rint(value * 1000) / 10, low * 100, high * 100);
  }
}
