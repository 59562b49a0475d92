package doughtide.core.day.again;

import doughtide.core.day.BakeRoute;
import doughtide.core.day.BakeStep;
import doughtide.core.day.BakeStep.Kind;
import doughtide.core.day.BenchHours;
import doughtide.core.day.BenchInterval;
import doughtide.core.day.HandsOnTime;
import doughtide.core.day.Taken;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.OptionalDouble;
import java.util.stream.DoubleStream;
import java.util.stream.Stream;

/**
 * Ways to put the tub of a dough that is not shaped into the cold otherwise than it was meant.
 * Where that was not meant at all: as late as somebody is there, or at once, until somebody is
 * there again. Where it was meant for later: at other hours, or not at all.
 */
final class TubIntoCold {
  private static final double ROOM_PROOF_HOURS = 2; // after it, in the room or the cold again

  private final Slipped slipped;
  private final BenchHours bench;
  private final CarryHours carry;

  private TubIntoCold(Slipped slipped, CarryHours carry) {
    this.slipped = slipped;
    this.bench = carry.bench();
    this.carry = carry;
  }

  /**
   * The dough with its tub in the cold, some ways.
   *
   * @param others what the other doughs take
   * @param hands how many persons work
   */
  static List<Slipped> ways(Slipped slipped, BenchHours bench, Taken others, int hands) {
    TubIntoCold tub = new TubIntoCold(slipped, new CarryHours(bench, others, hands));
    if (isMeant(slipped)) {
      return tub.otherHours();
    }
    boolean possible = slipped.shapedHour().isEmpty() && slipped.route().coldFrom().isEmpty();
    return possible ? tub.all() : List.of();
  }

  /** Whether its tub is still to go into the cold. */
  static boolean isMeant(Slipped slipped) {
    return meant(slipped).isPresent();
  }

  private static OptionalDouble meant(Slipped slipped) {
    return slipped.open().stream()
        .filter(step -> step.kind() == Kind.BULK_INTO_COLD)
        .mapToDouble(BakeStep::fromHour)
        .findFirst();
  }

  private List<Slipped> all() {
    return in(into().boxed()).map(each -> each.proofedInRoom(ROOM_PROOF_HOURS)).toList();
  }

  /** Not at all, then from the hour that was meant on to earlier ones, then later ones. */
  private List<Slipped> otherHours() {
    double usual = meant(slipped).orElseThrow();
    List<Double> hours = hoursUntilGone(usual);
    Stream<Double> nearest =
        hours.stream().sorted(Comparator.comparingDouble(hour -> Math.abs(hour - usual)));
    return Stream.concat(Stream.of(slipped.withoutCold(folds(Double.MAX_VALUE))), in(nearest))
        .toList();
  }

  /** Every hour from now on, and the last moment, until whoever was meant to do it goes. */
  private List<Double> hoursUntilGone(double usual) {
    return bench.intervals().stream()
        .filter(at -> at.fromHour() <= usual)
        .flatMapToDouble(at -> carry.some(Math.max(at.fromHour(), slipped.nowHour()), at.toHour()))
        .boxed()
        .toList();
  }

  private Stream<Slipped> in(Stream<Double> hours) {
    return hours.flatMap(from -> outOf(from).mapToObj(out -> slipped.with(steps(from, out))));
  }

  /** The last moment of the hours at the bench, which leaves time for folds, and the first. */
  private DoubleStream into() {
    for (BenchInterval at : bench.intervals()) {
      double[] free = carry.free(Math.max(at.fromHour(), slipped.nowHour()), at.toHour());
      if (free.length > 0) {
        return DoubleStream.of(free[free.length - 1], free[0]).distinct();
      }
    }
    return DoubleStream.empty();
  }

  /** When somebody comes to the bench. */
  private DoubleStream outOf(double from) {
    return bench.intervals().stream()
        .mapToDouble(BenchInterval::fromHour)
        .filter(hour -> BakeRoute.mayStayInCold(from, hour) && carry.isFree(hour));
  }

  /** What is open before it goes into the cold; in the cold nobody folds. */
  private List<BakeStep> steps(double from, double out) {
    List<BakeStep> steps = new ArrayList<>(folds(from));
    steps.add(carry(Kind.BULK_INTO_COLD, from));
    steps.add(carry(Kind.BULK_OUT_OF_COLD, out));
    return steps;
  }

  private List<BakeStep> folds(double until) {
    return slipped.open().stream()
        .filter(step -> step.kind() == Kind.FOLD && step.toHour() <= until + 1e-6)
        .toList();
  }

  private static BakeStep carry(Kind kind, double hour) {
    return new BakeStep(kind, hour, hour + HandsOnTime.CARRY_HOURS, 0);
  }
}
