package doughtide.core.day;

import doughtide.core.Internal;
import doughtide.core.loaf.StrengthPlan;
import doughtide.core.quantity.Rise;
import java.util.Optional;
import java.util.OptionalDouble;

/** As much of the wanted autolyse and folds as the hours at the bench and the dough allow. */
@Internal
public final class FittingFolds {
  static final Rise LAST_RISE = new Rise(StrengthPlan.LAST_FOLD_RISE);

  /** As close as folds come where the baker must leave (common practice, no source). */
  private static final double CLOSE_HOURS = 20.0 / 60;

  private FittingFolds() {}

  /**
   * Empty if the dough is too quick for the folds it cannot do without. Where only the hours at the
   * bench are in the way they come closer together; if that does not help they stay, and the plan
   * is told not to fit.
   */
  public static Optional<StrengthPlan> of(
      StrengthPlan wanted, BenchHours bench, BakeRoute route, OptionalDouble hoursToLastRise) {
    return of(wanted, bench, route, hoursToLastRise, 0);
  }

  /** The same where folds are never closer than some hours, as mixing in batches asks. */
  static Optional<StrengthPlan> of(
      StrengthPlan given,
      BenchHours bench,
      BakeRoute route,
      OptionalDouble hoursToLastRise,
      double leastSpacing) {
    StrengthPlan wanted =
        leastSpacing > given.spacingHours() ? given.withSpacing(leastSpacing) : given;
    double mix = route.mixHour();
    double start = mix - wanted.autolyseHours() - HandsOnTime.AUTOLYSE_HOURS;
    boolean autolyse = bench.contains(start, start + HandsOnTime.AUTOLYSE_HOURS);
    double latest = hoursToLastRise.orElse(Double.POSITIVE_INFINITY);
    if (route.coldFrom().isPresent()) {
      latest = Math.min(latest, route.coldFrom().getAsDouble() - mix - 0.25);
    }
    if (wanted.leastFolds() * wanted.spacingHours() > latest) {
      return Optional.empty();
    }
    StrengthPlan close =
        wanted.withSpacing(Math.max(leastSpacing, Math.min(CLOSE_HOURS, wanted.spacingHours())));
    boolean closer =
        number(wanted, bench, mix, latest) < wanted.leastFolds()
            && number(close, bench, mix, latest) >= wanted.leastFolds();
    StrengthPlan spaced = closer ? close : wanted;
    StrengthPlan plan = spaced.withFolds(number(spaced, bench, mix, latest));
    return Optional.of(autolyse ? plan : plan.withoutAutolyse());
  }

  /** How many folds come before an hour, at the bench. */
  private static int number(StrengthPlan plan, BenchHours bench, double mix, double latest) {
    int folds = 0;
    while (folds < plan.folds()
        && fits(bench, mix, (folds + 1) * plan.spacingHours())
        && (folds + 1) * plan.spacingHours() <= latest) {
      folds++;
    }
    return folds;
  }

  private static boolean fits(BenchHours bench, double mix, double after) {
    return bench.contains(mix + after, mix + after + HandsOnTime.FOLD_HOURS);
  }
}
