package doughtide.core.planning;

import doughtide.core.quantity.Rise;
import java.util.Optional;
import java.util.OptionalDouble;

/** As much of the wanted autolyse and folds as the hours at the bench and the dough allow. */
final class FittingFolds {
  static final Rise LAST_RISE = new Rise(StrengthPlan.LAST_FOLD_RISE);

  private FittingFolds() {}

  /**
   * Empty if the dough is too quick for the folds it cannot do without. Where only the hours at the
   * bench are in the way these folds stay, and the plan is told not to fit.
   */
  static Optional<StrengthPlan> of(
      StrengthPlan wanted, BenchHours bench, BakeRoute route, OptionalDouble hoursToLastRise) {
    double mix = route.mixHour();
    double start = mix - wanted.autolyseHours() - Work.AUTOLYSE_HOURS;
    boolean autolyse =
        bench.contains(start, start + Work.AUTOLYSE_HOURS) && start + Work.AUTOLYSE_HOURS <= mix;
    double latest = hoursToLastRise.orElse(Double.POSITIVE_INFINITY);
    if (route.coldFrom().isPresent()) {
      latest = Math.min(latest, route.coldFrom().getAsDouble() - mix - 0.25);
    }
    int folds = 0;
    while (folds < wanted.folds()
        && fits(bench, mix, (folds + 1) * wanted.spacingHours())
        && (folds + 1) * wanted.spacingHours() <= latest) {
      folds++;
    }
    if (wanted.leastFolds() * wanted.spacingHours() > latest) {
      return Optional.empty();
    }
    StrengthPlan plan = wanted.withFolds(folds);
    return Optional.of(autolyse ? plan : plan.withoutAutolyse());
  }

  private static boolean fits(BenchHours bench, double mix, double after) {
    return bench.contains(mix + after, mix + after + Work.FOLD_HOURS);
  }
}
