package doughtide.core.day.again;

import doughtide.core.day.BakeDay;
import doughtide.core.day.BakeStep;
import doughtide.core.day.BakeStep.Kind;
import doughtide.core.loaf.StrengthPlan;
import doughtide.core.quantity.Rise;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.OptionalDouble;
import java.util.stream.IntStream;

/**
 * Folds some of which should have been done before now and were not: the first is done now and the
 * others follow it, as far apart as usual; closer where the dough would else have risen too far for
 * the last, and fewer where that is not enough.
 */
final class LateFolds {
  /** Between two folds a dough must slacken (common practice, no source). */
  private static final double CLOSEST_HOURS = 20.0 / 60;

  private static final double BEFORE_COLD_HOURS = 0.25;
  private static final int MEMBERS = 32;
  private static final double FOLLOWED_HOURS = 12;

  private final BakeDay day;
  private final Slipped slipped;
  private final List<BakeStep> folds;

  private LateFolds(BakeDay day, Slipped slipped) {
    this.day = day;
    this.slipped = slipped;
    this.folds =
        slipped.open().stream()
            .filter(LateFolds::isFold)
            .sorted(Comparator.comparingInt(BakeStep::number))
            .toList();
  }

  private static boolean isFold(BakeStep step) {
    return step.kind() == Kind.FOLD;
  }

  /** The dough with its folds at hours at which they still help; as it is where none is late. */
  static Slipped spaced(BakeDay day, Slipped slipped) {
    LateFolds late = new LateFolds(day, slipped);
    boolean some =
        slipped.shapedHour().isEmpty()
            && late.folds.stream().anyMatch(each -> each.fromHour() < slipped.nowHour() - 1e-6);
    return some ? slipped.with(late.open()) : slipped;
  }

  private List<BakeStep> open() {
    List<BakeStep> open = new ArrayList<>(anew());
    slipped.open().stream().filter(step -> !isFold(step)).forEach(open::add);
    return open;
  }

  private List<BakeStep> anew() {
    double left = lastHour() - slipped.nowHour();
    int number = Math.min(folds.size(), left < 0 ? 0 : 1 + (int) Math.floor(left / CLOSEST_HOURS));
    double apart = number < 2 ? 0 : apart(left / (number - 1));
    return IntStream.range(0, number)
        .mapToObj(i -> OpenSteps.at(folds.get(i), slipped.nowHour() + i * apart))
        .toList();
  }

  /** Not closer than a dough slackens, not further than usual, in steps of five minutes. */
  private double apart(double possible) {
    double hours = Math.max(CLOSEST_HOURS, Math.min(day.strength().spacingHours(), possible));
    return Math.floor(hours / OpenSteps.FIVE_MINUTES + 1e-6) * OpenSteps.FIVE_MINUTES;
  }

  /** When the likely dough has risen too far for a fold, and not before the last that was meant. */
  private double lastHour() {
    double meant = folds.get(folds.size() - 1).fromHour();
    double last = Math.max(meant, risenHour().orElse(meant));
    OptionalDouble cold =
        slipped.open().stream()
            .filter(step -> step.kind() == Kind.BULK_INTO_COLD)
            .mapToDouble(step -> step.fromHour() - BEFORE_COLD_HOURS)
            .findFirst();
    return cold.isPresent() ? Math.min(last, cold.getAsDouble()) : last;
  }

  private OptionalDouble risenHour() {
    OptionalDouble likely =
        day.bulk(slipped.route(), MEMBERS, FOLLOWED_HOURS)
            .hoursToRise(new Rise(StrengthPlan.LAST_FOLD_RISE))
            .likely();
    return likely.isPresent()
        ? OptionalDouble.of(slipped.route().mixHour() + likely.getAsDouble())
        : likely;
  }
}
