package doughtide.core.day.again;

import doughtide.core.day.BakeStep;
import doughtide.core.day.BakeStep.Kind;
import doughtide.core.day.BenchHours;
import doughtide.core.day.Taken;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.stream.IntStream;

/**
 * Folds, and tubs into the cold and out of it, of all doughs that are mixed: each at its hour or as
 * soon after it as somebody is at the bench with free hands. A fold that would be much later is
 * left out.
 */
final class OpenSteps {
  static final double FIVE_MINUTES = 1.0 / 12;

  /** Later than this a fold is left out (starting value). */
  private static final int LATEST_FOLD = 6;

  private static final int LATEST_CARRY = 24 * 12;

  private final BenchHours bench;
  private final int hands;
  private final List<List<BakeStep>> settled = new ArrayList<>();
  private Taken taken = Taken.NOTHING;

  /** A step of a dough, by its number. */
  private record Open(int dough, BakeStep step) {}

  private OpenSteps(BenchHours bench, int hands, List<Slipped> doughs) {
    this.bench = bench;
    this.hands = hands;
    doughs.forEach(dough -> settled.add(new ArrayList<>()));
  }

  /** The same doughs with their steps at hours at which they can be done. */
  static List<Slipped> settled(List<Slipped> doughs, BenchHours bench, int hands) {
    OpenSteps open = new OpenSteps(bench, hands, doughs);
    List<Open> all = new ArrayList<>();
    for (int i = 0; i < doughs.size(); i++) {
      for (BakeStep step : doughs.get(i).open()) {
        all.add(new Open(i, at(step, Math.max(step.fromHour(), doughs.get(i).nowHour()))));
      }
    }
    all.sort(Comparator.comparingDouble(each -> each.step().fromHour()));
    all.forEach(open::settle);
    return IntStream.range(0, doughs.size())
        .mapToObj(i -> doughs.get(i).with(open.settled.get(i)))
        .toList();
  }

  private void settle(Open each) {
    possible(each.step())
        .ifPresent(
            step -> {
              settled.get(each.dough()).add(step);
              taken = taken.with(List.of(step));
            });
  }

  private Optional<BakeStep> possible(BakeStep step) {
    boolean fold = step.kind() == Kind.FOLD;
    OptionalDouble hour =
        IntStream.rangeClosed(0, fold ? LATEST_FOLD : LATEST_CARRY)
            .mapToDouble(i -> step.fromHour() + i * FIVE_MINUTES)
            .filter(from -> isFree(from, from + step.toHour() - step.fromHour()))
            .findFirst();
    return hour.isEmpty() && fold
        ? Optional.empty()
        : Optional.of(at(step, hour.orElse(step.fromHour())));
  }

  private boolean isFree(double from, double to) {
    return taken.leavesHands(bench, from, to, hands);
  }

  /** The same step at another hour, as long. */
  static BakeStep at(BakeStep step, double hour) {
    return new BakeStep(step.kind(), hour, hour + step.toHour() - step.fromHour(), step.number());
  }
}
